#include "sheets/layout/figure_table.h"

#include "sheets/layout/furniture.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length heads_below = Length::points(18);  // the first row of figures follows as far below its heads
constexpr Length row_height = Length::points(15);

}  // namespace

Length height_of(const FigureTable& table) { return heads_below + row_height * static_cast<double>(table.rows.size()); }

Length draw_table(Pen& pen, Length left, Length right, Length y, const FigureTable& table) {
    const auto& style = pen.kit().style;
    section(pen, left, right, y, table.heading, table.aside);
    y -= heads_below;
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
        y -= row_height;
        row(cells, Tag::cell, Role::dimension, style.text);
    }
    return y;
}

}  // namespace kerfpacket::sheets
