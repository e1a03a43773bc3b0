#include "job/values.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "job/read.h"
#include "jobs.h"

namespace kerfpacket::job {
namespace {

using tests::read_well;

std::string told(const Value& value) {
    std::string one = value.table + "|" + value.piece + "|" + value.key + "|";
    for (const Element& element : value.elements) one += "<" + canonical(element) + ">";
    return one;
}

std::vector<std::string> told(const Job& job) {
    std::vector<std::string> all;
    for (const Value& value : canonical(job).values) all.push_back(told(value));
    return all;
}

bool holds(const std::vector<std::string>& all, const std::string& one) {
    return std::find(all.begin(), all.end(), one) != all.end();
}

constexpr const char* house = R"(
[job]
number = "K-7"
title = "35.500"
revision = "A"
date = 2026-05-04
units = "mm"
[saw]
blade_diameter = 250
kerf = 3
[[opening]]
id = "A"
shape = "segmental"
span = 1200
rise = 300
depth = 110
legs = [2000, 1990]
[opening.liner]
material = "ash-wet"
thickness = 12
too_deep = [[3, "8 mm"], [2, "9 mm"]]
[opening.form]
stations = [100, 200]
[[wall]]
id = "B"
chord = 2000
rise = 200
side = "convex"
tails = [100, 50]
[wall.board]
material = "mdf"
thickness = 12
width = 90
no_splice = [[100, 200], [300, 400]]
[[material]]
name = "ash-wet"
break_strain = "0.6 %"
softness = 1.5
grain = true
)";

TEST(Values, BelongToTheirTableAndPiece) {
    const std::vector<std::string> all = told(read_well(house));
    for (const char* one :
         {"job||number|<\"K-7\">", "job||date|<2026-05-04>", "saw||kerf|<\"3.000000 mm\">", "opening|A|id|<\"A\">",
          "opening.liner|A|material|<\"ash-wet\">", "opening.form|A|stations|<\"100.000000 mm\"><\"200.000000 mm\">",
          "wall|B|side|<\"convex\">", "material|ash-wet|softness|<1.500000000>", "material|ash-wet|grain|<true>",
          "material|ash-wet|break_strain|<\"0.600000000 %\">"})
        EXPECT_TRUE(holds(all, one)) << one;
}

TEST(Values, AreTheElementsOfLists) {
    const std::vector<std::string> all = told(read_well(house));
    for (const char* one :
         {"opening|A|legs|<\"2000.000000 mm\"><\"1990.000000 mm\">",
          "opening.liner|A|too_deep|<[2, \"9.000000 mm\"]><[3, \"8.000000 mm\"]>",
          "wall|B|tails|<\"100.000000 mm\"><\"50.000000 mm\">",
          "wall.board|B|no_splice|<[\"100.000000 mm\", \"200.000000 mm\"]><[\"300.000000 mm\", \"400.000000 mm\"]>"})
        EXPECT_TRUE(holds(all, one)) << one;
}

// The text is written from the values, so each stands in it.
TEST(Values, StandInTheText) {
    const Canonical both = canonical(read_well(house));
    EXPECT_GT(both.values.size(), 40U);
    for (const Value& value : both.values) {
        EXPECT_NE(both.text.find("\n" + value.key + " = "), std::string::npos) << value.key;
        for (const Element& element : value.elements)
            EXPECT_NE(both.text.find(canonical(element)), std::string::npos) << told(value);
    }
}

TEST(Values, AreTheSameWhereTheirTextIs) {
    const Value inch{"saw", "", "kerf", {{Length::inches(0.125)}}};
    EXPECT_TRUE(inch.same_value({"saw", "", "kerf", {{Length::mm(3.175)}}}));
    EXPECT_FALSE(inch.same_value({"saw", "", "kerf", {{Length::mm(3.18)}}}));
    EXPECT_FALSE(inch.same_value({"saw", "", "kerf", {{Length::mm(3.175)}, {Length::mm(3.175)}}}));
}

}  // namespace
}  // namespace kerfpacket::job
