#include "sheets/drawings/wall_drawing.h"

#include <algorithm>
#include <array>

#include "geom/guide.h"
#include "sheets/drawings/small_drawing.h"
#include "sheets/layout/labels.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length close = Length::points(2.5);         // labels of a small drawing stand close to it
constexpr Length side = Length::points(22);           // kept free at both sides, for the tails' labels
constexpr Length board_off_wall = Length::points(4);  // the board is drawn thicker than it is, to be seen
constexpr Length chord_off = Length::points(20);

/// Kept free above and below the wall: on the side of the chord for its dimension, on the other for the figures of
/// the curve, below both for the side the board is seen from.
struct Headroom {
    Length above;
    Length below;
};
constexpr Headroom concave_room{Length::points(20), Length::points(47)};
constexpr Headroom convex_room{Length::points(38), Length::points(36)};

/// Lengths of the straight parts, left and right.
std::array<Length, 2> tail_lengths(const plan::Piece& piece) { return std::get<plan::WallLines>(piece.lines).tails; }

class WallDrawing {
public:
    WallDrawing(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape)
        : pen_(pen),
          piece_(piece),
          tape_(tape),
          lines_(std::get<plan::WallLines>(piece.lines)),
          concave_(piece.side == job::Side::concave),
          small_(fitted(space)),
          labels_(pen, space) {}

