// A shop that wants larger type in layout.toml gets more pages: nothing meets, and nothing leaves the paper.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>

#include "../../support/boxes.h"
#include "../../support/kit.h"
#include "job/read.h"
#include "plan/plan.h"
#include "sheets/layout/flow.h"
#include "sheets/packet.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

/// The kinds of sheet that are words and tables.
const std::vector<std::string> poured{"changes", "safety", "install"};

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

class TypeSizes : public testing::TestWithParam<std::tuple<const char*, int>> {};

TEST_P(TypeSizes, make_more_pages_and_nothing_meets) {
    const auto [language, points] = GetParam();
    const fonts::Style style = with_text(measure::Length::points(points));
    const Kit& usual = tests::kit(language);
    const Kit kit{usual.faces, usual.words, style, usual.second_words};
    int pages = 0;
    for (const char* name : {"mill-lane", "harbor-stair", "kiln-yard"}) {
        const plan::Plan plan = sample(name);
        plan::Plan before = plan;
        before.header.revision = "0";
        for (plan::Piece& piece : before.pieces) piece.blank_length += 1_mm;
        const std::string text;
        for (const page::Page& page : make_packet({plan, text}, {before, text}, kit, {}).pages) {
            if (std::find(poured.begin(), poured.end(), page.sheet) == poured.end()) continue;
            ++pages;
            for (const std::string& fault : tests::text_faults(page, 18_pt, 18_pt))
                ADD_FAILURE() << name << ", " << page.sheet << ": " << fault;
        }
    }
    EXPECT_GE(pages, points > 12 ? 10 : 9);
}

INSTANTIATE_TEST_SUITE_P(Both, TypeSizes, testing::Combine(testing::Values("en", "es"), testing::Values(9, 12, 16)));

TEST(Flow, goes_on_to_a_further_page_and_keeps_a_heading_with_what_follows) {
    Drafts drafts;
    Flow flow(drafts, tests::kit(), [](bool first) {
        Draft draft;
        draft.page.width = 8.5_in;
        draft.page.height = 11_in;
        draft.outline = first ? "first" : "";
        return draft;
    });
    flow.take(flow.room() - 30_pt);
    flow.heading("Heading");
    flow.paragraph(Role::text, "What follows it.", {Face::regular, tests::kit().style.text});
    ASSERT_EQ(drafts.size(), 2U);
    EXPECT_TRUE(tests::texts(drafts[0].page).empty());
    ASSERT_EQ(tests::texts(drafts[1].page).size(), 2U);
    EXPECT_EQ(tests::texts(drafts[1].page)[0].text, "Heading");
    EXPECT_THROW(flow.take(11_in), DoesNotFit);
}

TEST(Flow, keeps_blocks_together_and_leaves_white_only_between_them) {
    Drafts drafts;
    Flow flow(drafts, tests::kit(), [](bool) {
        Draft draft;
        draft.page.width = 8.5_in;
        draft.page.height = 11_in;
        return draft;
    });
    const Length top = flow.y();
    flow.skip(10_pt);
    EXPECT_EQ(flow.y(), top);
    flow.take(flow.room() - 50_pt);
    flow.together([](Flow& part) {
        part.take(30_pt);
        part.take(30_pt);
    });
    EXPECT_EQ(drafts.size(), 2U);
    EXPECT_NEAR((top - flow.y()).points(), 60, 1e-9);
}

TEST(FlowTable, says_its_heads_again_on_a_further_page) {
    Drafts drafts;
    Flow flow(drafts, tests::kit(), [](bool) {
        Draft draft;
        draft.page.width = 8.5_in;
        draft.page.height = 11_in;
        return draft;
    });
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
