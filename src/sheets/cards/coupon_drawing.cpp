#include "sheets/cards/coupon_drawing.h"

#include <algorithm>
#include <cmath>

#include "sheets/layout/furniture.h"

namespace kerfpacket::sheets {
namespace {

// The coupon as drawn.
constexpr Length plain_radius = 230_pt;
constexpr Length thickness = 26_pt;
constexpr Length kerf_depth = 15_pt;
constexpr Angle half_turn = Angle::degrees(40);
constexpr int kerfs = 16;  // even: the middle, where the rise is measured, is uncut

constexpr Length above = 12_pt;
constexpr Length to_dimension = 18_pt;  ///< from the drawing's lowest point

class CouponDrawing {
public:
    CouponDrawing(Pen& pen, bool outside, Length top)
        : pen_(pen),
          outside_(outside),
          centre_{pen.page_width() / 2, top - above - std::max(plain_radius, kerf_face())} {}

    void draw() {
        board();
        for (int i = 0; i < kerfs; ++i) kerf(half_turn * ((2.0 * i + 1) / kerfs - 1));
        measures();
        faces();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    Length kerf_face() const { return plain_radius + (outside_ ? thickness : -thickness); }
    Length kerf_bottom() const { return kerf_face() + (outside_ ? -kerf_depth : kerf_depth); }
    /// At an angle from the middle, clockwise.
    Point at(Length radius, Angle from_middle) const {
        return {centre_.x + radius * std::sin(from_middle.radians()),
                centre_.y + radius * std::cos(from_middle.radians())};
    }

    void board() {
        const auto arc = [&](Length radius, Length width) {
            pen_.stroke(Role::outline, Path::arc(at(radius, -half_turn), at(radius, half_turn), half_turn * -2), width);
        };
        arc(plain_radius, style().heavy);
        arc(kerf_face(), style().line);
        for (const Angle end : {-half_turn, half_turn})
            pen_.line(Role::outline, at(plain_radius, end), at(kerf_face(), end), style().line);
    }

    /// Wider at the mouth when it opens, narrower when it closes.
    void kerf(Angle middle) {
        const Angle bottom = Angle::radians(1.7_pt / kerf_bottom());
        const Angle mouth = Angle::radians((outside_ ? 2.8_pt : 0.7_pt) / kerf_face());
        pen_.fill(Role::outline, Path::polyline({at(kerf_bottom(), middle - bottom), at(kerf_bottom(), middle + bottom),
                                                 at(kerf_face(), middle + mouth), at(kerf_face(), middle - mouth)},
                                                true));
    }

    void measures() {
        const auto& words = pen_.kit().words;
        const Type strong{Face::bold, style().strong};
        const Point left = at(plain_radius, -half_turn);
        const Point right = at(plain_radius, half_turn);
        const Point crown = at(plain_radius, {});
        pen_.line(Role::dimension, left, right, style().line, Dash::dashed);
        pen_.dimension({crown.x, left.y}, crown, {}, strong);
        // Beside the dimension as far as the board's inner face, where the words' tops are.
        const Length inner = std::min(plain_radius, kerf_face());
        const Length up = left.y + 20_pt - centre_.y;
        const Length room = inner * std::sqrt(1 - up / inner * (up / inner)) - 13_pt;
        pen_.text(Role::dimension, {crown.x + 9_pt, left.y + 9_pt}, words("coupon.rise"),
                  pen_.fitting(words("coupon.rise"), strong, room));
        const Length level = std::min(left.y, at(kerf_face(), half_turn).y) - to_dimension;
        for (const Point end : {left, right})
            pen_.line(Role::dimension, {end.x, level - 5_pt}, {end.x, end.y - 2_pt}, style().hair);
        pen_.dimension({left.x, level}, {right.x, level}, words("coupon.chord"), strong);
    }

    void faces() {
        const auto& words = pen_.kit().words;
        const Type type = Type{Face::regular, style().text}.at_right();
        const Length outer = std::max(plain_radius, kerf_face());
        const Point over = at(outer, Angle::degrees(-22));
        pen_.text(Role::text, {over.x - 8_pt, over.y + 2_pt},
                  words(outside_ ? "coupon.kerf_face_outside" : "coupon.plain_face_outside"), type);
        const std::string& inside = words(outside_ ? "coupon.plain_face_inside" : "coupon.kerf_face_inside");
        const Length right = centre_.x - 14_pt;
        pen_.text(Role::text, {right, at(plain_radius, half_turn).y + (outside_ ? 9_pt : -15_pt)}, inside,
                  pen_.fitting(inside, type, right - at(kerf_face(), -half_turn).x - 16_pt));
    }

    Pen& pen_;
    bool outside_;
    Point centre_;
};

}  // namespace

Length coupon_drawing_height(bend::KerfsOn side) {
    const double up = 1 - std::cos(half_turn.radians());
    const Length ends = side == bend::KerfsOn::outside ? thickness : thickness * std::cos(half_turn.radians());
    return above + plain_radius * up + ends + to_dimension + 6_pt;
}

void draw_coupon(Pen& pen, bend::KerfsOn side, Length top) {
    const Scope figure = pen.figure(pen.kit().words("figure.coupon"));
    CouponDrawing(pen, side == bend::KerfsOn::outside, top).draw();
}

void draw_one_kerf(Pen& pen, Length top) {
    const Scope figure = pen.figure(pen.kit().words("figure.one_kerf"));
    const fonts::Style& style = pen.kit().style;
    constexpr Length thick = 14_pt;
    constexpr Length web = 4_pt;
    constexpr Angle raised = Angle::degrees(7);
    const Length far = 250_pt;
    const Point foot{pen.page_width() / 2 - 90_pt, top - 58_pt};  // under the kerf, on the bench
    const auto on = [&](Length along, Length up) {
        return Point{foot.x + along * std::cos(raised.radians()) - up * std::sin(raised.radians()),
                     foot.y + along * std::sin(raised.radians()) + up * std::cos(raised.radians())};
    };
    // Closed: the two sides of the kerf lean on each other at its mouth.
    pen.stroke(Role::outline,
               Path::polyline({foot,
                               {foot.x - 110_pt, foot.y},
                               {foot.x - 110_pt, foot.y + thick},
                               {foot.x - 1_pt, foot.y + thick},
                               {foot.x - 1_pt, foot.y + web}}),
               style.heavy);
    pen.stroke(Role::outline, Path::polyline({on(0.6_pt, web), on(0.6_pt, thick), on(far, thick), on(far, 0_pt), foot}),
               style.heavy);
    pen.line(Role::outline, {foot.x - 130_pt, foot.y - 1_pt}, {foot.x + far + 20_pt, foot.y - 1_pt}, style.line);
    pen.text(Role::text, {foot.x - 55_pt, foot.y + thick + 5_pt}, pen.kit().words("coupon.one_kerf_clamp"),
             Type{Face::regular, style.small}.centred());
    const Point end = on(far, 0_pt);
    const Type strong{Face::bold, style.text};
    pen.dimension({end.x, foot.y}, end, {}, strong);
    pen.text(Role::dimension, {end.x + 8_pt, foot.y + 10_pt}, pen.kit().words("coupon.rise"), strong);
    pen.dimension({foot.x, foot.y - 11_pt}, {end.x, foot.y - 11_pt}, pen.kit().words("coupon.chord"), strong);
}

}  // namespace kerfpacket::sheets
