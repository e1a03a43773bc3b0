// The quick reader of words beside the TOML parser, on the words themselves and on ten thousand damaged files.

#include "fonts/plain_words.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <tuple>

namespace kerfpacket::fonts {
namespace {

using Told = std::tuple<std::string, bool, std::vector<std::string>, std::string>;

std::vector<Told> told(const std::vector<WordEntry>& entries) {
    std::vector<Told> all;
    for (const WordEntry& entry : entries) all.emplace_back(entry.key, entry.list, entry.texts, entry.place());
    std::sort(all.begin(), all.end());
    return all;
}

std::optional<std::vector<Told>> by_parser(const WordFile& file) {
    try {
        return told(entries_of(file));
    } catch (const std::runtime_error&) { return std::nullopt; }
}

WordFile file_of(const std::string& text) { return {"en/x.toml", text, "x.toml"}; }

TEST(PlainWords, ReadAllOfOursAsTheParserDoes) {
    std::size_t entries = 0;
    for (const char* language : {"en", "es"})
        for (const WordFile& file : read_word_files(KERFPACKET_SOURCE_DIR "/templates", language)) {
            const auto plain = plain_entries(file);
            ASSERT_TRUE(plain) << file.path << " is left to the parser";
            EXPECT_EQ(told(*plain), told(entries_of(file))) << file.path;
            entries += plain->size();
        }
    EXPECT_GT(entries, 1500U);
}

TEST(PlainWords, LeaveToTheParserWhatIsNotPlain) {
    for (const char* text : {"a = 1\n",
                             "a = 'x'\n",
                             "a = \"\"\"x\"\"\"\n",
                             "a = \"\\n\"\n",
                             "a.b = \"x\"\n",
                             "\"a\" = \"x\"\n",
                             "a = \"x\" b = \"y\"\n",
                             "a = \"x\"\na = \"y\"\n",
                             "a = \"x\"\n[a]\nb = \"y\"\n",
                             "[a]\nb = \"x\"\n[a]\n",
                             "a = \"{x\"\n",
                             "a = \"x\n\"\n",
                             "a = [\"x\" \"y\"]\n",
                             "a = [\"x\", 1]\n",
                             "a = \"\xC0\xAF\"\n",
                             "A = \"x\"\n",
                             "a = \"x\"\r\n",
                             "a = \"x",
                             "[a\nb = \"x\"\n",
                             "a =\n\"x\"\n",
                             "a-b = \"\"\na = \"\"\na.b = \"\"\n",
                             "[a]\nb = \"\"\nb-c = \"\"\n[a.b]\nd = \"\"\n"})
        EXPECT_FALSE(plain_entries(file_of(text))) << text;
}

TEST(PlainWords, NeverSayWhatTheParserDoesNot) {
    const std::string whole =
        "# Words.\ntitle = \"A \\\"title\\\" \xC3\xA9\" # so\n\n[end]\nlap = \"{n} of {m}\"\nlist = [\n  \"one\", # 1\n"
        "  \"two\",\n]\n[end.deep]\nfar_2 = \"\"\nnear-by = [\"a\", \"b\"]\n";
    ASSERT_TRUE(plain_entries(file_of(whole)));
    std::mt19937 random(20261129);
    const std::string bytes = "\"\\[]{}=.,#\n abx2\xC3\xA9'\t";
    int plain_ones = 0;
    for (int i = 0; i < 10000; ++i) {
        std::string text = whole;
        for (std::size_t changes = 1 + random() % 3; changes > 0; --changes) {
            const std::size_t at = random() % text.size();
            const char byte = bytes[random() % bytes.size()];
            switch (random() % 3) {
                case 0: text[at] = byte; break;
                case 1: text.insert(at, 1, byte); break;
                default: text.erase(at, 1 + random() % 6);
            }
        }
        const WordFile file = file_of(text);
        const auto plain = plain_entries(file);
        if (!plain) continue;
        ++plain_ones;
        const auto parsed = by_parser(file);
        ASSERT_TRUE(parsed) << text;
        ASSERT_EQ(told(*plain), *parsed) << text;
    }
    EXPECT_GT(plain_ones, 1500);
}

}  // namespace
}  // namespace kerfpacket::fonts
