#include "sheets/templates/template_joining.h"

#include <algorithm>
#include <cmath>
#include <deque>

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

/// The printed tile that has a place, or comes nearest to it.
std::size_t tile_of(const Tiling& tiling, Point place) {
    const auto& tiles = tiling.tiles();
    std::size_t best = 0;
    Length least = Length::mm(1e12);
    for (std::size_t i = 0; i < tiles.size(); ++i) {
        if (tiles[i].blank) continue;
        const Point p = geom::turned(place, -tiles[i].turn);
        const Rect& cell = tiles[i].cell;
        const Point in{std::clamp(p.x, cell.low.x, cell.high.x), std::clamp(p.y, cell.low.y, cell.high.y)};
        const Length off = geom::distance(p, in);
        if (off >= least - 1e-6_mm) continue;
        least = off;
        best = i;
    }
    return best;
}

/// Joints on the shortest way through printed tiles.
int joints_between(const Tiling& tiling, std::size_t from, std::size_t to) {
    const auto& tiles = tiling.tiles();
    std::vector<int> joints(tiles.size(), -1);
    joints[from] = 0;
    std::deque<std::size_t> next{from};
    while (!next.empty() && joints[to] < 0) {
        const Tile& tile = tiles[next.front()];
        const int here = joints[next.front()];
        next.pop_front();
        for (const auto& [right, down] : {std::pair{-1, 0}, {1, 0}, {0, -1}, {0, 1}}) {
            const Tile* beside = tiling.printed_at(tile.column + right, tile.row + down);
            if (beside == nullptr) continue;
            const auto i = static_cast<std::size_t>(beside - tiles.data());
            if (joints[i] >= 0) continue;
            joints[i] = here + 1;
            next.push_back(i);
        }
    }
    // Parts of a drawing that no row of printed tiles joins are laid out by the blank ones between.
    if (joints[to] >= 0) return joints[to];
    return std::abs(tiles[from].column - tiles[to].column) + std::abs(tiles[from].row - tiles[to].row);
}

struct Off {
    Length worst;
    Length usual;
};

Off off_in_grid(const Tiling& tiling, Point first, Point place, Length error) {
    const int joints = joints_between(tiling, tile_of(tiling, first), tile_of(tiling, place));
    return {error * joints, error * std::sqrt(joints)};
}

Off off_along(const Tiling& tiling, Point first, Point place, Length error) {
    const auto [from, to] = std::minmax({tile_of(tiling, first), tile_of(tiling, place)});
    Off off;
    double squares = 0;
    for (std::size_t i = from; i < to; ++i) {
        const Joint& joint = tiling.joints()[i];
        const Length lever = geom::distance(geom::middle(joint.inner, joint.outer), place);
        const Length turned = lever * (error / geom::distance(joint.inner, joint.outer));
        off.worst += error + turned;
        squares += error.mm() * error.mm() + turned.mm() * turned.mm();
    }
    off.usual = Length::mm(std::sqrt(squares));
    return off;
}

}  // namespace

Joining joining(const Tiling& tiling, const Landmarks& places, Length error) {
    const auto off = tiling.way() == job::Sheets::grid ? off_in_grid : off_along;
    const Off crown = off(tiling, places.first, places.crown, error);
    const Off last = off(tiling, places.first, places.last, error);
    return {{crown.worst, last.worst}, {crown.usual, last.usual}};
}

}  // namespace kerfpacket::sheets
