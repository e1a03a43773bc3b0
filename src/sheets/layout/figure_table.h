#pragma once
// A small table of words and figures under a heading.

#include <string>
#include <utility>
#include <vector>

#include "sheets/layout/flow.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

struct FigureTable {
    struct Cell {
        Cell(std::string words, bool bold = true) : text(std::move(words)), strong(bold) {}
        std::string text;
        bool strong;
    };

    std::string heading;
    std::string aside;
    std::vector<std::string> heads;  ///< of the columns
    std::vector<double> shares;      ///< of the columns in the table's width
    std::vector<std::vector<Cell>> rows;
};

/// Height from the heading's baseline down to the last row's.
Length height_of(const FigureTable& table, const fonts::Style& style);

/// Draws the table with its heading's baseline at `y`; returns the last row's.
Length draw_table(Pen& pen, Length left, Length right, Length y, const FigureTable& table);

/// The whole table on one page of a flow.
void pour(Flow& flow, const FigureTable& table);

}  // namespace kerfpacket::sheets
