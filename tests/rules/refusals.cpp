// What the plan says of a piece that it refuses is said by key: every sentence that stands in the source has words in
// every language, the English ones the same.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <set>
#include <utility>

#include "fonts/words.h"
#include "support/program.h"

namespace kerfpacket::tests {
namespace {

const fs::path source_dir = KERFPACKET_SOURCE_DIR;

std::map<fs::path, std::string> sources() {
    std::map<fs::path, std::string> all;
    for (const char* room : {"curve", "plan"})
        for (const auto& entry : fs::recursive_directory_iterator(source_dir / "src" / room))
            if (entry.path().extension() == ".cpp") all.emplace(entry.path(), slurp(entry.path()));
    const fs::path told = source_dir / "src/job/told.cpp";
    all.emplace(told, slurp(told));
    return all;
}

/// The literals of a source, those that stand one behind the other as the one that they are.
std::set<std::string> literals(const std::string& source) {
    static const std::regex literal(R"re(R"\(([^]*?)\)"|"((?:[^"\\\n]|\\.)*)")re");
    std::set<std::string> all;
    std::string joined;
    const char* end = nullptr;
    for (std::sregex_iterator one(source.begin(), source.end(), literal), none; one != none; ++one) {
        const char* const from = source.data() + one->position();
        std::string text = (*one)[1].matched ? (*one)[1].str() : (*one)[2].str();
        if (!(*one)[1].matched) text = std::regex_replace(text, std::regex(R"(\\(.))"), "$1");
        const bool goes_on = end != nullptr && std::all_of(end, from, [](char c) { return c == ' ' || c == '\n'; });
        if (!goes_on) all.insert(std::exchange(joined, ""));
        joined += text;
        end = from + one->length();
    }
    all.insert(joined);
    return all;
}

/// The keys of sentences that are said: say("key", ...), say(x ? "key" : "key", ...), in_a_row("key", ...).
std::set<std::string> keys_said(const std::string& source) {
    static const std::regex said(R"re(\b(?:say|in_a_row)\(\s*(?:[^"{};]*\?\s*)?"(\w+)"(?:\s*:\s*"(\w+)")?)re");
    std::set<std::string> keys;
    for (std::sregex_iterator one(source.begin(), source.end(), said), none; one != none; ++one)
        for (const std::size_t group : {1U, 2U})
            if ((*one)[group].matched) keys.insert((*one)[group].str());
    return keys;
}

std::set<std::string> all_keys() {
    std::set<std::string> keys;
    for (const auto& [file, source] : sources()) keys.merge(keys_said(source));
    return keys;
}

std::set<std::string> keys_of(const std::string& language) {
    const fonts::Words words(source_dir / "templates", language);
    const std::string room = "refusals.";
    std::set<std::string> keys;
    for (const auto& [key, entry] : words.entries())
        if (key.starts_with(room)) keys.insert(key.substr(room.size()));
    return keys;
}

TEST(Refusals, HaveWordsInEveryLanguageAndNoneThatNobodySays) {
    const std::set<std::string> said = all_keys();
    ASSERT_GT(said.size(), 150U);
    EXPECT_EQ(keys_of("en"), said);
    EXPECT_EQ(keys_of("es"), said);
}

/// The console spells as the job file's keys do.
std::string as_on_paper(const std::string& sentence) {
    return std::regex_replace(sentence, std::regex("\\bcentre\\b"), "center");
}

TEST(Refusals, AreInEnglishTheSameOnPaperAndOnTheConsole) {
    std::set<std::string> there;
    for (const auto& [file, source] : sources())
        for (const std::string& literal : literals(source)) there.insert(as_on_paper(literal));
    const fonts::Words words(source_dir / "templates", "en");
    for (const std::string& key : keys_of("en"))
        EXPECT_TRUE(there.contains(words("refusals." + key))) << key << ": " << words("refusals." + key);
}

/// A sentence without a key reaches no sheet: those of the stock plan, and those that leave no plan.
TEST(Refusals, AreNeverSaidInEnglishAlone) {
    static const std::set<std::string> on_the_console{"make_stock_plan.cpp", "sheet_plan.cpp", "plan.cpp"};
    static const std::regex alone(R"(\bTold\((?!\)))");
    for (const auto& [file, source] : sources()) {
        if (file.filename() == "told.cpp" || on_the_console.contains(file.filename().string())) continue;
        const std::ptrdiff_t found = std::distance(std::sregex_iterator(source.begin(), source.end(), alone), {});
        // Of a material that nobody knows there is no plan either.
        EXPECT_EQ(found, file.filename() == "checks.cpp" ? 2 : 0) << file;
    }
}

}  // namespace
}  // namespace kerfpacket::tests
