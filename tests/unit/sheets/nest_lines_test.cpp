// What the stock plan says of casing segments: how many, and how many a sheet holds, one and many as a carpenter says
// it.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "../support/kit.h"
#include "sheets/stock/nest_pages.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

/// A sheet of 49 x 97 in and rectangles of one size on it, all of them laid.
plan::NestPlan rectangles(Length width, Length height, int count) {
    plan::NestPlan plan;
    plan.length = 97_in;
    plan.width = 49_in;
    plan.cut = 0.125_in;
    plan::NestedSize size;
    size.id = "P";
    for (int n = 1; n <= count; ++n) size.n.push_back(n);
    size.width = width;
    size.height = height;
    size.pitch = height + plan.cut;
    plan.sizes.push_back(size);
    plan.sheets.push_back({{{0, {}, count, 0, count}}, {}});
    return plan;
}

/// The line of the only size.
std::string line_of(const plan::NestPlan& plan, const std::string& language) {
    const Kit& kit = tests::kit(language);
    return nest_lines(plan, kit, Tape(measure::Unit::inch, kit.words)).at(1);
}

struct Said {
    double width, height;  // in; how many of them go on a sheet was counted by hand
    int count;
    const char* english;
    const char* spanish;
};

TEST(NestLines, SayOneAndManyAsACarpenterDoes) {
    for (const Said& said :
         {Said{75, 17, 2,
               "P: 2 segments, 75 x 17 in each, one above the other 17-1/8 in apart, for their edges are no "
               "arcs about one center. A sheet holds one stack of 2.",
               "P: 2 segmentos de 75 x 17 pulg, uno sobre otro cada 17-1/8 pulg, pues sus cantos no son arcos de un "
               "mismo "
               "centro. En un tablero cabe una pila de 2."},
          Said{30, 17, 6, "A sheet holds 3 stacks of 2 beside each other.",
               "En un tablero caben 3 pilas de 2, una al lado de otra."},
          Said{30, 40, 3, "A sheet holds 3 beside each other.", "En un tablero caben 3 en fila."},
          Said{75, 40, 1, "P: 1 segment, 75 x 40 in. A sheet holds one.",
               "P: 1 segmento de 75 x 40 pulg. En un tablero cabe una sola pieza."}}) {
        const plan::NestPlan plan = rectangles(Length::inches(said.width), Length::inches(said.height), said.count);
        const std::string english = line_of(plan, "en"), spanish = line_of(plan, "es");
        EXPECT_TRUE(english.ends_with(said.english)) << english;
        EXPECT_TRUE(spanish.ends_with(said.spanish)) << spanish;
    }
}

TEST(NestLines, SayNothingOfASheetThatHoldsNone) {
    plan::NestPlan plan = rectangles(100_in, 20_in, 1);
    plan.sheets.clear();
    const Kit& kit = tests::kit();
    const std::vector<std::string> lines = nest_lines(plan, kit, Tape(measure::Unit::inch, kit.words));
    ASSERT_EQ(lines.size(), 3U);
    EXPECT_TRUE(lines[1].ends_with("P: 1 segment, 100 x 20 in.")) << lines[1];
    EXPECT_TRUE(lines[2].ends_with("too many: 1 segment of P.")) << lines[2];
}

}  // namespace
}  // namespace kerfpacket::sheets
