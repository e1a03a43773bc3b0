// How the kerfs are spread over the pages of a checklist.

#include "sheets/strips/checklist.h"

#include <gtest/gtest.h>

#include "support/kit.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

TEST(Checklist, NoHandfulOfKerfsStandsAloneOnTheLastPage) {
    std::size_t lists = 0;
    for (const char* language : {"en", "en, es"})
        for (const char* media : {"na_letter_8.5x11in", "iso_a4_210x297mm"})
            for (int count = 55; count < 300; count += count % 10 == 9 ? 2 : 7) {
                job::Wall wall = harbor_stair();
                wall.chord.reset();
                wall.rise.reset();
                wall.radius = at_line(300_in, 12);
                wall.angle = at_line(measure::Angle::radians(0.5 * count / 300), 13);
                const plan::Plan plan = planned(job_of(wall), media);
                const plan::Piece& piece = plan.pieces.front();
                Drafts drafts;
                add_checklist(drafts, plan, piece, kit(language));
                ++lists;
                ASSERT_FALSE(drafts.empty());
                int next = 1;
                for (const Draft& draft : drafts) {
                    EXPECT_EQ(draft.kerfs.first, next);
                    next = draft.kerfs.last + 1;
                    EXPECT_TRUE(drafts.size() == 1 || draft.kerfs.last - draft.kerfs.first + 1 > 10)
                        << piece.blank().kerfs.size() << " kerfs on " << drafts.size() << " pages";
                }
                EXPECT_EQ(static_cast<std::size_t>(next - 1), piece.blank().kerfs.size());
            }
    EXPECT_GT(lists, 100U);
}

}  // namespace
}  // namespace kerfpacket::sheets
