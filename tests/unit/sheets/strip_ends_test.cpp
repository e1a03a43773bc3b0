// The ends of strips, as drawn: the hatch is the trim, its cut is a line as high as the strip, the zero end has its
// words.

#include "sheets/strips/strip_ends.h"

#include <gtest/gtest.h>

#include <random>

#include "sheets/strips/strip_marks.h"
#include "strip_pages.h"
#include "support/pieces.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

/// A strip on a page of its own, and the board that it is of.
struct Drawn {
    std::string name;
    const plan::Piece& piece;
    Strip strip;
    Lanes lanes;
    StripFrame frame;
    page::Page page;
};

template <class Ask>
void on_strips_of(const plan::Plan& plan, const std::string& name, const std::string& language, Ask ask) {
    on_each_strip(plan, language,
                  [&](const plan::Piece& piece, const Strip& strip, const Lanes& lanes, const StripFrame& frame,
                      const page::Page& page) {
                      ask(Drawn{name + ", " + piece.id + ", strip " + std::to_string(strip.number), piece, strip, lanes,
                                frame, page});
                  });
}

/// Random boards, and those whose ends are mitred; over the edge too, zero at both ends, in both languages.
template <class Ask>
void on_random_strips(Ask ask) {
    std::mt19937 random(20260311);
    const auto between = [&](double low, double high) {
        return Length::inches(std::uniform_real_distribution(low, high)(random));
    };
    for (int i = 0; i < 240; ++i) {
        job::Wall wall = harbor_stair();
        wall.chord.reset();
        wall.rise.reset();
        wall.radius = at_line(between(40, 200), 12);
        wall.angle = at_line(measure::Angle::radians(between(8, 40) / wall.radius->value), 13);
        wall.tails = {at_line(i % 4 == 0 ? between(0.2, 6) : 0_in, 15),
                      at_line(i % 3 == 0 ? between(0.2, 6) : 0_in, 15)};
        wall.board.spacing.given = between(0.25, 3);
        wall.board.trim.value = i % 9 == 0 ? 0_in : between(0.2, 6);
        if (wall.board.trim.value < wall.board.spacing.given.value() * 0.5 + 0.2_in)
            wall.board.spacing.given = std::max(0.2_in, wall.board.trim.value);
        if (wall.board.trim.value == 0_in) wall.tails = {at_line(3_in, 15), at_line(3_in, 15)};
        wall.board.zero = i % 2 == 0 ? job::End::left : job::End::right;
        wall.board.tick =
            std::array{job::Tick::centre, job::Tick::left, job::Tick::right}.at(static_cast<std::size_t>(i) / 2 % 3);
        if (i % 5 == 0) wall.board.strip = at_line(job::StripOn::edge, 37);
        job::Job job = job_of(wall);
        job.saw.kerf.value = std::min(*wall.board.spacing.given * 0.5, 0.118_in);
        job.header.units = i % 7 < 4 ? measure::Unit::inch : measure::Unit::millimetre;
        job.printer.media = job::find_media("na_letter_8.5x11in").value();
        // Not every board can be made.
        if (const auto plan = plan::make_plan(job))
            on_strips_of(*plan, "board " + std::to_string(i), i % 2 == 0 ? "en" : "es", ask);
    }
    for (const Length trim : {0.5_in, 3_in, 60_mm}) {
        job::Opening opening = alder_court();
        opening.liner.trim.value = trim;
        on_strips_of(planned(job_of(opening)), "pointed", "es", ask);
    }
}

bool upright(const page::PathItem& item) { return !item.filled && item.path.bounds().width() < 0.001_mm; }

