// Files that cannot carry a comment: missing, a folder, empty, binary, wrongly encoded, too large.
#include <filesystem>
#include <fstream>
#include <string>

#include <gtest/gtest.h>

#include "job/read.h"

namespace fs = std::filesystem;
using namespace kerfpacket;

namespace {

class BadFile : public testing::Test {
protected:
    void SetUp() override {
        const std::string name = testing::UnitTest::GetInstance()->current_test_info()->name();
        folder_ = fs::path(testing::TempDir()) / ("kerfpacket_bad_file_" + name);
        fs::remove_all(folder_);
        fs::create_directories(folder_);
    }
    void TearDown() override { fs::remove_all(folder_); }

    fs::path file_with(std::string_view bytes) const {
        fs::path file = folder_ / "job.toml";
        std::ofstream(file, std::ios::binary).write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
        return file;
    }

    /// The refusal of a file, which must not load.
    static job::Diagnostic refusal(const fs::path& file) {
        const auto loaded = job::load(file);
        if (loaded) ADD_FAILURE() << "this file must be refused";
        return loaded ? job::Diagnostic{} : loaded.error();
    }

    const fs::path& folder() const { return folder_; }

private:
    fs::path folder_;
};

using namespace std::string_view_literals;

TEST_F(BadFile, Missing) {
    const auto d = refusal(folder() / "nowhere.toml");
    EXPECT_EQ(d.message, "there is no such file");
    EXPECT_EQ(d.at.line, 0);
    EXPECT_EQ(job::render({d}, {"nowhere.toml", ""}),
              "nowhere.toml: error: there is no such file\n"
              "    expected a job file\n");
}

TEST_F(BadFile, MissingBehindAFile) {
    const fs::path file = file_with("x");
    EXPECT_EQ(refusal(file / "inside.toml").at.line, 0);
}

TEST_F(BadFile, Folder) { EXPECT_EQ(refusal(folder()).message, "this is a folder"); }

TEST_F(BadFile, Device) { EXPECT_EQ(refusal("/dev/zero").message, "this is a device or a pipe"); }

TEST_F(BadFile, Empty) { EXPECT_EQ(refusal(file_with("")).message, "the file is empty"); }

TEST_F(BadFile, OnlyBlanks) { EXPECT_EQ(refusal(file_with("\n\r\n  \t\n")).message, "the file is empty"); }

TEST_F(BadFile, OnlyAByteOrderMark) { EXPECT_EQ(refusal(file_with("\xEF\xBB\xBF")).message, "the file is empty"); }

TEST_F(BadFile, Binary) {
    EXPECT_EQ(refusal(file_with("\x7F"
                                "ELF\2\1\1\0\0\0"sv))
                  .message,
              "the file is not text: it holds a zero byte");
}

TEST_F(BadFile, Utf16EitherWay) {
    EXPECT_EQ(refusal(file_with("\xFF\xFE[\0j\0"sv)).message, "the file is UTF-16 text");
    EXPECT_EQ(refusal(file_with("\xFE\xFF\0[\0j"sv)).message, "the file is UTF-16 text");
}

TEST_F(BadFile, Latin1SaysWhere) {
    const auto d = refusal(file_with("[job]\ntitle = \"\xC3\xA9t\xE9\"\n"));
    EXPECT_EQ(d.message, "the file is not UTF-8 text from here on");
    EXPECT_EQ(d.at, (job::Position{2, 12}));
}

TEST_F(BadFile, FormsThatUtf8Forbids) {
    // RFC 3629: overlong forms, surrogates, beyond U+10FFFF, a sequence cut short, a stray continuation.
    for (const auto bytes : {"\xC0\xAF"sv, "\xE0\x80\xAF"sv, "\xED\xA0\x80"sv, "\xF4\x90\x80\x80"sv,
                             "\xF5\x80\x80\x80"sv, "\xE2\x82"sv, "\x80"sv, "\xF0\x8F\xBF\xBF"sv})
        EXPECT_EQ(refusal(file_with(bytes)).message, "the file is not UTF-8 text from here on") << bytes.size();
}

TEST_F(BadFile, OverOneMegabyte) {
    EXPECT_EQ(refusal(file_with(std::string(1'000'001, '#'))).message, "the file is over 1 MB");
    EXPECT_TRUE(job::load(file_with(std::string(1'000'000, '#'))).has_value());
}

TEST_F(BadFile, AUtf8MarkIsNoMistake) {
    const auto loaded = job::load(file_with("\xEF\xBB\xBF[job]\n"));
    ASSERT_TRUE(loaded.has_value());
    EXPECT_EQ(loaded->text, "[job]\n");
}

TEST_F(BadFile, HighestAndLowestCharactersAreNoMistake) {
    EXPECT_TRUE(job::load(file_with("# \x7E \xC2\x80 \xE0\xA0\x80 \xED\x9F\xBF \xF0\x90\x80\x80 \xF4\x8F\xBF\xBF"))
                    .has_value());
}

}  // namespace
