#include <array>

#include <gtest/gtest.h>

#include "../../support/jobs.h"
#include "plan/plan.h"

namespace kerfpacket::plan {
namespace {

using namespace tests;

job::Opening cased(job::Opening opening) {
    opening.casing = job::Casing{at_line(3.5_in, 51), at_line(0.25_in, 52), job::WallSide::room, at_line(3, 53), {}};
    return opening;
}

struct Arch {
    Piece piece;
    ArchLines lines;
};

Arch arch(const job::Opening& opening) {
    auto plan = make_plan(job_of(opening));
    if (!plan) throw std::runtime_error(plan.error().front().message);
    Piece piece = plan->pieces.at(0);
    ArchLines lines = std::get<ArchLines>(piece.lines);
    return {std::move(piece), std::move(lines)};
}

Length from(Point centre, Point p) { return geom::distance(centre, p); }

Point centre_of(const Path& path) { return path.segments().front().centre(); }

TEST(Liner, inside_the_wall_it_was_measured_to) {
    const Arch a = arch(lantern_court());
    EXPECT_NEAR(a.lines.wall_half_span().inches(), 35, 1e-12);
    EXPECT_NEAR(a.lines.finish_half_span().inches(), 34.25, 1e-12);
    EXPECT_NEAR((a.piece.radii.wall - a.piece.radii.finish).inches(), 0.75, 1e-12);
    EXPECT_NEAR(from(centre_of(a.lines.wall), centre_of(a.lines.finish)).mm(), 0, 1e-9);
    EXPECT_NEAR(a.lines.finish.bounds().high.y.inches(), 13.5 - 0.75, 1e-9);
}

TEST(Liner, outside_the_finish_it_was_measured_to) {
    job::Opening opening = lantern_court();
    opening.measured_to = job::Surface::finish;
    const Arch a = arch(opening);
    EXPECT_NEAR(a.lines.finish_half_span().inches(), 35, 1e-12);
    EXPECT_NEAR(a.lines.wall_half_span().inches(), 35.75, 1e-9);
    EXPECT_NEAR(a.lines.wall.bounds().high.y.inches(), 14.25, 1e-9);
    EXPECT_EQ(a.lines.finish.start(), (Point{-35_in, {}}));
}

TEST(KerfTicks, one_a_kerf_radial_and_as_deep_as_the_kerf) {
    for (const job::End zero : {job::End::left, job::End::right}) {
        job::Opening opening = lantern_court();
        opening.liner.zero = zero;
        const Arch a = arch(opening);
        // A kerf or two may stand in the trim, which is cut off.
        ASSERT_LE(a.piece.blank().kerfs.size() - a.lines.kerf_ticks.size(), 2U);
        const Point centre = centre_of(a.lines.wall);
        for (const KerfTick& numbered : a.lines.kerf_ticks) {
            const Path& tick = numbered.line;
            EXPECT_EQ(numbered.board, 1);
            EXPECT_NEAR(from(centre, tick.start()).mm(), a.piece.radii.wall.mm(), 1e-6);
            EXPECT_NEAR(from(centre, tick.end()).mm(), (a.piece.radii.wall - a.piece.cut.depth).mm(), 1e-6);
        }
        EXPECT_EQ(a.lines.kerf_ticks.front().line.start().x.mm() < 0, zero == job::End::left);
        EXPECT_EQ(a.lines.kerf_ticks.back().line.start().x.mm() > 0, zero == job::End::left);
    }
}

TEST(Casing, of_a_semicircle_meets_the_legs_on_the_spring_line) {
    const Arch a = arch(cased(semicircle(36_in)));
    EXPECT_NEAR(a.lines.casing_inside->bounds().high.y.inches(), 18 - 0.75 + 0.25, 1e-9);
    EXPECT_NEAR(a.lines.casing_outside->bounds().high.y.inches(), 17.5 + 3.5, 1e-9);
    ASSERT_EQ(a.lines.mitres.size(), 2U);
    for (const Path& mitre : a.lines.mitres) {
        EXPECT_NEAR(mitre.start().y.inches(), 0, 1e-6);
        EXPECT_NEAR(mitre.end().y.inches(), 0, 1e-6);
        EXPECT_NEAR(mitre.length().inches(), 3.5, 1e-9);
    }
}

// On a segmental head each corner lies on its circle and on its upright. A point halfway along the true mitre is as far
// from both edges of the arch casing as from both edges of the leg casing, to the little that the mitre is curved.
TEST(Casing, of_a_segmental_head_meets_the_legs_on_the_mitre) {
    const Arch a = arch(cased(lantern_court()));
    const Point centre = centre_of(a.lines.finish);
    const Path& mitre = a.lines.mitres.at(1);
    const Length inside = a.lines.finish_half_span() + 0.25_in;
    EXPECT_NEAR(mitre.start().x.inches(), inside.inches(), 1e-9);
    EXPECT_NEAR(mitre.end().x.inches(), inside.inches() + 3.5, 1e-9);
    EXPECT_NEAR(from(centre, mitre.start()).inches(), (a.piece.radii.finish + 0.25_in).inches(), 1e-9);
    EXPECT_NEAR(from(centre, mitre.end()).inches(), (a.piece.radii.finish + 3.75_in).inches(), 1e-9);
    EXPECT_NEAR(from(a.lines.casing_inside->end(), mitre.start()).mm(), 0, 1e-9);
    EXPECT_NEAR(from(a.lines.casing_outside->end(), mitre.end()).mm(), 0, 1e-9);
    const Length outside = a.piece.radii.finish + 3.75_in;
    EXPECT_NEAR(a.lines.casing_outside->segments().front().radius().inches(), outside.inches(), 1e-9);
    const Point half = geom::middle(mitre.start(), mitre.end());
    const Length into_leg = half.x - inside;
    const Length into_arch = from(centre, half) - (a.piece.radii.finish + 0.25_in);
    EXPECT_NEAR((into_leg - into_arch).inches(), 0, 0.05);
}

TEST(Casing, joints_part_it_equally_and_lie_on_radii) {
    const Arch a = arch(cased(lantern_court()));
    ASSERT_EQ(a.lines.segment_joints.size(), 2U);
    const Point centre = centre_of(a.lines.finish);
    const auto angle = [&](Point p) { return geom::direction(centre, p).angle().degrees(); };
    const double total = angle(a.lines.casing_inside->start()) - angle(a.lines.casing_inside->end());
    for (const Path& joint : a.lines.segment_joints) {
        EXPECT_NEAR(angle(joint.start()), angle(joint.end()), 1e-9);
        EXPECT_NEAR(joint.length().inches(), 3.5, 1e-9);
    }
    EXPECT_NEAR(angle(a.lines.segment_joints[0].start()) - angle(a.lines.segment_joints[1].start()), total / 3, 1e-9);
    EXPECT_NEAR(angle(a.lines.casing_inside->start()) - angle(a.lines.segment_joints[0].start()), total / 3, 1e-9);
}

TEST(LegLines, run_down_from_the_corners_of_every_line) {
    const Arch a = arch(cased(lantern_court()));
    ASSERT_EQ(a.lines.leg_lines.size(), 8U);
    const double finish = a.piece.radii.finish.inches();
    const std::array<double, 4> half_spans{35, 34.25, 34.5, 38};
    const std::array<double, 4> radii{finish + 0.75, finish, finish + 0.25, finish + 3.75};
    const Point centre = centre_of(a.lines.finish);
    for (std::size_t i = 0; i < 8; ++i) {
        const Path& leg = a.lines.leg_lines[i];
        EXPECT_NEAR(leg.start().x.inches(), (i % 2 == 0 ? -1 : 1) * half_spans[i / 2], 1e-9);
        EXPECT_NEAR(from(centre, leg.start()).inches(), radii[i / 2], 1e-9);
        EXPECT_EQ(leg.start().x, leg.end().x);
        EXPECT_LE(leg.end().y, -1_in);
        EXPECT_LT(leg.end().y, leg.start().y);
    }
    EXPECT_EQ(arch(lantern_court()).lines.leg_lines.size(), 4U) << "no casing, no casing legs";
}

TEST(HalfTemplate, is_refused_where_the_two_sides_differ) {
    for (const auto& [opening, symmetric] :
         {std::pair{quarry_road(), false}, {semicircle(36_in), true}, {lantern_court(), true}}) {
        job::Opening half = opening;
        half.wish.half = true;
        half.wish.half_at = {61, 8};
        const auto plan = make_plan(job_of(half));
        ASSERT_EQ(plan.has_value(), symmetric);
        if (symmetric) {
            EXPECT_TRUE(plan->pieces.front().template_wish.half);
            continue;
        }
        ASSERT_EQ(plan.error().size(), 1U);
        EXPECT_EQ(plan.error().front().at.line, 61);
        EXPECT_NE(plan.error().front().message.find("flipped about the centre line"), std::string::npos);
        EXPECT_NE(plan.error().front().hint.find("DO NOT FLIP"), std::string::npos);
    }
}

}  // namespace
}  // namespace kerfpacket::plan
