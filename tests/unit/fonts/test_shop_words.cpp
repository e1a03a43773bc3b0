#include "fonts/shop_words.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "fonts/words.h"
#include "scratch.h"

namespace kerfpacket::fonts {
namespace {

const std::filesystem::path templates = KERFPACKET_SOURCE_DIR "/templates";

Words with(const std::string& file, const std::string& text) {
    return {templates, "en", {{"en/" + file, text, "ours/en/" + file}}};
}

/// What is said of a shop's file of words.
std::string mistake(const std::string& file, const std::string& text) {
    return thrown_by([&] { with(file, text); });
}

TEST(ShopWords, StandInPlaceOfTheProgramsOwn) {
    const Words words = with("materials.toml", "red-oak = \"oak, red\"\n");
    EXPECT_EQ(words("materials.red-oak"), "oak, red");
    EXPECT_EQ(words("materials.mdf"), "MDF");
    EXPECT_EQ(
        with("cover.toml", "job = \"No. {number}, {revision}\"\n")("cover.job", {{"number", "7"}, {"revision", "B"}}),
        "No. 7, B");
}

TEST(ShopWords, OfAnotherLanguageDoNotCount) {
    const Words words(templates, "en", {{"es/materials.toml", "red-oak = \"encino\"\n", "x"}});
    EXPECT_EQ(words("materials.red-oak"), "red oak");
    const Words spanish(templates, "es", {{"es/materials.toml", "red-oak = \"encino\"\n", "x"}});
    EXPECT_EQ(spanish("materials.red-oak"), "encino");
}

TEST(ShopWords, RulesAndNameAreListsOfTheShop) {
    const Words words = with("shop.toml", "name = [\"Robledo\"]\nsafety_rules = [\"One.\", \"Two.\"]\n");
    EXPECT_EQ(words.list("shop.name"), std::vector<std::string>{"Robledo"});
    EXPECT_EQ(words.list("shop.safety_rules").size(), 2U);
    EXPECT_TRUE(words.list("shop.setup_rules").empty());
    EXPECT_TRUE(Words(templates, "en").list("shop.safety_rules").empty());
}

// Every caution stands, whatever a shop would put in its place.
TEST(ShopWords, CautionsCannotBeReplaced) {
    const Words program(templates, "en");
    int refused = 0;
    for (const auto& [key, entry] : program.entries()) {
        const bool card = key.starts_with("safety.") || key.starts_with("cautions.");
        if (!card) continue;
        const std::size_t dot = key.find('.');
        std::string value = "[";
        for (const std::string& text : entry.texts) value += "'" + std::string(text.size() / 2, 'x') + "', ";
        value = entry.list ? value + "]" : "\"x\"";
        const std::string said = mistake(key.substr(0, dot) + ".toml", key.substr(dot + 1) + " = " + value);
        EXPECT_NE(said.find("stands as it is: cautions are only added to"), std::string::npos) << key << ": " << said;
        ++refused;
    }
    EXPECT_GE(refused, 53);
    for (const char* key : {"checklist.statement", "piece.verdict_break", "piece.coupon_first", "cover.banner_break",
                            "setup.manual", "setup.unplugged_spacer", "install.statement", "install.log_note",
                            "form.caution", "coupon.make_hold", "strain.in_break", "strip.low_tack"}) {
        const std::string name = key;
        const std::size_t dot = name.find('.');
        EXPECT_NE(mistake(name.substr(0, dot) + ".toml", name.substr(dot + 1) + " = \"fine\"").find("stands as it is"),
                  std::string::npos)
            << key;
    }
}

TEST(ShopWords, MistakesNameFileLineAndKeyAndWhatWasMeant) {
    EXPECT_EQ(mistake("cover.toml", "\ntitel = \"Job\"\n"),
              "ours/en/cover.toml:2: cover.titel is no key of the words; did you mean cover.title?");
    EXPECT_EQ(mistake("covr.toml", ""), "ours/en/covr.toml: is no file of the words; did you mean cover?");
    EXPECT_EQ(mistake("cover.toml", "job = \"Job {numbr} {revision}\"\n"),
              "ours/en/cover.toml:1: cover.job must hold {number}, {revision}, as the program's own words do");
    EXPECT_EQ(mistake("cover.toml", "title = \"{job}\"\n"),
              "ours/en/cover.toml:1: cover.title must hold no name in braces, as the program's own words do");
    EXPECT_EQ(mistake("cover.toml", "title = \" \"\n"), "ours/en/cover.toml:1: cover.title is empty");
    EXPECT_EQ(mistake("cover.toml", "title = 7\n"), "ours/en/cover.toml:1: cover.title must be text in quotes");
    EXPECT_EQ(mistake("cover.toml", "title = [\"a\"]\n"), "ours/en/cover.toml:1: cover.title must be text");
    EXPECT_EQ(mistake("cover.toml", "title = \"a\\nb\"\n"),
              "ours/en/cover.toml:1: cover.title must be one line, without control characters");
    EXPECT_EQ(mistake("cover.toml", "title = \"" + std::string(29, 'm') + "\"\n"),
              "ours/en/cover.toml:1: cover.title is 29 characters long; the sheet has room for 28");
    EXPECT_EQ(mistake("template.toml", "print_side = [\"one\"]\n"),
              "ours/en/template.toml:1: template.print_side has 1 lines; the sheet has room for just 2");
    EXPECT_EQ(mistake("page.toml", "language = \"en-GB\"\n"),
              "ours/en/page.toml:1: page.language stands as it is: it tells a reader the language of the words");
    EXPECT_EQ(mistake("numbers.toml", "decimal = \"'\"\n"),
              "ours/en/numbers.toml:1: numbers.decimal must be \".\" or \",\"");
    EXPECT_NE(mistake("cover.toml", "title = \"open {\"\n").find("opens a brace and never closes it"),
              std::string::npos);
    EXPECT_NE(mistake("cover.toml", "title = \n").find("ours/en/cover.toml:1: "), std::string::npos);
    EXPECT_NE(mistake("cover.toml", "\"ti\\u001btle\" = \"x\"\n").find("a key is made of small letters"),
              std::string::npos);
}

TEST(ShopWords, RulesAndNameHaveRoomForSoManyAndSoLong) {
    EXPECT_EQ(mistake("shop.toml", "safety_rules = [\"1\", \"2\", \"3\", \"4\", \"5\"]\n"),
              "ours/en/shop.toml:1: shop.safety_rules has 5 lines; the sheet has room for 4");
    EXPECT_EQ(mistake("shop.toml", "name = [\"1\", \"2\", \"3\", \"4\"]\n"),
              "ours/en/shop.toml:1: shop.name has 4 lines; the sheet has room for 3");
    EXPECT_EQ(mistake("shop.toml", "setup_rules = [\"" + std::string(73, 'W') + "\"]\n"),
              "ours/en/shop.toml:1: shop.setup_rules has a line of 73 characters; the sheet has room for 72");
}

TEST(ShopWords, AllMistakesAreToldInOneRun) {
    const std::string told = thrown_by([] {
        Words(templates, "en",
              {{"en/cover.toml", "titel = \"a\"\ntitle = \"\"\n", "c"}, {"en/strip.toml", "broken", "s"}});
    });
    EXPECT_EQ(std::count(told.begin(), told.end(), '\n'), 2) << told;
}

}  // namespace
}  // namespace kerfpacket::fonts
