#include "bend/section.h"

#include <algorithm>
#include <cmath>

namespace kerfpacket::bend {
namespace {

bool lies_across(std::size_t ply) { return ply % 2 == 1; }

/// Sums over the part of the plies within `height` of the plain face, in millimetres and in units of E along the grain.
struct Beam {
    double area = 0;
    double moment = 0;  ///< about the plain face
    double second = 0;  ///< about the plain face

    double neutral() const { return moment / area; }
    double stiffness() const { return second - area * neutral() * neutral(); }
};

Beam beam(const Cell& cell, double height) {
    Beam sum;
    double low = 0;
    for (std::size_t i = 0; i < cell.plies.size() && low < height; ++i) {
        const double high = std::min(height, low + cell.plies[i].mm());
        const double e = lies_across(i) ? cross_stiffness : 1;
        sum.area += e * (high - low);
        sum.moment += e * (high * high - low * low) / 2;
        sum.second += e * (high * high * high - low * low * low) / 3;
        low += cell.plies[i].mm();
    }
    return sum;
}

/// How high over the plain face the wood ends that lies along the board.
double highest_along(const Cell& cell, double height) {
    double low = 0;
    double highest = 0;
    for (std::size_t i = 0; i < cell.plies.size() && low < height; ++i) {
        const double high = low + cell.plies[i].mm();
        if (!lies_across(i)) highest = std::min(height, high);
        low = high;
    }
    return highest;
}

/// The same sums over a moulded board across its width, of the wood that lies more than `depth` below its back; about
/// the back. T^n is integrated exactly where the thickness runs straight.
Beam across(const std::vector<ProfilePoint>& profile, Length depth) {
    const double d = depth.mm();
    Beam sum;
    for (std::size_t i = 1; i < profile.size(); ++i) {
        const double wide = (profile[i].height - profile[i - 1].height).mm();
        const double a = profile[i - 1].thickness.mm();
        const double b = profile[i].thickness.mm();
        sum.area += wide * ((a + b) / 2 - d);
        sum.moment += wide * ((a * a + a * b + b * b) / 3 - d * d) / 2;
        sum.second += wide * ((a * a * a + a * a * b + a * b * b + b * b * b) / 4 - d * d * d) / 3;
    }
    return sum;
}

/// The back is the one face that lies level: the line is found from there and told from the plain face.
Section moulded_section(const Cell& cell) {
    const Beam web = across(cell.profile, cell.depth);
    const Beam whole = across(cell.profile, Length());
    const Length neutral = cell.thickness - Length::mm(web.neutral());
    return {web.stiffness() / whole.stiffness(), neutral, std::max(neutral, cell.web() - neutral),
            cell.thickness - Length::mm(whole.neutral())};
}

}  // namespace

Section web_section(const Cell& cell) {
    const Length web = cell.web();
    if (cell.plain()) return {std::pow(web / cell.thickness, 3), web / 2, web / 2, cell.thickness / 2};
    if (cell.plies.empty()) return moulded_section(cell);
    const Beam part = beam(cell, web.mm());
    const double neutral = part.neutral();
    const double extreme = std::max(neutral, highest_along(cell, web.mm()) - neutral);
    return {part.stiffness() / beam(cell, cell.thickness.mm()).stiffness(), Length::mm(neutral), Length::mm(extreme),
            cell.thickness / 2};
}

std::optional<int> ply_at_bottom(const Cell& cell) {
    Length top;
    for (std::size_t i = 0; i < cell.plies.size(); ++i) {
        top += cell.plies[i];
        if (cell.web() <= top) return static_cast<int>(i) + 1;
    }
    return std::nullopt;
}

bool ends_well(const Cell& cell) {
    const auto ply = ply_at_bottom(cell);
    return !ply || *ply % 2 == 0;
}

}  // namespace kerfpacket::bend
