// The languages of templates/ say the same things: same files, keys, lists and names in braces, and none is left in
// another language.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <regex>
#include <set>
#include <sstream>

#include "../../support/languages.h"
#include "bend/verdict.h"
#include "fonts/word_file.h"
#include "fonts/words.h"
#include "measure/fraction.h"

namespace kerfpacket::fonts {
namespace {

const std::filesystem::path templates = KERFPACKET_SOURCE_DIR "/templates";

std::set<std::string> files_of(const std::string& language) {
    std::set<std::string> names;
    for (const WordFile& file : read_word_files(templates, language)) names.insert(file.stem());
    return names;
}

/// What is rightly the same in both: signs, names of paper and of boards, the program's own commands.
bool may_be_the_same(const WordEntry& entry) {
    static const std::set<std::string> same{"casing.joint_name",
                                            "checklist.column",
                                            "chance.on_cover_piece",
                                            "chance.strain",
                                            "cover.moisture_piece",
                                            "cover.opening_short",
                                            "cover.radius",
                                            "work_order.angle",
                                            "drawing.radius",
                                            "form.mm",
                                            "materials.mdf",
                                            "numbers.millimetre",
                                            "page.millimetres",
                                            "refusals.or_way",
                                            "refusals.and_also",
                                            "refusals.length",
                                            "refusals.place",
                                            "piece.board",
                                            "piece.shape_tudor",
                                            "setup.subtitle",
                                            "strain.comma",
                                            "strip.joint",
                                            "strip.tape_mark",
                                            "template.radius",
                                            "media.sheet",
                                            "media.na_legal",
                                            "media.na_oficio",
                                            "printer_check.command",
                                            "stock.millimetre_unit",
                                            "stock.percent",
                                            "labels.segment_board",
                                            "labels.zero",
                                            "bid.job",
                                            "bid.metres",
                                            "bid.square_metres",
                                            "stock.sheet_size",
                                            "stock.square_metres"};
    const std::string& text = entry.texts.front();
    const bool size =
        entry.key.starts_with("media.") && text.find_first_not_of("ABRS0123456789 x") == std::string::npos;
    return same.contains(entry.key) || size;
}

TEST(Languages, HaveTheSameFiles) {
    EXPECT_GE(files_of("en").size(), 22U);
    EXPECT_EQ(files_of("en"), files_of("es"));
}

TEST(Languages, HaveTheSameKeysListsAndNames) {
    const Words en(templates, "en");
    const Words es(templates, "es");
    for (const auto& [key, entry] : es.entries())
        EXPECT_TRUE(en.entries().contains(key)) << entry.place() << ' ' << key;
    for (const auto& [key, ours] : en.entries()) {
        const auto found = es.entries().find(key);
        ASSERT_NE(found, es.entries().end()) << key;
        const WordEntry& theirs = found->second;
        EXPECT_EQ(ours.list, theirs.list) << theirs.place();
        ASSERT_EQ(ours.texts.size(), theirs.texts.size()) << theirs.place();
        for (std::size_t i = 0; i < ours.texts.size(); ++i)
            EXPECT_EQ(names_in(ours.texts[i]), names_in(theirs.texts[i])) << theirs.place() << ' ' << key;
    }
}

TEST(Languages, GiveTheirFiguresInBracesSoThatTheDecimalMarkIsTheirOwn) {
    const std::regex typed(R"re((^|[^\w.,{])\d+[.,]\d+($|[^\w}]))re");
    int figures = 0;
    for (const std::string& language : tests::languages()) {
        const Words words(templates, language);
        const std::string decimal = words("numbers.decimal");
        for (const WordFile& file : read_word_files(templates, language)) {
            std::istringstream lines(file.text);
            for (std::string line; std::getline(lines, line);) {
                if (line.starts_with("#")) continue;
                EXPECT_FALSE(std::regex_search(line, typed)) << file.name << ": " << line;
                figures += std::regex_search(line, std::regex(R"re(\{\d+\.\d+\})re")) ? 1 : 0;
            }
        }
        // The limits of the verdict stand in sentences, and are those of the calculation.
        for (const double limit : {bend::ok_up_to, bend::caution_up_to}) {
            std::string figure = measure::fixed(limit, 2);
            figure.replace(1, 1, decimal);
            EXPECT_NE(words("cover.table_note").find(figure), std::string::npos) << words("cover.table_note");
        }
    }
    EXPECT_GT(figures, 30);
}

TEST(Languages, LeaveNothingUntranslatedOrEmpty) {
    const Words en(templates, "en");
    const Words es(templates, "es");
    for (const auto& [key, theirs] : es.entries()) {
        if (theirs.texts.empty()) continue;
        for (const std::string& text : theirs.texts) EXPECT_NE(text.find_first_not_of(' '), std::string::npos) << key;
        const bool same = theirs.texts == en.entries().at(key).texts;
        EXPECT_EQ(same, may_be_the_same(theirs)) << theirs.place() << ' ' << key << ": " << theirs.texts.front();
    }
}

/// The words of the job file stand as it writes them.
bool is_of_the_job_file(const std::string& key) {
    static const std::set<std::string> words{"settings.word_centre", "coupon.box_centre", "piece.asked_three_centred"};
    return words.contains(key);
}

// From memory: the spellings of the United States of the words of the trade that the two sides of the ocean differ in.
TEST(Languages, SpellEnglishInOneWay) {
    const std::regex british("centre|mitre|mould|neighbour|programme|metre|colour|grey|judgement|favour|aluminium",
                             std::regex::icase);
    const std::regex names(R"(\{[^}]*\})");
    const Words en(templates, "en");
    std::set<std::string> kept;
    for (const auto& [key, entry] : en.entries())
        for (const std::string& text : entry.texts) {
            if (!std::regex_search(std::regex_replace(text, names, ""), british)) continue;
            if (is_of_the_job_file(key)) kept.insert(key);
            else ADD_FAILURE() << entry.place() << ' ' << key << ": " << text;
        }
    EXPECT_EQ(kept.size(), 3U) << "a key that is excused has no such word any more";
}

TEST(Languages, HaveTheYearsMonths) {
    for (const std::string& language : tests::languages()) {
        const std::vector<std::string> months = Words(templates, language).list("numbers.months");
        EXPECT_EQ(months.size(), 12U);
        EXPECT_EQ(std::set<std::string>(months.begin(), months.end()).size(), 12U);
    }
}

}  // namespace
}  // namespace kerfpacket::fonts
