#pragma once
// Files that hold the messages they must give, in order, as trailing comments:
//   #! line:column: error: message
//   #!     hint

#include <algorithm>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "job/read.h"

namespace kerfpacket::tests {

inline std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

inline constexpr std::string_view message_mark = "#! ";

inline std::vector<std::string> expected_in(const std::string& text) {
    std::vector<std::string> expected;
    for (const auto& line : lines_of(text))
        if (line.starts_with(message_mark)) expected.push_back(line.substr(message_mark.size()));
    return expected;
}

inline std::string without_messages(const std::string& text) {
    std::string bare;
    for (const auto& line : lines_of(text))
        if (!line.starts_with(message_mark)) bare += line + "\n";
    return bare;
}

inline std::vector<std::string> told(const job::Diagnostics& diagnostics) {
    std::vector<std::string> lines;
    for (const auto& d : diagnostics) {
        lines.push_back(std::to_string(d.at.line) + ":" + std::to_string(d.at.column) + ": " +
                        (d.severity == job::Severity::error ? "error: " : "caution: ") + d.message);
        if (!d.hint.empty()) lines.push_back("    " + d.hint);
    }
    return lines;
}

/// The files of a folder below tests/diagnostics, by name.
inline std::vector<std::filesystem::path> case_files(const std::string& folder) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(KERFPACKET_SOURCE_DIR) /
                                                                 "tests/diagnostics" / folder))
        if (entry.path().extension() == ".toml") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    return files;
}

inline job::Source source_of(const std::filesystem::path& file) {
    const auto loaded = job::load(file);
    if (!loaded) ADD_FAILURE() << loaded.error().message;
    return loaded.value_or(job::Source{});
}

}  // namespace kerfpacket::tests
