// Moulded wall boards: how deep they are cut, which edge is which, what is refused and what would do.

#include <gtest/gtest.h>

#include "../../support/jobs.h"
#include "../../support/planned.h"
#include "bend/limit.h"
#include "plan/plan.h"

namespace kerfpacket::plan {
namespace {

using namespace tests;

using Points = std::vector<std::pair<double, double>>;

/// A base 7-1/4 wide, 3/4 thick, on the wall of that radius.
job::Job base(const Points& profile, double radius = 96) {
    job::Wall wall = tannery_row();
    wall.radius->value = Length::inches(radius);
    wall.board = solved(wall.board);
    wall.board.profile.clear();
    int line = 40;
    for (const auto& [height, thickness] : profile) {
        wall.board.profile.emplace_back(at_line(Length::inches(height), line),
                                        at_line(Length::inches(thickness), line));
        ++line;
    }
    return job_of(wall);
}

const Points ogee{{0, .75}, {5, .75}, {5, .6875}, {6.5, .46875}, {6.5, .375}, {7.25, .375}};

TEST(MouldedBoard, depth_leaves_a_web_where_it_is_thinnest) {
    const Piece piece = only_piece(base(ogee));
    EXPECT_EQ(piece.bend.verdict, bend::Verdict::ok);
    EXPECT_GE(piece.cut.thinnest_web(), bend::thin_web - 0.001_mm);
    EXPECT_LE(piece.cut.depth, 0.28125_in + 0.001_mm);
    EXPECT_NEAR(std::max(piece.moulded_use[0], piece.moulded_use[1]), piece.bend.utilisation, 1e-9);
}

TEST(MouldedBoard, half_is_half_of_the_thinnest) {
    job::Job job = base(ogee);
    job.walls[0].board.kerf_depth.half = true;
    EXPECT_EQ(only_piece(job).cut.depth, 0.1875_in);
}

TEST(MouldedBoard, is_stiffer_to_bend_than_it_looks_where_it_is_thin) {
    job::Job flat = base({}, 60);
    flat.walls[0].board.kerf_depth.given = 0.25_in;
    flat.walls[0].board.spacing.given = 0.5_in;
    job::Job moulded = base(ogee, 60);
    moulded.walls[0].board.kerf_depth.given = 0.25_in;
    moulded.walls[0].board.spacing.given = 0.5_in;
    // The thin edge takes wood from the web: the outermost wood lies further from the line it bends about.
    EXPECT_GT(only_piece(moulded).bend.strain, only_piece(flat).bend.strain);
    EXPECT_NE(only_piece(moulded).blank().length, only_piece(flat).blank().length);
}

TEST(MouldedBoard, edge_is_named) {
    const auto edge = [](const Points& profile) { return moulded_edge(only_piece(base(profile)).cut); };
    EXPECT_EQ(edge({}), MouldedEdge::none);
    EXPECT_EQ(edge(ogee), MouldedEdge::top);
    EXPECT_EQ(edge({{0, .5}, {1, .75}, {7.25, .75}}), MouldedEdge::bottom);
    EXPECT_EQ(edge({{0, .5}, {1, .75}, {6, .75}, {7.25, .5}}), MouldedEdge::both);
    EXPECT_EQ(edge({{0, .75}, {3, .75}, {3.5, .5}, {4, .75}, {7.25, .75}}), MouldedEdge::untold);
}

TEST(MouldedBoard, least_thickness_alone_is_a_caution) {
    job::Job job = base({});
    job.walls[0].board.least_thickness = at_line(0.4375_in, 44);
    const Piece piece = only_piece(job);
    EXPECT_TRUE(has(piece, "profile_untold"));
    EXPECT_EQ(moulded_edge(piece.cut), MouldedEdge::untold);
    const Piece half = only_piece(base({{0, .75}, {3.625, .75}, {3.625, .4375}, {7.25, .4375}}));
    EXPECT_EQ(piece.cut.depth, half.cut.depth);
    EXPECT_NEAR(piece.bend.utilisation, half.bend.utilisation, 1e-9);
    EXPECT_FALSE(has(half, "profile_untold"));
}

TEST(MouldedBoard, one_that_is_too_thin_is_refused_with_the_depth_that_would_do) {
    const Points thin{{0, .75}, {6, .75}, {7.25, .25}};
    job::Job job = base(thin, 240);
    const job::Diagnostic why = refusal(job);
    EXPECT_EQ(why.at.line, 42) << "the line of the thinnest place";
    EXPECT_NE(why.message.find("1/4 in thick at its thinnest"), std::string::npos) << why.message;
    EXPECT_NE(why.hint.find("kerf_depth = \"3/16 in\""), std::string::npos) << why.hint;
    // What it offers is true.
    job.walls[0].board.kerf_depth.given = 0.1875_in;
    EXPECT_NE(only_piece(job).bend.verdict, bend::Verdict::break_likely);
}

}  // namespace
}  // namespace kerfpacket::plan
