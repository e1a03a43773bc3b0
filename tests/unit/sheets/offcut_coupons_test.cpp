// Coupons named in the offcuts of the stock plan: what is named finds room there, and none is forgotten.

#include "sheets/stock/offcut_coupons.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <map>
#include <vector>

#include "job/read.h"
#include "plan/plan.h"
#include "sheets/cards/coupon_size.h"

namespace kerfpacket::sheets {
namespace {

plan::Plan plan_of(const std::string& path) {
    const std::filesystem::path file = std::filesystem::path(KERFPACKET_SOURCE_DIR) / path;
    return plan::make_plan(job::read_job(job::load(file).value()).job).value();
}

int count_of(const std::vector<Coupons>& all) {
    int count = 0;
    for (const Coupons& one : all) count += one.count;
    return count;
}

/// What is left when they are sawn off one after the other, a kerf after each.
measure::Length after(measure::Length offcut, const std::vector<Coupons>& all, measure::Length kerf) {
    for (const Coupons& one : all) offcut = offcut - (one.length + kerf) * one.count;
    return offcut;
}

TEST(OffcutCoupons, FindRoomAndNoneIsForgotten) {
    int named = 0;
    int left = 0;
    for (const char* path : {"tests/golden/moulded.toml", "out-samples/alder-court/job.toml"}) {
        const plan::Plan plan = plan_of(path);
        ASSERT_TRUE(plan.stock_plan) << path;
        const measure::Length kerf = plan.stock_plan->kerf;
        std::map<std::string, int> of_piece;
        for (const plan::StockSection& section : plan.stock_plan->sections) {
            const OffcutCoupons coupons = offcut_coupons(plan, section);
            ASSERT_EQ(coupons.of_sticks.size(), section.sticks.size());
            for (std::size_t i = 0; i < section.sticks.size(); ++i) {
                const measure::Length rest = after(section.sticks[i].offcut, coupons.of_sticks[i], kerf);
                // The kerf after the last one may run out of the wood.
                EXPECT_GE(rest.mm(), -kerf.mm() - 1e-9) << path << " board " << i;
                for (const Coupons& one : coupons.no_offcut) EXPECT_LT(rest.mm(), one.length.mm()) << one.piece;
                for (const Coupons& one : coupons.of_sticks[i]) of_piece[one.piece] += one.count;
                named += count_of(coupons.of_sticks[i]);
            }
            for (const Coupons& one : coupons.no_offcut) of_piece[one.piece] += one.count;
            left += count_of(coupons.no_offcut);
        }
        for (const auto& [piece, count] : of_piece) EXPECT_EQ(count, coupons_of_board) << piece;
    }
    EXPECT_GT(named, 0);
    EXPECT_GT(left, 0);
}

}  // namespace
}  // namespace kerfpacket::sheets
