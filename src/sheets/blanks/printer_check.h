#pragma once
// The page by which a printer is measured: bars both ways, corners for the diagonals, rulers at the edges.

#include "job/media.h"
#include "measure/fraction.h"
#include "page/document.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

using measure::Length;
using measure::Unit;

/// True lengths of the two bars that are measured: whole inches, or whole centimetres. A roll too narrow for full-size
/// drawings has the level one alone, along its feed.
struct CheckBars {
    Length level;
    Length upright;
};
CheckBars printer_check_bars(const job::Media& media, Unit unit);

/// One page, upright; of a roll 36 in long, or as long as the roll is wide. A narrow roll's is a strip.
page::Document make_printer_check(const job::Media& media, Unit unit, const Kit& kit);

}  // namespace kerfpacket::sheets
