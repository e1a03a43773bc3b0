// Sheets of boards that climb: what goes away is hatched up to its cut and no further, no words stand on the cut, and
// what is told of the kerfs along an edge is true beside a joint too. Where a cut stands is worked here from the blank
// alone: at its foot, and so much further for every length across the board.

#include <algorithm>
#include <array>
#include <cmath>

#include <gtest/gtest.h>

#include "job/read.h"
#include "sheets/climb/climb_sheet.h"
#include "sheets/layout/furniture.h"
#include "sheets/packet.h"
#include "sheets/strips/strip_ends.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/wording.h"
#include "strip_pages.h"
#include "support/boxes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

struct Climbing {
    std::string ends = "[\"level\", \"plumb\"]";
    std::string climbs = "right";
    std::string zero = "left";
};

plan::Plan planned_of(const std::string& wall) {
    const job::Source source{"job.toml",
                             "[job]\nnumber = \"7\"\ntitle = \"t\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = "
                             "\"in\"\n[saw]\nblade_diameter = 12\nkerf = 0.118\nmitre_limit = 60\n[[wall]]\nid = "
                             "\"E\"\n" +
                                 wall};
    job::Reading reading = job::read_job(source);
    EXPECT_TRUE(reading.diagnostics.empty()) << job::render(reading.diagnostics, source);
    return planned(reading.job);
}

/// A stair string inside a round of 45-3/8 in, 33-1/2 degrees steep.
plan::Plan stair(const Climbing& one) {
    return planned_of("radius = \"45 3/8 in\"\nangle = 92.5\nside = \"concave\"\nrake = 33.5\nclimbs = \"" +
                      one.climbs + "\"\nends = " + one.ends +
                      "\n[wall.board]\nmaterial = \"mdf\"\nthickness = \"1/2 in\"\nwidth = \"3 1/2 in\"\nzero = \"" +
                      one.zero + "\"\n");
}

/// One outside a round, longer than a board of ten feet.
plan::Plan long_stair() {
    return planned_of(
        "radius = \"71 3/16 in\"\nangle = 131\nside = \"convex\"\ntails = [\"11 in\", \"5 1/2 in\"]\nrake = [\"7 5/16 "
        "in\", \"10 5/8 in\"]\nclimbs = \"right\"\n[wall.board]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = "
        "\"9 1/4 in\"\ntrim = \"2 in\"\n[stock]\nlengths = [\"10 ft\"]\n");
}

template <class Ask>
void on_all_strips(Ask ask) {
    for (const char* language : {"en", "es"})
        for (const char* climbs : {"left", "right"})
            for (const char* zero : {"left", "right"})
                for (const char* ends : {"[\"level\", \"square\"]", "[\"square\", \"level\"]", "[\"plumb\", \"level\"]",
                                         "[\"plumb\", \"square\"]"}) {
                    SCOPED_TRACE(std::string(language) + " " + climbs + " zero " + zero + " " + ends);
                    on_each_strip(stair({ends, climbs, zero}), language, ask);
                }
}

/// How far a place is beyond the cut of an end, toward that end.
Length beyond(const plan::Piece& piece, std::size_t end, const StripFrame& frame, Point p) {
    const plan::Blank& blank = piece.blank();
    const Length cut = blank.cut_at(end) + (p.y - frame.base()) * (blank.ends.at(end).lean / piece.width);
    return (frame.from_zero(p.x) - cut) * (end == 0 ? -1.0 : 1.0);
}

TEST(ClimbingStrip, HatchIsOnlyWhereWoodGoesAwayAndReachesItsCut) {
    std::array<std::size_t, 2> reached{};
    on_all_strips([&](const plan::Piece& piece, const Strip& strip, const Lanes& lanes, const StripFrame& frame,
                      const page::Page& page) {
        std::array<Length, 2> nearest{100_in, 100_in};
        for (const page::PathItem& line : paths(page, page::Role::hatch)) {
            const Point a = line.path.start(), b = line.path.end();
            bool gone = false;
            for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
                const Length least = std::min(beyond(piece, end, frame, a), beyond(piece, end, frame, b));
                gone = gone || least > -0.05_mm;
                if (least > -0.05_mm) nearest.at(end) = std::min(nearest.at(end), least);
            }
            EXPECT_TRUE(gone) << "hatched where wood stays, strip " << strip.number;
        }
        // Half way up the strip the cut is on it: some line of the hatch ends there.
        for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
            const plan::Blank& blank = piece.blank();
            const Length at = blank.cut_at(end) + lanes.height * (blank.ends.at(end).lean / piece.width) / 2;
            if (at < strip.from + 1.5_in || at > strip.to - 1.5_in) continue;
            ++reached.at(end);
            EXPECT_LT(nearest.at(end).mm(), 0.1) << "strip " << strip.number << ", end " << end;
        }
    });
    EXPECT_GT(reached[0], 10U);
    EXPECT_GT(reached[1], 10U);
}

