// Strips on rolls, as drawn: label rolls of 1 in to 4 in, plotter paper of 24 and 36 in.

#include <gtest/gtest.h>

#include <map>
#include <set>

#include "sheets/packet.h"
#include "sheets/strips/strip_roll.h"
#include "sheets/words/wording.h"
#include "strip_pages.h"
#include "support/pieces.h"
#include "support/shapes.h"

namespace kerfpacket::tests {
namespace {

job::Media roll_of(Length width) {
    return {"roll", "Roll " + std::to_string(width.mm()) + " mm", width, 14400_pt, true};
}

struct RollCase {
    std::string name;
    job::Job job;
    Length width;
};

/// A short board, one of some 19 ft and one of 40 ft, whose marks are longer than a page may be.
std::vector<job::Wall> boards() {
    job::Wall small = harbor_stair();
    small.chord = at_line(40_in, 12);
    small.rise = at_line(5_in, 13);
    job::Wall crowded = small;
    crowded.board.spacing.given = 0.25_in;
    job::Wall big = harbor_stair();
    big.chord.reset();
    big.rise.reset();
    big.radius = at_line(460_in, 12);
    big.angle = at_line(measure::Angle::radians(1), 13);
    big.tails = {at_line(6_in, 15), at_line(6_in, 15)};
    return {small, crowded, harbor_stair(), big};
}

std::vector<RollCase> roll_cases() {
    std::vector<RollCase> cases;
    for (const Length width : {1_in, 25_mm, 1.5_in, 2_in, 62_mm, 4_in, 24_in, 36_in})
        for (job::Wall wall : boards())
            for (const job::End zero : {job::End::left, job::End::right})
                for (const job::Tick tick : {job::Tick::centre, job::Tick::left, job::Tick::right})
                    for (const job::StripOn strip : {job::StripOn::face, job::StripOn::edge}) {
                        if (strip == job::StripOn::edge && width < 1.2_in) continue;
                        wall.board.zero = zero;
                        wall.board.tick = tick;
                        wall.board.strip.value = strip;
                        job::Job job = job_of(wall);
                        job.header.title = "A title of some length";
                        job.header.revision = "A";
                        job.saw.kerf.value = 0.094_in;
                        job.printer.strips = roll_of(width);
                        job.printer.adhesive = cases.size() % 5 == 0;
                        const bool metric = cases.size() % 7 < 3;
                        job.header.units = metric ? measure::Unit::millimetre : measure::Unit::inch;
                        cases.push_back(
                            {std::to_string(width.mm()) + " mm, case " + std::to_string(cases.size()), job, width});
                    }
    return cases;
}

struct Sheets {
    std::string name;
    Length width;
    plan::Plan plan;
    std::vector<page::Page> pages;
    const plan::Piece& piece() const { return plan.pieces.front(); }
};

/// Drawn once a test program.
const std::vector<Sheets>& sheets_of_rolls() {
    static const std::vector<Sheets> all = [] {
        std::vector<Sheets> made;
        for (const RollCase& one : roll_cases()) {
            plan::Plan plan = planned(one.job);
            std::vector<page::Page> pages = strip_pages(plan, plan.pieces.front());
            made.push_back({one.name, one.width, std::move(plan), std::move(pages)});
        }
        return made;
    }();
    return all;
}

Rect bounds_of(const page::Page& page) {
    std::optional<Rect> all;
    const auto add = [&](const Rect& r) { all = all ? geom::united(*all, r) : r; };
    for (const page::Item& item : page.items) {
        if (const auto* path = std::get_if<page::PathItem>(&item)) add(path->path.bounds());
        if (const auto* text = std::get_if<page::TextItem>(&item)) add(box_of(*text));
        if (const auto* code = std::get_if<page::CodeItem>(&item)) add(code->area);
    }
    return *all;
}

TEST(RollStrips, MarksStandWhereTheyBelongFromZero) {
    for (const Sheets& sheets : sheets_of_rolls()) {
        SCOPED_TRACE(sheets.name);
        expect_marks_from_zero(sheets.pages, sheets.piece());
    }
}

TEST(RollStrips, TextsKeepApartAndOnTheRoll) {
    for (const Sheets& sheets : sheets_of_rolls()) {
        SCOPED_TRACE(sheets.name);
        for (const page::Page& page : sheets.pages)
            for (const std::string& fault : text_faults(page, sheets.width < 2.2_in ? 4_pt : 18_pt))
                ADD_FAILURE() << fault;
    }
}

TEST(RollStrips, NumeralsAreLargeAndClearAndJointsHideNothing) {
    for (const Sheets& sheets : sheets_of_rolls()) {
        SCOPED_TRACE(sheets.name);
        for (const page::Page& page : sheets.pages) {
            expect_numerals_of_13_pt(page);
            expect_joints_hide_nothing(page);
        }
    }
    // Asked of one tick and one zero of each: slow.
    for (std::size_t i = 0; i < sheets_of_rolls().size(); i += 7) {
        SCOPED_TRACE(sheets_of_rolls()[i].name);
        for (const page::Page& page : sheets_of_rolls()[i].pages) expect_numerals_clear(page);
    }
}

TEST(RollStrips, PagesAreAsWideAsTheRollAndNoLongerThanWhatStandsOnThem) {
    for (const Sheets& sheets : sheets_of_rolls()) {
        SCOPED_TRACE(sheets.name);
        for (const page::Page& page : sheets.pages) {
            EXPECT_EQ(page.height, sheets.width);
            EXPECT_LE(page.width.points(), 14400);
            const Rect all = bounds_of(page);
            EXPECT_GE(all.low.x.points(), 17.99);
            EXPECT_LE(all.low.x.points(), 20);
            EXPECT_LE(all.high.x.points(), page.width.points() - 17.99);
            EXPECT_GE(all.high.x.points(), page.width.points() - 30);
            // Nothing is nearer the edges of the roll than 4 pt.
            EXPECT_GE(all.low.y.points(), 3.99);
            EXPECT_LE(all.high.y.points(), page.height.points() - 3.99);
        }
    }
}

TEST(RollStrips, StripsRunSideBySideAndAreNotShort) {
    for (const Sheets& sheets : sheets_of_rolls()) {
        SCOPED_TRACE(sheets.name);
        std::size_t all = 0;
        for (const page::Page& page : sheets.pages) all += strip_outlines(page).size();
        for (const page::Page& page : sheets.pages) {
            const std::vector<Rect> strips = strip_outlines(page);
            for (std::size_t i = 0; i < strips.size(); ++i) {
                // The last takes what is left, and joints keep to lands.
                const bool last = &page == &sheets.pages.back() && i + 1 == strips.size();
                // One for the cut of an end beyond a long tail has no kerfs, and is short.
                const std::vector<page::TextItem> words = texts(page);
                const bool kerfs = std::any_of(words.begin(), words.end(), [&](const page::TextItem& text) {
                    return text.role == Role::numeral && strips[i].contains(text.anchor);
                });
                EXPECT_GE(strips[i].width().inches(), all > 1 && !last && kerfs ? 23 : 1);
                for (std::size_t j = 0; j < i; ++j) EXPECT_FALSE(overlap(strips[i], strips[j]));
            }
        }
    }
}

TEST(RollStrips, BothEndsSayWhatThePageIs) {
    for (const Sheets& sheets : sheets_of_rolls()) {
        SCOPED_TRACE(sheets.name);
        const std::string number = std::to_string(sheets.pages.size());
        for (std::size_t i = 0; i < sheets.pages.size(); ++i) {
            const page::Page& page = sheets.pages[i];
            const Length middle = page.width / 2;
            for (const std::string& words :
                 {std::string("Job T-1  A title of some length    Rev A"), std::string("fingerprint 0123abcd"),
                  "page " + std::to_string(i + 1) + " of " + number, std::string("Print at 100 % (actual size)"),
                  kerfpacket::sheets::media_text(*sheets.plan.printer.strips, kit()), std::string("Printer profile"),
                  std::string("Mark strip")}) {
                std::set<bool> ends;
                for (const page::TextItem& text : texts(page))
                    if (text.role == Role::furniture && text.text.find(words) != std::string::npos)
                        ends.insert(text.anchor.x < middle);
                EXPECT_EQ(ends.size(), 2U) << words;
            }
        }
    }
}

TEST(RollStrips, CheckBarsStandOnBothAxesAndAreAsLongAsTheySay) {
    for (const Sheets& sheets : sheets_of_rolls()) {
        SCOPED_TRACE(sheets.name);
        for (const page::Page& page : sheets.pages) {
            std::optional<Rect> level;
            std::optional<Rect> upright;
            for (const page::PathItem& line : paths(page, Role::check_bar)) {
                // The bar itself, in two parts where words stand in it; its marks are at most 12 pt long.
                if (line.path.length() < 13_pt) continue;
                const Rect box = line.path.bounds();
                auto& bar = box.width() > box.height() ? level : upright;
                bar = bar ? geom::united(*bar, box) : box;
            }
            ASSERT_TRUE(level);
            ASSERT_TRUE(upright);
            EXPECT_GE(level->width().mm(), 150);
            const auto whole = [](Length length) {
                const double inches = length.inches();
                const double tens = length.mm() / 10;
                return std::abs(inches - std::round(inches)) < 1e-6 || std::abs(tens - std::round(tens)) < 1e-6;
            };
            EXPECT_TRUE(whole(level->width())) << level->width().mm();
            EXPECT_TRUE(whole(upright->height())) << upright->height().mm();
            EXPECT_GE(upright->height().mm(), 20 - 1e-9);
            EXPECT_TRUE(upright->height() >= 150_mm || upright->height() * 2 > page.height - 36_pt);
        }
    }
}

/// The words that were looked for on all pages of a kind.
bool any_says(const Sheets& sheets, const std::string& words) {
    for (const page::Page& page : sheets.pages)
        for (const page::TextItem& text : texts(page))
            if (text.text.find(words) != std::string::npos) return true;
    return false;
}

TEST(RollStrips, AdhesiveStockIsPeeledAndTriedOnAnOffcut) {
    std::size_t adhesive = 0;
    for (const Sheets& sheets : sheets_of_rolls()) {
        SCOPED_TRACE(sheets.name);
        const bool sticks = sheets.plan.printer.adhesive;
        adhesive += sticks ? 1 : 0;
        EXPECT_EQ(any_says(sheets, "Peel and stick on the "), sticks);
        EXPECT_EQ(any_says(sheets, "Low-tack stock only: try an offcut first"), sticks);
        // A tape that measures may be named; none that sticks.
        for (const char* words : {"Tape on", "tape on", "masking", "with tape"}) EXPECT_FALSE(any_says(sheets, words));
    }
    EXPECT_GT(adhesive, 20U);
}

TEST(RollStrips, ABoardOf40FeetTakesThePagesItMust) {
    job::Job job = job_of(boards().back());
    job.printer.strips = roll_of(62_mm);
    const plan::Plan plan = planned(job);
    ASSERT_GT(plan.pieces.front().blank().length.inches(), 479);
    const std::vector<page::Page> pages = strip_pages(plan, plan.pieces.front());
    // 480 in of marks on pages of 200 in, and the cut of each end beyond a long tail on a short page of its own.
    EXPECT_EQ(pages.size(), 5U);
    job.printer.strips = roll_of(24_in);
    EXPECT_EQ(strip_pages(planned(job), planned(job).pieces.front()).size(), 1U);
}

TEST(RollStrips, AWideRollTakesTheLeastPaperOfAllThatStripsOf24InchesAllow) {
    job::Job job = job_of(harbor_stair());
    job.printer.strips = roll_of(24_in);
    const plan::Plan plan = planned(job);
    const std::vector<page::Page> pages = strip_pages(plan, plan.pieces.front());
    ASSERT_EQ(pages.size(), 1U);
    // 233 in of marks in strips of 24 in or more are nine strips of 26 in; more would be shorter than that.
    const std::vector<Rect> strips = strip_outlines(pages.front());
    EXPECT_EQ(strips.size(), 9U);
    for (const Rect& strip : strips) EXPECT_LE(strip.width().inches(), 27);
}

/// Pages of strips of the first of two pieces, three boards alike each, on a roll that wide.
std::vector<page::Page> strips_of_three(Length width, bool one_set, bool coupon = false) {
    job::Job job = job_of(alder_court());
    job.openings.front().quantity = 3;
    job.packet.one_set = one_set;
    if (!coupon) job.packet.leave_out = {"coupon"};
    job.printer.strips = roll_of(width);
    const plan::Plan plan = planned(job);
    std::vector<page::Page> pages = sheets::make_packet(plan, kit()).pages;
    std::erase_if(
        pages, [&](const page::Page& page) { return page.sheet != "strips" || page.piece != plan.pieces.front().id; });
    return pages;
}

std::string all_words(const page::Page& page) {
    std::string all;
    for (const page::TextItem& text : texts(page)) all += text.text + "\n";
    return all;
}

TEST(RollStrips, BoardsAlikeShareAPageOfAWideRollWhereAllOfThemFindRoom) {
    const std::vector<page::Page> one = strips_of_three(24_in, true);
    const std::vector<page::Page> shared = strips_of_three(24_in, false);
    ASSERT_EQ(one.size(), 1U);
    ASSERT_EQ(shared.size(), 1U);
    EXPECT_NE(all_words(shared.front()).find("boards 1 to 3 of 3"), std::string::npos);
    EXPECT_EQ(strip_outlines(shared.front()).size(), strip_outlines(one.front()).size() * 3);
    // Every number stands there once for each board.
    std::map<std::string, int> numbers;
    for (const page::TextItem& text : texts(shared.front()))
        if (text.role == Role::numeral) ++numbers[text.text];
    EXPECT_GT(numbers.size(), 50U);
    for (const auto& [number, times] : numbers) EXPECT_EQ(times, 3) << number;
    for (const std::string& fault : text_faults(shared.front(), 4_pt, 4_pt)) ADD_FAILURE() << fault;
}

TEST(RollStrips, ACouponsStripsStandBeforeThoseOfBoardsWhereAPageHasRoom) {
    const std::vector<page::Page> pages = strips_of_three(24_in, false, true);
    const std::vector<page::Page> without = strips_of_three(24_in, false);
    ASSERT_EQ(pages.size(), 1U);
    EXPECT_GT(strip_outlines(pages.front()).size(), strip_outlines(without.front()).size());
    EXPECT_NEAR((pages.front().width - without.front().width).mm(), 0, 1e-6) << "no paper goes for it";
    std::map<int, int> numbers;
    for (const page::TextItem& text : texts(pages.front()))
        if (text.role == Role::numeral) ++numbers[std::stoi(text.text)];
    EXPECT_EQ(numbers.at(1), 4);
    EXPECT_EQ(numbers.rbegin()->second, 3) << "a coupon has fewer kerfs than a board";
    EXPECT_NE(all_words(pages.front()).find(", coupon\n"), std::string::npos);
    EXPECT_NE(all_words(pages.front()).find("Zero is the end beside kerf 1."), std::string::npos);
    for (const std::string& fault : text_faults(pages.front(), 4_pt, 4_pt)) ADD_FAILURE() << fault;
    for (const page::Page& page : strips_of_three(62_mm, false, true))
        EXPECT_EQ(all_words(page).find(", coupon\n"), std::string::npos);
}

TEST(RollStrips, BoardsAlikeHavePagesOfTheirOwnOnANarrowRoll) {
    const std::vector<page::Page> pages = strips_of_three(62_mm, false);
    ASSERT_EQ(pages.size(), 3 * strips_of_three(62_mm, true).size());
    EXPECT_NE(all_words(pages.front()).find("board 1 of 3"), std::string::npos);
    EXPECT_NE(all_words(pages.back()).find("board 3 of 3"), std::string::npos);
}

/// So that a strip over the edge has room.
void leave_a_web(job::Board& board) {
    board.kerf_depth = {};
    board.kerf_depth.given = board.thickness.value - 0.3125_in;
    board.spacing = {};
    board.spacing.given = 0.375_in;
    board.strip.value = job::StripOn::edge;
}

/// Every head, with its mitres, reverses and uneven springs.
TEST(RollStrips, EveryShapeIsCleanAndRight) {
    std::size_t pieces = 0;
    for (const Length width : {1_in, 62_mm, 24_in})
        for (const job::StripOn strip : {job::StripOn::face, job::StripOn::edge})
            for (const job::End zero : {job::End::left, job::End::right}) {
                job::Job job = every_shape();
                job.printer.strips = roll_of(width);
                for (job::Opening& opening : job.openings) {
                    opening.liner.strip.value = strip;
                    opening.liner.zero = zero;
                    opening.liner.tick = job::Tick::right;
                }
                if (strip == job::StripOn::edge) {
                    if (width < 1.2_in) continue;  // too narrow, and refused
                    for (job::Opening& opening : job.openings) leave_a_web(opening.liner);
                    for (job::Wall& wall : job.walls) leave_a_web(wall.board);
                }
                const plan::Plan plan = planned(job);
                for (const plan::Piece& piece : plan.pieces) {
                    SCOPED_TRACE(std::to_string(width.mm()) + " mm, piece " + piece.id +
                                 (strip == job::StripOn::edge ? ", edge" : ", face"));
                    ++pieces;
                    const std::vector<page::Page> pages = strip_pages(plan, piece);
                    expect_marks_from_zero(pages, piece);
                    for (const page::Page& page : pages) {
                        expect_joints_hide_nothing(page);
                        expect_numerals_clear(page);
                        for (const std::string& fault : text_faults(page, width < 2.2_in ? 4_pt : 18_pt))
                            ADD_FAILURE() << fault;
                    }
                }
            }
    EXPECT_GT(pieces, 180U);
}

TEST(RollStrips, TheWordsLaneSaysWhoseStripItIsEveryFewFeet) {
    for (const Sheets& sheets : sheets_of_rolls()) {
        SCOPED_TRACE(sheets.name);
        Length strips;
        std::size_t said = 0;
        for (const page::Page& page : sheets.pages) {
            for (const Rect& strip : strip_outlines(page)) strips += strip.width();
            for (const page::TextItem& text : texts(page))
                if (text.role == Role::text && text.text.find("fingerprint 0123abcd") != std::string::npos) ++said;
        }
        EXPECT_GE(said, static_cast<std::size_t>(strips.inches() / 60)) << strips.inches();
    }
}

}  // namespace
}  // namespace kerfpacket::tests
