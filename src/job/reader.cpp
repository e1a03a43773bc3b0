#include "job/reader.h"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "job/text.h"

namespace kerfpacket::job {
namespace {

bool is_blank(std::string_view words) { return words.find_first_not_of(" \t\r\n") == std::string_view::npos; }

/// Whether a word of the key's name begins with one of these.
bool speaks_of(std::string_view name, const std::vector<std::string_view>& stems) {
    std::string small;
    for (const char c : name) small += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    for (std::size_t from = 0; from < small.size();) {
        const std::string_view part = std::string_view(small).substr(from, small.find_first_of("_-", from) - from);
        if (std::any_of(stems.begin(), stems.end(), [&](std::string_view stem) { return part.starts_with(stem); }))
            return true;
        from += part.size() + 1;
    }
    return false;
}

/// Keys of a board that splays or climbs which stand where they do not belong, or are told in other words than ours:
/// common words of the trade. Told as unknown, they would be deleted, and the blank be wrong.
std::optional<std::pair<std::string_view, std::string_view>> misplaced(std::string_view name) {
    using Said = std::pair<std::string_view, std::string_view>;
    if (speaks_of(name, {"splay", "flare", "flaring"}))
        return Said{"a splay is not said here",
                    "do not leave the key out and print: the blank would be wrong. What splays is the liner of an "
                    "opening, by a table of its own, [opening.splay], with side or angle, measured and toward"};
    if (speaks_of(name, {"rake", "raking", "slope", "sloping", "climb", "batter", "incline", "helix", "helical",
                         "spiral", "tilt", "twist"}))
        return Said{"kerfpacket does not do this",
                    "do not leave the key out and print: the blank would be wrong. What climbs is a board on a wall, "
                    "by rake and climbs in [[wall]]; walls are upright"};
    return std::nullopt;
}

}  // namespace

std::string for_example(std::string_view key, std::string_view example) {
    return "for example " + std::string(key) + " = " + std::string(example);
}

std::string expected_one_of(std::string_view word, const std::vector<std::string_view>& names) {
    const std::string near = near_miss(word, names);
    const std::string question = near.empty() ? "" : "did you mean \"" + near + "\"? ";
    return question + (names.size() > 1 ? "expected one of " : "expected ") + listed(names, "\"");
}

TableReader::TableReader(Context& context, const toml::table& table, std::string title)
    : context_(context), table_(table), title_(std::move(title)) {}

void TableReader::note(std::string_view key, Need need, std::string_view example, Takes takes) {
    known_.push_back(key);
    if (context_.notes != nullptr)
        context_.notes->push_back(
            {title_, std::string(key), std::move(takes), need == Need::required, std::string(example)});
}

const toml::node* TableReader::find(std::string_view key, Need need, std::string_view example, Takes takes) {
    note(key, need, example, std::move(takes));
    const toml::node* node = table_.get(key);
    if (node == nullptr && need == Need::required)
        missing({key}, std::string(key) + " is missing from " + title_, for_example(key, example));
    if (node != nullptr && context_.pass_over(*node)) return nullptr;
    return node;
}

Position TableReader::at_name(std::string_view key) const {
    // A table knows its keys only in passing.
    const auto found = std::find_if(table_.begin(), table_.end(), [&](const auto& pair) { return pair.first == key; });
    return position(found->first);
}

void TableReader::usual(std::string_view key, Scalar taken) {
    if (has(key)) return;
    const std::size_t from = title_.find_first_not_of('[');
    context_.take_usual({title_.substr(from, title_.find(']') - from), "", std::string(key), {{std::move(taken)}}});
}

void TableReader::missing(std::vector<std::string_view> keys, std::string message, std::string hint) {
    missing_.push_back({std::move(keys), std::move(message), std::move(hint)});
}

void TableReader::refuse(std::string_view key, std::string message, std::string hint) {
    if (find(key, Need::optional, "", {}) != nullptr)
        context_.harmless_error(at_name(key), std::move(message), std::move(hint));
}

std::optional<Sourced<Length>> TableReader::length(const LengthKey& key, Need need) {
    const auto* node = find(key.name, need, key.example, {Takes::Kind::length, key.least.mm()});
    if (node == nullptr) return std::nullopt;
    return context_.length(*node, key);
}

Sourced<Length> TableReader::length_or(const LengthKey& key, Length otherwise) {
    return length(key, Need::optional).value_or(Sourced<Length>{otherwise, {}});
}

std::optional<Sourced<std::string>> TableReader::words(std::string_view key, std::size_t most, std::string_view example,
                                                       Need need) {
    const auto* node = find(key, need, example, {Takes::Kind::text, 1, static_cast<double>(most)});
    if (node == nullptr) return std::nullopt;
    const auto* text = node->as_string();
    const std::string name(key);
    if (text == nullptr) context_.error(position(*node), name + " must be words in quotes", for_example(key, example));
    else if (is_blank(text->get())) context_.error(position(*node), name + " is empty", for_example(key, example));
    else if (printable(text->get()) != text->get())
        context_.error(position(*node), name + " must be one line of printed words", for_example(key, example));
    else if (const std::size_t size = characters(text->get()); size > most)
        context_.error(position(*node), name + " has " + std::to_string(size) + " characters",
                       "the sheets have room for " + std::to_string(most));
    else return Sourced<std::string>{text->get(), position(*node)};
    return std::nullopt;
}

std::optional<Sourced<int>> TableReader::whole(std::string_view key, int most, int least) {
    const auto* node =
        find(key, Need::optional, "2", {Takes::Kind::whole, static_cast<double>(least), static_cast<double>(most)});
    if (node == nullptr) return std::nullopt;
    const auto* number = node->as_integer();
    if (number != nullptr && number->get() >= least && number->get() <= most)
        return Sourced<int>{static_cast<int>(number->get()), position(*node)};
    context_.error(
        position(*node),
        std::string(key) + " must be a whole number from " + std::to_string(least) + " to " + std::to_string(most),
        for_example(key, "2"));
    return std::nullopt;
}

bool TableReader::flag(std::string_view key, bool otherwise) {
    const auto* node = find(key, Need::optional, "true", {Takes::Kind::flag});
    if (node == nullptr) return otherwise;
    if (const auto* said = node->as_boolean()) return said->get();
    context_.error(position(*node), std::string(key) + " must be true or false, without quotes",
                   for_example(key, "true"));
    return otherwise;
}

std::optional<double> TableReader::number(const NumberKey& key, Need need) {
    const auto* node = find(key.name, need, key.example, {Takes::Kind::number, key.least, key.most});
    if (node == nullptr) return std::nullopt;
    const auto value = bare_number(*node);
    if (value && *value >= key.least && *value <= key.most) return value;
    context_.error(position(*node), std::string(key.name) + " must be a number " + std::string(key.range),
                   for_example(key.name, key.example));
    return std::nullopt;
}

std::optional<Sourced<std::size_t>> TableReader::pick(std::string_view key, const std::vector<std::string_view>& names,
                                                      Need need) {
    const auto* node = find(key, need, "\"" + std::string(names.front()) + "\"", {Takes::Kind::word, 0, 0, names});
    if (node == nullptr) return std::nullopt;
    const auto index = index_of(key, *node, names);
    return index ? std::optional(Sourced<std::size_t>{*index, position(*node)}) : std::nullopt;
}

std::optional<std::size_t> TableReader::index_of(std::string_view key, const toml::node& node,
                                                 const std::vector<std::string_view>& names) {
    const auto* word = node.as_string();
    if (word == nullptr) {
        context_.error(position(node), std::string(key) + " must be a word in quotes", expected_one_of("", names));
        return std::nullopt;
    }
    const auto found = std::find(names.begin(), names.end(), word->get());
    if (found != names.end()) return static_cast<std::size_t>(found - names.begin());
    context_.error(position(node), "unknown " + std::string(key) + " " + in_quotes(word->get()),
                   expected_one_of(word->get(), names));
    return std::nullopt;
}

std::optional<std::array<std::size_t, 2>> TableReader::pick_two(std::string_view key,
                                                                const std::vector<std::string_view>& names) {
    const auto* node = find(key, Need::optional, "\"" + std::string(names.front()) + "\"",
                            {Takes::Kind::one_or_two_words, 0, 0, names});
    if (node == nullptr) return std::nullopt;
    const auto* list = node->as_array();
    if (list == nullptr) {
        const auto both = index_of(key, *node, names);
        return both ? std::optional(std::array{*both, *both}) : std::nullopt;
    }
    if (list->size() != 2) {
        context_.error(position(*node), std::string(key) + " must be one word, or two in square brackets: left, right",
                       expected_one_of("", names));
        return std::nullopt;
    }
    const auto left = index_of(key, (*list)[0], names);
    const auto right = index_of(key, (*list)[1], names);
    return left && right ? std::optional(std::array{*left, *right}) : std::nullopt;
}

void TableReader::finish() {
    std::set<std::string, std::less<>> meant;
    for (const auto& [key, node] : table_) {
        const std::string_view name = key.str();
        if (std::find(known_.begin(), known_.end(), name) != known_.end()) continue;
        if (const auto said = misplaced(name)) {
            context_.harmless_error(position(key), in_quotes(name) + ": " + std::string(said->first),
                                    std::string(said->second));
            continue;
        }
        const std::string near = near_miss(name, known_);
        meant.insert(near);
        std::string message = "unknown key " + in_quotes(name) + " in " + title_;
        std::string hint = near.empty() ? "known here: " + listed(known_) : "did you mean \"" + near + "\"?";
        // A slip in the name of a key that is needed leaves its value missing, and is told in place of that.
        const bool needed = std::any_of(missing_.begin(), missing_.end(), [&](const auto& m) {
            return std::find(m.keys.begin(), m.keys.end(), near) != m.keys.end();
        });
        if (needed) context_.error(position(key), std::move(message), std::move(hint));
        else context_.harmless_error(position(key), std::move(message), std::move(hint));
    }
    for (auto& [keys, message, hint] : missing_) {
        const bool slip = std::any_of(keys.begin(), keys.end(), [&](auto key) { return meant.contains(key); });
        if (!slip) context_.error(at(), std::move(message), std::move(hint));
    }
}

}  // namespace kerfpacket::job
