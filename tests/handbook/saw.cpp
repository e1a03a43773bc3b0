// Saw and coupon numbers.

#include <gtest/gtest.h>

#include "bend/saw.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

// Euclid III.35: half the chord at depth d squared is d (D - d). Figures computed for this project.
TEST(Saw, ramp_at_three_eighths_deep) {
    EXPECT_NEAR(groove_ramp(8.5_in, 0.375_in).inches(), 1.746, 5e-4);
    EXPECT_NEAR(groove_ramp(10_in, 0.375_in).inches(), 1.900, 5e-4);
    EXPECT_NEAR(groove_ramp(12_in, 0.375_in).inches(), 2.088, 5e-4);
}

TEST(Saw, spacer_and_travel) {
    // Blade centre 1-1/4 in front of the fence: the spacer takes that up, and the slide must travel the board's width.
    const auto inches = measure::Unit::inch;
    EXPECT_EQ(spacer(1.25_in, inches), 1.25_in);
    EXPECT_EQ(travel_needed(7.25_in, spacer(1.25_in, inches), 1.25_in), 7.25_in);
    // A thinner spacer leaves the groove shallow at the back edge: up, to what a shop makes.
    EXPECT_EQ(spacer(1.26_in, inches), 1.3125_in);
    EXPECT_EQ(spacer(31.6_mm, measure::Unit::millimetre), 32_mm);
    // Blade centre reaching 1/2 in behind the fence: no spacer, and the slide goes that much further.
    EXPECT_EQ(spacer(-0.5_in, inches), 0_in);
    EXPECT_NEAR(travel_needed(7.25_in, spacer(-0.5_in, inches), -0.5_in).inches(), 7.75, 1e-12);
}

TEST(Saw, rear_limit_from_a_trial_groove_is_the_ramp_when_the_groove_just_reaches_the_fence) {
    EXPECT_NEAR(rear_limit_from_trial(12_in, 0.375_in, 0_in).inches(), groove_ramp(12_in, 0.375_in).inches(), 1e-12);
    // The same groove, seen to end there; and half an inch before it.
    EXPECT_EQ(rear_limit_from_end(12_in, 0.375_in, 0_in), groove_ramp(12_in, 0.375_in));
    EXPECT_NEAR(rear_limit_from_end(12_in, 0.375_in, 0.5_in).inches(), 2.588, 5e-4);
    // A 3-4-5 triangle: radius 5, blade centre 3 above the groove at the fence and 4 behind it.
    EXPECT_NEAR(rear_limit_from_trial(10_in, 3_in, 1_in).inches(), 4, 1e-12);
}

}  // namespace
}  // namespace kerfpacket::bend
