#include "bend/coupon.h"

#include <cmath>

#include <gtest/gtest.h>

#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

const Cell usual{0.75_in, 0.375_in, 0.118_in, 0.5_in};
constexpr double softness = 2.3;

Coupon coupon(Length chord, Length rise, Held held, KerfsOn side = KerfsOn::outside) {
    return {chord, rise, held, side};
}

// Source: design notes, "Coupon": at a chord of 12 in, 1/16 in on the rise is 12 %, 5.9 % and 2.5 % of the curvature.
TEST(Coupons, a_misread_rise_counts_less_the_higher_it_is) {
    const auto error = [](Length rise) { return coupon_error(coupon(12_in, rise, Held::disc), 0.0625_in, {}); };
    EXPECT_NEAR(error(0.5_in), 0.12, 0.005);
    EXPECT_NEAR(error(1_in), 0.059, 0.0005);
    EXPECT_NEAR(error(2_in), 0.025, 0.0005);
}

// The formula is the derivative of the curvature: compared with a finite difference.
TEST(Coupons, error_is_the_derivative_of_the_curvature) {
    const auto curvature = [](double chord, double rise) {
        return 1 / circle_radius(coupon(Length::inches(chord), Length::inches(rise), Held::disc)).inches();
    };
    for (const double rise : {0.4, 1.0, 2.5}) {
        const double here = curvature(12, rise);
        const double by_rise = std::abs(curvature(12, rise + 1e-5) - here) / here / 1e-5;
        const double by_chord = std::abs(curvature(12 + 1e-5, rise) - here) / here / 1e-5;
        const Coupon bent = coupon(12_in, Length::inches(rise), Held::disc);
        EXPECT_NEAR(coupon_error(bent, 1_in, {}), by_rise, 1e-4 * by_rise);
        EXPECT_NEAR(coupon_error(bent, {}, 1_in), by_chord, 1e-4 * by_chord);
    }
}

// R = (c^2 + 4 h^2)/(8 h). Source: Building Trades Pocketbook (International Correspondence Schools); Machinery's
// Handbook, 31st ed., p. 79: c 16, h 6 gives 8 1/3.
TEST(Coupons, circle_is_that_of_the_handbook) {
    EXPECT_NEAR(circle_radius(coupon(16_in, 6_in, Held::disc)).inches(), 25.0 / 3, 1e-12);
}

TEST(Coupons, are_bent_most_in_the_middle_unless_a_disc_holds_them) {
    EXPECT_EQ(middle_factor(coupon(12_in, 2_in, Held::disc)), 1);
    EXPECT_EQ(middle_factor(coupon(12_in, 2_in, Held::centre)), 1.5);
    EXPECT_NEAR(middle_factor(coupon(10_in, 5_in, Held::ends)), 1.234 + 0.025 + 0.03, 1e-12);
    EXPECT_THROW(middle_factor(coupon(10_in, 9_in, Held::ends)), measure::Bug);
}

// A bent strip whose ends are pushed together is an elastica. For small rises its curvature is a half wave of sine,
// y = m sin(pi x/c): pi^2 m/c^2 in the middle against 8 m/c^2 of the circle, a factor of pi^2/8 = 1.2337.
TEST(Coupons, pushed_together_a_little_are_a_half_wave_of_sine) {
    const double half_wave = measure::Angle::pi * measure::Angle::pi / 8;
    EXPECT_NEAR(middle_factor(coupon(100_in, 0.1_in, Held::ends)), half_wave, 1e-3);
}

// A strip pushed at its middle between two supports has a moment that rises evenly to the middle: curvature k (1 -
// |x|), deflection k/3 over the half span squared against k'/2 for the circle: a factor of 3/2.
TEST(Coupons, pushed_at_the_middle_are_bent_half_as_much_again) {
    EXPECT_DOUBLE_EQ(middle_factor(coupon(100_in, 1_in, Held::centre)), (1.0 / 2) / (1.0 / 3));
}

TEST(Coupons, strain_is_that_of_a_board_bent_to_the_same_radius) {
    const Coupon bent = coupon(12_in, 1.25_in, Held::disc);
    const Length below = length_keeping_depth(usual, softness);
    EXPECT_NEAR(coupon_strain(bent, usual, softness), web_strain(usual, softness, circle_radius(bent) + below), 1e-15);
    const Coupon inside = coupon(12_in, 1.25_in, Held::disc, KerfsOn::inside);
    EXPECT_NEAR(coupon_strain(inside, usual, softness), web_strain(usual, softness, circle_radius(inside) - below),
                1e-15);
    EXPECT_NEAR(
        coupon_strain(coupon(12_in, 1.25_in, Held::centre), usual, softness) / coupon_strain(bent, usual, softness),
        1.5, 1e-12);
}

