// The checklist in two languages: nothing that is said in a block leaves it, and there is room to write in.

#include <gtest/gtest.h>

#include <algorithm>

#include "sheets/strips/checklist.h"
#include "support/boxes.h"
#include "support/pieces.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

/// The frames of the blocks: higher and wider than a box to tick.
std::vector<geom::Rect> blocks_on(const page::Page& page) {
    std::vector<geom::Rect> found;
    for (const page::PathItem& item : paths(page, page::Role::box))
        if (item.path.closed() && item.path.bounds().width() > 100_pt) found.push_back(item.path.bounds());
    return found;
}

class Checklist : public testing::TestWithParam<const char*> {};

TEST_P(Checklist, KeepsItsWordsInTheirBlock) {
    std::size_t blocks_seen = 0;
    for (const Case& one : spread_of_cases()) {
        SCOPED_TRACE(one.name);
        const plan::Plan plan = planned(one.job, one.media.c_str());
        for (plan::Piece piece : plan.pieces) {
            piece.quantity = 1;
            Drafts drafts;
            add_checklist(drafts, plan, piece, kit(GetParam()));
            for (const Draft& draft : drafts) {
                const std::vector<geom::Rect> blocks = blocks_on(draft.page);
                ASSERT_FALSE(blocks.empty());
                blocks_seen += blocks.size();
                for (const page::TextItem& text : texts(draft.page)) {
                    const geom::Rect box = box_of(text);
                    for (const geom::Rect& block : blocks) {
                        if (!overlap(box, block)) continue;
                        EXPECT_TRUE(block.grown(0.01_pt).contains(box.low) && block.grown(0.01_pt).contains(box.high))
                            << placed(text);
                    }
                }
                // The lowest line of each block that is written on is long enough for a hand.
                for (const geom::Rect& block : blocks) {
                    const page::PathItem* lowest = nullptr;
                    const std::vector<page::PathItem> lines = paths(draft.page, page::Role::box);
                    for (const page::PathItem& line : lines)
                        if (!line.path.closed() && block.contains(line.path.start()) &&
                            (lowest == nullptr || line.path.start().y < lowest->path.start().y))
                            lowest = &line;
                    ASSERT_NE(lowest, nullptr);
                    EXPECT_GE(lowest->path.length().points(), 25.9);
                    EXPECT_TRUE(block.contains(lowest->path.end()));
                }
            }
        }
    }
    EXPECT_GT(blocks_seen, 50U);
}

INSTANTIATE_TEST_SUITE_P(Languages, Checklist, testing::Values("en", "es", "en, es", "es, en"), [](const auto& one) {
    std::string name = one.param;
    std::replace_if(
        name.begin(), name.end(), [](char c) { return c == ',' || c == ' '; }, '_');
    return name;
});

}  // namespace
}  // namespace kerfpacket::sheets
