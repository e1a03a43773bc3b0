#include "measure/length.h"

#include <limits>

#include <gtest/gtest.h>

#include "measure/require.h"

using namespace kerfpacket::measure;
using namespace kerfpacket::measure::literals;

namespace {

TEST(Length, UnitsAgree) {
    EXPECT_DOUBLE_EQ((1_in).mm(), 25.4);
    EXPECT_DOUBLE_EQ((72_pt).inches(), 1);
    EXPECT_DOUBLE_EQ((25.4_mm).points(), 72);
}

TEST(Length, Arithmetic) {
    Length sum = 1_in + 2_in - 0.5_in;
    sum += 1_in;
    sum *= 2;
    sum -= 1_in;
    EXPECT_DOUBLE_EQ(sum.inches(), 6);
    EXPECT_DOUBLE_EQ(6_in / 4_in, 1.5);
    EXPECT_DOUBLE_EQ((3 * 2_in / 4).inches(), 1.5);
    EXPECT_DOUBLE_EQ(abs(-3_mm).mm(), 3);
    EXPECT_DOUBLE_EQ(hypot(3_mm, 4_mm).mm(), 5);
    EXPECT_LT(1_mm, 1_in);
}

TEST(Length, KnowsWhatIsNotFinite) {
    EXPECT_TRUE((1_mm).finite());
    EXPECT_FALSE(Length::mm(std::numeric_limits<double>::infinity()).finite());
    EXPECT_FALSE(Length::mm(std::numeric_limits<double>::quiet_NaN()).finite());
}

TEST(Angle, DegreesAndRadians) {
    EXPECT_DOUBLE_EQ(Angle::degrees(180).radians(), Angle::pi);
    EXPECT_DOUBLE_EQ(Angle::radians(Angle::pi / 6).degrees(), 30);
    EXPECT_DOUBLE_EQ((Angle::degrees(30) + Angle::degrees(60)) / Angle::degrees(45), 2);
}

TEST(Angle, ArcLength) {
    // Machinery's Handbook, 31st ed., p. 50: radius 12, 67.115 degrees (printed 67.13) give an arc of 14.056 (14.06).
    EXPECT_NEAR(arc_length(12_in, Angle::degrees(67.115)).inches(), 14.056, 0.001);
}

TEST(Require, StopsOnABug) {
    EXPECT_NO_THROW(require(true, "fine"));
    EXPECT_THROW(require(false, "broken"), Bug);
}

}  // namespace
