#pragma once
// One kerf with the wood around it: stiffness, strain and hinge of a board with evenly spaced kerfs.

#include <vector>

#include "bend/material.h"
#include "measure/length.h"

namespace kerfpacket::bend {

using measure::Angle;
using measure::Length;

/// Which side of the bend the kerfs are on: inside they close, outside they open.
enum class KerfsOn { inside, outside };

/// How thick a moulded board is at one height across its width; straight from one to the next, a step where two share a
/// height.
struct ProfilePoint {
    Length height;
    Length thickness;
};

struct Cell {
    Length thickness;  ///< T; of a moulded board where it is thickest
    Length depth;      ///< d
    Length kerf;       ///< k
    Length spacing;    ///< s
    /// Height of the hinge above the kerf's bottom over the web, h/t: its middle, unless a coupon that closed tells it.
    double hinge_part = 0.5;
    /// Of plywood, from the plain face: an odd number that adds up to T, the grain of the first along the board, of the
    /// next across it, and so on. Empty for a board of one stuff.
    std::vector<Length> plies{};
    /// Of a moulded board whose back is flat, the heights rising; empty for a flat board, and beside plies.
    std::vector<ProfilePoint> profile{};

    Length web() const { return thickness - depth; }  ///< t, at the thickest place
    Length thinnest() const;                          ///< T of the thinnest place
    Length thinnest_web() const { return thinnest() - depth; }
    /// Of one stuff and one thickness.
    bool plain() const { return plies.empty() && profile.empty(); }
};

/// Effective hinge length L. Source: src/bend/NOTES.md, "One cell".
Length hinge_length(const Cell& cell, double softness);

/// r: bending stiffness of the kerfed board over that of the solid one.
double stiffness_ratio(const Cell& cell, double softness);

/// Nominal strain in the web at the radius of the length-keeping line.
double web_strain(const Cell& cell, double softness, Length radius);

/// Least radius of the length-keeping line at which the web strain stays at `allowed`.
Length least_radius(const Cell& cell, double softness, double allowed);

/// By how much the energy balance of peeling tells too high a strain where the land is short against the reach of a
/// kerf's bend, at least 1 and without a jump. Source: src/bend/NOTES.md, "One cell".
double peel_margin(const Cell& cell, double softness);

/// Strain at which opening kerfs peel the web from the uncut part, that margin taken off.
double peel_strain(const Cell& cell, const Material& material);

/// Strain at which this board breaks, with the kerfs on that side.
double break_strain(const Cell& cell, const Material& material, KerfsOn side);

/// Distance of the line that keeps its length from the plain (uncut) face: y_n.
Length length_keeping_depth(const Cell& cell, double softness);

/// Height of the hinge above the kerf's bottom: over the web's own middle line by `hinge_part`.
Length hinge_height(const Cell& cell);

/// Angle at which one kerf is closed.
Angle closing_angle(const Cell& cell);

/// Radius of the length-keeping line at which kerfs inside the bend close (elastic bend).
Length close_radius(const Cell& cell, double softness);

/// Radius of the circle of hinges, for a plain face of the given radius.
Length hinge_radius(const Cell& cell, KerfsOn side, Length plain_radius);

/// Width of an opened kerf's mouth after turning by `turn`.
Length opened_mouth(const Cell& cell, Angle turn);

/// Largest depth of a facet on the plain face at radius `radius`.
Length facet(const Cell& cell, double softness, Length radius);

/// Whether the ratios lie in the range for which the stiffness formula was checked; of a moulded board everywhere.
struct Range {
    bool depth = true;    ///< d/T in 0.3..0.9
    bool kerf = true;     ///< k/T in 0.08..0.5
    bool spacing = true;  ///< s/T in 0.2..4
    bool land = true;     ///< k <= 0.85 s
    bool all() const { return depth && kerf && spacing && land; }
};
Range checked_range(const Cell& cell);

}  // namespace kerfpacket::bend
