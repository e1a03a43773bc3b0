#include "sheets/templates/tiling.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geom/enters.h"
#include "measure/require.h"
#include "sheets/templates/template_along.h"
#include "sheets/templates/template_search.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

constexpr Length beside_a_tick = 0.02_in;  // a line nearer to a tick all along hides it
/// What sheets of a stepped row share at the least: crosses as near as that hardly hold a sheet from turning.
/// Judgement.
constexpr Length least_shared = 3_in;
/// So far within that height the crosses stand: their arms meet neither header nor check bar.
constexpr Length arm_room = 18_pt;

Length whole_inches(Length room) { return Length::inches(std::max(1.0, std::floor(room.inches() + 1e-9))); }

bool apart(const Rect& a, const Rect& b) {
    return a.high.x < b.low.x || b.high.x < a.low.x || a.high.y < b.low.y || b.high.y < a.low.y;
}

bool enters(const Path& path, const Rect& bounds, const Rect& cell) {
    return !apart(bounds, cell) && geom::enters(path, cell);
}

Rect bounds_of(const std::vector<Path>& drawing) {
    Rect bounds = drawing.front().bounds();
    for (const Path& path : drawing) bounds = geom::united(bounds, path.bounds());
    return bounds;
}

/// Of what the drawing has in a part of the plane that it enters.
Rect bounds_within(const std::vector<Path>& drawing, const Rect& part) {
    std::vector<Path> inside;
    for (const Path& path : drawing)
        for (Path& piece : geom::clip(path, part)) inside.push_back(std::move(piece));
    measure::require(!inside.empty(), "a part between two uprights of a whole drawing holds some of it");
    return bounds_of(inside);
}

/// Columns or rows over a stretch, when one edge stands at `edge`: the first one's number and how many.
std::pair<int, int> cells_over(Length low, Length high, Length edge, Length cell) {
    const int first = static_cast<int>(std::floor((low - edge) / cell + 1e-9));
    const int beyond = static_cast<int>(std::ceil((high - edge) / cell - 1e-9));
    return {first, std::max(1, beyond - first)};
}

/// Of a roll all pages are as long as the drawing shared out among the fewest.
CellSize cut_to_need(CellSize cell, Length drawing) {
    if (!cell.roll) return cell;
    const double pages = std::max(1.0, std::ceil(drawing / cell.width - 1e-9));
    cell.width = std::min(cell.width, whole_inches_over(drawing / pages));
    return cell;
}

/// How far a stretch lies from the nearest line of the grid, at its farther end.
Length off_grid(Length a, Length b, Length edge, Length cell) {
    const Length line = edge + cell * std::round(((a + b) / 2 - edge) / cell);
    return std::max(measure::abs(a - line), measure::abs(b - line));
}

bool hides_a_tick(const Ticks& ticks, Point corner, const CellSize& cell) {
    return std::any_of(ticks.begin(), ticks.end(), [&](const Path& tick) {
        return off_grid(tick.start().x, tick.end().x, corner.x, cell.width) < beside_a_tick ||
               off_grid(tick.start().y, tick.end().y, corner.y, cell.height) < beside_a_tick;
    });
}

/// The place itself, or one a little higher or lower that hides no tick.
Point clear_corner(const GridPlace& place, const Ticks& ticks, const CellSize& cell) {
    for (const double part : {0.0, 0.15, -0.15, 0.3, -0.3, 0.45, -0.45, 0.6, -0.6, 0.75, -0.75, 0.9, -0.9}) {
        const Point corner = place.corner + Point{{}, place.leeway * part};
        if (!hides_a_tick(ticks, corner, cell)) return corner;
    }
    return place.corner;
}

/// The middle of the drawing in the middle of a cell or between two, whichever takes fewer columns, then the other,
/// then a little aside of both.
std::vector<Length> centred_places(const Rect& bounds, Length cell) {
    const Length middle = (bounds.low.x + bounds.high.x) / 2;
    const int columns = static_cast<int>(std::ceil(bounds.width() / cell - 1e-9));
    const Length usual = columns % 2 == 0 ? middle : middle - cell / 2;
    std::vector<Length> places;
    for (const Length aside : {0_in, 0.0625_in, 0.125_in, 0.25_in})
        for (const Length way : {aside, -aside})
            for (const Length at : {usual, usual + cell / 2}) places.push_back(at + way);
    return places;
}

Point best_corner(const std::vector<Path>& drawing, const CellSize& cell, const Ticks& ticks) {
    const GridSearch search(drawing, cell.width, cell.height);
    const std::vector<Length> centred = centred_places(bounds_of(drawing), cell.width);
    const GridPlace best = search.fewest(centred);
    for (const Length x : centred) {
        const GridPlace place = search.at(x);
        if (place.cells != best.cells) continue;
        const Point corner = clear_corner(place, ticks, cell);
        if (!hides_a_tick(ticks, corner, cell)) return corner;
    }
    return clear_corner(best, ticks, cell);
}

