// Openings and walls given by ordinates: the answer that the job uses, moved to the frame.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "support/heads.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;
using tests::arch_of;
using tests::at_line;
using tests::head_of;

/// A point every so far along a base line; heights by a rule, all in inches.
template <class Height>
job::Ordinates ordinates(double from, double to, double step, Height height) {
    job::Ordinates given;
    given.at = {23, 1};
    for (double x = from; x <= to + 1e-9; x += step)
        given.points.push_back({at_line(Length::inches(x), 23), at_line(Length::inches(height(x)), 23)});
    return given;
}

job::Opening opening_of(job::Ordinates given, std::optional<job::Fit> fit = std::nullopt) {
    job::Opening opening = tests::lantern_court();
    opening.shape.value = job::Shape::ordinates;
    opening.span.value = given.points.back().station.value - given.points.front().station.value;
    opening.rise = {};
    if (fit) given.fit = at_line(*fit, tests::fit_line);
    opening.ordinates = std::move(given);
    return opening;
}

/// A segment of radius 50 over a span of 60, rise 10.
double segment(double x) { return std::sqrt(2500 - (x - 30) * (x - 30)) - 40; }

/// Half of an ellipse of 80 by 24, its ends left out where a tape finds no station.
double ellipse(double x) { return 24 * std::sqrt(1 - (x - 40) * (x - 40) / 1600); }

TEST(Measured, circle_runs_from_the_first_station_to_the_last) {
    const Head head = head_of(opening_of(ordinates(0, 60, 4, segment), job::Fit::arc));
    const Curve arch = arch_of(head).front();
    ASSERT_TRUE(arch.is_exact_path());
    const geom::Segment arc = arch.path().segments().front();
    EXPECT_NEAR(arc.radius().inches(), 50, 1e-6);
    EXPECT_NEAR(arc.from.x.inches(), -30, 1e-7);
    EXPECT_NEAR(arc.from.y.inches(), 0, 1e-6);
    EXPECT_NEAR(head.span.inches(), 60, 1e-7);
    EXPECT_NEAR(head.rise.inches(), 10, 1e-6);
    EXPECT_LT(arch.turn(), Angle());
    ASSERT_TRUE(head.survey);
    EXPECT_NEAR(head.survey->circle->centre.y.inches(), -40, 1e-6);
    EXPECT_NEAR(head.survey->points.front().x.inches(), -30, 1e-6);
}

TEST(Measured, ellipse_keeps_its_axes) {
    const Head head = head_of(opening_of(ordinates(2, 78, 4, ellipse), job::Fit::ellipse));
    const Curve arch = arch_of(head).front();
    EXPECT_NEAR(head.span.inches(), 76, 1e-6);
    EXPECT_NEAR(head.rise.inches(), 24 - ellipse(2), 1e-5);
    EXPECT_NEAR(Length::mm(-1 / arch.at(arch.length() / 2).curvature).inches(), 1600 / 24.0, 1e-4);
    EXPECT_LT(arch.turn(), Angle());
}

TEST(Measured, fair_curve_is_used_where_the_job_makes_no_choice) {
    const Head head = head_of(opening_of(ordinates(0, 60, 4, segment)));
    EXPECT_EQ(head.survey->used, job::Fit::fair);
    EXPECT_NEAR(head.span.inches(), 60, 1.0 / 8);
    EXPECT_NEAR(head.rise.inches(), 10, 1.0 / 8);
    const Curve arch = arch_of(head).front();
    const Point from = arch.at({}).point;
    const Point to = arch.at(arch.length()).point;
    EXPECT_NEAR((from.x + to.x).mm(), 0, 1e-9);
    EXPECT_NEAR((from.y + to.y).mm(), 0, 1e-9);
    EXPECT_EQ(head.left_leg().at(head.left_leg().length()).point, from);
    EXPECT_EQ(head.right_leg().at({}).point, to);
}

