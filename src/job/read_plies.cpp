// Plies of plywood, as a number of like ones or one by one from the plain face.
#include <cstdint>

#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

constexpr std::string_view example = "7";
constexpr std::size_t least_plies = 3;
constexpr std::size_t most_plies = 25;
const LengthKey plies{"plies", 0.2_mm, 1_in, R"(["1/16 in", "3/32 in", "1/16 in"])"};
/// Plies are measured worse than a board: what their sum may be off.
constexpr Length slack = Length::inches(1.0 / 64);

/// Three or more, and odd, so that both faces lie along the board.
bool can_be(std::size_t count) { return count >= least_plies && count <= most_plies && count % 2 == 1; }

std::vector<Sourced<Length>> like_plies(Context& context, const toml::node& node, const Sourced<Length>& thickness) {
    const auto number = node.value<std::int64_t>().value_or(0);
    if (!node.is_integer() || number < 0 || !can_be(static_cast<std::size_t>(number))) {
        context.error(position(node), "plies must be an odd number from 3 to 25, or their thicknesses in brackets",
                      "counted at the edge, both faces included: " + for_example(plies.name, example) + ", or " +
                          for_example(plies.name, plies.example));
        return {};
    }
    const auto count = static_cast<std::size_t>(number);
    return std::vector<Sourced<Length>>(count, {thickness.value / static_cast<double>(count), position(node)});
}

}  // namespace

std::vector<Sourced<Length>> read_plies(Context& context, TableReader& reader, const Sourced<Length>& thickness) {
    const auto* node = reader.find(plies.name, Need::optional, example, {Takes::Kind::plies, least_plies, most_plies});
    if (node == nullptr) return {};
    if (!node->is_array()) return like_plies(context, *node, thickness);
    const std::size_t before = context.mistakes();
    auto read = reader.lengths(plies, 0);
    if (context.mistakes() > before) return {};
    if (!can_be(read.size())) {
        context.error(position(*node), "plies has " + std::to_string(read.size()) + " thicknesses",
                      "expected an odd number from 3 to 25, from the seen face to the back: both faces lie along the "
                      "board");
        return {};
    }
    Length sum;
    for (const auto& ply : read) sum += ply.value;
    if (known(thickness) && measure::abs(sum - thickness.value) > slack) {
        context.error(position(*node),
                      "the plies add up to " + context.shown(sum) + " and the board is " +
                          context.shown(thickness.value) + " thick",
                      "measure them at the edge again, from the seen face to the back: expected the board's thickness "
                      "within 1/64 in (0.4 mm)");
        return {};
    }
    return read;
}

}  // namespace kerfpacket::job
