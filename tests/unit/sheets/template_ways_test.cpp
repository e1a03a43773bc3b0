// Templates in a grid, along the curve, by halves and on rolls.

#include "sheets/templates/template_ways.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <iostream>
#include <random>
#include <set>

#include <gtest/gtest.h>

#include "../../support/boxes.h"
#include "sheets/layout/furniture.h"
#include "sheets/templates/arch_drawing.h"
#include "sheets/templates/arch_template.h"
#include "sheets/templates/template_half.h"
#include "sheets/templates/template_tile.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;
using page::Role;

constexpr Length overlap = Length::points(27);
constexpr CellSize letter{9_in, 6_in};

struct Head {
    const char* name;
    Length span;
    Length rise;
};
const std::vector<Head> heads{
    {"low", 58.75_in, 13.625_in}, {"half round", 36_in, 18_in}, {"flat", 118_in, 8_in}, {"thirty feet", 360_in, 60_in}};

job::Opening cased(const Head& head, job::TemplateWish wish = {}) {
    job::Opening opening = lantern_court();
    if (head.rise * 2 == head.span) opening = semicircle(head.span);
    opening.span.value = head.span;
    opening.rise.value = head.rise;
    opening.casing =
        job::Casing{at_line(3.5_in, 51), at_line(0.1875_in, 52), job::WallSide::room, {}, at_line(9.25_in, 54)};
    opening.wish = wish;
    return opening;
}

plan::Plan on_roll(const job::Opening& opening, Length width) {
    job::Job job = job_of(opening);
    job.printer.media = job::find_media("na_letter_8.5x11in").value();
    job.printer.templates = job::Media{"roll", "roll", width, Length::points(14400), true};
    auto plan = plan::make_plan(job);
    if (!plan) throw std::runtime_error(plan.error().front().message);
    return *plan;
}

TemplateWays ways_of(const plan::Plan& plan) {
    const ArchOpening arch(plan, plan.pieces.front());
    return template_ways(plan, kit(), arch_shape(arch, kit().style), arch.piece().template_wish.sheets);
}

/// All pages of the template with header and footer.
Drafts drawn(const plan::Plan& plan) {
    Drafts drafts;
    add_template(drafts, plan, plan.pieces.front(), kit());
    for (std::size_t i = 0; i < drafts.size(); ++i) add_furniture(drafts[i], plan, kit(), i + 1, drafts.size());
    return drafts;
}

std::set<std::string> words_on(const Drafts& drafts) {
    std::set<std::string> all;
    for (const Draft& draft : drafts)
        for (const page::TextItem& text : texts(draft.page)) all.insert(text.text);
    return all;
}

const std::vector<job::TemplateWish>& wishes() {
    static const std::vector<job::TemplateWish> all{{job::Sheets::grid, false, {}},
                                                    {job::Sheets::along, false, {}},
                                                    {job::Sheets::grid, true, {}},
                                                    {job::Sheets::along, true, {}}};
    return all;
}

void expect_clean(const Drafts& drafts, const std::string& what) {
    for (const Draft& draft : drafts)
        for (const std::string& fault : text_faults(draft.page)) ADD_FAILURE() << what << draft.title << ": " << fault;
}

TEST(TemplateWays, no_words_in_each_others_way_on_sheets_or_rolls) {
    for (const Head& head : heads) {
        for (const job::TemplateWish& wish : wishes()) {
            expect_clean(drawn(planned(job_of(cased(head, wish)))), std::string(head.name) + " on Letter, ");
            expect_clean(drawn(on_roll(cased(head, wish), 36_in)), std::string(head.name) + " on a 36 in roll, ");
            expect_clean(drawn(on_roll(cased(head, wish), 24_in)), std::string(head.name) + " on a 24 in roll, ");
        }
    }
}

