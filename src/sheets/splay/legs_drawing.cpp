#include "sheets/splay/legs_drawing.h"

#include <algorithm>
#include <cmath>

#include "sheets/splay/flat_drawing.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

class Legs {
public:
    Legs(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape)
        : pen_(pen), space_(space), piece_(piece), splay_(*piece.splay), tape_(tape) {}

    void draw() {
        const Length outline_to = space_.low.x + space_.width() * 0.5;
        outline({space_.low, {outline_to, space_.high.y}});
        section({{outline_to + 16_pt, space_.low.y}, space_.high});
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Type small() const { return {Face::regular, style().small}; }
    Type bold() const { return {Face::bold, style().small}; }

    /// Lying on its long edge, its top at the right: not to scale.
    void outline(const Rect& room) {
        const plan::LegBoard& leg = piece_.leg_boards.front();
        const Length high = room.high.y - 4_pt;
        const Length low = room.low.y + style().small * 2.6;
        const Length right = room.high.x - 10_pt;
        const Length narrow_right = climbs(leg, tape_) ? right - 16_pt : right;
        const Path board =
            Path::polyline({{room.low.x, low}, {narrow_right, low}, {right, high}, {room.low.x, high}}, true);
        pen_.stroke(Role::outline, board, style().heavy);
        const Length x = room.low.x + 8_pt;
        const Length width = narrow_right - x - 8_pt;
        const auto say = [&](Length y, const std::string& text, const Type& type) {
            pen_.text(Role::text, {x, y}, text, pen_.fitting(text, type, width));
        };
        say(high - style().small * 1.3, edge_name(splay_, true, pen_.kit()), bold());
        say(low + 5_pt, edge_name(splay_, false, pen_.kit()), bold());
        pen_.text(Role::text, {narrow_right - 8_pt, (low + high) / 2 - style().small * 0.35}, words("flat.leg_top"),
                  small().at_right());
        const Length y = low - style().small * 1.5;
        pen_.dimension({room.low.x, y}, {narrow_right, y}, lengths(), bold());
    }

    std::string length_of(const plan::LegBoard& leg) const {
        std::string narrow = tape_.with_unit(leg.face);
        if (!climbs(leg, tape_)) return narrow;
        return words("flat.leg_climbs", {{"narrow", narrow}, {"wide", tape_.with_unit(leg.face + leg.climb)}});
    }

    /// Of both where they differ.
    std::string lengths() const {
        const auto& legs = piece_.leg_boards;
        std::string first = length_of(legs.front());
        if (legs.size() == 2 && length_of(legs[1]) == first) return first;
        std::string all;
        for (const plan::LegBoard& leg : legs)
            all += (all.empty() ? "" : "; ") +
                   words(leg.side == job::End::left ? "flat.left_leg" : "flat.right_leg", {{"length", length_of(leg)}});
        return all;
    }

    /// The right leg from above, the room below.
    void section(const Rect& room) {
        const Length say_from = room.low.x + room.width() * 0.5;
        const Length high = room.high.y - style().small * 1.4;
        const Length low = room.low.y + style().small * 1.6;
        const Length deep = high - low;
        const Length side = std::min(deep * splay_.tangent(), say_from - room.low.x - 50_pt);
        const Length thick = std::clamp(deep * (splay_.thickness / splay_.depth), 5_pt, 14_pt);
        const Length x = room.low.x + 30_pt;
        // Away from the opening is to the right; the wide side stands further out.
        const Length near_out = splay_.wide_at_room ? side : Length();
        const Length far_out = side - near_out;
        for (const Length y : {low, high})
            pen_.line(Role::centre, {x - 28_pt, y}, {say_from - 2_pt, y}, style().fine, Dash::dash_dot);
        pen_.stroke(
            Role::outline,
            Path::polyline(
                {{x + near_out, low}, {x + near_out + thick, low}, {x + far_out + thick, high}, {x + far_out, high}},
                true),
            style().heavy);
        const Length narrow_y = splay_.wide_at_room ? high : low;
        const Length wide_y = splay_.wide_at_room ? low : high;
        pen_.line(Role::dimension, {x, narrow_y}, {x, narrow_y + (wide_y - narrow_y) * 0.55}, style().fine,
                  Dash::dashed);
        const std::string angle = words("work_order.angle", {{"angle", degrees_text(splay_.alpha, pen_.kit())}});
        pen_.text(Role::dimension, {x - 4_pt, (low + high) / 2 - style().small * 0.35}, angle, bold().at_right());
        const auto say = [&](Length y, const std::string& text, const Type& type) {
            pen_.text(Role::text, {say_from, y}, text, pen_.fitting(text, type, room.high.x - say_from));
        };
        say(high - style().small * 0.35, words("flat.far_side"), small());
        say(low - style().small * 0.35, words("flat.room_side"), small());
        const Length between = (high - low) / 4;
        say(high - between - style().small * 0.35, words("flat.leg_seen", {{"width", tape_.with_unit(splay_.slant())}}),
            bold());
        say(high - between * 2 - style().small * 0.35,
            words("flat.leg_sawn", {{"width", tape_.with_unit(splay_.sawn_width())}}), bold());
        say(high - between * 3 - style().small * 0.35, words("flat.leg_tilt", {{"angle", angle}}), small());
    }

    Pen& pen_;
    Rect space_;
    const plan::Piece& piece_;
    const plan::Splay& splay_;
    const Tape& tape_;
};

}  // namespace

Length legs_height(const plan::Piece& piece, const fonts::Style& style) {
    return piece.leg_boards.empty() ? Length() : style.small * 9.5;
}

void draw_legs(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    if (piece.leg_boards.empty()) return;
    const Scope figure =
        pen.figure(pen.kit().words("figure.legs", {{"width", tape.with_unit(piece.splay->sawn_width())},
                                                   {"angle", degrees_text(piece.splay->alpha, pen.kit())}}));
    Legs(pen, space, piece, tape).draw();
}

}  // namespace kerfpacket::sheets
