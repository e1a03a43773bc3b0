// The section of a moulded wall board: heights and thicknesses, or the least thickness alone.
#include <algorithm>

#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

constexpr std::string_view example = R"([["0 in", "3/4 in"], ["5 in", "3/4 in"], ["5 1/2 in", "3/8 in"]])";
const LengthKey height{"profile", Length(), 48_in, R"("5 in")", true};
const LengthKey thickness_there{"profile", finest, 3_in, R"("3/8 in")"};
const PairsKey profile{
    "profile", height, thickness_there, "pairs: height from the board's bottom edge, thickness there", example, 200};
const LengthKey least_thickness{"least_thickness", finest, 3_in, R"("3/8 in")"};
/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = 0.001_mm;

/// Heights rise from 0 to the board's width; where two are alike there is a step.
void check_heights(Context& context, const Board& board) {
    const auto& points = board.profile;
    if (points.front().first.value > slack)
        context.error(points.front().first.at, "the profile begins at " + context.shown(points.front().first.value),
                      "heights are counted from the board's bottom edge: expected 0 first");
    for (std::size_t i = 1; i < points.size(); ++i) {
        const Sourced<Length>& here = points[i].first;
        const bool back = here.value < points[i - 1].first.value - slack;
        const bool third = i > 1 && here.value - points[i - 2].first.value <= slack;
        if (!back && !third) continue;
        context.error(here.at, "height " + context.shown(here.value) + " does not lie above the one before it",
                      "expected heights that rise from the bottom edge, at a step the same one twice");
        return;
    }
    const Sourced<Length>& last = points.back().first;
    if (known(board.width) && measure::abs(last.value - board.width.value) > slack)
        context.error(last.at,
                      "the profile ends at " + context.shown(last.value) + " and the board is " +
                          context.shown(board.width.value) + " wide",
                      "expected the board's width as the last height");
}

void check_thicknesses(Context& context, const Board& board) {
    if (!known(board.thickness)) return;
    const auto thickest =
        std::max_element(board.profile.begin(), board.profile.end(),
                         [](const auto& a, const auto& b) { return a.second.value < b.second.value; });
    if (measure::abs(thickest->second.value - board.thickness.value) <= slack) return;
    context.error(thickest->second.at,
                  "the profile is at most " + context.shown(thickest->second.value) + " thick and the board is " +
                      context.shown(board.thickness.value) + " thick",
                  "expected the board's thickness where the profile is thickest, both from the flat back");
}

/// Read whole, or empty.
void read_profile(Context& context, TableReader& reader, Board& board) {
    const std::size_t before = context.mistakes();
    auto points = reader.pairs(profile);
    if (!points || context.mistakes() > before) return;
    if (points->size() < 2) {
        context.error(reader.at("profile"), "a profile takes two or more heights", for_example(profile.name, example));
        return;
    }
    board.profile = std::move(*points);
    check_heights(context, board);
    check_thicknesses(context, board);
}

/// What a moulded board does not go with.
void check_company(Context& context, const TableReader& reader, const Board& board) {
    const char* key = board.profile.empty() ? "least_thickness" : "profile";
    if (!board.profile.empty() && board.least_thickness)
        context.error(board.least_thickness->at, "least_thickness does not go with a profile, which tells it",
                      "expected one of the two");
    if (!board.plies.empty())
        context.error(reader.at_name(key), std::string(key) + " does not go with plies",
                      "a moulded board is judged as one solid: expected one of the two");
    if (board.strip.value == StripOn::edge)
        context.error(board.strip.at, R"(strip = "edge" does not go with a moulded board)",
                      R"(its front edge may be no flat one to stick a strip to: expected strip = "face")");
}

}  // namespace

Length Board::thinnest() const {
    Length least = least_thickness ? least_thickness->value : thickness.value;
    for (const auto& point : profile) least = std::min(least, point.second.value);
    return least;
}

Position Board::thinnest_at() const {
    if (least_thickness) return least_thickness->at;
    for (const auto& point : profile)
        if (point.second.value <= thinnest()) return point.second.at;
    return thickness.at;
}

void read_moulding(Context& context, TableReader& reader, Board& board) {
    read_profile(context, reader, board);
    board.least_thickness = reader.length(least_thickness, Need::optional);
    if (!board.moulded()) return;
    if (board.least_thickness && known(board.thickness) && board.least_thickness->value >= board.thickness.value)
        context.error(board.least_thickness->at,
                      "least_thickness " + context.shown(board.least_thickness->value) +
                          " is no less than the board's thickness, " + context.shown(board.thickness.value),
                      "expected how thick a moulded board is at its thinnest; a flat one has none");
    check_company(context, reader, board);
}

void refuse_moulding(TableReader& reader) {
    for (const LengthKey& key : {thickness_there, least_thickness})
        if (reader.has(key.name))
            reader.refuse(key.name, std::string(key.name) + " does not go with a liner, which is flat",
                          "a moulded board is one of a wall: [wall.board]");
}

}  // namespace kerfpacket::job
