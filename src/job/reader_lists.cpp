// Lists of lengths, as a table's keys take them.
#include "job/reader.h"

namespace kerfpacket::job {
namespace {

LengthKey renamed(LengthKey key, std::string_view name) {
    key.name = name;
    return key;
}

}  // namespace

/// Empty when not all could be read.
std::vector<Sourced<Length>> TableReader::elements(const toml::array& list, const LengthKey& key) {
    const std::string label = "a length in " + std::string(key.name);
    std::vector<Sourced<Length>> values;
    for (const auto& element : list) {
        if (auto value = context_.length(element, renamed(key, label))) values.push_back(*value);
    }
    if (values.size() != list.size()) values.clear();
    return values;
}

std::vector<Sourced<Length>> TableReader::lengths(const LengthKey& key, std::size_t count) {
    const auto* node =
        find(key.name, Need::optional, key.example,
             {Takes::Kind::lengths, count == 0 ? 1 : static_cast<double>(count), static_cast<double>(count)});
    if (node == nullptr) return {};
    const auto* list = node->as_array();
    const bool fits = list != nullptr && (count == 0 ? !list->empty() : list->size() == count);
    if (fits) return elements(*list, key);
    const std::string number = count == 0 ? "one or more lengths" : std::to_string(count) + " lengths";
    context_.error(position(*node), std::string(key.name) + " must be " + number + " in square brackets",
                   for_example(key.name, key.example));
    return {};
}

std::optional<std::array<Sourced<Length>, 2>> TableReader::one_or_two(const LengthKey& key) {
    const auto* node = find(key.name, Need::optional, key.example, {Takes::Kind::one_or_two, key.least.mm()});
    if (node == nullptr) return std::nullopt;
    const auto* list = node->as_array();
    if (list == nullptr) {
        const auto both = context_.length(*node, key);
        return both ? std::optional(std::array{*both, *both}) : std::nullopt;
    }
    if (list->size() == 2) {
        const auto values = elements(*list, key);
        return values.empty() ? std::nullopt : std::optional(std::array{values[0], values[1]});
    }
    context_.error(position(*node), std::string(key.name) + " must be one length, or two in square brackets",
                   "expected the left one and the right one, " + for_example(key.name, R"(["81 in", "80-1/2 in"])"));
    return std::nullopt;
}

std::optional<LengthPairs> TableReader::pairs(const PairsKey& key) {
    const auto* node =
        find(key.name, Need::optional, key.example, {Takes::Kind::pairs, 0, static_cast<double>(key.most)});
    if (node == nullptr) return std::nullopt;
    const std::string name(key.name);
    const auto* list = node->as_array();
    if (list == nullptr) {
        context_.error(position(*node), name + " must be a list of pairs", for_example(key.name, key.example));
        return std::nullopt;
    }
    if (list->size() > key.most) {
        context_.error(position(*node), name + " has " + std::to_string(list->size()) + " pairs",
                       "expected at most " + std::to_string(key.most));
        return std::nullopt;
    }
    LengthPairs read;
    for (const auto& element : *list) {
        const auto* two = element.as_array();
        const bool fits = two != nullptr && two->size() == 2;
        if (!fits && !context_.pass_over(element))
            context_.error(position(element), name + " takes " + std::string(key.takes),
                           for_example(key.name, key.example));
        const auto value = [&](std::size_t i, const LengthKey& part) {
            return fits ? context_.length((*two)[i], part).value_or(Sourced<Length>{}) : Sourced<Length>{};
        };
        const auto first = value(0, key.first);
        read.emplace_back(first, value(1, key.second));
    }
    return read;
}

}  // namespace kerfpacket::job
