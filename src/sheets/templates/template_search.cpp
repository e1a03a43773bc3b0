#include "sheets/templates/template_search.h"

#include <algorithm>
#include <cmath>

#include "measure/require.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

using geom::Length;
using geom::Path;
using geom::Point;
using geom::Rect;
using geom::Segment;

constexpr Length thin = 1e-6_mm;  // faces, and differences between places, that are less do not count

int floor_of(double value) { return static_cast<int>(std::floor(value)); }
Length modulo(Length a, Length by) { return a - by * std::floor(a / by); }
bool whole(double cells) { return cells > 0.5 && std::abs(cells - std::round(cells)) < 1e-9; }
int cells_over(Length size, Length cell) { return std::max(1, static_cast<int>(std::ceil(size / cell - 1e-9))); }
double sign(Length a) { return a > thin ? 1 : a < -thin ? -1 : 0; }

}  // namespace

Length GridSearch::Piece::y_at(Length x) const {
    if (up == 0) {
        const Length run = segment.to.x - segment.from.x;
        return segment.from.y + (segment.to.y - segment.from.y) * std::clamp((x - segment.from.x) / run, 0.0, 1.0);
    }
    const double part = (x - centre.x) / radius;
    return std::clamp(centre.y + radius * (up * std::sqrt(std::max(0.0, 1 - part * part))), box.low.y, box.high.y);
}

Length GridSearch::Piece::x_at(Length y) const {
    if (up == 0) {
        const Length run = segment.to.y - segment.from.y;
        return segment.from.x + (segment.to.x - segment.from.x) * std::clamp((y - segment.from.y) / run, 0.0, 1.0);
    }
    const double part = (y - centre.y) / radius;
    return std::clamp(centre.x + radius * (aside * std::sqrt(std::max(0.0, 1 - part * part))), box.low.x, box.high.x);
}

GridSearch::GridSearch(const std::vector<Path>& drawing, Length width, Length height) : width_(width), height_(height) {
    measure::require(!drawing.empty(), "a drawing that is tiled has lines");
    bounds_ = drawing.front().bounds();
    for (const Path& path : drawing) {
        line_bounds_.push_back(path.bounds());
        bounds_ = geom::united(bounds_, line_bounds_.back());
        const std::size_t first = pieces_.size();
        add_pieces(path);
        add_turning_points(path, first);
    }
}

void GridSearch::add_pieces(const Path& path) {
    for (const Segment& s : path.segments()) {
        std::vector<double> cuts{0, 1};
        if (!s.is_line())
            for (const geom::Direction along : {geom::Direction{1, 0}, geom::Direction{0, 1}})
                for (const double f : geom::crossings(s, s.centre(), along)) cuts.push_back(f);
        std::sort(cuts.begin(), cuts.end());
        for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
            if (cuts[i + 1] - cuts[i] < 1e-12) continue;
            Piece piece{s.part(cuts[i], cuts[i + 1]), {}, {}, 0, 0, {}};
            const Point a = piece.segment.from;
            const Point b = piece.segment.to;
            piece.box = {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
            if (!s.is_line()) {
                const Point middle = piece.segment.point(0.5);
                piece.centre = s.centre();
                piece.radius = s.radius();
                piece.up = middle.y > piece.centre.y ? 1 : -1;
                piece.aside = middle.x > piece.centre.x ? 1 : -1;
            }
            pieces_.push_back(piece);
        }
    }
}

void GridSearch::add_turning_points(const Path& path, std::size_t first_piece) {
    turning_points_.push_back(path.start());
    turning_points_.push_back(path.end());
    for (std::size_t i = first_piece + 1; i < pieces_.size(); ++i) {
        const Point before = pieces_[i - 1].segment.to - pieces_[i - 1].segment.from;
        const Point after = pieces_[i].segment.to - pieces_[i].segment.from;
        if (sign(before.x) != sign(after.x) || sign(before.y) != sign(after.y))
            turning_points_.push_back(pieces_[i].segment.from);
    }
}

