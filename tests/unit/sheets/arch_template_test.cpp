#include "sheets/templates/arch_template.h"

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "../../support/kit.h"
#include "sheets/templates/arch_drawing.h"
#include "sheets/templates/template_tile.h"
#include "sheets/templates/template_ways.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;
using page::Role;
using page::TextItem;

job::Opening cased(job::Opening opening, Length width, Length reveal, int segments) {
    opening.casing =
        job::Casing{at_line(width, 51), at_line(reveal, 52), job::WallSide::room, at_line(segments, 53), {}};
    return opening;
}

job::Opening segmental(Length span, Length rise) {
    job::Opening opening = lantern_court();
    opening.span.value = span;
    opening.rise.value = rise;
    return opening;
}

struct Sample {
    const char* name;
    plan::Plan plan;
};

/// Low, semicircular without casing, wide and flat, small, metric on A4, all so printed.
std::vector<Sample> samples_by(job::TemplateWish wish) {
    const auto planned = [&](job::Job job, const char* media = "na_letter_8.5x11in") {
        job.openings.front().wish = wish;
        return tests::planned(job, media);
    };
    {
        job::Opening low = cased(segmental(58.75_in, 13.625_in), 3.5_in, 0.1875_in, 3);
        low.legs = {{at_line(80_in, 54), at_line(80_in, 54)}};
        job::Opening flat = cased(segmental(118_in, 8_in), 4.25_in, 0.25_in, 5);
        flat.measured_to = job::Surface::finish;
        job::Job metric = job_of(cased(segmental(1180_mm, 330_mm), 95_mm, 5_mm, 3));
        metric.header.units = measure::Unit::millimetre;
        metric.openings.front().liner.zero = job::End::right;
        return std::vector<Sample>{{"low", planned(job_of(low))},
                                   {"semicircle", planned(job_of(semicircle(36_in)))},
                                   {"flat", planned(job_of(flat))},
                                   {"small", planned(job_of(cased(segmental(14_in, 5_in), 2.5_in, 0.1875_in, 1)))},
                                   {"metric", planned(metric, "iso_a4_210x297mm")}};
    }
}

const std::vector<Sample>& samples() {
    static const std::vector<Sample> all = samples_by({job::Sheets::grid, false, {}});
    return all;
}

const std::vector<Sample>& samples_along() {
    static const std::vector<Sample> all = samples_by({job::Sheets::along, false, {}});
    return all;
}

const std::vector<Sample>& halves() {
    static const std::vector<Sample> all = [] {
        std::vector<Sample> halves = samples_by({job::Sheets::grid, true, {}});
        for (Sample& along : samples_by({job::Sheets::along, true, {}})) halves.push_back(std::move(along));
        return halves;
    }();
    return all;
}

/// In every way there is.
std::vector<Sample> all_samples() {
    std::vector<Sample> all = samples();
    for (const auto& more : {samples_along(), halves()}) all.insert(all.end(), more.begin(), more.end());
    return all;
}

Drafts drawn(const plan::Plan& plan) {
    Drafts drafts;
    add_template(drafts, plan, plan.pieces.front(), kit());
    return drafts;
}

/// The tile pages, without the map.
std::vector<page::Page> tiles(const plan::Plan& plan) {
    std::vector<page::Page> pages;
    for (const Draft& draft : drawn(plan))
        if (draft.scale == Scale::full) pages.push_back(draft.page);
    return pages;
}

const plan::ArchLines& lines(const plan::Plan& plan) { return std::get<plan::ArchLines>(plan.pieces.front().lines); }

Tiling tiling_of(const plan::Plan& plan) {
    const ArchOpening arch(plan, plan.pieces.front());
    return template_ways(plan, kit(), arch_shape(arch, kit().style), arch.piece().template_wish.sheets).tiling();
}

std::set<std::string> all_words(const plan::Plan& plan) {
    std::set<std::string> all;
    for (const page::Page& page : tiles(plan))
        for (const TextItem& text : texts(page)) all.insert(text.text);
    return all;
}

bool said(const std::set<std::string>& all, const std::string& start) {
    return std::any_of(all.begin(), all.end(), [&](const std::string& s) { return s.rfind(start, 0) == 0; });
}

