#pragma once
// What `check` tells of the flat blank of a splayed jamb, in words and to scripts.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "plan/piece.h"
#include "sheets/words/tape.h"

namespace kerfpacket::cli {

/// A line along the flat blank, the same distance from its narrow edge all the way.
struct FlatEdge {
    measure::Length along;                  ///< from end to end
    measure::Length bend;                   ///< without the trims
    measure::Length gap;                    ///< from kerf to kerf, where they stand furthest apart
    std::optional<measure::Length> radius;  ///< of one arc
};

/// The line so far across from the one that keeps its length at the narrow edge; the piece splays.
FlatEdge flat_edge(const plan::Piece& piece, measure::Length across);

/// A line of the report each: what it is called, and what is told.
std::vector<std::pair<const char*, std::string>> splay_lines(const plan::Piece& piece, const sheets::Tape& tape);

}  // namespace kerfpacket::cli
