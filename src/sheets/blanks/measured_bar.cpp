#include "sheets/blanks/measured_bar.h"

#include <cmath>

namespace kerfpacket::sheets {
namespace {

void numeral(Pen& pen, Point on, Direction along, Direction inner, int n, bool end, bool inch) {
    const Kit& kit = pen.kit();
    const std::string figure =
        end ? kit.words(inch ? "page.inches" : "page.millimetres", {{"n", std::to_string(n)}}) : std::to_string(n);
    const bool level = along.x > 0.5;
    Type type{end ? Face::bold : Face::regular, kit.style.small};
    type.align = end ? Align::right : level ? Align::centre : Align::left;
    // At the end of an upright bar the figure stands along it: there is little room beside it.
    if (end && !level) type.angle = Angle::degrees(90);
    const Length off = end && !level ? 15_pt : 8_pt;
    const Length back = end ? -2_pt : level ? 0_pt : -3_pt;
    pen.text(Role::check_bar, on + inner * off + along * back, figure, type);
}

}  // namespace

Length bar_step(Unit unit) { return unit == Unit::inch ? 1_in : 10_mm; }

void draw_measured_bar(Pen& pen, Point zero, Direction along, Direction inner, Length length, Unit unit) {
    const auto& style = pen.kit().style;
    const bool inch = unit == Unit::inch;
    pen.line(Role::check_bar, zero, zero + along * length, style.line);
    const int count = static_cast<int>(std::lround(length / bar_step(unit)));
    for (int i = 0; i <= count; ++i) {
        const Point on = zero + along * (bar_step(unit) * i);
        const bool end = i == 0 || i == count;
        const bool numbered = i > 0 && (inch || i % 5 == 0 || end);
        pen.line(Role::check_bar, on - inner * (end ? 6_pt : 0_pt), on + inner * (numbered || end ? 6_pt : 3_pt),
                 style.hair);
        if (numbered && (end || count - i > (inch ? 0 : 4)))
            numeral(pen, on, along, inner, inch ? i : i * 10, end, inch);
    }
}

}  // namespace kerfpacket::sheets
