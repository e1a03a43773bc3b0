// Boards that climb. The checks are made in space, by geometry of this file's own: the flat board is folded along its
// kerf lines and laid on the wall. Fixtures: worked by hand from the surface's unrolling (a helix on a cylinder, whose
// slope is climb over plan length: any text on the cylinder's development).
#include "plan/rake.h"

#include <array>
#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "bend/material.h"
#include "plan/outlines.h"
#include "support/jobs.h"
#include "support/planned.h"
#include "support/space.h"

namespace kerfpacket::tests {
namespace {

using measure::Angle;
using measure::Length;
/// The flat board, seen from the room, the front edge up; each kerf folds what lies to its right, toward the room where
/// `toward` is 1. x, y in the plane of the board, z toward the room.
std::vector<KerfLine> folded(const plan::Piece& piece, double toward) {
    const plan::Blank& blank = piece.blank();
    const double width = piece.width.mm();
    std::vector<KerfLine> lines;
    for (const plan::Kerf& kerf : blank.kerfs)
        lines.push_back(
            {{blank.from_left(kerf.at).mm(), width, 0}, {blank.from_left(kerf.at + blank.lean).mm(), 0, 0}});
    std::vector<double> turns;
    for (const plan::Kerf& kerf : blank.kerfs)
        turns.push_back(kerf.turn.radians() * (kerf.on == piece.kerfs_on ? -toward : toward));
    if (blank.zero == job::End::right) {
        std::reverse(lines.begin(), lines.end());
        std::reverse(turns.begin(), turns.end());
    }
    return folded(std::move(lines), turns);
}

/// Where the same kerf lines stand on the wall: plumb lines over an arc of the length-keeping line, at even stations,
/// rising evenly. x to the right, y away from the room, z up.
std::vector<KerfLine> on_wall(const plan::Piece& piece, double radius, double turn, double toward,
                              double steepness_on_line) {
    const plan::Blank& blank = piece.blank();
    std::vector<KerfLine> lines;
    const double whole = radius * turn;
    const double plumb = piece.width.mm() * std::sqrt(1 + steepness_on_line * steepness_on_line);
    for (const plan::Kerf& kerf : blank.kerfs) {
        // The part of the bend before this kerf tells its station, whatever it is counted along.
        const Length from = blank.zero == job::End::left ? kerf.at - blank.bend_start : blank.bend_end - kerf.at;
        const double station = whole * (from / blank.bend_length());
        const double angle = station / radius - turn / 2;
        // A concave wall bends toward the room at both ends.
        const double x = radius * std::sin(angle);
        const double y = toward * radius * std::cos(angle);
        const double up = steepness_on_line * (piece.rake->to_the_right ? station : whole - station);
        lines.push_back({{x, y, up + plumb}, {x, y, up}});
    }
    if (blank.zero == job::End::right) std::reverse(lines.begin(), lines.end());
    return lines;
}

job::Wall climbing(Length radius, double degrees, job::Side side, Length rise, Length run, job::End to) {
    job::Wall wall = harbor_stair();
    wall.chord.reset();
    wall.rise.reset();
    wall.radius = at_line(radius, 12);
    wall.angle = at_line(Angle::degrees(degrees), 13);
    wall.side.value = side;
    wall.board = mdf_board(9.25_in, Length());
    wall.rake = job::Rake{std::array{at_line(rise, 15), at_line(run, 15)}, at_line(to, 16), {}, {15, 1}};
    return wall;
}

TEST(Rake, FixtureOfAConcaveWall) {
    // R 60, 90 degrees, 7-1/2 on 10, board 9-1/4 wide: arc 94.2478, climb 70.6858; length-keeping radius 59.4394.
    const plan::Piece piece = only_piece(climbing(60_in, 90, job::Side::concave, 7.5_in, 10_in, job::End::right));
    ASSERT_TRUE(piece.rake);
    EXPECT_NEAR(piece.rake->climb.inches(), 70.686, 0.001);
    EXPECT_NEAR(piece.rake->kerf().degrees(), 37.129, 0.001);
    EXPECT_NEAR(piece.rake->along().inches(), 117.106, 0.001);
    EXPECT_NEAR(piece.blank().tip_to_tip().inches(), 124.109, 0.001);
    EXPECT_NEAR(piece.rake->along_edge(0.5_in).inches(), 0.6271, 0.0001);
    EXPECT_NEAR(piece.rake->cut().inches(), 11.602, 0.001);
    EXPECT_NEAR(piece.blank().length.inches(), 124.109, 0.001);
    const auto& kerfs = piece.blank().kerfs;
    EXPECT_NEAR((kerfs[1].at - kerfs[0].at).inches(), 0.6271, 0.0001);
    EXPECT_NEAR(piece.gaps.most.inches(), 0.5, 0.0001);
}

// R 60, 90 degrees, 7-1/2 on 10 again: the kerfs stand 37.129 degrees from square. A level cut is square to
// plumb: 52.871, and cut level at both ends one edge reaches from end to end less 9.25 / tan 37.129 = 12.218: as a
// parallelogram it is as long from tip to tip as its edge and that.
TEST(Rake, EndsAreCutAtTheirOwnAnglesAndTellTheirOwnTips) {
    job::Wall wall = climbing(60_in, 90, job::Side::concave, 7.5_in, 10_in, job::End::right);
    wall.rake->ends = {job::EndCut::square, job::EndCut::level};
    job::Job job = job_of(wall);
    job.saw.mitre_limit = at_line(Angle::degrees(50), 6);
    const plan::Piece piece = only_piece(job);
    EXPECT_NEAR(piece.rake->end(job::EndCut::plumb).degrees(), 37.129, 0.001);
    EXPECT_NEAR(piece.rake->end(job::EndCut::level).degrees(), 52.871, 0.001);
    EXPECT_EQ(piece.rake->end(job::EndCut::square).degrees(), 0);
    EXPECT_TRUE(has(piece, "end_beyond_saw"));
    const plan::Blank& blank = piece.blank();
    // Between the plumb lines of its ends it is 117.106 long on each edge, askew by 9.25 tan 37.129 = 7.003: cut square
    // at the one end and level at the other, neither edge reaches past them.
    const double upper = (blank.cut_at(1) - blank.cut_at(0)).inches();
    const double lower = upper + (blank.ends[1].lean - blank.ends[0].lean).inches();
    EXPECT_NEAR(blank.tip_to_tip().inches(), std::max(upper, lower), 1e-6);
    EXPECT_NEAR(std::abs(upper - lower), 12.218, 0.001);
    wall.rake->ends = {job::EndCut::plumb, job::EndCut::plumb};
    EXPECT_FALSE(has(only_piece(wall), "end_beyond_saw"));
}

TEST(Rake, FixtureOfAConvexWall) {
    job::Wall wall = climbing(24_in, 120, job::Side::convex, 7_in, 6_in, job::End::left);
    wall.board.thickness.value = 0.5_in;
    wall.board.width.value = 7.25_in;
    job::Job job = job_of(wall);
    job.saw.kerf.value = 0.1_in;
    const plan::Piece piece = only_piece(job);
    EXPECT_NEAR(piece.rake->climb.inches(), 58.643, 0.001);
    EXPECT_NEAR(piece.rake->kerf().degrees(), 48.962, 0.01);
    EXPECT_NEAR(piece.rake->along().inches(), 77.747, 0.01);
    EXPECT_NEAR(piece.blank().tip_to_tip().inches(), 86.076, 0.01);
    EXPECT_NEAR(piece.rake->along_edge(0.5_in).inches(), 0.7615, 0.0002);
    EXPECT_NEAR(piece.rake->cut().inches(), 11.043, 0.002);
}

TEST(Rake, TheFoldedBoardLiesOnItsWall) {
    std::mt19937 random(22);  // NOLINT(bugprone-random-generator-seed): the same jobs in every run
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(random()) / static_cast<double>(std::mt19937::max()));
    };
    for (int i = 0; i < 24; ++i) {
        const bool concave = i % 2 == 0;
        const job::End to = i % 4 < 2 ? job::End::right : job::End::left;
        job::Wall wall = climbing(Length::inches(between(40, 120)), between(40, 110),
                                  concave ? job::Side::concave : job::Side::convex, Length::inches(between(5, 8)),
                                  Length::inches(between(8, 14)), to);
        wall.board.zero = i % 8 < 4 ? job::End::left : job::End::right;
        wall.board.trim.value = Length::inches(between(0, 4));
        wall.board.width.value = Length::inches(between(3, 11));
        const plan::Piece piece = only_piece(wall);
        const double turn = wall.angle->value.radians();
        const double toward = concave ? 1 : -1;
        const double slope = piece.rake->climb / (piece.radii.line * turn);
        const double off = worst(folded(piece, toward), on_wall(piece, piece.radii.line.mm(), turn, toward, slope));
        EXPECT_LT(off, (1.0 / 32) * 25.4) << "job " << i;
    }
}

