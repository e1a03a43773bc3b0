#include <algorithm>

#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey chord{"chord", 1_in, longest, R"("14 ft")"};
const LengthKey rise{"rise", finest, longest, R"("11-1/2 in")"};
const LengthKey radius{"radius", finest, longest, R"("20 ft")"};

constexpr std::string_view ways = "chord and rise, or radius and angle, or ordinates";

/// The keys of each way in which a wall's curve may be given.
const std::array<std::vector<std::string_view>, 3>& keys_of_ways() {
    static const std::array<std::vector<std::string_view>, 3> keys{
        {{"chord", "rise"}, {"radius", "angle"}, {"ordinates"}}};
    return keys;
}

/// The first key that is given of each way that is given at all.
std::vector<std::string_view> begun_ways(const TableReader& reader) {
    std::vector<std::string_view> begun;
    for (const auto& keys : keys_of_ways()) {
        const auto key = std::find_if(keys.begin(), keys.end(), [&](auto name) { return reader.has(name); });
        if (key != keys.end()) begun.push_back(*key);
    }
    return begun;
}

/// Both keys of a pair are needed.
void need_both(TableReader& reader, std::string_view one, std::string_view other) {
    const auto need = [&](std::string_view key, std::string_view partner) {
        if (!reader.has(key))
            reader.missing({key}, std::string(key) + " is missing from [[wall]]",
                           std::string(partner) + " alone does not fix the curve");
    };
    need(one, other);
    need(other, one);
}

}  // namespace

void read_curve(Context& context, TableReader& reader, Wall& wall) {
    wall.chord = reader.length(chord, Need::optional);
    wall.rise = reader.length(rise, Need::optional);
    wall.radius = reader.length(radius, Need::optional);
    if (const auto* node = reader.find("angle", Need::optional, "90", {Takes::Kind::angle}))
        wall.angle = context.angle(*node, "angle");
    wall.ordinates = read_ordinates(context, reader);
    const auto begun = begun_ways(reader);
    if (begun.size() > 1) {
        const std::string number = begun.size() == 2 ? "two" : "three";
        context.error(reader.at(begun[1]), "the wall's curve is given in " + number + " ways",
                      "expected " + std::string(ways) + ", not parts of several");
    } else if (begun.empty()) {
        reader.missing({"chord", "rise", "radius", "angle", "ordinates"}, "the wall's curve is not given",
                       "expected " + std::string(ways));
    } else if (begun[0] != "ordinates") {
        const bool by_chord = begun[0] == "chord" || begun[0] == "rise";
        need_both(reader, by_chord ? "chord" : "radius", by_chord ? "rise" : "angle");
    }
    for (const std::string_view key : {"fit", "end_angles"})
        if (reader.has(key) && !reader.has("ordinates"))
            context.harmless_error(reader.at_name(key), std::string(key) + " is given without ordinates",
                                   std::string(key) + " goes with measured points: " + ordinates_example());
}

}  // namespace kerfpacket::job
