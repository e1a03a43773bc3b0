#pragma once
// A moulded board's web, place by place across its width: the parts turn and stretch alike, and each bears it in its
// own web. Derived and compared with strips of finite elements in src/bend/NOTES.md, "Moulded boards".

#include <array>

#include "bend/cell.h"

namespace kerfpacket::bend {

/// What one place across the width bears where the line that keeps its length has a radius of 1 mm.
struct MouldedPlace {
    Length thickness;
    double strain = 0;  ///< nominal, of pull and bending together, on the worse face of the web
    double peel = 0;    ///< strain of a web that is bent alone and would release as much: what peel_strain is judged by
};

/// Where the board is thickest and where it is thinnest: the one bends most, the other may be pulled most.
std::array<MouldedPlace, 2> moulded_places(const Cell& cell, double softness);

/// What such a place of the cell bears of peeling over what it takes, of a material that has figures for it.
double peel_use(const MouldedPlace& place, const Cell& cell, const Material& material);

/// Strain over break strain at those two places, at a radius of the line that keeps its length.
std::array<double, 2> moulded_utilisation(const Cell& cell, const Material& material, KerfsOn side, Length radius);

}  // namespace kerfpacket::bend
