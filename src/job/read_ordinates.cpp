#include "job/choices.h"
#include "job/tables.h"

namespace kerfpacket::job {
namespace {

constexpr std::size_t most_points = 5000;

const PairsKey ordinates{"ordinates",
                         {"a station in ordinates", -longest, longest, R"("12 in")", true},
                         {"a height in ordinates", -longest, longest, R"("7-1/4 in")", true},
                         "pairs: station and height",
                         R"([["0 in", "0 in"], ["12 in", "7-1/4 in"], ["24 in", "0 in"]])",
                         most_points};

std::optional<std::array<Sourced<Angle>, 2>> read_end_angles(Context& context, TableReader& reader) {
    const auto* node = reader.find("end_angles", Need::optional, "[35, -35]", {Takes::Kind::angles});
    if (node == nullptr) return std::nullopt;
    const auto* list = node->as_array();
    if (list == nullptr || list->size() != 2) {
        context.error(position(*node), "end_angles must be two angles in square brackets: left, right",
                      "in degrees, rising to the right positive, " + for_example("end_angles", "[35, -35]"));
        return std::nullopt;
    }
    const auto left = context.slope((*list)[0], "an angle in end_angles");
    const auto right = context.slope((*list)[1], "an angle in end_angles");
    if (!left || !right) return std::nullopt;
    return std::array{*left, *right};
}

}  // namespace

std::optional<Ordinates> read_ordinates(Context& context, TableReader& reader) {
    const auto pairs = reader.pairs(ordinates);
    const auto fit = reader.choice<Fit>("fit", fit_words());
    const auto end_angles = read_end_angles(context, reader);
    if (!pairs) return std::nullopt;
    Ordinates read{{}, usual_tape, fit, end_angles, reader.at(ordinates.name)};
    read.points.reserve(pairs->size());
    for (const auto& [station, height] : *pairs) read.points.push_back({station, height});
    return read;
}

std::string ordinates_example() { return for_example(ordinates.name, ordinates.example); }

}  // namespace kerfpacket::job