/// Every place of the edge in tenths of an inch, tried by the tiling itself.
TEST(TemplateWays, a_half_takes_the_edge_beyond_its_center_line_that_prints_fewest) {
    std::size_t fewer = 0;
    for (const Head& head : heads) {
        const plan::Plan plan = planned(job_of(cased(head, {job::Sheets::grid, true, {}})));
        const ArchOpening arch(plan, plan.pieces.front());
        std::vector<Path> lines;
        for (const DrawnLine& line : arch_shape(arch, kit().style).lines) lines.push_back(line.path);
        const auto with_edge_at = [&](Length edge) {
            return std::min(
                Tiling::with_edge_at({edge}, lines, cell_on(11_in, 8.5_in), kit().style.tile_overlap).printed(),
                Tiling::with_edge_at({edge}, lines, cell_on(8.5_in, 11_in), kit().style.tile_overlap).printed());
        };
        const std::size_t nearest = with_edge_at(beyond_flip);
        std::size_t fewest = nearest;
        for (Length edge = beyond_flip; edge < 9_in; edge += 0.1_in) fewest = std::min(fewest, with_edge_at(edge));
        const Tiling tiling = ways_of(plan).grid.tiling;
        EXPECT_LE(tiling.printed(), nearest) << head.name;
        EXPECT_LE(tiling.printed(), fewest + 1) << head.name;
        EXPECT_GE(tiling.bounds().high.x, beyond_flip - 1e-6_mm) << head.name;
        fewer += tiling.printed() < nearest ? 1U : 0U;
    }
    EXPECT_GE(fewer, 1U);
}

TEST(TemplateWays, a_map_of_hundreds_of_tiles_names_columns_and_rows) {
    const job::TemplateWish grid{job::Sheets::grid, false, {}};
    const Drafts drafts = drawn(planned(job_of(cased({"wide", 380_in, 190_in}, grid))));
    expect_clean(drafts, "hundreds, ");
    std::set<std::string> all;
    for (const page::TextItem& text : texts(drafts.front().page)) all.insert(text.text);
    EXPECT_TRUE(all.count("A"));
    EXPECT_TRUE(all.count("1"));
    EXPECT_FALSE(all.count("A1"));
    EXPECT_GT(drafts.size(), 100U);
}

TEST(TemplateWays, one_sheet_says_nothing_of_joining) {
    const auto compares = [](const Drafts& drafts) {
        const std::set<std::string> all = words_on(drafts);
        return std::any_of(all.begin(), all.end(), [](const std::string& text) {
            return text.find("crown usually") != std::string::npos || text.find("1 tiles") != std::string::npos;
        });
    };
    const job::Opening low = cased(heads.front());
    EXPECT_TRUE(compares(drawn(planned(job_of(low)))));
    const plan::Plan roll = on_roll(low, 24_in);
    EXPECT_EQ(ways_of(roll).tiling().printed(), 1U);
    EXPECT_FALSE(compares(drawn(roll)));
}

TEST(SheetsAlong, every_line_is_shown_and_each_joint_on_both_sheets) {
    for (const Head& head : heads) {
        for (const bool half : {false, true}) {
            const plan::Plan plan = planned(job_of(cased(head, {job::Sheets::along, half, {}})));
            const ArchOpening arch(plan, plan.pieces.front());
            const TemplateShape shape = arch_shape(arch, kit().style);
            const Tiling tiling = ways_of(plan).along.tiling;
            for (const DrawnLine& line : shape.lines) {
                for (Length at; at <= line.path.length(); at += 0.1_in) {
                    const Point p = line.path.at(at).point;
                    EXPECT_TRUE(std::any_of(tiling.tiles().begin(), tiling.tiles().end(),
                                            [&](const Tile& tile) {
                                                return tile.cell.grown(0.05_in).contains(geom::turned(p, -tile.turn));
                                            }))
                        << head.name << " at " << p.x.inches() << ", " << p.y.inches();
                }
            }
            ASSERT_EQ(tiling.joints().size() + 1, tiling.tiles().size());
            for (std::size_t i = 0; i < tiling.joints().size(); ++i) {
                const Joint& joint = tiling.joints()[i];
                // As far apart as the band is wide at least.
                EXPECT_GE(geom::distance(joint.inner, joint.outer), 3.9_in) << head.name;
                for (const Point p : {joint.inner, joint.outer})
                    for (const std::size_t sheet : {i, i + 1}) {
                        const Tile& tile = tiling.tiles()[sheet];
                        EXPECT_TRUE(tile.cell.grown(1e-6_mm).contains(geom::turned(p, -tile.turn))) << head.name;
                    }
            }
        }
    }
}

