// Every sample, taken by every reader without a word.

#include <gtest/gtest.h>

#include <sstream>

#include "support/program.h"
#include "support/promise.h"

namespace kerfpacket::tests {
namespace {

class Clean : public testing::TestWithParam<fs::path> {
protected:
    static std::string pdf() { return built_sample(GetParam()); }
    /// Runs a reader that must end well and have nothing to complain of.
    static std::string silent(const std::vector<std::string>& words) {
        const Outcome outcome = run_program(words);
        EXPECT_EQ(outcome.status, 0) << words.front() << "\n" << outcome.out << outcome.err;
        EXPECT_EQ(outcome.err, "") << words.front();
        return outcome.out;
    }
    const Folder folder_;
};

TEST_P(Clean, Qpdf) {
    const std::string said = silent({"qpdf", "--check", pdf()});
    EXPECT_NE(said.find("No syntax or stream encoding errors found"), std::string::npos) << said;
}

TEST_P(Clean, Poppler) {
    silent({"pdftoppm", "-r", "30", "-gray", pdf(), (folder_ / "page").string()});
    EXPECT_EQ(promise_in(silent({"pdftotext", "-layout", pdf(), "-"})), "");
}

/// -N: the Debian build has no colour management and would say so on any file.
TEST_P(Clean, Mupdf) {
    const std::string said =
        silent({"mutool", "draw", "-q", "-N", "-r", "30", "-o", (folder_ / "page%d.pgm").string(), pdf()});
    EXPECT_EQ(said, "");
}

TEST_P(Clean, Ghostscript) {
    const std::string said =
        silent({"gs", "-q", "-dNOPAUSE", "-dBATCH", "-dSAFER", "-dPDFSTOPONERROR", "-dPDFSTOPONWARNING", "-r72",
                "-sDEVICE=pgmraw", "-sOutputFile=" + (folder_ / "page%d.pgm").string(), pdf()});
    EXPECT_EQ(said, "");
}

TEST_P(Clean, EveryFontIsEmbedded) {
    std::istringstream table(silent({"pdffonts", pdf()}));
    std::string line;
    std::getline(table, line);
    const std::size_t column = line.find("emb");
    ASSERT_NE(column, std::string::npos);
    std::getline(table, line);
    int fonts = 0;
    for (; std::getline(table, line); ++fonts) EXPECT_EQ(line.substr(column, 3), "yes") << line;
    EXPECT_GE(fonts, 2);
}

TEST_P(Clean, ViewersAreToldNotToScale) {
    const std::string said = silent({"qpdf", "--json", "--json-key=qpdf", pdf()});
    EXPECT_NE(said.find("\"/PrintScaling\": \"/None\""), std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(Samples, Clean, testing::ValuesIn(sample_folders()), [](const auto& sample) {
    std::string name = sample.param.filename().string();
    std::replace_if(
        name.begin(), name.end(), [](char c) { return std::isalnum(static_cast<unsigned char>(c)) == 0; }, '_');
    return name;
});

}  // namespace
}  // namespace kerfpacket::tests
