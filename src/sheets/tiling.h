#pragma once
// A full-size drawing cut into cells, one a page, in a grid that prints as few of them as it can.

#include <string>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::sheets {

using geom::Path;
using geom::Point;
using geom::Rect;
using measure::Length;

struct CellSize {
    Length width;
    Length height;
};

/// Largest cell, in whole inches, that leaves room on the page for header, check bars, footer and overlaps. A Letter
/// page on its side takes 9 x 6 in.
CellSize cell_on(Length page_width, Length page_height);

/// Width of the page without the cell, and its height without the cell.
inline constexpr Length beside_cell = Length::inches(2);
inline constexpr Length above_and_below_cell = Length::inches(2.5);

struct Tile {
    int column = 0;      ///< from 0, from the left
    int row = 0;         ///< from 0, from the top
    Rect cell;           ///< in the drawing
    bool blank = false;  ///< no line of the drawing enters the cell: it is not printed

    /// "B1": columns are lettered, rows numbered.
    std::string name() const;
};

/// The grid is centred on the drawing from side to side, the middle in a cell or between two, whichever takes fewer
/// columns. Up and down it stands where the fewest cells are printed.
class Tiling {
public:
    /// `drawing` has at least one path; each window reaches `overlap` beyond its cell.
    Tiling(const std::vector<Path>& drawing, CellSize cell, Length overlap);

    int columns() const { return columns_; }
    int rows() const { return rows_; }
    CellSize cell() const { return cell_; }
    Length overlap() const { return overlap_; }
    /// Row by row from A1, blank ones included.
    const std::vector<Tile>& tiles() const { return tiles_; }
    std::size_t printed() const;
    /// The tile, when the grid has it and it is printed; otherwise nothing.
    const Tile* printed_at(int column, int row) const;
    /// What a page shows: the cell and the overlaps around it.
    Rect window(const Tile& tile) const { return tile.cell.grown(overlap_); }
    Rect bounds() const { return geom::united(tiles_.front().cell, tiles_.back().cell); }

private:
    std::vector<Tile> cut(const std::vector<Path>& drawing, Point top_left) const;

    CellSize cell_;
    Length overlap_;
    int columns_ = 0;
    int rows_ = 0;
    std::vector<Tile> tiles_;
};

}  // namespace kerfpacket::sheets
