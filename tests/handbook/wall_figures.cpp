// Figures of two invented walls, computed for this project apart from the program and rounded to the digits shown.

#include <gtest/gtest.h>

#include "../support/jobs.h"
#include "plan/plan.h"

namespace kerfpacket {
namespace {

using namespace tests;

TEST(WallFigures, harbor_stair) {
    const auto plan = plan::make_plan(job_of(harbor_stair()));
    ASSERT_TRUE(plan);
    const plan::Piece& piece = plan->pieces.at(0);
    EXPECT_NEAR(piece.radii.wall.inches(), 198.809, 5e-4);
    EXPECT_NEAR(piece.turn.degrees(), 65.123, 5e-4);
    EXPECT_NEAR(std::get<plan::WallLines>(piece.lines).wall.length().inches(), 225.969, 5e-4);
}

TEST(WallFigures, fern_street_takes_over_two_hundred_kerfs) {
    const auto plan = plan::make_plan(job_of(fern_street()));
    ASSERT_TRUE(plan);
    const plan::Piece& piece = plan->pieces.at(0);
    EXPECT_GT(piece.blank().kerfs.size(), 200U);
    // 20 ft through 30 degrees is 125.66 in of wall, so at most 251 multiples of half an inch.
    EXPECT_LE(piece.blank().kerfs.size(), 252U);
    EXPECT_NEAR(std::get<plan::WallLines>(piece.lines).wall.length().inches(), 240 * measure::Angle::pi / 6 + 120,
                1e-9);
}

}  // namespace
}  // namespace kerfpacket