/// All but the ticks: these lie between lines that are nearer to each other than a cell is wide, so that no cell has
/// one alone.
std::vector<Path> without(const Ticks& ticks, const std::vector<Path>& drawing) {
    std::vector<Path> rest;
    for (const Path& path : drawing)
        if (std::find(ticks.begin(), ticks.end(), path) == ticks.end()) rest.push_back(path);
    return rest;
}

/// The whole line through both crosses, as far as the window shows it.
Path across(const Joint& joint, const Rect& window) {
    const Point far = (joint.outer - joint.inner) * 100;
    const auto parts = geom::clip(Path::line(joint.inner - far, joint.outer + far), window);
    return parts.empty() ? Path() : parts.front();
}

}  // namespace

CellSize cell_on(Length page_width, Length page_height) {
    return {whole_inches(page_width - beside_cell), whole_inches(page_height - above_and_below_cell),
            page_height > page_width};
}

CellSize cell_on_roll(Length roll_width) {
    return {whole_inches(14400_pt - beside_cell), whole_inches(roll_width - above_and_below_cell), false, true};
}

Length whole_inches_over(Length size) { return Length::inches(std::max(9.0, std::ceil(size.inches() - 1e-9))); }

std::string Tile::name() const {
    if (!in_grid) return std::to_string(column + 1);
    std::string letters;
    for (int n = column; n >= 0; n = n / 26 - 1) letters.insert(letters.begin(), static_cast<char>('A' + n % 26));
    return letters + std::to_string(row + 1);
}

Tiling::Tiling(const std::vector<Path>& drawing, CellSize cell, Length overlap, const Ticks& ticks)
    : cell_(cut_to_need(cell, bounds_of(drawing).width())), overlap_(overlap) {
    cut(drawing, best_corner(without(ticks, drawing), cell_, ticks));
}

Tiling Tiling::with_edge_at(const std::vector<Length>& places, const std::vector<Path>& drawing, CellSize cell,
                            Length overlap, const Ticks& ticks) {
    cell = cut_to_need(cell, places.front() - bounds_of(drawing).low.x);
    const GridSearch search(without(ticks, drawing), cell.width, cell.height);
    std::optional<Tiling> best;
    for (const Length x : places) {
        const GridPlace place = search.at(x);
        // Wherever it stands up and down, a grid with an edge there prints no fewer.
        if (best && static_cast<std::size_t>(place.cells) >= best->printed()) continue;
        Tiling tiling;
        tiling.cell_ = cell;
        tiling.overlap_ = overlap;
        tiling.cut(drawing, clear_corner(place, ticks, cell));
        if (!best || tiling.printed() < best->printed()) best = std::move(tiling);
    }
    return *std::move(best);
}

Tiling Tiling::along(const Path& guide, const std::vector<Path>& drawing, const std::vector<CellSize>& cells,
                     Length overlap, const Ticks& ticks, std::optional<Length> cross_reach) {
    Tiling tiling;
    tiling.overlap_ = overlap;
    tiling.rows_ = 1;
    SheetsAlong sheets = lay_along({guide, drawing, ticks, cross_reach}, cells);
    tiling.cell_ = sheets.cell;
    tiling.tiles_ = std::move(sheets.tiles);
    tiling.joints_ = std::move(sheets.joints);
    tiling.columns_ = static_cast<int>(tiling.tiles_.size());
    tiling.is_band_ = cross_reach.has_value();
    return tiling;
}

std::optional<Tiling> Tiling::stepped(const std::vector<Path>& drawing, CellSize cell, Length overlap) {
    if (cell.roll) return std::nullopt;
    const Rect all = bounds_of(drawing);
    Tiling row;
    row.cell_ = cell;
    row.overlap_ = overlap;
    row.is_band_ = true;
    row.rows_ = 1;
    row.columns_ = std::max(1, static_cast<int>(std::ceil(all.width() / cell.width - 1e-9)));
    const Length left = (all.low.x + all.high.x - cell.width * row.columns_) / 2;
    // Where each may begin: from what its top asks for up to its lowest line.
    std::vector<std::pair<Length, Length>> lows;
    for (int column = 0; column < row.columns_; ++column) {
        const Length from = left + cell.width * column;
        const Rect part =
            bounds_within(drawing, {{from - overlap, all.low.y}, {from + cell.width + overlap, all.high.y}});
        lows.emplace_back(part.high.y - cell.height, part.low.y);
        if (lows.back().first > lows.back().second) return std::nullopt;
        row.tiles_.push_back({column, 0, {{from, {}}, {from + cell.width, {}}}});
    }
    // As little apart as can be.
    const Length highest = std::max_element(lows.begin(), lows.end())->first;
    const Length lowest = std::min_element(lows.begin(), lows.end(), [](const auto& a, const auto& b) {
                              return a.second < b.second;
                          })->second;
    const Length wanted = (highest + lowest) / 2;
    row.level_ = {all.low.y - cell.height, all.high.y + cell.height};
    for (std::size_t i = 0; i < lows.size(); ++i) {
        Rect& own = row.tiles_[i].cell;
        own.low.y = std::clamp(wanted, lows[i].first, lows[i].second);
        own.high.y = own.low.y + cell.height;
        row.level_ = {std::max(row.level_->first, own.low.y), std::min(row.level_->second, own.high.y)};
    }
    row.level_ = {row.level_->first + arm_room, row.level_->second - arm_room};
    if (row.level_->second - row.level_->first < least_shared) return std::nullopt;
    return row;
}

