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

/// Boxes to tick in the rows of kerfs: larger than those below every ten.
std::size_t boxes_of_rows(const page::Page& page) {
    const auto all = paths(page, page::Role::box);
    return static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [](const page::PathItem& item) {
        const geom::Rect box = item.path.bounds();
        return item.path.closed() && box.width() > 12.9_pt && box.width() < 16_pt &&
               measure::abs(box.width() - box.height()) < 0.01_pt;
    }));
}

// Each board has a box at every kerf once, whether it has a list of its own or shares one.
TEST_P(Checklist, HasABoxForEveryKerfOfEveryBoard) {
    std::size_t shared = 0;
    const std::vector<Case> cases = spread_of_cases();
    for (std::size_t i = 0; i < cases.size(); i += 3) {
        const Case& one = cases[i];
        const plan::Plan plan = planned(one.job, one.media.c_str());
        for (plan::Piece piece : plan.pieces)
            for (const int quantity : {2, 3, 7}) {
                SCOPED_TRACE(one.name + " x " + std::to_string(quantity));
                piece.quantity = quantity;
                Drafts drafts;
                add_checklist(drafts, plan, piece, kit(GetParam()));
                const bool one_set = plan.packet.one_set;
                std::size_t boxes = 0;
                int board = 0;
                for (const Draft& draft : drafts) {
                    const ForBoards& boards = draft.boards;
                    EXPECT_EQ(boards.of, quantity);
                    if (!one_set && boards.n != board) { EXPECT_EQ(boards.n, board == 0 ? 1 : board + 1); }
                    if (!one_set && draft.kerfs.last == piece.blank().kerfs.back().n) board = boards.last;
                    shared += boards.count() > 1 ? 1U : 0U;
                    boxes += boxes_of_rows(draft.page);
                    for (const std::string& fault : text_faults(draft.page)) ADD_FAILURE() << fault;
                }
                EXPECT_EQ(boxes, piece.blank().kerfs.size() * static_cast<std::size_t>(one_set ? 1 : quantity));
            }
    }
    EXPECT_GT(shared, 10U);
}

TEST_P(Checklist, KeepsItsWordsInTheirBlock) {
    std::size_t blocks_seen = 0;
    for (const Case& one : spread_of_cases()) {
        SCOPED_TRACE(one.name);
        const plan::Plan plan = planned(one.job, one.media.c_str());
        for (plan::Piece piece : plan.pieces) {
            piece.quantity = blocks_seen % 2 == 0 ? 1 : 3;
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