    void draw() {
        board();
        chord();
        rise();
        curve_figures();
        tails();
        seen_from();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    Type regular() const { return {Face::regular, style().small}; }
    Type bold() const { return {Face::bold, style().small}; }
    std::string figure(const char* key, const std::string& length) const {
        return pen_.kit().words(key, {{"length", length}});
    }
    const Path& measured() const { return piece_.measured_to == job::Surface::wall ? lines_.wall : lines_.finish; }

    Path curved(const Path& path) const { return without_tails(piece_, path); }

    /// Where the measured curve stands furthest off its chord.
    Point crown(const Path& curve) const {
        const geom::Guide guide(curve);
        Point best = guide.at(guide.length() / 2).point;
        if (piece_.circular) return best;
        const Length base = curve.start().y;
        constexpr int steps = 400;
        for (int i = 1; i < steps; ++i) {
            const Point p = guide.at(guide.length() * (static_cast<double>(i) / steps)).point;
            if (measure::abs(p.y - base) > measure::abs(best.y - base)) best = p;
        }
        return best;
    }

    /// Whether a parallel on the room's side does not fold.
    static bool has_parallel(const Path& wall) {
        const auto& segments = wall.segments();
        return std::none_of(segments.begin(), segments.end(), [](const geom::Segment& s) {
            return s.turn.radians() < 0 && s.radius() < board_off_wall * 2;
        });
    }

    SmallDrawing fitted(const Rect& space) const {
        const Rect bounds = measured().bounds();
        const Headroom& free = concave_ ? concave_room : convex_room;
        const Length room_x = std::max(space.width() - side * 2, 10_pt);
        const Length room_y = std::max(space.height() - free.above - free.below, 10_pt);
        const double scale = std::min(room_x / bounds.width(), room_y / bounds.height());
        const Point middle = geom::middle(space.low, space.high);
        return {geom::middle(bounds.low, bounds.high), {middle.x, middle.y + (free.below - free.above) / 2}, scale};
    }

    void board() {
        const Path wall = small_.at(measured());
        pen_.stroke(Role::outline, wall, style().heavy);
        labels_.taken().take(wall);
        reverses(wall);
        if (!has_parallel(wall)) return;
        // The room, and so the board, lies to the right of travel.
        const Path face = wall.offset_left(-board_off_wall);
        pen_.stroke(Role::outline, face, style().line);
        labels_.taken().take(face);
        for (const bool start : {true, false})
            pen_.line(Role::outline, start ? wall.start() : wall.end(), start ? face.start() : face.end(),
                      style().line);
    }

    /// A stroke across the wall where its bend changes sides.
    void reverses(const Path& wall) {
        double before = 0;
        for (const geom::Segment& s : wall.segments()) {
            if (s.is_line()) continue;
            if (before * s.turn.radians() < 0) {
                const Direction out = s.start_direction().left();
                const Path stroke = Path::line(s.from - out * 9_pt, s.from + out * 6_pt);
                pen_.stroke(Role::dimension, stroke, style().hair);
                labels_.taken().take(stroke);
            }
            before = s.turn.radians();
        }
    }

    /// The chord's dimension stands on the side of the curve's ends.
    void chord() {
        const Path curve = curved(small_.at(measured()));
        const Rect all = small_.at(measured().bounds());
        const double away = concave_ ? -1 : 1;
        const Length level = (concave_ ? all.low.y - board_off_wall : all.high.y) + chord_off * away;
        const Point a{curve.start().x, level};
        const Point b{curve.end().x, level};
        for (const Point& p : {a, b}) {
            const Length from = (p.x == a.x ? curve.start().y : curve.end().y) + (board_off_wall + 3_pt) * away;
            pen_.line(Role::dimension, {p.x, from}, {p.x, level + 4_pt * away}, style().hair);
            labels_.taken().take(Path::line({p.x, from}, {p.x, level}));
        }
        const std::string text = figure("drawing.chord", tape_.with_unit(piece_.measured_span));
        const bool fits = pen_.width(text, bold()) + 20_pt < b.x - a.x;
        pen_.dimension(a, b, fits ? text : std::string(), bold());
        const Length half = fits ? 5_pt : 3_pt;
        labels_.taken().take(level_box({{a.x, level - half}, {b.x, level + half}}));
        if (fits) return;
        const Block block(pen_, {{text, bold()}});
        const Length beyond = block.width() / 2 + 5_pt;
        labels_.anywhere(Role::dimension, block,
                         {geom::middle(a, b) + Point{{}, (block.height() / 2 + 6_pt) * away},
                          {b.x + beyond, level},
                          {a.x - beyond, level}},
                         close);
    }

    /// The rise from the chord to the crown of the measured curve, with the chord itself as a thin line.
    void rise() {
        const Path curve = curved(small_.at(measured()));
        const Point crown = this->crown(curve);
        const Point foot{piece_.circular ? geom::middle(curve.start(), curve.end()).x : crown.x, curve.start().y};
        pen_.line(Role::dimension, curve.start(), curve.end(), style().hair, Dash::dashed);
        labels_.taken().take(Path::line(curve.start(), curve.end()));
        const Block block(pen_, {{figure("drawing.rise", tape_.plain(piece_.measured_rise)), regular()}});
        const Length height = measure::abs(crown.y - foot.y);
        if (height > 9_pt) {
            pen_.dimension(foot, crown, "", regular());
            labels_.taken().take(Path::line(foot, crown));
        }
        const Length x = foot.x + block.width() / 2 + 6_pt;
        const double toward_chord = concave_ ? -1 : 1;
        labels_.anywhere(Role::dimension, block,
                         {{x, (foot.y + crown.y) / 2},
                          {x, (foot.y * 2 + crown.y) / 3},
                          {foot.x, foot.y + (block.height() / 2 + 3_pt) * toward_chord}},
                         close);
    }

    /// Radius, where there is one, and length of the curve on the outer side of the crown.
    void curve_figures() {
        std::string both = figure("drawing.arc", tape_.plain(curved(measured()).length()));
        if (piece_.circular) both = figure("drawing.radius", tape_.plain(piece_.radii.measured)) + "    " + both;
        const Block block(pen_, {{both, regular()}});
        const Point crown = this->crown(curved(small_.at(measured())));
        const double out = concave_ ? 1 : -1;
        const Length gap = concave_ ? 4_pt : 4_pt + board_off_wall;
        for (const Length more : {0_pt, 4_pt, 8_pt})
            if (labels_.place(Role::dimension, block, crown + Point{{}, (gap + more + block.height() / 2) * out}))
                return;
    }

    void tails() {
        const std::array<Length, 2> lengths = tail_lengths(piece_);
        const auto segments = small_.at(measured()).segments();
        if (lengths[0] > 0_mm) tail(segments.front(), lengths[0]);
        if (lengths[1] > 0_mm) tail(segments.back(), lengths[1]);
    }

    void tail(const geom::Segment& line, Length length) {
        const Block block(pen_, {{figure("drawing.tail", tape_.plain(length)), regular()}});
        const Point mid = line.point(0.5);
        const Direction out = line.start_direction().left();
        for (const double toward : {1.0, -1.0}) {
            for (const Length more : {4_pt, 8_pt, 14_pt, 22_pt}) {
                // A label is wide and low: it clears a slanted line by its own corner.
                const Length reach = measure::abs(block.width() / 2 * out.x) +
                                     measure::abs(block.height() / 2 * out.y) + more +
                                     (toward < 0 ? board_off_wall : 0_pt);
                if (labels_.place(Role::dimension, block, mid + out * (reach * toward))) return;
            }
        }
        // Between the wall and the chord's lines there may be none.
        labels_.with_leader(Role::dimension, block, Path({line}), Beside::left);
    }

    /// Which side the board is seen from, on that side.
    void seen_from() {
        const Block block(pen_, {{pen_.kit().words(concave_ ? "drawing.seen_inside" : "drawing.seen_outside"),
                                  {Face::regular, style().tiny}}});
        const Rect all = small_.at(measured().bounds());
        std::vector<Point> under;
        for (const Length down : {12_pt, 20_pt, 24_pt, 28_pt, 36_pt})
            for (const double part : {0.5, 0.35, 0.65, 0.2, 0.8})
                under.push_back({all.low.x + all.width() * part, all.low.y - board_off_wall - down});
        labels_.anywhere(Role::text, block, under, close);
    }

    Pen& pen_;
    const plan::Piece& piece_;
    const Tape& tape_;
    const plan::WallLines& lines_;
    bool concave_;
    SmallDrawing small_;
    Labels labels_;
};

}  // namespace

Path without_tails(const plan::Piece& piece, const Path& path) {
    std::vector<geom::Segment> segments = path.segments();
    const std::array<Length, 2> lengths = tail_lengths(piece);
    if (lengths[1] > 0_mm && segments.size() > 1 && segments.back().is_line()) segments.pop_back();
    if (lengths[0] > 0_mm && segments.size() > 1 && segments.front().is_line()) segments.erase(segments.begin());
    return Path(std::move(segments));
}

void draw_wall(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    WallDrawing(pen, space, piece, tape).draw();
}

}  // namespace kerfpacket::sheets
