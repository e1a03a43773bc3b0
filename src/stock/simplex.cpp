#include "stock/simplex.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "measure/require.h"

namespace kerfpacket::stock {
namespace {

constexpr double nothing = 1e-9;
constexpr int most_pivots = 20000;

}  // namespace

Simplex::Simplex(const Problem& problem) : problem_(problem), rows_(problem.kinds.size()) {
    for (const Stick& stick : problem.sticks) rack_rows_.push_back(stick.for_sale() ? 0 : rows_++);
    inverse_.assign(rows_, Row(rows_, 0));
    basis_.assign(rows_, 0);
    amounts_.assign(rows_, 0);
    prices_.assign(rows_, 0);
    for (std::size_t i = 0; i < problem.kinds.size(); ++i) begin_with(i);
    for (std::size_t s = 0; s < problem.sticks.size(); ++s) {
        const std::size_t row = rack_rows_[s];
        if (row == 0) continue;
        basis_[row] = -1 - static_cast<std::ptrdiff_t>(row);
        inverse_[row][row] = -1;
        amounts_[row] = -right_side(row);
    }
}

void Simplex::begin_with(std::size_t kind) {
    const auto fit = [&](const Stick& stick) {
        return std::min<Units>(stick.room / problem_.kinds[kind].length, problem_.kinds[kind].wanted);
    };
    std::optional<std::size_t> best;
    for (std::size_t s = 0; s < problem_.sticks.size(); ++s) {
        const Stick& stick = problem_.sticks[s];
        if (!stick.for_sale() || fit(stick) == 0) continue;
        // Price by blank, compared in whole numbers.
        if (!best || stick.price * fit(problem_.sticks[*best]) < problem_.sticks[*best].price * fit(stick)) best = s;
    }
    measure::require(best.has_value(), "something for sale holds every blank");
    Load load{*best, Counts(problem_.kinds.size(), 0)};
    load.of[kind] = static_cast<int>(fit(problem_.sticks[*best]));
    inverse_[kind][kind] = 1.0 / load.of[kind];
    amounts_[kind] = right_side(kind) / load.of[kind];
    basis_[kind] = static_cast<std::ptrdiff_t>(loads_.size());
    loads_.push_back(std::move(load));
}

/// A little more than is wanted, of each kind another little, so that no two rows tie and the pivots cannot go round
/// in a circle.
double Simplex::right_side(std::size_t row) const {
    const double little = 1e-7 * static_cast<double>(1 + (row * 7919) % 101);
    if (row < problem_.kinds.size()) return problem_.kinds[row].wanted + little;
    for (std::size_t s = 0; s < problem_.sticks.size(); ++s)
        if (rack_rows_[s] == row) return -*problem_.sticks[s].most - little;
    return 0;
}

double Simplex::cost(std::size_t row) const {
    if (basis_[row] < 0) return 0;
    return static_cast<double>(problem_.sticks[loads_[static_cast<std::size_t>(basis_[row])].stick].price);
}

double Simplex::of_stick(std::size_t stick) const { return rack_rows_[stick] == 0 ? 0 : prices_[rack_rows_[stick]]; }

void Simplex::set_prices() {
    std::fill(prices_.begin(), prices_.end(), 0.0);
    for (std::size_t row = 0; row < rows_; ++row) {
        const double price = cost(row);
        if (price == 0) continue;
        for (std::size_t j = 0; j < rows_; ++j) prices_[j] += price * inverse_[row][j];
    }
}

bool Simplex::price() {
    while (true) {
        set_prices();
        const auto least = std::min_element(prices_.begin(), prices_.end());
        if (*least >= -nothing) return true;
        const auto row = static_cast<std::size_t>(least - prices_.begin());
        Row spare(rows_);
        for (std::size_t i = 0; i < rows_; ++i) spare[i] = -inverse_[i][row];
        if (!pivot(spare, -1 - static_cast<std::ptrdiff_t>(row))) return false;
    }
}

Simplex::Row Simplex::column(const Load& load) const {
    Row entering(rows_, 0);
    const std::size_t rack = rack_rows_[load.stick];
    for (std::size_t i = 0; i < rows_; ++i) {
        for (std::size_t j = 0; j < load.of.size(); ++j)
            if (load.of[j] != 0) entering[i] += inverse_[i][j] * load.of[j];
        if (rack != 0) entering[i] -= inverse_[i][rack];
    }
    return entering;
}

bool Simplex::bring_in(Load load) {
    const Row entering = column(load);
    loads_.push_back(std::move(load));
    return pivot(entering, static_cast<std::ptrdiff_t>(loads_.size()) - 1);
}

bool Simplex::pivot(const Row& entering, std::ptrdiff_t number) {
    std::optional<std::size_t> leaving;
    double least = 0;
    for (std::size_t i = 0; i < rows_; ++i) {
        if (entering[i] <= nothing) continue;
        const double ratio = amounts_[i] / entering[i];
        const bool tie = leaving && ratio < least + 1e-12 && ratio > least - 1e-12;
        if (leaving && !(tie ? entering[i] > entering[*leaving] : ratio < least)) continue;
        leaving = i;
        least = ratio;
    }
    if (!leaving || ++pivots_ > most_pivots) return false;
    Row& out = inverse_[*leaving];
    const double by = entering[*leaving];
    for (double& value : out) value /= by;
    amounts_[*leaving] /= by;
    for (std::size_t i = 0; i < rows_; ++i) {
        if (i == *leaving || entering[i] == 0) continue;
        for (std::size_t j = 0; j < rows_; ++j) inverse_[i][j] -= entering[i] * out[j];
        amounts_[i] -= entering[i] * amounts_[*leaving];
    }
    basis_[*leaving] = number;
    return true;
}

}  // namespace kerfpacket::stock
