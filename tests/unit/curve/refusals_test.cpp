// What a shape cannot be: the message has the figures, the hint a figure that works when it is typed in.

#include <gtest/gtest.h>

#include "support/heads.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;
using tests::at_line;
using tests::head_of;
using tests::on_legs;
using tests::opening_of;
using tests::opening_without_rise;
using tests::refusal;

job::Opening with_radius(job::Opening opening, std::optional<job::Sourced<Length>> job::Opening::*which, Length value,
                         int line = tests::radius_line) {
    opening.*which = at_line(value, line);
    return opening;
}

TEST(Refusals, segmental_and_horseshoe_part_at_half_the_span) {
    EXPECT_EQ(refusal(opening_of(job::Shape::segmental, 60_in, 31_in)),
              "24: rise 31 in is more than a segmental head over this span can have | expected at most 30 in; a head "
              "that goes on past plumb is shape = \"horseshoe\"\n");
    EXPECT_EQ(refusal(opening_of(job::Shape::segmental, 60_in, 30_in)), "");
    EXPECT_EQ(refusal(opening_of(job::Shape::horseshoe, 60_in, 30_in)),
              "24: rise 30 in is too little for a horseshoe head over this span | expected 30.001 in to 111.961 in\n");
    EXPECT_EQ(refusal(opening_of(job::Shape::horseshoe, 60_in, 30.001_in)), "");
    EXPECT_EQ(refusal(opening_of(job::Shape::horseshoe, 60_in, 111.961_in)), "");
    EXPECT_NE(refusal(opening_of(job::Shape::horseshoe, 60_in, 112_in)).find("rise 112 in is too much"),
              std::string::npos);
}

TEST(Refusals, tilt_takes_from_the_rise) {
    // Springs 8 in apart over 60: the string is 60.531 long and 7.595 degrees out of level;
    // 30.2655 tan((90 - 7.595)/2 degrees) = 26.4977.
    const std::string wrong = refusal(on_legs(opening_of(job::Shape::segmental, 60_in, 28_in), 80_in, 72_in));
    EXPECT_NE(wrong.find("expected at most 26.497 in;"), std::string::npos) << wrong;
    EXPECT_EQ(refusal(on_legs(opening_of(job::Shape::segmental, 60_in, 26.497_in), 80_in, 72_in)), "");
    EXPECT_EQ(refusal(on_legs(opening_of(job::Shape::horseshoe, 60_in, 28_in), 80_in, 72_in)), "");
}

TEST(Refusals, three_centred_rises_less_than_half_the_span) {
    EXPECT_EQ(refusal(opening_of(job::Shape::three_centred, 1500_mm, 760_mm), measure::Unit::millimetre),
              "24: rise 760 mm is more than a three-centered head over this span can have | expected less than half the "
              "span: at most 749.99 mm; at half the span it is shape = \"semicircular\"\n");
    EXPECT_EQ(refusal(opening_of(job::Shape::three_centred, 1500_mm, 749.99_mm), measure::Unit::millimetre), "");
    const std::string uneven = refusal(on_legs(opening_of(job::Shape::three_centred, 60_in, 29_in), 74_in, 70_in));
    EXPECT_NE(uneven.find("at most 27.999 in with these legs"), std::string::npos) << uneven;
    EXPECT_EQ(refusal(on_legs(opening_of(job::Shape::three_centred, 60_in, 27.999_in), 74_in, 70_in)), "");
}

TEST(Refusals, three_centred_radii_that_do_not_meet) {
    const job::Opening bare = opening_of(job::Shape::three_centred, 60_in, 20_in);
    EXPECT_EQ(refusal(with_radius(bare, &job::Opening::side_radius, 20_in)),
              "26: side_radius 20 in is too large to meet a crown arc at this rise | expected less than the rise over "
              "the spring: at most 19.999 in\n");
    EXPECT_EQ(refusal(with_radius(bare, &job::Opening::side_radius, 19.999_in)), "");
    EXPECT_EQ(refusal(with_radius(bare, &job::Opening::side_radius, 0.02_in)), "");
}

