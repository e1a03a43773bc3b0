#include "sheets/layout/labels.h"

#include <optional>
#include <random>

#include <gtest/gtest.h>

#include "../../support/kit.h"
#include "sheets/layout/lane.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

/// A page of 200 x 200 pt whose labels may stand anywhere on it.
struct Sheet {
    page::Page page;
    Pen pen{page, kit()};
    Labels labels{pen, {{}, {200_pt, 200_pt}}};

    Block block(const char* text) const { return {pen, {{text, {Face::regular, 9_pt}}}}; }
    page::TextItem label() const { return texts(page).back(); }
    /// The leader is the one straight line of a label with its point.
    Path leader() const { return paths(page, Role::text).front().path; }
};

/// Whether the sheet's leader crosses a level line that runs over the whole page.
bool crosses_level(const Path& leader, const Path& level) {
    return !geom::crossings(leader.segments().front(), level.start(), {1, 0}).empty();
}

TEST(Labels, a_place_is_given_once) {
    Sheet sheet;
    EXPECT_TRUE(sheet.labels.place(Role::text, sheet.block("one"), {100_pt, 100_pt}));
    EXPECT_FALSE(sheet.labels.place(Role::text, sheet.block("two"), {103_pt, 102_pt}));
    EXPECT_FALSE(sheet.labels.place(Role::text, sheet.block("out"), {199_pt, 100_pt}));
    EXPECT_EQ(texts(sheet.page).size(), 1U);
}

TEST(Labels, along_a_line_it_is_level_with_the_line) {
    Sheet sheet;
    const Path line = Path::line({20_pt, 20_pt}, {160_pt, 160_pt});
    sheet.labels.taken().take(line);
    ASSERT_TRUE(sheet.labels.along(Role::text, sheet.block("beside"), line, Beside::left, 4_pt));
    EXPECT_NEAR(sheet.label().angle.degrees(), 45, 1e-9);
    EXPECT_FALSE(crosses(line, sheet.label()));
    EXPECT_GT(sheet.label().anchor.y, sheet.label().anchor.x) << "on the left of travel";
}

TEST(Labels, too_short_a_line_gets_none) {
    Sheet sheet;
    const Path line = Path::line({100_pt, 100_pt}, {110_pt, 100_pt});
    EXPECT_FALSE(sheet.labels.along(Role::text, sheet.block("much too long"), line, Beside::left, 4_pt));
    EXPECT_TRUE(sheet.page.items.empty());
}

TEST(Labels, a_leader_crosses_nothing_where_it_can) {
    Sheet sheet;
    const Path line = Path::line({20_pt, 100_pt}, {180_pt, 100_pt});
    sheet.labels.taken().take(line);
    // Above the line, on the side asked for, another one stands in the way all along.
    const Path above = Path::line({0_pt, 108_pt}, {200_pt, 108_pt});
    sheet.labels.taken().take(above);
    ASSERT_TRUE(sheet.labels.with_leader(Role::text, sheet.block("name"), line, Beside::left));
    EXPECT_LT(sheet.label().anchor.y, 100_pt);
    EXPECT_FALSE(crosses_level(sheet.leader(), above));
}

TEST(Labels, a_leader_crosses_lines_rather_than_leave_a_name_out) {
    Sheet sheet;
    const Path line = Path::line({20_pt, 100_pt}, {180_pt, 100_pt});
    sheet.labels.taken().take(line);
    const Path above = Path::line({0_pt, 108_pt}, {200_pt, 108_pt});
    const Path below = Path::line({0_pt, 92_pt}, {200_pt, 92_pt});
    for (const Path& path : {above, below}) sheet.labels.taken().take(path);
    ASSERT_TRUE(sheet.labels.with_leader(Role::text, sheet.block("name"), line, Beside::left));
    EXPECT_GT(sheet.label().anchor.y, 108_pt) << "on the side asked for";
    EXPECT_TRUE(crosses_level(sheet.leader(), above));
    for (const Path& path : {line, above, below}) EXPECT_FALSE(crosses(path, sheet.label()));
}

/// Where a plain look at every place of the raster finds the first that is free.
std::optional<Point> first_free(const Occupancy& taken, const Rect& room, const Block& block, Length clearance) {
    constexpr int steps = 24;
    const Rect inner = room.grown(-clearance);
    for (int row = 0; row <= steps; ++row)
        for (int column = 0; column <= steps; ++column) {
            const Point centre{inner.low.x + block.width() / 2 + (inner.width() - block.width()) / steps * column,
                               inner.high.y - block.height() / 2 - (inner.height() - block.height()) / steps * row};
            const TurnedBox box = block.box(centre, {1, 0}, clearance);
            const Rect bounds = box.bounds();
            if (room.contains(bounds.low) && room.contains(bounds.high) && taken.is_free(box)) return centre;
        }
    return std::nullopt;
}

TEST(Labels, anywhere_is_the_first_free_place_of_all) {
    std::mt19937 random(7);
    const auto within = [&](double low, double high) {
        return Length::points(std::uniform_real_distribution<double>(low, high)(random));
    };
    const auto place = [&] { return Point{within(0, 200), within(0, 200)}; };
    int found = 0, none = 0;
    for (int round = 0; round < 300; ++round) {
        Sheet sheet;
        Occupancy& taken = sheet.labels.taken();
        for (int i = 0; i < round % 12; ++i) {
            const Point from = place();
            taken.take(Path::line(from, from + Point{within(-60, 60), within(-60, 60)}));
            taken.take(Path::arc(from, place(), Angle::degrees(i * 20)));
            if (i % 3 == 0) taken.take(TurnedBox{place(), {1, 0}, within(2, 20), within(2, 20)});
            if (i % 3 == 1) taken.take(TurnedBox{place(), Direction::at(Angle::degrees(i * 25)), 20_pt, 8_pt});
        }
        const Block block = sheet.block(round % 2 == 0 ? "a name" : "a name that takes more room");
        const auto expected = first_free(taken, sheet.labels.room(), block, 3_pt);
        ASSERT_EQ(sheet.labels.anywhere(Role::text, block, {}, 3_pt), expected.has_value()) << round;
        (expected ? found : none) += 1;
        if (!expected) continue;
        EXPECT_NEAR(sheet.label().anchor.x.mm(), expected->x.mm(), 1e-9) << round;
    }
    EXPECT_GT(found, 50);
    EXPECT_GT(none, 20);
}

TEST(Lanes, the_widest_free_span_lies_within_the_lane) {
    Lane lane(10_pt, 100_pt);
    lane.force(10_pt, 60_pt);
    lane.force(900_pt, 950_pt);  // of something that stands elsewhere
    EXPECT_EQ(lane.widest_free(39_pt), 60_pt);
    EXPECT_FALSE(lane.widest_free(41_pt));
}

}  // namespace
}  // namespace kerfpacket::sheets