std::vector<GridSearch::Stretch> GridSearch::stretches(Length x, Length range) const {
    // The outermost columns take the drawing's outermost edges.
    const int first = floor_of((bounds_.low.x - x) / width_ + 1e-9);
    const int last = std::max(first, static_cast<int>(std::ceil((bounds_.high.x - x) / width_ - 1e-9)) - 1);
    std::vector<Stretch> all;
    for (const Piece& piece : pieces_) {
        const int from = std::clamp(floor_of((piece.box.low.x - x - range) / width_), first, last);
        const int to = std::clamp(floor_of((piece.box.high.x - x) / width_), first, last);
        for (int column = from; column <= to; ++column) {
            const Length left = column == first && range == Length() ? bounds_.low.x : x + range + width_ * column;
            const Length right = column == last && range == Length() ? bounds_.high.x : x + width_ * (column + 1.0);
            const Length low = std::max(piece.box.low.x, left);
            const Length high = std::min(piece.box.high.x, right);
            if (low > high) continue;
            Length a = piece.box.low.y;
            Length b = piece.box.high.y;
            if (low > piece.box.low.x || high < piece.box.high.x) {
                a = piece.y_at(low);
                b = piece.y_at(high);
                if (a > b) std::swap(a, b);
            }
            all.push_back({column, a, b});
        }
    }
    std::sort(all.begin(), all.end(), [](const Stretch& a, const Stretch& b) {
        return a.column != b.column ? a.column < b.column : a.low < b.low;
    });
    std::size_t kept = 0;
    for (std::size_t i = 1; i < all.size(); ++i) {
        Stretch& before = all[kept];
        if (all[i].column == before.column && all[i].low - before.high < height_)
            before.high = std::max(before.high, all[i].high);
        else all[++kept] = all[i];
    }
    if (!all.empty()) all.resize(kept + 1);
    return all;
}

GridPlace GridSearch::best_height(const std::vector<Stretch>& stretches) const {
    struct End {
        Length at;
        int step = 0;
    };
    std::vector<End> ends;
    ends.reserve(stretches.size() * 2 + 1);
    int cells = 0;
    for (const Stretch& s : stretches) {
        cells += floor_of(s.high / height_) - floor_of(s.low / height_) + 1;
        ends.push_back({modulo(s.low, height_), 1});
        ends.push_back({modulo(s.high, height_), -1});
    }
    if (ends.empty()) return {{}, height_ / 2, 0};
    std::sort(ends.begin(), ends.end(), [](const End& a, const End& b) { return a.at < b.at; });
    ends.push_back({ends.front().at + height_, 0});
    GridPlace best{{}, {}, cells + static_cast<int>(ends.size())};
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
        cells += ends[i].step;
        const Length half = (ends[i + 1].at - ends[i].at) / 2;
        if (half < thin || cells > best.cells || (cells == best.cells && half < best.leeway + thin)) continue;
        best = {{{}, ends[i].at + half}, half, cells};
    }
    align(stretches, best);
    return best;
}

void GridSearch::align(const std::vector<Stretch>& stretches, GridPlace& best) const {
    if (!whole(bounds_.height() / height_)) return;
    const int last = static_cast<int>(std::round(bounds_.height() / height_)) - 1;
    const Length foot = bounds_.low.y;
    int cells = 0;
    for (const Stretch& s : stretches)
        cells += std::clamp(floor_of((s.high - foot) / height_), 0, last) -
                 std::clamp(floor_of((s.low - foot) / height_), 0, last) + 1;
    if (cells < best.cells) best = {{{}, foot}, {}, cells};
}

GridPlace GridSearch::at(Length x) const {
    GridPlace place = best_height(stretches(x, {}));
    place.corner.x = x;
    return place;
}

int GridSearch::least() const {
    int most = 1;
    for (const Rect& line : line_bounds_)
        most = std::max(most, cells_over(line.width(), width_) + cells_over(line.height(), height_) - 1);
    return most;
}

GridPlace GridSearch::fewest(const std::vector<Length>& first) const {
    GridPlace best = at(bounds_.low.x);
    bool tried = false;
    for (const Length x : first) {
        const GridPlace place = at(x);
        if (!tried || place.cells < best.cells) best = place;
        tried = true;
    }
    if (const GridPlace aligned = at(bounds_.low.x); aligned.cells < best.cells) best = aligned;
    if (best.cells == least()) return best;
    if (none_takes_fewer(bounds_.low.x, width_, best)) return best;
    const std::vector<Length> places = critical_places();
    look(places, {0, places.size() - 1}, best);
    return best;
}

