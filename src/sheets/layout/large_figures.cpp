#include "sheets/layout/large_figures.h"

namespace kerfpacket::sheets {

void pour(Flow& flow, const LargeFigures& figures) {
    const fonts::Style& style = flow.style();
    const Rect room = flow.take(style.small + style.huge * 1.2);
    Pen pen = flow.pen();
    const Length step = room.width() / 4;
    Length x = room.low.x;
    for (const auto& [what, value] : figures) {
        const Scope pair = pen.within(Tag::paragraph);
        if (x > room.low.x) pen.line(Role::furniture, {x - 10_pt, room.low.y}, {x - 10_pt, room.high.y}, style.line);
        pen.text(Role::text, {x, first_base(room, style.small)}, what,
                 pen.fitting(what, {Face::regular, style.small}, step - 14_pt));
        pen.text(Role::text, {x, room.low.y + style.huge * 0.2}, value,
                 pen.fitting(value, {Face::bold, style.huge}, step - 14_pt));
        x += step;
    }
}

}  // namespace kerfpacket::sheets
