// The cover of jobs with openings of every shape: all drawings on the first page, every board in the table, mitres and
// leg boards listed, an index however long.

#include "sheets/cover/cover.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "sheets/layout/furniture.h"
#include "sheets/words/wording.h"
#include "support/boxes.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

/// The cover alone, with an index of so many lines.
std::vector<page::Page> cover_of(const plan::Plan& plan, std::size_t index_lines = 4) {
    std::vector<IndexEntry> index;
    for (std::size_t i = 0; i < index_lines; ++i) index.push_back({"Sheet " + std::to_string(i + 1), i, i});
    Drafts drafts;
    add_cover(drafts, plan, index, index_lines + 1, kit());
    std::vector<page::Page> pages;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        add_furniture(drafts[i], plan, kit(), i + 1, drafts.size());
        pages.push_back(std::move(drafts[i].page));
    }
    return pages;
}

std::multiset<std::string> words_on(const page::Page& page) {
    std::multiset<std::string> all;
    for (const page::TextItem& text : texts(page)) all.insert(text.text);
    return all;
}

std::multiset<std::string> words_on(const std::vector<page::Page>& pages) {
    std::multiset<std::string> all;
    for (const page::Page& page : pages) all.merge(words_on(page));
    return all;
}

job::Job first_openings(std::size_t count) {
    job::Job job = every_shape();
    job.openings.resize(count);
    job.walls.clear();
    return job;
}

class Covers : public testing::TestWithParam<const char*> {};

TEST_P(Covers, TextsKeepApartAndOnThePage) {
    for (const std::size_t count : {1U, 2U, 4U, 5U, 9U, 16U})
        for (const measure::Unit unit : {measure::Unit::inch, measure::Unit::millimetre}) {
            job::Job job = first_openings(count);
            job.header.units = unit;
            for (const page::Page& page : cover_of(planned(job, GetParam()), count * 5))
                for (const std::string& fault : text_faults(page)) ADD_FAILURE() << count << " openings: " << fault;
        }
}

TEST_P(Covers, FifteenOpeningsAreAllDrawnOnTheFirstPage) {
    const plan::Plan plan = planned(first_openings(15), GetParam());
    std::size_t spans = 0;
    for (const std::string& text : words_on(cover_of(plan).front())) spans += text.starts_with("span ") ? 1U : 0U;
    EXPECT_EQ(spans, 15U);
}

INSTANTIATE_TEST_SUITE_P(Media, Covers, testing::Values("na_letter_8.5x11in", "iso_a4_210x297mm"),
                         [](const auto& media) { return std::string(media.param).substr(0, 2); });

TEST(Cover, TheBoardsOfOneOpeningShareADrawingAndHaveEachARow) {
    const plan::Plan plan = planned(job_of(pointed("E", 60_in, 60_in)));
    ASSERT_EQ(plan.pieces.size(), 2U);
    const std::multiset<std::string> all = words_on(cover_of(plan));
    EXPECT_EQ(all.count("E   Arched opening, pointed, equilateral"), 1U);
    EXPECT_EQ(all.count("span 60 in"), 1U);
    EXPECT_GE(all.count("E/1"), 1U);
    EXPECT_GE(all.count("E/2"), 1U);
    EXPECT_EQ(all.count("Arched opening"), 1U);
    // Each side turns through 60 degrees.
    EXPECT_EQ(all.count("R 60 in, 120.0 degrees, measured to the wall"), 1U);
}

TEST(Cover, PointedHeadsAreNamedByTheirRadius) {
    const auto name = [](measure::Length span, measure::Length radius) {
        return shape_name(planned(job_of(pointed("E", span, radius))).pieces.front(), kit());
    };
    EXPECT_EQ(name(60_in, 60_in), "pointed, equilateral");
    EXPECT_EQ(name(60_in, 48_in), "pointed, drop");
    EXPECT_EQ(name(40_in, 67.5_in), "pointed, lancet");
}

TEST(Cover, MitresAndLegBoardsAreListed) {
    const std::multiset<std::string> peak = words_on(cover_of(planned(job_of(pointed("E", 60_in, 60_in)))));
    EXPECT_EQ(peak.count("Miters"), 1U);
    EXPECT_EQ(peak.count("E/1: 30.0 degrees where it meets E/2"), 1U);
    EXPECT_EQ(peak.count("E/2: 30.0 degrees where it meets E/1"), 1U);
    EXPECT_EQ(peak.count("Leg boards"), 0U);
    job::Opening through = shaped("M", job::Shape::segmental, 60_in, 12_in);
    through.legs = {{at_line(72_in, 25), at_line(72_in, 25)}};
    through.through_legs = true;
    const std::multiset<std::string> legs = words_on(cover_of(planned(job_of(through))));
    EXPECT_EQ(legs.count("Leg boards"), 1U);
    // The arc leaves the spring at 2 atan(2 x 12/60) = 43.60 degrees, 46.40 off the upright: half of that is the mitre.
    EXPECT_EQ(legs.count("M: 23.2 degrees where it meets the left leg; 23.2 degrees where it meets the right leg"), 1U);
    EXPECT_EQ(std::count_if(legs.begin(), legs.end(),
                            [](const std::string& t) { return t.starts_with("M, left leg: 72 in"); }),
              1);
    EXPECT_TRUE(words_on(cover_of(planned(job_of(semicircle(40_in))))).count("Miters") == 0);
}

TEST(Cover, ASpacingThatVariesIsARange) {
    const auto all = words_on(cover_of(planned(job_of(shaped("C", job::Shape::elliptical, 60_in, 20_in)))));
    EXPECT_EQ(all.count("1/4 to 1/2"), 1U);
    // Least radius of an ellipse: b^2/a = 400/30 = 13.33, at the springs.
    EXPECT_EQ(all.count("least R 13-5/16 in, 180.0 degrees, measured to the wall"), 1U);
}

