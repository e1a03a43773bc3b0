// Stiffness of a kerfed board against the finite-element rows it was fitted to. Source: this project's own model of one
// periodic cell in pure bending, T = 1; calculation, no physical test.

#include <cmath>
#include <vector>

#include <gtest/gtest.h>

#include "bend/cell.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

struct Row {
    double softness, depth, kerf, spacing, ratio, hinge;
};

constexpr double isotropic = 1;
constexpr double mdf = 2.3;

const std::vector<Row> rows{
    {isotropic, .3, .13, .67, .4003, .5239},   {isotropic, .5, .08, .33, .1369, .2972},
    {isotropic, .5, .13, .67, .1572, .5130},   {isotropic, .5, .13, 2, .3155, .6198},
    {isotropic, .667, .13, .67, .0533, .4566}, {isotropic, .75, .17, .67, .0237, .4374},
    {isotropic, .833, .17, .33, .0052, .2935}, {isotropic, .9, .17, 1, .0034, .2959},
    {mdf, .3, .13, .67, .3653, .6077},         {mdf, .5, .13, .67, .1367, .6042},
    {mdf, .5, .13, 1.33, .1603, .9955},        {mdf, .75, .17, .67, .0184, .5681},
    {mdf, .9, .13, .27, .0011, .2509},
};

Cell cell(const Row& row) {
    return {1_in, Length::inches(row.depth), Length::inches(row.kerf), Length::inches(row.spacing)};
}

class Fixtures : public testing::TestWithParam<Row> {};

TEST_P(Fixtures, stiffness_within_three_and_a_half_percent) {
    const Row row = GetParam();
    const double found = stiffness_ratio(cell(row), row.softness);
    // Half a unit of the row's fourth decimal is rounding of the fixture, not an error of the formula.
    EXPECT_NEAR(found, row.ratio, 0.035 * row.ratio + 0.00005);
    RecordProperty("error_percent", std::to_string(100 * (found / row.ratio - 1)));
}

// Nothing is stated for L; the rows hold within 3.7 % (the two shallowest hinges), all others within 3.5 %.
TEST_P(Fixtures, hinge_length_within_four_percent) {
    const Row row = GetParam();
    const double found = hinge_length(cell(row), row.softness).inches();
    EXPECT_NEAR(found, row.hinge, 0.04 * row.hinge);
    RecordProperty("error_percent", std::to_string(100 * (found / row.hinge - 1)));
}

// The rows themselves must hang together: r follows from L by the definition of an effective hinge length.
TEST_P(Fixtures, rows_are_consistent) {
    const Row row = GetParam();
    const double from_hinge = 1 / (1 + row.hinge / row.spacing * (std::pow(1 - row.depth, -3) - 1));
    EXPECT_NEAR(from_hinge, row.ratio, 0.003 * row.ratio + 0.00005);
}

INSTANTIATE_TEST_SUITE_P(FiniteElements, Fixtures, testing::ValuesIn(rows));

}  // namespace
}  // namespace kerfpacket::bend
