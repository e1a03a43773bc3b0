#include "plan/checks.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "bend/limit.h"
#include "job/text.h"
#include "plan/wood.h"

namespace kerfpacket::plan {
namespace {

using job::say;
using job::shown;

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
            say(board.moulded() ? "thin_web_moulded" : "thin_web",
                board.moulded() ? "kerfs {depth} deep in a board {thickness} thick at its thinnest leave a web of {web}"
                                : "kerfs {depth} deep in a board {thickness} thick leave a web of {web}",
                {{"depth", shown(depth, job.header.units)},
                 {"thickness", shown(board.thinnest(), job.header.units)},
                 {"web", shown(board.thinnest() - depth, job.header.units)}}),
            say("web_least", "the web must be at least {web}", {{"web", shown(bend::least_web, job.header.units)}})};
}

job::Diagnostic no_land(Length spacing, const job::Board& board, const job::Job& job) {
    return {job::Severity::error, place(board.spacing, board),
            say("no_land", "kerfs {kerf} wide every {spacing} leave no wood between them",
                {{"kerf", shown(job.saw.kerf.value, job.header.units)}, {"spacing", shown(spacing, job.header.units)}}),
            board.spacing.given
                ? say("no_land_do", "the spacing must be larger than the kerf")
                : say("no_land_usual",
                      "left out it is {spacing}: give one that is larger than the kerf, or a narrower kerf",
                      {{"spacing", shown(spacing, job.header.units)}})};
}

/// Of a point, from the middle of the span.
job::Told place_of(geom::Point point, measure::Unit unit) {
    const job::Told x = shown(measure::abs(point.x), unit);
    const job::Told y = shown(measure::abs(point.y), unit);
    return say("place", "{across}, {up}",
               {{"across", point.x.mm() < 0 ? say("left_of_middle", "{x} left of the middle", {{"x", x}})
                                            : say("right_of_middle", "{x} right of the middle", {{"x", x}})},
                {"up", point.y.mm() < 0 ? say("below_base", "{y} below the base line", {{"y", y}})
                                        : say("above_base", "{y} above the base line", {{"y", y}})}});
}

job::Diagnostics check_given_kerfs(const Blank& blank, const Cutting& cut, const job::Board& board,
                                   const job::Job& job) {
    const auto text = [&](Length length) { return shown(length, job.header.units); };
    for (const auto& kerf : board.kerfs)
        if (kerf.value <= cut.kerf || kerf.value >= blank.length - cut.kerf)
            return {{job::Severity::error, kerf.at,
                     say("off_blank", "a kerf at {at} is not on the blank, which is {length} long",
                         {{"at", text(kerf.value)}, {"length", text(blank.length)}}),
                     say("off_blank_do", "kerfs are counted from the blank's zero end, trim included")}};
    // From kerf to kerf, and from the bend's ends to the nearest.
    Length before = blank.bend_start;
    const auto bare = [&](Length at, job::Position where) {
        const Length from = before;
        before = at;
        if (at - from <= widest_given_gap) return job::Diagnostics{};
        return job::Diagnostics{
            {job::Severity::error, where,
             say("bare", "from {from} to {to} there is no kerf", {{"from", text(from)}, {"to", text(at)}}),
             say("bare_do", "the bend runs from {from} to {to}; kerfs stand at most {gap} apart",
                 {{"from", text(blank.bend_start)}, {"to", text(blank.bend_end)}, {"gap", text(widest_given_gap)}})}};
    };
    for (const auto& kerf : board.kerfs) {
        if (&kerf == &board.kerfs.front()) before = std::min(before, kerf.value);
        if (auto wrong = bare(kerf.value, kerf.at); !wrong.empty()) return wrong;
    }
    return bare(std::max(before, blank.bend_end), board.kerfs.back().at);
}

}  // namespace

