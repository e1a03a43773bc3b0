#include "sheets/figure_table.h"

#include "sheets/furniture.h"

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
    const auto row = [&](const std::vector<std::string>& cells, Role role, const Type& type) {
        Length x = left;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const Length column = (right - left) * table.shares.at(i);
            Type fitting = type;
            if (pen.width(cells[i], fitting) > column - 6_pt)
                fitting.face = type.face == Face::bold ? Face::condensed_bold : Face::condensed;
            pen.text(role, {x, y}, cells[i], fitting);
            x += column;
        }
    };
    row(table.heads, Role::text, {Face::regular, style.small});
    for (const auto& cells : table.rows) {
        y -= row_height;
        row(cells, Role::dimension, {Face::bold, style.text});
    }
    return y;
}

}  // namespace kerfpacket::sheets
