#include "sheets/labels/label_drawing.h"

#include <algorithm>
#include <variant>
#include <vector>

#include "sheets/drawings/small_drawing.h"
#include "sheets/layout/sheet_code.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length above_board = 5_pt;
constexpr Length board_height = 16_pt;
constexpr Length most_board = 200_pt;
constexpr Length least_board = 100_pt;
constexpr Length most_shape = 44_pt;

/// Kerf face up as it lies before its user: the front edge drawn heavy, the zero end heavier, kerfs from the bend's
/// start to its end. Not to scale across; the kerfs are too many to draw, some stand for all.
void board(Pen& pen, const Rect& room, const plan::Piece& piece, const std::string& how) {
    const fonts::Style& style = pen.kit().style;
    const Scope figure = pen.figure(how);
    const plan::Blank& blank = piece.blank();
    const bool zero_left = zero_at_left(piece);
    const Type zero{Face::bold, style.small};
    const Length beside = 10_pt;
    const Rect wood{{room.low.x + (zero_left ? beside : Length()), room.low.y},
                    {room.high.x - (zero_left ? Length() : beside), room.high.y}};
    pen.box(Role::outline, wood, style.line);
    pen.line(Role::outline, wood.low, {wood.high.x, wood.low.y}, style.heavy);
    const Length end = zero_left ? wood.low.x : wood.high.x;
    pen.line(Role::limit, {end, wood.low.y}, {end, wood.high.y}, style.end);
    pen.text(Role::text, {zero_left ? room.low.x : room.high.x, wood.low.y + 4_pt}, pen.kit().words("labels.zero"),
             zero_left ? zero : zero.at_right());
    constexpr std::size_t drawn = 24;
    const std::size_t step = 1 + blank.kerfs.size() / drawn;
    for (std::size_t i = 0; i < blank.kerfs.size(); i += step) {
        const double from_zero = blank.kerfs[i].at / blank.length;
        const double share = zero_left ? from_zero : 1 - from_zero;
        const Length x = wood.low.x + wood.width() * share;
        pen.line(Role::tick, {x, wood.low.y}, {x, wood.high.y}, style.hair);
    }
    const std::string face = pen.kit().words("labels.kerf_face");
    pen.text_on_white(Role::text, {(wood.low.x + wood.high.x) / 2, wood.low.y + 5_pt}, face,
                      pen.fitting(face, Type{Face::bold, style.small}, wood.width() - 8_pt).centred());
}

/// A segment as it stands in its head, or a rib on its chord: which way it lies is seen at a glance.
std::vector<Path> outline_of(const plan::Label& label) {
    if (label.segment != nullptr)
        return {label.segment->inside, label.segment->outside, label.segment->left, label.segment->right};
    const Path& curve = label.piece->form->curve;
    return {curve, Path::line(curve.start(), curve.end())};
}

void shape(Pen& pen, const Rect& room, const plan::Label& label, const std::string& how) {
    const std::vector<Path> lines = outline_of(label);
    Rect all = lines.front().bounds();
    for (const Path& line : lines) all = united(all, line.bounds());
    const double scale = std::min(room.width() / all.width(), room.height() / std::max(all.height(), 1_mm));
    const Scope figure = pen.figure(how);
    const SmallDrawing small(all.low, {room.low.x, room.high.y - all.height() * scale}, scale);
    for (const Path& line : lines) pen.stroke(Role::outline, small.at(line), pen.kit().style.line);
}

}  // namespace

void draw_label(page::Page& page, const LabelPlace& place, const Kit& kit) {
    Pen pen(page, kit);
    const Rect& room = place.room;
    bool first = true;
    const Length tag = place.placed.tag_width;
    if (tag > 0_pt)
        pen.fill(Role::furniture, Path::rectangle({{room.low.x, room.high.y - place.placed.tag_height},
                                                   {room.low.x + tag, room.high.y}}));
    for (const PlacedLine& line : place.placed.lines) {
        const Scope part = pen.within(first ? Tag::heading : Tag::paragraph);
        pen.text(Role::text, {room.low.x + line.x, room.high.y - line.down}, line.text, line.type);
        first = false;
    }
    draw_sheet_code(page, *place.label.job, static_cast<std::size_t>(place.label.number),
                    {room.high.x - sheet_code_side, room.high.y - sheet_code_side});
    const Length top = room.high.y - place.placed.height - above_board;
    using Of = plan::Label::Of;
    const Of of = place.label.of;
    if (top - room.low.y < board_height || room.width() < least_board) return;
    const Rect below{{room.low.x, std::max(room.low.y, top - most_shape)},
                     {room.low.x + std::min(room.width(), most_board), top}};
    if (of == Of::blank)
        board(pen, {{below.low.x, top - board_height}, below.high}, place.label.piece->of_blank(place.label.part),
              kit.words("labels.figure", {{"tag", place.text.tag}, {"how", place.text.lines.at(2)}}));
    else if (of == Of::segment || of == Of::rib)
        shape(pen, below, place.label,
              kit.words("labels.figure_shape", {{"tag", place.text.tag}, {"what", place.text.what}}));
}

}  // namespace kerfpacket::sheets
