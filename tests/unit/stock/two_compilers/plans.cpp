// Prints the plans of made-up houses, stick by stick: what two compilers must agree on to the last figure.
#include <cstdint>
#include <cstdio>

#include "stock/pack.h"

using namespace kerfpacket::stock;

namespace {

/// The same numbers on every machine: splitmix64 (S. Vigna, public domain; from memory).
std::int64_t between(std::uint64_t& state, std::int64_t least, std::int64_t most) {
    std::uint64_t mixed = (state += 0x9e3779b97f4a7c15ULL);
    mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9ULL;
    mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebULL;
    mixed ^= mixed >> 31;
    return least + static_cast<std::int64_t>(mixed % static_cast<std::uint64_t>(most - least + 1));
}

/// In feet or in cents, with a rack or without.
Problem house(std::uint64_t seed) {
    std::uint64_t state = seed;
    Problem problem;
    for (const std::int64_t feet : {8, 12, 16})
        problem.sticks.push_back({feet * 768 - 64 + 8, seed % 2 == 0 ? feet : feet * between(state, 95, 140)});
    if (seed % 3 == 0) problem.sticks.push_back({between(state, 2000, 9000), 0, 2});
    // Now and then more kinds than are searched, or short ones, of which a stick holds more loads than are.
    const bool many = seed % 10 == 9;
    const bool are_short = seed % 30 == 13;
    const std::int64_t kinds = many ? 150 : are_short ? 25 : between(state, 4, 20);
    for (std::int64_t i = kinds; i > 0; --i)
        problem.kinds.push_back({are_short ? between(state, 5 * 64, 24 * 64) : between(state, 20 * 64, 180 * 64),
                                 many ? 1 : static_cast<int>(between(state, 1, 2))});
    return problem;
}

}  // namespace

int main() {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        const Packing packing = pack(house(seed), usual_effort / 20);
        std::printf("%d: %lld, %lld\n", static_cast<int>(seed), static_cast<long long>(packing.cost),
                    static_cast<long long>(packing.bound));
        for (const Packed& packed : packing.sticks) {
            std::printf(" %zu:", packed.stick);
            for (const std::size_t piece : packed.pieces) std::printf(" %zu", piece);
            std::printf("\n");
        }
    }
    return 0;
}
