#include <cmath>

#include "sheets/blanks/field_pages.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length height = 200_pt;
constexpr Length half = 128_pt;  ///< of the chord
constexpr Length rise = 70_pt;
constexpr Length tail = 70_pt;

/// The wall from above, with a blank for each figure; H marks what is checked.
class WallField {
public:
    WallField(FieldForm& form, const Rect& space)
        : form_(form), pen_(form.pen()), middle_((space.low.x + space.high.x) / 2), base_(space.low.y + 62_pt) {}

    void draw() {
        const Length radius = (half * (half / rise) + rise) / 2;
        const Angle angle = Angle::radians(std::asin(half / radius));
        pen_.stroke(Role::outline, Path::arc(at(half, {}), at(-half, {}), angle * 2), style().heavy);
        tails(angle);
        pen_.line(Role::outline, at(-half, {}), at(half, {}), style().hair, Dash::dashed);
        for (const double side : {-1.0, 1.0})
            pen_.line(Role::dimension, at(half * side, -4_pt), at(half * side, -32_pt), style().hair);
        form_.dimension(at(-half, -28_pt), at(half, -28_pt), {form_.words("chord"), "wall-chord", "chord"});
        form_.dimension_beside(at({}, {}), at({}, rise), {form_.words("mid"), "wall-rise", "rise"}, Align::right);
        halves(radius);
        const Type small = Type{Face::regular, style().small}.centred();
        pen_.text(Role::text, at({}, rise + 18_pt), form_.words("convex_side"), small);
        pen_.text(Role::text, at(-half / 2, 8_pt), form_.words("concave_side"), small);
        pen_.text(Role::text, at(half * 0.7, 5_pt), form_.words("string"), small);
    }

private:
    const fonts::Style& style() const { return form_.style(); }
    Point at(Length x, Length y) const { return {middle_ + x, base_ + y}; }

    /// Straight on from where the arc ends.
    void tails(Angle angle) {
        for (const double side : {-1.0, 1.0}) {
            const Point end = at(half * side, {});
            const Point far = end + Point{tail * (std::cos(angle.radians()) * side), -tail * std::sin(angle.radians())};
            pen_.line(Role::outline, end, far, style().heavy);
            const Point shift = Point{} + geom::direction(end, far).left() * (16_pt * side);
            form_.dimension_beside(end + shift, far + shift,
                                   {form_.words("tail"), side < 0 ? "wall-tail-left" : "wall-tail-right",
                                    side < 0 ? "tails [left, ..]" : "tails [.., right]"},
                                   side < 0 ? Align::left : Align::right);
        }
    }

    /// String from each end to the middle, and the wall's distance from its middle.
    void halves(Length radius) {
        const Point crown = at({}, rise);
        for (const double side : {-1.0, 1.0}) {
            const Point end = at(half * side, {});
            pen_.line(Role::dimension, end, crown, style().hair, Dash::dotted);
            const Point from = geom::middle(end, crown);
            const Length string = geom::distance(end, crown);
            const Length off =
                radius - measure::Length::mm(std::sqrt(radius.mm() * radius.mm() - string.mm() * string.mm() / 4));
            const Direction out = geom::direction(end, crown).left();
            pen_.line(Role::dimension, from, from + out * (off * -side), style().hair);
            pen_.text(Role::text, from + out * ((off + 9_pt) * -side) - Point{6_pt, 4_pt}, side < 0 ? "H1" : "H2",
                      {Face::bold, style().text});
        }
    }

    FieldForm& form_;
    Pen& pen_;
    Length middle_;
    Length base_;
};

}  // namespace

void field_wall(FieldForm& form) {
    form.heading("wall_drawing", "[[wall]]");
    {
        const Scope figure = form.pen().figure(form.pen().kit().words("figure.field_wall"));
        WallField(form, form.drawing(height)).draw();
    }
    form.blanks(
        {{form.words("or_radius"), "wall-radius", "radius"}, {form.words("and_angle"), "wall-angle", "angle", false}});
    form.choices(form.words("side"), "wall-side", "side",
                 {{form.words("concave"), "concave"}, {form.words("convex"), "convex"}});
    field_surface(form, "wall");
    form.blanks({{form.words("board_width"), "wall-width", "[wall.board] width"},
                 {form.words("quantity"), "wall-quantity", "quantity", false}});
    form.blanks({{form.words("step_rise"), "wall-step-rise", "rake [1, ..]"},
                 {form.words("step_run"), "wall-step-run", "rake [.., 2]"}});
    form.choices(form.words("climbs"), "wall-climbs", "climbs",
                 {{form.words("to_right"), "right"}, {form.words("to_left"), "left"}});
    form.heading("checks", form.words("checks_aside"));
    form.blanks({{form.words("check_h1"), "wall-h1"}, {form.words("check_h2"), "wall-h2"}});
    form.skip(4_pt);
    form.say("check_halves");
}

}  // namespace kerfpacket::sheets