void Tiling::cut(const std::vector<Path>& drawing, Point corner) {
    std::vector<Rect> bounds;
    bounds.reserve(drawing.size());
    for (const Path& path : drawing) bounds.push_back(path.bounds());
    const Rect all = bounds_of(drawing);
    const auto [first_column, columns] = cells_over(all.low.x, all.high.x, corner.x, cell_.width);
    const auto [first_row, rows] = cells_over(all.low.y, all.high.y, corner.y, cell_.height);
    columns_ = columns;
    rows_ = rows;
    const Point top_left{corner.x + cell_.width * first_column, corner.y + cell_.height * (first_row + rows)};
    for (int row = 0; row < rows_; ++row) {
        for (int column = 0; column < columns_; ++column) {
            const Length left = top_left.x + cell_.width * column;
            const Length top = top_left.y - cell_.height * row;
            Tile tile{column, row, {{left, top - cell_.height}, {left + cell_.width, top}}, true};
            for (std::size_t i = 0; i < drawing.size() && tile.blank; ++i)
                tile.blank = !enters(drawing[i], bounds[i], tile.cell);
            tiles_.push_back(tile);
        }
    }
}

std::size_t Tiling::printed() const {
    return static_cast<std::size_t>(
        std::count_if(tiles_.begin(), tiles_.end(), [](const Tile& t) { return !t.blank; }));
}

const Tile* Tiling::printed_at(int column, int row) const {
    if (column < 0 || column >= columns_ || row < 0 || row >= rows_) return nullptr;
    const Tile& tile =
        tiles_[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) + static_cast<std::size_t>(column)];
    return tile.blank ? nullptr : &tile;
}

Rect Tiling::bounds() const {
    Rect all = tiles_.front().outline().bounds();
    for (const Tile& tile : tiles_) all = geom::united(all, tile.outline().bounds());
    return all;
}

Rect Tiling::crossed(const Tile& tile) const {
    if (!level_) return tile.cell;
    return {{tile.cell.low.x, level_->first}, {tile.cell.high.x, level_->second}};
}

std::vector<Point> Tiling::crosses(const Tile& tile) const {
    std::vector<Point> points;
    if (tile.in_grid) {
        const Rect around = crossed(tile);
        const Point mid = geom::middle(around.low, around.high);
        for (const Length x : {around.low.x, mid.x, around.high.x})
            for (const Length y : {around.low.y, mid.y, around.high.y})
                if (x != mid.x || (y != mid.y && !level_)) points.push_back({x, y});
        return points;
    }
    for (const int side : {tile.column - 1, tile.column}) {
        if (side < 0 || side >= columns_ - 1) continue;
        const Joint& joint = joints_[static_cast<std::size_t>(side)];
        for (const Point p : {joint.inner, joint.outer}) points.push_back(geom::turned(p, -tile.turn));
    }
    return points;
}

std::vector<Path> Tiling::joint_lines(const Tile& tile) const {
    Rect w = window(tile);
    const Rect& cell = tile.cell;
    // Beyond the edges of a band there is nothing to cut.
    if (is_band_) w = {{w.low.x, cell.low.y}, {w.high.x, cell.high.y}};
    std::vector<Path> lines;
    if (tile.in_grid) {
        const auto line = [&](int right, int down, Point from, Point to) {
            if (printed_at(tile.column + right, tile.row + down) != nullptr) lines.push_back(Path::line(from, to));
        };
        line(-1, 0, {cell.low.x, w.low.y}, {cell.low.x, w.high.y});
        line(1, 0, {cell.high.x, w.low.y}, {cell.high.x, w.high.y});
        line(0, -1, {w.low.x, cell.high.y}, {w.high.x, cell.high.y});
        line(0, 1, {w.low.x, cell.low.y}, {w.high.x, cell.low.y});
        return lines;
    }
    const std::vector<Point> points = crosses(tile);
    for (std::size_t i = 0; i + 1 < points.size(); i += 2)
        if (Path line = across({points[i], points[i + 1]}, w); !line.empty()) lines.push_back(std::move(line));
    return lines;
}

}  // namespace kerfpacket::sheets
