#include "bend/assess.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

const Cell usual{0.75_in, 0.375_in, 0.118_in, 0.5_in};

Assessment of(const Cell& cell, const char* material, KerfsOn side, Length radius) {
    return assess(cell, *find_material(material), side, radius, Angle::degrees(90), 100);
}

bool has(const Assessment& a, Concern concern) {
    return std::count(a.concerns.begin(), a.concerns.end(), concern) == 1;
}

TEST(Verdict, follows_utilisation) {
    const Length least = of(usual, "mdf", KerfsOn::outside, 100_in).least_radius;
    const auto at = [&](double utilisation) { return of(usual, "mdf", KerfsOn::outside, least / utilisation); };
    EXPECT_EQ(at(0.59).verdict, Verdict::ok);
    EXPECT_TRUE(at(0.59).concerns.empty());
    EXPECT_EQ(at(0.61).verdict, Verdict::caution);
    EXPECT_TRUE(has(at(0.61), Concern::strain_caution));
    EXPECT_EQ(at(0.91).verdict, Verdict::break_likely);
    EXPECT_TRUE(has(at(0.91), Concern::strain_break));
    EXPECT_FALSE(has(at(0.91), Concern::strain_caution)) << "the worse word alone";
}

TEST(Verdict, kerfs_that_close_first_stop_the_bend) {
    const Cell narrow{0.75_in, 0.5_in, 0.09_in, 1_in};
    const Length closing = close_radius(narrow, find_material("mdf")->softness);
    const Assessment before = of(narrow, "mdf", KerfsOn::inside, closing * 0.98);
    EXPECT_TRUE(before.closes);
    EXPECT_EQ(before.verdict, Verdict::break_likely);
    EXPECT_TRUE(has(before, Concern::closes_before_bend));
    EXPECT_TRUE(has(of(narrow, "mdf", KerfsOn::inside, closing * 1.1), Concern::nearly_closes));
    EXPECT_FALSE(has(of(narrow, "mdf", KerfsOn::inside, closing * 1.2), Concern::nearly_closes));
    EXPECT_FALSE(of(narrow, "mdf", KerfsOn::outside, closing * 0.5).closes) << "kerfs outside open";
}

/// What the caution of kerfs that close too soon advises, and what it does not: a deeper kerf closes sooner.
TEST(Verdict, wider_or_more_kerfs_close_later) {
    const double softness = find_material("mdf")->softness;
    for (const Length depth : {0.375_in, 0.5_in, 0.625_in}) {
        const Cell cell{0.75_in, depth, 0.125_in, 1_in};
        const Length closing = close_radius(cell, softness);
        EXPECT_LT(close_radius({0.75_in, depth, 0.14_in, 1_in}, softness), closing);
        EXPECT_LT(close_radius({0.75_in, depth, 0.125_in, 0.8_in}, softness), closing);
        EXPECT_GT(close_radius({0.75_in, depth + 0.0625_in, 0.125_in, 1_in}, softness), closing);
    }
}

TEST(Verdict, grain_may_split_when_kerfs_open) {
    for (const Material& material : materials()) {
        const bool wood = material.name != "mdf";
        const Assessment open = of(usual, std::string(material.name).c_str(), KerfsOn::outside, 5000_in);
        EXPECT_EQ(has(open, Concern::grain_may_split), wood) << material.name;
        EXPECT_EQ(open.verdict, wood ? Verdict::caution : Verdict::ok) << material.name;
        const Assessment closed = of(usual, std::string(material.name).c_str(), KerfsOn::inside, 5000_in);
        EXPECT_FALSE(has(closed, Concern::grain_may_split)) << material.name;
        if (wood) { EXPECT_NEAR(open.strain_limit / closed.strain_limit, 0.7, 1e-12) << material.name; }
    }
}

TEST(Verdict, web_and_range_are_cautions) {
    EXPECT_TRUE(has(of({0.75_in, 0.66_in, 0.118_in, 0.5_in}, "mdf", KerfsOn::outside, 500_in), Concern::web_thin));
    EXPECT_FALSE(has(of({0.75_in, 0.65_in, 0.118_in, 0.5_in}, "mdf", KerfsOn::outside, 500_in), Concern::web_thin));
    EXPECT_TRUE(
        has(of({0.75_in, 0.2_in, 0.118_in, 0.5_in}, "mdf", KerfsOn::outside, 900_in), Concern::depth_out_of_range));
    EXPECT_TRUE(
        has(of({0.75_in, 0.375_in, 0.05_in, 0.5_in}, "mdf", KerfsOn::outside, 900_in), Concern::kerf_out_of_range));
    EXPECT_TRUE(
        has(of({0.75_in, 0.375_in, 0.118_in, 3.5_in}, "mdf", KerfsOn::outside, 900_in), Concern::spacing_out_of_range));
    EXPECT_TRUE(
        has(of({0.75_in, 0.375_in, 0.118_in, 0.13_in}, "mdf", KerfsOn::outside, 900_in), Concern::land_out_of_range));
}

TEST(Verdict, web_of_just_three_thirty_seconds_is_not_thin) {
    for (const double thickness : {0.5, 0.75, 1.0, 0.7}) {
        const Cell cell{Length::inches(thickness), Length::inches(thickness - 3.0 / 32), 0.118_in, 0.5_in};
        EXPECT_FALSE(has(of(cell, "mdf", KerfsOn::outside, 900_in), Concern::web_thin)) << thickness;
    }
}

TEST(Verdict, facet_over_a_tenth_of_a_millimetre_shows) {
    const Cell wide{0.75_in, 0.5_in, 0.118_in, 2_in};
    const double softness = find_material("mdf")->softness;
    const Length limit = facet(wide, softness, 1_in) / 0.1_mm * 1_in;
    EXPECT_TRUE(has(of(wide, "mdf", KerfsOn::outside, limit * 0.99), Concern::facet_visible));
    EXPECT_FALSE(has(of(wide, "mdf", KerfsOn::outside, limit * 1.01), Concern::facet_visible));
}

TEST(Mouth, opens_outside_and_closes_inside) {
    const Assessment open = of(usual, "mdf", KerfsOn::outside, 60_in);
    const Assessment closing = of(usual, "mdf", KerfsOn::inside, 60_in);
    EXPECT_GT(open.mouth, usual.kerf);
    EXPECT_LT(closing.mouth, usual.kerf);
    EXPECT_NEAR((open.mouth + closing.mouth).mm(), 2 * usual.kerf.mm(), 1e-12);
    const auto shut = assess(usual, *find_material("mdf"), KerfsOn::inside, 10_in, Angle::degrees(90), 2);
    EXPECT_EQ(shut.mouth, Length()) << "a shut kerf has no width, never a negative one";
}

TEST(Cells, without_web_or_land_are_bugs) {
    EXPECT_THROW(hinge_length({0.75_in, 0.75_in, 0.118_in, 0.5_in}, 1), measure::Bug);
    EXPECT_THROW(hinge_length({0.75_in, 0.375_in, 0.5_in, 0.5_in}, 1), measure::Bug);
}

}  // namespace
}  // namespace kerfpacket::bend