TEST(Refusals, pointed_radius_and_rise) {
    const job::Opening bare = opening_without_rise(job::Shape::pointed, 38.5_in);
    EXPECT_EQ(refusal(with_radius(bare, &job::Opening::radius, 19_in)),
              "26: radius 19 in is no more than half the span, 19-1/4 in: the sides do not meet at a point | expected "
              "at least 19.251 in; the full span gives the equilateral head\n");
    EXPECT_EQ(refusal(with_radius(bare, &job::Opening::radius, 19.251_in)), "");
    EXPECT_EQ(refusal(with_radius(bare, &job::Opening::radius, 5_in)).substr(0, 17), "26: radius 5 in i");
    EXPECT_EQ(
        refusal(on_legs(with_radius(bare, &job::Opening::radius, 46_in), 61_in, 60_in)),
        "26: radius does not fit springs that stand at different heights | the two sides then have radii of their "
        "own: give rise instead of radius\n");
    EXPECT_EQ(refusal(opening_of(job::Shape::pointed, 40_in, 20_in)),
              "24: rise 20 in is too little for a pointed head over this span | expected more than half the span over "
              "each spring: at least 20.001 in; a low pointed head is shape = \"tudor\"\n");
    EXPECT_EQ(refusal(opening_of(job::Shape::pointed, 40_in, 20.001_in)), "");
    const std::string uneven = refusal(on_legs(opening_of(job::Shape::pointed, 40_in, 20.5_in), 74_in, 72_in));
    EXPECT_NE(uneven.find("at least 21.001 in"), std::string::npos) << uneven;
    EXPECT_EQ(refusal(on_legs(opening_of(job::Shape::pointed, 40_in, 21.001_in), 74_in, 72_in)), "");
}

TEST(Refusals, tudor_radii_that_do_not_meet) {
    const job::Opening low = opening_of(job::Shape::tudor, 60_in, 20_in);
    EXPECT_EQ(refusal(with_radius(low, &job::Opening::side_radius, 21_in)),
              "26: side_radius 21 in is too large to meet a crown arc | expected at most 19.999 in with this span and "
              "rise\n");
    EXPECT_EQ(refusal(with_radius(low, &job::Opening::side_radius, 19.999_in)), "");
    // (30^2 + 20^2 - 2 * 30 * 8)/(2 (20 - 8)) = 34.1667
    const job::Opening side = with_radius(low, &job::Opening::side_radius, 8_in);
    EXPECT_EQ(refusal(with_radius(side, &job::Opening::crown_radius, 34_in, tests::second_radius_line)),
              "27: crown_radius 34 in is too small to make a point with side_radius 8 in | expected at least 34.167 in "
              "with side_radius 8 in, or a side_radius of at most 7.499 in\n");
    EXPECT_EQ(refusal(with_radius(side, &job::Opening::crown_radius, 34.167_in)), "");
    const job::Opening smaller = with_radius(low, &job::Opening::side_radius, 7.499_in);
    EXPECT_EQ(refusal(with_radius(smaller, &job::Opening::crown_radius, 34_in)), "");
    // (30^2 + 20^2)/(2 * 20) = 32.5
    EXPECT_EQ(refusal(with_radius(low, &job::Opening::crown_radius, 32_in, tests::second_radius_line)),
              "27: crown_radius 32 in is too small to make a point | expected at least 32.501 in\n");
    EXPECT_EQ(refusal(with_radius(low, &job::Opening::crown_radius, 32.501_in)), "");
    // A high one ends at the one arc, (30^2 + 40^2)/(2 * 30) = 41.6667.
    const job::Opening high = opening_of(job::Shape::tudor, 60_in, 40_in);
    EXPECT_NE(refusal(with_radius(high, &job::Opening::side_radius, 42_in)).find("at most 41.666 in"),
              std::string::npos);
    EXPECT_EQ(refusal(with_radius(high, &job::Opening::side_radius, 41.666_in)), "");
    EXPECT_NE(refusal(with_radius(high, &job::Opening::crown_radius, 41_in)).find("at least 41.667 in"),
              std::string::npos);
    EXPECT_EQ(refusal(with_radius(high, &job::Opening::crown_radius, 41.667_in)), "");
}

