#include "sheets/layout/lane.h"

#include <algorithm>

namespace kerfpacket::sheets {

bool Lane::is_free(Length from, Length to) const {
    return from >= left_ && to <= right_ && std::none_of(taken_.begin(), taken_.end(), [&](const auto& span) {
               return from < span.second && span.first < to;
           });
}

std::optional<Length> Lane::widest_free(Length width) const {
    auto spans = taken_;
    std::sort(spans.begin(), spans.end());
    spans.emplace_back(right_, right_);
    Length reached = left_;
    Length best;
    std::optional<Length> found;
    for (const auto& [from, to] : spans) {
        const Length free = std::min(from, right_) - reached;
        if (free >= width && free > best) {
            best = free;
            found = reached;
        }
        reached = std::max(reached, to);
    }
    return found;
}

}  // namespace kerfpacket::sheets