TEST(ClimbingStrip, NoCutRunsThroughWordsOrNumerals) {
    std::size_t cuts = 0;
    on_all_strips([&](const plan::Piece& piece, const Strip& strip, const Lanes&, const StripFrame& frame,
                      const page::Page& page) {
        for (const page::PathItem& line : paths(page, page::Role::limit)) {
            if (line.filled) continue;
            const auto is_cut = [&](std::size_t end) {
                return measure::abs(beyond(piece, end, frame, line.path.start())) < 0.05_mm &&
                       measure::abs(beyond(piece, end, frame, line.path.end())) < 0.05_mm;
            };
            if (!is_cut(0) && !is_cut(1)) continue;
            ++cuts;
            for (const page::TextItem& text : texts(page))
                EXPECT_TRUE(geom::clip(line.path, box_of(text)).empty())
                    << "strip " << strip.number << ": " << placed(text);
        }
    });
    EXPECT_GT(cuts, 40U);
}

TEST(ClimbingStrip, SaysWhereTheBendStartsAndEnds) {
    std::array<std::size_t, 2> told{};
    std::size_t boards = 0;
    for (const char* language : {"en", "es"})
        on_each_strip(
            stair({"[\"square\", \"level\"]", "right", "left"}), language,
            [&](const plan::Piece&, const Strip& strip, const Lanes&, const StripFrame&, const page::Page& page) {
                boards += strip.number == 1 ? 1U : 0U;
                for (const page::TextItem& text : texts(page)) {
                    told[0] += text.text.starts_with("BEND STARTS") || text.text.starts_with("EMPIEZA CURVA") ? 1U : 0U;
                    told[1] += text.text.starts_with("BEND ENDS") || text.text.starts_with("ACABA CURVA") ? 1U : 0U;
                }
            });
    EXPECT_EQ(told[0], boards);
    EXPECT_EQ(told[1], boards);
}

// From the cut to where the bend starts, both told on the same strip: whoever adds them meets the bend.
TEST(ClimbingStrip, AStraightEndIsToldFromItsCut) {
    const plan::Plan plan = planned_of(
        "radius = \"60 in\"\nangle = 60\nside = \"concave\"\ntails = [\"30 in\", \"30 in\"]\nrake = 33.5\nclimbs = "
        "\"right\"\nends = [\"level\", \"level\"]\n[wall.board]\nmaterial = \"mdf\"\nthickness = \"3/4 "
        "in\"\nwidth = \"7 in\"\n");
    const plan::Blank& blank = plan.pieces.at(0).blank();
    ASSERT_GT(measure::abs(blank.tails[1] - (blank.cut_at(1) - blank.bend_end)), 1_in) << "a level cut reaches far";
    std::array<std::size_t, 2> told{};
    on_each_strip(
        plan, "en", [&](const plan::Piece&, const Strip&, const Lanes&, const StripFrame&, const page::Page& page) {
            const Tape tape(measure::Unit::inch, kit().words);
            const std::array<Length, 2> straight{blank.bend_start - blank.cut_at(0), blank.cut_at(1) - blank.bend_end};
            for (const page::TextItem& text : texts(page))
                for (const std::size_t end : {std::size_t{0}, std::size_t{1}})
                    told.at(end) += text.text == "straight for " + tape.with_unit(straight.at(end)) ? 1U : 0U;
        });
    EXPECT_GE(told[0], 1U);
    EXPECT_GE(told[1], 1U);
}

std::vector<page::TextItem> words_of_sheet(const plan::Plan& plan) {
    Drafts drafts;
    add_climb_sheet(drafts, plan, plan.pieces.at(0), kit());
    return texts(drafts.at(0).page);
}

/// The figure in the row of these words.
std::string figure_beside(const std::vector<page::TextItem>& all, const std::string& words) {
    for (const page::TextItem& row : all) {
        if (row.text != words) continue;
        for (const page::TextItem& text : all)
            if (measure::abs(text.anchor.y - row.anchor.y) < 0.5_pt && text.anchor.x > row.anchor.x &&
                text.text != row.text)
                return text.text;
    }
    return {};
}

