// Bad shop files: those of shop_cases/, files that cannot be loaded, and text that nobody writes by hand.
#include <filesystem>
#include <fstream>
#include <string>

#include <gtest/gtest.h>

#include "case_file.h"

namespace fs = std::filesystem;
using namespace kerfpacket;
using namespace kerfpacket::tests;

namespace {

class BadShop : public testing::TestWithParam<fs::path> {
protected:
    static job::Source source() { return source_of(GetParam()); }
};

TEST_P(BadShop, GivesExactlyTheMessagesWrittenInIt) {
    const job::Source file = source();
    const auto expected = expected_in(file.text);
    ASSERT_FALSE(expected.empty()) << "the file says no message; every case must";
    EXPECT_EQ(told(job::read_shop(file).diagnostics), expected);
}

TEST_P(BadShop, GivesTheSameMessagesWithoutTheComments) {
    const job::Source file = source();
    EXPECT_EQ(told(job::read_shop({"bare.toml", without_messages(file.text)}).diagnostics), expected_in(file.text));
}

INSTANTIATE_TEST_SUITE_P(Cases, BadShop, testing::ValuesIn(case_files("shop_cases")),
                         [](const auto& file) { return file.param.stem().string(); });

TEST(BadShops, AFileThatIsNotThereIsToldAsAShopFile) {
    const auto loaded = job::load("no-such-shop.toml", job::shop_file);
    ASSERT_FALSE(loaded);
    EXPECT_EQ(loaded.error().message, "there is no such file");
    EXPECT_EQ(loaded.error().hint, "expected a shop file");
}

TEST(BadShops, AnEmptyFileIsToldWhatAShopFileHolds) {
    const fs::path file = fs::path(testing::TempDir()) / "kerfpacket_empty_shop.toml";
    std::ofstream(file) << "\n";
    const auto loaded = job::load(file, job::shop_file);
    fs::remove(file);
    ASSERT_FALSE(loaded);
    EXPECT_EQ(loaded.error().hint, "a shop file has [saw], [printer], [stock], [rates], [[material]] or [[trial]]");
}

/// Reading must end, and messages must point into the text; a shop without messages is whole.
void expect_promises_kept(const std::string& text) {
    const auto reading = job::read_shop({"shop.toml", text});
    const auto lines = static_cast<int>(lines_of(text).size());
    for (const auto& d : reading.diagnostics) {
        EXPECT_GE(d.at.line, 1);
        EXPECT_LE(d.at.line, lines + 1);
        EXPECT_GE(d.at.column, 1);
        EXPECT_FALSE(d.message.empty());
    }
    if (reading.diagnostics.empty()) { EXPECT_FALSE(reading.shop.faulty); }
}

TEST(BadShops, EveryJobAndEverySeedOfTheFuzzerIsReadAsAShopFile) {
    int files = 0;
    for (const char* folder : {"tests/diagnostics/cases", "tests/fuzz/corpus"})
        for (const auto& entry : fs::directory_iterator(fs::path(KERFPACKET_SOURCE_DIR) / folder)) {
            std::ifstream stream(entry.path(), std::ios::binary);
            const std::string text(std::istreambuf_iterator<char>(stream), {});
            SCOPED_TRACE(entry.path().filename());
            expect_promises_kept(text);
            ++files;
        }
    EXPECT_GE(files, 250);
}

TEST(BadShops, HostileText) {
    expect_promises_kept(std::string(100'000, '['));
    expect_promises_kept("[saw" + std::string(2000, '.') + "]\n");
    std::string materials;
    for (int i = 0; i < 5000; ++i) materials += "[[material]]\nname = \"same\"\nbreak_strain = \"1 %\"\n";
    expect_promises_kept(materials);
    EXPECT_EQ(job::read_shop({"shop.toml", materials}).shop.materials.size(), 1U);
}

}  // namespace
