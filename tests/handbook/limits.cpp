// Least radius, peel, closing and the length-keeping line. Unless said otherwise the figures were computed for this
// project from its finite-element model, and are rounded to the digits shown.

#include <cmath>

#include <gtest/gtest.h>

#include "bend/assess.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

const Material& mdf() { return *find_material("mdf"); }

Cell three_quarter(double depth, double kerf, double spacing) {
    return {0.75_in, Length::inches(depth), Length::inches(kerf), Length::inches(spacing)};
}

struct Least {
    double depth, kerf, spacing, radius;
};

class LeastRadius : public testing::TestWithParam<Least> {};

TEST_P(LeastRadius, of_mdf_with_kerfs_inside) {
    const Least row = GetParam();
    const Cell cell = three_quarter(row.depth, row.kerf, row.spacing);
    const double allowed = break_strain(cell, mdf(), KerfsOn::inside);
    EXPECT_EQ(allowed, 0.010);
    EXPECT_NEAR(least_radius(cell, mdf().softness, allowed).inches(), row.radius, 0.05 + 1e-9);
}

INSTANTIATE_TEST_SUITE_P(ThreeQuarterBoard, LeastRadius,
                         testing::Values(Least{.375, .1, .25, 18.9}, Least{.375, .1, .5, 20.1},
                                         Least{.375, .1, 1, 24.6}, Least{.625, .125, .25, 6.5},
                                         Least{.625, .125, .5, 8.2}, Least{.6875, .125, .25, 3.5},
                                         Least{.6875, .125, .5, 5.4}));

TEST(Peel, worked_values) {
    EXPECT_NEAR(peel_strain(three_quarter(.375, .1, .5), mdf()), 0.0069, 5e-5);
    EXPECT_NEAR(peel_strain(three_quarter(.375, .1, 1), mdf()), 0.0043, 5e-5);
}

// Utilisations of one half-depth board with kerfs outside, as a row: 1.46, 0.96, 0.81 at 3/4, 1/2, 1/4 in. The radius
// is not given with them, so their ratios are what can be checked.
TEST(Peel, closer_spacing_helps_when_kerfs_open) {
    const auto used = [](double spacing) {
        const Cell cell = three_quarter(.375, .118, spacing);
        return web_strain(cell, mdf().softness, 30_in) / break_strain(cell, mdf(), KerfsOn::outside);
    };
    EXPECT_NEAR(used(.75) / used(.5), 1.46 / 0.96, 0.03);
    EXPECT_NEAR(used(.25) / used(.5), 0.81 / 0.96, 0.03);
}

TEST(LengthKeeping, half_depth_semicircle_differs_from_its_face_by_0_59_in) {
    const Length below_face = length_keeping_depth(three_quarter(.375, .118, .5), mdf().softness);
    EXPECT_NEAR(below_face.inches() * measure::Angle::pi, 0.59, 0.02);
    // It lies between the middle of the web and the middle of the board.
    EXPECT_GT(below_face, 0.1875_in);
    EXPECT_LT(below_face, 0.375_in);
}

// Riley (1905), and old building-construction texts after him: spacing = R k / d for kerfs that close in the concave
// face. That is the exact fold with the hinge at the kerf's bottom, the limit of a very thin web.
TEST(Closing, thin_web_is_rileys_rule) {
    for (const double radius : {12.0, 40.0, 200.0}) {
        const Cell cell{0.75_in, 0.75_in - 1e-9_in, 0.118_in, 0.5_in};
        const Length hinges = hinge_radius(cell, KerfsOn::inside, Length::inches(radius));
        const double spacing = 2 * hinges.inches() * std::tan(closing_angle(cell).radians() / 2);
        EXPECT_NEAR(spacing, radius * 0.118 / 0.75, 1e-6);
    }
}

// Fold a row of facets by the closing angle: neighbouring kerf walls must meet at the kerf's mouth. Plain trigonometry,
// for webs of any thickness.
TEST(Closing, folded_walls_meet_at_the_mouth) {
    for (const double depth : {.25, .375, .5, .625}) {
        const Cell cell = three_quarter(depth, .118, .5);
        const double hinge_to_mouth = depth + cell.web().inches() / 2;
        const double half = closing_angle(cell).radians() / 2;
        // A wall stands k/2 beside the hinge; turned by half the angle its mouth corner comes onto the middle line.
        EXPECT_NEAR(hinge_to_mouth * std::sin(half) - .118 / 2 * std::cos(half), 0, 1e-12);
        EXPECT_NEAR(opened_mouth(cell, -closing_angle(cell)).inches(), 0, 1e-12);
    }
}

// An elastic board with no stiffness left between the webs (f = 0) closes where the exact fold does: s = k R_h/(d + h).
TEST(Closing, elastic_radius_nears_the_exact_fold) {
    const Cell cell = three_quarter(.625, .118, .25);
    const double exact = .25 * (.625 + .0625) / .118;
    const double elastic = close_radius(cell, mdf().softness).inches();
    EXPECT_LT(elastic, exact);
    EXPECT_NEAR(elastic / exact, 1, 0.01);
}

}  // namespace
}  // namespace kerfpacket::bend
