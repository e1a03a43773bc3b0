#include "page/folded.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace kerfpacket::page {
namespace {

using namespace measure::literals;

/// One item of every kind, with values that a table of earlier values could mix up.
Page sample() {
    Page page;
    page.sheet = "strips";
    page.piece = "A";
    page.width = 10_in;
    page.height = 3_in;
    page.number = 7;
    page.language = "es";
    page.structure.push_back({Tag::figure, 0, "an arch, \xC2\xBD in high"});
    page.structure.push_back({Tag::artifact, 1, {}});
    const geom::Path arc({{{1_in, 1_in}, {3_in, 1_in}, Angle::degrees(-60)}, {{3_in, 1_in}, {1_in, 1_in}, {}}}, true);
    page.items.emplace_back(PathItem{Role::outline, arc, 1.2_pt, Dash::dash_dot, true, Ink::white, 1});
    page.items.emplace_back(PathItem{Role::tick, geom::Path::line({-0.0_mm, 0_mm}, {0_mm, 1e-300_mm}), {}});
    page.items.emplace_back(TextItem{Role::numeral,
                                     std::string("1\0 \xE2\x85\x9B", 6),
                                     Face::condensed_bold,
                                     9_pt,
                                     {Length::mm(1.0 / 3), Length::mm(std::numeric_limits<double>::max())},
                                     Align::right,
                                     Angle::degrees(10),
                                     2_in,
                                     Ink::white,
                                     300});
    page.items.emplace_back(LinkItem{{{4_in, 1_in}, {6_in, 2_in}}, 3, 1});
    std::vector<bool> dark(29 * 29);
    for (std::size_t i = 0; i < dark.size(); ++i) dark[i] = i * i % 7 < 3;
    page.items.emplace_back(CodeItem{{{1_in, 1_in}, {2_in, 2_in}}, "job", dark, 29, 1});
    page.items.emplace_back(CodeItem{});
    return page;
}

/// Also what == does not tell apart: 0 and -0.
bool negative_zero(const Page& page) { return std::signbit(std::get<PathItem>(page.items.at(1)).path.start().x.mm()); }

TEST(Folded, ComesBackToTheLastBit) {
    const Page before = sample();
    Page page = before;
    const Folded folded(page);
    EXPECT_TRUE(page.items.empty());
    EXPECT_TRUE(page.structure.empty());
    EXPECT_EQ(page.sheet, before.sheet);
    EXPECT_EQ(page.number, before.number);
    folded.put_back(page);
    EXPECT_TRUE(page.items == before.items);
    EXPECT_TRUE(negative_zero(page) && negative_zero(before));
    ASSERT_EQ(page.structure.size(), before.structure.size());
    for (std::size_t i = 0; i < page.structure.size(); ++i) {
        EXPECT_EQ(page.structure[i].tag, before.structure[i].tag);
        EXPECT_EQ(page.structure[i].parent, before.structure[i].parent);
        EXPECT_EQ(page.structure[i].alternative, before.structure[i].alternative);
    }
}

/// The items come back; what else a page holds is told above.
void expect_back(const std::vector<Item>& items) {
    Page page;
    page.items = items;
    Folded(page).put_back(page);  // NOLINT(bugprone-unused-raii)
    EXPECT_TRUE(page.items == items);
}

TEST(Folded, PathsMayJumpTurnOrBeEmpty) {
    const Point a{1_in, 1_in}, b{3_in, 1_in}, c{3_in, 2_in};
    const std::vector<geom::Path> paths{
        geom::Path(),
        geom::Path({{a, b, {}}, {c, a, {}}}),
        geom::Path({{a, b, {}}, {b, c, Angle::degrees(30)}}, true),
        geom::Path({{a, b, Angle::degrees(-30)}, {a, c, {}}, {c, b, {}}}),
        geom::Path::rectangle({a, c}),
    };
    std::vector<Item> items;
    items.reserve(paths.size());
    for (const geom::Path& path : paths) items.emplace_back(PathItem{Role::outline, path, 1_pt});
    expect_back(items);
}

TEST(Folded, EveryRoleAndManner) {
    std::vector<Item> items;
    std::size_t node = 0;
    for (std::size_t role = 0; role <= static_cast<std::size_t>(Role::caution); ++role)
        for (const Ink ink : {Ink::black, Ink::white}) {
            for (const Dash dash : {Dash::solid, Dash::dashed, Dash::dotted, Dash::dash_dot})
                items.emplace_back(PathItem{Role(role), geom::Path(), 1_pt, dash, dash == Dash::dotted, ink, ++node});
            for (const Face face : all_faces)
                for (const Align align : {Align::left, Align::centre, Align::right})
                    items.emplace_back(TextItem{Role(role), "8", face, 9_pt, {}, align, {}, 5_pt, ink, 400 - node});
        }
    expect_back(items);
}

TEST(Folded, ThousandsOfNumbersAndLongWords) {
    std::vector<Item> items;
    items.reserve(5001);
    for (int i = 0; i < 5000; ++i)
        items.emplace_back(PathItem{
            Role::tick, geom::Path::line({Length::mm(i / 7.0), 0_mm}, {Length::mm(-i / 3.0), Length::mm(i % 9)}), {}});
    TextItem words;
    for (int i = 0; i < 40000; ++i) words.text += static_cast<char>('a' + i % 26);
    items.emplace_back(words);
    expect_back(items);
}

TEST(Folded, APageIsOpenedBesideTheDocument) {
    FoldedDocument document;
    document.document.pages = {sample(), sample()};
    std::optional<Page> room;
    EXPECT_EQ(&opened(document.document, {}, 1, room), &document.document.pages[1]);
    document.folded = {Folded(), Folded(document.document.pages[1])};
    EXPECT_EQ(&opened(document.document, document.folded, 0, room), &document.document.pages[0]);
    EXPECT_FALSE(room);
    EXPECT_TRUE(opened(document.document, document.folded, 1, room).items == sample().items);
    EXPECT_TRUE(document.document.pages[1].items.empty());
}

TEST(Folded, APageOfRowsTakesAnEighth) {
    Page page;
    for (int row = 0; row < 40; ++row)
        for (int column = 0; column < 6; ++column) {
            const geom::Point low{1_in * column, 0.2_in * row};
            const geom::Path box = geom::Path::rectangle({low, low + geom::Point{9_pt, 9_pt}});
            page.items.emplace_back(PathItem{Role::box, box, 1_pt});
        }
    const std::size_t open = page.items.size() * (sizeof(Item) + 4 * sizeof(geom::Segment));
    EXPECT_LT(Folded(page).bytes(), open / 8);
}

}  // namespace
}  // namespace kerfpacket::page
