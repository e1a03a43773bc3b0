#include "job/parse.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "job/text.h"

namespace kerfpacket::job {
namespace {

constexpr int most_repairs = 50;

/// What toml++ says, and how a carpenter would be told. The first that fits counts.
struct Wording {
    std::string_view heard;
    std::string_view said;
};
constexpr std::array<Wording, 8> wordings{{
    {"expected a comment or whitespace", "this does not belong to the value before it"},
    {"control characters other than TAB", "the quotes are not closed, or a control character stands here"},
    {"expected '='", "a key stands alone: expected key = value"},
    {"table header: expected ']'", "the table's name is not closed"},
    {"expected comma or closing ']'", "this does not belong in the list: expected a comma or ]"},
    {"could not determine value type", "this is neither a number nor words in quotes"},
    {"parsing date: expected day", "the month has no such day"},
    {"encountered end-of-file", "the file ends too early: a quote or a bracket is not closed"},
}};

std::string plain_words(std::string_view description) {
    for (const auto& [heard, said] : wordings)
        if (description.find(heard) != std::string_view::npos) return std::string(said);
    constexpr std::array<std::string_view, 6> values{"integer", "floating-point", "date", "time", "boolean", "value"};
    for (const auto value : values)
        if (description.starts_with("Error while parsing " + std::string(value)) ||
            description.starts_with("Error while parsing decimal " + std::string(value)))
            return "this is neither a number nor words in quotes";
    return "this is not TOML: " + printable(description.substr(0, 160));
}

bool is_repeated(std::string_view description) { return description.find("redefine") != std::string_view::npos; }

std::string hint_for(std::string_view line, std::string_view description) {
    const std::size_t equals = line.find('=');
    if (equals == std::string_view::npos) return "expected lines like [saw] and lines like kerf = \"0.118 in\"";
    if (description.find("expected day") != std::string_view::npos) return "expected a day of the calendar";
    const std::string_view key = line.substr(0, line.find_last_not_of(" \t", equals == 0 ? 0 : equals - 1) + 1);
    if (key.ends_with("date")) return "a date is year-month-day, for example 2026-04-02";
    const auto value = line.substr(std::min(line.find_first_not_of(" \t", equals + 1), line.size()));
    const bool bare = !value.empty() && (std::isdigit(static_cast<unsigned char>(value[0])) != 0 || value[0] == '.');
    if (bare && value.find('%') != std::string_view::npos)
        return R"(a strain stands in quotes with its percent sign, for example "0.62 %")";
    if (bare) return R"(a length with its unit stands in quotes, for example "4 ft 2-1/2 in")";
    return R"(words and lengths stand in straight quotes on one line: "...")";
}

Diagnostic diagnostic_of(const text::Mistake& error, std::string_view line) {
    const std::string_view description = error.description;
    Diagnostic found{Severity::error, {error.line, error.column}, "", ""};
    if (error.unreasonable) {
        found.message = description;
        found.hint = "a job file has short lines and few brackets";
    } else if (is_repeated(description)) {
        const std::size_t quote = description.find('\'');
        const std::size_t end = description.find('\'', quote + 1);
        const bool named = quote != std::string_view::npos && end != std::string_view::npos;
        const std::string name = named ? in_quotes(description.substr(quote + 1, end - quote - 1)) : "this name";
        found.message = name + " is given twice";
        found.hint =
            "each key and table may stand once; only [[opening]], [[wall]], [[material]], [[trial]] and coupons in "
            "double brackets may be repeated";
    } else {
        found.message = plain_words(description);
        found.hint = hint_for(line, description);
    }
    return found;
}

bool is_plain_key(std::string_view key) {
    constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-.";
    return !key.empty() && key.find_first_not_of(letters) == std::string_view::npos;
}

/// The text with one `key = value` line repaired, line numbers kept: its value becomes a placeholder, or the whole
/// line goes when the key is one too many or the placeholder did not help. Empty when the line is something else.
std::string repaired(std::string_view text, std::string_view line, bool drop) {
    const std::size_t first = line.find_first_not_of(" \t");
    const std::size_t equals = line.find('=');
    if (first == std::string_view::npos || equals == std::string_view::npos) return {};
    if (equals <= first) return {};
    const auto key = line.substr(first, line.find_last_not_of(" \t", equals - 1) + 1 - first);
    if (!is_plain_key(key)) return {};
    const auto start = static_cast<std::size_t>(line.data() - text.data());
    std::string fixed(text.substr(0, start));
    if (!drop) fixed.append(line.substr(0, equals)).append("= 0");
    return fixed.append(text.substr(start + line.size()));
}

/// True for a mistake within brackets that were opened on an earlier line.
bool goes_on_from_above(std::string_view description, std::string_view line) {
    const bool bracketed = description.find("array") != std::string_view::npos ||
                           description.find("inline table") != std::string_view::npos;
    return bracketed && line.find_first_of("[{") == std::string_view::npos;
}

/// Notes a mistake and gives the text in which it no longer stands in the way, or none when the rest cannot be read.
std::string repair(std::string_view text, const text::Mistake& error, Parsed& parsed) {
    const auto lines = split_lines(text);
    const auto number = error.line;
    const auto index = static_cast<std::size_t>(number - 1);
    const std::string_view line = index < lines.size() ? lines[index] : std::string_view();
    const bool again = parsed.broken_lines.contains(number);
    std::string fixed = repaired(text, line, again || is_repeated(error.description));
    if (goes_on_from_above(error.description, line)) fixed.clear();
    // What follows a repaired line and is no line of its own belongs to the mistake already told.
    const bool told = again || (fixed.empty() && parsed.broken_lines.contains(number - 1));
    if (!told) parsed.diagnostics.push_back(diagnostic_of(error, line));
    parsed.broken_lines.insert(number);
    return fixed;
}

}  // namespace

Parsed parse(std::string_view text) {
    Parsed parsed;
    std::string current(text);
    for (int repairs = 0; repairs <= most_repairs; ++repairs) {
        auto root = text::parse(current);
        if (root) {
            parsed.root = *std::move(root);
            parsed.usable = true;
            return parsed;
        }
        if (root.error().unreasonable) {
            parsed.diagnostics.push_back(diagnostic_of(root.error(), {}));
            return parsed;
        }
        current = repair(current, root.error(), parsed);
        if (current.empty()) return parsed;
    }
    return parsed;
}

}  // namespace kerfpacket::job
