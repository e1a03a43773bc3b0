#pragma once
// How one cell yields, for whoever asks several things of it: they all hang on the same few powers.

#include <utility>

#include "bend/cell.h"

namespace kerfpacket::bend {

/// What of a cell hangs on the depth of its kerf alone, not on how far the next one is.
struct LoneKerf {
    LoneKerf(const Cell& cell, double softness);

    double web;           ///< t/T, or what gives a flat board of one stuff a web as stiff as that of these plies
    Length reach;         ///< b: how far the bend of a lone kerf reaches into the uncut parts
    double reach_raised;  ///< to the power in which reach and land are blended
};

/// Reckons once what strain, closing, facet and peeling of a cell share. The members are the functions of `cell.h`. The
/// cell must outlive it.
class Yield {
public:
    Yield(const Cell& cell, double softness) : Yield(cell, softness, LoneKerf(cell, softness)) {}
    /// With the lone kerf of this cell, or of one that differs from it in its spacing alone.
    Yield(const Cell& cell, double softness, const LoneKerf& lone);

    const Cell& cell() const { return cell_; }
    Length hinge_length() const { return hinge_; }
    double stiffness_ratio() const { return stiffness_; }
    double web_strain(Length radius) const { return least_radius(1) / radius; }
    Length least_radius(double allowed) const;
    double peel_margin() const;
    double peel_strain(const Material& material) const;
    double break_strain(const Material& material, KerfsOn side) const;
    Length length_keeping_depth() const;
    Length close_radius() const;
    Length facet(Length radius) const;

private:
    Length land() const { return cell_.spacing - cell_.kerf; }
    double stiff_share() const { return 1 - hinge_ / cell_.spacing; }
    /// f: how far the length-keeping line moves from the middle of the web toward the middle of the board.
    double shift() const { return stiff_share() * stiffness_; }

    const Cell& cell_;
    double softness_;
    double web_;             ///< as in LoneKerf
    Length reach_;           ///< the same
    double blended_ = 0;     ///< reach and land, blended to a length in mm
    double in_blended_ = 0;  ///< part of the reach in what is blended
    Length hinge_;           ///< L
    double stiffness_ = 1;   ///< r
};

/// Kerfs of one depth, at one spacing after the other.
class AtSpacings {
public:
    AtSpacings(Cell cell, double softness) : cell_(std::move(cell)), softness_(softness), lone_(cell_, softness) {}

    /// Holds until the next is asked for.
    Yield at(Length spacing) {
        cell_.spacing = spacing;
        return {cell_, softness_, lone_};
    }

private:
    Cell cell_;
    double softness_;
    LoneKerf lone_;
};

}  // namespace kerfpacket::bend
