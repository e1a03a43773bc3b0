#include "sheets/layout/figure_table.h"

#include "sheets/layout/furniture.h"

namespace kerfpacket::sheets {
namespace {

/// From the heading down to the heads.
Length heads_below(const fonts::Style& style) { return style.small * 2; }
Length row_height(const fonts::Style& style) { return style.text * 1.36; }

}  // namespace

Length height_of(const FigureTable& table, const fonts::Style& style) {
    return heads_below(style) + row_height(style) * static_cast<double>(table.rows.size());
}

Length draw_table(Pen& pen, Length left, Length right, Length y, const FigureTable& table) {
    const auto& style = pen.kit().style;
    section(pen, left, right, y, table.heading, table.aside);
    y -= heads_below(style);
    const Scope whole = pen.within(Tag::table);
    const auto row = [&](const std::vector<FigureTable::Cell>& cells, Tag tag, Role role, Length size) {
        const Scope line = pen.within(Tag::row);
        Length x = left;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const Length column = (right - left) * table.shares.at(i);
            const bool strong = cells[i].strong;
            const Scope cell = pen.within(tag);
            pen.text(role, {x, y}, cells[i].text,
                     pen.fitting(cells[i].text, {strong ? Face::bold : Face::regular, size}, column - 6_pt));
            x += column;
        }
    };
    std::vector<FigureTable::Cell> heads;
    for (const std::string& head : table.heads) heads.emplace_back(head, false);
    row(heads, Tag::header_cell, Role::text, style.small);
    for (const auto& cells : table.rows) {
        y -= row_height(style);
        row(cells, Tag::cell, Role::dimension, style.text);
    }
    return y;
}

void pour(Flow& flow, const FigureTable& table) {
    const fonts::Style& style = flow.style();
    flow.skip(style.strong * 0.7);
    const Rect room = flow.take(style.strong + height_of(table, style) + style.text * 0.4);
    Pen pen = flow.pen();
    draw_table(pen, room.low.x, room.high.x, room.high.y - style.strong, table);
}

}  // namespace kerfpacket::sheets
