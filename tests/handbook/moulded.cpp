// What bend/ says of moulded boards against strips of finite elements (strip_model.h) over ten profiles of the kind
// that a carpenter bends: bases, caps, chair rails, invented for these tests.

#include "strip_model.h"

#include <algorithm>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "bend/section.h"

namespace kerfpacket::elements {
namespace {

using bend::ProfilePoint;
using Profile = std::vector<ProfilePoint>;

Profile inches(const std::vector<std::pair<double, double>>& points) {
    Profile profile;
    for (const auto& [height, thickness] : points)
        profile.push_back({Length::inches(height), Length::inches(thickness)});
    return profile;
}

struct Moulding {
    const char* name;
    double depth;  ///< in
    Profile profile;
};

std::vector<Moulding> mouldings() {
    return {
        {"ogee base", 0.25, inches({{0, .75}, {5, .75}, {5, .69}, {6.5, .45}, {6.5, .375}, {7.25, .375}})},
        {"tall base, small ogee", 0.3125, inches({{0, .75}, {7, .75}, {7.25, .6}, {7.5, .4375}})},
        {"stepped rail", 0.25, inches({{0, .75}, {2.5, .75}, {2.5, .375}, {5, .375}})},
        {"bevel", 0.25, inches({{0, .75}, {4, .375}})},
        {"bead on a thin base", 0.3, inches({{0, .5}, {3, .5}, {3, .75}, {4, .75}})},
        {"cove", 0.3, inches({{0, .75}, {2, .75}, {2.5, .5}, {3, .42}, {3.5, .4}})},
        {"both edges eased", 0.3125, inches({{0, .5}, {.5, .625}, {3, .625}, {3.5, .5}})},
        {"cap with a nose", 0.375, inches({{0, .5625}, {1, .5625}, {1.5, .875}, {2.25, .875}, {2.5, .625}})},
        {"fluted casing", 0.3125,
         inches({{0, .75}, {1, .75}, {1.25, .5}, {1.5, .75}, {2, .75}, {2.25, .5}, {2.5, .75}, {3.5, .75}})},
        {"thick plinth", 0.5, inches({{0, 1.125}, {6, 1.125}, {6.5, .75}, {7.5, .6875}})},
    };
}

struct Wood {
    const char* name;
    Stuff stuff;
    double softness;
};

std::vector<Wood> woods() { return {{"isotropic", isotropic(0.3), 1}, {"mdf", soft(2700, 100, 0.2, 2.3), 2.3}}; }

bend::Cell cell_of(const Moulding& moulding, double spacing) {
    Length thickest;
    for (const ProfilePoint& point : moulding.profile) thickest = std::max(thickest, point.thickness);
    bend::Cell cell{thickest, Length::inches(moulding.depth), Length::inches(0.118), Length::inches(spacing)};
    cell.profile = moulding.profile;
    return cell;
}

template <class Look>
void for_all(const Look& look) {
    constexpr int strips = 24;
    for (const Moulding& moulding : mouldings())
        for (const Wood& wood : woods())
            for (const double spacing : {0.25, 0.5, 1.0}) {
                const bend::Cell cell = cell_of(moulding, spacing);
                SCOPED_TRACE(std::string(moulding.name) + ", " + wood.name + ", s " + std::to_string(spacing));
                look(cell, wood.softness, bend_strips(cell, strips_of(moulding.profile, strips), wood.stuff));
            }
}

TEST(MouldedBoards, strips_of_a_flat_board_are_the_cell_itself) {
    bend::Cell flat = cell_of({"flat", 0.375, inches({{0, .75}, {5, .75}})}, 0.5);
    const StripBoard strips = bend_strips(flat, strips_of(flat.profile, 5), isotropic(0.3));
    flat.profile.clear();
    const Bent one = bend_cell(flat, isotropic(0.3));
    EXPECT_NEAR(strips.stiffness_ratio, one.stiffness_ratio, 1e-6);
    EXPECT_NEAR(strips.length_keeping_depth.inches(), one.length_keeping_depth.inches(), 1e-6);
}

// Stiffness and the line that keeps its length: blanks are as long as that line.
TEST(MouldedBoards, stiffness_and_line_agree_with_strips_of_elements) {
    for_all([](const bend::Cell& cell, double softness, const StripBoard& strips) {
        const double ratio = bend::stiffness_ratio(cell, softness) / strips.stiffness_ratio;
        EXPECT_GT(ratio, 0.96);
        EXPECT_LT(ratio, 1.10);
        EXPECT_NEAR(bend::length_keeping_depth(cell, softness).inches(), strips.length_keeping_depth.inches(), 0.011);
    });
}

// The greatest strain anywhere in the section, which is not always where the board is thickest: a thin edge that is
// pulled along by a thick one has little land to spread it over.
TEST(MouldedBoards, greatest_strain_agrees_with_strips_of_elements) {
    int thin_places = 0;
    for_all([&](const bend::Cell& cell, double softness, const StripBoard& strips) {
        const double most = *std::max_element(strips.strain.begin(), strips.strain.end());
        const double told = bend::web_strain(cell, softness, Length::mm(1)) / most;
        EXPECT_GT(told, 0.94);
        EXPECT_LT(told, 1.17);
        const auto thickest = std::max_element(cell.profile.begin(), cell.profile.end(),
                                               [](auto& a, auto& b) { return a.thickness < b.thickness; });
        const double there = *(strips.strain.end() - (cell.profile.end() - thickest));
        if (most > there * 1.1) ++thin_places;
    });
    EXPECT_GT(thin_places, 0) << "none of the profiles asks for the thin place to be looked at";
}

}  // namespace
}  // namespace kerfpacket::elements
