// Jobs whose sheets left out a word without which they cannot be followed; each failed before it was mended.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <string>
#include <vector>

#include "../support/boxes.h"
#include "../support/kit.h"
#include "job/read.h"
#include "plan/plan.h"
#include "sheets/packet.h"
#include "support/languages.h"
#include "template_sheets.h"

namespace kerfpacket {
namespace {

using namespace measure::literals;

job::Job found(const std::string& name, const std::string& language = "en") {
    const std::string file = KERFPACKET_SOURCE_DIR "/tests/property/found/" + name + ".toml";
    job::Job job = job::read_job(job::load(file).value()).job;
    job.header.language = language;
    return job;
}

page::Document packet_of(const std::string& name, const std::string& language) {
    return sheets::make_packet(plan::make_plan(found(name, language)).value(), tests::kit(language));
}

/// How many texts of a piece's strips hold these words.
int times_on_strips(const page::Document& packet, const std::string& piece, const std::regex& words) {
    int times = 0;
    for (const page::Page& page : packet.pages)
        for (const page::TextItem& text : tests::texts(page))
            if (page.sheet == "strips" && page.piece == piece && std::regex_search(text.text, words)) ++times;
    return times;
}

TEST(FoundSheets, say_the_trim_and_the_mitre_of_both_ends) {
    const std::regex trim("(TRIM|SOBRA) [0-9]");
    const std::regex mitre("(MITER|INGLETE) [0-9]");
    for (const char* name :
         {"trim-beside-a-mitre-at-zero", "trim-and-mitre-on-a-thin-edge", "trim-behind-kerfs-on-an-edge"})
        for (const std::string& language : tests::languages()) {
            SCOPED_TRACE(name + (" in " + language));
            const plan::Plan plan = plan::make_plan(found(name, language)).value();
            const page::Document packet = sheets::make_packet(plan, tests::kit(language));
            for (const plan::Piece& piece : plan.pieces) {
                const auto& ends = piece.blank().ends;
                const auto mitres = std::count_if(ends.begin(), ends.end(),
                                                  [](const plan::BoardEnd& end) { return end.mitre.radians() != 0; });
                EXPECT_GE(times_on_strips(packet, piece.id, mitre), mitres * piece.quantity) << piece.id;
                EXPECT_GE(times_on_strips(packet, piece.id, trim), 2 * piece.quantity) << piece.id;
            }
        }
}

TEST(FoundSheets, of_a_template_say_their_number_and_which_side_is_up) {
    for (const char* name :
         {"half-without-room-for-flip", "sheets-without-their-number", "flip-cross-in-a-joint-cross"})
        for (const std::string& language : tests::languages()) {
            const page::Document packet = packet_of(name, language);
            const auto sheets = tests::template_sheets(packet);
            EXPECT_GT(sheets.size(), 5U) << name;
            for (const auto& [number, page] : sheets) {
                SCOPED_TRACE(name + (" in " + language) + ", sheet " + number);
                tests::expect_number_and_top(*page, number);
                if (name != std::string("sheets-without-their-number")) {
                    EXPECT_TRUE(tests::says(*page, std::regex("HALF:|MITAD:")));
                }
            }
        }
}

/// Middles of the rings of a page's crosses.
std::vector<geom::Point> rings(const page::Page& page) {
    std::vector<geom::Point> middles;
    for (const page::PathItem& ring : tests::paths(page, page::Role::registration)) {
        const geom::Rect box = ring.path.bounds();
        if (ring.path.closed() && measure::abs(box.width() - 13_pt) < 0.01_pt)
            middles.push_back(geom::middle(box.low, box.high));
    }
    return middles;
}

TEST(FoundSheets, have_crosses_that_stand_apart) {
    const page::Document packet = packet_of("flip-cross-in-a-joint-cross", "es");
    std::size_t crosses = 0;
    for (const auto& [number, page] : tests::template_sheets(packet)) {
        const std::vector<geom::Point> all = rings(*page);
        for (std::size_t i = 0; i < all.size(); ++i)
            for (std::size_t j = 0; j < i; ++j) EXPECT_GT(geom::distance(all[i], all[j]), 32_pt) << "sheet " << number;
        crosses += all.size();
    }
    EXPECT_GT(crosses, 40U);
}

// A tape tells 1/16 in, common practice, no source: what bends a wall back by less is no change of sides. The wall of
// `ripple-at-an-end` opens, then closes; the one of `ripple-of-a-wave` was made up as one wave.
TEST(FoundSheets, tell_no_side_that_the_tape_cannot_have_told) {
    for (const char* name : {"ripple-at-an-end", "ripple-of-a-wave"}) {
        const plan::Plan plan = plan::make_plan(found(name)).value();
        const plan::Piece& piece = plan.pieces.front();
        ASSERT_EQ(piece.blank().runs.size(), 2U) << name;
        EXPECT_NE(piece.blank().runs[0].on, piece.blank().runs[1].on) << name;
        const measure::Length change = piece.blank().runs[0].to;
        for (const plan::Kerf& kerf : piece.blank().kerfs) {
            if (measure::abs(kerf.at - change) < kerf.spacing) continue;  // there the turn that is left tells it
            EXPECT_EQ(kerf.on, piece.blank().runs[kerf.at < change ? 0 : 1].on) << name;
        }
    }
}

/// A wall that bends 5 ft one way and then 2 ft the other, which leave their chord by an eighth of an inch.
job::Job slightly_reversed(measure::Length tape) {
    job::Job job = found("ripple-at-an-end");
    job.walls.front().ordinates->tape = tape;
    std::vector<job::Ordinate>& points = job.walls.front().ordinates->points;
    points.clear();
    const auto bent = [](double x) {
        const double back = std::max(0.0, x - 60);
        return -0.009 * x * x / 2 + (0.009 + 8 * 0.125 / (24.0 * 24)) * back * back / 2;
    };
    for (int x = 0; x <= 84; x += 6)
        points.push_back(
            {{measure::Length::inches(x), {}}, {measure::Length::inches(bent(x) - bent(84) * x / 84), {}}});
    return job;
}

TEST(FoundSheets, tell_a_side_that_a_tape_can_have_told) {
    EXPECT_EQ(plan::make_plan(slightly_reversed(0.03_in)).value().pieces.front().blank().runs.size(), 2U);
    EXPECT_EQ(plan::make_plan(slightly_reversed(0.25_in)).value().pieces.front().blank().runs.size(), 1U);
}

}  // namespace
}  // namespace kerfpacket
