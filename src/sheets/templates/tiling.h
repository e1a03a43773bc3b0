#pragma once
// A full-size drawing cut into cells, one a page: in a grid that prints as few of them as can be, or laid along a
// curve.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "geom/path.h"
#include "job/job.h"

namespace kerfpacket::sheets {

using geom::Angle;
using geom::Path;
using geom::Point;
using geom::Rect;
using measure::Length;

struct CellSize {
    Length width;
    Length height;
    bool upright = false;  ///< on a page that stands upright
    bool roll = false;     ///< the width is the most that a page takes: it is cut to what the drawing needs
};

/// Largest cell, in whole inches, that leaves room on the page for header, check bars, footer and overlaps. A Letter
/// page on its side takes 9 x 6 in.
CellSize cell_on(Length page_width, Length page_height);

/// Cell of a roll: a page is cut to length, at most 14400 pt (what a PDF page may be).
CellSize cell_on_roll(Length roll_width);
/// Up to whole inches, 9 in at the least: the header wants as much.
Length whole_inches_over(Length size);

/// Width of the page without the cell, and its height without the cell.
inline constexpr Length beside_cell = Length::inches(2);
inline constexpr Length above_and_below_cell = Length::inches(2.5);

struct Tile {
    int column = 0;      ///< from 0, from the left; along a curve, from its start
    int row = 0;         ///< from 0, from the top
    Rect cell;           ///< in the drawing turned back by `turn` about its origin
    bool blank = false;  ///< no line of the drawing enters the cell: it is not printed
    bool in_grid = true;
    Angle turn{};  ///< of the sheet in the drawing; 0 in a grid

    /// "B1": columns are lettered, rows numbered. Along a curve "1", "2", "3".
    std::string name() const;
    /// The cell in the drawing.
    Path outline() const { return Path::rectangle(cell).turned(turn); }
};

/// Where two sheets along a curve meet: two crosses, far apart, on the line that both are cut or laid to.
struct Joint {
    Point inner;
    Point outer;
};

/// Lines that a joint must not hide, besides those that decide which cells are printed.
using Ticks = std::vector<Path>;

class Tiling {
public:
    /// The grid that prints the fewest cells of this size. Among those that print as few, one that is centred on the
    /// drawing from side to side, or nearly, with no tick on a line between two cells, comes first. `drawing` has at
    /// least one path, the ticks among them; each window reaches `overlap` beyond its cell.
    Tiling(const std::vector<Path>& drawing, CellSize cell, Length overlap, const Ticks& ticks = {});

    /// A grid one of whose upright lines stands at the first of these places at which the fewest are printed, up and
    /// down where the fewest are. Pages of a roll are cut for the first place.
    static Tiling with_edge_at(const std::vector<Length>& places, const std::vector<Path>& drawing, CellSize cell,
                               Length overlap, const Ticks& ticks = {});
    /// As few sheets as it takes, one after the other, each turned to the chord of its part of the guide, on whichever
    /// of the cells takes fewer.
    /// `cross_reach`: how far the crosses of a joint stand from the guide; else as far as both cells reach.
    static Tiling along(const Path& guide, const std::vector<Path>& drawing, const std::vector<CellSize>& cells,
                        Length overlap, const Ticks& ticks = {}, std::optional<Length> cross_reach = {});

    /// One row of sheets, each as high up as its part of the drawing lies; their crosses stand level all the same, so
    /// that the row joins as one of a grid does. Nothing where a part is higher than a cell, or where too little height
    /// is on all sheets.
    static std::optional<Tiling> stepped(const std::vector<Path>& drawing, CellSize cell, Length overlap);

    job::Sheets way() const { return tiles_.front().in_grid ? job::Sheets::grid : job::Sheets::along; }
    int columns() const { return columns_; }
    int rows() const { return rows_; }
    CellSize cell() const { return cell_; }
    Length overlap() const { return overlap_; }
    /// Row by row from A1, blank ones included.
    const std::vector<Tile>& tiles() const { return tiles_; }
    /// Of sheets along a curve: the first between sheets 1 and 2.
    const std::vector<Joint>& joints() const { return joints_; }
    std::size_t printed() const;
    /// The tile, when the grid has it and it is printed; otherwise nothing.
    const Tile* printed_at(int column, int row) const;
    /// What a page shows: the cell and the overlaps around it.
    Rect window(const Tile& tile) const { return tile.cell.grown(overlap_); }
    /// Of all cells, in the drawing.
    Rect bounds() const;

    /// Where a tile has ringed crosses, in the drawing turned back.
    std::vector<Point> crosses(const Tile& tile) const;
    /// The lines on which others join a tile, in the drawing turned back, across its window.
    std::vector<Path> joint_lines(const Tile& tile) const;

private:
    Tiling() = default;
    void cut(const std::vector<Path>& drawing, Point corner);
    /// What crosses stand around: the cell, or of a stepped row the height that all cells share.
    Rect crossed(const Tile& tile) const;

    CellSize cell_;
    Length overlap_;
    int columns_ = 0;
    int rows_ = 0;
    std::vector<Tile> tiles_;
    std::vector<Joint> joints_;
    bool is_band_ = false;                            ///< its sheets show a band from edge to edge
    std::optional<std::pair<Length, Length>> level_;  ///< of a stepped row: what all of its cells share, low and high
};

}  // namespace kerfpacket::sheets