TEST(Rake, AKerfAtAnyOtherAngleLiesOnNoWall) {
    // That the check above can fail: the same board with its kerfs a degree off.
    plan::Piece piece = only_piece(climbing(60_in, 90, job::Side::concave, 7.5_in, 10_in, job::End::right));
    const double turn = Angle::degrees(90).radians();
    const double slope = piece.rake->climb / (piece.radii.line * turn);
    const auto wanted = on_wall(piece, piece.radii.line.mm(), turn, 1, slope);
    piece.whole.lean = piece.whole.lean * 1.05;
    EXPECT_GT(worst(folded(piece, 1), wanted), 25.4);
}

TEST(Rake, TheHandleSwingsToTheSideThatTheBoardClimbsTo) {
    // Kerf face up, front edge toward the operator: the board is turned over about its length. A plumb line of a board
    // that climbs to the right then runs from the far edge to the near edge toward the right.
    for (const job::End to : {job::End::right, job::End::left}) {
        const plan::Piece piece = only_piece(climbing(60_in, 90, job::Side::concave, 7.5_in, 10_in, to));
        const plan::Blank& blank = piece.blank();
        // As it hangs: along the board by the slope, across it square to that; plumb is (0, 1).
        const double slope = piece.rake->kerf().radians() * (to == job::End::right ? 1 : -1);
        const std::array<double, 2> along{std::cos(slope), std::sin(slope)};
        const std::array<double, 2> across{-std::sin(slope), std::cos(slope)};
        const double up_along = along[1];    // of the plumb line, on the flat board
        const double up_across = across[1];  // toward the upper edge, which is the front edge
        ASSERT_GT(up_across, 0);
        // Turned over about its length, what runs to the upper edge runs toward the operator; left stays left.
        const double toward_operator = up_along / up_across;
        EXPECT_EQ(toward_operator > 0, to == job::End::right);
        const Length front_less_back =
            blank.from_left(blank.kerfs[5].at) - blank.from_left(blank.kerfs[5].at + blank.lean);
        EXPECT_NEAR(front_less_back.mm(), piece.width.mm() * toward_operator, 1e-6);
        EXPECT_EQ(piece.rake->to_the_right, to == job::End::right);
    }
}

