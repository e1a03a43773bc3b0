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
std::string order_on(const page::Page& page) {
    std::string order;
    for (const page::Item* item : draw_order(page)) order += static_cast<char>('a' + (item - page.items.data()));
    return order;
}

std::string order_of(const std::vector<page::Item>& items) {
    page::Page page;
    page.items = items;
    return order_on(page);
}

template <class Item>
Item in(std::size_t node, Item item) {
    item.node = node;
    return item;
}

TEST(DrawOrder, LinesGoByPenAndTextStaysAsItStood) {
    EXPECT_EQ(order_of({line(2_mm), text("1"), line(1_mm), text("2"), line(2_mm), area(), text("3")}), "fcaebdg");
}

TEST(DrawOrder, NothingPassesAWhiteItem) {
    EXPECT_EQ(order_of({text("1"), line(2_mm), text("white", page::Ink::white), text("2"), line(1_mm)}), "baced");
    EXPECT_EQ(order_of({text("1"), line(1_mm, page::Ink::white), line(2_mm), text("2"), line(1_mm)}), "abecd");
}

TEST(DrawOrder, WordsComeInTheOrderToReadThemInArtifactsLast) {
    page::Page page;
    page.structure = {{page::Tag::section, 0, {}},
                      {page::Tag::title, 0, {}},
                      {page::Tag::paragraph, 0, {}},
                      {page::Tag::artifact, 0, {}}};
    page.items = {in(3, text("page 1")), in(2, text("1")), in(2, text("2")), in(1, text("title"))};
    EXPECT_EQ(order_on(page), "dbca");
}

TEST(DrawOrder, AFigureIsDrawnInOnePiece) {
    page::Page page;
    page.structure = {{page::Tag::section, 0, {}}, {page::Tag::figure, 0, "a"}, {page::Tag::figure, 0, "b"}};
    page.items = {in(2, line(1_mm)), in(1, line(2_mm)), in(2, line(2_mm)), in(1, line(1_mm)), line(1_mm)};
    EXPECT_EQ(order_on(page), "edbac");
}

TEST(DrawOrder, NothingIsLost) {
    EXPECT_EQ(order_of({}), "");
    EXPECT_EQ(order_of({line(1_mm, page::Ink::white), line(1_mm, page::Ink::white)}), "ab");
}

}  // namespace
}  // namespace kerfpacket::output
