#pragma once
// Which settings of a board are ok where it bends most: cheap, so that many can be looked at before one is laid out.

#include "bend/assess.h"
#include "bend/limit.h"
#include "plan/request.h"
#include "plan/wood.h"

namespace kerfpacket::plan {

/// A board that may be bent: its thickness, wood and kerf, where it bends most.
struct Bent {
    Length thickness;
    Length kerf;
    Length blade;  ///< diameter
    Wood wood;
    std::vector<TightSpot> spots;
    job::Surface measured_to = job::Surface::wall;
    std::vector<Length> plies{};                ///< as in bend::Cell
    std::vector<bend::ProfilePoint> profile{};  ///< the same

    bend::Cell cell(Length depth, Length spacing) const {
        return {thickness, depth, kerf, spacing, wood.hinge_part, plies, profile};
    }
    /// Where a moulded board is thinnest.
    Length thinnest() const { return cell({}, {}).thinnest(); }
    /// Of the line that keeps its length, at a tight spot.
    Length line_radius(const TightSpot& spot, const bend::Cell& cell) const;
    /// Whether strain, peel, closing and facet are ok at every tight spot.
    bool is_ok(const bend::Cell& cell) const;
    /// The worst of the tight spots.
    bend::Assessment assess(const bend::Cell& cell) const;
    /// The spot where it is worst.
    const TightSpot& worst(const bend::Cell& cell) const;
};

Bent bent_of(const Request& wanted, const Wood& wood, const job::Job& job);

/// Shallower kerfs are outside the range for which the bend was checked. Source: src/bend/NOTES.md.
inline constexpr double least_depth_ratio = 0.3;

/// The depth that the job gives, in figures or as half the thickness.
std::optional<Length> given_depth(const job::Board& board);

/// Depths in whole steps of 1/16 in or 1 mm from the least that was checked to those that leave a web of at least
/// `web`, and the deepest of half steps that leaves it (or 3/32 in), the shallowest first; none deeper than the blade
/// reaches. In plywood one for each ply across the board: the half step nearest to its middle.
std::vector<Length> depths(const Bent& bent, Length web, measure::Unit unit);

/// Depths from the back of plywood, in whole steps, each nearest to the middle of a ply across the board.
std::vector<Length> cross_ply_depths(const std::vector<Length>& plies, Length step, Length least, Length most);

/// Where a depth that is left to the program begins: at half the thickness. Common practice, no source: of plywood in
/// that ply across the board whose middle is nearest to half the thickness.
Length first_depth(const job::Board& board, measure::Unit unit);

/// 1/16 in, or 1 mm where the job is metric.
Length depth_step(measure::Unit unit);

/// The closest spacing that is looked for: 1/4 in, or more where a wide kerf would leave too little land.
Length closest_spacing(Length kerf);

/// The least radius of the seen face, the same all along, for which some setting is ok (or a caution).
std::optional<Length> least_radius(const Bent& bent, measure::Unit unit, bend::Verdict no_worse);

/// A depth, and what it comes to at the tight spots.
struct Setting {
    Length depth;
    bend::Verdict verdict = bend::Verdict::ok;
    double utilisation = 0;
};
/// The thickest web that is ok with kerfs that far apart; none when there is none.
std::optional<Setting> thickest_ok_web(const Bent& bent, Length spacing, measure::Unit unit);
/// Of these depths the one with the least strain over break strain; none when all will likely break.
std::optional<Setting> least_strained(const Bent& bent, Length spacing, const std::vector<Length>& depths);
/// The one or else the other.
std::optional<Setting> best_setting(const Bent& bent, Length spacing, measure::Unit unit);

}  // namespace kerfpacket::plan
