#include "sheets/splay/splay_space.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "sheets/drawings/small_drawing.h"

namespace kerfpacket::sheets {
namespace {

/// What lies further off stands so much further right and higher on the page.
constexpr double aside = 0.5;
constexpr double above = 0.28;
constexpr int steps = 160;

/// A place along the board: both edges of its seen face, and of its kerf face, on the page.
struct Place {
    Point elevation;  ///< of the narrow edge
    Point near_seen, far_seen, near_back, far_back;
};

class Picture {
public:
    Picture(Pen& pen, const Rect& space, const plan::Piece& piece)
        : pen_(pen), piece_(piece), splay_(*piece.splay), small_(fitted(space)) {}

    void draw() {
        std::vector<std::size_t> order;
        for (std::size_t i = 0; i + 1 < places_.size(); ++i) order.push_back(i);
        const auto nearness = [&](std::size_t i) {
            return places_[i].elevation.x * aside + places_[i].elevation.y * above;
        };
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return nearness(a) < nearness(b); });
        for (const std::size_t i : order) part(places_[i], places_[i + 1]);
        near_edge();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }

    /// On the page, of a place of the narrow edge's line, so far above it, so deep in the wall from its narrow side.
    Point seen(const curve::Spot& spot, Length up, Length deep) const {
        const Point on = spot.point + spot.direction.left() * up;
        const Length away = splay_.wide_at_room ? splay_.depth - deep : deep;
        return {on.x + away * aside, on.y + away * above};
    }

    Place place(const curve::Spot& spot) const {
        const Length face = splay_.below_face / -splay_.cosine();
        const Length wall = face + splay_.thickness / splay_.cosine();
        const Length side = splay_.side();
        const Point narrow_seen = seen(spot, face, {}), wide_seen = seen(spot, face + side, splay_.depth);
        const Point narrow_back = seen(spot, wall, {}), wide_back = seen(spot, wall + side, splay_.depth);
        if (splay_.wide_at_room) return {spot.point, wide_seen, narrow_seen, wide_back, narrow_back};
        return {spot.point, narrow_seen, wide_seen, narrow_back, wide_back};
    }

    /// Fills `places_`, from the foot of the left leg to that of the right one.
    SmallDrawing fitted(const Rect& space) {
        const plan::Blank& blank = piece_.blank();
        const Length from = blank.zero == job::End::left ? blank.trims[0] : blank.trims[1];
        const Length to = blank.length - (blank.zero == job::End::left ? blank.trims[1] : blank.trims[0]);
        const auto& lines = std::get<plan::ArchLines>(piece_.lines);
        const auto leg = [&](Length at, std::size_t side) {
            // A part of a divided blank ends at a joint, not at a leg.
            const bool meets =
                blank.end(side == 0 ? job::End::left : job::End::right).meets == plan::BoardEnd::Meets::leg;
            if (!meets || !lines.legs || (*lines.legs)[side] <= Length()) return;
            curve::Spot spot = splay_.line.at(at);
            spot.direction = side == 0 ? Direction{0, 1} : Direction{0, -1};
            spot.point = spot.point - Point{{}, std::min((*lines.legs)[side], splay_.line.length() * 0.3)};
            places_.push_back(place(spot));
        };
        leg(from, 0);
        for (int i = 0; i <= steps; ++i)
            places_.push_back(place(splay_.line.at(from + (to - from) * (static_cast<double>(i) / steps))));
        leg(to, 1);
        Rect box{places_.front().near_seen, places_.front().near_seen};
        for (const Place& place : places_)
            for (const Point p : {place.near_seen, place.far_seen, place.near_back, place.far_back})
                box = geom::united(box, {p, p});
        const Rect room = space.grown(-4_pt);
        const double scale = std::min(room.width() / box.width(), room.height() / box.height());
        return {geom::middle(box.low, box.high), geom::middle(room.low, room.high), scale};
    }

    /// Between two places: the outside with its kerfs, or the seen face.
    void part(const Place& a, const Place& b) {
        const Point along = b.near_back - a.near_back;
        const Point away = a.far_back - a.near_back;
        const bool outside = along.x.mm() * away.y.mm() - along.y.mm() * away.x.mm() > 0;
        const auto quad = [&](Point p, Point q, Point r, Point s) {
            const Path path = Path::polyline({small_.at(p), small_.at(q), small_.at(r), small_.at(s)}, true);
            pen_.fill(Role::outline, path, Ink::white);
            pen_.line(Role::outline, small_.at(p), small_.at(q), style().line);
            pen_.line(Role::outline, small_.at(s), small_.at(r), style().line);
        };
        if (outside) {
            quad(a.near_back, b.near_back, b.far_back, a.far_back);
            if (&a != &places_.front() && &b != &places_.back())
                pen_.line(Role::outline, small_.at(a.near_back), small_.at(a.far_back), style().hair);
        } else {
            quad(a.near_seen, b.near_seen, b.far_seen, a.far_seen);
        }
        const bool ends = &a == &places_.front() || &b == &places_.back();
        if (!ends) return;
        const Place& end = &a == &places_.front() ? a : b;
        if (outside) pen_.line(Role::outline, small_.at(end.near_back), small_.at(end.far_back), style().line);
        else pen_.line(Role::outline, small_.at(end.near_seen), small_.at(end.far_seen), style().line);
    }

    /// The thickness of the board, on the side of the room.
    void near_edge() {
        std::vector<Point> round;
        for (const Place& place : places_) round.push_back(small_.at(place.near_seen));
        for (std::size_t i = places_.size(); i-- > 0;) round.push_back(small_.at(places_[i].near_back));
        const Path path = Path::polyline(round, true);
        pen_.fill(Role::outline, path, Ink::white);
        pen_.stroke(Role::outline, path, style().line);
    }

    Pen& pen_;
    const plan::Piece& piece_;
    const plan::Splay& splay_;
    std::vector<Place> places_;
    SmallDrawing small_;
};

}  // namespace

void draw_splay_in_space(Pen& pen, const Rect& space, const plan::Piece& piece) {
    const Scope figure = pen.figure(pen.kit().words("figure.splay_in_space"));
    Picture(pen, space, piece).draw();
}

}  // namespace kerfpacket::sheets
