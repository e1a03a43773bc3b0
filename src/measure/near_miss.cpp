#include "measure/near_miss.h"

#include <algorithm>
#include <numeric>

namespace kerfpacket::measure {
namespace {

/// Optimal string alignment distance: letters put in, left out, changed, or two neighbours exchanged.
std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> above_that(b.size() + 1);
    std::vector<std::size_t> above(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(above.begin(), above.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
            row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + change});
            const bool exchanged = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (exchanged) row[j] = std::min(row[j], above_that[j - 2] + 1);
        }
        std::swap(above_that, above);
        std::swap(above, row);
    }
    return above[b.size()];
}

}  // namespace

std::string near_miss(std::string_view word, const std::vector<std::string_view>& known) {
    const std::size_t most = word.size() / 3;
    std::size_t best = most + 1;
    std::string_view nearest;
    for (const auto candidate : known) {
        // The distance is at least the difference in length; this also keeps hostile words cheap.
        if (word.size() > candidate.size() + most || candidate.size() > word.size() + most) continue;
        const std::size_t distance = edit_distance(word, candidate);
        if (distance < best) {
            best = distance;
            nearest = candidate;
        }
    }
    return std::string(nearest);
}

}  // namespace kerfpacket::measure
