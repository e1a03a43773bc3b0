// Coupons named in the offcuts of the stock plan: what is named finds room there, and none is forgotten.

#include "sheets/stock/offcut_coupons.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <vector>

#include "../../support/kit.h"
#include "job/read.h"
#include "plan/plan.h"
#include "sheets/cards/coupon_size.h"
#include "sheets/packet.h"

namespace kerfpacket::sheets {
namespace {

plan::Plan plan_of(const std::string& path) {
    const std::filesystem::path file = std::filesystem::path(KERFPACKET_SOURCE_DIR) / path;
    return plan::make_plan(job::read_job(job::load(file).value()).job).value();
}

plan::Plan plan_of_text(const std::string& pieces) {
    return plan::make_plan(job::read_job({"job.toml",
                                          "[job]\nnumber = \"7\"\ntitle = \"t\"\nrevision = \"A\"\n"
                                          "date = 2026-11-28\nunits = \"in\"\n[saw]\n"
                                          "blade_diameter = 10\nkerf = 0.087\n" +
                                              pieces})
                               .job)
        .value();
}

/// A lancet of two boards that are mirror images.
const std::string lancet =
    "[[opening]]\nid = \"L\"\nshape = \"pointed\"\nspan = \"26 in\"\nradius = \"30 in\"\nmeasured_to = \"finish\"\n"
    "depth = \"2 5/8 in\"\n[opening.liner]\nmaterial = \"mdf\"\nthickness = \"1/4 in\"\n";

/// An arch, kerfed as deep as it is told.
std::string arch(const std::string& id, const std::string& depth) {
    return "[[opening]]\nid = \"" + id +
           "\"\nshape = \"segmental\"\nspan = \"58 3/4 in\"\nrise = \"6 in\"\ndepth = \"4 9/16 in\"\n[opening.liner]\n"
           "material = \"mdf\"\nthickness = \"3/4 in\"\nkerf_depth = \"" +
           depth + "\"\nspacing = \"1/2 in\"\n";
}

/// What the records of a packet ask for: three for each page that says so.
int asked_on_paper(const plan::Plan& plan) {
    int count = 0;
    for (const page::Page& page : make_packet(plan, tests::kit()).pages)
        for (const page::TextItem& item : tests::texts(page))
            if (item.text == "Make three, from the same board") count += 3;
    return count;
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
        const std::vector<OffcutCoupons> of_sections = offcut_coupons(plan, tests::kit());
        ASSERT_EQ(of_sections.size(), plan.stock_plan->sections.size());
        for (std::size_t at = 0; at < of_sections.size(); ++at) {
            const plan::StockSection& section = plan.stock_plan->sections[at];
            const OffcutCoupons& coupons = of_sections[at];
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

/// Two mirror images have one record, and so has what is alike; boards of another depth have their own.
TEST(OffcutCoupons, AreAsManyAsTheRecordsAskFor) {
    const std::vector<std::pair<std::string, int>> jobs{{lancet, 3},
                                                        {arch("A", "3/8 in") + arch("B", "3/8 in"), 3},
                                                        {arch("A", "3/8 in") + arch("B", "11/32 in"), 6},
                                                        {lancet + arch("A", "3/8 in"), 6}};
    for (const auto& [text, wanted] : jobs) {
        const plan::Plan plan = plan_of_text(text);
        ASSERT_TRUE(plan.stock_plan) << text;
        int planned = 0;
        const std::vector<OffcutCoupons> of_sections = offcut_coupons(plan, tests::kit());
        ASSERT_EQ(of_sections.size(), plan.stock_plan->sections.size());
        for (const OffcutCoupons& coupons : of_sections) {
            for (const std::vector<Coupons>& stick : coupons.of_sticks) planned += count_of(stick);
            planned += count_of(coupons.no_offcut);
        }
        EXPECT_EQ(asked_on_paper(plan), wanted) << text;
        EXPECT_EQ(planned, wanted) << text;
        EXPECT_EQ(coupons_asked(plan, tests::kit()), wanted) << text;
    }
}

/// A ticket does not tell to keep what its coupons take.
TEST(OffcutCoupons, LeaveTheRestOfTheirOffcut) {
    const plan::Plan plan = plan_of("out-samples/alder-court/job.toml");
    const measure::Length kerf = plan.stock_plan->kerf;
    int cut = 0;
    const std::vector<OffcutCoupons> of_sections = offcut_coupons(plan, tests::kit());
    ASSERT_EQ(of_sections.size(), plan.stock_plan->sections.size());
    for (std::size_t at = 0; at < of_sections.size(); ++at) {
        const plan::StockSection& section = plan.stock_plan->sections[at];
        const OffcutCoupons& coupons = of_sections[at];
        ASSERT_EQ(coupons.rest.size(), section.sticks.size());
        for (std::size_t i = 0; i < section.sticks.size(); ++i) {
            const measure::Length left = after(section.sticks[i].offcut, coupons.of_sticks[i], kerf);
            EXPECT_NEAR(coupons.rest[i].mm(), std::max(0.0, left.mm()), 1e-9);
            cut += count_of(coupons.of_sticks[i]);
        }
    }
    EXPECT_GT(cut, 0);
}

}  // namespace
}  // namespace kerfpacket::sheets
