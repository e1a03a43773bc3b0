#pragma once
// One cell of a kerfed board in plane elasticity, by finite elements: what the closed form of bend/cell.h was fitted
// to, worked out anew.

#include <functional>

#include "bend/cell.h"
#include "cell_grid.h"

namespace kerfpacket::elements {

using measure::Length;

/// What a board is made of: orthotropic, its axes along the board and through its thickness, in plane stress. Moduli in
/// any one unit: only their ratios matter to what is asked here.
struct Stuff {
    double along = 1;    ///< E along the board, across the kerfs
    double through = 1;  ///< E through the thickness
    double shear = 0.5;  ///< G between the two
    double poisson = 0;  ///< stretched along the board: thinning over stretch
};

/// E = 1, G = E / (2 (1 + nu)).
Stuff isotropic(double poisson);

/// A board soft through its thickness by so much that its reach factor is the factor O of the design notes. E along,
/// E through and the Poisson ratio are of the order of handbook figures, from memory; G is then chosen to give O.
Stuff soft(double along, double through, double poisson, double reach);

/// How much farther than in an isotropic board a disturbance reaches along this one: lambda^(-1/4) ((1 + rho)/2)^(1/2)
/// with lambda = E_through/E_along, rho = sqrt(E_along E_through)/(2 G) - sqrt(nu nu'). Source: orthotropy rescaling,
/// Suo, Delamination specimens for orthotropic materials, J. Appl. Mech. 57 (1990) 627-634, from memory.
double reach_factor(const Stuff& stuff);

/// What a cell does in pure bending without pull.
struct Bent {
    double stiffness_ratio = 0;   ///< r
    Length length_keeping_depth;  ///< y_n: from the plain face, where the ends of the cell keep their distance
    Length close_radius;          ///< of that line, where the kerf's mouth is shut
};

/// How half a cell, a kerf's middle to the land's, resists its end plane's movement: pull and moment about the back
/// (the kerf face) under a stretch at the back and a turn, per unit width. In lengths and with E along the board 1.
struct HalfCell {
    double pull_stretch = 0;
    double pull_turn = 0;  ///< and moment by stretch
    double moment_turn = 0;
};
HalfCell half_cell(const bend::Cell& cell, const Stuff& stuff, const Grading& grading = {});

/// What a board is made of at a height over the plain face, in T.
using Layers = std::function<Stuff(double)>;

/// Curvature of a cell of layers, times T, under a unit moment; `grading.also` has the heights where layers meet.
double curvature_of(const bend::Cell& cell, const Layers& layers, const Grading& grading);

/// Bends a cell; its depth may be nought (a solid board).
Bent bend_cell(const bend::Cell& cell, const Stuff& stuff, const Grading& grading = {});

}  // namespace kerfpacket::elements
