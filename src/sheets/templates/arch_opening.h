#pragma once
// An arched opening as its template shows it.

#include <string>
#include <variant>
#include <vector>

#include "plan/plan.h"
#include "sheets/templates/template_lines.h"

namespace kerfpacket::sheets {

/// An opening and the boards that line it, left to right: one, or two where the head has a point.
struct ArchOpening {
    explicit ArchOpening(const plan::Plan& plan, const plan::Piece& first);

    std::string id;  ///< of the opening, without the number of a board
    std::vector<const plan::Piece*> boards;
    const plan::Piece& piece() const { return *boards.front(); }
    bool half = false;  ///< one half is drawn, to flip about the centre line
    const plan::ArchLines& lines() const { return std::get<plan::ArchLines>(piece().lines); }
    /// Where the wall crosses the centre line.
    Point wall_crown() const;
    /// What a tape reads of the wall on the template: between its springs, and up from the spring line to its crown.
    Length wall_span() const { return lines().wall_half_span() * 2; }
    Length wall_rise() const { return wall_crown().y - spring_level(); }
    /// Level from which heights are told: of the lower spring.
    Length spring_level() const;
    /// The line that ordinates are measured to: the casing's outside edge, or the wall without casing.
    const Path& ordinate_line() const;
};

}  // namespace kerfpacket::sheets
