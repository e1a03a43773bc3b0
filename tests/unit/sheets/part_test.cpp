// A part of a packet printed again: the pages of the whole, stamped.

#include <gtest/gtest.h>

#include <algorithm>

#include "sheets/packet.h"
#include "support/boxes.h"
#include "support/pieces.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

class Reprint : public testing::Test {
protected:
    page::Document part(const Part& wanted) const { return make_packet(plan_, kit(), wanted); }
    static std::vector<std::size_t> numbers(const page::Document& document) {
        std::vector<std::size_t> all;
        for (const page::Page& page : document.pages) all.push_back(page.number);
        return all;
    }
    static plan::Plan stair() {
        plan::Plan plan = planned(job_of(harbor_stair()));
        plan.header.revision = "A";
        return plan;
    }
    const plan::Plan plan_ = stair();
    const page::Document whole_ = make_packet(plan_, kit());
};

TEST_F(Reprint, OfPagesHasThosePages) {
    const page::Document again = part({{}, {{2, 2}, {4, 6}}, {}, {}});
    EXPECT_EQ(numbers(again), (std::vector<std::size_t>{2, 4, 5, 6}));
}

TEST_F(Reprint, OfSheetsHasAllOfTheirPages) {
    const page::Document again = part({{"strips", "checklist"}, {}, {}, {}});
    const auto count = std::count_if(whole_.pages.begin(), whole_.pages.end(), [](const page::Page& page) {
        return page.sheet == "strips" || page.sheet == "checklist";
    });
    EXPECT_EQ(again.pages.size(), static_cast<std::size_t>(count));
    for (const page::Page& page : again.pages) EXPECT_TRUE(page.sheet == "strips" || page.sheet == "checklist");
}

TEST_F(Reprint, ShowsEverythingThatTheWholePacketShowsAndAStampBesides) {
    for (const page::Page& page : part({{"strips", "template", "checklist", "setup"}, {}, {}, {}}).pages) {
        const page::Page& before = whole_.pages.at(page.number - 1);
        ASSERT_EQ(page.items.size(), before.items.size() + 2);
        const auto was = texts(before);
        const auto now = texts(page);
        EXPECT_TRUE(std::equal(was.begin(), was.end(), now.begin(), [](const auto& a, const auto& b) {
            return a.text == b.text && a.anchor == b.anchor && a.size == b.size;
        }));
        EXPECT_EQ(now.back().text, "reprint of page " + std::to_string(page.number) + ", revision A");
        for (const std::string& fault : text_faults(page)) ADD_FAILURE() << fault;
        EXPECT_EQ(paths(page, page::Role::tick).size(), paths(before, page::Role::tick).size());
    }
}

TEST_F(Reprint, FromACutBeginsAtThePageThatCountsIt) {
    const int cut = plan_.pieces.front().blank().kerfs.at(100).n;
    const page::Document again = part({{"checklist"}, {}, cut, {}});
    ASSERT_FALSE(again.pages.empty());
    const auto shows = [&](const page::Page& page) {
        const auto all = texts(page);
        return std::any_of(all.begin(), all.end(), [&](const page::TextItem& text) {
            return text.role == page::Role::numeral && text.text == std::to_string(cut);
        });
    };
    EXPECT_TRUE(shows(again.pages.front()));
    EXPECT_EQ(again.pages.back().number, part({{"checklist"}, {}, {}, {}}).pages.back().number);
    EXPECT_TRUE(part({{}, {}, 10000, {}}).pages.empty());
}

TEST_F(Reprint, OfAStripHasThePageWithIt) {
    const page::Document again = part({{}, {}, {}, 7});
    ASSERT_EQ(again.pages.size(), 1U);
    EXPECT_EQ(again.pages.front().sheet, "strips");
    const auto all = texts(again.pages.front());
    EXPECT_TRUE(std::any_of(all.begin(), all.end(),
                            [](const page::TextItem& text) { return text.text.rfind("Strip 7 of ", 0) == 0; }));
}

TEST_F(Reprint, OnARollIsStampedAtBothEnds) {
    plan::Plan plan = plan_;
    plan.printer.strips = job::find_media("custom_roll_62mm");
    for (const page::Page& page : make_packet(plan, kit(), {{"strips"}, {}, {}, {}}).pages) {
        const auto all = texts(page);
        const std::string stamp = "B  reprint of page " + std::to_string(page.number) + ", revision A";
        EXPECT_EQ(std::count_if(all.begin(), all.end(), [&](const auto& text) { return text.text == stamp; }), 2);
        EXPECT_NEAR(page.width.mm(), 62, 1e-9);
        for (const std::string& fault : text_faults(page, 4_pt)) ADD_FAILURE() << fault;
    }
}

TEST_F(Reprint, LinksAndBookmarksLeadToPagesThatAreThere) {
    const page::Document again = part({{"cover", "checklist"}, {}, {}, {}});
    int links = 0;
    for (const page::Page& page : again.pages)
        for (const page::Item& item : page.items)
            if (const auto* link = std::get_if<page::LinkItem>(&item)) {
                ++links;
                ASSERT_LT(link->page, again.pages.size());
                EXPECT_EQ(again.pages[link->page].sheet, "checklist");
            }
    EXPECT_EQ(links, 1);
    for (const page::OutlineEntry& entry : again.outline) EXPECT_LT(entry.page, again.pages.size());
    EXPECT_EQ(again.outline.size(), 2U);
}

}  // namespace
}  // namespace kerfpacket::sheets