TEST(Rake, EndsReachTheirPlumbLinesAndNotBeyond) {
    for (const job::End to : {job::End::right, job::End::left})
        for (const job::End zero : {job::End::left, job::End::right})
            for (const job::EndCut cut : {job::EndCut::plumb, job::EndCut::level, job::EndCut::square}) {
                job::Wall wall = climbing(60_in, 90, job::Side::concave, 7.5_in, 10_in, to);
                wall.rake->ends = {cut, cut};
                wall.board.zero = zero;
                wall.board.trim.value = 2_in;
                const plan::Piece piece = only_piece(wall);
                const plan::Blank& blank = piece.blank();
                const double angle = piece.rake->kerf().radians() * (to == job::End::right ? 1 : -1);
                // How far right each corner of the finished board hangs.
                const auto hangs = [&](Length from_zero, Length up) {
                    return blank.from_left(from_zero).mm() * std::cos(angle) - up.mm() * std::sin(angle);
                };
                const auto rises = [&](Length from_zero, Length up) {
                    return blank.from_left(from_zero).mm() * std::sin(angle) + up.mm() * std::cos(angle);
                };
                std::array<double, 2> reach{};
                for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
                    const Length at = blank.cut_at(i);
                    const Length lean = blank.ends[i].lean;
                    const bool left = (i == 0) == (zero == job::End::left);
                    const double front = hangs(at, piece.width);
                    const double back = hangs(at + lean, Length());
                    reach.at(left ? 0 : 1) = left ? std::min(front, back) : std::max(front, back);
                    if (cut == job::EndCut::plumb) { EXPECT_NEAR(front, back, 1e-6); }
                    if (cut == job::EndCut::level) {
                        EXPECT_NEAR(rises(at, piece.width), rises(at + lean, Length()), 1e-6);
                    }
                    if (cut == job::EndCut::square) { EXPECT_EQ(lean.mm(), 0); }
                }
                // In plan the board is as long as its length-keeping line, whatever the cut.
                EXPECT_NEAR(reach[1] - reach[0], piece.rake->plan_length.mm(), 1e-6);
                for (const plan::Kerf& kerf : blank.kerfs) {
                    EXPECT_GT(std::min(kerf.at, kerf.at + blank.lean).mm(), 0);
                    EXPECT_LT(std::max(kerf.at, kerf.at + blank.lean).mm(), blank.length.mm());
                }
            }
}

