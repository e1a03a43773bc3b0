#pragma once
// Eight-node rectangles over half a cell, closest at the corner of the kerf.

#include <array>
#include <vector>

#include <Eigen/Core>

#include "bend/cell.h"

namespace kerfpacket::elements {

using Eigen::Index;

/// The nodes of a rectangle in half steps from its middle: corners, then middles of the sides.
constexpr std::array<std::array<Index, 2>, 8> element_nodes{
    {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {0, -1}, {1, 0}, {0, 1}, {-1, 0}}};

/// How finely the cell is divided.
struct Grading {
    int layers = 9;              ///< elements from the corner of the kerf to each face and to each middle plane
    double growth = 1.8;         ///< of one element over its neighbour nearer to the corner
    int parts = 1;               ///< into how many parts each of them is cut besides
    std::vector<double> also{};  ///< further heights over the plain face, in T, at which rectangles end: of plies
};

/// Half a cell, from the middle of a kerf (x = 0) to the middle of the land (x = s/2), y from the plain face, in units
/// of T. Lines of nodes are half a rectangle apart.
class Grid {
public:
    Grid(const bend::Cell& cell, const Grading& grading);

    const Eigen::ArrayXd& x() const { return x_; }
    const Eigen::ArrayXd& y() const { return y_; }
    /// Whether the rectangle whose middle is there is wood and not kerf.
    bool wood(Index i, Index j) const { return x_[i] > half_kerf_ || y_[j] < web_; }
    /// Number of the node, -1 where there is no wood.
    Index number(Index i, Index j) const { return numbers_(i, j); }
    Index count() const { return count_; }

private:
    double half_kerf_, web_;
    Eigen::ArrayXd x_, y_;
    Eigen::Array<Index, Eigen::Dynamic, Eigen::Dynamic> numbers_;
    Index count_ = 0;
};

}  // namespace kerfpacket::elements