TEST(SheetsAlong, each_is_turned_to_its_part_of_the_curve) {
    const Tiling tiling = ways_of(planned(job_of(cased(heads[1], {job::Sheets::along, false, {}})))).tiling();
    // Half round: from nearly upright at the left spring to nearly as steep downward at the right one.
    EXPECT_GT(tiling.tiles().front().turn.degrees(), 60);
    EXPECT_LT(tiling.tiles().back().turn.degrees(), -60);
    for (std::size_t i = 1; i < tiling.tiles().size(); ++i)
        EXPECT_LT(tiling.tiles()[i].turn, tiling.tiles()[i - 1].turn);
}

TEST(SheetsAlong, say_their_numbers_turns_and_crosses) {
    const auto all = words_on(drawn(planned(job_of(cased(heads[0], {job::Sheets::along, false, {}})))));
    for (const char* words : {"1", "2", "1|2 inside", "1|2 outside", "SPRING LINE", "CENTER LINE"})
        EXPECT_TRUE(all.count(words)) << words;
    EXPECT_TRUE(std::any_of(all.begin(), all.end(), [](const std::string& s) {
        return s.rfind("turned ", 0) == 0 && s.find(" degrees to the left") != std::string::npos;
    }));
}

/// Whether a dotted line lies on a tick: both ends of the tick beside the same stretch of it.
bool hides(const Path& dotted, const Path& tick) {
    const Point a = dotted.start();
    const geom::Direction d = dotted.segments().front().start_direction();
    const auto beside = [&](Point p) {
        const Point from = p - a;
        const Length along = from.x * d.x + from.y * d.y;
        const Length off = measure::abs(from.y * d.x - from.x * d.y);
        return off < 1_pt && along > -1_pt && along < dotted.length() + 1_pt;
    };
    return beside(tick.start()) && beside(tick.end());
}

TEST(Joints, hide_no_tick_and_run_through_no_number) {
    std::size_t dotted_lines = 0;
    for (const Head& head : heads) {
        for (const job::TemplateWish& wish : wishes()) {
            for (const Draft& draft : drawn(planned(job_of(cased(head, wish))))) {
                const auto ticks = paths(draft.page, Role::tick);
                for (const page::PathItem& line : paths(draft.page, Role::registration)) {
                    if (line.dash != page::Dash::dotted) continue;
                    ++dotted_lines;
                    for (const page::PathItem& tick : ticks)
                        EXPECT_FALSE(hides(line.path, tick.path)) << head.name << ", " << draft.title;
                    for (const page::TextItem& text : texts(draft.page))
                        if (text.role == Role::numeral) {
                            EXPECT_FALSE(crosses(line.path, text)) << head.name << ", " << draft.title << text.text;
                        }
                }
            }
        }
    }
    EXPECT_GT(dotted_lines, 300U);
}

TEST(Half, stops_at_the_centre_line_three_quarters_inside_the_last_cell_or_more) {
    for (const Head& head : heads) {
        const plan::Plan plan = planned(job_of(cased(head, {job::Sheets::grid, true, {}})));
        const Tiling tiling = ways_of(plan).tiling();
        EXPECT_GE(tiling.bounds().high.x.inches(), 0.75 - 1e-9) << head.name;
        EXPECT_LT(tiling.bounds().high.x.inches(), 9) << head.name;
        const ArchOpening arch(plan, plan.pieces.front());
        page::Page scratch;
        const TemplateDrawing drawing = arch_drawing(Pen(scratch, kit()), arch, Tape(plan.header.units), tiling);
        for (const DrawnLine& line : drawing.lines) {
            if (line.role == Role::hatch) EXPECT_GT(line.path.bounds().low.x, Length()) << head.name;
            else EXPECT_LT(line.path.bounds().high.x, 1e-6_mm) << head.name;
        }
        ASSERT_EQ(drawing.flip_crosses.size(), 2U);
        for (const Point p : drawing.flip_crosses) EXPECT_EQ(p.x, Length());
        EXPECT_GT(geom::distance(drawing.flip_crosses[0], drawing.flip_crosses[1]), 4_in) << head.name;
        const auto all = words_on(drawn(plan));
        // Beside the line in two words where a casing leaves no room for the sentence.
        EXPECT_TRUE(all.count("FLIP HERE about the center line") || all.count("FLIP HERE")) << head.name;
        EXPECT_TRUE(all.count("TOP   HALF: FLIP about the center line")) << head.name;
        EXPECT_LT(tiling.printed(), ways_of(planned(job_of(cased(head)))).grid.tiling.printed()) << head.name;
    }
}

