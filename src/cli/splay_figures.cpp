#include "cli/splay_figures.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "measure/fraction.h"

namespace kerfpacket::cli {
namespace {

using measure::Length;

std::string flat_text(const plan::Piece& piece, const sheets::Tape& tape) {
    const plan::Splay& splay = *piece.splay;
    const FlatEdge narrow = flat_edge(piece, splay.narrow_edge());
    const FlatEdge wide = flat_edge(piece, splay.wide_edge());
    const std::string turn =
        piece.blank().bends_both_ways()
            ? ""
            : fmt::format("turns {} degrees, trim and all; ",
                          measure::fixed(std::abs(plan::FlatBlank(splay, piece.blank()).turn().degrees()), 2));
    const std::string struck = narrow.radius && wide.radius
                                   ? fmt::format("edges struck with radii {} and {}; ", tape.with_unit(*narrow.radius),
                                                 tape.with_unit(*wide.radius))
                                   : "";
    return fmt::format("{} wide as sawn, narrow edge {} long, wide edge {}; {}{}kerf to kerf {} and {}",
                       tape.with_unit(splay.sawn_width()), tape.with_unit(narrow.along), tape.with_unit(wide.along),
                       struck, turn, tape.exact(narrow.gap), tape.exact(wide.gap));
}

}  // namespace

FlatEdge flat_edge(const plan::Piece& piece, Length across) {
    const plan::Blank& blank = piece.blank();
    const plan::FlatBlank flat(*piece.splay, blank);
    const auto read = [&](Length from_zero) { return flat.read(from_zero, across); };
    FlatEdge edge{read(blank.length), read(blank.bend_end) - read(blank.bend_start), {}, {}};
    for (std::size_t i = 1; i < blank.kerfs.size(); ++i)
        edge.gap = std::max(edge.gap, read(blank.kerfs[i].at) - read(blank.kerfs[i - 1].at));
    if (piece.circular) edge.radius = flat.radius(blank.centre()) + across;
    return edge;
}

std::vector<std::pair<const char*, std::string>> splay_lines(const plan::Piece& piece, const sheets::Tape& tape) {
    if (!piece.splay) return {};
    const plan::Splay& splay = *piece.splay;
    std::vector<std::pair<const char*, std::string>> lines{
        {"splay",
         fmt::format(
             "{} degrees from square to the wall, {} wider at each side, the wide edge {}; {} from edge to edge "
             "along the slope",
             measure::fixed(splay.alpha.degrees(), 2), tape.with_unit(splay.side()),
             splay.wide_at_room ? "at the room" : "away from the room", tape.with_unit(splay.slant()))},
        {"lies flat", flat_text(piece, tape)}};
    if (piece.saw.blocks)
        lines.emplace_back("blocks", fmt::format("two of {}, {} left and right of the blade: the wide edge bows {} "
                                                 "toward the fence between them",
                                                 tape.exact(piece.saw.blocks->size), tape.exact(piece.saw.blocks->half),
                                                 tape.exact(piece.saw.blocks->bow)));
    return lines;
}

}  // namespace kerfpacket::cli
