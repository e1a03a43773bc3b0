#include "job/context.h"

#include <algorithm>
#include <cmath>

#include "job/text.h"

namespace kerfpacket::job {
namespace {

constexpr std::string_view how_to_write = R"(lengths look like "4 ft 2-1/2 in", "0.118 in" or "1880 mm")";

/// What may follow a value without quotes on its line.
constexpr std::string_view behind_a_value = " \t,]}#";

Position begin_of(const toml::source_region& region) {
    return {static_cast<int>(region.begin.line), static_cast<int>(region.begin.column)};
}

std::string kind_of(const toml::node& node) {
    if (node.is_string()) return "words";
    if (node.is_boolean()) return "true or false";
    if (node.is_array()) return "a list";
    if (node.is_table()) return "a table";
    if (node.is_number()) return "a number";
    return "a date or time";
}

}  // namespace

Position position(const toml::node& node) { return begin_of(node.source()); }
Position position(const toml::key& key) { return begin_of(key.source()); }

std::optional<double> bare_number(const toml::node& node) {
    // Not value<double>(): that has no answer for whole numbers which a double cannot hold exactly.
    if (const auto* whole = node.as_integer()) return static_cast<double>(whole->get());
    if (const auto* real = node.as_floating_point()) return real->get();
    return std::nullopt;
}

Context::Context(std::string_view text, std::set<int> broken_lines)
    : lines_(split_lines(text)), broken_lines_(std::move(broken_lines)) {}

void Context::error(Position at, std::string message, std::string hint) {
    found_.push_back({Severity::error, at, Told(std::move(message)), Told(std::move(hint))});
}

void Context::harmless_error(Position at, std::string message, std::string hint) {
    error(at, std::move(message), std::move(hint));
    ++harmless_;
}

bool Context::pass_over(const toml::node& value) {
    const bool broken = broken_lines_.contains(position(value).line);
    if (broken) ++passed_over_;
    return broken;
}

std::string Context::shown(Length value) const { return measure::length_text(value, unit.value_or(Unit::inch)); }

std::string Context::as_written(const Sourced<Length>& value) const {
    const auto index = static_cast<std::size_t>(value.at.line - 1);
    if (!known(value) || index >= lines_.size()) return shown(value.value);
    auto raw = lines_[index];
    raw.remove_prefix(byte_of_character(raw, static_cast<std::size_t>(value.at.column - 1)));
    if (raw.empty() || raw.starts_with(R"(""")") || raw.starts_with("'''")) return shown(value.value);
    const bool quoted = raw[0] == '"' || raw[0] == '\'';
    if (!quoted) return printable(raw.substr(0, raw.find_first_of(behind_a_value)));
    const std::size_t end = raw.find(raw[0], 1);
    return end == std::string_view::npos ? shown(value.value) : in_quotes(raw.substr(1, end - 1));
}

std::string_view Context::figures(const toml::node& node) const {
    const Position at = position(node);
    const auto index = static_cast<std::size_t>(at.line - 1);
    if (at.line < 1 || index >= lines_.size()) return {};
    auto raw = lines_[index];
    raw.remove_prefix(byte_of_character(raw, static_cast<std::size_t>(at.column - 1)));
    raw = raw.substr(0, raw.find_first_of(behind_a_value));
    if (raw.starts_with('+')) raw.remove_prefix(1);
    return raw.find_first_not_of("-.0123456789") == std::string_view::npos ? raw : std::string_view{};
}

/// Where in the file the words of a string go wrong. Only a string of one line without escapes before that point can
/// be followed; otherwise the value's beginning has to do.
Position Context::within(const toml::node& node, std::string_view words, std::size_t offset) const {
    Position at = position(node);
    const auto index = static_cast<std::size_t>(at.line - 1);
    if (index >= lines_.size()) return at;
    const auto raw = lines_[index].substr(byte_of_character(lines_[index], static_cast<std::size_t>(at.column - 1)));
    const bool multi_line = raw.starts_with(R"(""")") || raw.starts_with("'''");
    const auto before = words.substr(0, offset);
    if (!multi_line && raw.size() > offset && raw.substr(1, offset) == before)
        at.column += 1 + static_cast<int>(characters(before));
    return at;
}

std::optional<Length> Context::length_in(const toml::node& node, const LengthKey& key) {
    const std::string name(key.name);
    const auto doubted = [&](const measure::LengthError& doubt, Position at) -> std::optional<Length> {
        error(at, name + ": " + doubt.message, doubt.hint.empty() ? std::string(how_to_write) : doubt.hint);
        return std::nullopt;
    };
    if (const auto* words = node.as_string()) {
        const auto read = measure::parse_length(words->get(), unit.value_or(Unit::inch));
        if (read) return *read;
        return doubted(read.error(), within(node, words->get(), read.error().offset));
    }
    const auto number = bare_number(node);
    if (!number) {
        error(position(node), name + " must be a length, not " + kind_of(node), std::string(how_to_write));
        return std::nullopt;
    }
    if (!std::isfinite(*number)) {
        error(position(node), name + (std::isnan(*number) ? " is not a number" : " has no end"),
              std::string(how_to_write));
        return std::nullopt;
    }
    // Without the file's unit a bare number means nothing yet; that mistake is told elsewhere.
    if (!unit) {
        if (!without_unit_) without_unit_ = position(node);
        return std::nullopt;
    }
    // What is a question in quotes is one without them; more digits than anybody types are a machine's.
    constexpr std::size_t most_typed = 15;
    const std::string_view typed = figures(node);
    if (!typed.empty() && typed.size() <= most_typed)
        if (const auto read = measure::parse_length(typed, *unit); !read) return doubted(read.error(), position(node));
    return *unit == Unit::inch ? Length::inches(*number) : Length::mm(*number);
}

/// Of a bare number whose unit is not known: what is wrong with it whichever it is. It is no length yet.
void Context::judge_without_unit(const toml::node& node, const LengthKey& key) {
    const auto number = bare_number(node);
    if (unit || !number || !std::isfinite(*number)) return;
    const std::string name(key.name), text = measure::fixed(*number, 0);
    const Position at = position(node);
    const std::string more =
        "expected " + std::string(key.zero ? "0 or more" : "more than 0") + ", for example " + std::string(key.example);
    if (*number < 0 && key.least >= Length()) error(at, name + " is negative: " + text, more);
    else if (*number == 0 && !key.zero) error(at, name + " is 0", more);
    else if (Length::mm(std::abs(*number)) > std::min(key.most, longest))
        error(at, name + " is too large in any unit: " + text,
              "expected at most " + measure::length_text(key.most, Unit::inch));
    else if (Length::inches(*number) < key.least && *number != 0)
        error(at, name + " is too small in any unit",
              "expected at least " + measure::length_text(key.least, Unit::inch));
}

std::optional<Sourced<Length>> Context::length(const toml::node& node, const LengthKey& key) {
    if (pass_over(node)) return std::nullopt;
    const auto value = length_in(node, key);
    if (!value) {
        judge_without_unit(node, key);
        return std::nullopt;
    }
    const Position at = position(node);
    const std::string name(key.name);
    const std::string more =
        "expected " + std::string(key.zero ? "0 or more" : "more than 0") + ", for example " + std::string(key.example);
    if (abs(*value) > longest) {
        error(at, name + " is longer than any board or wall this program takes",
              "expected at most 1000 ft, which is 304.8 m");
    } else if (*value < Length() && key.least >= Length()) {
        error(at, name + " is negative: " + shown(*value), more);
    } else if (*value == Length() && !key.zero) {
        error(at, name + " is 0", more);
    } else if (*value < key.least && *value != Length()) {
        error(at, name + " is too small: " + shown(*value), "expected at least " + shown(key.least));
    } else if (*value > key.most) {
        error(at, name + " is too large: " + shown(*value), "expected at most " + shown(key.most));
    } else {
        return Sourced<Length>{*value, at};
    }
    return std::nullopt;
}

Diagnostics all_told(Diagnostics parsed, const Context& context) {
    parsed.insert(parsed.end(), context.found().begin(), context.found().end());
    std::stable_sort(parsed.begin(), parsed.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    return parsed;
}

}  // namespace kerfpacket::job
