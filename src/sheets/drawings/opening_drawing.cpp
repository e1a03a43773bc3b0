#include "sheets/drawings/opening_drawing.h"

#include <algorithm>
#include <array>
#include <optional>

#include "job/choices.h"
#include "sheets/drawings/small_drawing.h"
#include "sheets/layout/labels.h"
#include "sheets/templates/template_lines.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length above = Length::points(8);  // the centre line reaches beyond the crown
constexpr Length dimension_offset = Length::points(15);
constexpr Length span_height = Length::points(22);  // of the span's dimension below the drawing
constexpr Length edge = Length::points(8);          // kept free at the sides
/// An arch drawn lower than this is made larger, and its long legs are drawn short with a break.
constexpr Length least_head = Length::points(34);
constexpr double broken_head = 0.4;  // of the height

/// Where a path meets a straight line, the place furthest along it.
Point furthest_crossing(const Path& path, Point on_line, Direction along) {
    Point best = on_line;
    const auto reach = [&](Point p) { return (p.x - on_line.x) * along.x + (p.y - on_line.y) * along.y; };
    for (const geom::Segment& s : path.segments())
        for (const double fraction : geom::crossings(s, on_line, along))
            if (reach(s.point(fraction)) > reach(best)) best = s.point(fraction);
    return best;
}

class OpeningDrawing {
public:
    OpeningDrawing(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape)
        : pen_(pen),
          space_(space),
          piece_(piece),
          tape_(tape),
          arch_(std::get<plan::ArchLines>(piece.lines)),
          lines_(template_lines(arch_)),
          small_({}, {}, 1),
          labels_(pen, space) {
        const auto& words = pen.kit().words;
        span_ = words("drawing.span", {{"length", tape.with_unit(piece.measured_span)}});
        rise_ = words("drawing.rise", {{"length", tape.plain(piece.measured_rise)}});
        if (arch_.legs) {
            const auto figure = [&](Length leg) { return words("drawing.legs", {{"length", tape.plain(leg)}}); };
            legs_ = figure(arch_.legs->at(1));
            if (tape.plain(arch_.legs->at(0)) != tape.plain(arch_.legs->at(1))) left_leg_ = figure(arch_.legs->at(0));
        }
        fit();
    }