TEST(Rake, TravelAndSpacerAgainstAModelOfTheBlade) {
    job::Job job = job_of(climbing(60_in, 90, job::Side::concave, 7.5_in, 10_in, job::End::right));
    job.saw.rear_limit = at_line(1.375_in, 4);
    job.saw.travel = at_line(14_in, 5);
    const plan::Piece piece = only_piece(job);
    ASSERT_TRUE(piece.saw.spacer);
    // The blade's lowest point runs along the kerf's line. In the saw's own frame, y from the fence toward the
    // operator: the board's back edge lies a spacer before the fence, its front edge a width further.
    const double angle = piece.rake->kerf().radians();
    const double back = piece.saw.spacer->mm() / std::cos(angle);  // along the cut, from the fence
    const double front = (*piece.saw.spacer + piece.width).mm() / std::cos(angle);
    const double rear = (1.375_in).mm();
    EXPECT_GE(back, rear - 1e-6) << "full depth at the back edge";
    EXPECT_LT(back - rear, (1.0 / 16) * 25.4 / std::cos(angle) + 1e-6) << "no thicker than it must be";
    EXPECT_NEAR(piece.saw.travel_needed->mm(), front - rear, 1e-6);
    // A point of the groove's bottom: the blade, a disc in the upright plane through the cut, reaches its full depth
    // there only where its middle stands over it.
    const double radius = (6_in).mm();
    const double depth = piece.cut.depth.mm();
    const auto depth_at = [&](double along, double middle) {
        const double off = along - middle;
        return std::sqrt(radius * radius - off * off) - (radius - depth);
    };
    EXPECT_NEAR(depth_at(back, std::max(back, rear)), depth, 1e-9);
}

TEST(Rake, WhatTheSawCannotDoIsRefused) {
    job::Job job = job_of(climbing(60_in, 90, job::Side::concave, 7.5_in, 10_in, job::End::right));
    job.saw.mitre_limit = at_line(Angle::degrees(35), 6);
    EXPECT_EQ(refusal(job).message, "the kerfs of B stand 37.1 degrees from square, and the saw cuts to 35.0");
    // Both are told to a tenth, and judged as they are told.
    job.saw.mitre_limit = at_line(Angle::degrees(37.05), 6);
    EXPECT_TRUE(plan::make_plan(job));
    job.saw.mitre_limit = at_line(Angle::degrees(37.0), 6);
    EXPECT_NE(refusal(job).message.find("37.1 degrees from square, and the saw cuts to 37.0"), std::string::npos);
    job.saw.mitre_limit.reset();
    job.saw.travel = at_line(11_in, 5);
    EXPECT_NE(refusal(job).message.find("are 11.602 in long"), std::string::npos) << refusal(job).message;
    EXPECT_EQ(refusal(job).at.line, 5);
    job.saw.travel.reset();
}

