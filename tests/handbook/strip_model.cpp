#include "strip_model.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace kerfpacket::elements {
namespace {

Length thickness_at(const std::vector<bend::ProfilePoint>& profile, Length height) {
    for (std::size_t i = 1; i < profile.size(); ++i) {
        const Length wide = profile[i].height - profile[i - 1].height;
        if (height > profile[i].height || wide.mm() <= 0) continue;
        const double part = (height - profile[i - 1].height) / wide;
        return profile[i - 1].thickness + (profile[i].thickness - profile[i - 1].thickness) * part;
    }
    return profile.back().thickness;
}

/// Bending stiffness of strips of solid wood of a unit width each, about the line on which they pull nothing.
double solid_stiffness(const std::vector<Length>& strips) {
    double area = 0;
    double moment = 0;
    for (const Length strip : strips) {
        area += strip.mm();
        moment += strip.mm() * strip.mm() / 2;
    }
    double sum = 0;
    for (const Length strip : strips) {
        const double off = strip.mm() / 2 - moment / area;
        sum += std::pow(strip.mm(), 3) / 12 + strip.mm() * off * off;
    }
    return sum;
}

}  // namespace

std::vector<Length> strips_of(const std::vector<bend::ProfilePoint>& profile, int count) {
    std::vector<Length> strips;
    const Length step = (profile.back().height - profile.front().height) / count;
    for (int i = 0; i < count; ++i) strips.push_back(thickness_at(profile, profile.front().height + step * (i + 0.5)));
    return strips;
}

StripBoard bend_strips(const bend::Cell& cell, const std::vector<Length>& strips, const Stuff& stuff) {
    std::map<long, HalfCell> known;
    const auto half = [&](Length thickness) {
        const auto [found, fresh] = known.try_emplace(std::lround(thickness.mm() * 1e4));
        if (fresh) {
            bend::Cell one{thickness, cell.depth, cell.kerf, cell.spacing};
            found->second = half_cell(one, stuff);
        }
        return found->second;
    };
    HalfCell all;
    for (const Length strip : strips) {
        const HalfCell one = half(strip);
        all.pull_stretch += one.pull_stretch;
        all.pull_turn += one.pull_turn;
        all.moment_turn += one.moment_turn;
    }
    const double turn = cell.spacing.mm() / 2;
    const double stretch = -all.pull_turn / all.pull_stretch * turn;
    StripBoard board;
    board.stiffness_ratio = (all.pull_turn * stretch + all.moment_turn * turn) / solid_stiffness(strips);
    // Heights y are from the plain face of the strip; the back, at y = T, stretches by `stretch` and less below it.
    board.length_keeping_depth = cell.thickness - Length::mm(stretch / turn);
    std::vector<Length> looked_at = strips;
    for (const bend::ProfilePoint& point : cell.profile) looked_at.push_back(point.thickness);
    for (const Length strip : looked_at) {
        const HalfCell one = half(strip);
        const double pull = one.pull_stretch * stretch + one.pull_turn * turn;
        const double at_back = one.pull_turn * stretch + one.moment_turn * turn;
        const double web = (strip - cell.depth).mm();
        // From the back to the middle of the web.
        const double moment = at_back + pull * (strip.mm() - web / 2);
        board.strain.push_back(std::abs(pull / web) + std::abs(moment) * 6 / (web * web));
    }
    return board;
}

}  // namespace kerfpacket::elements
