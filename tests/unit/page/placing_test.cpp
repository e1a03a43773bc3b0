#include "page/placing.h"

#include <gtest/gtest.h>

namespace kerfpacket::page {
namespace {

using namespace measure::literals;

Page sample() {
    Page page;
    page.width = 10_in;
    page.height = 3_in;
    PathItem arc;
    arc.path = geom::Path::arc({1_in, 1_in}, {3_in, 1_in}, Angle::degrees(-60));
    page.items.emplace_back(arc);
    TextItem text;
    text.text = "12";
    text.anchor = {2_in, 0.5_in};
    text.angle = Angle::degrees(10);
    page.items.emplace_back(text);
    page.items.emplace_back(LinkItem{{{4_in, 1_in}, {6_in, 2_in}}, 3});
    return page;
}

void expect_near(Point a, Point b) {
    EXPECT_NEAR(a.x.mm(), b.x.mm(), 1e-9);
    EXPECT_NEAR(a.y.mm(), b.y.mm(), 1e-9);
}

TEST(Placing, MovesEverythingAlike) {
    Page page = sample();
    move(page, {0.25_in, 0.5_in});
    const geom::Path& arc = std::get<PathItem>(page.items[0]).path;
    expect_near(arc.start(), {1.25_in, 1.5_in});
    expect_near(arc.end(), {3.25_in, 1.5_in});
    EXPECT_NEAR(arc.turn().degrees(), -60, 1e-12);
    expect_near(std::get<TextItem>(page.items[1]).anchor, {2.25_in, 1_in});
    EXPECT_NEAR(std::get<TextItem>(page.items[1]).angle.degrees(), 10, 1e-12);
    expect_near(std::get<LinkItem>(page.items[2]).area.high, {6.25_in, 2.5_in});
}

TEST(Placing, ATurnedPageIsAsWideAsItWasHighAndLosesNothing) {
    Page page = sample();
    const auto before = std::get<PathItem>(page.items[0]).path;
    turn_left(page);
    EXPECT_EQ(page.width, 3_in);
    EXPECT_EQ(page.height, 10_in);
    const geom::Path& arc = std::get<PathItem>(page.items[0]).path;
    // 1 in from the left and from below: now 1 in from below, and 1 in from the right edge.
    expect_near(arc.start(), {2_in, 1_in});
    expect_near(arc.end(), {2_in, 3_in});
    EXPECT_NEAR(arc.length().mm(), before.length().mm(), 1e-9);
    // A turn, not a mirror image: the arc still bends the same way.
    EXPECT_NEAR(arc.turn().degrees(), -60, 1e-12);
    EXPECT_NEAR(std::get<TextItem>(page.items[1]).angle.degrees(), 100, 1e-12);
    const Rect area = std::get<LinkItem>(page.items[2]).area;
    expect_near(area.low, {1_in, 4_in});
    expect_near(area.high, {2_in, 6_in});
}

TEST(Placing, ACodesCellsTurnWithThePage) {
    Page page = sample();
    CodeItem code;
    code.area = {{1_in, 0.5_in}, {1.5_in, 1_in}};
    code.side = 2;
    code.dark = {true, false, false, false};  // upper left
    page.items.emplace_back(code);
    turn_left(page);
    const auto& turned = std::get<CodeItem>(page.items.back());
    expect_near(turned.area.low, {2_in, 1_in});
    expect_near(turned.area.high, {2.5_in, 1.5_in});
    EXPECT_EQ(turned.dark, (std::vector<bool>{false, false, true, false}));  // lower left
}

TEST(Placing, CorrectionStretchesAboutTheMiddle) {
    Page page = sample();
    page.correction = {1.004, 0.998};
    expect_near(corrected(page, {5_in, 1.5_in}), {5_in, 1.5_in});
    expect_near(corrected(page, {10_in, 0_in}), {5_in + 5_in * 1.004, 1.5_in - 1.5_in * 0.998});
    page.correction = {};
    const Point odd{0.1_in, 1.7_in};
    EXPECT_EQ(corrected(page, odd), odd);
}

}  // namespace
}  // namespace kerfpacket::page
