// How depth and spacing are chosen, kerfs by hand, coupons, kerfs too deep, the saw.

#include <algorithm>

#include <gtest/gtest.h>

#include "../../support/jobs.h"
#include "../../support/planned.h"
#include "plan/piece.h"
#include "plan/plan.h"

namespace kerfpacket::plan {
namespace {

using namespace tests;

job::Wall wall(Length radius, job::Side side = job::Side::concave) {
    job::Wall made = tannery_row();
    made.radius->value = radius;
    made.side.value = side;
    made.board = solved(made.board);
    return made;
}

TEST(Solve, keeps_common_practice_where_it_is_ok) {
    for (const job::Side side : {job::Side::concave, job::Side::convex}) {
        const Piece piece = only_piece(wall(60_in, side));
        EXPECT_EQ(piece.settings.rule, Rule::common_practice);
        EXPECT_EQ(piece.cut.depth, 0.375_in);
        EXPECT_EQ(piece.bend.verdict, bend::Verdict::ok);
        EXPECT_FALSE(piece.settings.common);
    }
}

TEST(Solve, takes_the_thickest_web_with_kerfs_three_eighths_apart) {
    const Piece piece = only_piece(wall(24_in));
    EXPECT_EQ(piece.settings.rule, Rule::thickest_web);
    EXPECT_EQ(piece.bend.verdict, bend::Verdict::ok);
    EXPECT_GE(piece.cut.spacing.inches(), 0.375 - 0.005) << "a whole number of kerfs stands a little closer";
    ASSERT_TRUE(piece.settings.shallower);
    // A step less deep is not ok with kerfs that far apart: its spacing falls short, or its verdict does.
    EXPECT_TRUE(piece.settings.shallower->verdict != bend::Verdict::ok || piece.settings.shallower->spacing < 0.375_in);
    ASSERT_TRUE(piece.settings.common);
    EXPECT_GT(piece.settings.common->utilisation, bend::ok_up_to);
    EXPECT_GT(piece.settings.deeper->depth, piece.cut.depth);
}

TEST(Solve, goes_down_to_a_quarter_inch_before_it_gives_up) {
    bool met = false;
    for (double radius = 16; radius > 13 && !met; radius -= 0.25) {
        const Piece piece = only_piece(wall(Length::inches(radius)));
        met = piece.settings.rule == Rule::closer;
        if (!met) continue;
        EXPECT_LT(piece.cut.spacing, 0.375_in);
        EXPECT_EQ(piece.bend.verdict, bend::Verdict::ok);
    }
    EXPECT_TRUE(met);
}

// Grain that kerfs open is near the limit at any radius: what its strain asks for is told as that.
TEST(Solve, promises_no_ok_to_a_board_whose_grain_may_split) {
    job::Wall tight = wall(24_in);
    tight.board.material.value = "plywood";
    tight.board.thickness.value = 0.625_in;
    const Piece piece = only_piece(tight);
    ASSERT_EQ(piece.settings.rule, Rule::least_strain);
    ASSERT_TRUE(piece.settings.ok_from);
    EXPECT_TRUE(has(piece, "nothing_ok_but_strain_from"));
    EXPECT_FALSE(has(piece, "nothing_ok_at_this_radius"));
    job::Wall there = tight;
    there.radius->value = *piece.settings.ok_from;
    there.measured_to = job::Surface::finish;
    const Piece wide = only_piece(there);
    EXPECT_NE(wide.settings.rule, Rule::least_strain);
    EXPECT_EQ(wide.bend.verdict, bend::Verdict::caution);
}

TEST(Solve, says_where_nothing_is_ok_and_takes_the_least_strain) {
    const Piece piece = only_piece(wall(9_in));
    EXPECT_EQ(piece.settings.rule, Rule::least_strain);
    EXPECT_EQ(piece.bend.verdict, bend::Verdict::caution);
    EXPECT_TRUE(has(piece, "nothing_ok_at_this_radius"));
    ASSERT_TRUE(piece.settings.ok_from);
    // What it names is true: at that radius of the seen face something is ok, and an inch less nothing is.
    job::Wall other = wall(*piece.settings.ok_from);
    other.measured_to = job::Surface::finish;
    EXPECT_EQ(only_piece(other).bend.verdict, bend::Verdict::ok);
    other.radius->value -= 1_in;
    EXPECT_NE(only_piece(other).bend.verdict, bend::Verdict::ok);
}

TEST(Solve, something_is_ok_at_the_radius_that_it_names) {
    int named = 0;
    for (const char* material : {"mdf", "hard-maple", "plywood"})
        for (const measure::Length thickness : {0.375_in, 0.75_in})
            for (double radius = 6; radius < 24; radius += 1.5)
                for (const job::Side side : {job::Side::concave, job::Side::convex}) {
                    job::Wall one = wall(Length::inches(radius), side);
                    one.board.material.value = material;
                    one.board.thickness.value = thickness;
                    const auto plan = make_plan(job_of(one));
                    if (!plan || plan->pieces.empty() || !plan->pieces.front().settings.ok_from) continue;
                    ++named;
                    EXPECT_EQ(plan->pieces.front().settings.rule, Rule::least_strain);
                    job::Wall other = one;
                    other.radius->value = *plan->pieces.front().settings.ok_from;
                    other.measured_to = job::Surface::finish;
                    EXPECT_NE(only_piece(other).settings.rule, Rule::least_strain)
                        << material << " " << thickness.inches() << " at " << other.radius->value.inches();
                }
    EXPECT_GT(named, 10);
}

TEST(Solve, says_what_it_would_take_with_both_left_to_it) {
    job::Wall given = wall(24_in);
    given.board.kerf_depth.given = 0.3125_in;
    given.board.spacing.given = 0.875_in;
    const Piece judged = only_piece(given);
    ASSERT_TRUE(has(judged, "solve_would_do"));
    const Piece free = only_piece(wall(24_in));
    EXPECT_EQ(judged.settings.solved->depth, free.cut.depth);
    EXPECT_EQ(judged.settings.solved->kerfs, static_cast<int>(free.blank().kerfs.size()));
}

TEST(Solve, refuses_what_nothing_bends_and_names_what_would_do) {
    const job::Diagnostic wrong = refusal(job_of(wall(4_in)));
    EXPECT_EQ(wrong.at.line, 32) << "the board's thickness, as nothing of its cut is given";
    EXPECT_NE(wrong.message.find("piece T will likely break: even kerfs 11/16 in deep"), std::string::npos)
        << wrong.message;
    EXPECT_NE(wrong.hint.find("a radius of at least "), std::string::npos) << wrong.hint;
}

TEST(Solve, names_a_radius_a_board_plies_and_other_materials) {
    job::Wall tight = wall(30_in);
    tight.board.material.value = "plywood";
    tight.board.thickness.value = 1.5_in;
    tight.board.kerf_depth.given = 0.5_in;
    tight.board.kerf_depth.at = {44, 1};
    tight.board.spacing.given = 0.75_in;
    const job::Job job = job_of(tight);
    // Given in full it is judged, not refused, and what "solve" would do is said.
    const Piece judged = only_piece(job);
    EXPECT_EQ(judged.bend.verdict, bend::Verdict::break_likely);
    EXPECT_TRUE(judged.settings.solved) << "deeper kerfs do";
    EXPECT_TRUE(has(judged, "solve_would_do"));

    job::Wall hopeless = wall(12_in);
    hopeless.board.material.value = "plywood";
    const job::Diagnostic wrong = refusal(job_of(hopeless));
    for (const char* way : {"a radius of at least ", "plies ", "another material: "})
        EXPECT_NE(wrong.hint.find(way), std::string::npos) << way << ": " << wrong.hint;
}

TEST(Plies, have_blanks_as_long_as_their_own_curve) {
    job::Wall hopeless = wall(12_in);
    hopeless.board.material.value = "plywood";
    const std::string hint = refusal(job_of(hopeless)).hint;
    const auto plies = hint.find(" plies ");
    ASSERT_NE(plies, std::string::npos) << hint;
    const int count = std::stoi(hint.substr(hint.rfind(' ', plies - 1)));
    const auto from = hint.find("back one ", plies) + 9;
    std::string list = hint.substr(from, hint.find(" long", from) - from);
    EXPECT_EQ(std::count(list.begin(), list.end(), ',') + 1, count) << list;
    // 90 degrees about radii of 11-1/4 to 12 in, and 4 in of trim at each end: 25.67 to 26.85 in.
    EXPECT_TRUE(list.starts_with("25-")) << list;
    EXPECT_NE(list.find("26-13/16"), std::string::npos) << list;
}

TEST(Solve, leaves_what_is_given_alone) {
    job::Wall one = wall(24_in);
    one.board.spacing.given = 0.4_in;
    one.board.spacing.at = {45, 1};
    const Piece by_depth = only_piece(one);
    EXPECT_EQ(by_depth.cut.spacing, 0.4_in);
    EXPECT_EQ(by_depth.bend.verdict, bend::Verdict::ok);
    EXPECT_GT(by_depth.cut.depth, 0.375_in);
    one = wall(24_in);
    one.board.kerf_depth.given = 0.625_in;
    const Piece by_spacing = only_piece(one);
    EXPECT_EQ(by_spacing.cut.depth, 0.625_in);
    EXPECT_EQ(by_spacing.bend.verdict, bend::Verdict::ok);
    EXPECT_FALSE(by_spacing.settings.shallower);
}

TEST(Solve, takes_metric_depths_in_metric_jobs) {
    job::Job job = job_of(wall(600_mm));
    job.header.units = measure::Unit::millimetre;
    job.walls[0].board.thickness.value = 18_mm;
    const Piece piece = only_piece(job);
    EXPECT_NEAR(piece.cut.depth.mm(), std::round(piece.cut.depth.mm()), 1e-9);
    EXPECT_NE(piece.settings.rule, Rule::common_practice);
}

TEST(Solve, one_depth_for_the_tightest_spot_and_a_spacing_that_follows_the_curve) {
    const Piece piece = only_piece(job_of(quarry_road()));
    EXPECT_LT(piece.cut.least_spacing.inches(), 0.42);
    EXPECT_GT(piece.cut.spacing.inches(), 0.45);
    EXPECT_TRUE(piece.weak_links.empty());
    EXPECT_LT(piece.blank().kerfs.at(static_cast<std::size_t>(piece.governing - 1)).on_curve.inches(), 5)
        << "the governing kerf stands where the ellipse is tightest";
}

job::Wall by_hand(const std::vector<double>& inches) {
    job::Wall one = tannery_row();
    one.board.spacing = {};
    for (const double at : inches) one.board.kerfs.push_back(at_line(Length::inches(at), 46));
    return one;
}

/// Places every half inch from `first` on that stay under 98-1/2 in.
std::vector<double> half_inches_from(double first) {
    std::vector<double> places;
    const int count = static_cast<int>((98.5 - first) * 2);
    places.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) places.push_back(first + i * 0.5);
    return places;
}

TEST(KerfsByHand, stand_where_they_are_put_and_weak_links_are_named) {
    std::vector<double> places = half_inches_from(4);
    const Piece even = only_piece(by_hand(places));
    EXPECT_EQ(even.blank().kerfs.size(), places.size());
    EXPECT_TRUE(even.weak_links.empty());
    EXPECT_TRUE(even.cut.kerfs_given);
    places.erase(places.begin() + 40);
    const Piece gap = only_piece(by_hand(places));
    // The kerfs beside the gap have one gap twice the other.
    EXPECT_EQ(gap.weak_links, (std::vector<int>{40, 41}));
    EXPECT_TRUE(has(gap, "gap_ratio"));
    EXPECT_GT(gap.bend.utilisation, even.bend.utilisation);
    EXPECT_TRUE(gap.governing == 40 || gap.governing == 41);
}

TEST(KerfsByHand, that_stop_short_of_the_bend_are_told_and_judged_so) {
    std::vector<double> places = half_inches_from(6);
    const Piece piece = only_piece(by_hand(places));
    EXPECT_TRUE(has(piece, "bend_without_kerfs"));
    EXPECT_EQ(piece.governing, 1);
    EXPECT_GT(piece.blank().kerfs.front().spacing.inches(), 2);
    places.erase(places.begin(), places.begin() + 8);
    EXPECT_EQ(refusal(job_of(by_hand(places))).message, "from 4 in to 10 in there is no kerf");
    EXPECT_EQ(refusal(job_of(by_hand({4, 5, 6}))).message.substr(0, 13), "from 6 in to ");
}

TEST(KerfsByHand, beyond_the_blank_are_refused) {
    const job::Diagnostic wrong = refusal(job_of(by_hand({5, 6, 500})));
    EXPECT_EQ(wrong.at.line, 46);
    EXPECT_NE(wrong.message.find("a kerf at 500 in is not on the blank"), std::string::npos) << wrong.message;
}

TEST(KerfsByHand, cannot_serve_both_boards_of_a_pointed_head) {
    job::Opening pointed = alder_court();
    pointed.liner.kerfs = {at_line(5_in, 46), at_line(5.5_in, 46)};
    EXPECT_NE(refusal(job_of(pointed)).message.find("two boards"), std::string::npos);
}

job::Coupon cracked(Length chord, Length rise) {
    job::Coupon coupon;
    coupon.chord = at_line(chord, 50);
    coupon.rise = at_line(rise, 51);
    coupon.held = at_line(job::Held::disc, 52);
    coupon.outcome = at_line(job::Outcome::cracked, 53);
    coupon.by = "L. Moss";
    return coupon;
}

TEST(Coupon, that_cracked_gives_the_break_strain_and_its_error) {
    job::Wall one = tannery_row();
    const Piece before = only_piece(one);
    one.board.coupons = {cracked(12_in, 0.9_in)};
    const Piece after = only_piece(one);
    ASSERT_TRUE(after.coupon);
    EXPECT_TRUE(after.coupon->counts);
    EXPECT_EQ(after.coupon->by, "L. Moss");
    EXPECT_EQ(after.coupon->table_limit, before.bend.strain_limit);
    EXPECT_EQ(after.bend.strain_limit, after.coupon->strain);
    EXPECT_EQ(after.bend.strain, before.bend.strain);
    EXPECT_EQ(after.chance.coupons, 1);
    EXPECT_LT(after.coupon->error, 0.1);
    // r T^3 / (2 t^2 R) with R the circle of chord 12 and rise 0.9, 20.45 in, and the line 0.19 in beyond the face.
    EXPECT_NEAR(after.coupon->strain / before.bend.strain, (60 - 0.75 + 0.19) / (20.45 + 0.19), 0.01);
}

TEST(Coupon, that_held_raises_the_limit_but_never_lowers_it) {
    job::Wall one = tannery_row();
    one.board.coupons = {cracked(12_in, 0.9_in)};
    one.board.coupons.front().outcome.value = job::Outcome::held;
    EXPECT_TRUE(only_piece(one).coupon->counts);
    one.board.coupons.front().rise.value = 0.2_in;
    const Piece little = only_piece(one);
    EXPECT_FALSE(little.coupon->counts);
    EXPECT_EQ(little.bend.strain_limit, little.coupon->table_limit);
    EXPECT_FALSE(little.chance.counted());
    EXPECT_TRUE(has(little, "coupon_held_less"));
    EXPECT_TRUE(has(little, "coupon_flat"));
}

TEST(Coupon, that_closed_moves_the_closing_radius) {
    job::Wall one = tannery_row();
    one.side.value = job::Side::convex;
    // So narrow kerfs close before a board has more strain than any has.
    const auto narrow = [&] {
        job::Job job = job_of(one);
        job.saw.kerf.value = 0.04_in;
        return job;
    };
    const Piece before = only_piece(narrow());
    const Length closing = before.bend.close_radius;
    one.board.coupons = {cracked(12_in, 1_in)};
    one.board.coupons.front().outcome.value = job::Outcome::closed;
    one.board.coupons.front().believed = true;
    // A coupon that closed a tenth earlier than calculated.
    const double plain = closing.inches() * 1.1 + 0.19;
    one.board.coupons.front().chord.value = 2_in;
    one.board.coupons.front().rise.value = Length::inches(plain - std::sqrt(plain * plain - 1));
    const Piece after = only_piece(narrow());
    EXPECT_NEAR(after.bend.close_radius / closing, 1.1, 0.01);
    ASSERT_TRUE(after.coupon->hinge);
    one.board.coupons.front().chord.value = 12_in;
    one.board.coupons.front().rise.value = 0.125_in;
    EXPECT_EQ(refusal(narrow()).at.line, 51) << "so flat no kerf closes";
    one.side.value = job::Side::concave;
    EXPECT_EQ(refusal(narrow()).at.line, 53) << "kerfs that open do not close";
}

TEST(Coupon, of_other_settings_is_told) {
    job::Wall one = tannery_row();
    one.board.coupons = {cracked(12_in, 0.9_in)};
    EXPECT_FALSE(has(only_piece(one), "coupon_other_settings"));
    one.board.coupons.front().kerf_depth = at_line(0.5_in, 54);
    EXPECT_TRUE(has(only_piece(one), "coupon_other_settings"));
}

TEST(OwnMaterial, counts_instead_of_the_table) {
    job::Job job = job_of(tannery_row());
    job.walls[0].board.material.value = "shop-ply";
    job.materials.push_back(
        {at_line<std::string>("shop-ply", 60), 0.008, 0.006, 1.5, std::nullopt, false, std::nullopt});
    const Piece piece = only_piece(job);
    EXPECT_TRUE(piece.own_material);
    EXPECT_EQ(piece.bend.strain_limit, 0.006);
    job.materials[0].peel = {{20, 3000}};
    EXPECT_LT(only_piece(job).bend.strain_limit, 0.006) << "it peels first";
    job.materials[0].grain = true;
    EXPECT_TRUE(has(only_piece(job), "grain_may_split"));
}

TEST(DeepKerfs, are_answered_by_number) {
    job::Wall one = tannery_row();
    one.board.too_deep = {{at_line(12, 47), at_line(0.390625_in, 47)}, {at_line(20, 48), at_line(0.75_in, 48)}};
    const Piece piece = only_piece(one);
    ASSERT_EQ(piece.deep_kerfs.size(), 2U);
    EXPECT_EQ(piece.deep_kerfs[0].n, 12);
    EXPECT_EQ(piece.deep_kerfs[0].answer.mend, bend::Mend::keep);
    EXPECT_EQ(piece.deep_kerfs[1].answer.mend, bend::Mend::scrap);
    one.board.too_deep = {{at_line(4000, 47), at_line(0.5_in, 47)}};
    EXPECT_EQ(refusal(job_of(one)).message, "there is no kerf 4000");
    one.board.too_deep = {{at_line(12, 47), at_line(0.25_in, 47)}};
    EXPECT_EQ(refusal(job_of(one)).message, "kerf 12 is not too deep at 1/4 in");
}

TEST(TrialGroove, gives_the_rear_limit) {
    job::Job job = job_of(tannery_row());
    job.saw.trial = job::TrialGroove{at_line(0.375_in, 5), at_line(0.125_in, 6), {}};
    const Piece piece = only_piece(job);
    ASSERT_TRUE(piece.saw.rear_limit && piece.saw.spacer);
    // r 6, r - 1/4 at the fence: sqrt(36 - 5.75^2) = 1.714.
    EXPECT_NEAR(piece.saw.rear_limit->inches(), 1.714, 5e-4);
    EXPECT_NEAR(piece.saw.spacer->inches(), 1.75, 1e-12) << "the next sixteenth up";
    // 1/64 in less at the back edge: sqrt(12/64 - 1/64^2) = 0.433 in less of spacer, 1.281, and up to a sixteenth.
    EXPECT_NEAR(piece.saw.spacer_shorter->inches(), 1.3125, 1e-12);
}

TEST(TrialGroove, that_ends_before_the_fence_is_read_from_its_end) {
    job::Job job = job_of(tannery_row());
    job.saw.trial = job::TrialGroove{at_line(0.375_in, 5), {}, at_line(0.5_in, 6)};
    const Piece piece = only_piece(job);
    // The ramp of 3/8 in with a 12 in blade is 2.088 in.
    EXPECT_NEAR(piece.saw.rear_limit->inches(), 2.588, 5e-4);
    EXPECT_NEAR(piece.saw.spacer->inches(), 2.625, 1e-12);
    job.header.units = measure::Unit::millimetre;
    EXPECT_NEAR(only_piece(job).saw.spacer->mm(), 66, 1e-9) << "65.7 mm, to half millimetres up";
}

TEST(Travel, tells_how_much_of_a_wide_board_is_reached) {
    job::Job job = job_of(tannery_row());
    job.saw.rear_limit = at_line(1.25_in, 5);
    job.saw.travel = at_line(5_in, 4);
    const Piece piece = only_piece(job);
    EXPECT_NEAR(piece.saw.width_reached->inches(), 5, 1e-12);
    EXPECT_TRUE(has(piece, "travel_short")) << "from both edges it is reached";
    job.saw.travel = at_line(3_in, 4);
    EXPECT_TRUE(has(only_piece(job), "travel_far_short"));
}

TEST(LimitCurves, are_three_depths_through_what_is_ok) {
    for (const Length radius : {60_in, 24_in, 12_in}) {
        const Piece piece = only_piece(wall(radius));
        ASSERT_EQ(piece.limit_curves.size(), 3U);
        for (const LimitCurve& curve : piece.limit_curves)
            for (std::size_t i = 1; i < curve.points.size(); ++i)
                EXPECT_GT(curve.points[i].second, curve.points[i - 1].second) << "wider spacing, larger radius";
        EXPECT_LT(piece.limit_curves[0].depth, piece.limit_curves[1].depth);
        EXPECT_LT(piece.limit_curves[1].depth, piece.limit_curves[2].depth);
    }
}

}  // namespace
}  // namespace kerfpacket::plan
