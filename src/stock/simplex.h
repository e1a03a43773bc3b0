#pragma once
// A dense revised simplex for loads that cover what is wanted. Doubles, but only + - * /: the same on every machine.

#include <cstddef>
#include <vector>

#include "stock/problem.h"

namespace kerfpacket::stock {

/// Rows: each kind is cut at least as often as wanted; each stick of the rack is used at most as often as it lies
/// there. Columns: loads, and what a row has to spare.
class Simplex {
public:
    /// Begins with each kind cut by itself from what is for sale. The problem must be prepared.
    explicit Simplex(const Problem& problem);

    /// Prices the rows; puts in the spare of a row whose price is negative, until none is. False where it gives up.
    bool price();
    /// Price of a blank; 0 or more after `price`.
    double of_kind(std::size_t kind) const { return prices_[kind]; }
    /// What a stick of the rack is worth; 0 for one that is for sale.
    double of_stick(std::size_t stick) const;
    /// Brings a load into the plan. False where it gives up.
    bool bring_in(Load load);
    /// The loads in the plan, with how often each is cut.
    template <typename See>
    void each(See see) const {
        for (std::size_t row = 0; row < rows_; ++row)
            if (basis_[row] >= 0) see(loads_[static_cast<std::size_t>(basis_[row])], amounts_[row]);
    }

private:
    using Row = std::vector<double>;

    void begin_with(std::size_t kind);
    double right_side(std::size_t row) const;
    double cost(std::size_t row) const;
    void set_prices();
    Row column(const Load& load) const;
    /// Entering number: of a load, or -1 - row for the spare of a row.
    bool pivot(const Row& entering, std::ptrdiff_t number);

    const Problem& problem_;
    std::vector<std::size_t> rack_rows_;  ///< of each stick; 0 for one that is for sale
    std::size_t rows_;
    std::vector<Row> inverse_;
    std::vector<double> amounts_;
    std::vector<double> prices_;
    std::vector<std::ptrdiff_t> basis_;
    std::vector<Load> loads_;
    int pivots_ = 0;
};

}  // namespace kerfpacket::stock
