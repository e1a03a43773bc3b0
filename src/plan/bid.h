#pragma once
// What a bid is reckoned from: the counts that the plan knows. No rate and no price is ours.

#include <optional>
#include <vector>

#include "job/rates.h"
#include "plan/house.h"

namespace kerfpacket::plan {

/// Work of one kind: how many, at the shop's minutes for one.
struct Work {
    job::Rate rate = job::Rate::minutes_crosscut;
    int count = 0;
};

struct BidCounts {
    std::vector<Work> work;    ///< in the order of `job::Rate`; kinds of which there are none are left out
    int blanks = 0;            ///< copies counted
    Length kerf_stroke;        ///< of all kerfs across their boards, askew where they are
    Length ripped;             ///< along the blanks that are ripped from wider boards, and along sheets
    Length curved_sawing;      ///< both edges of all casing segments
    double glue_area_mm2 = 0;  ///< both walls of every kerf, and one face of every scarf
    int unplanned = 0;         ///< blanks that no stock holds: their boards are in no sum
};
/// `coupons`: as many as the records of the packets ask for.
BidCounts bid_counts(const House& house, int coupons);

/// What the counts come to at a shop's rates; nothing where one that counts is not given.
struct BidSums {
    std::optional<double> minutes;
    std::optional<double> labour;
    std::optional<double> stock;
    std::optional<double> paper;
    std::optional<double> glue;   ///< whole containers
    std::optional<double> blade;  ///< its share of a sharpening
    std::optional<double> all() const;
};
/// `sheets` of paper. Square feet and feet, or square metres and metres, as the units of the jobs are.
BidSums bid_sums(const BidCounts& counts, const House& house, const job::Rates& rates, int sheets);

/// The area as `glue_covers` counts it, and the stroke as `blade_lasts` does.
double glue_area(const BidCounts& counts, Unit unit);
double long_length(Length length, Unit unit);
/// Containers of glue that are opened.
std::optional<int> glue_containers(const BidCounts& counts, Unit unit, const job::Rates& rates);

}  // namespace kerfpacket::plan