/// Lower left corner of the cell on its page: the ring nearest to the page's own corner.
Point corner_of_cell(const page::Page& page) {
    Point corner{page.width, page.height};
    for (const page::PathItem& item : paths(page, Role::registration)) {
        if (!item.path.closed() || item.path.segments().front().is_line()) continue;
        const Point centre = item.path.segments().front().centre();
        corner = {std::min(corner.x, centre.x), std::min(corner.y, centre.y)};
    }
    return corner;
}

/// Each printed tile with its page.
template <class Visit>
void each_tile(const plan::Plan& plan, Visit visit) {
    const Tiling tiling = tiling_of(plan);
    const std::vector<page::Page> pages = tiles(plan);
    std::size_t next = 0;
    for (const Tile& tile : tiling.tiles())
        if (!tile.blank) visit(tile, pages.at(next++));
}

TEST(ArchTemplate, a_map_and_a_page_for_each_printed_tile) {
    for (const Sample& sample : samples()) {
        const Drafts drafts = drawn(sample.plan);
        ASSERT_EQ(drafts.size(), tiling_of(sample.plan).printed() + 1) << sample.name;
        EXPECT_LT(drafts.front().page.width, drafts.front().page.height);
        EXPECT_EQ(drafts.front().scale, Scale::none);
        EXPECT_FALSE(drafts.front().outline.empty());
        const bool upright = tiling_of(sample.plan).cell().upright;
        for (std::size_t i = 1; i < drafts.size(); ++i) {
            EXPECT_EQ(drafts[i].page.width < drafts[i].page.height, upright) << sample.name;
            EXPECT_EQ(drafts[i].scale, Scale::full);
        }
    }
}

TEST(ArchTemplate, the_arcs_lie_true_to_scale_in_every_cell) {
    for (const Sample& sample : samples()) {
        const plan::ArchLines& arch = lines(sample.plan);
        const Point centre = arch.finish.segments().front().centre();
        std::vector<Length> radii{arch.wall.segments().front().radius(), arch.finish.segments().front().radius()};
        for (const auto& casing : {arch.casing_inside, arch.casing_outside})
            if (casing) radii.push_back(casing->segments().front().radius());
        std::set<std::size_t> seen;
        each_tile(sample.plan, [&](const Tile& tile, const page::Page& page) {
            const Point expected = corner_of_cell(page) + (centre - tile.cell.low);
            for (const page::PathItem& item : paths(page, Role::outline)) {
                const geom::Segment s = item.path.segments().front();
                if (s.is_line()) continue;
                EXPECT_NEAR(geom::distance(s.centre(), expected).mm(), 0, 1e-6) << sample.name << tile.name();
                const auto same = std::find_if(radii.begin(), radii.end(),
                                               [&](Length r) { return measure::abs(r - s.radius()) < 1e-6_mm; });
                ASSERT_NE(same, radii.end()) << sample.name << tile.name();
                seen.insert(static_cast<std::size_t>(same - radii.begin()));
            }
        });
        EXPECT_EQ(seen.size(), radii.size()) << sample.name;
    }
}

TEST(ArchTemplate, is_dotted_only_where_tiles_join) {
    for (const Sample& sample : samples()) {
        const Tiling tiling = tiling_of(sample.plan);
        each_tile(sample.plan, [&](const Tile& tile, const page::Page& page) {
            const Point low = corner_of_cell(page);
            const Point high = low + (tile.cell.high - tile.cell.low);
            std::size_t expected = 0;
            for (const auto& [across, down] : {std::pair{-1, 0}, {1, 0}, {0, -1}, {0, 1}})
                if (tiling.printed_at(tile.column + across, tile.row + down) != nullptr) ++expected;
            std::set<std::pair<bool, bool>> dotted;  // a line may be open where a number stands
            for (const page::PathItem& item : paths(page, Role::registration)) {
                if (item.dash != page::Dash::dotted) continue;
                const Point p = item.path.start();
                const Point q = item.path.end();
                const bool upright = p.x == q.x;
                const Length at = upright ? p.x : p.y;
                const bool first = measure::abs(at - (upright ? low.x : low.y)) < 1e-6_mm;
                const bool last = measure::abs(at - (upright ? high.x : high.y)) < 1e-6_mm;
                ASSERT_TRUE(first || last) << sample.name << tile.name();
                dotted.insert({upright, first});
                const int step = first == upright ? -1 : 1;  // columns run to the right, rows down
                EXPECT_NE(tiling.printed_at(tile.column + (upright ? step : 0), tile.row + (upright ? 0 : step)),
                          nullptr)
                    << sample.name << tile.name();
            }
            EXPECT_EQ(dotted.size(), expected) << sample.name << tile.name();
        });
    }
}

