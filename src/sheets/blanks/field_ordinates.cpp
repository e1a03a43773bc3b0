#include <array>

#include "sheets/blanks/field_pages.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length height = 104_pt;
constexpr Length row = 21_pt;
constexpr Length head = 16_pt;
constexpr Length gap = 12_pt;
constexpr Length for_notes = 84_pt;
constexpr int columns = 3;

/// The base line, and heights off it at stations.
void draw_base_line(FieldForm& form, const Rect& space) {
    Pen& pen = form.pen();
    const Scope figure = pen.figure(pen.kit().words("figure.field_ordinates"));
    const fonts::Style& style = form.style();
    const Length base = space.low.y + 26_pt;
    const Length left = space.low.x + 40_pt;
    const Length right = space.high.x - 40_pt;
    const std::array<Length, 6> heights{0_pt, 30_pt, 48_pt, 55_pt, 44_pt, -6_pt};
    const Length step = (right - left) / static_cast<double>(heights.size() - 1);
    pen.line(Role::outline, {left - 20_pt, base}, {right + 20_pt, base}, style.line, Dash::dashed);
    std::vector<Point> points;
    for (std::size_t i = 0; i < heights.size(); ++i) {
        const Point foot{left + step * static_cast<double>(i), base};
        points.push_back({foot.x, foot.y + heights.at(i)});
        pen.line(Role::dimension, foot, points.back(), style.line);
        pen.fill(Role::outline, Path::circle(points.back(), 1.8_pt));
    }
    pen.stroke(Role::outline, Path::polyline(points), style.hair, Dash::dotted);
    const Type small{Face::regular, style.small};
    pen.text(Role::text, {left - 20_pt, base - 11_pt}, form.words("zero_station"), small);
    pen.text(Role::text, {left + step * 2 + 5_pt, base + 18_pt}, form.words("height"), small);
    pen.text(Role::text, {left + step * 2 + 5_pt, base - 11_pt}, form.words("station"), small);
    pen.text(Role::text, {right + 20_pt, base - 20_pt}, form.words("below"), small.at_right());
}

/// Numbered rows to fill in, in columns.
void table(FieldForm& form, Unit unit) {
    Pen& pen = form.pen();
    const fonts::Style& style = form.style();
    const int rows = form.rows_left(row, head + for_notes);
    const Length width = (form.right() - side_margin - gap * (columns - 1)) / columns;
    const Length number = 24_pt;
    const std::string unit_name = Tape(unit, pen.kit().words).unit_name();
    const Rect space = form.drawing(head + row * rows);
    for (int column = 0; column < columns; ++column) {
        const Length left = side_margin + (width + gap) * column;
        const Length half = (width - number) / 2;
        const Length top = space.high.y - head;
        const Type small{Face::regular, style.small};
        const Scope whole = pen.within(Tag::table);
        const auto named = [&](Length x, const char* key) {
            const Scope cell = pen.within(Tag::header_cell);
            pen.text(Role::text, {x, top + 4_pt}, form.words(key) + ", " + unit_name, small);
        };
        {
            const Scope heads = pen.within(Tag::row);
            pen.empty_cells(1);  // over the numbers
            named(left + number + 4_pt, "station");
            named(left + number + half + 4_pt, "height");
        }
        for (int i = 0; i <= rows; ++i)
            pen.line(Role::box, {left, top - row * i}, {left + width, top - row * i}, i == 0 ? style.line : style.hair);
        for (const Length x : {left, left + number, left + number + half, left + width})
            pen.line(Role::box, {x, top}, {x, top - row * rows}, style.line);
        for (int i = 0; i < rows; ++i) {
            const Scope line = pen.within(Tag::row);
            {
                const Scope cell = pen.within(Tag::row_header);
                pen.text(Role::text, {left + number - 5_pt, top - row * (i + 1) + 7_pt},
                         std::to_string(column * rows + i + 1), Type{Face::condensed, style.text}.at_right());
            }
            const Length y = top - row * (i + 1);
            const int n = column * rows + i + 1;
            form.cell({{left + number, y}, {left + number + half, y + row}}, "points-station", n);
            form.cell({{left + number + half, y}, {left + width, y + row}}, "points-height", n);
        }
    }
}

}  // namespace

void field_ordinates(FieldForm& form, Unit unit) {
    form.heading("ordinates_drawing", "[[opening]] / [[wall]]   ordinates = [[.., ..], ..]");
    draw_base_line(form, form.drawing(height));
    form.choices(form.words("base_line"), "points-base", "",
                 {{form.words("base_springs"), "", "opening"}, {form.words("base_string"), "", "wall"}});
    field_surface(form, "points");
    form.blanks({{form.words("angle_left"), "points-angle-left", "end_angles [left, ..]", false},
                 {form.words("angle_right"), "points-angle-right", "end_angles [.., right]", false},
                 {form.words("depth_or_width"), "points-depth", "depth / [wall.board] width"}});
    form.blanks({{form.words("splay_side"), "points-splay-side", "[opening.splay] side"}});
    form.skip(4_pt);
    field_splay(form, "points", "points_splay_measured");
    form.heading("table", form.words("table_aside"));
    table(form, unit);
}

}  // namespace kerfpacket::sheets