TEST(Coupons, that_close_give_back_the_radius_at_which_they_did) {
    Cell cell = usual;
    for (const double part : {0.1, 0.5, 0.9}) {
        cell.hinge_part = part;
        const Length closing = close_radius(cell, softness);
        // Chord and rise of an arc of that radius, on the plain face outside it.
        const Length plain = closing + length_keeping_depth(usual, softness);
        const Length rise = plain - Length::inches(std::sqrt(plain.inches() * plain.inches() - 0.25));
        const auto found = closed_hinge_part(coupon(1_in, rise, Held::disc, KerfsOn::inside), usual, softness);
        ASSERT_TRUE(found) << part;
        EXPECT_NEAR(*found, part, 1e-9);
    }
    EXPECT_FALSE(closed_hinge_part(coupon(12_in, 0.2_in, Held::disc, KerfsOn::inside), usual, softness));
}

/// A lone kerf whose hinge stands at that part of the web, raised at that distance until it closes.
Coupon raised(const Cell& cell, double soft, Length away) {
    const double turn = 2 * std::atan(cell.kerf / (2 * (cell.depth + hinge_height(cell))));
    Cell alone = cell;
    alone.spacing = cell.thickness * 100;
    const Length hinge = hinge_length(alone, soft) * (std::pow(cell.thickness / cell.web(), 3) - 1);
    const double whole = turn * (1 + away / 3 / hinge);
    return {away, away * std::tan(whole), Held::one_kerf, KerfsOn::inside};
}

TEST(OneKerf, gives_back_the_hinge_that_it_was_made_with) {
    for (const double depth : {0.375, 0.5, 0.625})
        for (const double part : {0.1, 0.5, 0.9})
            for (const Length away : {6_in, 12_in, 24_in}) {
                Cell cell{0.75_in, Length::inches(depth), 0.118_in, 0.5_in};
                cell.hinge_part = part;
                const Coupon coupon = raised(cell, 2.3, away);
                cell.hinge_part = 0.5;
                const auto found = lone_hinge_part(coupon, cell, 2.3);
                ASSERT_TRUE(found);
                EXPECT_NEAR(*found, part, 1e-6) << depth << " " << part;
            }
}

TEST(OneKerf, that_cannot_be_tells_nothing) {
    const Cell cell{0.75_in, 0.625_in, 0.118_in, 0.5_in};
    EXPECT_FALSE(lone_hinge_part({12_in, 0.5_in, Held::one_kerf, KerfsOn::inside}, cell, 2.3)) << "not closed yet";
    EXPECT_FALSE(lone_hinge_part({12_in, 5_in, Held::one_kerf, KerfsOn::inside}, cell, 2.3)) << "broken";
}

// Theatre carpenters take the rise at the distance of the outside radius for the spacing (D. J. Culhane, "A Measured
// Approach to Kerfing", in Technical Design Solutions for Theatre, Focal Press). Kerfs that far apart close near that
// radius by our formula too, within a sixteenth on the rise and what a deep kerf's land bends.
TEST(OneKerf, agrees_with_the_rule_that_the_rise_is_the_spacing) {
    for (const double radius : {12.0, 24.0, 36.0})
        for (const double depth : {0.625, 0.6875}) {
            Cell cell{0.75_in, Length::inches(depth), 0.118_in, 0.5_in};
            const Length away = Length::inches(radius);
            const Coupon coupon = raised(cell, 2.3, away);
            cell.spacing = coupon.rise;
            const double error = 0.0625 / coupon.rise.inches() + 0.08;
            EXPECT_NEAR(close_radius(cell, 2.3) / away, 1, error) << radius << " " << depth;
        }
}

// Old building-construction texts give spacing = R k / d with kerfs in the concave face (Riley 1905, as the design
// notes have it): our closing radius with the hinge at the kerf's bottom, for a web so thin that the land does not
// bend.
TEST(OneKerf, with_its_hinge_at_the_bottom_is_the_old_rule) {
    Cell cell{0.75_in, 0.7_in, 0.1_in, 0.5_in};
    cell.hinge_part = 0;
    const Length radius = close_radius(cell, 1);
    EXPECT_NEAR(cell.spacing / (radius * (cell.kerf / cell.depth)), 1, 0.02);
}

}  // namespace
}  // namespace kerfpacket::bend
