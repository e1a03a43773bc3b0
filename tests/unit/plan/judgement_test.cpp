// What is refused, and what is warned of.

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "../../support/jobs.h"
#include "../../support/planned.h"
#include "plan/plan.h"

namespace kerfpacket::plan {
namespace {

using namespace tests;

const Caution* find(const Piece& piece, const std::string& key) {
    const auto found =
        std::find_if(piece.cautions.begin(), piece.cautions.end(), [&](const Caution& c) { return c.key == key; });
    return found == piece.cautions.end() ? nullptr : &*found;
}

struct BadBoard {
    const char* name;
    void (*spoil)(job::Wall& wall);
    int line;  ///< of the value to blame, as support/jobs.h numbers them
    const char* message;
};

class Refusals : public testing::TestWithParam<BadBoard> {};

TEST_P(Refusals, say_what_and_where) {
    job::Wall wall = harbor_stair();
    GetParam().spoil(wall);
    const auto plan = make_plan(job_of(wall));
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 1U);
    const job::Diagnostic& wrong = plan.error().front();
    EXPECT_EQ(wrong.severity, job::Severity::error);
    EXPECT_EQ(wrong.at.line, GetParam().line);
    EXPECT_EQ(wrong.message, GetParam().message);
    EXPECT_FALSE(wrong.hint.empty());
}

void set_radius(job::Wall& wall, Length radius) {
    wall.chord.reset();
    wall.rise.reset();
    wall.radius = at_line(radius, 12);
    wall.angle = at_line(measure::Angle::degrees(60), 13);
}

INSTANTIATE_TEST_SUITE_P(
    Mistakes, Refusals,
    testing::Values(
        BadBoard{"material", [](job::Wall& w) { w.board.material.value = "mfd"; }, 31, "unknown material \"mfd\""},
        BadBoard{"thin_web",
                 [](job::Wall& w) {
                     w.board.kerf_depth = {0.71875_in, false, false, {40, 1}};
                 },
                 40, "kerfs 23/32 in deep in a board 3/4 in thick leave a web of 1/32 in"},
        BadBoard{"thin_board", [](job::Wall& w) { w.board.thickness.value = 0.0625_in; }, 35,
                 "kerfs 1/32 in deep in a board 1/16 in thick leave a web of 1/32 in"},
        BadBoard{"no_land",
                 [](job::Wall& w) {
                     w.board.spacing = {0.1_in, false, false, {41, 1}};
                 },
                 41, "kerfs 0.118 in wide every 0.100 in leave no wood between them"},
        BadBoard{"tight_concave", [](job::Wall& w) { set_radius(w, 0.5_in); }, 32,
                 "the face of the board would fold on itself: the measured curve has a radius of 1/2 in at 0 in "
                 "right of the middle, 0.067 in above the base line"},
        BadBoard{"short_bend",
                 [](job::Wall& w) {
                     set_radius(w, 6_in);
                     w.angle->value = measure::Angle::degrees(1);
                     w.board.trim.value = 4.125_in;
                 },
                 36, "the bend is 0.095 in long, less than one spacing of 1/2 in"},
        BadBoard{"too_many",
                 [](job::Wall& w) {
                     set_radius(w, 100000_in);
                     w.board.spacing = {0.25_in, false, false, {41, 1}};
                 },
                 41, "a bend of 104719.166 in with a kerf every 1/4 in takes more than 5000 cuts"}),
    [](const auto& tested) { return tested.param.name; });

TEST(Refusal, of_a_kerf_wider_than_the_usual_spacing_says_what_is_usual) {
    job::Job job = job_of(harbor_stair());
    job.walls[0].board.spacing = {};
    job.saw.kerf.value = 0.6_in;
    const auto plan = make_plan(job);
    ASSERT_FALSE(plan);
    EXPECT_TRUE(std::string(plan.error().front().hint).starts_with("left out it is 1/2 in"));
}

TEST(Refusal, a_web_of_just_a_sixteenth_is_taken) {
    for (const double thickness : {0.5, 0.75, 1.0, 0.7}) {
        job::Wall wall = harbor_stair();
        wall.board.thickness.value = Length::inches(thickness);
        wall.board.kerf_depth = {Length::inches(thickness - 0.0625), false, false, {40, 1}};
        EXPECT_TRUE(make_plan(job_of(wall))) << thickness;
    }
}

TEST(Refusal, names_known_materials_and_the_near_miss) {
    job::Wall wall = harbor_stair();
    wall.board.material.value = "mfd";
    const auto plan = make_plan(job_of(wall));
    ASSERT_FALSE(plan);
    EXPECT_NE(plan.error().front().hint.find("yellow-poplar"), std::string::npos);
}

TEST(Refusal, collects_the_mistakes_of_all_pieces) {
    job::Job job = job_of(harbor_stair());
    job.walls[0].board.material.value = "granite";
    job.walls[0].board.spacing = {0.1_in, false, false, {41, 1}};
    job.openings.push_back(lantern_court());
    job.openings[0].liner.thickness.value = 36_in;
    const auto plan = make_plan(job);
    ASSERT_FALSE(plan);
    ASSERT_EQ(plan.error().size(), 3U);
    for (const char* message : {"liners 36 in thick fill the measured span of 70 in", "unknown material \"granite\""})
        EXPECT_TRUE(std::any_of(plan.error().begin(), plan.error().end(), [&](const job::Diagnostic& one) {
            return one.message == message;
        })) << message;
}

TEST(Refusal, of_one_piece_leaves_the_others) {
    job::Job job = job_of(harbor_stair());
    job.openings.push_back(lantern_court());
    job.openings[0].liner.thickness.value = 36_in;
    const auto plan = make_plan(job);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->pieces.size(), 1U);
    EXPECT_TRUE(plan->cautions());
    ASSERT_EQ(plan->refused.size(), 1U);
    const plan::Refused& refused = plan->refused[0];
    EXPECT_EQ(refused.id, job.openings[0].id.value);
    EXPECT_EQ(refused.kind, Kind::arch_liner);
    ASSERT_EQ(refused.reasons.size(), 1U);
    EXPECT_EQ(refused.reasons[0].severity, job::Severity::refused);
    EXPECT_EQ(refused.reasons[0].message, "liners 36 in thick fill the measured span of 70 in");
    EXPECT_TRUE(std::any_of(refused.asked.begin(), refused.asked.end(),
                            [](const job::Value& value) { return value.key == "thickness"; }));
}