bool GridSearch::none_takes_fewer(Length from, Length range, const GridPlace& best) const {
    if (best_height(stretches(from, range)).cells >= best.cells) return true;
    return range > width_ / 200 && none_takes_fewer(from, range / 2, best) &&
           none_takes_fewer(from + range / 2, range / 2, best);
}

std::vector<Length> GridSearch::critical_places() const {
    std::vector<Length> places;
    for (const Point p : turning_points_) {
        places.push_back(modulo(p.x, width_));
        add_level(p, places);
    }
    for (std::size_t i = 0; i < pieces_.size(); ++i)
        for (std::size_t j = i; j < pieces_.size(); ++j) add_meetings(pieces_[i], pieces_[j], places);
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end(), [](Length a, Length b) { return b - a < thin; }),
                 places.end());
    places.push_back(places.front() + width_);
    return places;
}

void GridSearch::add_level(Point p, std::vector<Length>& places) const {
    for (const Piece& piece : pieces_) {
        if (piece.box.height() < thin) continue;
        const int from = static_cast<int>(std::ceil((piece.box.low.y - p.y) / height_));
        const int to = floor_of((piece.box.high.y - p.y) / height_);
        for (int n = from; n <= to; ++n) places.push_back(modulo(piece.x_at(p.y + height_ * n), width_));
    }
}

/// Points where two circles, or a circle and a line, or two lines meet; some more do no harm. The other piece is taken
/// to stand so far away from its place.
std::vector<Point> GridSearch::meetings(const Piece& a, const Piece& b, Point by) {
    const bool a_is_line = a.segment.is_line();
    const Segment other{b.segment.from + by, b.segment.to + by, b.segment.turn};
    std::vector<Point> points;
    if (a_is_line || other.is_line()) {
        const Segment& line = a_is_line ? a.segment : other;
        const Segment& crossed = a_is_line ? other : a.segment;
        if (line.chord() < thin) return points;
        for (const double f : geom::crossings(crossed, line.from, geom::direction(line.from, line.to)))
            points.push_back(crossed.point(f));
        return points;
    }
    const Point centre = b.centre + by;
    const Length apart = geom::distance(a.centre, centre);
    const Length r = a.radius;
    const Length s = b.radius;
    if (apart < thin || apart > r + s || apart < measure::abs(r - s)) return points;
    const Length along = (apart + (r + s) * ((r - s) / apart)) / 2;
    const Length off = r * std::sqrt(std::max(0.0, 1 - (along / r) * (along / r)));
    const geom::Direction d = geom::direction(a.centre, centre);
    const Point foot = a.centre + d * along;
    return {foot + d.left() * off, foot - d.left() * off};
}

void GridSearch::add_meetings(const Piece& a, const Piece& b, std::vector<Length>& places) const {
    const int left = static_cast<int>(std::ceil((a.box.low.x - b.box.high.x) / width_));
    const int right = floor_of((a.box.high.x - b.box.low.x) / width_);
    const int low = static_cast<int>(std::ceil((a.box.low.y - b.box.high.y) / height_));
    const int high = floor_of((a.box.high.y - b.box.low.y) / height_);
    for (int m = left; m <= right; ++m) {
        for (int n = low; n <= high; ++n) {
            if (&a == &b && m == 0 && n == 0) continue;
            for (const Point p : meetings(a, b, {width_ * m, height_ * n}))
                if (a.box.grown(thin).contains(p)) places.push_back(modulo(p.x, width_));
        }
    }
}

void GridSearch::look(const std::vector<Length>& places, Range range, GridPlace& best) const {
    if (range.last - range.first == 1) {
        const GridPlace place = at(geom::middle({places[range.first], {}}, {places[range.last], {}}).x);
        if (place.cells < best.cells) best = place;
        return;
    }
    const Length from = places[range.first];
    if (best_height(stretches(from, places[range.last] - from)).cells >= best.cells) return;
    const std::size_t middle = (range.first + range.last) / 2;
    look(places, {range.first, middle}, best);
    look(places, {middle, range.last}, best);
}

}  // namespace kerfpacket::sheets
