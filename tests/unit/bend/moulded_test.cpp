// A moulded board against a flat one, against sums over thin strips, and what is looked at where it is thinnest. Strips
// of finite elements stand in tests/handbook/moulded.cpp.

#include "bend/moulded.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "bend/assess.h"
#include "bend/limit.h"
#include "bend/overcut.h"
#include "bend/section.h"
#include "bend/sensitivity.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

const Material& mdf() { return *find_material("mdf"); }

Cell moulded(std::vector<ProfilePoint> profile, Length depth = 0.25_in) {
    Cell cell{0.75_in, depth, 0.118_in, 0.5_in};
    cell.profile = std::move(profile);
    return cell;
}

const std::vector<ProfilePoint> ogee{{0_in, 0.75_in},   {5_in, 0.75_in},    {5_in, 0.6875_in},
                                     {6.5_in, 0.45_in}, {6.5_in, 0.375_in}, {7.25_in, 0.375_in}};

TEST(Moulded, profile_of_one_thickness_is_a_flat_board) {
    for (const double depth : {0.25, 0.375, 0.5, 0.625})
        for (const double spacing : {0.25, 0.5, 1.0}) {
            Cell flat{0.75_in, Length::inches(depth), 0.118_in, Length::inches(spacing)};
            Cell same = flat;
            same.profile = {{0_in, 0.75_in}, {3_in, 0.75_in}, {5_in, 0.75_in}};
            EXPECT_NEAR(stiffness_ratio(same, 2.3), stiffness_ratio(flat, 2.3), 1e-9);
            EXPECT_NEAR(length_keeping_depth(same, 2.3).mm(), length_keeping_depth(flat, 2.3).mm(), 1e-9);
            EXPECT_NEAR(web_strain(same, 2.3, 20_in) / web_strain(flat, 2.3, 20_in), 1, 1e-6);
            EXPECT_NEAR(peel_strain(same, mdf()) / peel_strain(flat, mdf()), 1, 1e-6);
            EXPECT_NEAR(close_radius(same, 2.3) / close_radius(flat, 2.3), 1, 1e-9);
        }
}

TEST(Moulded, section_is_the_sum_of_thin_strips) {
    const Cell cell = moulded(ogee);
    // Sums of rectangles, straight from the profile.
    const auto thickness_at = [&](double height) {
        for (std::size_t i = 1; i < ogee.size(); ++i)
            if (const double wide = (ogee[i].height - ogee[i - 1].height).mm();
                height <= ogee[i].height.mm() && wide > 0)
                return (ogee[i - 1].thickness +
                        (ogee[i].thickness - ogee[i - 1].thickness) * ((height - ogee[i - 1].height.mm()) / wide))
                    .mm();
        return 0.0;
    };
    constexpr int strips = 20000;
    const double wide = (7.25_in).mm() / strips;
    const auto stiffness = [&](double depth, double& line) {
        double area = 0;
        double moment = 0;
        for (int i = 0; i < strips; ++i) {
            const double t = thickness_at((i + 0.5) * wide);
            area += wide * (t - depth);
            moment += wide * (t - depth) * (t + depth) / 2;
        }
        line = moment / area;
        double sum = 0;
        for (int i = 0; i < strips; ++i) {
            const double t = thickness_at((i + 0.5) * wide);
            sum += wide * (std::pow(t - depth, 3) / 12 + (t - depth) * std::pow((t + depth) / 2 - line, 2));
        }
        return sum;
    };
    double web_line = 0;
    double whole_line = 0;
    const double ratio = stiffness(cell.depth.mm(), web_line) / stiffness(0, whole_line);
    const Section section = web_section(cell);
    EXPECT_NEAR(section.stiffness, ratio, 1e-4 * ratio);
    EXPECT_NEAR(section.neutral.mm(), (0.75_in).mm() - web_line, 1e-3);
    EXPECT_NEAR(section.whole.mm(), (0.75_in).mm() - whole_line, 1e-3);
    EXPECT_GT(section.extreme, cell.web() / 2) << "the outermost wood lies further off than in a flat board";
}

TEST(Moulded, strain_is_that_of_the_worse_place) {
    const Cell cell = moulded(ogee);
    for (const KerfsOn side : {KerfsOn::inside, KerfsOn::outside}) {
        const auto used = moulded_utilisation(cell, mdf(), side, 60_in);
        const double whole = web_strain(cell, mdf().softness, 60_in) / break_strain(cell, mdf(), side);
        // Strain and peel may be worst at different places: then neither place alone is worse than the whole.
        EXPECT_NEAR(std::max(used[0], used[1]), whole, whole * 1e-9);
    }
}

TEST(Moulded, thin_web_is_judged_where_it_is_thin) {
    const Cell thin = moulded({{0_in, 0.75_in}, {5_in, 0.75_in}, {5_in, 0.3125_in}, {5.5_in, 0.3125_in}});
    const Assessment a = assess(thin, mdf(), KerfsOn::inside, 600_in, Angle::degrees(1), 1);
    EXPECT_NE(std::find(a.concerns.begin(), a.concerns.end(), Concern::web_thin), a.concerns.end());
    const Cell wide_kerf{0.75_in, 0.25_in, 0.2_in, 0.5_in, 0.5, {}, {{0_in, 0.75_in}, {5_in, 0.375_in}}};
    EXPECT_FALSE(checked_range(wide_kerf).kerf) << "0.2 in of kerf is 0.53 of the thin edge";
    for (const Change& change : sensitivity(thin, mdf(), KerfsOn::inside, 600_in, {0.0625_in, 0.03_in, 0.03_in}))
        EXPECT_EQ(change.impossible, change.what == Changed::depth && change.by > Length());
}

TEST(Moulded, kerf_too_deep_is_judged_by_the_thinnest_web) {
    const Cell cell = moulded(ogee);
    const Overcut through = overcut(cell, mdf(), KerfsOn::inside, 200_in, 0.5_in);
    EXPECT_EQ(through.mend, Mend::scrap);
    EXPECT_EQ(through.web, Length());
    const Overcut deep = overcut(cell, mdf(), KerfsOn::inside, 200_in, 0.3_in);
    EXPECT_NEAR(deep.web.inches(), 0.075, 1e-9);
    EXPECT_GT(deep.alone, deep.before);
    const OvercutLimits limits = overcut_limits(cell, mdf(), KerfsOn::inside, 200_in, Length::inches(1.0 / 64));
    EXPECT_LE(limits.keep, 0.375_in - least_web + 0.001_mm);
}

}  // namespace
}  // namespace kerfpacket::bend
