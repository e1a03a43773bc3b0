#include "sheets/templates/template_ways.h"

#include <algorithm>
#include <cmath>

#include "sheets/layout/furniture.h"
#include "sheets/layout/paper.h"
#include "sheets/templates/template_half.h"

namespace kerfpacket::sheets {
namespace {

/// Steps in which the edge of a half's grid is tried.
constexpr Length half_step = Length::inches(0.25);

/// A page on its side comes first.
std::vector<CellSize> cells_of(const plan::Plan& plan) {
    const Paper paper = paper_for(plan, Use::templates);
    if (paper.roll) return {cell_on_roll(paper.width)};
    return {cell_on(paper.height, paper.width), cell_on(paper.width, paper.height)};
}

/// As wide and high as a page has room for: along a band nothing is told by whole inches.
std::vector<CellSize> band_cells(const plan::Plan& plan, Length band) {
    const Paper paper = paper_for(plan, Use::templates);
    if (paper.roll) return {cell_on_roll(paper.width)};
    constexpr Length header = 72_pt;
    constexpr Length eighth = 0.125_in;
    const Length furniture = header + check_bar_height + 13_pt;
    std::vector<CellSize> cells;
    for (const auto& [width, height] : {std::pair(paper.height, paper.width), std::pair(paper.width, paper.height)})
        if (const Length room = eighth * std::floor((height - furniture) / eighth); room > band)
            cells.push_back({width - beside_cell, room, height > width});
    return cells;
}

/// The tiling with the fewest pages that `lay` makes of these cells.
template <class Lay>
Tiling fewest(const std::vector<CellSize>& cells, Lay lay) {
    Tiling best = lay(cells.front());
    for (std::size_t i = 1; i < cells.size(); ++i)
        if (Tiling other = lay(cells[i]); other.printed() < best.printed()) best = std::move(other);
    return best;
}

Ticks ticks_of(const std::vector<DrawnLine>& lines) {
    Ticks ticks;
    for (const DrawnLine& line : lines)
        if (line.role == Role::tick) ticks.push_back(line.path);
    return ticks;
}

/// The last column reaches beyond the line to flip about as little as it may, or further where that prints fewer cells.
Tiling half_in_grid(const std::vector<Path>& drawing, const CellSize& cell, Length overlap, const Ticks& ticks) {
    std::vector<Length> edges{beyond_flip};
    if (!cell.roll)
        for (Length edge = beyond_flip + half_step; edge < cell.width; edge += half_step) edges.push_back(edge);
    return Tiling::with_edge_at(edges, drawing, cell, overlap, ticks);
}

/// A curve's own band may be wider than a sheet: then each sheet along it holds next to nothing.
bool may_take(job::Sheets wish, const TemplateWays& ways) {
    return wish != job::Sheets::along || ways.along.tiling.printed() <= ways.grid.tiling.printed() * most_along;
}

}  // namespace

job::Sheets better_way(const Way& grid, const Way& along) {
    const bool fewer_along = along.tiling.printed() < grid.tiling.printed();
    const Way& fewer = fewer_along ? along : grid;
    const Way& other = fewer_along ? grid : along;
    const Length off = fewer.off.usual.crown;
    const bool other_is_truer = off > most_at_crown && other.off.usual.crown <= std::max(most_at_crown, off / 2);
    return (other_is_truer ? other : fewer).tiling.way();
}

TemplateWays template_ways(const plan::Plan& plan, const Kit& kit, const TemplateShape& shape,
                           const std::optional<job::Sheets>& wish) {
    const std::vector<CellSize> cells = cells_of(plan);
    const std::vector<Path> drawing = paths_of(shape.lines);
    const Ticks ticks = ticks_of(shape.lines);
    const Length overlap = kit.style.tile_overlap;
    const auto in_grid = [&](const CellSize& cell) {
        return shape.half ? half_in_grid(drawing, cell, overlap, ticks) : Tiling(drawing, cell, overlap, ticks);
    };
    // The crosses of a band stand well inside it.
    const std::optional<Length> cross_reach = shape.band ? std::optional(*shape.band * 0.28) : std::nullopt;
    const auto judged = [&](Tiling tiling) {
        const Joining off = joining(tiling, shape.places, joint_off);
        return Way{std::move(tiling), off};
    };
    const std::vector<CellSize> tall = shape.band ? band_cells(plan, *shape.band) : cells;
    if (tall.empty()) {
        const Way grid = judged(fewest(cells, in_grid));
        return {grid, grid, job::Sheets::grid};
    }
    Tiling grid = fewest(cells, in_grid);
    if (shape.stepped)
        for (const CellSize& cell : band_cells(plan, {}))
            if (auto row = Tiling::stepped(drawing, cell, overlap); row && row->printed() < grid.printed())
                grid = *std::move(row);
    TemplateWays ways{judged(std::move(grid)),
                      judged(Tiling::along(shape.guide, drawing, tall, overlap, ticks, cross_reach))};
    ways.taken = wish && may_take(*wish, ways) ? *wish : better_way(ways.grid, ways.along);
    return ways;
}

}  // namespace kerfpacket::sheets
