#include <cmath>

#include "job/choices.h"
#include "sheets/blanks/field_pages.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length height = 214_pt;

/// The opening as it is seen from the room, with a blank for each figure; Q and D mark what is checked.
class ArchField {
public:
    ArchField(FieldForm& form, const Rect& space)
        : form_(form),
          pen_(form.pen()),
          middle_((space.low.x + space.high.x) / 2),
          floor_(space.low.y + 30_pt),
          spring_(floor_ + 74_pt),
          crown_(spring_ + 78_pt) {}

    void draw() {
        opening();
        level(floor_ - 20_pt, -half, half, {form_.words("span"), "opening-span", "span"});
        upright(half + 40_pt, spring_, crown_, {form_.words("rise"), "opening-rise", "rise"});
        upright(-half - 40_pt, floor_, spring_, {form_.words("leg"), "opening-leg-left", "legs [left, ..]"});
        upright(half + 40_pt, floor_, spring_, {form_.words("leg"), "opening-leg-right", "legs [.., right]"});
        checks();
    }

private:
    const fonts::Style& style() const { return form_.style(); }
    Point at(Length x, Length y) const { return {middle_ + x, y}; }

    void opening() {
        const Angle sweep = Angle::radians(2 * std::asin(half / radius()));
        pen_.stroke(Role::outline, Path::arc(at(half, spring_), at(-half, spring_), sweep), style().heavy);
        for (const double side : {-1.0, 1.0})
            pen_.line(Role::outline, at(half * side, floor_), at(half * side, spring_), style().heavy);
        pen_.line(Role::outline, at(-half - 60_pt, floor_), at(half + 60_pt, floor_), style().line);
        pen_.line(Role::outline, at(-half - 46_pt, spring_), at(half + 46_pt, spring_), style().hair, Dash::dashed);
        pen_.line(Role::outline, at({}, floor_ + 8_pt), at({}, crown_ + 10_pt), style().hair, Dash::dash_dot);
        pen_.line(Role::dimension, at(4_pt, crown_), at(half + 46_pt, crown_), style().hair);
        const std::string& line = form_.words("spring_line");
        pen_.text(Role::text, at(-half - 8_pt, spring_ + 4_pt), line, Type{Face::regular, style().small}.at_right());
        pen_.text(Role::text, at({}, crown_ + 14_pt), form_.words("crown"),
                  Type{Face::regular, style().small}.centred());
    }

    Length radius() const {
        const Length rise = crown_ - spring_;
        return (half * (half / rise) + rise) / 2;
    }

    void level(Length y, Length from, Length to, const FieldBlank& blank) {
        for (const Length x : {from, to})
            pen_.line(Role::dimension, at(x, floor_ - 3_pt), at(x, y - 4_pt), style().hair);
        form_.dimension(at(from, y), at(to, y), blank);
    }

    void upright(Length x, Length from, Length to, const FieldBlank& blank) {
        form_.dimension_beside(at(x, from), at(x, to), blank, x < 0_pt ? Align::left : Align::right);
    }

    void checks() {
        const Type bold{Face::bold, style().text};
        for (const double side : {-1.0, 1.0}) {
            const Length x = half * (side / 2);
            const Length top = crown_ - radius() * (1 - std::cos(std::asin(x / radius())));
            pen_.line(Role::dimension, at(x, spring_), at(x, top), style().hair);
            pen_.text(Role::text, at(x + 4_pt, spring_ + 24_pt), side < 0 ? "Q1" : "Q2", bold);
            pen_.line(Role::dimension, at(half * -side, floor_), at(half * side, spring_), style().hair, Dash::dashed);
            pen_.text(Role::text, at(half * (side * 0.44) - 6_pt, spring_ - 14_pt), side < 0 ? "D2" : "D1", bold);
        }
    }

    static constexpr Length half = 130_pt;

    FieldForm& form_;
    Pen& pen_;
    Length middle_;
    Length floor_;
    Length spring_;
    Length crown_;
};

std::vector<FieldChoice> shapes(FieldForm& form) {
    std::vector<FieldChoice> all;
    for (const auto& [word, shape] : job::shape_words()) {
        if (shape == job::Shape::ordinates) continue;  // on a sheet of its own
        all.push_back({form.pen().kit().words(job::shape_key(word)), std::string(word)});
    }
    return all;
}

}  // namespace

void field_surface(FieldForm& form, const std::string& group) {
    form.choices(form.words("measured_to"), group + "-measured-to", "measured_to",
                 {{form.words("to_wall"), "wall"}, {form.words("to_finish"), "finish"}});
    form.choices(form.words("wall_is"), group + "-wall-is", "",
                 {{form.words("drywall"), "", "drywall"},
                  {form.words("plaster"), "", "plaster"},
                  {form.words("masonry"), "", "masonry"},
                  {form.words("bare"), "", "bare-studs"}});
}

void field_splay(FieldForm& form, const std::string& group, const std::string& measured) {
    form.choices(form.words(measured), group + "-splay-measured", "measured",
                 {{form.words("narrow"), "narrow"}, {form.words("wide"), "wide"}});
    form.choices(form.words("splay_toward"), group + "-splay-toward", "toward",
                 {{form.words("to_room"), "room"}, {form.words("from_room"), "away"}});
}

void field_arch(FieldForm& form) {
    form.heading("arch_drawing", "[[opening]]");
    {
        const Scope figure = form.pen().figure(form.pen().kit().words("figure.field_arch"));
        ArchField(form, form.drawing(height)).draw();
    }
    form.choices(form.words("shape"), "opening-shape", "shape", shapes(form));
    field_surface(form, "opening");
    form.blanks({{form.words("depth_left"), "opening-depth-left"},
                 {form.words("depth_crown"), "opening-depth", "depth"},
                 {form.words("depth_right"), "opening-depth-right"}});
    form.blanks({{form.words("splay_side"), "opening-splay-side", "[opening.splay] side"},
                 {form.words("quantity"), "opening-quantity", "quantity", false}});
    form.skip(4_pt);
    field_splay(form, "opening", "splay_measured");
    form.heading("checks", form.words("checks_aside"));
    form.blanks({{form.words("check_d1"), "opening-d1"}, {form.words("check_d2"), "opening-d2"}});
    form.blanks({{form.words("check_q1"), "opening-q1"}, {form.words("check_q2"), "opening-q2"}});
}

}  // namespace kerfpacket::sheets
