// A coupon's marks as its record prints them: as far apart as its words say, from the zero end, on any strip and paper.

#include <gtest/gtest.h>

#include "sheets/cards/coupon_sheet.h"
#include "sheets/cards/coupon_size.h"
#include "strip_pages.h"
#include "support/pieces.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

/// The pages of a coupon record that hold its strips, finished.
std::vector<page::Page> coupon_strips(const plan::Plan& plan, const plan::Piece& piece) {
    Drafts drafts;
    add_coupon_sheet(drafts, plan, piece, kit());
    std::vector<page::Page> pages;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        EXPECT_EQ(drafts[i].page.sheet, "coupon");
        if (drafts[i].scale != Scale::full) continue;
        add_furniture(drafts[i], plan, kit(), i + 1, drafts.size());
        pages.push_back(std::move(drafts[i].page));
    }
    return pages;
}

/// The test of one kerf takes two of the coupon's ticks: one with room for a clamp beside it, one about a foot away.
void expect_one_kerf_marks(const plan::Plan& plan, const plan::Piece& piece, const plan::Piece& board) {
    const std::vector<plan::Kerf>& kerfs = board.blank().kerfs;
    const OneKerf test = one_kerf_test(piece, coupon_size(piece, plan.header.units), plan.header.units);
    ASSERT_GE(test.kerf, 1);
    ASSERT_LT(test.kerf, test.raised);
    ASSERT_LE(test.raised, static_cast<int>(kerfs.size()));
    const plan::Kerf& cut = kerfs[static_cast<std::size_t>(test.kerf) - 1];
    const plan::Kerf& raised = kerfs[static_cast<std::size_t>(test.raised) - 1];
    EXPECT_NEAR(test.away.mm(), (raised.mark - cut.at).mm(), 0.26);
    EXPECT_LE(test.away, 13.6_in);
    if (test.raised < static_cast<int>(kerfs.size())) { EXPECT_GE(test.away, 10.4_in); }
    if (kerfs.size() > 3) { EXPECT_GE(cut.at, 2.95_in); }
}

void expect_coupon_marks(const plan::Plan& plan, const plan::Piece& piece) {
    const CouponSize size = coupon_size(piece, plan.header.units);
    const plan::Piece board = coupon_board(piece, size, "coupon");
    expect_one_kerf_marks(plan, piece, board);
    const std::vector<plan::Kerf>& kerfs = board.blank().kerfs;
    ASSERT_EQ(kerfs.size(), static_cast<std::size_t>(size.kerfs));
    for (std::size_t i = 1; i < kerfs.size(); ++i) {
        EXPECT_EQ(kerfs[i].n, kerfs[i - 1].n + 1);
        EXPECT_NEAR((kerfs[i].mark - kerfs[i - 1].mark).mm(), size.spacing.mm(), 1e-9);
    }
    // As far from one end as from the other.
    EXPECT_NEAR(kerfs.front().at.mm(), (size.length - kerfs.back().at).mm(), 1e-9);
    const std::vector<page::Page> pages = coupon_strips(plan, piece);
    ASSERT_FALSE(pages.empty());
    expect_marks_from_zero(pages, board);
    for (const page::Page& page : pages) {
        expect_joints_hide_nothing(page);
        if (piece.strip == job::StripOn::face) expect_numerals_of_13_pt(page);
        for (const page::TextItem& text : texts(page))
            EXPECT_TRUE(text.text.find("BEND STARTS") == std::string::npos &&
                        text.text.find("BEND ENDS") == std::string::npos)
                << "a coupon bends from end to end: " << text.text;
    }
}

TEST(CouponStrip, MarksStandAsFarApartAsTheRecordSays) {
    for (const Case& one : spread_of_cases()) {
        SCOPED_TRACE(one.name);
        const plan::Plan plan = planned(one.job, one.media.c_str());
        for (const plan::Piece& piece : plan.pieces) expect_coupon_marks(plan, piece);
    }
}

TEST(CouponStrip, OfEveryShapeZeroTickAndStrip) {
    for (const job::StripOn strip : {job::StripOn::face, job::StripOn::edge})
        for (const job::Tick tick : {job::Tick::centre, job::Tick::left, job::Tick::right})
            for (const char* media : {"na_letter_8.5x11in", "iso_a4_210x297mm"}) {
                const plan::Plan plan = planned(every_shape(), media);
                for (plan::Piece piece : plan.pieces) {
                    SCOPED_TRACE(piece.id + " on " + media);
                    piece.strip = strip;
                    piece.tick = tick;
                    expect_coupon_marks(plan, piece);
                }
            }
}

}  // namespace
}  // namespace kerfpacket::sheets
