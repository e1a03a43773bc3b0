#include "geom/outside.h"

#include <cmath>

#include <gtest/gtest.h>

namespace kerfpacket::geom {
namespace {

using namespace measure::literals;

TEST(Outside, KeepsWhatNoAreaHides) {
    const Point a{0_mm, 0_mm}, b{10_mm, 0_mm};
    const auto parts = outside(a, b, {{{2_mm, -1_mm}, {4_mm, 1_mm}}, {{3_mm, -1_mm}, {5_mm, 1_mm}}});
    ASSERT_EQ(parts.size(), 2U);
    EXPECT_EQ(parts[0].start(), a);
    EXPECT_NEAR(parts[0].end().x.mm(), 2, 1e-9);
    EXPECT_NEAR(parts[1].start().x.mm(), 5, 1e-9);
    EXPECT_NEAR(parts[1].end().x.mm(), 10, 1e-9);
}

TEST(Outside, ASlantedLineLosesWhatIsInside) {
    const auto parts = outside({0_mm, 10_mm}, {10_mm, 0_mm}, {{{4_mm, 0_mm}, {6_mm, 20_mm}}});
    ASSERT_EQ(parts.size(), 2U);
    EXPECT_NEAR(parts[0].end().y.mm(), 6, 1e-9);
    EXPECT_NEAR(parts[1].start().y.mm(), 4, 1e-9);
}

TEST(Outside, NothingIsLeftOfALineThatIsAllInside) {
    EXPECT_TRUE(outside({1_mm, 1_mm}, {2_mm, 1_mm}, {{{0_mm, 0_mm}, {9_mm, 9_mm}}}).empty());
}

TEST(Outside, AnAreaThatIsOnlyTouchedHidesNothing) {
    const Rect area{{0_mm, 0_mm}, {9_mm, 9_mm}};
    for (const Length along : {0_mm, 9_mm}) {
        const auto parts = outside({along, -5_mm}, {along, 20_mm}, {area});
        ASSERT_EQ(parts.size(), 1U);
        EXPECT_NEAR(parts[0].length().mm(), 25, 1e-9);
    }
    EXPECT_EQ(outside({20_mm, 0_mm}, {30_mm, 0_mm}, {area}).size(), 1U);
}

TEST(PartWhere, IsWhatAConditionLeavesOfALine) {
    const Point a{0_mm, 0_mm}, b{10_mm, 10_mm};
    const auto low = [](Point p) { return p.y < 4_mm; };
    const auto part = part_where(a, b, low);
    ASSERT_TRUE(part);
    EXPECT_EQ(part->start(), a);
    EXPECT_NEAR(part->end().x.mm(), 4, 1e-9);
    const auto back = part_where(b, a, low);
    ASSERT_TRUE(back);
    EXPECT_NEAR(back->start().x.mm(), 4, 1e-9);
    EXPECT_EQ(back->end(), a);
    EXPECT_FALSE(part_where(a, b, [](Point) { return false; }));
    EXPECT_NEAR(part_where(a, b, [](Point) { return true; })->length().mm(), std::sqrt(200), 1e-9);
}

}  // namespace
}  // namespace kerfpacket::geom
