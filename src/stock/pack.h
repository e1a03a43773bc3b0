#pragma once
// Blanks on sticks at the least cost, with the proof of it or the bound.

#include <cstdint>
#include <vector>

#include "stock/problem.h"

namespace kerfpacket::stock {

/// A stick and the pieces cut from it, longest first.
struct Packed {
    std::size_t stick = 0;            ///< in Problem::sticks
    std::vector<std::size_t> pieces;  ///< in Problem::kinds, one a piece
};

struct Packing {
    std::vector<Packed> sticks;          ///< longest stick first, equal ones together
    std::vector<std::size_t> left_over;  ///< pieces for which there is no stick: nothing for sale holds them
    Cost cost = 0;
    Cost bound = 0;  ///< no plan costs less
    bool proved() const { return cost == bound; }
};

/// What the search for a proof may do before it stops and tells the bound: steps, never seconds.
inline constexpr std::int64_t usual_effort = 4000000;

/// Of more kinds of blanks than this a few neighbours in length are taken for one: plan and bound are then further
/// apart.
inline constexpr std::size_t most_searched = 120;

/// The most pieces and kinds of sticks that are taken, and the longest room.
inline constexpr int most_pieces = 500;
inline constexpr std::size_t most_sticks = 24;
inline constexpr Units longest_stick = 60000;

/// Packs them. The same problem gives the same plan on every machine; kinds in another order give the same plan with
/// the pieces of one length dealt out in the order that they are given in. Lengths and counts must be over 0.
Packing pack(const Problem& problem, std::int64_t effort = usual_effort);
/// Longest first, each on the first stick that holds it: at once, and without a bound, which is told as 0.
Packing pack_as_they_come(const Problem& problem);

}  // namespace kerfpacket::stock
