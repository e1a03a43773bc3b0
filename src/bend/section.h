#pragma once
// The web as a beam: how stiff it is, about which line it bends, how far from that line its farthest wood lies.

#include <optional>

#include "bend/cell.h"

namespace kerfpacket::bend {

/// Stiffness of a ply across its grain over that along it: 0.05. Source: src/bend/NOTES.md, "Plies".
inline constexpr double cross_stiffness = 0.05;

struct Section {
    double stiffness = 0;  ///< EI of the web over that of the whole board
    Length neutral;        ///< from the plain face, of a moulded board from its thickest place
    Length extreme;        ///< from there to the farthest wood whose grain runs along: it is strained most
    Length whole;          ///< the line of the board without kerfs, from the plain face
};

/// Of one stuff: (t/T)^3, t/2, t/2, T/2. Of plies: the transformed section, each ply by its stiffness along the board.
/// Of a moulded board: summed across its width about one line, since its parts bend together.
Section web_section(const Cell& cell);

/// In which ply the kerf ends, from 1 at the plain face; none for a board of one stuff. Even ones lie across the board.
std::optional<int> ply_at_bottom(const Cell& cell);

/// Whether the kerf ends where it should in plywood: in a ply that lies across, so that a whole one along the board
/// carries the bend. True for a board of one stuff.
bool ends_well(const Cell& cell);

}  // namespace kerfpacket::bend