// Common names and capitals of our own materials.
TEST(Refusal, guesses_the_material_that_is_meant) {
    for (const auto& [said, meant] : {std::pair("MDF", "mdf"), std::pair("poplar", "yellow-poplar"),
                                      std::pair("Red Oak", "red-oak"), std::pair("maple", "hard-maple")}) {
        const auto wrong = unknown_materials({{said, {3, 1}}}, {});
        ASSERT_EQ(wrong.size(), 1U);
        EXPECT_TRUE(wrong[0].hint.starts_with("did you mean \"" + std::string(meant) + "\"?")) << wrong[0].hint;
    }
    EXPECT_TRUE(unknown_materials({{"bay-ply", {3, 1}}}, {"bay-ply"}).empty());
}

TEST(Refusal, speaks_in_the_units_of_the_job) {
    job::Job job = job_of(harbor_stair());
    job.header.units = measure::Unit::millimetre;
    job.walls[0].board.thickness.value = 19_mm;
    job.walls[0].board.kerf_depth = {18_mm, false, false, {40, 1}};
    EXPECT_EQ(make_plan(job).error().front().message, "kerfs 18 mm deep in a board 19 mm thick leave a web of 1 mm");
}

// A peep hole so small that the whole kerfs that fit would leave no wood between them.
TEST(Refusal, a_bend_that_is_shorter_than_its_kerfs) {
    job::Opening hole = lantern_court();
    hole.span.value = 43.5_mm;
    hole.rise.value = 9.5_mm;
    hole.legs = {{at_line(50_in, 25), at_line(50_in, 25)}};
    hole.measured_to = job::Surface::wall;
    hole.liner = solved(mdf_board(5_in, 0.5_in));
    hole.liner.material.value = "plywood";
    job::Job job = job_of(hole);
    job.header.units = measure::Unit::millimetre;
    job.saw.kerf.value = 3.2_mm;
    const auto plan = make_plan(job);
    ASSERT_FALSE(plan);
    EXPECT_EQ(plan.error().front().message,
              "the bend of 25.56 mm leaves no room for a kerf every 12.70 mm clear of its ends");
    EXPECT_EQ(plan.error().front().hint, "use a closer spacing, or more trim");
}