TEST(ArchTemplate, no_words_touch_each_other_or_a_line) {
    for (const Sample& sample : all_samples()) {
        for (const page::Page& page : tiles(sample.plan)) {
            const std::vector<TextItem> all = texts(page);
            for (const TextItem& text : all) {
                const std::vector<Point> ink = grid(text);
                for (const TextItem& other : all)
                    if (&other != &text) {
                        EXPECT_TRUE(std::none_of(ink.begin(), ink.end(), [&](Point p) { return covers(other, p); }))
                            << sample.name << ": " << text.text << " / " << other.text;
                    }
                for (const Role role : {Role::outline, Role::tick, Role::joint, Role::dimension, Role::centre})
                    for (const page::PathItem& item : paths(page, role))
                        ASSERT_FALSE(crosses(item.path, text))
                            << sample.name << ": " << text.text << " / " << page::role_name(role);
            }
        }
    }
}

TEST(ArchTemplate, words_stay_clear_of_rings_and_dotted_lines) {
    for (const Sample& sample : all_samples())
        for (const page::Page& page : tiles(sample.plan))
            for (const page::PathItem& item : paths(page, Role::registration)) {
                const bool ring = item.path.closed() && !item.path.segments().front().is_line();
                if (!ring && item.dash != page::Dash::dotted) continue;
                for (const TextItem& text : texts(page))
                    ASSERT_FALSE(crosses(item.path, text)) << sample.name << ": " << text.text;
            }
}

TEST(ArchTemplate, says_what_each_line_is) {
    for (const Sample& sample : samples()) {
        const std::set<std::string> all = all_words(sample.plan);
        std::vector<std::string> wanted{"WALL LINE",   "FINISHED LINE", "LINER ",
                                        "SPRING LINE", "CENTER LINE",   "at the center"};
        if (sample.plan.pieces.front().casing) {
            for (const char* name : {"CASING, outside edge", "casing, inside edge", "MITER"}) wanted.emplace_back(name);
            const std::size_t count = lines(sample.plan).segments.size();
            for (std::size_t i = 1; i <= count && count > 1; ++i)
                wanted.push_back("segment " + std::to_string(i) + " of " + std::to_string(count));
            if (count > 1) wanted.emplace_back("SEGMENT JOINT");
        }
        for (const std::string& name : wanted) EXPECT_TRUE(said(all, name)) << sample.name << ": " << name;
    }
}

TEST(ArchTemplate, says_on_every_tile_its_name_and_where_the_kerfs_are) {
    for (const Sample& sample : samples()) {
        const Tiling tiling = tiling_of(sample.plan);
        each_tile(sample.plan, [&](const Tile& tile, const page::Page& page) {
            std::set<std::string> large;
            std::set<std::string> neighbours;
            std::string words;
            for (const TextItem& text : texts(page)) {
                if (text.size == kit().style.huge) large.insert(text.text);
                if (text.size == kit().style.title) neighbours.insert(text.text);
                words += text.text + " ";
            }
            EXPECT_EQ(large, std::set<std::string>{tile.name()}) << sample.name;
            EXPECT_NE(words.find("kerfs OUTSIDE the bend: they OPEN"), std::string::npos) << sample.name << tile.name();
            std::set<std::string> expected;
            for (const auto& [across, down] : {std::pair{-1, 0}, {1, 0}, {0, -1}, {0, 1}})
                if (const Tile* other = tiling.printed_at(tile.column + across, tile.row + down))
                    expected.insert(other->name());
            EXPECT_EQ(neighbours, expected) << sample.name << tile.name();
        });
    }
}

TEST(ArchTemplate, numbers_every_fifth_kerf_at_its_tick) {
    for (const Sample& sample : samples()) {
        const std::vector<plan::KerfTick>& ticks = lines(sample.plan).kerf_ticks;
        const auto nearest = [&](Point p) {
            return std::min_element(ticks.begin(), ticks.end(),
                                    [&](const auto& a, const auto& b) {
                                        return geom::distance(a.line.start(), p) < geom::distance(b.line.start(), p);
                                    })
                ->n;
        };
        std::set<int> numbers;
        each_tile(sample.plan, [&](const Tile& tile, const page::Page& page) {
            const Point shift = tile.cell.low - corner_of_cell(page);
            for (const TextItem& text : texts(page)) {
                if (text.role != Role::numeral) continue;
                const int n = std::stoi(text.text);
                numbers.insert(n);
                EXPECT_EQ(nearest(in_text(text, text.advance / 2, {}) + shift), n) << sample.name << tile.name();
                EXPECT_EQ(text.face == page::Face::condensed_bold, n % 10 == 0);
            }
        });
        for (const plan::KerfTick& tick : ticks)
            EXPECT_EQ(numbers.count(tick.n), tick.n % 5 == 0 ? 1U : 0U) << sample.name << " " << tick.n;
    }
}

