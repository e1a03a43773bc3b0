#include "sheets/climb/climb_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
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
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const plan::Blank& blank = piece.blank();
    const Scope figure = pen.figure(words("figure.hanging", {{"climb", tape.with_unit(piece.rake->climb)}}));
    const Hanging hanging(piece);
    const std::array<Point, 4> corners = hanging.corners();
    const std::vector<Point> outline(corners.begin(), corners.end());
    // Beside it stand how its ends are cut and how far it climbs, above and below it its lengths.
    const Point around{56_pt, 26_pt};
    const SmallDrawing small = fitted(bounds_of(outline), {space.low + around, space.high - around});
    std::vector<Point> drawn;
    for (const Point& p : outline) drawn.push_back(small.at(p));
    pen.stroke(Role::outline, Path::polyline(drawn, true), style.heavy);
    const int apart = kerfs_apart(piece);
    const auto on_board = [&](Length at) {
        return at > blank.cut_at(0) && at < blank.cut_at(1) && at + blank.lean > blank.cut_at(0) + blank.ends[0].lean &&
               at + blank.lean < blank.cut_at(1) + blank.ends[1].lean;
    };
    for (const plan::Kerf& kerf : blank.kerfs)
        if (kerf.n % apart == 0 && on_board(kerf.at))
            pen.line(Role::outline, small.at(hanging.lower(kerf.at, blank.lean)), small.at(hanging.upper(kerf.at)),
                     style.hair);
    const Type bold{Face::bold, style.small};
    // From left to right, whichever end is zero.
    const bool from_left = blank.zero == job::End::left;
    const Point low_left = drawn[from_left ? 0 : 3];
    const Point low_right = drawn[from_left ? 3 : 0];
    const Point high_left = drawn[from_left ? 1 : 2];
    const Point high_right = drawn[from_left ? 2 : 1];
    const auto along = [&](Point a, Point b, double side, const std::string& text) {
        const Direction out = geom::direction(a, b).left();
        pen.dimension(a + out * (12_pt * side), b + out * (12_pt * side), text, bold);
    };
    const Length upper = measure::abs(blank.cut_at(1) - blank.cut_at(0));
    const Length lower = measure::abs(blank.cut_at(1) + blank.ends[1].lean - blank.cut_at(0) - blank.ends[0].lean);
    along(high_left, high_right, 1, words("climb.top_edge", {{"length", tape.with_unit(upper)}}));
    along(low_left, low_right, -1, words("climb.bottom_edge", {{"length", tape.with_unit(lower)}}));
    // How far it climbs, along the bottom edge.
    const bool right = piece.rake->to_the_right;
    const Point low = right ? low_left : low_right;
    const Point high = right ? low_right : low_left;
    const Length x = high.x + (right ? 24_pt : -24_pt);
    pen.line(Role::dimension, low, {x + (right ? 4_pt : -4_pt), low.y}, style.hair, Dash::dash_dot);
    pen.line(Role::dimension, high, {x + (right ? 4_pt : -4_pt), high.y}, style.hair);
    pen.dimension({x, low.y}, {x, high.y}, tape.with_unit(piece.rake->climb), bold);
    // How each end is cut, beside it.
    const auto end = [&](std::size_t which, Point at, bool on_left) {
        Type type{Face::regular, style.small};
        type.align = on_left ? Align::right : Align::left;
        pen.text(Role::text, at + Point{on_left ? -5_pt : 5_pt, on_left == right ? -3_pt : 7_pt},
                 end_cut_text(piece.rake->ends.at(which), pen.kit()), type);
    };
    // A level cut is long and has the dimension's level line beside it: its word stands at its outer tip.
    const auto beside = [&](std::size_t which, Point a, Point b, bool on_left) {
        if (piece.rake->ends.at(which) != job::EndCut::level) return geom::middle(a, b);
        const bool a_is_out = (a.x < b.x) == on_left;
        return (a_is_out ? a : b) + Point{{}, 9_pt};
    };
    end(0, beside(0, low_left, high_left, true), true);
    end(1, beside(1, low_right, high_right, false), false);
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
