// Every file of cases/ holds the messages it must give, in order, as trailing comments:
//   #! line:column: error: message
//   #!     hint
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "job/read.h"

namespace fs = std::filesystem;
using namespace kerfpacket;

namespace {

constexpr std::string_view mark = "#! ";

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

std::vector<std::string> expected_in(const std::string& text) {
    std::vector<std::string> expected;
    for (const auto& line : lines_of(text))
        if (line.starts_with(mark)) expected.push_back(line.substr(mark.size()));
    return expected;
}

std::vector<std::string> told(const job::Diagnostics& diagnostics) {
    std::vector<std::string> lines;
    for (const auto& d : diagnostics) {
        lines.push_back(std::to_string(d.at.line) + ":" + std::to_string(d.at.column) + ": " +
                        (d.severity == job::Severity::error ? "error: " : "caution: ") + d.message);
        if (!d.hint.empty()) lines.push_back("    " + d.hint);
    }
    return lines;
}

std::vector<fs::path> case_files() {
    std::vector<fs::path> files;
    for (const auto& entry : fs::directory_iterator(fs::path(KERFPACKET_SOURCE_DIR) / "tests/diagnostics/cases"))
        if (entry.path().extension() == ".toml") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    return files;
}

class BadJob : public testing::TestWithParam<fs::path> {
protected:
    static job::Source source() {
        const auto loaded = job::load(GetParam());
        if (!loaded) ADD_FAILURE() << loaded.error().message;
        return loaded.value_or(job::Source{});
    }
};

TEST_P(BadJob, GivesExactlyTheMessagesWrittenInIt) {
    const job::Source file = source();
    const auto expected = expected_in(file.text);
    ASSERT_FALSE(expected.empty()) << "the file says no message; every case must";
    EXPECT_EQ(told(job::read_job(file).diagnostics), expected);
}

TEST_P(BadJob, GivesTheSameMessagesWithoutTheComments) {
    const job::Source file = source();
    std::string bare;
    for (const auto& line : lines_of(file.text))
        if (!line.starts_with(mark)) bare += line + "\n";
    EXPECT_EQ(told(job::read_job({"bare.toml", bare}).diagnostics), expected_in(file.text));
}

TEST_P(BadJob, ShowsTheLineAndACaretUnderTheColumn) {
    const job::Source file = source();
    const auto lines = lines_of(file.text);
    for (const auto& d : job::read_job(file).diagnostics) {
        ASSERT_GE(d.at.line, 1);
        ASSERT_LE(static_cast<std::size_t>(d.at.line), lines.size());
        const auto shown = lines_of(job::render({d}, {"shop/porch.toml", file.text}));
        ASSERT_GE(shown.size(), 3U);
        EXPECT_EQ(shown[0], "shop/porch.toml:" + std::to_string(d.at.line) + ":" + std::to_string(d.at.column) +
                                ": error: " + d.message);
        const std::string& line = lines[static_cast<std::size_t>(d.at.line) - 1];
        if (line.size() <= 110) { EXPECT_EQ(shown[1], "    " + line); }
        ASSERT_FALSE(shown[2].empty());
        EXPECT_EQ(shown[2].back(), '^');
        EXPECT_EQ(shown[2].size(), 4U + static_cast<std::size_t>(d.at.column));
        EXPECT_EQ(shown[2].find_first_not_of(" \t"), shown[2].size() - 1);
    }
}

TEST_P(BadJob, IsNeverFitToPrint) {
    const auto reading = job::read_job(source());
    const bool has_error = std::any_of(reading.diagnostics.begin(), reading.diagnostics.end(),
                                       [](const auto& d) { return d.severity == job::Severity::error; });
    EXPECT_TRUE(has_error);
}

INSTANTIATE_TEST_SUITE_P(Cases, BadJob, testing::ValuesIn(case_files()),
                         [](const auto& file) { return file.param.stem().string(); });

TEST(BadJobs, AreAtLeastTwoHundred) { EXPECT_GE(case_files().size(), 200U); }

}  // namespace
