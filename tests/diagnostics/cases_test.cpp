// Every file of cases/ holds the messages it must give.
#include <algorithm>
#include <filesystem>
#include <string>

#include <gtest/gtest.h>

#include "case_file.h"

namespace fs = std::filesystem;
using namespace kerfpacket;
using namespace kerfpacket::tests;

namespace {

class BadJob : public testing::TestWithParam<fs::path> {
protected:
    static job::Source source() { return source_of(GetParam()); }
};

TEST_P(BadJob, GivesExactlyTheMessagesWrittenInIt) {
    const job::Source file = source();
    const auto expected = expected_in(file.text);
    ASSERT_FALSE(expected.empty()) << "the file says no message; every case must";
    EXPECT_EQ(told(job::read_job(file).diagnostics), expected);
}

TEST_P(BadJob, GivesTheSameMessagesWithoutTheComments) {
    const job::Source file = source();
    EXPECT_EQ(told(job::read_job({"bare.toml", without_messages(file.text)}).diagnostics), expected_in(file.text));
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

INSTANTIATE_TEST_SUITE_P(Cases, BadJob, testing::ValuesIn(case_files("cases")),
                         [](const auto& file) { return file.param.stem().string(); });

TEST(BadJobs, AreAtLeastTwoHundred) { EXPECT_GE(case_files("cases").size(), 200U); }

}  // namespace
