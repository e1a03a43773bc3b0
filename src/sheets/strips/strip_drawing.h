#pragma once
// Draws one strip, for the face or over the edge of the board: ticks, numerals, words, joints, at full size.

#include <optional>
#include <string>

#include "plan/plan.h"
#include "sheets/layout/pen.h"
#include "sheets/strips/strip_lanes.h"
#include "sheets/strips/strip_layout.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// Between which places of the page the captions above the strips stand.
struct CaptionRoom {
    Length from;
    Length to;
};

/// What a strip needs to know of its surroundings.
struct StripContext {
    const plan::Plan& plan;
    const plan::Piece& piece;
    Tape tape{measure::Unit::inch};
    int strips = 0;  ///< of this piece
    Length lap;
    Lanes lanes{};
    bool roll = false;                     ///< strips are long, and there is no header
    bool coupon = false;                   ///< the board is a coupon: it bends from end to end
    std::string whose{};                   ///< what its caption says besides, on sheets of several
    std::optional<CaptionRoom> caption{};  ///< none where the caption stands elsewhere
};

/// "Strip 2 of 5", how it is set on the blank, and which kerfs it holds.
struct Caption {
    std::string name;
    std::string how_set;
    std::string kerfs;
};
Caption caption_of(const StripContext& context, const Strip& strip, const Kit& kit);
/// On one line, its name in bold, the rest in `type`.
Length caption_width(const StripContext& context, const Strip& strip, const Kit& kit, const Type& type);

/// Draws the strip with its starting end at `start` (lower corner). It runs to the right, or to the left when the piece
/// is numbered from the right.
void draw_strip(Pen& pen, const StripContext& context, const Strip& strip, Point start);

}  // namespace kerfpacket::sheets
