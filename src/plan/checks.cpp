#include "plan/checks.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "bend/limit.h"
#include "job/text.h"
#include "plan/wood.h"

namespace kerfpacket::plan {
namespace {

/// Further apart kerfs bend nothing evenly: the most that a job file may give as a spacing.
constexpr Length widest_given_gap = Length::inches(3);
/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = Length::mm(0.001);

/// Where a setting stands, or where the board does when the setting was left out.
job::Position place(const job::Setting& setting, const job::Board& board) {
    return setting.at.line > 0 ? setting.at : board.thinnest_at();
}

/// "MDF" for "mdf", "poplar" for "yellow-poplar": capitals and a part of the name, or else a slip of the keyboard.
std::string meant_material(const std::string& word, const std::vector<std::string_view>& names) {
    std::string small;
    for (const char c : word)
        small += c == ' ' || c == '_' ? '-' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    std::vector<std::string_view> alike;
    for (const std::string_view name : names) {
        if (name == small) return small;
        if (small.size() >= 3 && (("-" + std::string(name) + "-").find("-" + small + "-") != std::string::npos))
            alike.push_back(name);
    }
    return alike.size() == 1 ? std::string(alike.front()) : job::near_miss(small, names);
}

job::Diagnostic thin_web(Length depth, const job::Board& board, const job::Job& job) {
    return {job::Severity::error, place(board.kerf_depth, board),
            fmt::format(
                "kerfs {} deep in a board {} thick{} leave a web of {}", measure::length_text(depth, job.header.units),
                measure::length_text(board.thinnest(), job.header.units), board.moulded() ? " at its thinnest" : "",
                measure::length_text(board.thinnest() - depth, job.header.units)),
            fmt::format("the web must be at least {}", measure::length_text(bend::least_web, job.header.units))};
}

job::Diagnostic no_land(Length spacing, const job::Board& board, const job::Job& job) {
    return {job::Severity::error, place(board.spacing, board),
            fmt::format("kerfs {} wide every {} leave no wood between them",
                        measure::length_text(job.saw.kerf.value, job.header.units),
                        measure::length_text(spacing, job.header.units)),
            "the spacing must be larger than the kerf"};
}

job::Diagnostics check_given_kerfs(const Blank& blank, const Cutting& cut, const job::Board& board,
                                   const job::Job& job) {
    const auto text = [&](Length length) { return measure::length_text(length, job.header.units); };
    for (const auto& kerf : board.kerfs)
        if (kerf.value <= cut.kerf || kerf.value >= blank.length - cut.kerf)
            return {{job::Severity::error, kerf.at,
                     fmt::format("a kerf at {} is not on the blank, which is {} long", text(kerf.value),
                                 text(blank.length)),
                     "kerfs are counted from the blank's zero end, trim included"}};
    // From kerf to kerf, and from the bend's ends to the nearest.
    Length before = blank.bend_start;
    const auto bare = [&](Length at, job::Position where) {
        const Length from = before;
        before = at;
        if (at - from <= widest_given_gap) return job::Diagnostics{};
        return job::Diagnostics{{job::Severity::error, where,
                                 fmt::format("from {} to {} there is no kerf", text(from), text(at)),
                                 fmt::format("the bend runs from {} to {}; kerfs stand at most {} apart",
                                             text(blank.bend_start), text(blank.bend_end), text(widest_given_gap))}};
    };
    for (const auto& kerf : board.kerfs) {
        if (&kerf == &board.kerfs.front()) before = std::min(before, kerf.value);
        if (auto wrong = bare(kerf.value, kerf.at); !wrong.empty()) return wrong;
    }
    return bare(std::max(before, blank.bend_end), board.kerfs.back().at);
}

}  // namespace

job::Diagnostic folded(const curve::Fold& fold, job::Position at, const std::string& what, const job::Job& job) {
    const std::string place = fmt::format(
        "{} {} of the middle, {} {} the base line", measure::length_text(measure::abs(fold.where.x), job.header.units),
        fold.where.x.mm() < 0 ? "left" : "right", measure::length_text(measure::abs(fold.where.y), job.header.units),
        fold.where.y.mm() < 0 ? "below" : "above");
    if (fold.radius.mm() <= 0)
        return {job::Severity::error, at,
                fmt::format("the {}, {} from the measured curve, does not fit: a side of the head is used up at {}",
                            what, measure::length_text(fold.distance, job.header.units), place),
                "a thinner board or a narrower casing leaves room"};
    return {job::Severity::error, at,
            fmt::format("the {} would fold on itself: the measured curve has a radius of {} at {}", what,
                        measure::length_text(fold.radius, job.header.units), place),
            fmt::format("it lies {} from the measured curve, which must be less than the radius",
                        measure::length_text(fold.distance, job.header.units))};
}

job::Diagnostics unknown_materials(const std::vector<job::Sourced<std::string>>& used,
                                   const std::vector<std::string>& own) {
    std::vector<std::string_view> names;
    for (const bend::Material& material : bend::materials()) names.push_back(material.name);
    for (const std::string& name : own)
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    job::Diagnostics wrong;
    for (const auto& material : used) {
        if (std::find(names.begin(), names.end(), material.value) != names.end()) continue;
        const std::string near = meant_material(material.value, names);
        const std::string guess = near.empty() ? "" : fmt::format("did you mean \"{}\"? ", near);
        wrong.push_back(
            {job::Severity::error, material.at, fmt::format("unknown material {}", job::in_quotes(material.value)),
             fmt::format("{}known: {}; a [[material]] table makes another known", guess, fmt::join(names, ", "))});
    }
    return wrong;
}

job::Diagnostics check_board(const job::Board& board, const job::Job& job) {
    // What is left to the program begins at common practice.
    const Length depth = board.kerf_depth.given.value_or(usual_depth(board));
    const Length spacing = board.spacing.given.value_or(usual_spacing);
    job::Diagnostics wrong;
    if (board.thinnest() - depth < bend::least_web - slack) wrong.push_back(thin_web(depth, board, job));
    if (board.kerfs.empty() && spacing <= job.saw.kerf.value) wrong.push_back(no_land(spacing, board, job));
    const auto material = material_of(board, job);
    if (material && !material->may_split && !board.plies.empty())
        wrong.push_back({job::Severity::error, board.plies.front().at,
                         fmt::format("\"{}\" has no plies", board.material.value),
                         "plies are for plywood, and for a material of your own with grain = true"});
    return wrong;
}

job::Diagnostics slips(const std::optional<curve::Survey>& survey, const std::optional<job::Ordinates>& ordinates,
                       const job::Job& job) {
    if (!survey || !survey->suspect || !ordinates) return {};
    const std::size_t point = survey->suspect->point;
    return {{job::Severity::error, ordinates->points.at(point).height.at,
             fmt::format("station {} looks mistyped or misread: {} off the curve of the others",
                         measure::length_text(survey->stations.at(point), job.header.units),
                         measure::length_text(curve::to_hundredths(survey->suspect->off), job.header.units)),
             "measure it again: a slip bends the curve where the wall does not bend"}};
}

job::Diagnostics check_span(const job::Opening& opening, Length span, const job::Job& job) {
    const job::Board& liner = opening.liner;
    if (opening.measured_to != job::Surface::wall || liner.thickness.value < span / 2) return {};
    return {{job::Severity::error, liner.thickness.at,
             fmt::format("liners {} thick fill the measured span of {}",
                         measure::length_text(liner.thickness.value, job.header.units),
                         measure::length_text(span, job.header.units)),
             "the liner must be thinner than half the span"}};
}

job::Diagnostics check_kerfs(const Blank& blank, const Cutting& cut, std::size_t kerfs, const job::Board& board,
                             const job::Job& job) {
    const std::string bend = measure::length_text(blank.bend_length(), job.header.units);
    const std::string spacing = measure::length_text(cut.spacing, job.header.units);
    if (cut.kerfs_given) return check_given_kerfs(blank, cut, board, job);
    if (blank.bend_length() < cut.spacing)
        return {{job::Severity::error, place(board.spacing, board),
                 fmt::format("the bend is {} long, less than one spacing of {}", bend, spacing),
                 "a bend takes several kerfs; use a closer spacing"}};
    if (kerfs == 0)
        return {{job::Severity::error, place(board.spacing, board),
                 fmt::format("the bend of {} leaves no room for a kerf every {} clear of its ends", bend, spacing),
                 "use a closer spacing, or more trim"}};
    if (kerfs > most_kerfs)
        return {{job::Severity::error, place(board.spacing, board),
                 fmt::format("a bend of {} with a kerf every {} takes more than {} cuts", bend, spacing, most_kerfs),
                 "is a length given in the wrong unit?"}};
    return {};
}

}  // namespace kerfpacket::plan
