#include <gtest/gtest.h>

#include "curve/survey.h"
#include "measured_points.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;

job::Ordinates written(const std::vector<Point>& points) {
    job::Ordinates written;
    for (const Point p : points) written.points.push_back({{p.x, {}}, {p.y, {}}});
    return written;
}

Survey survey_of(const std::vector<Point>& points) { return survey(points, written(points), {}); }

TEST(Survey, recommends_the_simplest_that_will_do) {
    EXPECT_EQ(survey_of(ordinates(72, arc_height(72, 11.5), 15, 1.0 / 32)).recommended, job::Fit::arc);
    EXPECT_EQ(survey_of(ordinates(84, ellipse_height(21.5), 15, 1.0 / 32)).recommended, job::Fit::ellipse);
    EXPECT_EQ(survey_of(ordinates(
                            72, [](double u) { return 8 * u * (1 - u * u); }, 15))
                  .recommended,
              job::Fit::fair);
}

// A wavy arc that misses by a tenth is an arc still; with an ellipse much closer it is an ellipse.
TEST(Survey, between_a_sixteenth_and_an_eighth_the_freer_answers_decide) {
    const Height arc = arc_height(72, 11.5);
    const auto wavy = ordinates(
        72, [&](double u) { return arc(u) + 0.09 * std::sin(40 * u); }, 40);
    const Survey ripples = survey_of(wavy);
    ASSERT_TRUE(ripples.circle && ripples.ellipse);
    EXPECT_GT(ripples.circle->misses.worst(), 1_in / 16);
    EXPECT_LT(ripples.circle->misses.worst(), most_miss);
    EXPECT_EQ(ripples.recommended, job::Fit::arc);
    const Survey nearly_round = survey_of(ordinates(72, ellipse_height(35.5), 25));
    ASSERT_TRUE(nearly_round.circle && nearly_round.ellipse);
    EXPECT_GT(nearly_round.circle->misses.worst(), 1_in / 16);
    EXPECT_LT(nearly_round.circle->misses.worst(), most_miss);
    EXPECT_EQ(nearly_round.recommended, job::Fit::ellipse);
}

TEST(Survey, uses_what_the_job_says_or_a_fair_curve) {
    const auto points = ordinates(72, arc_height(72, 11.5), 15);
    job::Ordinates given = written(points);
    EXPECT_EQ(survey(points, given, {}).used, job::Fit::fair);
    given.fit = {job::Fit::ellipse, {}};
    EXPECT_EQ(survey(points, given, {}).used, job::Fit::ellipse);
    EXPECT_EQ(survey(points, given, {}).points, points);
}

// End angles are written against the base line; the points may stand mirrored and turned.
TEST(Survey, end_angles_follow_the_points) {
    const auto points = ordinates(72, arc_height(72, 11.5), 15);
    job::Ordinates given = written(points);
    using Given = job::Sourced<Angle>;
    given.end_angles = std::array{Given{Angle::degrees(40), {}}, Given{Angle::degrees(-30), {}}};
    auto there = points;
    for (Point& p : there) p = geom::turned({p.x, -p.y}, Angle::degrees(10));
    const Curve here = survey(points, given, {}).fair.curve;
    EXPECT_NEAR(here.at({}).direction.angle().degrees(), 40, 1e-9);
    EXPECT_NEAR(here.at(here.length()).direction.angle().degrees(), -30, 1e-9);
    const Curve mirrored = survey(there, given, {}).fair.curve;
    EXPECT_NEAR(mirrored.at({}).direction.angle().degrees(), 10 - 40, 1e-9);
    EXPECT_NEAR(mirrored.at(mirrored.length()).direction.angle().degrees(), 10 + 30, 1e-9);
}

}  // namespace
}  // namespace kerfpacket::curve
