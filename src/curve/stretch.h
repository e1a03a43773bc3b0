#pragma once
// What a line, an arc and a parametric stretch have in common: a parameter, a point with two derivatives, nodes at
// which length and turn are known. For a line or an arc the parameter is the fraction of its length.

#include <array>
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
/// The same between two of its places.
double turn_between(const Jet& from, const Jet& to);

/// A parametric stretch over an interval without a node. Length and turn from its start to any parameter in it are
/// Chebyshev series of the speed and of the rate of turning, integrated: to find a place by its length takes many
/// lengths, and a quadrature each would evaluate the stretch 15 times. As exact as the quadrature, since the nodes
/// stand where a rule of degree 13 has converged to 1e-12.
class LengthTable {
public:
    LengthTable(const Stretch& stretch, double from, double to);
    /// Length in mm and turn in radians, or how much of them goes to a unit of the parameter.
    struct Gone {
        double length = 0;
        double turned = 0;
    };
    /// From the start. Between `from` and `to`, both included.
    Gone operator()(double u) const;
    const Jet& start() const { return start_; }

    /// A parameter at which the stretch was evaluated for the table.
    struct Known {
        double u = 0;
        double length = 0;  ///< mm from the start, here in all
        double turned = 0;  ///< radians
        double speed = 0;
        double curvature = 0;
    };
    static constexpr std::size_t terms = 17;
    /// In their order, the start and the end among them.
    const std::array<Known, terms + 2>& known() const { return known_; }

private:
    /// Length and turn side by side.
    using Both = std::array<double, 2>;
    using Rates = std::array<Both, terms>;
    using Series = std::array<Both, terms + 1>;
    /// Of the integrals of what has these values at the zeros of the first polynomial left out; nothing at the start.
    Series integrated(const Rates& rates) const;
    Known known_at(double u, const Jet& there) const;

    double middle_ = 0;
    double half_ = 1;
    Jet start_;
    Series series_{};
    std::array<Known, terms + 2> known_{};
};

/// Parameters, both ends included, between which the stretch turns little and its length is one quadrature's work.
std::vector<double> node_parameters(const Stretch& stretch);

/// The stretch between two parameters, which may lie beyond its ends.
Stretch part_of(const Stretch& stretch, double from, double to);
Stretch reversed(const Stretch& stretch);
Stretch moved(const Stretch& stretch, Point by);
/// About the origin.
Stretch turned(const Stretch& stretch, Angle by);

}  // namespace kerfpacket::curve
