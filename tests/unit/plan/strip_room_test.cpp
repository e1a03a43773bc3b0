// What is refused because no strip could be read: told at its place, with what would do.

#include "plan/strip_room.h"

#include <gtest/gtest.h>

#include "plan/plan.h"
#include "support/jobs.h"

namespace kerfpacket::plan {
namespace {

using namespace tests;

job::Diagnostic refused(const job::Job& job) {
    const auto plan = make_plan(job);
    if (plan) throw std::runtime_error("the job was planned");
    return plan.error().front();
}

job::Job edge_job(Length thickness, Length depth) {
    job::Wall wall = harbor_stair();
    wall.board.thickness.value = thickness;
    wall.board.kerf_depth.half = false;
    wall.board.kerf_depth.given = depth;
    wall.board.strip = at_line(job::StripOn::edge, 37);
    return job_of(wall);
}

TEST(StripRoom, AnEdgeStripWantsAWebOf5Sixteenths) {
    EXPECT_TRUE(make_plan(edge_job(0.75_in, 0.4375_in)));  // leaves 5/16 in
    const job::Diagnostic wrong = refused(edge_job(0.75_in, 0.5_in));
    EXPECT_EQ(wrong.severity, job::Severity::error);
    EXPECT_EQ(wrong.at.line, 37);
    EXPECT_EQ(wrong.message,
              "a strip over the edge has no room for its numbers: kerfs 1/2 in deep leave a web of 1/4 in");
    EXPECT_EQ(wrong.hint, "the web must be at least 5/16 in; strip = \"face\" goes on any board");
    job::Job face = edge_job(0.75_in, 0.5_in);
    face.walls[0].board.strip.value = job::StripOn::face;
    EXPECT_TRUE(make_plan(face));
}

TEST(StripRoom, ADepthLeftToTheProgramIsJudgedToo) {
    job::Job job = edge_job(0.75_in, 0.375_in);
    job.walls[0] = tannery_row();  // too tight for half depth: "solve" goes deeper
    job.walls[0].board = solved(job.walls[0].board);
    job.walls[0].radius = at_line(20_in, 12);
    job.walls[0].board.strip = at_line(job::StripOn::edge, 37);
    const auto plan = make_plan(job);
    ASSERT_FALSE(plan);
    EXPECT_EQ(plan.error().front().at.line, 37);
    EXPECT_TRUE(plan.error().front().message.starts_with("a strip over the edge has no room"))
        << plan.error()[0].message;
}

job::Job on_roll(job::Job job, Length width) {
    job.printer.strips = job::Media{"roll", "roll", width, Length::points(14400), true};
    return job;
}

TEST(StripRoom, ARollTooNarrowIsRefused) {
    EXPECT_TRUE(make_plan(on_roll(job_of(harbor_stair()), 25_mm)));
    const job::Diagnostic face = refused(on_roll(job_of(harbor_stair()), 24_mm));
    EXPECT_EQ(face.at.line, 32) << "the board's thickness, where strip is not given";
    EXPECT_TRUE(face.message.ends_with("is too narrow for the face strips of piece B, which are 0.868 in high"))
        << face.message;
    EXPECT_EQ(face.hint, "the roll must be at least 0.979 in wide");
    // 3/4 in and the flap of 19 pt are 73 pt: with 4 pt on either side more than an inch.
    const job::Diagnostic edge = refused(on_roll(edge_job(0.75_in, 0.375_in), 1_in));
    EXPECT_EQ(edge.at.line, 37);
    EXPECT_EQ(edge.message, "a roll 1 in wide is too narrow for the edge strips of piece B, which are 1.014 in high");
    EXPECT_EQ(edge.hint, "the roll must be at least 1-1/8 in wide; strip = \"face\" fits on this one");
    EXPECT_TRUE(make_plan(on_roll(edge_job(0.75_in, 0.375_in), 1.25_in)));
    EXPECT_TRUE(make_plan(on_roll(edge_job(0.5_in, 0.1875_in), 1_in)));
}

TEST(StripRoom, MarksCloserThanA16thAreRefused) {
    job::Wall wall = harbor_stair();
    wall.chord = at_line(20_in, 12);
    wall.rise = at_line(2_in, 13);
    wall.board.spacing.given = 0.0625_in;
    job::Job job = job_of(wall);
    job.saw.kerf.value = 0.03_in;
    EXPECT_TRUE(make_plan(job));
    job.walls[0].board.spacing.given = 0.06_in;
    const job::Diagnostic wrong = refused(job);
    EXPECT_EQ(wrong.at.line, 36);
    EXPECT_EQ(wrong.message, "kerfs 1 and 2 are 0.060 in apart: marks so close cannot be told apart on a strip");
    EXPECT_EQ(wrong.hint, "kerfs stand at least 1/16 in apart");
}

TEST(StripRoom, OfKerfsByHandTheOneTooCloseIsNamed) {
    job::Wall wall = harbor_stair();
    wall.chord = at_line(20_in, 12);
    wall.rise = at_line(2_in, 13);
    wall.board.spacing = {};
    for (int i = 0; i < 60; ++i) wall.board.kerfs.push_back(at_line(3.7_in + 0.4_in * i, 50 + i));
    job::Job job = job_of(wall);
    job.saw.kerf.value = 0.03_in;
    ASSERT_TRUE(make_plan(job));
    job.walls[0].board.kerfs[12].value = job.walls[0].board.kerfs[11].value + 0.05_in;
    const job::Diagnostic wrong = refused(job);
    EXPECT_EQ(wrong.at.line, 62);
    EXPECT_TRUE(wrong.message.starts_with("kerfs 12 and 13 are ")) << wrong.message;
}

}  // namespace
}  // namespace kerfpacket::plan
