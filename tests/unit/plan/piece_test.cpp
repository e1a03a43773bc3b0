#include <gtest/gtest.h>

#include "../../support/jobs.h"
#include "../../support/planned.h"
#include "plan/piece.h"

namespace kerfpacket::plan {
namespace {

using namespace tests;

struct Faces {
    const char* name;
    job::Side side;
    job::Surface measured_to;
    double wall, finish;  ///< radii, measured 240
    bend::KerfsOn kerfs_on;
};

class Walls : public testing::TestWithParam<Faces> {};

TEST_P(Walls, seen_face_stands_a_thickness_nearer_the_room) {
    const Faces wanted = GetParam();
    job::Wall wall = fern_street();
    wall.side.value = wanted.side;
    wall.measured_to = wanted.measured_to;
    const Piece piece = only_piece(job_of(wall));
    EXPECT_NEAR(piece.radii.wall.inches(), wanted.wall, 1e-9);
    EXPECT_NEAR(piece.radii.finish.inches(), wanted.finish, 1e-9);
    EXPECT_EQ(piece.kerfs_on, wanted.kerfs_on);
    // The lines agree with the figures, and the seen face lies below the wall, where the room is.
    const auto& lines = std::get<WallLines>(piece.lines);
    ASSERT_EQ(lines.wall.segments().size(), 3U);
    EXPECT_NEAR(lines.wall.segments()[1].radius().inches(), wanted.wall, 1e-9);
    EXPECT_NEAR(lines.finish.segments()[1].radius().inches(), wanted.finish, 1e-9);
    EXPECT_NEAR((lines.wall.segments()[1].point(0.5).y - lines.finish.segments()[1].point(0.5).y).inches(), 0.75, 1e-9);
    EXPECT_NEAR(lines.wall.segments()[0].length().inches(), 48, 1e-9);
    EXPECT_NEAR(lines.wall.segments()[2].length().inches(), 72, 1e-9);
    EXPECT_NEAR(piece.blank().finish_length.inches(), lines.finish.length().inches(), 1e-9);
    EXPECT_NEAR(piece.measured_span.inches(), 480 * std::sin(measure::Angle::pi / 12), 1e-9);
    EXPECT_NEAR(piece.measured_rise.inches(), 240 * (1 - std::cos(measure::Angle::pi / 12)), 1e-9);
}

INSTANTIATE_TEST_SUITE_P(
    Sides, Walls,
    testing::Values(Faces{"concave_wall", job::Side::concave, job::Surface::wall, 240, 239.25, bend::KerfsOn::outside},
                    Faces{"concave_face", job::Side::concave, job::Surface::finish, 240.75, 240,
                          bend::KerfsOn::outside},
                    Faces{"convex_wall", job::Side::convex, job::Surface::wall, 240, 240.75, bend::KerfsOn::inside},
                    Faces{"convex_face", job::Side::convex, job::Surface::finish, 239.25, 240, bend::KerfsOn::inside}),
    [](const auto& tested) { return tested.param.name; });

TEST(Blank, adds_up_from_zero) {
    const Piece piece = only_piece(job_of(fern_street()));
    EXPECT_NEAR(piece.blank().bend_start.inches(), 4 + 48, 1e-12);
    const double bend = measure::Angle::pi / 6 * piece.radii.line.inches();
    EXPECT_NEAR(piece.blank().bend_end.inches(), 52 + bend, 1e-9);
    EXPECT_NEAR(piece.blank().length.inches(), 52 + bend + 72 + 4, 1e-9);
    EXPECT_GT(piece.radii.line, piece.radii.finish);
    EXPECT_LT(piece.radii.line, piece.radii.finish + piece.cut.thickness / 2);
}

TEST(Blank, zero_at_the_right_turns_the_tails_about) {
    job::Wall wall = fern_street();
    wall.board.zero = job::End::right;
    const Piece piece = only_piece(job_of(wall));
    EXPECT_EQ(piece.blank().tails[0], 72_in);
    EXPECT_EQ(piece.blank().tails[1], 48_in);
    EXPECT_NEAR(piece.blank().bend_start.inches(), 76, 1e-12);
}

TEST(Kerfs, stand_at_whole_multiples_from_zero) {
    const Piece piece = only_piece(job_of(harbor_stair()));
    // Trim 4 in is a multiple of 1/2 in, so the first kerf stands right where the bend starts.
    EXPECT_EQ(piece.blank().kerfs.front().at, 4_in);
    EXPECT_EQ(piece.blank().kerfs.front().n, 1);
    EXPECT_EQ(piece.blank().kerfs[10].at, 9_in);
    // The last one lies up to half a spacing beyond the bend, so that no kerf turns more than its share.
    const auto wanted = static_cast<std::size_t>(std::floor((piece.blank().bend_end.inches() + 0.25) * 2)) - 8 + 1;
    EXPECT_EQ(piece.blank().kerfs.size(), wanted);
}

TEST(Kerfs, odd_spacing_does_not_drift) {
    job::Wall wall = harbor_stair();
    wall.board.spacing.given = 0.4375_in;
    const Piece piece = only_piece(job_of(wall));
    EXPECT_TRUE(piece.cut.spacing_given);
    const auto last = piece.blank().kerfs.back();
    EXPECT_NEAR(last.at.inches() / 0.4375, std::round(last.at.inches() / 0.4375), 1e-9);
    EXPECT_GT(last.at.inches() + 0.4375, piece.blank().bend_end.inches());
}

struct Marked {
    job::End zero;
    job::Tick tick;
    double offset;
};

class Marks : public testing::TestWithParam<Marked> {};

TEST_P(Marks, stand_at_the_side_of_the_blade_that_is_asked_for) {
    job::Wall wall = harbor_stair();
    wall.board.zero = GetParam().zero;
    wall.board.tick = GetParam().tick;
    const Piece piece = only_piece(job_of(wall));
    for (const Kerf& kerf : piece.blank().kerfs)
        ASSERT_NEAR((kerf.mark - kerf.at).inches(), GetParam().offset, 1e-12);
}

// Distances of a board numbered from the right run leftward, so the blade's left side is the farther one.
INSTANTIATE_TEST_SUITE_P(
    Sides, Marks,
    testing::Values(Marked{job::End::left, job::Tick::centre, 0}, Marked{job::End::left, job::Tick::left, -.059},
                    Marked{job::End::left, job::Tick::right, .059}, Marked{job::End::right, job::Tick::centre, 0},
                    Marked{job::End::right, job::Tick::left, .059}, Marked{job::End::right, job::Tick::right, -.059}));

TEST(Settings, common_practice_when_left_out) {
    job::Wall wall = harbor_stair();
    wall.board = solved(wall.board);
    const Piece piece = only_piece(job_of(wall));
    EXPECT_EQ(piece.settings.rule, Rule::common_practice);
    EXPECT_EQ(piece.cut.depth, 0.375_in);
    EXPECT_FALSE(piece.cut.depth_given || piece.cut.spacing_given);
    // A whole number of kerfs at no more than half an inch, the first and the last half a gap inside the bend.
    const double count = std::ceil(piece.blank().bend_length().inches() / 0.5);
    EXPECT_EQ(piece.blank().kerfs.size(), static_cast<std::size_t>(count));
    EXPECT_NEAR(piece.cut.spacing.inches(), piece.blank().bend_length().inches() / count, 1e-12);
    EXPECT_NEAR((piece.blank().kerfs.front().at - piece.blank().bend_start).inches(), piece.cut.spacing.inches() / 2,
                1e-9);
    EXPECT_NEAR((piece.blank().bend_end - piece.blank().kerfs.back().at).inches(), piece.cut.spacing.inches() / 2,
                1e-9);
}

TEST(Settings, half_and_lengths_are_given) {
    job::Wall wall = harbor_stair();
    wall.board.kerf_depth.half = true;
    EXPECT_TRUE(only_piece(job_of(wall)).cut.depth_given);
    EXPECT_EQ(only_piece(job_of(wall)).cut.depth, 0.375_in);
    wall.board.kerf_depth = {0.5_in, false, false, {40, 1}};
    EXPECT_EQ(only_piece(job_of(wall)).cut.depth, 0.5_in);
    EXPECT_NEAR(only_piece(job_of(wall)).cut.web().inches(), 0.25, 1e-12);
}

TEST(Saw, spacer_waits_for_the_rear_limit) {
    job::Job job = job_of(harbor_stair());
    EXPECT_FALSE(only_piece(job).saw.spacer);
    EXPECT_EQ(only_piece(job).saw.travel_needed, 7.25_in);
    job.saw.rear_limit = at_line(1.25_in, 4);
    EXPECT_EQ(only_piece(job).saw.spacer, 1.25_in);
    EXPECT_NEAR(only_piece(job).saw.groove_ramp.inches(), 2.088, 5e-4);
}

}  // namespace
}  // namespace kerfpacket::plan
