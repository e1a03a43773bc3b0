// Kerfs that the user gives one by one: where they stand, and which of them were cut too deep.
#include <map>

#include "job/tables.h"
#include "job/text.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

constexpr std::size_t most_kerfs = 5000;
constexpr std::string_view example = R"([[57, "7/16 in"]])";

const LengthKey kerfs{"kerfs", finest, longest, R"(["3-1/2 in", "4 in", "4-1/2 in"])"};
const LengthKey depth{"a depth in too_deep", finest, 3_in, R"("7/16 in")"};

std::optional<Sourced<int>> kerf_number(Context& context, const toml::node& node) {
    const auto* number = node.as_integer();
    if (number != nullptr && number->get() >= 1 && number->get() <= static_cast<int>(most_kerfs))
        return Sourced<int>{static_cast<int>(number->get()), position(node)};
    context.error(position(node), "a kerf in too_deep must be a whole number from 1 to " + std::to_string(most_kerfs),
                  for_example("too_deep", example));
    return std::nullopt;
}

std::optional<TooDeep> one_too_deep(Context& context, const toml::node& node) {
    if (context.pass_over(node)) return std::nullopt;
    const auto* two = node.as_array();
    if (two == nullptr || two->size() != 2) {
        context.error(position(node), "too_deep takes pairs: the kerf's number and the depth that was cut",
                      for_example("too_deep", example));
        return std::nullopt;
    }
    const auto n = kerf_number(context, (*two)[0]);
    const auto cut = context.length((*two)[1], depth);
    return n && cut ? std::optional(TooDeep{*n, *cut}) : std::nullopt;
}

}  // namespace

std::vector<Sourced<Length>> read_kerfs(Context& context, TableReader& reader) {
    auto places = reader.lengths(kerfs, 0);
    if (reader.has(kerfs.name) && reader.has("spacing"))
        context.error(reader.at("kerfs"), "where the kerfs stand is given in two ways",
                      "expected kerfs or spacing, not both");
    if (places.size() == 1)
        context.error(reader.at("kerfs"), "kerfs has only one kerf", "a bend takes several: expected two or more");
    if (places.size() > most_kerfs)
        context.error(reader.at("kerfs"), "kerfs has " + std::to_string(places.size()) + " lengths",
                      "expected at most " + std::to_string(most_kerfs));
    return places;
}

std::vector<TooDeep> read_too_deep(Context& context, TableReader& reader) {
    const auto* node = reader.find("too_deep", Need::optional, example, {Takes::Kind::numbered, 1, most_kerfs});
    if (node == nullptr) return {};
    const auto* list = node->as_array();
    if (list == nullptr) {
        context.error(position(*node), "too_deep must be a list of pairs", for_example("too_deep", example));
        return {};
    }
    std::vector<TooDeep> read;
    std::map<int, Position> numbers;
    for (const auto& element : *list) {
        const auto one = one_too_deep(context, element);
        if (!one) continue;
        const auto [first, is_new] = numbers.emplace(one->n.value, one->n.at);
        if (is_new) read.push_back(*one);
        else
            context.error(one->n.at, "kerf " + std::to_string(one->n.value) + " is given twice in too_deep",
                          "line " + std::to_string(first->second.line) + " has it already");
    }
    return read;
}

}  // namespace kerfpacket::job
