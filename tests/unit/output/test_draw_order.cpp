#include "output/draw_order.h"

#include <string>

#include <gtest/gtest.h>

namespace kerfpacket::output {
namespace {

using namespace measure::literals;

page::PathItem line(page::Length width, page::Ink ink = page::Ink::black) {
    page::PathItem item{page::Role::outline, geom::Path::line({0_mm, 0_mm}, {1_mm, 0_mm}), width};
    item.ink = ink;
    return item;
}

page::PathItem area() {
    page::PathItem item = line({});
    item.filled = true;
    return item;
}

page::TextItem text(const std::string& words, page::Ink ink = page::Ink::black) {
    page::TextItem item;
    item.text = words;
    item.ink = ink;
    return item;
}

/// The order as letters of the items' places: a is the first.
std::string order_of(const std::vector<page::Item>& items) {
    std::string order;
    for (const page::Item* item : draw_order(items)) order += static_cast<char>('a' + (item - items.data()));
    return order;
}

TEST(DrawOrder, LinesGoByPenAndTextStaysAsItStood) {
    EXPECT_EQ(order_of({line(2_mm), text("1"), line(1_mm), text("2"), line(2_mm), area(), text("3")}), "fcaebdg");
}

TEST(DrawOrder, NothingPassesAWhiteItem) {
    EXPECT_EQ(order_of({text("1"), line(2_mm), text("white", page::Ink::white), text("2"), line(1_mm)}), "baced");
    EXPECT_EQ(order_of({text("1"), line(1_mm, page::Ink::white), line(2_mm), text("2"), line(1_mm)}), "abecd");
}

TEST(DrawOrder, NothingIsLost) {
    EXPECT_EQ(order_of({}), "");
    EXPECT_EQ(order_of({line(1_mm, page::Ink::white), line(1_mm, page::Ink::white)}), "ab");
}

}  // namespace
}  // namespace kerfpacket::output