TEST(Roll, a_page_is_as_high_as_the_roll_and_as_long_as_the_drawing_needs) {
    for (const Length width : {8.5_in, 24_in, 36_in}) {
        for (const Head& head : heads) {
            const plan::Plan plan = on_roll(cased(head), width);
            for (const Draft& draft : drawn(plan)) {
                if (draft.scale != Scale::full) continue;
                EXPECT_NEAR(draft.page.height.inches(), width.inches(), 1e-9);
                EXPECT_LE(draft.page.width.points(), 14400 + 1e-9);
            }
        }
    }
    // 58-3/4 in with casing: one page on a 24 in roll, little longer than the template.
    const Drafts low = drawn(on_roll(cased(heads[0]), 24_in));
    ASSERT_EQ(low.size(), 2U);
    EXPECT_LT(low.back().page.width, 70_in);
    // Thirty feet on a 36 in roll: 200 in pages, two rows of two at the most.
    const Drafts wide = drawn(on_roll(cased(heads[3]), 36_in));
    EXPECT_LE(wide.size(), 5U);
    EXPECT_GE(wide.size(), 3U);
}

// A joined template simulated in the plainest way: sheets as rigid pieces, laid one after the other.

struct Placed {
    Point shift;
    double turn = 0;  ///< radians, about the origin, before the shift
};

Point moved(const Placed& by, Point p) {
    const double c = std::cos(by.turn);
    const double s = std::sin(by.turn);
    return {p.x * c - p.y * s + by.shift.x, p.x * s + p.y * c + by.shift.y};
}

class Assembly {
public:
    Assembly(const Tiling& tiling, const Landmarks& places, Length error)
        : tiling_(tiling), places_(places), error_(error) {}

    /// How far crown and last tick come to lie from where they belong, when the first tick's sheet is true.
    std::pair<Length, Length> run(std::mt19937& random) const {
        const std::vector<Placed> sheets = tiling_.way() == job::Sheets::along ? chain(random) : grid(random);
        const auto off = [&](Point p) { return geom::distance(moved(sheets[sheet_of(p)], p), p); };
        return {off(places_.crown), off(places_.last)};
    }

    std::size_t sheet_of(Point p) const {
        for (std::size_t i = 0; i < tiling_.tiles().size(); ++i) {
            const Tile& tile = tiling_.tiles()[i];
            if (!tile.blank && tile.cell.grown(1e-6_mm).contains(geom::turned(p, -tile.turn))) return i;
        }
        throw std::runtime_error("no sheet shows the place");
    }

private:
    Point random_error(std::mt19937& random) const {
        const double angle = std::uniform_real_distribution<double>(0, 2 * measure::Angle::pi)(random);
        return geom::Direction::at(measure::Angle::radians(angle)) * error_;
    }

    /// Both crosses of each joint miss theirs, each its own way; the sheet is laid midway between.
    std::vector<Placed> chain(std::mt19937& random) const {
        std::vector<Placed> sheets(1);
        for (const Joint& joint : tiling_.joints()) {
            const Placed& before = sheets.back();
            const Point a = moved(before, joint.inner) + random_error(random);
            const Point b = moved(before, joint.outer) + random_error(random);
            const double turn =
                geom::direction(a, b).angle().radians() - geom::direction(joint.inner, joint.outer).angle().radians();
            const Placed turned{{}, turn};
            sheets.push_back({geom::middle(a, b) - moved(turned, geom::middle(joint.inner, joint.outer)), turn});
        }
        return sheets;
    }

