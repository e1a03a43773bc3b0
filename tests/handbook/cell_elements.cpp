#include "cell_elements.h"

#include <cmath>
#include <vector>

#include <Eigen/LU>
#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include "measure/require.h"

namespace kerfpacket::elements {
namespace {

using Matrix8 = Eigen::Matrix<double, 8, 8>;
using Vector8 = Eigen::Matrix<double, 8, 1>;
using Sparse = Eigen::SparseMatrix<double>;
using Entries = std::vector<Eigen::Triplet<double>>;

constexpr Index node_count = element_nodes.size();

/// Slope along p, on the square -1..1, of the shape function of the node at (a, b).
double slope(Index a, Index b, double p, double q) {
    const auto at = static_cast<double>(a);
    const auto beside = static_cast<double>(b);
    if (a == 0) return -p * (1 + beside * q);
    if (b == 0) return 0.5 * at * (1 - q * q);
    return 0.25 * at * (1 + beside * q) * (2 * at * p + beside * q);
}

/// Integrals, over the square -1..1, of products of the slopes of shape functions.
struct Slopes {
    Matrix8 xx = Matrix8::Zero();
    Matrix8 xy = Matrix8::Zero();
    Matrix8 yy = Matrix8::Zero();
};

/// Gauss, three points each way: exact for these polynomials.
Slopes integrate_slopes() {
    const std::array<std::array<double, 2>, 3> gauss{
        {{-std::sqrt(0.6), 5.0 / 9}, {0, 8.0 / 9}, {std::sqrt(0.6), 5.0 / 9}}};
    Slopes sum;
    for (const auto& [p, p_weight] : gauss) {
        for (const auto& [q, q_weight] : gauss) {
            Vector8 x;
            Vector8 y;
            for (Index n = 0; n < node_count; ++n) {
                const auto& [a, b] = element_nodes[static_cast<std::size_t>(n)];
                x[n] = slope(a, b, p, q);
                y[n] = slope(b, a, q, p);
            }
            sum.xx += p_weight * q_weight * x * x.transpose();
            sum.xy += p_weight * q_weight * x * y.transpose();
            sum.yy += p_weight * q_weight * y * y.transpose();
        }
    }
    return sum;
}

/// Adds the stiffness of the rectangle with its middle at (i, j). Node n moves 2 n along and 2 n + 1 through the board.
void add_element(Entries& entries, const Grid& grid, Index i, Index j, const Stuff& stuff) {
    static const Slopes slopes = integrate_slopes();
    const double tall = (grid.y()[j + 1] - grid.y()[j - 1]) / (grid.x()[i + 1] - grid.x()[i - 1]);
    const double fixed_sides = 1 / (1 - stuff.poisson * stuff.poisson * stuff.through / stuff.along);
    const double along = stuff.along * fixed_sides;
    const double through = stuff.through * fixed_sides;
    const Matrix8 uu = along * tall * slopes.xx + stuff.shear / tall * slopes.yy;
    const Matrix8 vv = through / tall * slopes.yy + stuff.shear * tall * slopes.xx;
    const Matrix8 uv = stuff.poisson * through * slopes.xy + stuff.shear * slopes.xy.transpose();
    for (Index m = 0; m < node_count; ++m) {
        for (Index n = 0; n < node_count; ++n) {
            const auto& [a, b] = element_nodes[static_cast<std::size_t>(m)];
            const auto& [c, d] = element_nodes[static_cast<std::size_t>(n)];
            const Index row = 2 * grid.number(i + a, j + b);
            const Index column = 2 * grid.number(i + c, j + d);
            entries.emplace_back(row, column, uu(m, n));
            entries.emplace_back(row, column + 1, uv(m, n));
            entries.emplace_back(row + 1, column, uv(n, m));
            entries.emplace_back(row + 1, column + 1, vv(m, n));
        }
    }
}

Sparse stiffness(const Grid& grid, const Layers& layers) {
    Entries entries;
    for (Index j = 1; j < grid.y().size(); j += 2)
        for (Index i = 1; i < grid.x().size(); i += 2)
            if (grid.wood(i, j)) add_element(entries, grid, i, j, layers(grid.y()[j]));
    Sparse found(2 * grid.count(), 2 * grid.count());
    found.setFromTriplets(entries.begin(), entries.end());
    return found;
}

/// How the nodes move by the movements that are free; the first two of these are the stretch and the turn of the middle
/// of the land. Both ends are planes of symmetry: they stay plane and nothing shears there. One node keeps its height.
Sparse movements(const Grid& grid) {
    Entries entries;
    Index free = 2;
    const Index last = grid.x().size() - 1;
    for (Index j = 0; j < grid.y().size(); ++j) {
        for (Index i = 0; i <= last; ++i) {
            const Index node = grid.number(i, j);
            if (node < 0) continue;
            if (i == last) {
                entries.emplace_back(2 * node, 0, 1);
                entries.emplace_back(2 * node, 1, grid.y()[j]);
            } else if (i > 0) {
                entries.emplace_back(2 * node, free++, 1);
            }
            if (i > 0 || j > 0) entries.emplace_back(2 * node + 1, free++, 1);
        }
    }
    Sparse found(2 * grid.count(), free);
    found.setFromTriplets(entries.begin(), entries.end());
    return found;
}

/// The free movements under a unit moment, without pull.
Eigen::VectorXd moved_by_moment(const Grid& grid, const Sparse& free, const Layers& layers) {
    const Sparse held = free.transpose() * stiffness(grid, layers) * free;
    Eigen::VectorXd load = Eigen::VectorXd::Zero(held.rows());
    load[1] = 1;
    const Eigen::SimplicialLDLT<Sparse> solver(held);
    measure::require(solver.info() == Eigen::Success, "a held cell has a stiffness");
    return solver.solve(load);
}

/// Stretch at the plain face and turn, in T, under a unit pull and under a unit moment.
Eigen::Matrix2d compliance(const Grid& grid, const Layers& layers) {
    const Sparse free = movements(grid);
    const Sparse held = free.transpose() * stiffness(grid, layers) * free;
    const Eigen::SimplicialLDLT<Sparse> solver(held);
    measure::require(solver.info() == Eigen::Success, "a held cell has a stiffness");
    Eigen::Matrix2d found;
    for (Index i = 0; i < 2; ++i) {
        Eigen::VectorXd load = Eigen::VectorXd::Zero(held.rows());
        load[i] = 1;
        found.col(i) = solver.solve(load).head<2>();
    }
    return found;
}

/// The node at the kerf's mouth: on the kerf face, at the kerf's side.
Index mouth(const Grid& grid, const bend::Cell& cell) {
    const double side = cell.kerf / cell.thickness / 2;
    Index nearest = 0;
    for (Index i = 0; i < grid.x().size(); ++i)
        if (std::abs(grid.x()[i] - side) < std::abs(grid.x()[nearest] - side)) nearest = i;
    return grid.number(nearest, grid.y().size() - 1);
}

}  // namespace

Stuff isotropic(double poisson) { return {1, 1, 0.5 / (1 + poisson), poisson}; }

Stuff soft(double along, double through, double poisson, double reach) {
    Stuff stuff{along, through, along / 2, poisson};
    const double lambda = through / along;
    const double rho = 2 * std::pow(reach * std::pow(lambda, 0.25), 2) - 1;
    stuff.shear = along / 2 / (rho / std::sqrt(lambda) + poisson);
    return stuff;
}

double reach_factor(const Stuff& stuff) {
    const double lambda = stuff.through / stuff.along;
    const double rho = std::sqrt(lambda) * (stuff.along / (2 * stuff.shear) - stuff.poisson);
    return std::pow(lambda, -0.25) * std::sqrt((1 + rho) / 2);
}

double curvature_of(const bend::Cell& cell, const Layers& layers, const Grading& grading) {
    const Grid grid(cell, grading);
    const Eigen::VectorXd moved = moved_by_moment(grid, movements(grid), layers);
    return moved[1] / (cell.spacing / cell.thickness / 2);
}

HalfCell half_cell(const bend::Cell& cell, const Stuff& stuff, const Grading& grading) {
    const double t = cell.thickness.mm();
    const Eigen::Matrix2d in_t = compliance(Grid(cell, grading), [&](double) { return stuff; }).inverse() / stuff.along;
    Eigen::Matrix2d plain;
    plain << in_t(0, 0), in_t(0, 1) * t, in_t(1, 0) * t, in_t(1, 1) * t * t;
    // The plain face stretches by what the back does less a turn over the thickness.
    Eigen::Matrix2d from_back;
    from_back << 1, -t, 0, 1;
    const Eigen::Matrix2d back = from_back.transpose() * plain * from_back;
    return {back(0, 0), back(0, 1), back(1, 1)};
}

Bent bend_cell(const bend::Cell& cell, const Stuff& stuff, const Grading& grading) {
    const Grid grid(cell, grading);
    const Sparse free = movements(grid);
    const Eigen::VectorXd moved = moved_by_moment(grid, free, [&](double) { return stuff; });
    const double curvature = moved[1] / (cell.spacing / cell.thickness / 2);
    Bent bent{12 / (stuff.along * curvature), cell.thickness * (-moved[0] / moved[1]), {}};
    if (cell.depth.mm() > 0) {
        const Eigen::VectorXd all = free * moved;
        const double half_mouth = std::abs(all[2 * mouth(grid, cell)]);
        bent.close_radius = cell.thickness * (2 * half_mouth / (curvature * (cell.kerf / cell.thickness)));
    }
    return bent;
}

}  // namespace kerfpacket::elements
