#include "bend/moulded.h"

#include <algorithm>
#include <cmath>

namespace kerfpacket::bend {
namespace {

/// How far the pull of a web reaches into the land, over how far its bend does; and by how much more the strain of a
/// web is told that is far thinner than the thickest. Fitted to strips of finite elements: src/bend/NOTES.md.
constexpr double pull_reach = 0.5;
constexpr double thin_margin = 0.07;

/// Stretch at the back and turn of a part of the cell, under a pull and a moment about the back, per unit width and
/// over E; heights from the back, in millimetres.
struct Compliance {
    double stretch_pull = 0;
    double stretch_moment = 0;
    double turn_moment = 0;

    /// Adds wood with its middle at `middle` that yields to pull over one length and to bending over another.
    void add(double middle, double thickness, double pulled, double bent) {
        const double bending = bent * 12 / (thickness * thickness * thickness);
        stretch_pull += pulled / thickness + bending * middle * middle;
        stretch_moment -= bending * middle;
        turn_moment += bending;
    }
};

/// The cell as if it were as thick everywhere as it is there.
Cell flat_at(const Cell& cell, Length thickness) {
    Cell flat = cell;
    flat.thickness = thickness;
    flat.profile.clear();
    return flat;
}

MouldedPlace place_at(const Cell& cell, double softness, Length thickness, Length still) {
    const double kerf = cell.kerf.mm();
    const double spacing = cell.spacing.mm();
    const double bent = hinge_length(flat_at(cell, thickness), softness).mm();
    const double pulled = kerf + pull_reach * (bent - kerf);
    const double whole = thickness.mm();
    const double web = (thickness - cell.depth).mm();
    const double middle = whole - web / 2;
    Compliance all;
    all.add(middle, web, pulled, bent);
    all.add(whole / 2, whole, spacing - pulled, spacing - bent);
    // At a radius of 1 mm a cell turns by its spacing; the back stretches by what lies between it and the line.
    const double stretch = -spacing * still.mm();
    const double det = all.stretch_pull * all.turn_moment - all.stretch_moment * all.stretch_moment;
    const double pull = (all.turn_moment * stretch - all.stretch_moment * spacing) / det;
    const double at_back = (all.stretch_pull * spacing - all.stretch_moment * stretch) / det;
    const double moment = at_back - pull * middle;
    const double by_pull = pull / web;
    const double by_moment = moment * 6 / (web * web);
    // A web bent alone holds e^2 t/6, one that is pulled e^2 t/2.
    return {thickness, std::abs(by_pull) + std::abs(by_moment), std::hypot(by_moment, std::sqrt(3.0) * by_pull)};
}

}  // namespace

std::array<MouldedPlace, 2> moulded_places(const Cell& cell, double softness) {
    const Length still = cell.thickness - length_keeping_depth(cell, softness);
    std::array places{place_at(cell, softness, cell.thickness, still),
                      place_at(cell, softness, cell.thinnest(), still)};
    const double margin = 1 + thin_margin * (1 - cell.thinnest_web() / cell.web());
    places.back().strain *= margin;
    places.back().peel *= margin;
    return places;
}

double peel_use(const MouldedPlace& place, const Cell& cell, const Material& material) {
    return place.peel / peel_strain(flat_at(cell, place.thickness), material);
}

std::array<double, 2> moulded_utilisation(const Cell& cell, const Material& material, KerfsOn side, Length radius) {
    const bool outside = side == KerfsOn::outside;
    const double limit = outside ? material.break_strain_outside : material.break_strain_inside;
    std::array<double, 2> used{};
    const auto places = moulded_places(cell, material.softness);
    for (std::size_t i = 0; i < places.size(); ++i) {
        used.at(i) = places.at(i).strain / limit;
        if (outside && material.peel) used.at(i) = std::max(used.at(i), peel_use(places.at(i), cell, material));
        used.at(i) /= radius.mm();
    }
    return used;
}

}  // namespace kerfpacket::bend
