#include "plan/cut.h"

namespace kerfpacket::plan {

Length usual_depth(const job::Board& board) { return board.thinnest() / 2; }

std::vector<Length> plies_of(const job::Board& board) {
    Length sum;
    for (const auto& ply : board.plies) sum += ply.value;
    std::vector<Length> plies;
    for (const auto& ply : board.plies) plies.push_back(ply.value * (board.thickness.value / sum));
    return plies;
}

MouldedEdge moulded_edge(const Cutting& cut) {
    if (!cut.moulded()) return MouldedEdge::none;
    const bool bottom = cut.profile.front().thickness < cut.thickness;
    const bool top = cut.profile.back().thickness < cut.thickness;
    if (!cut.profile_told || (!bottom && !top)) return MouldedEdge::untold;
    if (bottom && top) return MouldedEdge::both;
    return top ? MouldedEdge::top : MouldedEdge::bottom;
}

std::vector<bend::ProfilePoint> profile_of(const job::Board& board) {
    std::vector<bend::ProfilePoint> profile;
    for (const auto& [height, thickness] : board.profile) profile.push_back({height.value, thickness.value});
    if (!profile.empty() || !board.least_thickness) return profile;
    const Length whole = board.thickness.value;
    const Length thin = board.least_thickness->value;
    const Length width = board.width.value;
    return {{Length(), whole}, {width / 2, whole}, {width / 2, thin}, {width, thin}};
}

}  // namespace kerfpacket::plan
