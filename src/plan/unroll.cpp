#include "plan/unroll.h"

#include <cmath>
#include <utility>

namespace kerfpacket::plan {
namespace {

/// Of both ways added, between two distances.
Angle whole_turn(const curve::Curve& curve, Length from, Length to, const std::vector<BendRun>& runs) {
    double turn = 0;
    for (const BendRun& run : runs) {
        const Length low = std::max(from, run.from);
        const Length high = std::min(to, run.to);
        if (low < high) turn += std::abs((curve.at(high).turned - curve.at(low).turned).radians());
    }
    return Angle::radians(turn);
}

}  // namespace

Unrolled unroll(const Request& wanted, Length below_face) {
    const Faces face = wanted.faces();
    const Length left = wanted.line_left(below_face);
    // The line starts where the wood does.
    const curve::Extent extent = wanted.extent();
    const curve::Curve& curve = wanted.bend->curve;
    const curve::Curve line = wanted.bent_line(below_face);
    const Length ends = wanted.tails[0] + wanted.tails[1];
    const job::Board& board_asked = *wanted.wanted;
    std::optional<Rake> rake;
    if (wanted.climbs != nullptr)
        rake = rake_of(*wanted.climbs, board_asked.width.value, wanted.curve.length() + ends, line.length() + ends);
    const Length trim = board_asked.trim.value * (rake ? rake->cosine() : 1);
    const Length origin = trim + wanted.tails[0];
    const auto along = [&](Length measured) { return curve.on_parallel(measured - extent.from, left); };
    const auto finish = [&](Length measured) { return curve.on_parallel(measured - extent.from, face.finish); };
    const auto cut = [&](const CurveEnd& end) {
        return BoardEnd{end.meets, end.mitre, origin + along(end.wall), origin + along(end.finish)};
    };
    const auto& [first, last] = wanted.ends;
    std::vector<BendRun> runs = wanted.bend->runs;
    for (BendRun& run : runs) run = {along(run.from), along(run.to), run.on};
    Unrolled board{
        .measured = curve,
        .starts_at = extent.from,
        .left = left,
        .line = line,
        .origin = origin,
        .below_face = below_face,
        .bend_from = along(first.finish),
        .bend_to = along(last.finish),
        .length = origin + line.length() + wanted.tails[1] + trim,
        .trims = {trim, trim},
        .ends = {cut(first), cut(last)},
        .tails = wanted.tails,
        // What lies beyond the plain face at a mitre is a wedge of the back, which bends nothing.
        .turn = whole_turn(line, along(first.finish), along(last.finish), runs),
        .finish_length = wanted.tails[0] + wanted.tails[1] + finish(last.finish) - finish(first.finish),
        .covers = {extent.from - wanted.tails[0], extent.to + wanted.tails[1]},
        .rake = rake,
    };
    for (const BendRun& run : runs) board.runs.push_back({origin + run.from, origin + run.to, run.on});
    return board;
}

Blank counted_from_zero(const Unrolled& board, job::End zero) {
    Blank blank{
        .zero = zero,
        .length = board.length,
        .trims = board.trims,
        .tails = board.tails,
        .ends = board.ends,
        .bend_start = board.origin,
        .bend_end = board.bend_end(),
        .runs = board.runs,
        .finish_length = board.finish_length,
        .covers = board.covers,
    };
    if (zero == job::End::left) return blank;
    std::swap(blank.tails[0], blank.tails[1]);
    std::swap(blank.ends[0], blank.ends[1]);
    for (BoardEnd& end : blank.ends) {
        end.kerf_face = blank.from_left(end.kerf_face);
        end.plain_face = blank.from_left(end.plain_face);
    }
    blank.bend_start = blank.from_left(board.bend_end());
    blank.bend_end = blank.from_left(board.origin);
    std::reverse(blank.runs.begin(), blank.runs.end());
    for (BendRun& run : blank.runs) run = {blank.from_left(run.to), blank.from_left(run.from), run.on};
    return blank;
}

}  // namespace kerfpacket::plan