    void draw() {
        head();
        legs();
        centre_and_spring();
        span();
        heights();
        inside_labels();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    Type regular() const { return {Face::regular, style().small}; }
    Type bold() const { return {Face::bold, style().small}; }
    const Path& measured() const { return arch_.measured; }
    /// Of the measured surface, left and right.
    std::array<Point, 2> springs() const { return measured_springs(arch_); }
    /// As far as a small drawing shows.
    bool level() const { return measure::abs(springs()[0].y - springs()[1].y) < Length::inches(1.0 / 8); }
    Length lower_spring() const { return std::min(springs()[0].y, springs()[1].y); }

    /// Scale and place: heights and their figures stand at the right, a leg of its own length also at the left, the
    /// span below.
    void fit() {
        Rect head = lines_.front().path.bounds();
        for (const TemplateLine& line : lines_) head = united(head, line.path.bounds());
        Length figures = pen_.width(rise_, bold());
        if (legs_) figures = std::max(figures, pen_.width(*legs_, regular()));
        const Length side = dimension_offset + figures + edge;
        const Length left = left_leg_ ? dimension_offset + pen_.width(*left_leg_, regular()) + edge : edge;
        const Length room_x = std::max(space_.width() - side - left, 10_pt);
        const Length room_y = std::max(space_.height() - above - span_height, 10_pt);
        const Length base = arch_.legs ? lower_spring() : Length();
        const Length up = head.high.y - base;
        const Length down = arch_.legs ? base - (springs()[1].y - arch_.legs->at(1)) : -head.low.y;
        double scale = std::min(room_x / head.width(), room_y / (up + down));
        drawn_legs_ = down * scale;
        if (arch_.legs && up * scale < least_head) {
            scale = std::min(room_x / head.width(), room_y * broken_head / up);
            drawn_legs_ = std::min(down * scale, room_y - up * scale);
            broken_ = drawn_legs_ < down * scale - 1_pt;
        }
        const Length height = up * scale + drawn_legs_;
        const Length spare = space_.width() - side - left + edge - head.width() * scale;
        const Length middle = space_.low.x + left - edge + std::max(spare / 2, edge) + head.width() * (scale / 2);
        // What height is left over goes above and below alike.
        floor_ = space_.low.y + span_height + (room_y - height) / 2;
        left_ = middle - head.width() * (scale / 2);
        right_ = middle + head.width() * (scale / 2);
        small_ = SmallDrawing({(head.low.x + head.high.x) / 2, base}, {middle, floor_ + drawn_legs_}, scale);
    }

    void stroke(Line what, const Path& path) {
        const bool casing = what == Line::casing_outside || what == Line::casing_inside;
        const bool wall_alone = what == Line::wall && !arch_.casing_outside;
        pen_.stroke(Role::outline, path, casing || wall_alone ? style().line : style().hair);
        labels_.taken().take(path);
    }

    void head() {
        for (const TemplateLine& line : lines_)
            if (line.what != Line::kerf_tick && !(arch_.legs && is_upright(line)))
                stroke(line.what, small_.at(line.path));
    }

    static bool is_upright(const TemplateLine& line) {
        const bool edge_line = line.what == Line::wall || line.what == Line::finish ||
                               line.what == Line::casing_outside || line.what == Line::casing_inside;
        return edge_line && line.path.segments().size() == 1 && line.path.segments().front().is_line() &&
               measure::abs(line.path.start().x - line.path.end().x) < 1e-6_mm;
    }

    /// Uprights down to the floor; where they are drawn short, two slanted strokes break each leg.
    void legs() {
        if (!arch_.legs) return;
        // Left and right leg: from the furthest out to the furthest in.
        std::array<std::optional<std::pair<Length, Length>>, 2> across;
        for (const TemplateLine& line : lines_) {
            if (!is_upright(line)) continue;
            const Point top = small_.at(line.path.start());
            stroke(line.what, Path::line(top, {top.x, floor_}));
            auto& leg = across.at(line.path.start().x < middle_of_span() ? 0 : 1);
            leg = leg ? std::pair(std::min(leg->first, top.x), std::max(leg->second, top.x)) : std::pair(top.x, top.x);
        }
        const Length from = across[0] ? across[0]->first : left_;
        pen_.line(Role::outline, {from - 6_pt, floor_}, {right_ + 6_pt, floor_}, style().heavy);
        if (!broken_) return;
        const Length y = floor_ + drawn_legs_ * 0.4;
        for (const auto& leg : across)
            if (leg) leg_break(leg->first - 4_pt, leg->second + 4_pt, y);
    }

    void leg_break(Length left, Length right, Length y) {
        const Path gap =
            Path::polyline({{left, y - 3_pt}, {right, y + 1_pt}, {right, y + 5_pt}, {left, y + 1_pt}}, true);
        pen_.fill(Role::outline, gap, Ink::white);
        pen_.line(Role::outline, {left, y - 3_pt}, {right, y + 1_pt}, style().hair);
        pen_.line(Role::outline, {left, y + 1_pt}, {right, y + 5_pt}, style().hair);
    }

    Length middle_of_span() const { return (springs()[0].x + springs()[1].x) / 2; }

    void centre_and_spring() {
        const Length highest = arch_.casing_outside.value_or(arch_.wall).bounds().high.y;
        const Point crown = small_.at(Point{middle_of_span(), highest});
        const Length low = arch_.legs ? floor_ : small_.at(Point{{}, lower_spring()}).y - 4_pt;
        pen_.line(Role::centre, {crown.x, low}, {crown.x, crown.y + above - 2_pt}, style().hair, Dash::dash_dot);
        labels_.taken().take(Path::line({crown.x, low}, crown));
        const Path spring = Path::line(small_.at(springs()[0]), small_.at(springs()[1]));
        pen_.stroke(Role::dimension, spring, style().hair, Dash::dashed);
        labels_.taken().take(spring);
    }

    void span() {
        Length from = floor_;
        if (!arch_.legs) from = small_.at(Point{{}, arch_.leg_lines.front().end().y}).y;
        const Length at = std::min(from, floor_) - 13_pt;
        const Point left{small_.at(springs()[0]).x, at};
        const Point right{small_.at(springs()[1]).x, at};
        for (const Point p : {left, right})
            pen_.line(Role::dimension, {p.x, from - 2_pt}, {p.x, at - 4_pt}, style().hair);
        labels_.taken().take(level_box({{left.x, at - 5_pt}, {right.x, at + 5_pt}}));
        if (pen_.width(span_, bold()) + 22_pt < right.x - left.x) {
            pen_.dimension(left, right, span_, bold());
            return;
        }
        // Too narrow for its figure, which then stands beside the line.
        pen_.dimension(left, right, "", bold());
        Type type = bold();
        if (right.x + 6_pt + pen_.width(span_, type) > space_.high.x) type.face = Face::condensed_bold;
        pen_.text(Role::dimension, {right.x + 6_pt, at - 3_pt}, span_, type);
    }

    /// Rise and legs as a chain at the right; with springs at two heights the rise stands in the arch, each leg at its
    /// own side.
    void heights() {
        const Length x = right_ + dimension_offset;
        const Point spring = small_.at(springs()[1]);
        Length highest = space_.high.y;
        if (level()) {
            const Point crown = small_.at(Point{middle_of_span(), springs()[0].y + piece_.measured_rise});
            highest = height({x, spring.y}, {x, crown.y}, rise_, bold(), crown.y) - style().small * 1.3;
            witness({crown.x + 4_pt, crown.y}, {x + 4_pt, crown.y});
            labels_.taken().take(Path::line(crown, {x, crown.y}));
        }
        if (level() || legs_) witness({right_ + 3_pt, spring.y}, {x + 4_pt, spring.y});
        if (legs_) height({x, floor_}, {x, spring.y}, *legs_, regular(), highest);
        if (left_leg_) left_height(left_ - dimension_offset, small_.at(springs()[0]).y);
        if (!level()) rise_inside();
    }

    void witness(Point a, Point b) {
        pen_.line(Role::dimension, a, b, style().hair);
        labels_.taken().take(Path::line(a, b));
    }

    /// A dimension line without its figure.
    void bare_dimension(Point a, Point b) {
        pen_.dimension(a, b, "", regular());
        labels_.taken().take(Path::line(a, b));
        for (const Point end : {a, b})
            labels_.taken().take(level_box({{end.x - 3_pt, end.y - 3_pt}, {end.x + 3_pt, end.y + 3_pt}}));
    }

    void left_height(Length x, Length top) {
        witness({left_ - 3_pt, top}, {x - 4_pt, top});
        bare_dimension({x, floor_}, {x, top});
        const Length base = (floor_ + top) / 2 - style().small * 0.36;
        const Length width = pen_.text(Role::dimension, {x - 6_pt, base}, *left_leg_, regular().at_right());
        labels_.taken().take(level_box({{x - 6_pt - width, base}, {x, base + style().small}}));
    }

    /// A dimension with its figure beside it, its baseline no higher than `highest`; returns that baseline.
    Length height(Point low, Point high, const std::string& figure, const Type& type, Length highest) {
        bare_dimension(low, high);
        const Length base = std::min((low.y + high.y) / 2 - type.size * 0.36, highest);
        const Length width = pen_.text(Role::dimension, {low.x + 6_pt, base}, figure, type);
        labels_.taken().take(level_box({{low.x, base}, {low.x + 6_pt + width, base + type.size}}));
        return base;
    }

    /// From the middle of the line that joins the springs: square to it where the whole arch is tilted, else upright.
    void rise_inside() {
        const Point foot = geom::middle(springs()[0], springs()[1]);
        const Direction up =
            job::tilts(piece_.shape) ? geom::direction(springs()[0], springs()[1]).left() : Direction{0, 1};
        const Point crown = furthest_crossing(measured(), foot, up);
        bare_dimension(small_.at(foot), small_.at(crown));
        const Block block(pen_, {{rise_, bold()}});
        std::vector<Point> places;
        for (const double part : {0.5, 0.35, 0.65, 0.2})
            for (const double side : {1.0, -1.0}) {
                const Point on = small_.at(foot + (crown - foot) * part);
                places.push_back({on.x + (block.width() / 2 + 6_pt) * side, on.y});
            }
        // Below its foot there is room between the legs.
        for (const Length down : {11_pt, 16_pt, 22_pt})
            for (const double side : {1.0, -1.0})
                places.push_back(small_.at(foot) + Point{(block.width() / 2 + 6_pt) * side, -down});
        // Or beside the upper end, over the shoulder of the arch.
        for (const Length aside : {10_pt, 16_pt, 22_pt, 28_pt})
            for (const double side : {1.0, -1.0})
                places.push_back(small_.at(crown) + Point{(block.width() / 2 + aside) * side, 1_pt});
        const auto free = [&](Point p) { return labels_.place(Role::dimension, block, p, {1, 0}, 2_pt); };
        if (std::any_of(places.begin(), places.end(), free)) return;
        // Off the upper end of its line, or beside the head, over a leg, with a leader across the arch.
        const Path line = Path::line(small_.at(geom::middle(foot, crown)), small_.at(crown));
        if (labels_.with_leader(Role::dimension, block, line, Beside::right)) return;
        const Point on = line.start();
        for (const Length aside : {4_pt, 10_pt, 16_pt})
            for (const Length higher : {0_pt, 8_pt, 16_pt, 24_pt, -8_pt})
                for (const double side : {1.0, -1.0}) {
                    const Point end{side > 0 ? right_ + aside : left_ - aside, on.y + higher};
                    if (!labels_.place(Role::dimension, block, end + Point{block.width() / 2 * side, {}}, {1, 0}, 2_pt))
                        continue;
                    pen_.line(Role::dimension, on, end - Point{side * 1_pt, {}}, style().hair);
                    pen_.fill(Role::dimension, Path::circle(on, 1.2_pt));
                    return;
                }
        labels_.anywhere(Role::dimension, block, {}, 2_pt);
    }

    /// Radii and the spring line's name, where they have room.
    void inside_labels() {
        const Point spring = small_.at(geom::middle(springs()[0], springs()[1]));
        const Length half = (small_.at(arch_.finish_springs[1]).x - small_.at(arch_.finish_springs[0]).x) / 2;
        const Block name(pen_, {{pen_.kit().words("drawing.spring_line"), {Face::regular, style().tiny}}});
        const auto beside_centre = [&](const Block& block, Length y) {
            return Point{spring.x + (half < block.width() + 10_pt ? half / 2 : block.width() / 2 + 5_pt), y};
        };
        if (piece_.circular) {
            const Block radius(pen_, {{radius_text(piece_.radii.measured), regular()}});
            const Length crown = small_.at(Point{{}, arch_.finish.bounds().high.y}).y;
            for (const Length y : {(crown + spring.y) / 2, spring.y - radius.height() - 3_pt, spring.y - 30_pt})
                if (labels_.place(Role::dimension, radius, beside_centre(radius, y))) break;
        } else if (!arch_.arcs.empty()) {
            arc_radii();
        }
        // Under the spring line stand the legs, or else the span's dimension.
        const Length off = (name.height() / 2 + 4_pt) * (arch_.legs ? -1.0 : 1.0);
        const Point right = beside_centre(name, spring.y + off);
        labels_.place(Role::dimension, name, {spring.x * 2 - right.x, right.y});
    }

    std::string radius_text(Length radius) const {
        return pen_.kit().words("drawing.radius", {{"length", tape_.plain(radius)}});
    }

    /// Each radius once, inside the longest arc that has it; the measured line consists of these arcs.
    void arc_radii() {
        std::vector<std::pair<std::string, geom::Segment>> radii;
        for (const geom::Segment& s : measured().segments()) {
            if (s.is_line()) continue;
            const std::string text = radius_text(s.radius());
            const auto same = std::find_if(radii.begin(), radii.end(), [&](const auto& r) { return r.first == text; });
            if (same == radii.end()) radii.emplace_back(text, s);
            else if (same->second.length() < s.length()) same->second = s;
        }
        for (const auto& [text, arc] : radii) inside_arc(Block(pen_, {{text, regular()}}), small_.at(Path({arc})));
    }

    /// Level, on the side of the room; seen face and casing stand beside the wall line, so it keeps off by steps.
    bool inside_arc(const Block& block, const Path& arc) {
        for (const Length gap : {4_pt, 7_pt, 11_pt, 16_pt})
            for (const double part : {0.5, 0.35, 0.65, 0.22, 0.78, 0.1, 0.9}) {
                const geom::Station on = arc.at(arc.length() * part);
                const Direction in = -on.direction.left();
                const Length reach =
                    measure::abs(block.width() / 2 * in.x) + measure::abs(block.height() / 2 * in.y) + gap;
                if (labels_.place(Role::dimension, block, on.point + in * reach)) return true;
            }
        return false;
    }

    Pen& pen_;
    Rect space_;
    const plan::Piece& piece_;
    const Tape& tape_;
    const plan::ArchLines& arch_;
    std::vector<TemplateLine> lines_;
    SmallDrawing small_;
    Labels labels_;
    std::string span_;
    std::string rise_;
    std::optional<std::string> legs_;      ///< figure of both legs, or of the right one
    std::optional<std::string> left_leg_;  ///< where it differs
    Length drawn_legs_;                    ///< below the lower spring
    Length floor_;
    Length left_;
    Length right_;
    bool broken_ = false;
};

}  // namespace

void draw_opening(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    OpeningDrawing(pen, space, piece, tape).draw();
}

}  // namespace kerfpacket::sheets