    /// Each tile is laid on a neighbour that lies already, shifted; a straight edge keeps it from turning.
    std::vector<Placed> grid(std::mt19937& random) const {
        const auto& tiles = tiling_.tiles();
        std::vector<Placed> sheets(tiles.size());
        std::vector<bool> laid(tiles.size());
        std::deque<std::size_t> next{sheet_of(places_.first)};
        laid[next.front()] = true;
        while (!next.empty()) {
            const std::size_t here = next.front();
            next.pop_front();
            for (std::size_t i = 0; i < tiles.size(); ++i) {
                const int apart =
                    std::abs(tiles[i].column - tiles[here].column) + std::abs(tiles[i].row - tiles[here].row);
                if (apart != 1 || laid[i] || tiles[i].blank) continue;
                laid[i] = true;
                sheets[i].shift = sheets[here].shift + random_error(random);
                next.push_back(i);
            }
        }
        return sheets;
    }

    const Tiling& tiling_;
    const Landmarks& places_;
    Length error_;
};

struct Told {
    Length rms;
    Length at_95;
    Length most;
};

Told told(std::vector<Length> off) {
    std::sort(off.begin(), off.end());
    double squares = 0;
    for (const Length l : off) squares += l.mm() * l.mm();
    return {Length::mm(std::sqrt(squares / static_cast<double>(off.size()))), off[off.size() * 95 / 100], off.back()};
}

TEST(Joining, agrees_with_a_thousand_assemblies) {
    const Length error = 0.015625_in;
    for (const Head& head : heads) {
        const plan::Plan plan = planned(job_of(cased(head)));
        const TemplateWays ways = ways_of(plan);
        const TemplateShape shape = arch_shape(ArchOpening(plan, plan.pieces.front()), kit().style);
        for (const Way* way : {&ways.grid, &ways.along}) {
            const bool along = way == &ways.along;
            const Joining closed = joining(way->tiling, shape.places, error);
            const Assembly assembly(way->tiling, shape.places, error);
            std::mt19937 random(1812);
            std::vector<Length> crown;
            std::vector<Length> last;
            for (int i = 0; i < 1000; ++i) {
                const auto [at_crown, at_last] = assembly.run(random);
                crown.push_back(at_crown);
                last.push_back(at_last);
            }
            const Told c = told(crown);
            const Told l = told(last);
            std::cout << "[ " << head.name << (along ? ", along: " : ", grid: ") << way->tiling.printed()
                      << " sheets ] 95 % error at the crown " << measure::fixed(c.at_95.inches(), 3)
                      << " in, at the last tick " << measure::fixed(l.at_95.inches(), 3) << " in; closed form crown "
                      << measure::fixed(closed.usual.crown.inches(), 3) << " in, last "
                      << measure::fixed(closed.usual.last_tick.inches(), 3) << " in\n";
            std::string name = std::string(head.name) + (along ? "_along" : "_grid");
            std::replace(name.begin(), name.end(), ' ', '_');
            RecordProperty(name + "_crown_95", measure::fixed(c.at_95.inches(), 4));
            RecordProperty(name + "_last_95", measure::fixed(l.at_95.inches(), 4));
            // The middle of two crosses is truer than one: the closed form takes the shift of one, so it is the larger.
            EXPECT_LT(c.rms, closed.usual.crown * 1.06) << name;
            EXPECT_LT(l.rms, closed.usual.last_tick * 1.06) << name;
            EXPECT_GT(c.rms, closed.usual.crown * (along ? 0.7 : 0.94)) << name;
            EXPECT_GT(l.rms, closed.usual.last_tick * (along ? 0.7 : 0.94)) << name;
            EXPECT_LE(c.most, closed.worst.crown * (along ? 1.42 : 1.001)) << name;
            EXPECT_LE(l.most, closed.worst.last_tick * (along ? 1.42 : 1.001)) << name;
        }
    }
}

