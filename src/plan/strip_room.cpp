#include "plan/strip_room.h"

namespace kerfpacket::plan {
namespace {

using job::say;

/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = Length::mm(0.001);

/// The place of the first that is given in the job file, else of the board's thickness, which always is.
job::Position place(std::initializer_list<job::Position> places, const job::Board& board) {
    for (const job::Position at : places)
        if (at.line > 0) return at;
    return board.thickness.at;
}

job::Diagnostics check_marks(const std::vector<Kerf>& kerfs, const job::Board& board, const job::Job& job) {
    const auto text = [&](Length length) { return job::shown(length, job.header.units); };
    for (std::size_t i = 1; i < kerfs.size(); ++i) {
        const Length gap = kerfs[i].at - kerfs[i - 1].at;
        if (gap >= closest_marks - slack) continue;
        const job::Position by_hand = board.kerfs.empty() ? job::Position{} : board.kerfs.at(i).at;
        return {{job::Severity::error, place({by_hand, board.spacing.at}, board),
                 say("marks_close", "kerfs {a} and {b} are {gap} apart: marks so close cannot be told apart on a strip",
                     {{"a", kerfs[i - 1].n}, {"b", kerfs[i].n}, {"gap", text(gap)}}),
                 say("marks_close_do", "kerfs stand at least {gap} apart", {{"gap", text(closest_marks)}})}};
    }
    return {};
}

}  // namespace

Length least_strip_height(job::StripOn strip, Length thickness) {
    return strip == job::StripOn::edge ? thickness + edge_flap : least_face_strip;
}

bool web_has_strip_room(job::StripOn strip, Length web) {
    return strip != job::StripOn::edge || web >= least_edge_web - slack;
}

job::Diagnostics check_strips(const std::string& id, const Cutting& cut, const Blank& blank, const job::Board& board,
                              const job::Job& job) {
    const auto text = [&](Length length) { return job::shown(length, job.header.units); };
    if (auto wrong = check_marks(blank.kerfs, board, job); !wrong.empty()) return wrong;
    const bool edge = board.strip.value == job::StripOn::edge;
    const job::Position at = place({board.strip.at}, board);
    if (!web_has_strip_room(board.strip.value, cut.web()))
        return {{job::Severity::error, at,
                 say("edge_strip",
                     "a strip over the edge has no room for its numbers: kerfs {depth} deep leave a web of {web}",
                     {{"depth", text(cut.depth)}, {"web", text(cut.web())}}),
                 say("edge_strip_do", R"(the web must be at least {web}; strip = "face" goes on any board)",
                     {{"web", text(least_edge_web)}})}};
    const job::Media& paper = job.printer.strip_media();
    const Length room = paper.width - roll_edge * 2;
    const Length needed = least_strip_height(board.strip.value, cut.thickness);
    if (!paper.roll || needed <= room + slack) return {};
    const bool face_fits = edge && least_face_strip <= room + slack;
    return {
        {job::Severity::error, at,
         say(edge ? "roll_edge" : "roll_face",
             edge ? "a roll {width} wide is too narrow for the edge strips of piece {piece}, which are {height} high"
                  : "a roll {width} wide is too narrow for the face strips of piece {piece}, which are {height} high",
             {{"width", text(paper.width)}, {"piece", id}, {"height", text(needed)}}),
         say(face_fits ? "roll_do_face" : "roll_do",
             face_fits ? R"(the roll must be at least {width} wide; strip = "face" fits on this one)"
                       : "the roll must be at least {width} wide",
             {{"width", text(needed + roll_edge * 2)}})}};
}

}  // namespace kerfpacket::plan