TEST(StripEnds, TheHatchReachesToWhereTheTrimEnds) {
    std::size_t hatched = 0, with_kerfs = 0;
    on_random_strips([&](const Drawn& one) {
        SCOPED_TRACE(one.name);
        const plan::Blank& blank = one.piece.blank();
        const std::array<std::pair<Length, Length>, 2> wasted{
            std::pair{std::max(0_mm, one.strip.from), std::min(waste_until(one.piece), one.strip.to)},
            std::pair{std::max(waste_from(one.piece), one.strip.from), std::min(blank.length, one.strip.to)}};
        std::vector<Rect> areas;
        for (const auto& [from, to] : wasted) {
            if (from >= to) continue;
            areas.push_back(one.frame.zone(from, to, one.lanes.height));
            Rect drawn;
            bool any = false;
            for (const page::PathItem& line : paths(one.page, Role::hatch)) {
                const Rect bounds = line.path.bounds();
                if (!areas.back().grown(0.01_pt).contains(bounds.low)) continue;
                drawn = any ? geom::united(drawn, bounds) : bounds;
                any = true;
            }
            ASSERT_TRUE(any);
            ++hatched;
            EXPECT_NEAR(drawn.low.x.points(), areas.back().low.x.points(), 1e-6);
            EXPECT_NEAR(drawn.high.x.points(), areas.back().high.x.points(), 1e-6);
            for (const plan::Kerf& kerf : blank.kerfs) with_kerfs += kerf.mark > from && kerf.mark < to ? 1U : 0U;
        }
        for (const page::PathItem& line : paths(one.page, Role::hatch))
            EXPECT_TRUE(std::any_of(areas.begin(), areas.end(), [&](const Rect& area) {
                const Rect near = area.grown(0.01_pt);
                return near.contains(line.path.start()) && near.contains(line.path.end());
            })) << "hatched where nothing goes away";
        expect_numerals_clear(one.page);
    });
    EXPECT_GT(hatched, 300U);
    EXPECT_GT(with_kerfs, 20U) << "kerfs stand in the trim of some of them";
}

TEST(StripEnds, TheCutIsALineAsHighAsTheStrip) {
    std::size_t cuts = 0;
    on_random_strips([&](const Drawn& one) {
        SCOPED_TRACE(one.name);
        const plan::Blank& blank = one.piece.blank();
        for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
            const Length at = end == 0 ? waste_until(one.piece) : waste_from(one.piece);
            if (blank.trims.at(end) <= 0_mm || blank.ends.at(end).mitre.radians() != 0) continue;
            if (at < one.strip.from || at > one.strip.to) continue;
            ++cuts;
            const Length x = one.frame.at(at, {}).x;
            Length drawn;
            Length low = one.lanes.height, high;
            for (const page::PathItem& line : paths(one.page, Role::limit)) {
                if (!upright(line) || measure::abs(line.path.start().x - x) > 1e-6_mm) continue;
                if (measure::abs(line.width - 1.4_pt) > 1e-6_mm || line.dash != page::Dash::solid) continue;
                // The end of the bend may be the same place: what is drawn twice counts once.
                const Rect bounds = line.path.bounds();
                drawn = std::max(drawn, drawn + bounds.height());
                low = std::min(low, bounds.low.y - one.frame.base());
                high = std::max(high, bounds.high.y - one.frame.base());
            }
            EXPECT_NEAR(high.points(), one.lanes.height.points(), 1e-6);
            // Beside a tick it could be taken for one.
            const Length near = std::max(2_pt, measured_beside(one.piece) + 1_pt);
            const bool on_tick = std::any_of(blank.kerfs.begin(), blank.kerfs.end(), [&](const plan::Kerf& kerf) {
                return measure::abs(kerf.mark - at) < near || measure::abs(kerf.at - at) < one.piece.cut.kerf;
            });
            if (!one.lanes.edge) { EXPECT_LE(low, one.lanes.above_numerals() + 0.01_pt) << "above the numerals alone"; }
            if (!on_tick && !one.lanes.edge) {
                EXPECT_NEAR(low.points(), 0, 1e-6);
                // Open at a numeral and a distance at most.
                EXPECT_GE(drawn.points(), 36);
            }
        }
    });
    EXPECT_GT(cuts, 250U);
}

TEST(StripEnds, TheZeroEndAlwaysSaysSoAndWhereTheTapeIsHooked) {
    std::size_t zeros = 0;
    on_random_strips([&](const Drawn& one) {
        SCOPED_TRACE(one.name);
        const auto times = [&](const std::string& english, const std::string& spanish) {
            std::string all;  // what stands in two rows is read as one
            for (const page::TextItem& text : texts(one.page)) all += text.text + " ";
            int found = 0;
            for (const std::string& words : {english, spanish})
                for (std::size_t at = all.find(words); at != std::string::npos; at = all.find(words, at + 1)) ++found;
            return found;
        };
        const int wanted = one.strip.from <= 0_mm ? 1 : 0;
        zeros += static_cast<std::size_t>(wanted);
        EXPECT_EQ(times("ZERO END", "EXTREMO CERO"), wanted);
        EXPECT_EQ(times("hook the tape here", "enganche aquí la cinta"), wanted);
        for (const std::string& fault : text_faults(one.page)) ADD_FAILURE() << fault;
    });
    EXPECT_GT(zeros, 150U);
}

}  // namespace
}  // namespace kerfpacket::sheets
