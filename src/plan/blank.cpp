#include "plan/blank.h"

#include <algorithm>

namespace kerfpacket::plan {

std::vector<Length> Blank::reverses() const {
    std::vector<Length> places;
    for (std::size_t i = 1; i < runs.size(); ++i) places.push_back(runs[i].from);
    return places;
}

double Blank::gap_ratio(std::size_t i) const {
    const double ratio = (kerfs.at(i + 1).at - kerfs.at(i).at) / (kerfs.at(i).at - kerfs.at(i - 1).at);
    return std::max(ratio, 1 / ratio);
}

}  // namespace kerfpacket::plan