TEST(Refusals, eyebrow) {
    EXPECT_EQ(
        refusal(opening_of(job::Shape::eyebrow, 60_in, 31_in)),
        "24: rise 31 in is more than an eyebrow over this span can have | expected at most 30 in: there the curve "
        "is plumb between its arcs\n");
    EXPECT_EQ(refusal(opening_of(job::Shape::eyebrow, 60_in, 30_in)), "");
    // tan(lean/2) = 1/3, sin(lean) = 0.6, both radii 30/0.6 = 50.
    const job::Opening bare = opening_of(job::Shape::eyebrow, 60_in, 10_in);
    EXPECT_EQ(refusal(with_radius(bare, &job::Opening::reverse_radius, 50_in)),
              "26: reverse_radius 50 in leaves no room for the arc between | expected at most 49.999 in with this span "
              "and rise\n");
    EXPECT_EQ(refusal(with_radius(bare, &job::Opening::reverse_radius, 49.999_in)), "");
}

TEST(Refusals, legs_that_leave_a_half_without_rise) {
    for (const job::Shape shape : {job::Shape::elliptical, job::Shape::three_centred, job::Shape::parabolic,
                                   job::Shape::catenary, job::Shape::pointed, job::Shape::tudor}) {
        EXPECT_EQ(refusal(on_legs(opening_of(shape, 60_in, 4_in), 80_in, 72_in)),
                  "25: legs that differ by 8 in leave half of this head without a rise | expected a rise of at least "
                  "4.001 in, or legs that differ by at most 7.999 in\n");
    }
    EXPECT_EQ(refusal(on_legs(opening_of(job::Shape::elliptical, 60_in, 4.001_in), 80_in, 72_in)), "");
    EXPECT_EQ(refusal(on_legs(opening_of(job::Shape::elliptical, 60_in, 4_in), 79.999_in, 72_in)), "");
    EXPECT_EQ(refusal(on_legs(opening_without_rise(job::Shape::semicircular, 60_in), 12_in, 72_in)),
              "25: legs that differ by 60 in leave half of this head without a rise | expected legs that differ by at "
              "most 59.999 in\n");
}

TEST(Refusals, three_centred_on_legs_that_no_rise_would_suit) {
    EXPECT_EQ(
        refusal(on_legs(opening_of(job::Shape::three_centred, 60_in, 16_in), 102_in, 72_in)),
        "25: legs that differ by 30 in are too uneven for a three-centered head | expected less than half the span: "
        "at most 29.999 in\n");
    EXPECT_EQ(refusal(on_legs(opening_of(job::Shape::three_centred, 60_in, 15_in), 101.9_in, 72_in)), "");
}

TEST(Refusals, hanging_and_thrown_curves_take_any_rise) {
    for (const double rise : {1.0 / 64, 1.0, 30.0, 500.0, 12000.0})
        for (const job::Shape shape : {job::Shape::parabolic, job::Shape::catenary, job::Shape::elliptical}) {
            const Head head = head_of(opening_of(shape, 60_in, Length::inches(rise)));
            const Curve arch = tests::arch_of(head).front();
            EXPECT_TRUE(arch.length().finite());
            EXPECT_GT(arch.length(), 2 * measure::hypot(30_in, Length::inches(rise)));
            EXPECT_NEAR(arch.at(arch.length() / 2).point.y.inches(), rise, 1e-9 * rise);
        }
}

}  // namespace
}  // namespace kerfpacket::curve
