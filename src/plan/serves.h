#pragma once
// Whether a board that was kerfed by one plan can be made into the piece of another.

#include <array>
#include <vector>

#include "plan/piece.h"

namespace kerfpacket::plan {

/// What keeps a kerfed board from serving.
enum class Unfit {
    none,
    board,       ///< it is of another material, thickness, width or section
    kerf_width,  ///< its kerfs are wider or narrower
    too_deep,    ///< its kerfs are deeper than they are to be
    kerfs,       ///< kerfs stand where none may
    too_short,   ///< it ends before the piece does
};

struct Serves {
    Unfit unfit = Unfit::none;
    std::vector<int> to_add;  ///< kerfs that are still to be cut, by their new numbers
    bool deepen = false;      ///< all of its kerfs are to be cut deeper
    /// Left and right, as seen from the room: how much longer it is there than the new blank; negative where shorter,
    /// which the trim bears.
    std::array<Length, 2> longer;
    int misplaced = 0;       ///< how many of its kerfs stand where none may
    Length first_misplaced;  ///< the first of them, from its own zero end
    Length missing;          ///< what it is too short by, both ends together
};

/// A kerf that is this near to its mark stands on it, and a depth or a width that differs by no more is the same: the
/// finest that a tape shows. Judgement, no source.
inline constexpr Length same_kerf = Length::inches(1.0 / 64);

/// The board of `was` with all its kerfs cut and its trim still on, held against what `now` asks for. Where the kerfs
/// fit along it only when it is shifted, it is, into the trim. `finished`: what stays of the new blank, from its zero.
Serves serves(const Piece& was, const Piece& now, const std::array<Length, 2>& finished);

}  // namespace kerfpacket::plan
