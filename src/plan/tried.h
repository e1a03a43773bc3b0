#pragma once
// What bent pieces told of a board's wood, and the chance of breaking that this leaves.

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bend/coupon.h"
#include "job/job.h"

namespace kerfpacket::plan {

using measure::Length;

/// A coupon of the board, or a trial of the shop's record.
struct CouponResult {
    std::string by;
    bool trial = false;
    std::string date;  ///< of a trial
    bend::Coupon coupon;
    job::Outcome outcome = job::Outcome::cracked;
    Length depth;  ///< as the coupon was cut
    Length spacing;
    double strain = 0;            ///< where it was bent most
    double error = 0;             ///< relative, of that strain
    double table_limit = 0;       ///< break strain without the coupon
    bool counts = false;          ///< the piece's break strain is the coupon's
    double times_table = 1;       ///< its strain over the table's break strain of a board cut as it was
    std::optional<Length> hinge;  ///< above the kerf's bottom, of a coupon that closed
};

/// What is known of the strain at which this board breaks, where it is bent most, and the chance that this leaves.
struct Told {
    enum class By { table, trials, coupons };  ///< each with those before it
    By by = By::table;
    double strain = 0;  ///< the middle one of boards like this
    double spread = 0;  ///< standard deviation of its logarithm
    double breaks = 0;
};

/// What one more coupon of this board would tell.
struct NextCoupon {
    std::vector<std::pair<double, double>> chances;  ///< break strain that it tells, rising; chance of breaking then
    double ok_from = 0;       ///< the least strain with which strain and chance are ok; 0: none that is believed
    double caution_from = 0;  ///< and no worse than a caution
};

/// How many boards like this one would break, cut and bent as drawn.
struct Chance {
    double breaks = 0;  ///< between 0 and 1
    int coupons = 0;    ///< of this board, that count
    int trials = 0;     ///< of the shop's record, that count
    double lowest = 0;  ///< break strain of what counted, and its mean; 0 where nothing did
    double mean = 0;
    double load = 0;  ///< what depth and tape may add to the strain at worst, as a part of it
    /// Times the strain as drawn at which 1 in 100, 20, 4, 2 would break.
    std::array<double, 4> times{};
    std::vector<Told> told;  ///< by the table, then by what else counted
    NextCoupon next;

    bool counted() const { return coupons + trials > 0; }
};

}  // namespace kerfpacket::plan
