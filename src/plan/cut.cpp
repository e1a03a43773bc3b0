#include "plan/cut.h"

namespace kerfpacket::plan {

Length usual_depth(const job::Board& board) { return board.thickness.value / 2; }

std::vector<Length> plies_of(const job::Board& board) {
    Length sum;
    for (const auto& ply : board.plies) sum += ply.value;
    std::vector<Length> plies;
    for (const auto& ply : board.plies) plies.push_back(ply.value * (board.thickness.value / sum));
    return plies;
}

}  // namespace kerfpacket::plan
