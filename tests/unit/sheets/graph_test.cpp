#include "sheets/evidence/graph.h"

#include <cmath>

#include <gtest/gtest.h>

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

TEST(Thinned, ALineNeedsItsEndsAlone) {
    std::vector<Point> points;
    for (int i = 0; i <= 128; ++i) points.push_back({1_mm * i, 0.5_mm * i});
    const Path line = thinned(points);
    ASSERT_EQ(line.segments().size(), 1U);
    EXPECT_EQ(line.start(), points.front());
    EXPECT_EQ(line.end(), points.back());
}

TEST(Thinned, StaysWithinAFiftiethOfAMillimeter) {
    std::vector<Point> points;
    for (int i = 0; i <= 128; ++i) {
        const double part = i / 128.0;
        points.push_back({130_mm * part, 25_mm * std::exp(-20 * (part - 0.4) * (part - 0.4))});
    }
    const Path line = thinned(points);
    EXPECT_LT(line.segments().size(), 70U);
    for (const Point& point : points) {
        Length nearest = 1_in;
        for (const geom::Segment& s : line.segments()) {
            if (point.x < s.from.x || point.x > s.to.x) continue;
            const geom::Direction across = geom::direction(s.from, s.to).left();
            const Point off = point - s.from;
            nearest = std::min(nearest, measure::abs(off.x * across.x + off.y * across.y));
        }
        EXPECT_LE(nearest, 0.02_mm);
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