TEST(Measured, arc_that_misses_by_more_than_an_eighth_is_refused) {
    job::Ordinates given = ordinates(0, 60, 4, segment);
    given.points[5].height.value += 0.5_in;
    const std::string wrong = tests::refusal(opening_of(given, job::Fit::arc));
    EXPECT_EQ(wrong.find("28: the best circle, R 49.696 in, misses the point at station 20 in by 0.4"), 0U) << wrong;
    EXPECT_NE(wrong.find("an arc may miss by 1/8 in at most"), std::string::npos);
    EXPECT_EQ(tests::refusal(opening_of(given, job::Fit::fair)), "");
}

TEST(Measured, straight_line_is_no_head) {
    const auto flat = [](double x) { return 3 + x / 20; };
    const std::string wrong = tests::refusal(opening_of(ordinates(0, 60, 10, flat)));
    EXPECT_EQ(wrong.find("23: these points lie in a straight line"), 0U) << wrong;
}

TEST(Measured, ellipse_needs_an_ellipse) {
    const std::string wrong = tests::refusal(opening_of(ordinates(0, 60, 20, segment), job::Fit::ellipse));
    EXPECT_EQ(wrong.find("28: no ellipse goes through these points"), 0U) << wrong;
}

job::Wall wall_of(job::Ordinates given, job::Side side, job::Fit fit) {
    job::Wall wall;
    wall.side.value = side;
    given.fit = at_line(fit, tests::fit_line);
    wall.ordinates = std::move(given);
    wall.board = tests::mdf_board();
    return wall;
}

class MeasuredWalls : public testing::TestWithParam<job::Side> {};

// The base line, a straight edge, stands off the string: the ends have heights 2 and 5 over 60.
TEST_P(MeasuredWalls, lie_on_the_string_between_their_ends) {
    const double tilt = std::atan2(3.0, 60.0);
    const double chord = std::hypot(3.0, 60.0);
    const double radius = 55;
    // The circle of radius 55 through (0, 2) and (60, 5), bulging up.
    const double drop = std::sqrt(radius * radius - chord * chord / 4);
    const double cx = 30 + drop * std::sin(tilt);
    const double cy = 3.5 - drop * std::cos(tilt);
    const auto height = [&](double x) { return cy + std::sqrt(radius * radius - (x - cx) * (x - cx)); };
    for (const job::Fit fit : {job::Fit::arc, job::Fit::fair}) {
        const Course there = course(wall_of(ordinates(0, 60, 5, height), GetParam(), fit), measure::Unit::inch).value();
        const bool up = GetParam() == job::Side::concave;
        const double near = fit == job::Fit::arc ? 1e-5 : 0.13;
        EXPECT_NEAR(there.chord.inches(), chord, near);
        EXPECT_NEAR(there.rise.inches(), radius - drop, near);
        EXPECT_NEAR(there.curve.at({}).point.x.inches(), -chord / 2, near);
        EXPECT_NEAR(there.curve.at({}).point.y.inches(), 0, near);
        const Point middle = there.curve.at(there.curve.length() / 2).point;
        EXPECT_NEAR(middle.y.inches(), up ? radius - drop : drop - radius, near);
        EXPECT_EQ(there.curve.turn() < Angle(), up);
    }
}

// End angles are said against the base line, heights up on the side that bulges; here those of the circle itself.
TEST_P(MeasuredWalls, end_angles_are_turned_onto_the_string) {
    const auto height = [](double x) { return 4 + segment(x); };
    job::Ordinates given = ordinates(0, 60, 6, height);
    const double lean = std::asin(0.6) * 180 / std::numbers::pi;
    given.end_angles = {{at_line(Angle::degrees(lean), 29), at_line(Angle::degrees(-lean), 29)}};
    const Course there = course(wall_of(given, GetParam(), job::Fit::fair), measure::Unit::inch).value();
    const double sign = GetParam() == job::Side::concave ? 1 : -1;
    EXPECT_NEAR(there.curve.at({}).direction.angle().degrees(), sign * lean, 0.01);
    EXPECT_NEAR(there.curve.at(there.curve.length()).direction.angle().degrees(), -sign * lean, 0.01);
}

INSTANTIATE_TEST_SUITE_P(Sides, MeasuredWalls, testing::Values(job::Side::concave, job::Side::convex));

}  // namespace
}  // namespace kerfpacket::curve
