// The sheets in Spanish beside those in English: nothing left out, nothing left English.

#include <gtest/gtest.h>

#include <numeric>
#include <regex>

#include "../../support/kit.h"
#include "../../support/program.h"
#include "job/read.h"
#include "sheets/packet.h"
#include "sheets/words/tape.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

using tests::kit;
using namespace measure::literals;

plan::Plan plan_of(const std::filesystem::path& file) {
    const job::Reading reading = job::read_job(job::load(file).value());
    return plan::make_plan(reading.job).value();
}

/// How many texts each page of one kind of sheet has.
std::vector<int> counts(const page::Document& packet, const std::string& sheet) {
    std::vector<int> pages;
    for (const page::Page& page : packet.pages)
        if (page.sheet == sheet) pages.push_back(static_cast<int>(tests::texts(page).size()));
    return pages;
}

// Words that find no room on a strip or beside a page's title are left out there: Spanish, the longer of the two, must
// not lose what English keeps. On these sheets no paragraph breaks differently. A strip's name, which the page's footer
// has too, may give way once on a page to a longer figure.
TEST(Languages, SpanishStripsAndListsSayAsMuchAsEnglishOnes) {
    int all = 0;
    int lost = 0;
    for (const auto& sample : tests::sample_folders()) {
        plan::Plan plan = plan_of(sample / "job.toml");
        plan.packet.one_set = true;  // each sheet once
        const page::Document english = make_packet(plan, kit("en"));
        const page::Document spanish = make_packet(plan, kit("es"));
        for (const char* sheet : {"strips", "checklist", "safety"}) {
            const std::vector<int> en = counts(english, sheet);
            const std::vector<int> es = counts(spanish, sheet);
            ASSERT_EQ(en.size(), es.size()) << sample << sheet;
            for (std::size_t i = 0; i < en.size(); ++i) {
                EXPECT_GE(es[i], en[i] - 1) << sample << ' ' << sheet << ' ' << i + 1;
                lost += std::max(0, en[i] - es[i]);
            }
            all += std::accumulate(en.begin(), en.end(), 0);
        }
    }
    EXPECT_GT(all, 5000);
    EXPECT_LE(lost * 1000, all);  // a distance whose unit is longer, here and there
}

// Outside the lines for the job file a Spanish sheet has no decimal point and no English unit.
TEST(Languages, SpanishSheetsHaveSpanishFigures) {
    const std::regex english(R"(\d\.\d|\d in\b|\b(the|and|of|kerfs?|board|page|inches)\b)");
    const std::regex for_the_job_file(R"(\[|^\w+ = |kerfpacket |^  +--)");
    int seen = 0;
    for (const auto& sample : tests::sample_folders()) {
        plan::Plan plan = plan_of(sample / "job.toml");
        plan.header.title = "Arco";
        for (const page::Page& page : make_packet(plan, kit("es")).pages)
            for (const page::TextItem& text : tests::texts(page)) {
                ++seen;
                if (std::regex_search(text.text, for_the_job_file)) continue;
                EXPECT_FALSE(std::regex_search(text.text, english)) << sample << ' ' << page.sheet << ": " << text.text;
            }
    }
    EXPECT_GT(seen, 5000);
}

TEST(Languages, TheJobFileIsWrittenTheSameInEveryLanguage) {
    const plan::Plan plan = plan_of(std::filesystem::path(KERFPACKET_SOURCE_DIR) / "out-samples/mill-lane/job.toml");
    std::vector<std::string> lines[2];
    for (const bool spanish : {false, true})
        for (const page::Page& page : make_packet(plan, kit(spanish ? "es" : "en")).pages)
            for (const page::TextItem& text : tests::texts(page))
                if (page.sheet == "coupon" && text.text.find(" = \"") != std::string::npos)
                    lines[spanish ? 1 : 0].push_back(text.text);
    EXPECT_GE(lines[0].size(), 7U);
    EXPECT_EQ(lines[0], lines[1]);
}

TEST(Languages, FiguresAndDatesAreWrittenAsTheLanguageHasThem) {
    const fonts::Words& es = kit("es").words;
    const Tape tape(Unit::inch, es);
    EXPECT_EQ(tape.exact(0.126_in), "0,126 pulg");
    EXPECT_EQ(tape.with_unit(7.75_in), "7-3/4 pulg");
    EXPECT_EQ(tape.other(1_in), "25,4");
    EXPECT_EQ(Tape(Unit::millimetre, es).exact(19.05_mm), "19,05 mm");
    EXPECT_EQ(number(0.6, 2, es), "0,60");
    EXPECT_EQ(date_text("2026-10-09", es), "9 de octubre de 2026");
    EXPECT_EQ(date_text("2026-10-09", kit("en").words), "October 9, 2026");
    EXPECT_EQ(media_text(job::find_media("custom_card_8.27x11.69in").value(), kit("es")), "Especial 8,27 x 11,69 pulg");
    EXPECT_EQ(media_text(job::find_media("custom_roll_62mm").value(), kit("es")), "Rollo de 62 mm de ancho");
}

// The command line and the sheets call a paper the same.
TEST(Languages, EnglishPaperHasItsPlainName) {
    for (const job::Media& media : job::all_media()) EXPECT_EQ(media_text(media, kit("en")), media.plain_name);
    for (const char* name : {"custom_card_8.27x11.69in", "custom_roll_24in"})
        EXPECT_EQ(media_text(job::find_media(name).value(), kit("en")), job::find_media(name)->plain_name);
}

}  // namespace
}  // namespace kerfpacket::sheets
