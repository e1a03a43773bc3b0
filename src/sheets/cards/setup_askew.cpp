#include "sheets/cards/setup_askew.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "sheets/layout/furniture.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length fence_height = 12_pt;
/// As the board is drawn from above, across.
constexpr Length board_height = 76_pt;
/// Room at the right for what is set.
constexpr Length words_room = 158_pt;
/// Below the board: the arc, the handle.
constexpr Length handle_room = 54_pt;

/// The board at the fence from above: x along the fence, the operator below. The board lies kerf face up, its front
/// edge nearest, so that left and right are those of the room.
class AskewPlan {
public:
    AskewPlan(Pen& pen, const plan::Plan& plan, const plan::Piece& piece, Length top)
        : pen_(pen),
          plan_(plan),
          piece_(piece),
          right_way_(piece.rake->to_the_right),
          tangent_(std::tan(piece.rake->kerf().radians())),
          left_(side_margin + 6_pt),
          right_(pen.page_width() - side_margin - words_room),
          fence_(top - fence_height - style().small),
          back_(fence_ - spacer_height()),
          front_(back_ - board_height) {}

    void draw() {
        fence_and_spacer();
        board();
        handle();
        said();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(const char* key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Length spacer_height() const { return piece_.saw.spacer && *piece_.saw.spacer > Length() ? 14_pt : 0_pt; }

    /// Where a kerf that meets the front edge at x stands at a height.
    Point on_kerf(Length x, Length y) const { return {x + (y - front_) * (right_way_ ? -tangent_ : tangent_), y}; }
    /// How far the kerfs lean over the board.
    Length lean() const { return board_height * tangent_; }

    void fence_and_spacer() {
        const Rect fence{{left_, fence_}, {right_, fence_ + fence_height}};
        pen_.hatch(fence, 6_pt);
        pen_.box(Role::outline, fence, style().line);
        if (spacer_height() <= 0_pt) return;
        const Rect spacer{{left_, back_}, {right_, fence_}};
        pen_.box(Role::outline, spacer, style().line);
        pen_.text(Role::text, {left_ + 5_pt, back_ + 3.5_pt}, words("setup.spacer_drawn"), {Face::bold, style().small});
    }

    /// Zero at the left or at the right; from there waste, the kerfs that are cut, the blade.
    void board() {
        const bool from_left = piece_.blank().zero == job::End::left;
        const Length zero = from_left ? left_ : right_;
        const double on = from_left ? 1 : -1;
        // The plumb end cut leaves the square end of the blank at one edge or at the other.
        const bool tip_behind = right_way_ == from_left;
        const Length first = zero + (tip_behind ? lean() : 10_pt) * on;
        const Length blade = first + std::min(86_pt, (right_ - left_ - lean()) * 0.4) * on;
        pen_.line(Role::outline, {left_, front_}, {right_, front_}, style().line);
        pen_.line(Role::outline, {left_, back_}, {right_, back_}, style().line);
        pen_.line(Role::outline, {zero, front_}, {zero, back_}, style().heavy);
        waste(zero, first);
        for (Length x = first; (blade - x) * on > 3_pt; x += 6_pt * on)
            pen_.line(Role::hatch, on_kerf(x, front_), on_kerf(x, back_), x == first ? style().line : style().hair);
        pen_.line(Role::outline, on_kerf(blade, front_), on_kerf(blade, back_), style().heavy * 2);
        broken(from_left ? right_ : left_);
        const Type small{Face::regular, style().small};
        const Length far = from_left ? right_ - 10_pt : left_ + 10_pt;
        const auto say = [&](Length y, const char* key, Type type) {
            type.align = from_left ? Align::right : Align::left;
            pen_.text(Role::text, {far, y}, words(key), type);
        };
        say(back_ - style().small - 3_pt, "setup.bottom_edge", small);
        say((front_ + back_) / 2 - 3_pt, "setup.not_cut", small);
        say(front_ + 5_pt, "setup.top_edge", {Face::bold, style().small});
        Type at_zero = small;
        at_zero.align = from_left ? Align::left : Align::right;
        pen_.text(Role::text, {zero, front_ - style().small - 2_pt}, words("setup.zero_square"), at_zero);
        blade_ = blade;
    }

    void waste(Length zero, Length first) {
        constexpr int lines = 5;
        for (int i = 1; i < lines; ++i) {
            const double part = static_cast<double>(i) / lines;
            const Length x = zero + (first - zero) * part;
            const Point head = on_kerf(first, back_);
            pen_.line(Role::hatch, {x, front_}, {zero + (head.x - zero) * part, back_}, style().fine);
        }
    }

    void broken(Length x) {
        std::vector<Point> zigzag;
        constexpr int teeth = 8;
        for (int i = 0; i <= teeth; ++i)
            zigzag.push_back(
                {x + (i % 2 == 0 ? 0_pt : 4_pt), back_ + (front_ - back_) * (static_cast<double>(i) / teeth)});
        pen_.stroke(Role::outline, Path::polyline(zigzag), style().line);
    }

    /// From square to the blade, and the handle at the near end of the cut.
    void handle() {
        const Point far = on_kerf(blade_, back_);
        const Length reach = back_ - front_ + handle_room - 10_pt;
        const Point square{far.x, back_ - reach};
        const Point grip = on_kerf(blade_, back_ - reach);
        pen_.line(Role::centre, far, square, style().fine, Dash::dashed);
        pen_.line(Role::centre, on_kerf(blade_, front_), grip, style().fine, Dash::dash_dot);
        pen_.stroke(Role::outline, Path::circle(grip, 6_pt), style().line);
        const Length arc = back_ - front_ + 18_pt;
        const Angle swing = right_way_ ? piece_.rake->kerf() : -piece_.rake->kerf();
        const Point from{far.x, back_ - arc};
        const Point to{far.x + arc * std::sin(swing.radians()), back_ - arc * std::cos(swing.radians())};
        pen_.stroke(Role::dimension, Path::arc(from, to, swing), style().line);
        const geom::Direction along{std::cos(swing.radians()), std::sin(swing.radians())};
        pen_.arrow_head(Role::dimension, to, right_way_ ? along : geom::Direction{-along.x, -along.y}, 8_pt, 6_pt);
        const Type small{Face::regular, style().small};
        Type at_square = small;
        at_square.align = right_way_ ? Align::right : Align::left;
        pen_.text(Role::text, {square.x + (right_way_ ? -4_pt : 4_pt), square.y + 2_pt}, words("setup.square_zero"),
                  at_square);
        Type at_grip{Face::bold, style().text};
        at_grip.align = right_way_ ? Align::left : Align::right;
        pen_.text(Role::text, {grip.x + (right_way_ ? 11_pt : -11_pt), grip.y - 3_pt}, words("setup.handle"), at_grip);
    }

    void said() {
        const Length x = right_ + 18_pt;
        const Length room = pen_.page_width() - side_margin - x;
        const Type small{Face::regular, style().small};
        Length y = fence_ + 2_pt;
        const auto line = [&](const std::string& text, const Type& type, Length down) {
            y = y - down;
            pen_.text(Role::text, {x, y}, text, pen_.fitting(text, type, room));
        };
        line(words("setup.swing"), small, style().small);
        line(words(right_way_ ? "setup.right" : "setup.left"), {Face::bold, style().huge}, style().huge * 1.05);
        line(words("setup.angle_set"), small, style().small * 1.8);
        line(words("work_order.angle", {{"angle", degrees_text(piece_.rake->kerf(), pen_.kit())}}),
             {Face::bold, style().huge}, style().huge * 1.05);
        if (plan_.saw.mitre_limit)
            line(words("setup.angle_limit", {{"angle", degrees_text(plan_.saw.mitre_limit->value, pen_.kit())}}), small,
                 style().small * 1.6);
        line(words("setup.you_stand"), small, style().small * 1.9);
        line(words("setup.near_end"), small, style().small * 1.35);
        line(words(right_way_ ? "setup.near_right" : "setup.near_left"), small, style().small * 1.35);
    }

    Pen& pen_;
    const plan::Plan& plan_;
    const plan::Piece& piece_;
    bool right_way_;
    double tangent_;
    Length left_, right_;
    Length fence_, back_, front_;
    Length blade_{};
};

}  // namespace

Length askew_plan_height(const plan::Piece& /*piece*/, const fonts::Style& style) {
    return style.small + fence_height + 14_pt + board_height + handle_room;
}

void draw_askew_plan(Pen& pen, const plan::Plan& plan, const plan::Piece& piece, Length top) {
    const Scope figure = pen.figure(pen.kit().words(
        "figure.askew_plan", {{"angle", degrees_text(piece.rake->kerf(), pen.kit())},
                              {"side", pen.kit().words(piece.rake->to_the_right ? "setup.right" : "setup.left")}}));
    AskewPlan(pen, plan, piece, top).draw();
}

Length along_cut_height(const plan::Piece& piece, const fonts::Style& style) {
    return style.small * 3.4 + piece.cut.thickness / 2 + 22_pt;
}

void draw_along_cut(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const plan::Rake& rake = *piece.rake;
    const Scope figure = pen.figure(words("figure.along_cut", {{"cut", tape.with_unit(rake.cut())}}));
    const Length spacer = piece.saw.spacer.value_or(Length());
    const Length spacer_along = rake.along_edge(spacer);
    const Length whole = spacer_along + rake.cut();
    const Length fence = side_margin + 18_pt;
    // Half size, or less where the page is too narrow for that.
    const double scale = std::min(0.5, (pen.page_width() - side_margin - fence - 6_pt) / whole);
    const Length face = top - style.small * 1.6 - 4_pt;
    const Length table = face - piece.cut.thickness * 0.5;
    const Length back = fence + spacer_along * scale;
    const Length front = back + rake.cut() * scale;
    const Rect stop{{fence - 10_pt, table - 4_pt}, {fence, face + 8_pt}};
    pen.hatch(stop, 6_pt);
    pen.box(Role::outline, stop, style.line);
    pen.box(Role::outline, {{back, table}, {front, face}}, style.line);
    const Length groove = face - piece.cut.depth * 0.5;
    pen.line(Role::outline, {back, groove}, {front, groove}, style.heavy);
    if (spacer > Length()) pen.box(Role::outline, {{fence, table}, {back, face}}, style.line);
    if (piece.saw.rear_limit) {
        const Length centre = fence + *piece.saw.rear_limit * scale;
        pen.line(Role::centre, {centre, face + 2_pt}, {centre, face + style.small + 4_pt}, style.fine, Dash::dash_dot);
        const std::string text = words("setup.rear_limit_askew", {{"limit", tape.exact(*piece.saw.rear_limit)}});
        pen.text(Role::text, {centre + 5_pt, face + 5_pt}, text,
                 pen.fitting(text, {Face::regular, style.small}, pen.page_width() - side_margin - centre - 5_pt));
    }
    const Length y = table - style.small * 1.3 - 4_pt;
    for (const Length at : {back, front}) pen.line(Role::dimension, {at, table - 2_pt}, {at, y - 4_pt}, style.hair);
    const Type bold{Face::bold, style.small};
    if (spacer > Length()) {
        pen.line(Role::dimension, {fence, table - 5_pt}, {fence, y - 4_pt}, style.hair);
        pen.dimension({fence, y}, {back, y}, tape.plain(spacer_along), {Face::regular, style.small});
    }
    const std::string cut =
        words("setup.cut_length", {{"cut", tape.with_unit(rake.cut())}, {"width", tape.exact(piece.width)}});
    const bool inside = pen.width(cut, bold) + 20_pt < front - back;
    pen.dimension({back, y}, {front, y}, inside ? cut : std::string(), bold);
    if (!inside)
        pen.text(Role::dimension, {front + 8_pt, y - 3_pt}, cut,
                 pen.fitting(cut, bold, pen.page_width() - side_margin - front - 8_pt));
}

}  // namespace kerfpacket::sheets
