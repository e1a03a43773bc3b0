// Strips over the board's edge, as drawn: the cuts in true kerf and depth, the flap, marks from one zero.

#include <gtest/gtest.h>

#include "sheets/words/tape.h"
#include "sheets/words/wording.h"
#include "strip_pages.h"
#include "support/pieces.h"

namespace kerfpacket::tests {
namespace {

struct EdgeCase {
    std::string name;
    job::Job job;
    std::string media;
};

struct Board {
    Length thickness;
    Length depth;
    Length spacing;
    Length kerf;
};

/// Boards of several thicknesses, both zeros, all three ticks.
std::vector<EdgeCase> edge_cases() {
    const std::vector<Board> boards = {{0.75_in, 0.375_in, 0.5_in, 0.118_in},   {0.75_in, 0.4375_in, 0.25_in, 0.094_in},
                                       {0.5_in, 0.1875_in, 0.375_in, 0.118_in}, {1_in, 0.5_in, 0.25_in, 0.094_in},
                                       {1_in, 0.5_in, 1_in, 0.126_in},          {15_mm, 7_mm, 9.3_mm, 2.4_mm}};
    std::vector<EdgeCase> cases;
    for (const Board& board : boards)
        for (const job::End zero : {job::End::left, job::End::right})
            for (const job::Tick tick : {job::Tick::centre, job::Tick::left, job::Tick::right}) {
                job::Wall wall = harbor_stair();
                wall.chord = at_line(96_in, 12);
                wall.rise = at_line(9_in, 13);
                wall.board.thickness.value = board.thickness;
                wall.board.kerf_depth.half = false;
                wall.board.kerf_depth.given = board.depth;
                wall.board.spacing.given = board.spacing;
                wall.board.zero = zero;
                wall.board.tick = tick;
                wall.board.strip = at_line(job::StripOn::edge, 37);
                job::Job job = job_of(wall);
                job.saw.kerf.value = board.kerf;
                const bool metric = board.thickness == 15_mm;
                job.header.units = metric ? measure::Unit::millimetre : measure::Unit::inch;
                cases.push_back({std::to_string(board.thickness.inches()) + " in thick, zero " +
                                     (zero == job::End::left ? "left" : "right") + ", tick " +
                                     std::to_string(static_cast<int>(tick)),
                                 job, metric ? "iso_a4_210x297mm" : "na_letter_8.5x11in"});
            }
    return cases;
}

/// Calls `ask` with every piece and its pages; boards of arches that meet on a mitre are among them.
template <class Ask>
void on_all(Ask ask) {
    std::vector<EdgeCase> cases = edge_cases();
    job::Opening pointed = alder_court();
    pointed.liner.strip = at_line(job::StripOn::edge, 37);
    cases.push_back({"pointed", job_of(pointed), "na_letter_8.5x11in"});
    for (const EdgeCase& one : cases) {
        SCOPED_TRACE(one.name);
        const plan::Plan plan = planned(one.job, one.media.c_str());
        for (const plan::Piece& piece : plan.pieces) ask(plan, piece, strip_pages(plan, piece));
    }
}

/// Outlines as wide as a kerf: the slots, seen from the front of the board.
std::vector<Rect> slots(const page::Page& page) {
    std::vector<Rect> found;
    for (const page::PathItem& item : paths(page, Role::outline))
        if (item.path.closed() && item.width < 0.6_pt) found.push_back(item.path.bounds());
    return found;
}

TEST(EdgeStrip, MarksStandWhereTheyBelongFromZero) {
    on_all([](const plan::Plan&, const plan::Piece& piece, const std::vector<page::Page>& pages) {
        expect_marks_from_zero(pages, piece);
    });
}

TEST(EdgeStrip, SlotsAreTheCutsInTrueKerfAndDepth) {
    on_all([](const plan::Plan&, const plan::Piece& piece, const std::vector<page::Page>& pages) {
        std::size_t count = 0;
        for (const page::Page& page : pages) {
            const std::vector<Rect> strips = strip_outlines(page);
            const std::vector<page::PathItem> feet = paths(page, Role::foot);
            const std::vector<Rect> cuts = slots(page);
            ASSERT_EQ(cuts.size(), feet.size());
            for (std::size_t i = 0; i < cuts.size(); ++i, ++count) {
                EXPECT_NEAR(cuts[i].width().mm(), piece.cut.kerf.mm(), 1e-9);
                EXPECT_NEAR(cuts[i].height().mm(), piece.cut.depth.mm(), 1e-9);
                // The foot lies on the flap right over its slot.
                EXPECT_NEAR(cuts[i].low.x.mm(), feet[i].path.bounds().low.x.mm(), 1e-9);
                EXPECT_NEAR(cuts[i].high.y.mm(), feet[i].path.bounds().low.y.mm(), 1e-9);
                // They open at the kerf face, which is a board's thickness above the plain face.
                const auto strip =
                    std::find_if(strips.begin(), strips.end(), [&](const Rect& r) { return r.contains(cuts[i].low); });
                ASSERT_NE(strip, strips.end());
                EXPECT_NEAR((cuts[i].high.y - strip->low.y).mm(), piece.cut.thickness.mm(), 1e-9);
            }
        }
        EXPECT_EQ(count, piece.blank().kerfs.size());
    });
}

TEST(EdgeStrip, AFlapOf19PointsFoldsAlongADashedLine) {
    on_all([](const plan::Plan&, const plan::Piece& piece, const std::vector<page::Page>& pages) {
        for (const page::Page& page : pages) {
            std::size_t folds = 0;
            for (const Rect& strip : strip_outlines(page)) {
                EXPECT_NEAR(strip.height().mm(), (piece.cut.thickness + 19_pt).mm(), 1e-9);
                for (const page::PathItem& line : paths(page, Role::outline))
                    if (line.dash == page::Dash::dashed && strip.contains(line.path.start())) {
                        ++folds;
                        EXPECT_NEAR((strip.high.y - line.path.start().y).mm(), (19_pt).mm(), 1e-9);
                        EXPECT_NEAR(line.path.length().mm(), strip.width().mm(), 1e-9);
                    }
            }
            EXPECT_EQ(folds, strip_outlines(page).size());
        }
    });
}

TEST(EdgeStrip, TheDepthOfCutIsALineOf1Point4) {
    on_all([](const plan::Plan&, const plan::Piece& piece, const std::vector<page::Page>& pages) {
        for (const page::Page& page : pages) {
            const std::vector<Rect> strips = strip_outlines(page);
            std::size_t lines = 0;
            for (const page::PathItem& line : paths(page, Role::outline)) {
                if (line.path.closed() || measure::abs(line.width - 1.4_pt) > 1e-6_mm) continue;
                ++lines;
                const auto strip = std::find_if(strips.begin(), strips.end(),
                                                [&](const Rect& r) { return r.contains(line.path.start()); });
                ASSERT_NE(strip, strips.end());
                EXPECT_NEAR((line.path.start().y - strip->low.y).mm(), piece.cut.web().mm(), 1e-9);
                EXPECT_NEAR(line.path.end().y.mm(), line.path.start().y.mm(), 1e-9);
            }
            EXPECT_EQ(lines, strips.size());
        }
    });
}

TEST(EdgeStrip, NumeralsStandInTheWebAndSurviveTheCut) {
    std::size_t numerals = 0;
    on_all([&](const plan::Plan&, const plan::Piece& piece, const std::vector<page::Page>& pages) {
        for (const page::Page& page : pages) {
            const std::vector<Rect> strips = strip_outlines(page);
            for (const page::TextItem& text : texts(page)) {
                if (text.role != Role::numeral && text.role != Role::running) continue;
                ++numerals;
                const bool numeral = text.role == Role::numeral;
                EXPECT_EQ(text.size, numeral ? 13_pt : 9_pt) << placed(text);
                EXPECT_TRUE(std::any_of(strips.begin(), strips.end(), [&](const Rect& strip) {
                    const Rect web{strip.low, {strip.high.x, strip.low.y + piece.cut.web() - 0.7_pt}};
                    return web.contains(box_of(text).low) && web.contains(box_of(text).high);
                })) << placed(text);
            }
            expect_numerals_clear(page);
        }
    });
    EXPECT_GT(numerals, 3000U);
}

TEST(EdgeStrip, TextsKeepApartAndJointsHideNothing) {
    on_all([](const plan::Plan&, const plan::Piece&, const std::vector<page::Page>& pages) {
        for (const page::Page& page : pages) {
            for (const std::string& fault : text_faults(page)) ADD_FAILURE() << fault;
            expect_joints_hide_nothing(page);
        }
    });
}

bool says(const page::Page& page, const std::string& words) {
    const std::vector<page::TextItem> all = texts(page);
    return std::any_of(all.begin(), all.end(),
                       [&](const page::TextItem& text) { return text.text.find(words) != std::string::npos; });
}

TEST(EdgeStrip, SaysWhereItGoesWhatATickMeansAndHalfTheKerf) {
    std::size_t halves = 0;
    on_all([&](const plan::Plan& plan, const plan::Piece& piece, const std::vector<page::Page>& pages) {
        const std::string half = sheets::Tape(plan.header.units).exact(piece.cut.kerf / 2);
        for (const page::Page& page : pages) {
            EXPECT_TRUE(says(page, "FRONT EDGE, flap on the KERF FACE"));
            EXPECT_TRUE(says(page, "fold back on the dashed line"));
            EXPECT_TRUE(says(page, sheets::Tape(plan.header.units).exact(piece.cut.depth) + " deep"));
            if (piece.tick == job::Tick::centre) {
                EXPECT_TRUE(says(page, "Tick = blade CENTER"));
                EXPECT_FALSE(says(page, "kerf's middle"));
                continue;
            }
            ++halves;
            // The tick is at one side of the blade: the kerf's middle is half a kerf to the other.
            const bool left = piece.tick == job::Tick::left;
            EXPECT_TRUE(says(page, left ? "Tick = blade LEFT side, kerf's middle " + half + " to its RIGHT"
                                        : "Tick = blade RIGHT side, kerf's middle " + half + " to its LEFT"));
            const Point tick = paths(page, Role::tick).front().path.start();
            const Rect foot = paths(page, Role::foot).front().path.bounds();
            EXPECT_NEAR(tick.x.mm(), (left ? foot.low.x : foot.high.x).mm(), 1e-9);
        }
    });
    EXPECT_GT(halves, 20U);
}

TEST(EdgeStrip, AMitreSlopesThroughTheBoardAsItIsCut) {
    job::Opening pointed = alder_court();
    pointed.liner.strip = at_line(job::StripOn::edge, 37);
    const plan::Plan plan = planned(job_of(pointed));
    std::size_t sloped = 0;
    std::size_t angles = 0;
    for (const plan::Piece& piece : plan.pieces)
        for (const page::Page& page : strip_pages(plan, piece)) {
            const std::string angle =
                sheets::degrees_text(piece.blank().ends.at(piece.board == 1 ? 1 : 0).mitre, kit());
            if (says(page, "MITER " + angle + "°")) ++angles;
            for (const page::PathItem& line : paths(page, Role::limit)) {
                const Point way = line.path.end() - line.path.start();
                if (measure::abs(way.x) < 0.1_mm || line.filled) continue;
                ++sloped;
                EXPECT_NEAR(way.y.mm(), piece.cut.thickness.mm(), 1e-9);
                const plan::BoardEnd& end = piece.blank().ends.at(piece.blank().ends[1].mitre.radians() != 0 ? 1 : 0);
                EXPECT_NEAR(std::abs(way.x.mm()), std::abs((end.plain_face - end.kerf_face).mm()), 1e-9);
                // The faces are measured along the bend, so that the slope is the mitre's within a few parts in a
                // hundred.
                EXPECT_NEAR(std::abs(way.x / way.y), std::abs(std::tan(end.mitre.radians())), 0.03);
            }
        }
    EXPECT_EQ(angles, 2U);
    EXPECT_EQ(sloped, 2U);  // both boards at the point; their other ends are square
}

}  // namespace
}  // namespace kerfpacket::tests
