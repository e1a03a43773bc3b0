#include "sheets/climb/climb_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "sheets/drawings/small_drawing.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

Rect bounds_of(const std::vector<Point>& points) {
    Rect box{points.front(), points.front()};
    for (const Point& p : points) {
        box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
        box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
    }
    return box;
}

SmallDrawing fitted(const Rect& box, const Rect& space) {
    const double scale = std::min(space.width() / box.width(), space.height() / box.height());
    return {geom::middle(box.low, box.high), geom::middle(space.low, space.high), scale};
}

/// A place on the board as it hangs, x level to the right: told by how far it is from the left end along the front
/// edge's line, and whether it is on the front edge, which is the upper one, or on the lower.
class Hanging {
public:
    explicit Hanging(const plan::Piece& piece)
        : blank_(piece.blank()), width_(piece.width), angle_(piece.rake->kerf()), right_(piece.rake->to_the_right) {}

    Point upper(Length from_zero) const { return turned({blank_.from_left(from_zero), width_}); }
    /// Where a line that meets the front edge there meets the lower one.
    Point lower(Length from_zero, Length lean) const { return turned({blank_.from_left(from_zero + lean), {}}); }
    std::array<Point, 4> corners() const {
        const auto& [zero, far] = blank_.ends;
        return {lower(blank_.cut_at(0), zero.lean), upper(blank_.cut_at(0)), upper(blank_.cut_at(1)),
                lower(blank_.cut_at(1), far.lean)};
    }

private:
    Point turned(Point flat) const {
        const Angle by = right_ ? angle_ : -angle_;
        const double sine = std::sin(by.radians());
        const double cosine = std::cos(by.radians());
        return {flat.x * cosine - flat.y * sine, flat.x * sine + flat.y * cosine};
    }

    const plan::Blank& blank_;
    Length width_;
    Angle angle_;
    bool right_;
};

/// The board as it hangs, on paper.
class HangingDrawing {
public:
    HangingDrawing(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape)
        : pen_(pen),
          piece_(piece),
          blank_(piece.blank()),
          tape_(tape),
          hanging_(piece),
          small_(fitted_in(space)),
          right_(piece.rake->to_the_right),
          low_{corner(0), corner(3)},
          high_{corner(1), corner(2)} {
        // From left to right, whichever end is zero.
        if (blank_.zero == job::End::left) return;
        std::swap(low_[0], low_[1]);
        std::swap(high_[0], high_[1]);
    }

