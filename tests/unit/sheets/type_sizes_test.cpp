// A shop that wants larger type in layout.toml gets more pages: nothing meets, and nothing leaves the paper.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "../../support/languages.h"
#include "job/read.h"
#include "plan/plan.h"
#include "sheets/layout/flow.h"
#include "sheets/packet.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

/// The kinds of sheet that are words and tables.
const std::vector<std::string> poured{"changes", "safety", "install",    "cover", "setup",  "survey",
                                      "coupon",  "strain", "work-order", "stock", "refused"};

fonts::Style with_text(measure::Length text) {
    fonts::Style style = tests::kit().style;
    const double scale = text / style.text;
    style.small = std::max(8_pt, style.small * scale);
    style.strong = style.strong * scale;
    style.text = text;
    return style;
}

plan::Plan sample(const char* name) {
    const std::filesystem::path file = std::filesystem::path(KERFPACKET_SOURCE_DIR) / "out-samples" / name / "job.toml";
    return plan::make_plan(job::read_job(job::load(file).value()).job).value();
}

class TypeSizes : public testing::TestWithParam<std::tuple<std::string, int>> {};

TEST_P(TypeSizes, make_more_pages_and_nothing_meets) {
    const auto [language, points] = GetParam();
    const fonts::Style style = with_text(measure::Length::points(points));
    const Kit& usual = tests::kit(language);
    const Kit kit{usual.faces, usual.words, style, usual.second_words};
    int pages = 0;
    for (const char* name : {"mill-lane", "harbor-stair", "kiln-yard"}) {
        plan::Plan plan = sample(name);
        const std::vector<job::Value> asked{{"wall", "R", "radius", {{measure::Length::inches(112)}}}};
        plan.refused.push_back(
            {"R",
             plan::Kind::wall_board,
             asked,
             {{job::Severity::refused,
               {14, 1},
               job::say("by_coupons",
                        "piece {piece} will likely break: by the coupons and trials that count, more than 1 in 10 "
                        "boards like this would",
                        {{"piece", std::string("R")}}),
               job::say("askew_beyond_do",
                        "would do: a saw on a rail that is set by the marks, one stroke a kerf, or a wall that climbs "
                        "less steeply")}}});
        plan::Plan before = plan;
        before.header.revision = "0";
        for (plan::Piece& piece : before.pieces) piece.whole.length += 1_mm;
        const std::vector<job::Value> nothing;
        for (const page::Page& page : make_packet({plan, nothing}, {before, nothing}, kit, {}).pages) {
            if (std::find(poured.begin(), poured.end(), page.sheet) == poured.end()) continue;
            // A coupon's strip is no words and tables: like a board's it keeps its heights.
            if (!tests::paths(page, page::Role::tick).empty()) continue;
            ++pages;
            for (const std::string& fault : tests::text_faults(page, 18_pt, 18_pt))
                ADD_FAILURE() << name << ", " << page.sheet << ": " << fault;
        }
    }
    EXPECT_GE(pages, points > 12 ? 13 : 12);
}

INSTANTIATE_TEST_SUITE_P(Both, TypeSizes,
                         testing::Combine(testing::ValuesIn(tests::languages()), testing::Values(9, 12, 16)));

/// An empty page of Letter.
Draft letter(bool first) {
    Draft draft;
    draft.page.width = 8.5_in;
    draft.page.height = 11_in;
    draft.outline = first ? "first" : "";
    return draft;
}

TEST(Flow, goes_on_to_a_further_page_and_keeps_a_heading_with_what_follows) {
    Drafts drafts;
    Flow flow(drafts, tests::kit(), letter);
    flow.take(flow.room() - 30_pt);
    flow.heading("Heading");
    flow.paragraph(Role::text, "What follows it.", {Face::regular, tests::kit().style.text});
    ASSERT_EQ(drafts.size(), 2U);
    EXPECT_TRUE(tests::texts(drafts[0].page).empty());
    ASSERT_EQ(tests::texts(drafts[1].page).size(), 2U);
    EXPECT_EQ(tests::texts(drafts[1].page)[0].text, "Heading");
    EXPECT_THROW(flow.take(11_in), DoesNotFit);
}

TEST(Flow, leaves_white_only_between_blocks) {
    Drafts drafts;
    Flow flow(drafts, tests::kit(), letter);
    const Length top = flow.y();
    flow.skip(10_pt);
    EXPECT_EQ(flow.y(), top);
    flow.take(30_pt);
    flow.skip(10_pt);
    flow.take(30_pt);
    EXPECT_NEAR((top - flow.y()).points(), 70, 1e-9);
}

TEST(Flow, goes_on_from_where_a_picture_ended) {
    Drafts drafts;
    Flow flow(drafts, tests::kit(), letter);
    flow.take(flow.room() - 100_pt);
    flow.picture(120_pt, [](Pen&, const Rect& room) { return room.high.y - 50_pt; });
    ASSERT_EQ(drafts.size(), 2U) << "it might have come down so far";
    EXPECT_NEAR((flow.room() + 50_pt).points(), Flow(drafts, tests::kit(), letter).room().points(), 1e-9);
}

TEST(Flow, a_blank_stands_at_the_end_of_the_last_line) {
    Drafts drafts;
    Flow flow(drafts, tests::kit(), letter);
    std::string words;
    for (int i = 0; i < 40; ++i) words += "measure ";
    flow.item(Role::text, words, {Face::regular, tests::kit().style.text}, Blank{"at", 60_pt, "mm"});
    const std::vector<page::TextItem> texts = tests::texts(drafts[0].page);
    ASSERT_GE(texts.size(), 4U);
    const page::TextItem& unit = texts.back();
    const page::TextItem& line = texts[texts.size() - 3];
    EXPECT_EQ(unit.text, "mm");
    EXPECT_EQ(unit.anchor.y, line.anchor.y);
    EXPECT_LT(line.anchor.y, texts.front().anchor.y);
    EXPECT_TRUE(tests::text_faults(drafts[0].page, 18_pt, 18_pt).empty());
}

TEST(FlowTable, says_its_heads_again_on_a_further_page) {
    Drafts drafts;
    Flow flow(drafts, tests::kit(), letter);
    FlowTable table(flow, {{"what", 0.5}, {"how", 0.5}});
    for (int i = 0; i < 60; ++i) table.row({std::to_string(i), "a value"});
    ASSERT_GE(drafts.size(), 2U);
    for (const Draft& draft : drafts) {
        EXPECT_EQ(tests::texts(draft.page)[0].text, "what");
        EXPECT_EQ(tests::texts(draft.page)[1].text, "how");
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