/// A caution away from its heading is read as part of what stands there.
TEST(Cover, CautionsStayUnderTheirHeading) {
    plan::Plan plan = planned(first_openings(1));
    plan::Piece& piece = plan.pieces.front();
    piece.cautions.clear();
    for (std::size_t count = 1; count <= 14; ++count) {
        piece.cautions.push_back({"web_thin", {{"web", Length::mm(2)}}});
        std::size_t leads = 0, beside_heading = 0;
        for (const page::Page& page : cover_of(plan, 12)) {
            std::size_t here = 0;
            bool heading = false;
            for (const page::TextItem& text : texts(page)) {
                here += text.role == page::Role::caution && text.text == piece.id ? 1U : 0U;
                heading = heading || text.text == kit().words("cover.cautions");
            }
            leads += here;
            if (heading) beside_heading = here;
        }
        EXPECT_EQ(leads, count);
        EXPECT_EQ(beside_heading, count);
    }
}

TEST(Cover, CautionsOfMoreThanAPageHaveTheirHeadingOnEach) {
    plan::Plan plan = planned(first_openings(1));
    plan::Piece& piece = plan.pieces.front();
    piece.cautions.assign(150, {"web_thin", {{"web", Length::mm(2)}}});
    std::size_t leads = 0, pages_of_them = 0;
    for (const page::Page& page : cover_of(plan, 12)) {
        for (const std::string& fault : text_faults(page)) ADD_FAILURE() << fault;
        std::size_t here = 0, headings = 0;
        for (const page::TextItem& text : texts(page)) {
            here += text.role == page::Role::caution && text.text == piece.id ? 1U : 0U;
            headings += text.text == kit().words("cover.cautions") ? 1U : 0U;
        }
        leads += here;
        pages_of_them += here > 0 ? 1U : 0U;
        EXPECT_EQ(headings, here > 0 ? 1U : 0U);
    }
    EXPECT_EQ(leads, 150U);
    EXPECT_GT(pages_of_them, 2U);
}

TEST(Cover, ALongIndexGoesOnAndHasEveryLine) {
    const plan::Plan plan = planned(first_openings(2));
    for (const std::size_t lines : {40U, 47U, 150U, 400U}) {
        const std::vector<page::Page> pages = cover_of(plan, lines);
        std::size_t links = 0;
        for (const page::Page& page : pages) {
            for (const std::string& fault : text_faults(page)) ADD_FAILURE() << lines << " lines: " << fault;
            for (const page::Item& item : page.items) links += std::holds_alternative<page::LinkItem>(item) ? 1U : 0U;
        }
        EXPECT_EQ(links, lines);
        EXPECT_EQ(words_on(pages).count("Totals"), 1U);
    }
}

/// Two strings of stairs: what is told of each is longer than half the page.
job::Job two_stairs(measure::Unit unit) {
    job::Job job = job_of(harbor_stair());
    job.header.units = unit;
    job.walls.resize(1);
    job::Wall& wall = job.walls.front();
    wall.chord.reset();
    wall.rise.reset();
    wall.radius = at_line(71.1875_in, 12);
    wall.angle = at_line(measure::Angle::degrees(131), 13);
    wall.board.width.value = 9.25_in;
    wall.board.trim.value = measure::Length();
    wall.rake = job::Rake{
        std::array{at_line(7.3125_in, 15), at_line(10.625_in, 15)}, at_line(job::End::right, 16), {}, {15, 1}};
    job.walls.push_back(wall);
    job.walls.back().id.value = "I";
    return job;
}

TEST(Cover, WhatIsToldOfADrawingKeepsToItsColumn) {
    for (const char* language : {"en", "es"})
        for (const char* media : {"na_letter_8.5x11in", "iso_a4_210x297mm"})
            for (const measure::Unit unit : {measure::Unit::inch, measure::Unit::millimetre}) {
                const plan::Plan plan = planned(two_stairs(unit), media);
                ASSERT_EQ(plan.pieces.size(), 2U);
                Drafts drafts;
                add_cover(drafts, plan, {{"Sheet 1", 0, 0}}, 2, kit(language));
                add_furniture(drafts[0], plan, kit(language), 1, drafts.size());
                for (const std::string& fault : text_faults(drafts[0].page))
                    ADD_FAILURE() << language << " " << media << ": " << fault;
            }
}

// A splayed jamb that is wide at the room lies turned round at the saw: its left end is at the right there.
TEST(Cover, ASideOfTheRoomIsNotTakenForASideOfTheSaw) {
    job::Opening opening = semicircle(36_in);
    opening.measured_to = job::Surface::finish;
    opening.legs = {{at_line(60_in, 53), at_line(60_in, 53)}};
    opening.liner.width.value = 8_in;
    opening.splay = job::Splay{at_line(measure::Angle::degrees(20), 41), job::Edge::narrow, job::Toward::room, {40, 1}};
    job::Job job = job_of(opening);
    job.taken.push_back({job::Value{"opening.liner", opening.id.value, "zero", {}}, false});
    std::string all;
    for (const page::Page& page : cover_of(planned(job)))
        for (const page::TextItem& text : texts(page)) all += text.text + " ";
    EXPECT_NE(all.find("zero at the right"), std::string::npos) << all;
    EXPECT_NE(all.find("zero at the left end, seen from the room"), std::string::npos) << all;
}

}  // namespace
}  // namespace kerfpacket::sheets