job::Diagnostic folded(const curve::Fold& fold, job::Position at, const job::Told& what, const job::Job& job) {
    const job::Told distance = shown(fold.distance, job.header.units);
    const job::Told place = place_of(fold.where, job.header.units);
    if (fold.radius.mm() <= 0)
        return {job::Severity::error, at,
                say("used_up",
                    "the {what}, {distance} from the measured curve, does not fit: a side of the head is used up at "
                    "{place}",
                    {{"what", what}, {"distance", distance}, {"place", place}}),
                say("used_up_do", "a thinner board or a narrower casing leaves room")};
    return {job::Severity::error, at,
            say("fold", "the {what} would fold on itself: the measured curve has a radius of {radius} at {place}",
                {{"what", what}, {"radius", shown(fold.radius, job.header.units)}, {"place", place}}),
            say("fold_do", "it lies {distance} from the measured curve, which must be less than the radius",
                {{"distance", distance}})};
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
        wrong.push_back({job::Severity::error, material.at,
                         job::Told(fmt::format("unknown material {}", job::in_quotes(material.value))),
                         job::Told(fmt::format("{}known: {}; a [[material]] table makes another known", guess,
                                               fmt::join(names, ", ")))});
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
        wrong.push_back(
            {job::Severity::error, board.plies.front().at,
             say("no_plies", R"("{material}" has no plies)", {{"material", board.material.value}}),
             say("no_plies_do", "plies are for plywood, and for a material of your own with grain = true")});
    return wrong;
}

job::Diagnostics slips(const std::optional<curve::Survey>& survey, const std::optional<job::Ordinates>& ordinates,
                       const job::Job& job) {
    if (!survey || !survey->suspect || !ordinates) return {};
    const std::size_t point = survey->suspect->point;
    return {{job::Severity::error, ordinates->points.at(point).height.at,
             say("slip", "station {at} looks mistyped or misread: {off} off the curve of the others",
                 {{"at", shown(survey->stations.at(point), job.header.units)},
                  {"off", shown(curve::to_hundredths(survey->suspect->off), job.header.units)}}),
             say("slip_do", "measure it again: a slip bends the curve where the wall does not bend")}};
}

job::Diagnostics check_span(const job::Opening& opening, Length span, const job::Job& job) {
    const job::Board& liner = opening.liner;
    if (opening.measured_to != job::Surface::wall || liner.thickness.value < span / 2) return {};
    return {
        {job::Severity::error, liner.thickness.at,
         say("fills_span", "liners {thickness} thick fill the measured span of {span}",
             {{"thickness", shown(liner.thickness.value, job.header.units)}, {"span", shown(span, job.header.units)}}),
         say("fills_span_do", "the liner must be thinner than half the span")}};
}

job::Diagnostics check_kerfs(const Blank& blank, const Cutting& cut, std::size_t kerfs, const job::Board& board,
                             const job::Job& job) {
    const job::Told bend = shown(blank.bend_length(), job.header.units);
    const job::Told spacing = shown(cut.spacing, job.header.units);
    if (cut.kerfs_given) return check_given_kerfs(blank, cut, board, job);
    if (blank.bend_length() < cut.spacing)
        return {{job::Severity::error, place(board.spacing, board),
                 say("too_short", "the bend is {bend} long, less than one spacing of {spacing}",
                     {{"bend", bend}, {"spacing", spacing}}),
                 say("too_short_do", "a bend takes several kerfs; use a closer spacing")}};
    if (kerfs == 0)
        return {{job::Severity::error, place(board.spacing, board),
                 say("no_room", "the bend of {bend} leaves no room for a kerf every {spacing} clear of its ends",
                     {{"bend", bend}, {"spacing", spacing}}),
                 say("no_room_do", "use a closer spacing, or more trim")}};
    if (kerfs > most_kerfs)
        return {{job::Severity::error, place(board.spacing, board),
                 say("too_many", "a bend of {bend} with a kerf every {spacing} takes more than {n} cuts",
                     {{"bend", bend}, {"spacing", spacing}, {"n", most_kerfs}}),
                 say("too_many_do", "is a length given in the wrong unit?")}};
    return {};
}

}  // namespace kerfpacket::plan
