// The install card, and the blanks in which people answer for a sheet.

#include <gtest/gtest.h>

#include <algorithm>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "../../support/languages.h"
#include "measure/fraction.h"
#include "sheets/layout/page_index.h"
#include "sheets/packet.h"
#include "sheets/words/tape.h"

namespace kerfpacket::tests {
namespace {

page::Document packet(const std::string& language = "en") {
    return sheets::make_packet(planned(job_of(alder_court())), kit(language));
}

std::vector<page::Page> pages_of(const page::Document& document, const std::string& sheet) {
    std::vector<page::Page> found;
    for (const page::Page& page : document.pages)
        if (page.sheet == sheet) found.push_back(page);
    return found;
}

std::string all_text(const page::Page& page) {
    std::string all;
    for (const page::TextItem& text : texts(page)) all += text.text + "\n";
    return all;
}

/// How many of these words have a blank right behind them, on their line.
int blanks_behind(const page::Page& page, const std::string& words) {
    int found = 0;
    for (const page::TextItem& text : texts(page)) {
        if (text.text != words) continue;
        const auto lines = paths(page, page::Role::box);
        found += static_cast<int>(std::count_if(lines.begin(), lines.end(), [&](const page::PathItem& line) {
            const auto from = line.path.start() - in_text(text, text.advance, {});
            return from.x > measure::Length() && from.x < 8_pt && measure::abs(from.y) < 4_pt &&
                   line.path.length() > 50_pt;
        }));
    }
    return found;
}

TEST(InstallCard, EachPieceHasOneWithItsOwnFigures) {
    const plan::Plan plan = planned(job_of(alder_court()));
    const page::Document document = sheets::make_packet(plan, kit());
    const std::vector<page::Page> cards = pages_of(document, "install");
    for (const plan::Piece& piece : plan.pieces) {
        const auto is_its_own = [&](const page::Page& card) { return sheets::is_of(card.piece, piece.id); };
        ASSERT_EQ(std::count_if(cards.begin(), cards.end(), is_its_own), 1) << piece.id;
        const page::Page& card = *std::find_if(cards.begin(), cards.end(), is_its_own);
        const sheets::Tape tape(plan.header.units, kit().words);
        const std::string all = all_text(card);
        EXPECT_NE(all.find("only " + tape.exact(piece.cut.web())), std::string::npos) << all;
        EXPECT_NE(all.find(tape.with_unit(piece.cut.least_spacing - piece.cut.kerf)), std::string::npos) << all;
        EXPECT_EQ(text_faults(card), std::vector<std::string>{});
    }
}

TEST(InstallCard, TheGlueLogHasARowForEachStepAndTwoMore) {
    const page::Page card = pages_of(packet(), "install").front();
    const std::string all = all_text(card);
    std::vector<measure::Length> rules;
    for (const std::string& step : kit().words.list("install.log_steps"))
        EXPECT_NE(all.find(step), std::string::npos) << step;
    for (const page::PathItem& line : paths(card, page::Role::box))
        if (line.path.segments().size() == 1 && line.path.length() > card.width * 0.8 &&
            measure::abs(line.path.start().y - line.path.end().y) < 0.01_pt && line.width < 0.3_pt)
            rules.push_back(line.path.start().y);
    ASSERT_EQ(rules.size(), kit().words.list("install.log_steps").size() + 2);
    for (std::size_t i = 1; i < rules.size(); ++i) EXPECT_GE((rules[i - 1] - rules[i]).points(), 20) << "room to write";
}

TEST(SignOff, StandsOnCoverChecklistAndInstallCard) {
    for (const std::string& language : tests::languages()) {
        const fonts::Words& words = kit(language).words;
        const page::Document document = packet(language);
        const auto expect_blanks = [&](const page::Page& page, const std::vector<std::string>& who, int dates) {
            for (const std::string& name : who) EXPECT_EQ(blanks_behind(page, name), 1) << page.sheet << ": " << name;
            EXPECT_EQ(blanks_behind(page, words("page.date")), dates) << page.sheet;
        };
        const std::vector<std::string> cut_and_checked{words("page.cut_by"), words("page.checked_by")};
        expect_blanks(pages_of(document, "cover").back(), cut_and_checked, 2);
        const auto checklists = pages_of(document, "checklist");
        ASSERT_FALSE(checklists.empty());
        for (const page::Page& page : checklists) expect_blanks(page, cut_and_checked, 1);
        expect_blanks(pages_of(document, "install").front(), {words("install.installed_by"), words("page.checked_by")},
                      1);
    }
}

TEST(SignOff, OnAChecklistInTwoLanguagesIsInBoth) {
    const page::Page page = pages_of(packet("en, es"), "checklist").front();
    EXPECT_EQ(blanks_behind(page, "cut by / cortado por"), 1);
    EXPECT_EQ(text_faults(page), std::vector<std::string>{});
}

}  // namespace
}  // namespace kerfpacket::tests
