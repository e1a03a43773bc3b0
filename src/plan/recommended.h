#pragma once
// A job that draws another curve through its measured points than the one that is recommended.

#include "plan/piece.h"

namespace kerfpacket::plan {

/// The pieces of a place with what their boards would come to on the recommended curve, and a caution where that is
/// worse.
std::vector<Piece> beside_recommended(std::vector<Piece> pieces, const job::Opening& opening, const job::Job& job);
std::vector<Piece> beside_recommended(std::vector<Piece> pieces, const job::Wall& wall, const job::Job& job);

}  // namespace kerfpacket::plan
