#include <algorithm>
#include <charconv>
#include <map>

#include "job/tables.h"
#include "job/text.h"

namespace kerfpacket::job {
namespace {

/// Factor on the break strain where grain can split as the kerfs open. Judgement, no source; the same as for the
/// materials that are known, in src/bend/material.cpp.
constexpr double split_factor = 0.7;

constexpr std::string_view title = "[[material]]";
constexpr std::string_view strain_example = R"("0.62 %")";

const NumberKey softness{"softness", 0.5, 4, "from 0.5 to 4", "2.3"};
const NumberKey peel_energy{"peel_energy", 1, 2000, "from 1 to 2000, in J/m2", "45"};
const NumberKey modulus{"modulus", 100, 40000, "from 100 to 40000, in MPa", "2700"};

/// "0.62 %" as a fraction.
std::optional<double> percentage(std::string_view words) {
    const auto skip_blanks = [&] { words.remove_prefix(std::min(words.find_first_not_of(' '), words.size())); };
    skip_blanks();
    double value = 0;
    const auto [stop, failed] = std::from_chars(words.data(), words.data() + words.size(), value);
    if (failed != std::errc{}) return std::nullopt;
    words.remove_prefix(static_cast<std::size_t>(stop - words.data()));
    skip_blanks();
    words = words.substr(0, words.find_last_not_of(' ') + 1);
    return words == "%" ? std::optional(value / 100) : std::nullopt;
}

/// A key that takes a part of a hundred in quotes.
struct PercentKey {
    std::string_view name;
    double least;
    double most;
    std::string_view what;   ///< "a strain"
    std::string_view wrong;  ///< "is not the strain of any board"
    std::string_view range;
    std::string_view example;
};
constexpr PercentKey strain{"break_strain",       0.0005,        0.05, "a strain", "is not the strain of any board",
                            "from 0.05 % to 5 %", strain_example};
constexpr PercentKey strain_outside{"break_strain_outside", strain.least, strain.most,   strain.what,
                                    strain.wrong,           strain.range, strain.example};
constexpr PercentKey scatter{
    "scatter",          0.02,       0.5, "a part of the break strain", "is not the scatter of any board",
    "from 2 % to 50 %", R"("12 %")"};

std::optional<double> read_percent(Context& context, TableReader& reader, const PercentKey& key, Need need) {
    const auto* node = reader.find(key.name, need, key.example, {Takes::Kind::percent});
    if (node == nullptr) return std::nullopt;
    const std::string name(key.name);
    const auto* words = node->as_string();
    const auto part = words == nullptr ? std::nullopt : percentage(words->get());
    // Not the other way round: a value that is not a number is in no range.
    const bool fits = part && *part >= key.least && *part <= key.most;
    if (fits) return part;
    if (part)
        context.error(position(*node), name + " " + in_quotes(words->get()) + " " + std::string(key.wrong),
                      "expected " + std::string(key.range) + ", " + for_example(key.name, key.example));
    else
        context.error(position(*node), name + " must be " + std::string(key.what) + " in quotes, with its percent sign",
                      for_example(key.name, key.example));
    return std::nullopt;
}

Sourced<std::string> read_name(Context& context, TableReader& reader) {
    const auto name = reader.words("name", 40, R"("poplar-ply")");
    if (!name) return {};
    const auto fits = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
    if (std::all_of(name->value.begin(), name->value.end(), fits)) return *name;
    context.error(name->at, "name " + in_quotes(name->value) + " is not written as a material is",
                  R"(expected small letters, digits and hyphens, for example "poplar-ply")");
    return {};
}

/// Peeling takes both figures or none.
std::optional<std::array<double, 2>> read_peel(TableReader& reader) {
    const auto energy = reader.number(peel_energy);
    const auto stiffness = reader.number(modulus);
    const auto need = [&](const NumberKey& key, const NumberKey& partner) {
        if (!reader.has(key.name) && reader.has(partner.name))
            reader.missing({key.name}, std::string(key.name) + " is missing from " + std::string(title),
                           std::string(partner.name) + " goes with it, " + for_example(key.name, key.example));
    };
    need(peel_energy, modulus);
    need(modulus, peel_energy);
    if (!energy || !stiffness) return std::nullopt;
    return std::array{*energy, *stiffness};
}

Material read_material(Context& context, const toml::table& table) {
    TableReader reader(context, table, std::string(title));
    Material material;
    material.name = read_name(context, reader);
    material.grain = reader.flag("grain", false);
    material.break_strain_inside = read_percent(context, reader, strain, Need::required).value_or(0);
    material.break_strain_outside =
        read_percent(context, reader, strain_outside, Need::optional).value_or(outside_strain(material));
    material.softness = reader.number(softness).value_or(1);
    material.peel = read_peel(reader);
    material.scatter = read_percent(context, reader, scatter, Need::optional);
    reader.finish();
    return material;
}

}  // namespace

double outside_strain(const Material& material) {
    return material.break_strain_inside * (material.grain ? split_factor : 1);
}

std::vector<Material> read_materials(Context& context, TableReader& top) {
    std::vector<Material> materials;
    std::map<std::string, Position> names;
    for (const auto* table : top.tables("material")) {
        const std::size_t before = context.mistakes();
        Material material = read_material(context, *table);
        const auto [first, is_new] = names.emplace(material.name.value, material.name.at);
        if (known(material.name) && !is_new)
            context.error(material.name.at, "the material " + in_quotes(material.name.value) + " is given twice",
                          "line " + std::to_string(first->second.line) + " has it already");
        if (context.mistakes() == before) materials.push_back(std::move(material));
    }
    return materials;
}

}  // namespace kerfpacket::job
