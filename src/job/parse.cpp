#include "job/parse.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <vector>

#include "job/context.h"
#include "job/text.h"
#include "measure/doubt.h"

namespace kerfpacket::job {
namespace {

constexpr int most_repairs = 50;

/// How to write what stands behind the = of a line.
std::string hint_for(std::string_view line, const text::Mistake& mistake) {
    const std::size_t equals = line.find('=');
    if (equals == std::string_view::npos) return "expected lines like [saw] and lines like kerf = \"0.118 in\"";
    if (mistake.description.find("no such day") != std::string::npos) return "expected a day of the calendar";
    if (mistake.description.find("true nor false") != std::string::npos) return "write true or false, without quotes";
    const std::string_view key = line.substr(0, line.find_last_not_of(" \t", equals == 0 ? 0 : equals - 1) + 1);
    if (key.ends_with("date")) return "a date is year-month-day, for example 2026-04-02";
    const auto value = line.substr(std::min(line.find_first_not_of(" \t", equals + 1), line.size()));
    if (value.find('\\') != std::string_view::npos)
        return R"(write / in the name of a folder, or \\ for one backslash)";
    // "6' 2"" closes its quotes with the mark of the inches.
    if (value.starts_with('"') && std::count(value.begin(), value.end(), '"') == 3)
        return R"(inside quotes inches are written in: "6 ft 2 in")";
    const bool bare = !value.empty() && (std::isdigit(static_cast<unsigned char>(value[0])) != 0 || value[0] == '.');
    if (bare && value.find('%') != std::string_view::npos)
        return R"(a strain stands in quotes with its percent sign, for example "0.62 %")";
    if (bare) return R"(a length with its unit stands in quotes, for example "4 ft 2-1/2 in")";
    return R"(words and lengths stand in straight quotes on one line: "...")";
}

Diagnostic diagnostic_of(const text::Mistake& mistake, std::string_view line) {
    return {Severity::error,
            {mistake.line, mistake.column},
            Told(mistake.description),
            Told(mistake.unreasonable ? "a job file has short lines and few brackets"
                 : mistake.repeated
                     ? "each key and table may stand once; only [[opening]], [[wall]], [[material]], [[trial]] and "
                       "coupons in double brackets may be repeated"
                     : hint_for(line, mistake))};
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
bool goes_on_from_above(const text::Mistake& mistake, std::string_view line) {
    return mistake.bracketed && line.find_first_of("[{") == std::string_view::npos;
}

/// Notes a mistake and gives the text in which it no longer stands in the way, or none when the rest cannot be read.
std::string repair(std::string_view text, const text::Mistake& error, Parsed& parsed) {
    const auto lines = split_lines(text);
    const auto number = error.line;
    const auto index = static_cast<std::size_t>(number - 1);
    const std::string_view line = index < lines.size() ? lines[index] : std::string_view();
    const bool again = parsed.broken_lines.contains(number);
    std::string fixed = repaired(text, line, again || error.repeated);
    if (goes_on_from_above(error, line)) fixed.clear();
    // What follows a repaired line and is no line of its own belongs to the mistake already told.
    const bool told = again || (fixed.empty() && parsed.broken_lines.contains(number - 1));
    if (!told) parsed.diagnostics.push_back(diagnostic_of(error, line));
    parsed.broken_lines.insert(number);
    return fixed;
}

/// Numbers as a programmer writes them, 0x10, 1_000 or 1e3: on a site they are slips of the keyboard.
void judge_figures(const toml::node& node, const std::vector<std::string_view>& lines, Parsed& parsed) {
    if (const auto* table = node.as_table())
        for (const auto& [key, inner] : *table) judge_figures(inner, lines, parsed);
    if (const auto* list = node.as_array())
        for (const auto& inner : *list) judge_figures(inner, lines, parsed);
    const auto number = node.is_number() ? bare_number(node) : std::nullopt;
    const Position at = position(node);
    const auto index = static_cast<std::size_t>(at.line - 1);
    if (!number || at.line < 1 || index >= lines.size() || parsed.broken_lines.contains(at.line)) return;
    auto figures = lines[index];
    figures.remove_prefix(byte_of_character(figures, static_cast<std::size_t>(at.column - 1)));
    figures = figures.substr(0, figures.find_first_of(" \t,]}#"));
    if (figures.find_first_of("xobeE_") == std::string_view::npos) return;
    // Only what comes to a few decimals is written out: advice must not round.
    const bool usual = std::abs(*number) < 1e9 && std::abs(*number * 1e4 - std::round(*number * 1e4)) < 1e-6;
    parsed.diagnostics.push_back({Severity::error, at,
                                  Told(std::string(figures.substr(0, 40)) + ": a number is written in plain figures"),
                                  Told(usual ? "write " + measure::figure_text(*number, true) + ", if that is meant"
                                             : "for example 1250 or 0.118")});
    parsed.broken_lines.insert(at.line);
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
            judge_figures(parsed.root, split_lines(text), parsed);
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
