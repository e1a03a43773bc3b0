#pragma once
// A wide spread of invented wall boards, for tests that ask the same of every strip and every sheet.

#include <cmath>
#include <cstddef>
#include <sstream>
#include <string>
#include <vector>

#include "kit.h"

namespace kerfpacket::tests {

struct Case {
    std::string name;
    job::Job job;
    std::string media;
};

namespace spread {

inline const std::vector<measure::Length> spacings = {0.125_in, 0.1875_in, 0.25_in, 0.375_in, 0.5_in,
                                                      11.3_mm,  15_mm,     0.75_in, 1_in,     3_in};
inline const std::vector<measure::Length> trims = {0_in, 0.4_in, 2_in, 4_in, 6_in};
inline const std::vector<std::array<measure::Length, 2>> tails = {
    {0_in, 0_in}, {1.5_in, 5_in}, {14_in, 9.3_in}, {0_in, 31_in}};
/// Kerfs of one, two and three digits.
inline const std::vector<int> counts = {7, 43, 240};
inline const std::vector<std::string> media = {"na_letter_8.5x11in", "iso_a4_210x297mm", "na_ledger_11x17in"};

}  // namespace spread

/// Every spacing with every trim, pair of tails and count of kerfs; the end that is zero, the tick's side, the units
/// and the paper take turns.
inline std::vector<Case> spread_of_cases() {
    std::vector<Case> cases;
    for (const measure::Length spacing : spread::spacings)
        for (const measure::Length trim : spread::trims)
            for (const auto& tails : spread::tails)
                for (const int count : spread::counts) {
                    // An end kerf may stand half a spacing beyond the bend: there must be board for it.
                    if (trim + std::min(tails[0], tails[1]) < spacing * 0.5 + 0.2_in) continue;
                    const std::size_t turn = cases.size();
                    const measure::Length bend = std::min(spacing * count, 300_in);
                    const measure::Length radius = std::max(bend / 0.8, 24_in);
                    job::Wall wall = harbor_stair();
                    wall.id.value = "W";
                    wall.chord.reset();
                    wall.rise.reset();
                    wall.radius = at_line(radius, 12);
                    wall.angle = at_line(measure::Angle::radians(bend / radius), 13);
                    wall.side.value = turn % 11 < 6 ? job::Side::concave : job::Side::convex;
                    wall.tails = {at_line(tails[0], 15), at_line(tails[1], 15)};
                    wall.board.spacing.given = spacing;
                    wall.board.trim.value = trim;
                    wall.board.zero = turn % 2 == 0 ? job::End::left : job::End::right;
                    wall.board.tick = std::array{job::Tick::centre, job::Tick::left, job::Tick::right}.at(turn / 2 % 3);
                    job::Job job = job_of(wall);
                    job.header.units = turn / 5 % 2 == 0 ? measure::Unit::inch : measure::Unit::millimetre;
                    job.saw.kerf.value = std::min(spacing * 0.6, 0.118_in);
                    std::ostringstream name;
                    name << count << " kerfs at " << spacing.mm() << " mm, trim " << trim.mm() << ", tails "
                         << tails[0].mm() << " and " << tails[1].mm() << " mm, number " << turn;
                    cases.push_back({name.str(), job, spread::media.at(turn / 7 % 3)});
                }
    return cases;
}

}  // namespace kerfpacket::tests
