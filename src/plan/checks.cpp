#include "plan/checks.h"

#include <algorithm>

#include <fmt/format.h>

namespace kerfpacket::plan {
namespace {

/// Under this web a board is refused. Judgement, from the design notes.
constexpr Length least_web = Length::inches(1.0 / 16);
/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = Length::mm(0.001);

/// Where a setting stands, or where the board does when the setting was left out.
job::Position place(const job::Setting& setting, const job::Board& board) {
    return setting.at.line > 0 ? setting.at : board.thickness.at;
}

std::string length_text(Length value, const job::Job& job) {
    return job.header.units == measure::Unit::inch ? measure::inch_text(value) + " in"
                                                   : measure::mm_text(value) + " mm";
}

job::Diagnostic unknown_material(const job::Board& board) {
    std::vector<std::string_view> names;
    std::string list;
    for (const bend::Material& material : bend::materials()) {
        names.push_back(material.name);
        list += (list.empty() ? "" : ", ") + std::string(material.name);
    }
    const std::string near = job::near_miss(board.material.value, names);
    const std::string guess = near.empty() ? "" : fmt::format("did you mean \"{}\"? ", near);
    return {job::Severity::error, board.material.at, fmt::format("unknown material \"{}\"", board.material.value),
            fmt::format("{}known: {}", guess, list)};
}

job::Diagnostic thin_web(const Piece& piece, const job::Board& board, const job::Job& job) {
    return {job::Severity::error, place(board.kerf_depth, board),
            fmt::format("kerfs {} deep in a board {} thick leave a web of {}", length_text(piece.kerf_depth, job),
                        length_text(piece.thickness, job), length_text(piece.web(), job)),
            fmt::format("the web must be at least {}", length_text(least_web, job))};
}

job::Diagnostic no_land(const Piece& piece, const job::Board& board, const job::Job& job) {
    return {job::Severity::error, place(board.spacing, board),
            fmt::format("kerfs {} wide every {} leave no wood between them", length_text(piece.kerf, job),
                        length_text(piece.spacing, job)),
            "the spacing must be larger than the kerf"};
}

job::Diagnostic thick_for_radius(const Piece& piece, const job::Board& board, const job::Job& job) {
    return {job::Severity::error, board.thickness.at,
            fmt::format("a board {} thick does not fit the measured radius of {}", length_text(piece.thickness, job),
                        length_text(piece.measured_radius, job)),
            "the board must be thinner than the radius it bends to"};
}

job::Diagnostic thick_for_span(const Piece& piece, const job::Board& board, const job::Job& job) {
    return {job::Severity::error, board.thickness.at,
            fmt::format("liners {} thick fill the measured span of {}", length_text(piece.thickness, job),
                        length_text(piece.measured_span, job)),
            "the liner must be thinner than half the span"};
}

/// Whether boards on both sides leave nothing of an opening.
bool fills_span(const Piece& piece) {
    return piece.kind == Kind::arch_liner && piece.measured_to == job::Surface::wall &&
           piece.thickness >= piece.measured_span / 2;
}

}  // namespace

job::Diagnostics check_board(const Piece& piece, const job::Board& board, const job::Job& job) {
    job::Diagnostics wrong;
    if (bend::find_material(piece.material) == nullptr) wrong.push_back(unknown_material(board));
    if (piece.web() < least_web - slack) wrong.push_back(thin_web(piece, board, job));
    if (piece.spacing <= piece.kerf) wrong.push_back(no_land(piece, board, job));
    if (fills_span(piece)) wrong.push_back(thick_for_span(piece, board, job));
    else if (std::min(piece.wall_radius, piece.finish_radius).mm() <= 0)
        wrong.push_back(thick_for_radius(piece, board, job));
    return wrong;
}

job::Diagnostics check_kerfs(const Piece& piece, const job::Board& board, const job::Job& job) {
    const std::string bend = length_text(piece.bend_length(), job);
    const std::string spacing = length_text(piece.spacing, job);
    if (piece.bend_length() < piece.spacing)
        return {{job::Severity::error, place(board.spacing, board),
                 fmt::format("the bend is {} long, less than one spacing of {}", bend, spacing),
                 "a bend takes several kerfs; use a closer spacing"}};
    if (piece.kerfs.size() > most_kerfs)
        return {{job::Severity::error, place(board.spacing, board),
                 fmt::format("a bend of {} with a kerf every {} takes more than {} cuts", bend, spacing, most_kerfs),
                 "is a length given in the wrong unit?"}};
    return {};
}

}  // namespace kerfpacket::plan
