#include "sheets/blanks/field_sheet.h"

#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "../../support/languages.h"
#include "../../support/program.h"

namespace kerfpacket::sheets {
namespace {

using tests::kit;
using namespace measure::literals;

const std::vector<Field> all{Field::arch, Field::wall, Field::ordinates};

page::Document sheets_on(const char* media, measure::Unit unit, const std::string& language) {
    return make_field_sheets(all, job::find_media(media).value(), unit, kit(language)).document;
}

TEST(FieldSheets, WordsKeepApartOnEveryPaperAndInEveryLanguage) {
    for (const job::Media& media : job::all_media())
        for (const std::string& language : tests::languages())
            for (const measure::Unit unit : {measure::Unit::inch, measure::Unit::millimetre}) {
                const page::Document document = make_field_sheets(all, media, unit, kit(language)).document;
                ASSERT_EQ(document.pages.size(), 3U);
                for (const page::Page& page : document.pages)
                    for (const std::string& fault : tests::text_faults(page))
                        ADD_FAILURE() << media.name << ' ' << language << ' ' << page.sheet << ": " << fault;
            }
}

// The description of the keys is what the office types from: no sheet may name another.
TEST(FieldSheets, NameNoKeyThatIsNotDescribed) {
    const std::string described = tests::slurp(std::filesystem::path(KERFPACKET_SOURCE_DIR) / "src/job/README.md");
    const std::regex key(R"([a-z]+([_-][a-z]+)*)");
    std::set<std::string> seen;
    for (const std::string& language : tests::languages())
        for (const page::Page& page : sheets_on("na_letter_8.5x11in", measure::Unit::inch, language).pages)
            for (const page::TextItem& text : tests::texts(page)) {
                if (text.size != kit().style.tiny || text.face != page::Face::condensed) continue;
                std::string keys = std::regex_replace(text.text, std::regex(R"(\[\[?[a-z.]+\]\]?|left|right)"), "");
                for (std::sregex_iterator it(keys.begin(), keys.end(), key), end; it != end; ++it) {
                    seen.insert(it->str());
                    const bool listed = described.find("`" + it->str() + "`") != std::string::npos ||
                                        described.find("`\"" + it->str() + "\"`") != std::string::npos;
                    EXPECT_TRUE(listed) << it->str() << " of " << text.text;
                }
            }
    for (const char* needed : {"number", "title", "date", "span", "rise", "legs", "depth", "measured_to", "chord",
                               "radius", "angle", "tails", "side", "width", "shape", "end_angles"})
        EXPECT_TRUE(seen.contains(needed)) << needed;
}

TEST(FieldSheets, BlanksAreLongEnoughForAHand) {
    // A figure such as 108-15/16 in ordinary handwriting, 3/4 in. Judgement, no source.
    for (const std::string& language : tests::languages())
        for (const page::Page& page : sheets_on("na_letter_8.5x11in", measure::Unit::inch, language).pages)
            for (const page::PathItem& path : tests::paths(page, page::Role::box)) {
                const geom::Rect box = path.path.bounds();
                const bool line = box.height() < 0.01_mm && path.path.segments().size() == 1;
                if (line) { EXPECT_GE(box.width().inches(), 0.74) << page.sheet << language; }
            }
}

TEST(FieldSheets, TheTableOfMeasuredPointsIsNumberedWithoutAGap) {
    for (const char* media : {"na_letter_8.5x11in", "iso_a4_210x297mm", "na_ledger_11x17in"}) {
        const page::Page page = sheets_on(media, measure::Unit::inch, "en").pages.back();
        std::set<int> numbers;
        for (const page::TextItem& text : tests::texts(page))
            if (text.text.find_first_not_of("0123456789") == std::string::npos) numbers.insert(std::stoi(text.text));
        ASSERT_FALSE(numbers.empty());
        EXPECT_EQ(*numbers.begin(), 1);
        EXPECT_EQ(*numbers.rbegin(), static_cast<int>(numbers.size()));
        EXPECT_GE(numbers.size(), 20U) << media;
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
