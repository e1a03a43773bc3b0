#include "sheets/tiling.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "measure/require.h"

namespace kerfpacket::sheets {
namespace {

Length whole_inches(Length room) { return Length::inches(std::max(1.0, std::floor(room.inches() + 1e-9))); }

/// A drawing as wide as whole cells takes just those, in spite of rounding.
int cells_for(Length size, Length cell) { return std::max(1, static_cast<int>(std::ceil(size / cell - 1e-9))); }

bool apart(const Rect& a, const Rect& b) {
    return a.high.x < b.low.x || b.high.x < a.low.x || a.high.y < b.low.y || b.high.y < a.low.y;
}

bool enters(const Path& path, const Rect& bounds, const Rect& cell) {
    return !apart(bounds, cell) && !geom::clip(path, cell).empty();
}

std::size_t count_printed(const std::vector<Tile>& tiles) {
    return static_cast<std::size_t>(std::count_if(tiles.begin(), tiles.end(), [](const Tile& t) { return !t.blank; }));
}

}  // namespace

CellSize cell_on(Length page_width, Length page_height) {
    return {whole_inches(page_width - beside_cell), whole_inches(page_height - above_and_below_cell)};
}

std::string Tile::name() const {
    std::string letters;
    for (int n = column; n >= 0; n = n / 26 - 1) letters.insert(letters.begin(), static_cast<char>('A' + n % 26));
    return letters + std::to_string(row + 1);
}

Tiling::Tiling(const std::vector<Path>& drawing, CellSize cell, Length overlap) : cell_(cell), overlap_(overlap) {
    measure::require(!drawing.empty(), "a drawing that is tiled has lines");
    Rect bounds = drawing.front().bounds();
    for (const Path& path : drawing) bounds = united(bounds, path.bounds());
    columns_ = cells_for(bounds.width(), cell.width);
    rows_ = cells_for(bounds.height(), cell.height);
    const Length middle = (bounds.low.x + bounds.high.x) / 2;
    const Length left = middle - cell.width * (columns_ / 2.0);
    const Length spare = cell.height * static_cast<double>(rows_) - bounds.height();
    // The middle of the spare height comes first, so that it wins where another place prints no fewer.
    for (const double above : std::array{0.5, 0.375, 0.625, 0.25, 0.75, 0.125, 0.875, 0.0, 1.0}) {
        std::vector<Tile> tiles = cut(drawing, {left, bounds.high.y + spare * above});
        if (tiles_.empty() || count_printed(tiles) < count_printed(tiles_)) tiles_ = std::move(tiles);
    }
}

std::vector<Tile> Tiling::cut(const std::vector<Path>& drawing, Point top_left) const {
    std::vector<Rect> bounds;
    bounds.reserve(drawing.size());
    for (const Path& path : drawing) bounds.push_back(path.bounds());
    std::vector<Tile> tiles;
    for (int row = 0; row < rows_; ++row) {
        for (int column = 0; column < columns_; ++column) {
            const Length left = top_left.x + cell_.width * static_cast<double>(column);
            const Length top = top_left.y - cell_.height * static_cast<double>(row);
            Tile tile{column, row, {{left, top - cell_.height}, {left + cell_.width, top}}, true};
            for (std::size_t i = 0; i < drawing.size() && tile.blank; ++i)
                tile.blank = !enters(drawing[i], bounds[i], tile.cell);
            tiles.push_back(tile);
        }
    }
    return tiles;
}

std::size_t Tiling::printed() const { return count_printed(tiles_); }

const Tile* Tiling::printed_at(int column, int row) const {
    if (column < 0 || column >= columns_ || row < 0 || row >= rows_) return nullptr;
    const Tile& tile =
        tiles_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) + static_cast<std::size_t>(column)];
    return tile.blank ? nullptr : &tile;
}

}  // namespace kerfpacket::sheets
