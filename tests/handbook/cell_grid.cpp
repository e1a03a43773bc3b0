#include "cell_grid.h"

#include <algorithm>
#include <vector>

namespace kerfpacket::elements {
namespace {

/// Where rectangles end, from the corner (left out) to the far end of a zone.
std::vector<double> graded(double zone, const Grading& grading) {
    std::vector<double> ends;
    double end = 0;
    double size = 1;
    for (int i = 0; i < grading.layers; ++i, size *= grading.growth) {
        for (int part = 1; part <= grading.parts; ++part) ends.push_back(end + size * part / grading.parts);
        end += size;
    }
    for (double& e : ends) e *= zone / end;
    return ends;
}

/// Lines of nodes from 0 over `corner` to `end`: where rectangles end, and half-way between.
Eigen::ArrayXd lines(double corner, double end, const Grading& grading, const std::vector<double>& also = {}) {
    std::vector<double> ends{corner};
    for (const double e : graded(corner, grading)) ends.push_back(corner - e);
    ends.back() = 0;
    std::reverse(ends.begin(), ends.end());
    if (end > corner)
        for (const double e : graded(end - corner, grading)) ends.push_back(corner + e);
    for (const double height : also) {
        const auto after = std::find_if(ends.begin(), ends.end(), [&](double e) { return e > height - 1e-9; });
        if (after == ends.end() || *after > height + 1e-9) ends.insert(after, height);
    }
    Eigen::ArrayXd found(2 * static_cast<Index>(ends.size()) - 1);
    for (Index i = 0; i < found.size(); ++i)
        found[i] = (ends[static_cast<std::size_t>(i / 2)] + ends[static_cast<std::size_t>((i + 1) / 2)]) / 2;
    return found;
}

}  // namespace

Grid::Grid(const bend::Cell& cell, const Grading& grading)
    : half_kerf_(cell.kerf / cell.thickness / 2),
      web_(cell.web() / cell.thickness),
      x_(lines(half_kerf_, cell.spacing / cell.thickness / 2, grading)),
      y_(lines(web_, 1, grading, grading.also)) {
    numbers_.setConstant(x_.size(), y_.size(), -1);
    for (Index j = 1; j < y_.size(); j += 2) {
        for (Index i = 1; i < x_.size(); i += 2) {
            if (!wood(i, j)) continue;
            for (const auto& [a, b] : element_nodes) {
                Index& number = numbers_(i + a, j + b);
                if (number < 0) number = count_++;
            }
        }
    }
}

}  // namespace kerfpacket::elements
