#pragma once
// Where a grid of cells over a drawing prints the fewest of them: the true minimum over every place it may stand.
//
// Stand the grid's upright edges at x. In each column the drawing then covers some stretches of height; stretches less
// than a cell's height apart touch every row between them, so they count as one, and a stretch from a to b touches
// 1 + floor((b - y) / h) - floor((a - y) / h) rows when the level edges stand at y. The sum over all stretches changes
// only where y passes an end of a stretch (modulo h): the least over all y is read off the sorted ends, exactly.
// As x moves, an end of a stretch either keeps its height (an extremum or an end of a line inside the column) or runs
// along a line on the column's edge. The order of the ends, and with it the least number, changes only where
// an end or a sideways extremum of a line passes a column's edge; where a line on an edge comes level, modulo h, with
// an end or extremum; or where lines on edges come level with each other, that is where the drawing, folded into one
// cell, crosses itself. Between two such places, next to each other, one look in the middle says what holds all the
// way. Ranges of places are looked at whole first: what every place in the range keeps of the drawing in its columns
// takes at least so many cells; a range that cannot do better is passed over. Mostly that settles it before the places
// where the number may change are worked out.
//
// A line counts where it touches a cell's edge or passes exactly through a corner: luck so thin that no printer keeps
// it. The drawing's own outermost edges are excepted: a drawing just as wide or high as whole cells takes just those.

#include <vector>

#include "geom/path.h"

namespace kerfpacket::sheets {

/// A place of the grid: one of its corners, with all others whole cells away.
struct GridPlace {
    geom::Point corner;
    geom::Length leeway;  ///< the corner may stand so much higher or lower with the same cells entered
    int cells = 0;        ///< that a line enters
};

class GridSearch {
public:
    GridSearch(const std::vector<geom::Path>& drawing, geom::Length width, geom::Length height);

    /// The best height for edges that stand at x.
    GridPlace at(geom::Length x) const;
    /// The best place of all. `first` are tried first and win where no other does better.
    GridPlace fewest(const std::vector<geom::Length>& first) const;

private:
    using Length = geom::Length;
    using Point = geom::Point;

    /// A part of a line that goes one way only, sideways and up or down.
    struct Piece {
        geom::Segment segment;
        geom::Rect box;
        Point centre;      ///< of an arc
        double up = 0;     ///< of an arc: 1 over its centre, -1 under it; 0 for a line
        double aside = 0;  ///< the same sideways
        Length radius;
        Length y_at(Length x) const;
        Length x_at(Length y) const;
    };
    struct Stretch {
        int column = 0;
        Length low;
        Length high;
    };
    struct Range {
        std::size_t first = 0;
        std::size_t last = 0;
    };

    void add_pieces(const geom::Path& path);
    void add_turning_points(const geom::Path& path, std::size_t first_piece);
    /// Stretches that every place from x to x + range has, one column after the other.
    std::vector<Stretch> stretches(Length x, Length range) const;
    GridPlace best_height(const std::vector<Stretch>& stretches) const;
    void align(const std::vector<Stretch>& stretches, GridPlace& best) const;
    /// No place takes fewer: a line that is w cells wide and h high enters w + h - 1 at least.
    int least() const;

    /// Whether no place of a range can do better, where that is told by ranges alone.
    bool none_takes_fewer(Length from, Length range, const GridPlace& best) const;
    std::vector<Length> critical_places() const;
    static std::vector<Point> meetings(const Piece& a, const Piece& b, Point by);
    void add_level(Point p, std::vector<Length>& places) const;
    void add_meetings(const Piece& a, const Piece& b, std::vector<Length>& places) const;
    void look(const std::vector<Length>& places, Range range, GridPlace& best) const;

    Length width_;
    Length height_;
    geom::Rect bounds_;
    std::vector<geom::Rect> line_bounds_;
    std::vector<Piece> pieces_;
    std::vector<Point> turning_points_;  ///< ends of lines, and where they turn back sideways or up and down
};

}  // namespace kerfpacket::sheets
