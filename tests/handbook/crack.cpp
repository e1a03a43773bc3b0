// A bound from outside: a kerf is at least as compliant as an edge crack of the same depth. The stress intensity is
// that of Tada, Paris and Irwin, The Stress Analysis of Cracks Handbook, single edge crack in pure bending, quoted FROM
// MEMORY in both of its forms; the first tests check that they agree with each other and with the deep-crack limit.

#include <cmath>

#include <gtest/gtest.h>
#include <boost/math/quadrature/gauss_kronrod.hpp>

#include "bend/cell.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

using measure::Angle;

/// F(a/W) in K = sigma sqrt(pi a) F, as a polynomial: within 0.2 % up to a/W = 0.6.
double stress_polynomial(double a) { return 1.122 + a * (-1.40 + a * (7.33 + a * (-13.08 + a * 14.0))); }

/// The same for any a/W, within 0.5 %.
double stress_factor(double a) {
    const double angle = Angle::pi * a / 2;
    return std::sqrt(std::tan(angle) / angle) * (0.923 + 0.199 * std::pow(1 - std::sin(angle), 4)) / std::cos(angle);
}

/// S(a/W) in rotation = (4 sigma / E') S, from energy release: S = 3 pi times the integral of a F^2.
template <class Factor>
double rotation_factor(Factor factor, double a) {
    return 3 * Angle::pi *
           boost::math::quadrature::gauss_kronrod<double, 31>::integrate(
               [&](double x) { return x * factor(x) * factor(x); }, 0.0, a);
}

/// Bending stiffness of a strip with one crack every `spacing` thicknesses, over the whole strip's. The crack turns
/// 24 M S/(E' W^2), the strip 12 M s/(E' W^3).
double cracked_stiffness(double rotation, double spacing) { return 1 / (1 + 2 * rotation / spacing); }

// The polynomial and the closed form, as remembered, differ by up to 2.2 %: the bound is known to about 4 %.
TEST(EdgeCrack, remembered_forms_agree) {
    for (const double depth : {0.1, 0.2, 0.3, 0.4, 0.5, 0.6})
        EXPECT_NEAR(stress_factor(depth) / stress_polynomial(depth), 1, 0.025) << depth;
}

// A deep crack leaves a ligament c in bending: K = 3.975 M / c^1.5 [memory], so S nears 3.975^2 / 24 / (1 - a/W)^2.
TEST(EdgeCrack, deep_crack_limit) {
    const double limit = 3.975 * 3.975 / 24;
    EXPECT_NEAR(rotation_factor(stress_factor, 0.97) * 0.03 * 0.03, limit, 0.02 * limit);
}

class KerfsFarApart : public testing::TestWithParam<double> {};

// Valid for narrow kerfs far apart, so: the narrowest and the farthest apart that the formula was checked for.
TEST_P(KerfsFarApart, are_more_compliant_than_cracks) {
    const double depth = GetParam();
    const double kerfed = stiffness_ratio({1_in, Length::inches(depth), 0.08_in, 4_in}, 1);
    const double cracked = cracked_stiffness(rotation_factor(stress_factor, depth), 4);
    EXPECT_LT(kerfed, cracked);
    if (depth <= 0.6) { EXPECT_LT(kerfed, cracked_stiffness(rotation_factor(stress_polynomial, depth), 4)); }
    // Along the width of the slot the web bends alone; beyond that a kerf should cost little more than a crack.
    const double slot = 0.08 / 4 * (std::pow(1 - depth, -3) - 1);
    EXPECT_NEAR(kerfed * (1 / cracked + slot), 1, 0.05);
}

INSTANTIATE_TEST_SUITE_P(Depths, KerfsFarApart, testing::Values(0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9));

}  // namespace
}  // namespace kerfpacket::bend