TEST(ClimbingSheet, KerfToKerfOnAnEdgeLeavesTheJointOut) {
    const plan::Plan plan = long_stair();
    const plan::Piece& piece = plan.pieces.at(0);
    ASSERT_TRUE(piece.spliced());
    const auto& kerfs = piece.blank().kerfs;
    const Length even = kerfs.at(1).at - kerfs.at(0).at;
    Length widest;
    for (std::size_t i = 0; i + 1 < kerfs.size(); ++i) widest = std::max(widest, kerfs[i + 1].at - kerfs[i].at);
    ASSERT_GT(widest, even * 1.2) << "kerfs make way for the scarf";
    const Tape tape(measure::Unit::inch, kit().words);
    const auto all = words_of_sheet(plan);
    EXPECT_EQ(figure_beside(all, "kerf to kerf, on an edge"), tape.exact_plain(even));
    EXPECT_FALSE(figure_beside(all, "over the joint, on an edge").empty());
    // The spacing is told square to the kerfs, and so without the joint on every sheet.
    const Length square = even * std::cos(piece.rake->kerf().radians());
    EXPECT_EQ(spacing_text(piece, kit(), tape), tape.number(square.inches(), 3) + " in");
    EXPECT_EQ(spacing_text(piece.of_blank(0), kit(), tape), spacing_text(piece, kit(), tape));
    const plan::Plan one = stair({});
    const auto whole = words_of_sheet(one);
    const auto& alone = one.pieces.at(0).blank().kerfs;
    EXPECT_EQ(figure_beside(whole, "kerf to kerf, on an edge"), tape.exact_plain(alone.at(1).at - alone.at(0).at));
    EXPECT_TRUE(figure_beside(whole, "over the joint, on an edge").empty());
}

// What is chosen is the whole board: beside a joint in its bend the kerfs bear more, and the verdict is of those.
TEST(Settings, OfABoardWithAJointInItsBendSayThatTheyLeaveItOut) {
    const Tape tape(measure::Unit::inch, kit().words);
    const auto told = [&](const plan::Piece& piece) {
        const auto all = settings_sentences(piece, kit(), tape);
        const std::string words =
            kit().words("settings.but_for_joints", {{"u", number(piece.bend.utilisation, 2, kit().words)}});
        return std::count(all.begin(), all.end(), words);
    };
    const plan::Plan joined = long_stair(), one = stair({});
    ASSERT_GT(joined.pieces.at(0).joints.at(0).gone, 0);
    EXPECT_EQ(told(joined.pieces.at(0)), 1);
    EXPECT_EQ(told(one.pieces.at(0)), 0);
}

// The ends of a board 33-1/2 degrees steep, by its kerfs' own angle.
TEST(ClimbingSheet, TheWorkOrderTellsEachEndsOwnAngle) {
    const plan::Plan plan = stair({"[\"square\", \"level\"]", "right", "left"});
    const double kerf = plan.pieces.at(0).rake->kerf().degrees();
    const std::string level = number(90 - kerf, 1, kit().words) + "\u00B0";
    std::size_t told = 0;
    for (const page::Page& page : make_packet(plan, kit()).pages)
        if (page.sheet == "work-order")
            for (const page::TextItem& text : texts(page)) told += text.text == "0.0\u00B0, " + level ? 1U : 0U;
    EXPECT_EQ(told, 1U);
}

// Of the corners of the bottom edge, which the drawing shows: along it, times the sine of the kerfs' angle.
TEST(ClimbingSheet, TheClimbThatIsDrawnIsThatOfTheEndsAsTheyAreCut) {
    const Tape tape(measure::Unit::inch, kit().words);
    for (const char* ends : {"[\"plumb\", \"plumb\"]", "[\"square\", \"plumb\"]", "[\"level\", \"square\"]"}) {
        const plan::Plan plan = stair({ends, "right", "left"});
        const plan::Piece& piece = plan.pieces.at(0);
        const plan::Blank& blank = piece.blank();
        const Length bottom = blank.cut_at(1) + blank.ends[1].lean - blank.cut_at(0) - blank.ends[0].lean;
        const std::string height = tape.with_unit(bottom * std::sin(piece.rake->kerf().radians()));
        std::size_t told = 0;
        for (const page::TextItem& text : words_of_sheet(plan)) told += text.text == height ? 1U : 0U;
        EXPECT_GE(told, 1U) << ends << " " << height;
    }
}

TEST(ClimbingSheet, NoLineOfADimensionRunsThroughTheWordOfAnEnd) {
    std::size_t words = 0;
    for (const char* language : {"en", "es"})
        for (const char* climbs : {"left", "right"})
            for (const char* ends : {"[\"level\", \"plumb\"]", "[\"plumb\", \"level\"]", "[\"square\", \"square\"]"}) {
                const plan::Plan plan = stair({ends, climbs, "left"});
                Drafts drafts;
                add_climb_sheet(drafts, plan, plan.pieces.at(0), kit(language));
                for (const page::TextItem& text : texts(drafts.at(0).page)) {
                    const auto& kit_words = kit(language).words;
                    if (text.text != kit_words("climb.level") && text.text != kit_words("climb.plumb") &&
                        text.text != kit_words("climb.square"))
                        continue;
                    ++words;
                    for (const page::PathItem& line : paths(drafts.at(0).page, page::Role::dimension))
                        EXPECT_TRUE(geom::clip(line.path, box_of(text)).empty())
                            << language << " " << climbs << " " << ends << ": " << placed(text);
                }
            }
    EXPECT_EQ(words, 24U);
}

}  // namespace
}  // namespace kerfpacket::sheets
