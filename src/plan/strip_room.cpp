#include "plan/strip_room.h"

#include <fmt/format.h>

namespace kerfpacket::plan {
namespace {

/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = Length::mm(0.001);

/// The place of the first that is given in the job file, else of the board's thickness, which always is.
job::Position place(std::initializer_list<job::Position> places, const job::Board& board) {
    for (const job::Position at : places)
        if (at.line > 0) return at;
    return board.thickness.at;
}

job::Diagnostics check_marks(const std::vector<Kerf>& kerfs, const job::Board& board, const job::Job& job) {
    const auto text = [&](Length length) { return measure::length_text(length, job.header.units); };
    for (std::size_t i = 1; i < kerfs.size(); ++i) {
        const Length gap = kerfs[i].at - kerfs[i - 1].at;
        if (gap >= closest_marks - slack) continue;
        const job::Position by_hand = board.kerfs.empty() ? job::Position{} : board.kerfs.at(i).at;
        return {{job::Severity::error, place({by_hand, board.spacing.at}, board),
                 fmt::format("kerfs {} and {} are {} apart: marks so close cannot be told apart on a strip",
                             kerfs[i - 1].n, kerfs[i].n, text(gap)),
                 fmt::format("kerfs stand at least {} apart", text(closest_marks))}};
    }
    return {};
}

}  // namespace

Length least_strip_height(job::StripOn strip, Length thickness) {
    return strip == job::StripOn::edge ? thickness + edge_flap : least_face_strip;
}

job::Diagnostics check_strips(const std::string& id, const Cutting& cut, const Blank& blank, const job::Board& board,
                              const job::Job& job) {
    const auto text = [&](Length length) { return measure::length_text(length, job.header.units); };
    if (auto wrong = check_marks(blank.kerfs, board, job); !wrong.empty()) return wrong;
    const bool edge = board.strip.value == job::StripOn::edge;
    const job::Position at = place({board.strip.at}, board);
    if (edge && cut.web() < least_edge_web - slack)
        return {{job::Severity::error, at,
                 fmt::format("a strip over the edge has no room for its numbers: kerfs {} deep leave a web of {}",
                             text(cut.depth), text(cut.web())),
                 fmt::format("the web must be at least {}; strip = \"face\" goes on any board", text(least_edge_web))}};
    const job::Media& paper = job.printer.strip_media();
    const Length room = paper.width - roll_edge * 2;
    const Length needed = least_strip_height(board.strip.value, cut.thickness);
    if (!paper.roll || needed <= room + slack) return {};
    const bool face_fits = edge && least_face_strip <= room + slack;
    return {{job::Severity::error, at,
             fmt::format("a roll {} wide is too narrow for the {} strips of piece {}, which are {} high",
                         text(paper.width), edge ? "edge" : "face", id, text(needed)),
             fmt::format("the roll must be at least {} wide{}", text(needed + roll_edge * 2),
                         face_fits ? "; strip = \"face\" fits on this one" : "")}};
}

}  // namespace kerfpacket::plan