TEST(ArchTemplate, every_kerf_has_its_tick_in_its_place) {
    for (const Sample& sample : samples()) {
        std::set<std::size_t> found;
        const auto& ticks = lines(sample.plan).kerf_ticks;
        each_tile(sample.plan, [&](const Tile& tile, const page::Page& page) {
            const Point shift = tile.cell.low - corner_of_cell(page);
            for (const page::PathItem& item : paths(page, Role::tick)) {
                const Point from = item.path.start() + shift;
                const Point to = item.path.end() + shift;
                for (std::size_t i = 0; i < ticks.size(); ++i)
                    if (geom::distance(ticks[i].line.start(), from) < 1e-6_mm &&
                        geom::distance(ticks[i].line.end(), to) < 1e-6_mm)
                        found.insert(i);
            }
        });
        EXPECT_EQ(found.size(), ticks.size()) << sample.name;
        // A kerf may stand in the trim beyond each end: that wood is not on the template.
        EXPECT_GE(ticks.size() + 2, sample.plan.pieces.front().blank().kerfs.size()) << sample.name;
    }
}

TEST(Ordinates, of_a_circle_of_thirty) {
    // Span 48, rise 12: radius 30, so that 18 from the centre line stands 24 above the circle's centre (the triangle
    // 18, 24, 30), which lies 18 below the spring line: 6 in.
    const std::set<std::string> all = all_words(planned(job_of(segmental(48_in, 12_in))));
    EXPECT_TRUE(all.count("18 in from center"));
    EXPECT_TRUE(all.count("ordinate 6 in"));
    EXPECT_TRUE(all.count("ordinate 12 in")) << "at the centre, the rise";
    EXPECT_TRUE(all.count("WALL LINE   R 30 in"));
    EXPECT_TRUE(all.count("FINISHED LINE   R 29-1/4 in"));
}

TEST(Ordinates, are_measured_to_the_casing_where_there_is_one) {
    // The casing's outside edge: 30 - 3/4 + 1/4 + 3-1/2 = 33 in, crown 15 in above the spring line.
    const std::set<std::string> all = all_words(planned(job_of(cased(segmental(48_in, 12_in), 3.5_in, 0.25_in, 3))));
    EXPECT_TRUE(all.count("ordinate 15 in"));
    EXPECT_TRUE(all.count("CASING, outside edge   R 33 in"));
    EXPECT_TRUE(all.count("ordinates: spring line up to the casing's outside edge"));
}

TEST(AssemblyMap, tells_what_to_measure_on_the_whole) {
    const Drafts drafts = drawn(planned(job_of(cased(segmental(48_in, 14_in), 3.5_in, 0.25_in, 3))));
    std::set<std::string> all;
    for (const TextItem& text : texts(drafts.front().page)) all.insert(text.text);
    EXPECT_TRUE(all.count("48 in"));
    EXPECT_TRUE(all.count("24 in each"));
    EXPECT_TRUE(all.count("14 in"));
    // Face of the leg liners 48 - 1-1/2, then reveal and casing on both sides.
    EXPECT_TRUE(all.count("54 in"));
    // hypot(24, 14) = 27.785: 27-13/16 on a tape.
    EXPECT_TRUE(all.count("27-13/16 in"));
    EXPECT_TRUE(all.count("Kerfs OUTSIDE the bend: they OPEN"));
}

TEST(AssemblyMap, names_every_printed_tile_and_hatches_the_others) {
    for (const Sample& sample : samples()) {
        const page::Page page = drawn(sample.plan).front().page;
        std::set<std::string> all;
        for (const TextItem& text : texts(page)) all.insert(text.text);
        const Tiling tiling = tiling_of(sample.plan);
        for (const Tile& tile : tiling.tiles()) EXPECT_TRUE(all.count(tile.name())) << sample.name << tile.name();
        EXPECT_EQ(paths(page, Role::hatch).empty(), tiling.printed() == tiling.tiles().size());
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
