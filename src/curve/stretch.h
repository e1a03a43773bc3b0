#pragma once
// What a line, an arc and a parametric stretch have in common: a parameter, a point with two derivatives, nodes at
// which length and turn are known. For a line or an arc the parameter is the fraction of its length.

#include <vector>

#include "curve/curve.h"

namespace kerfpacket::curve {

/// Evaluates a stretch, also beyond its ends.
Jet jet(const Stretch& stretch, double u);
double first_parameter(const Stretch& stretch);
double last_parameter(const Stretch& stretch);
/// mm of length for a unit of the parameter.
double speed(const Jet& jet);
/// Signed, 1/mm.
double curvature(const Jet& jet);
Direction direction(const Jet& jet);

/// Length, in mm, between two parameters that have no node between them; negative when the second is the smaller.
double length_between(const Stretch& stretch, double from, double to);
/// Signed turn between two parameters so near that it is less than half a full turn.
double turn_between(const Stretch& stretch, double from, double to);

/// Parameters, both ends included, between which the stretch turns little and its length is one quadrature's work.
std::vector<double> node_parameters(const Stretch& stretch);

/// The stretch between two parameters, which may lie beyond its ends.
Stretch part_of(const Stretch& stretch, double from, double to);
Stretch reversed(const Stretch& stretch);
Stretch moved(const Stretch& stretch, Point by);
/// About the origin.
Stretch turned(const Stretch& stretch, Angle by);

}  // namespace kerfpacket::curve
