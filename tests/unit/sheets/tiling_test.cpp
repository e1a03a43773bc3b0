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

TEST(Tile, columns_are_lettered_and_rows_numbered) {
    EXPECT_EQ((Tile{0, 0, {}, false}).name(), "A1");
    EXPECT_EQ((Tile{25, 2, {}, false}).name(), "Z3");
    EXPECT_EQ((Tile{26, 9, {}, false}).name(), "AA10");
    EXPECT_EQ((Tile{53, 0, {}, false}).name(), "BB1");
}

}  // namespace
}  // namespace kerfpacket::sheets
