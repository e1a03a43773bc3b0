// How many sheets the strips of a board take, before sheets were turned and now; and that no mark is printed small.

#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "sheets/strips/strip_layout.h"
#include "strip_pages.h"
#include "support/pieces.h"

namespace kerfpacket::tests {
namespace {

/// Pages with all sheets lying: strips of whole inches beside the check bar and before the lap, 54 pt each, one every
/// 87 pt between the header's 103 pt and the 66 pt below.
std::size_t lying_pages(const plan::Piece& piece, const plan::Plan& plan) {
    const Length width = plan.printer.media.height;
    const Length height = plan.printer.media.width;
    const double longest = std::floor((width.points() - 54 - 54 - 36) / 72 + 1e-9);
    const std::size_t strips =
        sheets::cut_strips(piece, Length::inches(longest), sheets::Tape(plan.header.units), kit()).size();
    const std::size_t rows = 1 + static_cast<std::size_t>(std::floor((height.points() - 103 - 66 - 72) / 87));
    return (strips + rows - 1) / rows;
}

TEST(StripPacking, IsNeverWorseThanLyingSheets) {
    std::size_t better = 0;
    std::size_t turn = 0;
    for (const Case& one : spread_of_cases()) {
        if (++turn % 3 != 0) continue;
        for (const char* media : {"iso_a4_210x297mm", "iso_a3_297x420mm", "na_ledger_11x17in"}) {
            SCOPED_TRACE(one.name + " on " + media);
            const plan::Plan plan = planned(one.job, media);
            const std::size_t now = strip_pages(plan, plan.pieces[0]).size();
            const std::size_t before = lying_pages(plan.pieces[0], plan);
            EXPECT_LE(now, before);
            better += now < before ? 1 : 0;
        }
    }
    EXPECT_GT(better, 10U);
}

/// The invented jobs of the project. Of the house with many openings two: a head and a run along a curved wall.
job::Job shared_job(const std::string& name) {
    if (name == "Alder Court") return job_of(alder_court());
    if (name == "Quarry Road") return job_of(quarry_road());
    if (name == "Harbor Stair") return job_of(harbor_stair());
    if (name == "Fern Street") return job_of(fern_street());
    job::Job house = job_of(semicircle(36_in));
    house.openings[0].liner = solved(house.openings[0].liner);
    house.walls.push_back(tannery_row());
    return house;
}

struct Count {
    std::size_t before = 0;
    std::size_t now = 0;
    bool operator==(const Count&) const = default;
};
std::ostream& operator<<(std::ostream& out, const Count& count) {
    return out << "{" << count.before << ", " << count.now << "}";
}

Count pages_of(const std::string& name, const char* media) {
    const plan::Plan plan = planned(shared_job(name), media);
    Count count;
    for (const plan::Piece& piece : plan.pieces) {
        count.before += lying_pages(piece, plan);
        count.now += strip_pages(plan, piece).size();
    }
    return count;
}

TEST(StripPacking, PagesOfTheInventedJobs) {
    const std::map<std::string, std::vector<Count>> expected = {
        {"Alder Court", {{4, 2}, {4, 4}, {2, 2}, {2, 2}}},
        {"Quarry Road", {{3, 3}, {3, 3}, {2, 2}, {2, 1}}},
        {"Harbor Stair", {{6, 5}, {6, 5}, {4, 4}, {3, 2}}},
        {"Tannery Row", {{5, 4}, {5, 5}, {4, 3}, {3, 2}}},
        // Long tails: the cuts of its ends have short strips of their own.
        {"Fern Street", {{4, 3}, {4, 4}, {3, 3}, {2, 2}}},
    };
    const std::vector<const char*> media = {"na_letter_8.5x11in", "iso_a4_210x297mm", "na_legal_8.5x14in",
                                            "iso_a3_297x420mm"};
    for (const auto& [name, counts] : expected)
        for (std::size_t i = 0; i < media.size(); ++i)
            EXPECT_EQ(pages_of(name, media[i]), counts.at(i)) << name << " on " << media[i];
}

/// Strips are drawn lower only where that saves a sheet, and never where a shop asks for higher ones.
TEST(StripPacking, AStripIsLowOnlyWhereThatSavesASheet) {
    const auto height_of = [](const std::string& name, const char* media) {
        const plan::Plan plan = planned(shared_job(name), media);
        return strip_outlines(strip_pages(plan, plan.pieces[0]).front()).front().height();
    };
    EXPECT_NEAR(height_of("Alder Court", "na_letter_8.5x11in").points(), 62.5, 0.01);
    EXPECT_NEAR(height_of("Alder Court", "iso_a4_210x297mm").points(), 72, 0.01);
    EXPECT_NEAR(height_of("Quarry Road", "na_letter_8.5x11in").points(), 72, 0.01);
    const plan::Plan plan = planned(shared_job("Alder Court"), "na_letter_8.5x11in");
    fonts::Style high = kit().style;
    high.strip_height = 73_pt;
    sheets::Drafts drafts;
    sheets::add_strips(drafts, plan, plan.pieces[0], {kit().faces, kit().words, high});
    EXPECT_EQ(drafts.size(), 2U);
    EXPECT_NEAR(strip_outlines(drafts.front().page).front().height().points(), 73, 0.01);
}

/// 70 in of a bend whose marks are as close as any may be.
TEST(StripPacking, TheClosestMarksHaveNumeralsOf13Points) {
    job::Wall wall = harbor_stair();
    wall.chord = at_line(70_in, 12);
    wall.rise = at_line(5_in, 13);
    wall.board.spacing.given = 0.0625_in;
    for (const job::StripOn strip : {job::StripOn::face, job::StripOn::edge})
        for (const bool roll : {false, true}) {
            wall.board.strip.value = strip;
            job::Job job = job_of(wall);
            job.saw.kerf.value = 0.03_in;
            if (roll) job.printer.strips = job::Media{"roll", "Roll", 62_mm, 14400_pt, true};
            const plan::Plan plan = planned(job);
            ASSERT_GT(plan.pieces[0].blank().kerfs.size(), 1000U);
            const std::vector<page::Page> pages = strip_pages(plan, plan.pieces[0]);
            expect_marks_from_zero(pages, plan.pieces[0]);
            std::size_t numerals = 0;
            for (const page::Page& page : pages) {
                expect_numerals_of_13_pt(page);
                expect_numerals_clear(page);
                for (const std::string& fault : text_faults(page)) ADD_FAILURE() << fault;
                for (const page::TextItem& text : texts(page)) numerals += text.role == Role::numeral ? 1 : 0;
            }
            EXPECT_GE(numerals, plan.pieces[0].blank().kerfs.size() / 10);
        }
}

TEST(StripPacking, AllPapersBothZerosAllTicksAreCleanAndRight) {
    for (const char* media : {"na_letter_8.5x11in", "iso_a4_210x297mm", "na_legal_8.5x14in", "iso_a3_297x420mm"})
        for (const job::End zero : {job::End::left, job::End::right})
            for (const job::Tick tick : {job::Tick::centre, job::Tick::left, job::Tick::right})
                for (const bool adhesive : {false, true}) {
                    job::Wall wall = harbor_stair();
                    wall.board.zero = zero;
                    wall.board.tick = tick;
                    job::Job job = job_of(wall);
                    job.printer.adhesive = adhesive;
                    const plan::Plan plan = planned(job, media);
                    SCOPED_TRACE(std::string(media) + ", case " + std::to_string(static_cast<int>(tick)) +
                                 (zero == job::End::left ? ", left" : ", right") + (adhesive ? ", adhesive" : ""));
                    const std::vector<page::Page> pages = strip_pages(plan, plan.pieces[0]);
                    expect_marks_from_zero(pages, plan.pieces[0]);
                    for (const page::Page& page : pages) {
                        expect_joints_hide_nothing(page);
                        for (const std::string& fault : text_faults(page)) ADD_FAILURE() << fault;
                    }
                }
}

/// From bottom to top: foot, hairline, shaft, numerals, distances, words.
void expect_lanes_in_order(const page::Page& page) {
    for (const Rect& strip : strip_outlines(page)) {
        Length numerals_from = 1e9_mm, numerals_to, running_from = 1e9_mm, running_to, words_from = 1e9_mm, ticks_to;
        const auto inside = [&](Point p) { return strip.contains(p); };
        for (const page::PathItem& tick : paths(page, Role::tick))
            if (inside(tick.path.start())) ticks_to = std::max(ticks_to, tick.path.bounds().high.y);
        for (const page::TextItem& text : texts(page)) {
            if (!inside(text.anchor)) continue;
            const Rect box = box_of(text);
            if (text.role == Role::numeral) {
                numerals_from = std::min(numerals_from, box.low.y);
                numerals_to = std::max(numerals_to, box.high.y);
            }
            if (text.role == Role::running) {
                running_from = std::min(running_from, box.low.y);
                running_to = std::max(running_to, box.high.y);
            }
            if (text.role == Role::tape_mark || text.role == Role::centre) words_from = std::min(words_from, box.low.y);
        }
        EXPECT_GT(numerals_from, ticks_to);
        if (running_to > 0_mm) { EXPECT_GT(running_from, numerals_to); }
        EXPECT_GT(words_from, std::max(numerals_to, running_to));
    }
}

TEST(StripLanes, StandInOrderHoweverLowTheStripIs) {
    for (const Length roll : {25_mm, 1_in, 1.05_in, 1.1_in, 1.5_in, 62_mm})
        for (const Length spacing : {0.1875_in, 0.25_in, 0.3_in, 0.5_in, 1_in}) {
            SCOPED_TRACE(std::to_string(roll.mm()) + " mm, kerfs every " + std::to_string(spacing.inches()) + " in");
            job::Wall wall = harbor_stair();
            wall.board.spacing.given = spacing;
            job::Job job = job_of(wall);
            job.saw.kerf.value = 0.094_in;
            job.printer.strips = job::Media{"roll", "Roll", roll, 14400_pt, true};
            const plan::Plan plan = planned(job);
            for (const page::Page& page : strip_pages(plan, plan.pieces[0])) {
                expect_lanes_in_order(page);
                for (const std::string& fault : text_faults(page, 4_pt)) ADD_FAILURE() << fault;
            }
        }
}

TEST(StripLanes, NumbersTooManyForEveryFifthComeDownToEveryTenth) {
    using sheets::Numbering;
    // Four figures at 1/16 in: every fifth is 22.5 pt from the next, every tenth 45 pt.
    EXPECT_EQ(sheets::numbering_for({40_pt, 30_pt, 33_pt}, 4.5_pt, 2_pt), Numbering::every_tenth);
    EXPECT_EQ(sheets::numbering_for({40_pt, 30_pt, 33_pt}, 9_pt, 8_pt), Numbering::every_fifth);
}

}  // namespace
}  // namespace kerfpacket::tests
