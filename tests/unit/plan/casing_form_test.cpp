// Casing in segments, and the ribs of bending forms.

#include <gtest/gtest.h>

#include <cmath>

#include "../../support/jobs.h"
#include "plan/plan.h"

namespace kerfpacket::plan {
namespace {

using namespace tests;

job::Opening cased(job::Opening opening, std::optional<int> segments = {}, std::optional<Length> board = {}) {
    opening.casing = job::Casing{at_line(3.5_in, 51), at_line(0.25_in, 52), job::WallSide::room, {}, {}};
    if (segments) opening.casing->segments = at_line(*segments, 53);
    if (board) opening.casing->board = at_line(*board, 54);
    return opening;
}

tl::expected<Plan, job::Diagnostics> planned(const job::Opening& opening) { return make_plan(job_of(opening)); }

ArchLines lines_of(const job::Opening& opening) {
    const auto plan = planned(opening);
    if (!plan) throw std::runtime_error(plan.error().front().message);
    return std::get<ArchLines>(plan->pieces.at(0).lines);
}

TEST(CasingSegments, fewest_that_come_out_of_the_board) {
    const ArchLines arch = lines_of(cased(semicircle(60_in), {}, 9.25_in));
    const std::size_t count = arch.segments.size();
    // Each of n segments takes in 180/n degrees: its sagitta over the outside edge and the casing's own width.
    const double inside = 30 - 0.75 + 0.25;
    const auto width = [&](double n) {
        const double half = measure::Angle::pi / n / 2;
        return inside + 3.5 - inside * std::cos(half);
    };
    EXPECT_LE(width(static_cast<double>(count)), 9.25);
    EXPECT_GT(width(static_cast<double>(count) - 1), 9.25);
    for (const CasingSegment& segment : arch.segments)
        EXPECT_NEAR(segment.board_width.inches(), width(static_cast<double>(count)), 1e-6);
}

TEST(CasingSegments, meet_square_to_the_curve_and_on_the_mitre) {
    for (const job::Opening& opening :
         {cased(lantern_court(), 3), cased(alder_court(), 4), cased(quarry_road(), 5), cased(eyebrow(), 4)}) {
        const ArchLines arch = lines_of(opening);
        const auto& all = arch.segments;
        EXPECT_FALSE(all.front().left_joint);
        EXPECT_FALSE(all.back().right_joint);
        for (std::size_t i = 0; i + 1 < all.size(); ++i) {
            EXPECT_LT(geom::distance(all[i].right.start(), all[i + 1].left.start()).mm(), 1e-6);
            EXPECT_LT(geom::distance(all[i].right.end(), all[i + 1].left.end()).mm(), 1e-6);
            EXPECT_TRUE(all[i].right_joint);
        }
        for (const Path& joint : arch.segment_joints) EXPECT_NEAR(joint.length().inches(), 3.5, 1e-6);
        for (const Path& mitre : arch.mitres) EXPECT_GE(mitre.length().inches(), 3.5 - 1e-6);
        EXPECT_EQ(arch.mitres.size() + arch.segment_joints.size(), all.size() + 1);
    }
}

TEST(CasingSegments, of_a_pointed_head_part_at_the_point) {
    const ArchLines arch = lines_of(cased(alder_court(), 2));
    ASSERT_EQ(arch.mitres.size(), 3U);
    EXPECT_TRUE(arch.segment_joints.empty());
    EXPECT_NEAR(arch.mitres[1].start().x.mm(), 0, 1e-9);
    EXPECT_NEAR(arch.mitres[1].end().x.mm(), 0, 1e-9);
    const auto odd = planned(cased(alder_court(), 3));
    ASSERT_FALSE(odd);
    EXPECT_EQ(odd.error().front().at.line, 53);
    EXPECT_NE(odd.error().front().hint.find("2, 4 or 6"), std::string::npos) << odd.error().front().hint;
}

TEST(CasingSegments, that_do_not_come_out_are_refused_with_the_count_that_does) {
    const auto few = planned(cased(semicircle(60_in), 2, 9.25_in));
    ASSERT_FALSE(few);
    EXPECT_EQ(few.error().front().at.line, 53);
    const std::size_t fewest = lines_of(cased(semicircle(60_in), {}, 9.25_in)).segments.size();
    EXPECT_EQ(few.error().front().hint, std::to_string(fewest) + " segments fit");
    const auto narrow = planned(cased(semicircle(60_in), {}, 3.25_in));
    ASSERT_FALSE(narrow);
    EXPECT_EQ(narrow.error().front().at.line, 54);
    EXPECT_NE(narrow.error().front().hint.find("no number"), std::string::npos);
}

TEST(CasingSegments, come_out_of_the_sheet_when_no_board_is_named) {
    EXPECT_EQ(lines_of(cased(semicircle(36_in))).segments.size(), 1U);
    const ArchLines wide = lines_of(cased(semicircle(130_in)));
    EXPECT_GT(wide.segments.size(), 1U);
    for (const CasingSegment& segment : wide.segments) {
        EXPECT_LE(segment.board_width, 49_in);
        EXPECT_LE(segment.board_length, 97_in);
    }
}

/// A half round, 36 in over the finish of the edge measured, depth 8 in, leaning 20 degrees.
job::Opening splayed_half_round(job::Edge measured, job::Toward wide, job::WallSide cased_on) {
    job::Opening opening = cased(semicircle(36_in), 3);
    opening.measured_to = job::Surface::finish;
    opening.legs.reset();
    opening.liner.width.value = 8_in;
    opening.liner.thickness.value = 0.5_in;
    opening.splay = job::Splay{at_line(measure::Angle::degrees(20), 41), measured, wide, {40, 1}};
    opening.casing->wall_side = cased_on;
    return opening;
}

TEST(CasingSides, ofASplayedJambFollowEachItsOwnEdge) {
    const double opens = 8 * std::tan(20 * measure::Angle::pi / 180);  // at each side, over the depth
    for (const job::Edge measured : {job::Edge::narrow, job::Edge::wide})
        for (const job::Toward wide : {job::Toward::room, job::Toward::away}) {
            const ArchLines both = lines_of(splayed_half_round(measured, wide, job::WallSide::both));
            ASSERT_EQ(both.segments.size(), 6U);
            for (const CasingSegment& segment : both.segments) {
                EXPECT_EQ(segment.n, static_cast<int>(&segment - both.segments.data()) + 1);
                EXPECT_EQ(segment.side, segment.n <= 3 ? job::Toward::room : job::Toward::away);
                const bool at_wide = segment.side == wide;
                const double edge = 18 + (at_wide ? opens : 0) - (measured == job::Edge::wide ? opens : 0);
                ASSERT_EQ(segment.inside.segments().size(), 1U);
                EXPECT_NEAR(segment.inside.segments().front().radius().inches(), edge + 0.25, 1e-6) << segment.n;
                EXPECT_NEAR(segment.outside.segments().front().radius().inches(), edge + 0.25 + 3.5, 1e-6);
            }
            // The template is of the room's side: it draws that casing alone.
            ASSERT_TRUE(both.casing_outside);
            EXPECT_EQ(both.mitres.size() + both.segment_joints.size(), 4U);
            const ArchLines away = lines_of(splayed_half_round(measured, wide, job::WallSide::away));
            ASSERT_EQ(away.segments.size(), 3U);
            EXPECT_EQ(away.segments.front().side, job::Toward::away);
            EXPECT_EQ(away.segments.front().n, 1);
            EXPECT_EQ(away.segments.front().inside, both.segments.at(3).inside);
            EXPECT_FALSE(away.casing_outside);
            EXPECT_TRUE(away.mitres.empty());
        }
}

TEST(CasingSides, farOneIsSeenFromTheFarSide) {
    job::Opening opening = cased(quarry_road(), 5);
    opening.casing->wall_side = job::WallSide::both;
    const ArchLines lines = lines_of(opening);
    ASSERT_EQ(lines.segments.size(), 10U);
    EXPECT_FALSE(lines.symmetric) << "or this proves nothing";
    const auto mirrored = [](Point p) { return Point{-p.x, p.y}; };
    for (std::size_t i = 0; i < 5; ++i) {
        const CasingSegment& room = lines.segments.at(i);
        const CasingSegment& far = lines.segments.at(9 - i);
        EXPECT_EQ(far.n, static_cast<int>(10 - i));
        EXPECT_LT(far.inside.start().x, far.inside.end().x);
        EXPECT_EQ(far.left_joint, room.right_joint);
        EXPECT_EQ(far.right_joint, room.left_joint);
        EXPECT_EQ(far.board_length, room.board_length);
        for (const double part : {0.0, 0.3, 0.8, 1.0}) {
            const auto on = [&](const Path& path, double at) { return path.at(path.length() * at).point; };
            EXPECT_LT(geom::distance(on(far.inside, part), mirrored(on(room.inside, 1 - part))).mm(), 1e-6);
            EXPECT_LT(geom::distance(on(far.outside, part), mirrored(on(room.outside, 1 - part))).mm(), 1e-6);
            EXPECT_LT(geom::distance(on(far.left, part), mirrored(on(room.right, part))).mm(), 1e-6);
        }
    }
}

FormRib rib_of(const job::Job& job) {
    const auto plan = make_plan(job);
    if (!plan) throw std::runtime_error(plan.error().front().message);
    return plan->pieces.at(0).form.value();
}

TEST(FormRib, of_a_liner_is_its_seen_face) {
    job::Opening opening = semicircle(48_in);
    opening.form.emplace();
    const FormRib rib = rib_of(job_of(opening));
    EXPECT_NEAR(rib.curve.end().x.inches(), 48 - 1.5, 1e-9);
    EXPECT_NEAR(rib.curve.bounds().high.y.inches(), 24 - 0.75, 1e-9);
    ASSERT_EQ(rib.trammels.size(), 1U);
    EXPECT_NEAR(rib.trammels[0].radius.inches(), 23.25, 1e-9);
    EXPECT_NEAR(rib.trammels[0].centre.x.inches(), 23.25, 1e-9);
    // Every 6 in and both ends: 0, 6, ... 42, 46-1/2.
    ASSERT_EQ(rib.ordinates.size(), 9U);
    for (const Point& p : rib.ordinates) {
        const double from_middle = p.x.inches() - 23.25;
        EXPECT_NEAR(p.y.inches(), std::sqrt(std::max(0.0, 23.25 * 23.25 - from_middle * from_middle)), 1e-6);
    }
}

TEST(FormRib, of_a_convex_wall_is_its_kerf_face) {
    job::Wall wall = harbor_stair();
    wall.side.value = job::Side::convex;
    wall.form.emplace();
    const FormRib rib = rib_of(job_of(wall));
    EXPECT_NEAR(rib.curve.end().x.inches(), 214, 1e-9) << "the wall itself, where the kerf face lies";
    EXPECT_NEAR(rib.curve.bounds().high.y.inches(), 31.25, 1e-6);
    EXPECT_TRUE(rib.trammels.empty()) << "no trammel reaches 198 in";
}

TEST(FormRib, has_the_stations_that_are_asked_for) {
    job::Opening opening = quarry_road();
    opening.form.emplace();
    opening.form->stations = {at_line(10_in, 61), at_line(40_in, 61)};
    const FormRib rib = rib_of(job_of(opening));
    ASSERT_EQ(rib.ordinates.size(), 4U);
    EXPECT_EQ(rib.ordinates[1].x, 10_in);
    EXPECT_FALSE(rib.arcs_alone);
    opening.form->stations[1].value = 100_in;
    const auto beyond = planned(opening);
    ASSERT_FALSE(beyond);
    EXPECT_EQ(beyond.error().front().at.line, 61);
}

}  // namespace
}  // namespace kerfpacket::plan
