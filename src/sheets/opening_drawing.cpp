#include "sheets/opening_drawing.h"

#include <algorithm>
#include <optional>

#include "sheets/labels.h"
#include "sheets/small_drawing.h"
#include "sheets/template_drawing.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length above = Length::points(8);  // the centre line reaches beyond the crown
constexpr Length dimension_offset = Length::points(15);
constexpr Length span_height = Length::points(22);  // of the span's dimension below the drawing
/// An arch drawn lower than this is made larger, and its long legs are drawn short with a break.
constexpr Length least_head = Length::points(34);
constexpr double broken_head = 0.4;  // of the height

class OpeningDrawing {
public:
    OpeningDrawing(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape)
        : pen_(pen),
          space_(space),
          piece_(piece),
          arch_(std::get<plan::ArchLines>(piece.lines)),
          lines_(template_lines(arch_)),
          small_({}, {}, 1),
          labels_(pen, space) {
        const auto& words = pen.kit().words;
        span_ = words("drawing.span", {{"length", tape.with_unit(piece.measured_span)}});
        rise_ = words("drawing.rise", {{"length", tape.plain(piece.measured_rise)}});
        if (arch_.legs) legs_ = words("drawing.legs", {{"length", tape.plain(*arch_.legs)}});
        radius_ = words("drawing.radius", {{"length", tape.plain(piece.measured_radius)}});
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
    bool measured_to_wall() const { return piece_.measured_to == job::Surface::wall; }
    Length measured_half() const { return measured_to_wall() ? arch_.wall_half_span : arch_.finish_half_span; }
    const Path& measured() const { return measured_to_wall() ? arch_.wall : arch_.finish; }

    /// Scale and place: heights and their figures stand at the right, the span below.
    void fit() {
        Rect head = lines_.front().path.bounds();
        for (const TemplateLine& line : lines_) head = united(head, line.path.bounds());
        Length figures = pen_.width(rise_, bold());
        if (legs_) figures = std::max(figures, pen_.width(*legs_, regular()));
        const Length side = dimension_offset + figures + 8_pt;
        const Length room_x = std::max(space_.width() - side - 8_pt, 10_pt);
        const Length room_y = std::max(space_.height() - above - span_height, 10_pt);
        const Length stub = arch_.legs ? Length() : -head.low.y;
        double scale = room_x / head.width();
        const Length up = head.high.y;
        const Length down = arch_.legs.value_or(stub);
        scale = std::min(scale, room_y / (up + down));
        drawn_legs_ = down * scale;
        if (arch_.legs && up * scale < least_head) {
            scale = std::min(room_x / head.width(), room_y * broken_head / up);
            drawn_legs_ = std::min(down * scale, room_y - up * scale);
            broken_ = drawn_legs_ < down * scale - 1_pt;
        }
        const Length height = up * scale + drawn_legs_;
        const Length spare = space_.width() - side - head.width() * scale;
        const Length centre = space_.low.x + std::max(spare / 2, 8_pt) + head.width() * (scale / 2);
        // What height is left over goes above and below alike.
        const Length floor = space_.low.y + span_height + (room_y - height) / 2;
        floor_ = floor;
        right_ = centre + head.width() * (scale / 2);
        small_ = SmallDrawing({}, {centre, floor + drawn_legs_}, scale);
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
        const bool edge = line.what == Line::wall || line.what == Line::finish || line.what == Line::casing_outside ||
                          line.what == Line::casing_inside;
        return edge && line.path.segments().front().is_line();
    }

    /// Uprights down to the floor; where they are drawn short, two slanted strokes break each.
    void legs() {
        if (!arch_.legs) return;
        for (const TemplateLine& line : lines_) {
            if (!is_upright(line)) continue;
            const Point top = small_.at(line.path.start());
            stroke(line.what, Path::line(top, {top.x, floor_}));
        }
        pen_.line(Role::outline, {small_.at(Point{-outer_half(), {}}).x - 6_pt, floor_}, {right_ + 6_pt, floor_},
                  style().heavy);
        if (!broken_) return;
        const Length y = floor_ + drawn_legs_ * 0.4;
        for (const double side : {-1.0, 1.0}) {
            const Length out = small_.at(Point{outer_half() * side, {}}).x;
            const Length in = small_.at(Point{arch_.finish_half_span * side, {}}).x;
            const Length left = std::min(out, in) - 4_pt;
            const Length right = std::max(out, in) + 4_pt;
            const Path gap =
                Path::polyline({{left, y - 3_pt}, {right, y + 1_pt}, {right, y + 5_pt}, {left, y + 1_pt}}, true);
            pen_.fill(Role::outline, gap, Ink::white);
            pen_.line(Role::outline, {left, y - 3_pt}, {right, y + 1_pt}, style().hair);
            pen_.line(Role::outline, {left, y + 1_pt}, {right, y + 5_pt}, style().hair);
        }
    }

    Length outer_half() const { return arch_.leg_lines.back().start().x; }

    void centre_and_spring() {
        const Point crown = small_.at(Point{{}, ordinate_line(arch_).bounds().high.y});
        const Length low = arch_.legs ? floor_ : small_.at(Point{}).y - 4_pt;
        pen_.line(Role::centre, {crown.x, low}, {crown.x, crown.y + above - 2_pt}, style().hair, Dash::dash_dot);
        labels_.taken().take(Path::line({crown.x, low}, crown));
        const Length half = measured_half();
        const Path spring = Path::line(small_.at(Point{-half, {}}), small_.at(Point{half, {}}));
        pen_.stroke(Role::dimension, spring, style().hair, Dash::dashed);
        labels_.taken().take(spring);
    }

    void span() {
        const Length half = measured_half();
        const Length from = arch_.legs ? floor_ : small_.at(Point{{}, arch_.leg_lines.front().end().y}).y;
        const Length level = std::min(from, floor_) - 13_pt;
        const Point left{small_.at(Point{-half, {}}).x, level};
        const Point right{small_.at(Point{half, {}}).x, level};
        for (const Point p : {left, right})
            pen_.line(Role::dimension, {p.x, from - 2_pt}, {p.x, level - 4_pt}, style().hair);
        labels_.taken().take(level_box({{left.x, level - 5_pt}, {right.x, level + 5_pt}}));
        if (pen_.width(span_, bold()) + 22_pt < right.x - left.x) {
            pen_.dimension(left, right, span_, bold());
            return;
        }
        // Too narrow for its figure, which then stands beside the line.
        pen_.dimension(left, right, "", bold());
        pen_.text(Role::dimension, {right.x + 6_pt, level - 3_pt}, span_, bold());
    }

    /// Rise and legs as a chain at the right.
    void heights() {
        const Length x = right_ + dimension_offset;
        const Point spring = small_.at(Point{measured_half(), {}});
        const Point crown = small_.at(Point{{}, measured().bounds().high.y});
        const Length rise_base = height({x, spring.y}, {x, crown.y}, rise_, bold(), crown.y);
        pen_.line(Role::dimension, {crown.x + 4_pt, crown.y}, {x + 4_pt, crown.y}, style().hair);
        pen_.line(Role::dimension, {right_ + 3_pt, spring.y}, {x + 4_pt, spring.y}, style().hair);
        if (legs_) height({x, floor_}, {x, spring.y}, *legs_, regular(), rise_base - style().small * 1.3);
        labels_.taken().take(Path::line(crown, {x, crown.y}));
    }

    /// A dimension with its figure beside it, its baseline no higher than `highest`; returns that baseline.
    Length height(Point low, Point high, const std::string& figure, const Type& type, Length highest) {
        pen_.dimension(low, high, "", type);
        const Length base = std::min((low.y + high.y) / 2 - type.size * 0.36, highest);
        pen_.text(Role::dimension, {low.x + 6_pt, base}, figure, type);
        return base;
    }

    /// The radius under the crown and the spring line's name, where they have room.
    void inside_labels() {
        const Point spring = small_.at(Point{});
        const Length half = small_.at(Point{arch_.finish_half_span, {}}).x - spring.x;
        const Block radius(pen_, {{radius_, regular()}});
        const Block name(pen_, {{pen_.kit().words("drawing.spring_line"), {Face::regular, style().tiny}}});
        const Length crown = small_.at(Point{{}, arch_.finish.bounds().high.y}).y;
        const auto beside_centre = [&](const Block& block, Length y) {
            return Point{spring.x + (half < block.width() + 10_pt ? half / 2 : block.width() / 2 + 5_pt), y};
        };
        for (const Length y : {(crown + spring.y) / 2, spring.y - radius.height() - 3_pt, spring.y - 30_pt})
            if (labels_.place(Role::dimension, radius, beside_centre(radius, y))) break;
        // Under the spring line stand the legs, or else the span's dimension.
        const Length off = (name.height() / 2 + 4_pt) * (arch_.legs ? -1.0 : 1.0);
        const Point right = beside_centre(name, spring.y + off);
        labels_.place(Role::dimension, name, {spring.x * 2 - right.x, right.y});
    }

    Pen& pen_;
    Rect space_;
    const plan::Piece& piece_;
    const plan::ArchLines& arch_;
    std::vector<TemplateLine> lines_;
    SmallDrawing small_;
    Labels labels_;
    std::string span_;
    std::string rise_;
    std::optional<std::string> legs_;
    std::string radius_;
    Length drawn_legs_;
    Length floor_;
    Length right_;
    bool broken_ = false;
};

}  // namespace

void draw_opening(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    OpeningDrawing(pen, space, piece, tape).draw();
}

}  // namespace kerfpacket::sheets
