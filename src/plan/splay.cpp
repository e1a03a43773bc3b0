#include "plan/splay.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "curve/developed.h"

namespace kerfpacket::plan {
namespace {

/// The edge as it lies flat, its middle at the origin and level there.
curve::Curve laid_flat(const Splay& splay) {
    // With the wide side at the room, left and right change places and the curve bends as before.
    const curve::Curve flat = splay.wide_at_room ? curve::developed(splay.line.reversed(), -splay.sine())
                                                 : curve::developed(splay.line, splay.sine());
    const curve::Curve level = flat.turned(-flat.at(flat.length() / 2).direction.angle());
    const Point middle = level.at(level.length() / 2).point;
    return level.moved(middle * -1);
}

}  // namespace

Splay Splay::part(const Blank& whole, Length from, Length to) const {
    const Length low = std::min(whole.from_left(from), whole.from_left(to));
    const Length high = std::max(whole.from_left(from), whole.from_left(to));
    Splay part = *this;
    part.line = line.part(low, high);
    // An end of the part that is none of the whole is a straight line.
    const std::array inner{low > Length::mm(0.001), high < whole.length - Length::mm(0.001)};
    for (std::size_t i = 0; i < inner.size(); ++i) {
        if (inner[i]) {
            part.trims[i] = {};
            part.leg_cuts[i].reset();
        } else if (part.leg_cuts[i]) {
            for (std::vector<Length>* face : {&part.leg_cuts[i]->seen, &part.leg_cuts[i]->kerf})
                for (Length& at : *face) at = at - low;
        }
    }
    return part;
}

FlatBlank::FlatBlank(const Splay& splay, const Blank& blank)
    : splay_(splay), blank_(blank), flipped_(splay.wide_at_room), edge_(laid_flat(splay)) {}

Length FlatBlank::from_left(Length from_zero) const {
    const Length from_left = blank_.from_left(from_zero);
    return flipped_ ? blank_.length - from_left : from_left;
}

Point FlatBlank::at(Length from_zero, Length across) const {
    const curve::Spot spot = edge_.at(from_left(from_zero));
    return spot.point + spot.direction.left() * across;
}

Path FlatBlank::kerf(Length from_zero) const {
    return Path::line(at(from_zero, splay_.narrow_edge()), at(from_zero, splay_.wide_edge()));
}

Path FlatBlank::along(Length across) const { return edge_.parallel(across).path(); }

Length FlatBlank::read(Length from_zero, Length across) const {
    const Length from_left_end = edge_.on_parallel(from_left(from_zero), across);
    return zero_at_left() ? from_left_end : edge_.on_parallel(edge_.length(), across) - from_left_end;
}

Path FlatBlank::outline() const {
    std::vector<geom::Segment> round = narrow().segments();
    const Path back = wide().reversed();
    round.push_back({round.back().to, back.start(), {}});
    round.insert(round.end(), back.segments().begin(), back.segments().end());
    round.push_back({back.end(), round.front().from, {}});
    return Path(std::move(round), true);
}

Length FlatBlank::radius(Length from_zero) const {
    const double bend = edge_.at(from_left(from_zero)).curvature;
    return std::abs(bend) < 1e-9 ? Length() : Length::mm(-1 / bend);
}

Path FlatBlank::across_at(const std::vector<Length>& along_line) const {
    std::vector<Point> points;
    for (std::size_t i = 0; i < along_line.size(); ++i) {
        const double part = static_cast<double>(i) / static_cast<double>(along_line.size() - 1);
        points.push_back(at(blank_.from_left(along_line[i]), splay_.narrow_edge() + splay_.sawn_width() * part));
    }
    return Path::polyline(points);
}

std::optional<FlatBlank::EndCut> FlatBlank::leg_cut(std::size_t end) const {
    const bool left = (end == 0) == (blank_.zero == job::End::left);
    const auto& cut = splay_.leg_cuts.at(left ? 0 : 1);
    if (!cut) return std::nullopt;
    return EndCut{across_at(cut->seen), across_at(cut->kerf)};
}

}  // namespace kerfpacket::plan