TEST(Joining, of_three_sheets_by_hand) {
    // Three sheets in a row, joints at 9 and 18 in with crosses 6 in apart; the place 18 + 4 in along.
    const std::vector<Path> line{Path::line({}, {27_in, {}})};
    const Tiling grid(line, letter, overlap);
    ASSERT_EQ(grid.printed(), 3U);
    const Landmarks places{{}, {22_in, {}}, {22_in, {}}};
    const Joining in_grid = joining(grid, places, 0.03125_in);
    EXPECT_NEAR(in_grid.worst.crown.inches(), 2.0 / 32, 1e-9);
    EXPECT_NEAR(in_grid.usual.crown.inches(), std::sqrt(2.0) / 32, 1e-9);
    const Tiling along = Tiling::along(line.front(), line, {letter}, overlap);
    ASSERT_EQ(along.printed(), 4U) << "a little is kept free at the ends of each cell";
    double worst = 0;
    double squares = 0;
    for (const Joint& joint : along.joints()) {
        const double lever = 22 - joint.inner.x.inches();
        if (lever < 0) continue;
        const double turned = lever / geom::distance(joint.inner, joint.outer).inches() / 32;
        worst += 1.0 / 32 + turned;
        squares += 1.0 / 1024 + turned * turned;
    }
    const Joining off = joining(along, places, 0.03125_in);
    EXPECT_NEAR(off.worst.crown.inches(), worst, 1e-6);
    EXPECT_NEAR(off.usual.crown.inches(), std::sqrt(squares), 1e-6);
}

TEST(BetterWay, is_the_one_with_fewer_sheets_unless_its_crown_is_off_and_the_others_is_not) {
    const std::vector<Path> slope{Path::line({}, {20_in, 10_in})};
    const Tiling grid(slope, letter, overlap);
    const Tiling along = Tiling::along(slope.front(), slope, {letter}, overlap);
    ASSERT_LT(along.printed(), grid.printed());
    const auto off = [](Length crown) { return Joining{{crown, crown}, {crown, crown}}; };
    using job::Sheets;
    EXPECT_EQ(better_way({grid, off(0.05_in)}, {along, off(0.06_in)}), Sheets::along);
    EXPECT_EQ(better_way({grid, off(0.05_in)}, {along, off(0.07_in)}), Sheets::grid);
    EXPECT_EQ(better_way({grid, off(0.07_in)}, {along, off(0.13_in)}), Sheets::along) << "both are off alike";
    EXPECT_EQ(better_way({grid, off(0.07_in)}, {along, off(0.2_in)}), Sheets::grid) << "along is much worse";
    EXPECT_EQ(better_way({grid, off(0.07_in)}, {grid, off(0.2_in)}), Sheets::grid) << "as many: the grid";
}

TEST(TemplateWays, the_jobs_wish_wins_and_the_map_says_what_each_way_takes) {
    for (const Head& head : heads) {
        const TemplateWays free = ways_of(planned(job_of(cased(head))));
        EXPECT_EQ(free.taken, better_way(free.grid, free.along)) << head.name;
        for (const job::Sheets wish : {job::Sheets::grid, job::Sheets::along}) {
            const plan::Plan plan = planned(job_of(cased(head, {wish, false, {}})));
            const TemplateWays ways = ways_of(plan);
            EXPECT_EQ(ways.taken, wish);
            const Drafts drafts = drawn(plan);
            EXPECT_EQ(drafts.size(), ways.tiling().printed() + 1);
            std::string said;
            for (const page::TextItem& text : texts(drafts.front().page)) said += text.text + " ";
            for (const Way* way : {&ways.grid, &ways.along})
                EXPECT_NE(said.find(": " + std::to_string(way->tiling.printed()) + " "), std::string::npos) << said;
            EXPECT_NE(said.find(measure::fixed(ways.along.off.usual.crown.inches(), 2) + " in"), std::string::npos);
        }
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
