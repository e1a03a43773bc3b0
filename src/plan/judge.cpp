// What each kerf turns, at what radius, and whether it holds.

#include <algorithm>
#include <cmath>
#include <set>

#include "plan/kerfs.h"

namespace kerfpacket::plan {
namespace {

using bend::Concern;

/// Straighter than a radius of 1 km bends nothing.
constexpr double straight = 1e-6;

/// The stretch of the blank that one kerf bends, along the line, and what it does there.
struct Share {
    Angle turn;
    double curvature = 0;  ///< the sharpest in it, signed
};

Share share(const Unrolled& board, Length low, Length high) {
    low = std::clamp(low, board.bend_from, board.bend_to);
    high = std::clamp(high, board.bend_from, board.bend_to);
    if (high <= low) return {};
    Share share{board.line.at(high).turned - board.line.at(low).turned, 0};
    // A hair inside, so that a joint's far side does not count.
    for (const double part : {0.001, 0.25, 0.5, 0.75, 0.999}) {
        const double here = board.line.at(low + (high - low) * part).curvature;
        if (std::abs(here) > std::abs(share.curvature)) share.curvature = here;
    }
    return share;
}

/// Worse first by verdict, then by strain.
bool worse(const bend::Assessment& a, const bend::Assessment& b) {
    return a.verdict != b.verdict ? a.verdict > b.verdict : a.utilisation > b.utilisation;
}

/// The gap before kerf i: where kerfs are given by hand and stop short of the bend's end, as if the next stood as far
/// beyond that end.
Length gap_before(const Piece& piece, std::size_t i) {
    if (i > 0) return piece.kerfs[i].at - piece.kerfs[i - 1].at;
    const Length after = piece.kerfs[1].at - piece.kerfs[0].at;
    return piece.kerfs_given ? std::max(after, (piece.kerfs[0].at - piece.bend_start) * 2) : after;
}

Length gap_after(const Piece& piece, std::size_t i) {
    if (i + 1 < piece.kerfs.size()) return piece.kerfs[i + 1].at - piece.kerfs[i].at;
    const Length before = piece.kerfs[i].at - piece.kerfs[i - 1].at;
    return piece.kerfs_given ? std::max(before, (piece.bend_end - piece.kerfs[i].at) * 2) : before;
}

/// The mean of the gaps beside kerf i; an end kerf has but one.
Length mean_gap(const Piece& piece, std::size_t i) {
    const bool even = piece.even() && !piece.kerfs_given;
    if (even || piece.kerfs.size() < 2) return piece.spacing;
    return (gap_before(piece, i) + gap_after(piece, i)) / 2;
}

/// Adds up what is wrong anywhere; what is worse stands for what is less.
std::vector<Concern> joined(std::set<Concern> concerns) {
    if (concerns.contains(Concern::strain_break)) concerns.erase(Concern::strain_caution);
    if (concerns.contains(Concern::closes_before_bend)) concerns.erase(Concern::nearly_closes);
    return {concerns.begin(), concerns.end()};
}

}  // namespace

void assess_kerfs(Piece& piece, const Unrolled& board, const bend::Material& material) {
    const bool from_right = piece.zero == job::End::right;
    const auto along = [&](Length from_zero) {
        return (from_right ? piece.blank_length - from_zero : from_zero) - board.origin;
    };
    std::set<Concern> concerns;
    std::optional<bend::Assessment> worst;
    Length facet;
    Length close;
    for (std::size_t i = 0; i < piece.kerfs.size(); ++i) {
        Kerf& kerf = piece.kerfs[i];
        kerf.spacing = mean_gap(piece, i);
        kerf.on_curve = board.on_curve(along(kerf.at));
        const bool first = i == 0;
        const bool last = i + 1 == piece.kerfs.size();
        const Length low = along(first ? Length() : (piece.kerfs[i - 1].at + kerf.at) / 2);
        const Length high = along(last ? piece.blank_length : (kerf.at + piece.kerfs[i + 1].at) / 2);
        const Share bent = share(board, std::min(low, high), std::max(low, high));
        kerf.turn = Angle::radians(std::abs(bent.turn.radians()));
        // At an inflection it is the turn that is left which tells the side.
        kerf.on = bent.turn.radians() == 0  ? piece.kerfs_on
                  : bent.turn.radians() < 0 ? bend::KerfsOn::outside
                                            : bend::KerfsOn::inside;
        if (std::abs(bent.curvature) < straight) continue;
        kerf.radius = piece.circular ? piece.bend_radius : Length::mm(1 / std::abs(bent.curvature));
        // An end kerf may turn less than its share: the others tell what a kerf turns.
        const bool alike = piece.circular && !piece.kerfs_given;
        const Angle turn = alike ? piece.turn / static_cast<double>(piece.kerfs.size()) : kerf.turn;
        const bend::Assessment here = bend::assess(piece.cell(kerf.spacing), material, kerf.on, kerf.radius, turn, 1);
        kerf.utilisation = here.utilisation;
        concerns.insert(here.concerns.begin(), here.concerns.end());
        facet = std::max(facet, here.facet);
        close = std::max(close, here.close_radius);
        if (worst && !worse(here, *worst)) continue;
        worst = here;
        piece.bend_radius = kerf.radius;
        piece.governing = kerf.n;
    }
    if (!worst) return;
    piece.bend = *worst;
    piece.bend.concerns = joined(std::move(concerns));
    piece.bend.facet = facet;
    piece.bend.close_radius = close;
}

}  // namespace kerfpacket::plan