TEST(Cautions, are_the_concerns_of_the_bend_by_name) {
    job::Wall wall = fern_street();
    wall.radius->value = 20_in;
    wall.angle->value = measure::Angle::degrees(90);
    const Piece piece = only_piece(job_of(wall));
    EXPECT_EQ(piece.bend.verdict, bend::Verdict::break_likely);
    const Caution* caution = find(piece, "strain_break");
    ASSERT_NE(caution, nullptr);
    EXPECT_EQ(caution->values.at(0).first, "u");
    EXPECT_EQ(std::get<double>(caution->values.at(0).second), piece.bend.utilisation);
    EXPECT_EQ(std::get<Length>(caution->values.at(1).second), piece.bend.least_radius);
    EXPECT_GE(piece.cautions.size(), piece.bend.concerns.size());
}

TEST(Cautions, nothing_to_say_of_an_easy_bend_on_long_stock) {
    job::Job job = job_of(harbor_stair());
    job.stock.lengths = {at_line(240_in, 61), at_line(96_in, 61)};
    EXPECT_TRUE(only_piece(job).cautions.empty());
    EXPECT_FALSE(make_plan(job)->cautions());
}

TEST(Cautions, blank_longer_than_the_longest_stock) {
    job::Job job = job_of(lantern_court());  // a liner: no joint is planned in it
    job.stock.lengths = {at_line(72_in, 61), at_line(48_in, 61)};
    const Piece piece = only_piece(job);
    const Caution* caution = find(piece, "blank_longer_than_stock");
    ASSERT_NE(caution, nullptr);
    EXPECT_EQ(std::get<Length>(caution->values.at(0).second), piece.blank().length);
    EXPECT_EQ(std::get<Length>(caution->values.at(1).second), 72_in);
    EXPECT_EQ(piece.bend.verdict, bend::Verdict::ok);
    EXPECT_TRUE(make_plan(job)->cautions());
}

TEST(Cautions, slide_travel_too_short_for_the_board) {
    job::Job job = job_of(harbor_stair());
    job.saw.travel = at_line(7_in, 4);
    ASSERT_NE(find(only_piece(job), "travel_short"), nullptr);
    job.saw.travel = at_line(7.5_in, 4);
    EXPECT_EQ(find(only_piece(job), "travel_short"), nullptr);
    // Blade centre half an inch behind the fence at its rear limit: the slide has that much further to go.
    job.saw.rear_limit = at_line(-0.5_in, 5);
    EXPECT_NE(find(only_piece(job), "travel_short"), nullptr);
}

TEST(Totals, count_quantities) {
    job::Job job = job_of(harbor_stair());
    job.openings.push_back(lantern_court());
    job.openings[0].quantity = 3;
    const auto plan = make_plan(job);
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan->pieces.at(0).id, "A") << "openings first";
    EXPECT_EQ(plan->blanks(), 4);
    EXPECT_EQ(plan->cuts(),
              static_cast<int>(3 * plan->pieces[0].blank().kerfs.size() + plan->pieces[1].blank().kerfs.size()));
    EXPECT_EQ(plan->fingerprint, "0123abcd");
    EXPECT_EQ(plan->header.number, "T-1");
}

// An eyebrow turns at once where it leaves the mitre, and no kerf stands near that: the flat end is a tangent of its
// circle, which leaves it by what Pythagoras says.
TEST(Mitres, a_flat_end_is_told_with_how_far_it_stands_off) {
    job::Opening opening = eyebrow();
    opening.span.value = 42_in;
    opening.rise.value = 9.5_in;
    opening.legs = {at_line(60_in, 24), at_line(60_in, 24)};
    const Piece piece = only_piece(job_of(opening));
    const Blank& blank = piece.blank();
    const Caution* caution = find(piece, "mitre_kerf_flat");
    ASSERT_NE(caution, nullptr);
    const double radius = blank.kerfs.front().radius.mm();
    const double flat =
        std::max((blank.kerfs.front().at - blank.bend_start).mm(), (blank.bend_end - blank.kerfs.back().at).mm());
    const double off = std::hypot(radius, flat) - radius;
    EXPECT_GT(off, 0.4);
    EXPECT_NEAR(std::get<Length>(caution->values.at(1).second).mm(), off, 0.15) << "to hundredths of an inch";
    opening.legs.reset();
    EXPECT_FALSE(has(only_piece(job_of(opening)), "mitre_kerf_flat")) << "kerfs reach a square end";
}

}  // namespace
}  // namespace kerfpacket::plan
