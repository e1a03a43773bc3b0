#include "sheets/templates/tiling.h"

#include <gtest/gtest.h>

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

constexpr Length overlap = Length::points(27);

/// An arch with its ticks, as a template has them.
std::vector<Path> arch(Length span, Length rise) {
    const Length radius = Length::mm((span.mm() * span.mm() + 4 * rise.mm() * rise.mm()) / (8 * rise.mm()));
    const double half = std::asin(std::min(1.0, span / 2 / radius));
    const measure::Angle turn = measure::Angle::radians(-2 * half);
    const Path wall = Path::arc({-span / 2, {}}, {span / 2, {}}, turn);
    std::vector<Path> lines{wall, wall.offset_left(4.5_in), wall.offset_left(-0.75_in)};
    for (Length at; at < wall.length(); at += 1.3_in) {
        const geom::Station s = wall.at(at);
        lines.push_back(Path::line(s.point, s.point - s.direction.left() * 0.375_in));
    }
    return lines;
}

const std::vector<std::pair<Length, Length>> arches{
    {58.75_in, 13.625_in}, {36_in, 18_in}, {118_in, 8_in}, {14_in, 5_in}, {97.3_in, 41_in}};

template <class Visit>
void each_point(const std::vector<Path>& drawing, Visit visit) {
    for (const Path& path : drawing)
        for (Length at; at < path.length(); at += 0.07_in) visit(path.at(at).point);
}

TEST(CellOn, a_letter_page_on_its_side_takes_nine_by_six) {
    EXPECT_DOUBLE_EQ(cell_on(11_in, 8.5_in).width.inches(), 9);
    EXPECT_DOUBLE_EQ(cell_on(11_in, 8.5_in).height.inches(), 6);
}

TEST(CellOn, other_media_keep_the_same_room_in_whole_inches) {
    EXPECT_DOUBLE_EQ(cell_on(297_mm, 210_mm).width.inches(), 9);
    EXPECT_DOUBLE_EQ(cell_on(297_mm, 210_mm).height.inches(), 5);
    EXPECT_DOUBLE_EQ(cell_on(17_in, 11_in).width.inches(), 15);
    EXPECT_DOUBLE_EQ(cell_on(17_in, 11_in).height.inches(), 8);
}

TEST(Tiling, every_point_lies_in_a_printed_cell) {
    for (const auto& [span, rise] : arches) {
        const std::vector<Path> drawing = arch(span, rise);
        const Tiling tiling(drawing, {9_in, 6_in}, overlap);
        each_point(drawing, [&](Point p) {
            const bool found = std::any_of(tiling.tiles().begin(), tiling.tiles().end(), [&](const Tile& t) {
                return !t.blank && t.cell.grown(1e-9_mm).contains(p);
            });
            EXPECT_TRUE(found) << p.x.inches() << ", " << p.y.inches();
        });
    }
}

TEST(Tiling, blank_cells_are_blank_and_printed_ones_are_not) {
    for (const auto& [span, rise] : arches) {
        const std::vector<Path> drawing = arch(span, rise);
        const Tiling tiling(drawing, {9_in, 6_in}, overlap);
        std::size_t printed = 0;
        for (const Tile& tile : tiling.tiles()) {
            bool entered = false;
            each_point(drawing, [&](Point p) { entered = entered || tile.cell.grown(-1e-6_mm).contains(p); });
            EXPECT_EQ(entered, !tile.blank) << tile.name();
            if (!tile.blank) ++printed;
        }
        EXPECT_EQ(printed, tiling.printed());
    }
    EXPECT_LT(Tiling(arch(36_in, 18_in), {9_in, 6_in}, overlap).printed(), 20U) << "inside the arch nothing is printed";
}

TEST(Tiling, neighbours_share_three_quarters_of_an_inch) {
    const Tiling tiling(arch(58.75_in, 13.625_in), {9_in, 6_in}, overlap);
    const Rect a = tiling.window(tiling.tiles().at(0));
    const Rect right = tiling.window(tiling.tiles().at(1));
    const Rect below = tiling.window(tiling.tiles().at(static_cast<std::size_t>(tiling.columns())));
    EXPECT_NEAR((a.high.x - right.low.x).inches(), 0.75, 1e-12);
    EXPECT_NEAR((below.high.y - a.low.y).inches(), 0.75, 1e-12);
}

TEST(Tiling, the_middle_stands_where_it_takes_fewer_columns) {
    const auto line = [](Length width) { return std::vector<Path>{Path::line({-width / 2, {}}, {width / 2, {}})}; };
    for (const auto& [width, columns] :
         std::vector<std::pair<Length, int>>{{5_in, 1}, {9_in, 1}, {9.1_in, 2}, {18_in, 2}, {20_in, 3}, {28_in, 4}}) {
        const Tiling tiling(line(width), {9_in, 6_in}, overlap);
        EXPECT_EQ(tiling.columns(), columns) << width.inches();
        EXPECT_NEAR((tiling.bounds().low.x + tiling.bounds().high.x).mm(), 0, 1e-9);
    }
}