/// The blank of a board that climbs that comes i-th from zero: how far its zero stands from that of the whole, along
/// the front edge, by its kerfs; the same for all of them.
Length offset(const plan::Piece& piece, std::size_t i, std::size_t kerfs_before) {
    const auto& kerfs = piece.blanks[i].kerfs;
    const Length off = piece.whole.kerfs[kerfs_before].at - kerfs.front().at;
    for (std::size_t k = 0; k < kerfs.size(); ++k)
        EXPECT_NEAR((piece.whole.kerfs[kerfs_before + k].at - kerfs[k].at).mm(), off.mm(), 1e-6);
    return off;
}

TEST(Rake, ASpliceFollowsTheKerfs) {
    for (const job::End to : {job::End::right, job::End::left})
        for (const job::End zero : {job::End::left, job::End::right}) {
            // So open a bend that joints may lie in it.
            job::Wall wall = climbing(240_in, 60, job::Side::concave, 7.5_in, 10_in, to);
            wall.board.zero = zero;
            job::Job job = job_of(wall);
            job.stock.lengths = {at_line(192_in, 40)};
            const plan::Piece piece = only_piece(job);
            ASSERT_EQ(piece.blanks.size(), 2U);
            const double slope = std::tan(piece.rake->kerf().radians());
            std::size_t before = 0;
            for (std::size_t i = 0; i < piece.blanks.size(); ++i) {
                const plan::Blank& blank = piece.blanks[i];
                EXPECT_LE(blank.length.inches(), 192);
                // Every kerf and both its cuts lean as those of the whole board do, and lie on the blank from edge to
                // edge.
                EXPECT_NEAR(std::abs(blank.lean.inches()), 9.25 * slope, 1e-6);
                EXPECT_EQ(blank.lean < Length(), piece.whole.lean < Length());
                for (const plan::Kerf& kerf : blank.kerfs) {
                    EXPECT_GE(std::min(kerf.at, kerf.at + blank.lean).inches(), -1e-6);
                    EXPECT_LE(std::max(kerf.at, kerf.at + blank.lean).inches(), blank.length.inches() + 1e-6);
                }
                for (const plan::BoardEnd& end : blank.ends) {
                    if (end.meets != plan::BoardEnd::Meets::blank) continue;
                    EXPECT_EQ(end.lean, blank.lean);
                    for (const Length cut : {end.kerf_face, end.plain_face}) {
                        EXPECT_GE(std::min(cut, cut + end.lean).inches(), -1e-6);
                        EXPECT_LE(std::max(cut, cut + end.lean).inches(), blank.length.inches() + 1e-6);
                    }
                }
                if (i > 0) {
                    // Both blanks are cut along the same two lines, on the kerf face and on the plain face.
                    const Length here = offset(piece, i, before);
                    const plan::Blank& last = piece.blanks[i - 1];
                    const Length there = offset(piece, i - 1, before - last.kerfs.size());
                    EXPECT_NEAR((here + blank.ends[0].kerf_face).mm(), (there + last.ends[1].kerf_face).mm(), 1e-6);
                    EXPECT_NEAR((here + blank.ends[0].plain_face).mm(), (there + last.ends[1].plain_face).mm(), 1e-6);
                    const Length joint = piece.joints[i - 1].at;
                    EXPECT_NEAR(((blank.ends[0].kerf_face + blank.ends[0].plain_face) / 2 + here).mm(), joint.mm(),
                                1e-6);
                    // Square to the kerfs the scarf is as long as the board is thick.
                    EXPECT_NEAR(piece.joints[i - 1].scarf.inches() * piece.rake->cosine(), 0.75, 1e-6);
                }
                // Square to the kerfs, but for what the joint takes.
                for (std::size_t k = 1; k < blank.kerfs.size(); ++k) {
                    const double gap = (blank.kerfs[k].at - blank.kerfs[k - 1].at).mm() * piece.rake->cosine();
                    EXPECT_GE(gap, piece.gaps.least.mm() - 1e-6);
                    EXPECT_LE(gap, piece.gaps.most.mm() + 1e-6);
                }
                before += blank.kerfs.size();
            }
            EXPECT_LT((piece.gaps.most - piece.gaps.least).mm(), 0.01);
            ASSERT_EQ(piece.gaps.over_joints.size(), 1U);
            EXPECT_GT(piece.gaps.over_joints.front(), piece.gaps.most * 1.5);
            EXPECT_EQ(before, piece.whole.kerfs.size());
        }
}