    void draw() {
        pen_.stroke(Role::outline, Path::polyline({low_[0], high_[0], high_[1], low_[1]}, true), style().heavy);
        kerfs();
        lengths();
        climb();
        end(0);
        end(1);
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    Type bold() const { return {Face::bold, style().small}; }

    SmallDrawing fitted_in(const Rect& space) const {
        const std::array<Point, 4> corners = hanging_.corners();
        // Beside it stand how its ends are cut and how far it climbs, above and below it its lengths.
        const Point around{56_pt, 26_pt};
        return fitted(bounds_of({corners.begin(), corners.end()}), {space.low + around, space.high - around});
    }

    Point corner(std::size_t which) const { return small_.at(hanging_.corners().at(which)); }

    void kerfs() {
        const int apart = kerfs_apart(piece_);
        const auto on_board = [&](Length at) {
            return at > blank_.cut_at(0) && at < blank_.cut_at(1) &&
                   at + blank_.lean > blank_.cut_at(0) + blank_.ends[0].lean &&
                   at + blank_.lean < blank_.cut_at(1) + blank_.ends[1].lean;
        };
        for (const plan::Kerf& kerf : blank_.kerfs)
            if (kerf.n % apart == 0 && on_board(kerf.at))
                pen_.line(Role::outline, small_.at(hanging_.lower(kerf.at, blank_.lean)),
                          small_.at(hanging_.upper(kerf.at)), style().hair);
    }

    /// Of both edges, each on its outer side.
    void lengths() {
        const auto along = [&](const std::array<Point, 2>& edge, Length side, const char* words, Length length) {
            const Point out = geom::direction(edge[0], edge[1]).left() * side;
            pen_.dimension(edge[0] + out, edge[1] + out,
                           pen_.kit().words(words, {{"length", tape_.with_unit(measure::abs(length))}}), bold());
        };
        const Length upper = blank_.cut_at(1) - blank_.cut_at(0);
        along(high_, 12_pt, "climb.top_edge", upper);
        along(low_, -12_pt, "climb.bottom_edge", upper + blank_.ends[1].lean - blank_.ends[0].lean);
    }

    /// How far the bottom edge climbs, between the ends as they are cut.
    void climb() {
        const Point low = low_.at(right_ ? 0 : 1);
        const Point high = low_.at(right_ ? 1 : 0);
        const Length out = right_ ? 1_pt : -1_pt;
        const Length x = high.x + out * 24;
        pen_.line(Role::dimension, low, {x + out * 4, low.y}, style().hair, Dash::dash_dot);
        pen_.line(Role::dimension, high, {x + out * 4, high.y}, style().hair);
        const std::array<Point, 4> corners = hanging_.corners();
        pen_.dimension({x, low.y}, {x, high.y}, tape_.with_unit(measure::abs(corners[3].y - corners[0].y)), bold());
    }

    /// How an end is cut, beside it.
    void end(std::size_t which) {
        const bool on_left = which == 0;
        const job::EndCut cut = piece_.rake->ends.at(which);
        Type type{Face::regular, style().small};
        type.align = on_left ? Align::right : Align::left;
        pen_.text(Role::text, beside(which, cut) + Point{on_left ? -5_pt : 5_pt, on_left == right_ ? -3_pt : 7_pt},
                  end_cut_text(cut, pen_.kit()), type);
    }

    /// A level cut is long and has the dimension's level line beside it: its word stands at its outer tip.
    Point beside(std::size_t which, job::EndCut cut) const {
        const Point low = low_.at(which);
        const Point high = high_.at(which);
        if (cut != job::EndCut::level) return geom::middle(low, high);
        const bool low_is_out = (low.x < high.x) == (which == 0);
        if (low_is_out) return low + Point{{}, 9_pt};
        // Over that tip begins the dimension of the top edge.
        return high + Point{which == 0 ? -9_pt : 9_pt, {}};
    }

    Pen& pen_;
    const plan::Piece& piece_;
    const plan::Blank& blank_;
    const Tape& tape_;
    Hanging hanging_;
    SmallDrawing small_;
    bool right_;
    std::array<Point, 2> low_;   ///< ends of the bottom edge, left and right
    std::array<Point, 2> high_;  ///< of the top edge
};

}  // namespace

int kerfs_apart(const plan::Piece& piece) {
    const plan::Blank& blank = piece.blank();
    // Of the board as long as it is drawn: numbers of three figures keep apart, or of four.
    const bool four = !blank.kerfs.empty() && blank.kerfs.back().n >= 1000;
    const Length least = blank.length * (four ? 0.05 : 0.039);
    const auto keep_apart = [&](int apart) {
        std::optional<Length> last;
        for (const plan::Kerf& kerf : blank.kerfs) {
            if (kerf.n % apart != 0) continue;
            if (last && kerf.at - *last < least) return false;
            last = kerf.at;
        }
        return true;
    };
    for (const int apart : {1, 10, 20, 50, 100, 200})
        if (keep_apart(apart)) return apart;
    return 500;
}

void draw_hanging(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    const Scope figure = pen.figure(pen.kit().words("figure.hanging", {{"climb", tape.with_unit(piece.rake->climb)}}));
    HangingDrawing(pen, space, piece, tape).draw();
}

