#include "job/diagnostics.h"

#include <algorithm>

#include "job/text.h"

namespace kerfpacket::job {
namespace {

constexpr std::string_view indent = "    ";
/// More than that nobody mends before the next run.
constexpr std::size_t most_told = 100;

/// The line with a caret under the column. A long line is shown from near the column on; a tab stays a tab in both
/// rows, so that they line up whatever the terminal's tab stops are.
std::string shown_line(std::string_view line, int column) {
    constexpr std::size_t before = 60;
    constexpr std::size_t most = 110;
    const auto caret = static_cast<std::size_t>(std::max(column, 1) - 1);
    const std::size_t first = caret > most - 20 ? caret - before : 0;
    const std::size_t start = byte_of_character(line, first);
    std::string_view window = line.substr(start);
    const std::size_t length = byte_of_character(window, most);
    const std::string_view tail = length < window.size() ? "..." : "";
    window = window.substr(0, length);

    const std::string_view lead = first > 0 ? "..." : "";
    const std::string text = printable(window, Tabs::keep);
    std::string under(lead.size(), ' ');
    for (std::size_t i = 0; i < caret - first; ++i) {
        const std::size_t at = byte_of_character(window, i);
        under += at < window.size() && window[at] == '\t' ? '\t' : ' ';
    }
    std::string out;
    out.append(indent).append(lead).append(text).append(tail).append("\n");
    return out.append(indent).append(under).append("^\n");
}

const char* word(Severity severity) {
    switch (severity) {
        case Severity::error: return " error: ";
        case Severity::refused: return " do not cut: ";
        case Severity::caution: break;
    }
    return " caution: ";
}

std::string header(const Diagnostic& diagnostic, const std::string& name) {
    std::string text = name + ":";
    if (diagnostic.at.line > 0)
        text += std::to_string(diagnostic.at.line) + ":" + std::to_string(diagnostic.at.column) + ":";
    return text + word(diagnostic.severity) + diagnostic.message + "\n";
}

}  // namespace

std::string render(const Diagnostics& diagnostics, const Source& source) {
    Diagnostics sorted = diagnostics;
    std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    const auto same = [](const Diagnostic& a, const Diagnostic& b) {
        return a.at == b.at && a.severity == b.severity && a.message == b.message;
    };
    sorted.erase(std::unique(sorted.begin(), sorted.end(), same), sorted.end());
    const std::size_t more = sorted.size() > most_told ? sorted.size() - most_told : 0;
    sorted.resize(sorted.size() - more);
    const auto lines = split_lines(source.text);
    std::string text;
    for (const auto& diagnostic : sorted) {
        text += header(diagnostic, source.name);
        const auto line = static_cast<std::size_t>(std::max(diagnostic.at.line, 0));
        if (line > 0 && line <= lines.size()) text += shown_line(lines[line - 1], diagnostic.at.column);
        if (!diagnostic.hint.empty()) text.append(indent).append(diagnostic.hint).append("\n");
    }
    if (more > 0) text += source.name + ": and " + std::to_string(more) + " more\n";
    return text;
}

}  // namespace kerfpacket::job