TEST(Rake, AJointStandsWhereATapeAlongTheFrontEdgeFindsIt) {
    job::Wall wall = climbing(60_in, 60, job::Side::concave, 7.5_in, 10_in, job::End::right);
    wall.tails = {at_line(40_in, 17), at_line(40_in, 18)};
    wall.board.joints = {at_line(38_in, 19)};
    const plan::Piece piece = only_piece(job_of(wall));
    ASSERT_EQ(piece.joints.size(), 1U);
    EXPECT_NEAR(piece.joints[0].at.inches(), 38, 1e-6);
    EXPECT_NEAR(piece.blanks[0].ends[1].kerf_face.inches() + piece.blanks[0].ends[1].plain_face.inches(), 76, 1e-6);
    // Up to its plumb cut the far blank is straight, so that the strips draw the cut as it leans.
    EXPECT_NEAR(piece.blanks[1].tails[1].inches() * piece.rake->cosine(), 40, 1e-6);
}

TEST(Rake, GrainThatTheBendCrossesIsWeakerAndAlwaysACaution) {
    // Hankinson's formula; ratios and exponents as the Wood Handbook's middle (from memory): worked by hand at 37
    // degrees: rupture 0.1531 of that along the grain, modulus 0.1937.
    EXPECT_NEAR(bend::strain_across_grain(Angle::degrees(37)), 0.79, 0.01);
    EXPECT_EQ(bend::strain_across_grain(Angle::degrees(0)), 1);
    job::Wall wall = climbing(120_in, 60, job::Side::concave, 7.5_in, 10_in, job::End::right);
    wall.board.material.value = "red-oak";
    const plan::Piece askew = only_piece(wall);
    EXPECT_TRUE(has(askew, "grain_askew"));
    wall.rake.reset();
    const plan::Piece level = only_piece(wall);
    EXPECT_FALSE(has(level, "grain_askew"));
    EXPECT_NEAR(askew.bend.strain_limit / level.bend.strain_limit,
                bend::strain_across_grain(Angle::radians(std::atan(0.75))), 1e-6);
    wall.board.material.value = "mdf";
    wall.rake = climbing(60_in, 60, job::Side::concave, 7.5_in, 10_in, job::End::right).rake;
    EXPECT_FALSE(has(only_piece(wall), "grain_askew"));
}

/// The lines of one layer of the drawing for machines.
std::vector<geom::Path> layer(const plan::Piece& piece, const std::string& name) {
    for (const geom::Layer& one : plan::outlines({&piece}))
        if (one.name == name) return one.paths;
    return {};
}

TEST(Outlines, EndsAreWhereTheTrimIsSawnOff) {
    // A wall with straight ends: the line is at the trim, beyond the tail, not where the bend starts.
    const plan::Piece piece = only_piece(fern_street());
    const auto ends = layer(piece, "H_ENDS");
    ASSERT_EQ(ends.size(), 2U);
    EXPECT_NEAR(ends[0].start().x.mm(), piece.blank().trims[0].mm(), 1e-9);
    EXPECT_NEAR(ends[1].start().x.mm(), (piece.blank().length - piece.blank().trims[1]).mm(), 1e-9);
}

}  // namespace
}  // namespace kerfpacket::tests
