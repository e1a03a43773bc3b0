#pragma once
// One row of words in which nothing may overlap.

#include <optional>
#include <utility>
#include <vector>

#include "measure/length.h"

namespace kerfpacket::sheets {

using measure::Length;

class Lane {
public:
    Lane(Length left, Length right) : left_(left), right_(right) {}

    /// Whether a span is free and inside the lane.
    bool is_free(Length from, Length to) const;
    /// Takes a span, whether it is free or not.
    void force(Length from, Length to) { taken_.emplace_back(from, to); }
    /// Left end of the widest free span that holds `width`, or nothing.
    std::optional<Length> widest_free(Length width) const;

private:
    Length left_;
    Length right_;
    std::vector<std::pair<Length, Length>> taken_;
};

}  // namespace kerfpacket::sheets