void draw_at_saw(Pen& pen, const Rect& space, const plan::Piece& piece) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const plan::Blank& blank = piece.blank();
    const Scope figure = pen.figure(words("figure.at_saw"));
    const double scale = space.width() / blank.length;
    const Length room = space.height() - style.small * 3.2;
    const Length height = std::clamp(piece.width * scale, std::min(30_pt, room), room);
    const Length front = space.high.y - height;
    const auto at = [&](Length from_zero, double up) {
        return Point{space.low.x + blank.from_left(from_zero) * scale, front + height * up};
    };
    pen.box(Role::outline, {{space.low.x, front}, {space.high.x, front + height}}, style.line);
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
        const Length cut = blank.cut_at(i);
        const Length end = i == 0 ? Length() : blank.length;
        const Length lean = blank.ends.at(i).lean;
        constexpr int lines = 5;
        for (int n = 1; n < lines; ++n) {
            const double part = static_cast<double>(n) / lines;
            pen.line(Role::hatch, at(end + (cut - end) * part, 0), at(end + (cut + lean - end) * part, 1), style.fine);
        }
        pen.line(Role::limit, at(cut, 0), at(cut + lean, 1), style.heavy);
    }
    const int apart = kerfs_apart(piece);
    const Type small{Face::regular, style.small, Align::centre};
    for (const plan::Kerf& kerf : blank.kerfs) {
        if (kerf.n % apart != 0) continue;
        pen.line(Role::outline, at(kerf.at, 0), at(kerf.at + blank.lean, 1), style.hair);
        pen.text(Role::text, {at(kerf.at, 0).x, front - style.small * 1.1}, std::to_string(kerf.n), small);
    }
    const Length below = front - style.small * 2.5;
    const bool from_left = blank.zero == job::End::left;
    const auto end_words = [&](bool zero) {
        Type type{Face::regular, style.small};
        type.align = zero == from_left ? Align::left : Align::right;
        pen.text(Role::text, {zero == from_left ? space.low.x : space.high.x, below},
                 words(zero ? "climb.zero_end" : "climb.far_end"), type);
    };
    end_words(true);
    end_words(false);
    pen.text(Role::text, {(space.low.x + space.high.x) / 2, below}, words("climb.front_edge"),
             Type{Face::bold, style.small}.centred());
}

void draw_in_space(Pen& pen, const Rect& space, const plan::Piece& piece) {
    const auto& style = pen.kit().style;
    const plan::Blank& blank = piece.blank();
    const Scope figure = pen.figure(pen.kit().words("figure.in_space"));
    const auto& lines = std::get<plan::WallLines>(piece.lines);
    const Length whole = lines.finish.length();
    const Length height = piece.rake->cut();
    constexpr int steps = 120;
    // Seen from the room and from above: what lies further off stands higher on the page.
    constexpr double looking_down = 20;
    const double sine = std::sin(Angle::degrees(looking_down).radians());
    const double cosine = std::cos(Angle::degrees(looking_down).radians());
    struct Place {
        Point plan, floor, low, high;
    };
    std::vector<Place> places;
    for (int i = 0; i <= steps; ++i) {
        const double part = static_cast<double>(i) / steps;
        const Point p = lines.finish.at(whole * part).point;
        const Length up = piece.rake->climb * (piece.rake->to_the_right ? part : 1 - part);
        const auto seen = [&](Length z) { return Point{p.x, p.y * sine + z * cosine}; };
        places.push_back({p, seen({}), seen(up), seen(up + height)});
    }
    std::vector<Point> all;
    for (const Place& place : places) all.insert(all.end(), {place.floor, place.low, place.high});
    const SmallDrawing small = fitted(bounds_of(all), space.grown(-4_pt));
    // The floor under it, and how far it climbs at its high end.
    std::vector<Point> floor;
    floor.reserve(places.size());
    for (const Place& place : places) floor.push_back(small.at(place.floor));
    pen.stroke(Role::outline, Path::polyline(floor), style.fine, Dash::dashed);
    const Place& top = piece.rake->to_the_right ? places.back() : places.front();
    pen.line(Role::outline, small.at(top.floor), small.at(top.low), style.fine, Dash::dashed);
    // What is furthest off first, so that what is nearer hides it.
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) order.push_back(i);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return places[a].plan.y + places[a + 1].plan.y > places[b].plan.y + places[b + 1].plan.y;
    });
    const auto kerfs = blank.kerfs.size();
    for (const std::size_t i : order) {
        const Place& a = places[i];
        const Place& b = places[i + 1];
        pen.fill(Role::outline,
                 Path::polyline({small.at(a.low), small.at(b.low), small.at(b.high), small.at(a.high)}, true),
                 Ink::white);
        pen.line(Role::outline, small.at(a.low), small.at(b.low), style.line);
        pen.line(Role::outline, small.at(a.high), small.at(b.high), style.line);
        if (kerfs > 0 && i % 6 == 0) pen.line(Role::outline, small.at(a.low), small.at(a.high), style.hair);
    }
    for (const Place* end : {&places.front(), &places.back()})
        pen.line(Role::outline, small.at(end->low), small.at(end->high), style.heavy);
}

}  // namespace kerfpacket::sheets
