// What the parts of the pages are, as the sheets say it.

#include <gtest/gtest.h>

#include <map>

#include "../../support/kit.h"
#include "../../support/program.h"
#include "job/read.h"
#include "sheets/blanks/field_sheet.h"
#include "sheets/blanks/printer_check.h"
#include "sheets/layout/pen.h"
#include "sheets/packet.h"

namespace kerfpacket::sheets {
namespace {

using page::Tag;
using tests::kit;

class Parts : public testing::Test {
protected:
    Parts() : pen(page, kit()) { page.width = page.height = 100_mm; }
    Tag tag(std::size_t item) const {
        return page.structure.at(std::visit([](const auto& one) { return one.node; }, page.items.at(item))).tag;
    }
    std::size_t node(std::size_t item) const {
        return std::visit([](const auto& one) { return one.node; }, page.items.at(item));
    }
    page::Page page;
    Pen pen;
    const Type type{Face::regular, 9_pt};
};

TEST_F(Parts, WordsOutsideOfAllPartsAreParagraphsAndLinesArtifacts) {
    pen.text(Role::text, {}, "one", type);
    pen.text(Role::text, {}, "two", type);
    pen.line(Role::box, {}, {1_mm, 1_mm}, 1_pt);
    EXPECT_EQ(tag(0), Tag::paragraph);
    EXPECT_NE(node(0), node(1));
    EXPECT_EQ(read_with(page, page.items[0]), node(0));
    EXPECT_EQ(read_with(page, page.items[2]), std::nullopt);
}

TEST_F(Parts, TheLinesOfAParagraphAreOne) {
    pen.paragraph(Role::text, {}, "some words that run over the line", type, 20_mm, 10_pt);
    ASSERT_GT(page.items.size(), 1U);
    for (std::size_t i = 0; i < page.items.size(); ++i) EXPECT_EQ(node(i), node(0));
    EXPECT_EQ(tag(0), Tag::paragraph);
    EXPECT_EQ(page.open, 0U);
}

TEST_F(Parts, APartEndsWithItsScope) {
    {
        const Scope cell = pen.within(Tag::cell);
        pen.paragraph(Role::text, {}, "in the cell", type, 90_mm, 10_pt);
    }
    pen.text(Role::text, {}, "after it", type);
    EXPECT_EQ(tag(0), Tag::cell);
    EXPECT_EQ(tag(1), Tag::paragraph);
}

TEST_F(Parts, AFigureHoldsLinesAndWordsOfAllThatIsInIt) {
    {
        const Scope figure = pen.figure("what it shows");
        pen.line(Role::box, {}, {1_mm, 1_mm}, 1_pt);
        const Scope inner = pen.within(Tag::paragraph);
        pen.text(Role::text, {}, "12", type);
    }
    EXPECT_EQ(read_with(page, page.items[0]), 1U);
    EXPECT_EQ(read_with(page, page.items[1]), 1U);
    EXPECT_EQ(page.structure.at(1).alternative, "what it shows");
}

TEST_F(Parts, AnArtifactIsNotRead) {
    const Scope artifact = pen.within(Tag::artifact);
    pen.text(Role::furniture, {}, "page 1", type);
    EXPECT_EQ(read_with(page, page.items[0]), std::nullopt);
}

TEST_F(Parts, ATableGoesOnUntilSomethingElseIsRead) {
    const auto row = [&] {
        const Scope table = pen.going_on(Tag::table);
        return page.open;
    };
    const std::size_t first = row();
    EXPECT_EQ(row(), first);
    { const Scope artifact = pen.within(Tag::artifact); }
    EXPECT_EQ(row(), first);
    pen.text(Role::text, {}, "between", type);
    EXPECT_NE(row(), first);
}

TEST_F(Parts, TheTitleIsOneHoweverOftenItIsOpened) {
    std::size_t node = 0;
    {
        const Scope title = pen.title();
        node = page.open;
    }
    pen.text(Role::text, {}, "between", type);
    const Scope title = pen.title();
    EXPECT_EQ(page.open, node);
    EXPECT_EQ(page.structure.at(node).tag, Tag::title);
}

std::vector<page::Document> all_documents(const std::string& language) {
    std::vector<page::Document> all;
    for (const auto& sample : tests::sample_folders()) {
        const job::Reading reading = job::read_job(job::load(sample / "job.toml").value());
        all.push_back(make_packet(plan::make_plan(reading.job).value(), kit(language)));
    }
    const job::Media letter = job::find_media("na_letter_8.5x11in").value();
    all.push_back(
        make_field_sheets({Field::arch, Field::wall, Field::ordinates}, letter, measure::Unit::inch, kit(language))
            .document);
    all.push_back(make_printer_check(letter, measure::Unit::inch, kit(language)));
    return all;
}

// ISO 32000-1, tables 336 and 337: what may stand in what.
TEST(Structure, ListsHoldItemsTablesRowsAndRowsCells) {
    const std::map<Tag, std::vector<Tag>> inside{{Tag::list, {Tag::list_item}},
                                                 {Tag::table, {Tag::row}},
                                                 {Tag::row, {Tag::cell, Tag::header_cell, Tag::row_header}}};
    const std::map<Tag, Tag> around{{Tag::list_item, Tag::list}, {Tag::row, Tag::table},
                                    {Tag::cell, Tag::row},       {Tag::header_cell, Tag::row},
                                    {Tag::row_header, Tag::row}, {Tag::title, Tag::section},
                                    {Tag::heading, Tag::section}};
    std::map<Tag, int> seen;
    for (const page::Document& document : all_documents("en"))
        for (const page::Page& page : document.pages)
            for (std::size_t i = 1; i < page.structure.size(); ++i) {
                const page::Node& node = page.structure[i];
                ASSERT_LT(node.parent, i);
                const Tag parent = page.structure[node.parent].tag;
                ++seen[node.tag];
                if (const auto it = around.find(node.tag); it != around.end()) {
                    EXPECT_EQ(parent, it->second) << page.sheet << ' ' << i;
                }
                if (const auto it = inside.find(parent); it != inside.end()) {
                    EXPECT_NE(std::find(it->second.begin(), it->second.end(), node.tag), it->second.end())
                        << page.sheet << ' ' << i;
                }
            }
    for (const Tag tag : {Tag::title, Tag::heading, Tag::paragraph, Tag::list, Tag::list_item, Tag::table, Tag::row,
                          Tag::header_cell, Tag::row_header, Tag::cell, Tag::figure})
        EXPECT_GT(seen[tag], 5) << static_cast<int>(tag);
}

TEST(Structure, RowsOfATableHaveAsManyCells) {
    int tables = 0;
    for (const page::Document& document : all_documents("en"))
        for (const page::Page& page : document.pages) {
            std::map<std::size_t, int> cells;  // of a row
            for (const page::Node& node : page.structure)
                if (page.structure[node.parent].tag == Tag::row) ++cells[node.parent];
            std::map<std::size_t, int> columns;  // of a table
            for (const auto& [row, count] : cells) {
                const auto [table, fresh] = columns.emplace(page.structure[row].parent, count);
                EXPECT_EQ(table->second, count) << page.sheet << " row " << row;
                if (fresh) ++tables;
            }
        }
    EXPECT_GT(tables, 30);
}

TEST(Structure, AChecklistReadsKerfAfterKerf) {
    std::size_t kerfs = 0;
    for (const page::Document& document : all_documents("en")) {
        std::map<std::string, std::size_t> last;  // number read of a piece
        for (const page::Page& page : document.pages) {
            if (page.sheet != "checklist") continue;
            std::map<std::size_t, std::vector<std::string>> items;
            for (const page::TextItem& text : tests::texts(page))
                if (page.structure[text.node].tag == Tag::list_item) items[text.node].push_back(text.text);
            for (const auto& [node, words] : items) {
                ASSERT_GE(words.size(), 3U) << node;
                if (words[0] == "1") last[page.piece] = 0;  // the set of a further board
                EXPECT_EQ(words[0], std::to_string(++last[page.piece])) << node;
                ++kerfs;
            }
        }
    }
    EXPECT_GT(kerfs, 1000U);
}

TEST(Structure, EveryPageHasItsTitleFirst) {
    for (const page::Document& document : all_documents("en"))
        for (const page::Page& page : document.pages) {
            ASSERT_GT(page.structure.size(), 2U) << page.sheet;
            EXPECT_EQ(page.structure[1].tag, Tag::title) << page.sheet;
            const auto words = tests::texts(page);
            EXPECT_TRUE(std::any_of(words.begin(), words.end(), [](const auto& text) { return text.node == 1; }))
                << page.sheet;
        }
}

TEST(Structure, EveryFigureIsSaidInTheWordsOfItsLanguage) {
    const std::vector<page::Document> english = all_documents("en");
    const std::vector<page::Document> spanish = all_documents("es");
    const auto said = [](const std::vector<page::Document>& documents) {
        std::map<std::string, std::vector<std::string>> by_sheet;
        for (const page::Document& document : documents)
            for (const page::Page& page : document.pages)
                for (const page::Node& node : page.structure)
                    if (node.tag == Tag::figure) by_sheet[page.sheet].push_back(node.alternative);
        return by_sheet;
    };
    const auto en = said(english);
    const auto es = said(spanish);
    // An install card is words and a table, a checklist tables, a safety card a list.
    for (const char* sheet : {"cover", "work-order", "setup", "strain", "coupon", "strips", "template", "casing",
                              "form", "survey", "field-arch", "field-wall", "field-ordinates", "printer-check"})
        EXPECT_TRUE(en.contains(sheet)) << sheet;
    for (const auto& [sheet, alternatives] : en)
        for (const std::string& words : alternatives) {
            EXPECT_GT(words.size(), 10U) << sheet;
            const auto& others = es.at(sheet);
            // The check bar's words too differ in the two languages.
            EXPECT_EQ(std::count(others.begin(), others.end(), words), 0) << sheet << ": " << words;
        }
}

TEST(Structure, APageInTheSecondLanguageSaysSo) {
    const page::Document document = make_packet(tests::planned(tests::job_of(tests::alder_court())), kit("en, es"));
    int second = 0;
    for (const page::Page& page : document.pages)
        if (!page.language.empty()) {
            EXPECT_EQ(page.language, "es-US");
            ++second;
        }
    EXPECT_EQ(second, 1);
}

}  // namespace
}  // namespace kerfpacket::sheets
