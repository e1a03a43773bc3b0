#include "plan/laminate.h"

#include <algorithm>

namespace kerfpacket::plan {
namespace {

/// Thinner plies than a thick veneer, and more of them, are no longer a carpenter's. Judgement.
constexpr Length least_ply = Length::inches(1.0 / 16);
constexpr int most_plies = 12;

/// Strain over break strain of a ply without kerfs, T / 2R, where it is bent most.
double solid_utilisation(const Bent& ply) {
    double most = 0;
    for (const TightSpot& spot : ply.spots) {
        const Length plain = spot.plain_radius(ply.measured_to, ply.thickness);
        const Length middle = spot.on == bend::KerfsOn::outside ? plain + ply.thickness / 2 : plain - ply.thickness / 2;
        most = std::max(most, ply.thickness / (2 * middle) / ply.wood.material.break_strain_inside);
    }
    return most;
}

/// The board as the ply that is bent tightest: the innermost.
Bent innermost(const Bent& bent, int count) {
    Bent ply = bent;
    ply.thickness = bent.thickness / count;
    ply.plies.clear();
    for (TightSpot& spot : ply.spots) {
        const Length whole = spot.plain_radius(bent.measured_to, bent.thickness);
        const Length plain = spot.on == bend::KerfsOn::outside ? whole : whole - bent.thickness + ply.thickness;
        spot.measured_radius = plain + (spot.measured_radius - spot.plain_radius(bent.measured_to, ply.thickness));
    }
    return ply;
}

/// Lengths of plies that lie one on the other from the seen face to the wall, each along the line that keeps its
/// length.
std::vector<Length> ply_blanks(const Request& wanted, const Bent& ply, int count, const std::optional<Setting>& cut) {
    const Length below_face =
        cut ? bend::length_keeping_depth(ply.cell(cut->depth, closest_spacing(ply.kerf)), ply.wood.material.softness)
            : ply.thickness / 2;
    const Length face = faces(wanted.measured_to, ply.thickness * count).finish;
    std::vector<Length> blanks;
    blanks.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i)
        blanks.push_back(wanted.bend->curve.parallel(face + ply.thickness * i + below_face).length() + wanted.tails[0] +
                         wanted.tails[1] + wanted.wanted->trim.value * 2);
    return blanks;
}

}  // namespace

bool has_room(const Bent& bent) {
    return std::all_of(bent.spots.begin(), bent.spots.end(), [&](const TightSpot& spot) {
        return spot.plain_radius(bent.measured_to, bent.thickness) > bent.thickness;
    });
}

std::optional<Plies> plies(const Request& wanted, const Bent& bent, measure::Unit unit) {
    for (const bend::Verdict no_worse : {bend::Verdict::ok, bend::Verdict::caution}) {
        for (int count = 2; count <= most_plies && bent.thickness / count >= least_ply; ++count) {
            const Bent ply = innermost(bent, count);
            if (!has_room(ply)) continue;
            const double solid = solid_utilisation(ply);
            const bool bends_solid = bend::strain_verdict(solid) <= no_worse;
            const auto cut = bends_solid ? std::nullopt : best_setting(ply, closest_spacing(bent.kerf), unit);
            if (bends_solid || (cut && cut->verdict <= no_worse))
                return Plies{count, ply.thickness, cut, cut ? cut->utilisation : solid,
                             ply_blanks(wanted, ply, count, cut)};
        }
    }
    return std::nullopt;
}

}  // namespace kerfpacket::plan