TEST(Tiling, stands_where_fewest_are_printed) {
    // Two long lines half an inch apart: with the spare height shared above and below, a joint would part them.
    const std::vector<Path> drawing{Path::line({-20_in, 3_in}, {20_in, 3_in}),
                                    Path::line({-20_in, 3.5_in}, {20_in, 3.5_in}), Path::line({{}, {}}, {{}, 6.5_in})};
    const Tiling tiling(drawing, {9_in, 6_in}, overlap);
    EXPECT_EQ(tiling.columns(), 5);
    EXPECT_EQ(tiling.rows(), 2);
    EXPECT_EQ(tiling.printed(), 6U);
}

TEST(Tiling, finds_printed_tiles_only) {
    const Tiling tiling(arch(36_in, 18_in), {9_in, 6_in}, overlap);
    EXPECT_EQ(tiling.printed_at(-1, 0), nullptr);
    EXPECT_EQ(tiling.printed_at(tiling.columns(), 0), nullptr);
    EXPECT_EQ(tiling.printed_at(0, tiling.rows()), nullptr);
    for (const Tile& tile : tiling.tiles())
        EXPECT_EQ(tiling.printed_at(tile.column, tile.row), tile.blank ? nullptr : &tile);
}

/// A casing segment, its chord level.
std::vector<Path> segment(Length chord, Length rise, Length width) {
    const std::vector<Path> whole = arch(chord, rise);
    const Path inside = whole.front();
    const Path outside = inside.offset_left(width);
    return {inside, outside, Path::line(inside.start(), outside.start()), Path::line(inside.end(), outside.end())};
}

TEST(Tiling, a_stepped_row_shows_the_whole_of_a_segment_in_fewer_sheets) {
    int fewer = 0;
    for (const auto& [chord, rise] : std::vector<std::pair<Length, Length>>{
             {33_in, 3.6_in}, {26_in, 3.2_in}, {17_in, 2_in}, {35_in, 2_in}, {44_in, 4_in}}) {
        const std::vector<Path> drawing = segment(chord, rise, 3.5_in);
        const CellSize cell{9_in, 6.5_in};
        const auto row = Tiling::stepped(drawing, cell, overlap);
        ASSERT_TRUE(row);
        EXPECT_EQ(row->printed(), static_cast<std::size_t>(row->columns()));
        fewer += row->printed() < Tiling(drawing, {9_in, 6_in}, overlap).printed() ? 1 : 0;
        each_point(drawing, [&](Point p) {
            for (const Tile& tile : row->tiles()) {
                const Rect window = row->window(tile);
                if (p.x <= window.low.x || p.x >= window.high.x) continue;
                EXPECT_TRUE(p.y >= tile.cell.low.y && p.y <= tile.cell.high.y) << tile.name();
            }
        });
    }
    EXPECT_GE(fewer, 2);
}

TEST(Tiling, crosses_of_a_stepped_row_are_shared_and_stand_level) {
    const auto row = Tiling::stepped(segment(33_in, 3.6_in, 3.5_in), {9_in, 6.5_in}, overlap);
    ASSERT_TRUE(row);
    ASSERT_EQ(row->columns(), 4);
    EXPECT_NE(row->tiles()[0].cell.low.y, row->tiles()[1].cell.low.y) << "stepped, or there is nothing to see";
    for (int i = 0; i < 4; ++i) {
        const Tile& tile = row->tiles()[static_cast<std::size_t>(i)];
        const std::vector<Point> crosses = row->crosses(tile);
        ASSERT_EQ(crosses.size(), 6U);
        for (std::size_t k = 0; k < crosses.size(); ++k) {
            const Point cross = crosses[k];
            EXPECT_EQ(cross.y, row->crosses(row->tiles().front())[k].y) << "a straight edge lies along them";
            EXPECT_TRUE(cross.x == tile.cell.low.x || cross.x == tile.cell.high.x);
            // Their arms, 16 pt long, stay on the sheet.
            EXPECT_GE(cross.y - tile.cell.low.y, 16_pt);
            EXPECT_GE(tile.cell.high.y - cross.y, 16_pt);
        }
        if (i == 0) continue;
        const std::vector<Point> before = row->crosses(row->tiles()[static_cast<std::size_t>(i) - 1]);
        EXPECT_NEAR((crosses.front().x - before.back().x).mm(), 0, 1e-9);
    }
}

TEST(Tiling, what_is_too_high_for_a_sheet_or_shares_too_little_has_no_stepped_row) {
    EXPECT_FALSE(Tiling::stepped(segment(33_in, 10_in, 3.5_in), {9_in, 6.5_in}, overlap));
    // A straight band that rises 5 in a sheet: each sheet has room for its own part, but all have none in common.
    const std::vector<Path> steep{Path::line({}, {36_in, 18_in}), Path::line({{}, 1_in}, {36_in, 19_in})};
    EXPECT_FALSE(Tiling::stepped(steep, {9_in, 6.5_in}, overlap));
    EXPECT_TRUE(Tiling::stepped({Path::line({}, {36_in, 3_in})}, {9_in, 6.5_in}, overlap));
}

TEST(Tile, columns_are_lettered_and_rows_numbered) {
    EXPECT_EQ((Tile{0, 0, {}, false}).name(), "A1");
    EXPECT_EQ((Tile{25, 2, {}, false}).name(), "Z3");
    EXPECT_EQ((Tile{26, 9, {}, false}).name(), "AA10");
    EXPECT_EQ((Tile{53, 0, {}, false}).name(), "BB1");
}

}  // namespace
}  // namespace kerfpacket::sheets
