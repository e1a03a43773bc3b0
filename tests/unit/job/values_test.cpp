#include "job/values.h"

#include <gtest/gtest.h>

#include "job/read.h"

namespace kerfpacket::job {
namespace {

std::vector<std::string> told(const std::string& text) {
    std::vector<std::string> all;
    for (const Value& value : values_of(text)) {
        std::string one = value.table + "|" + value.piece + "|" + value.key + "|";
        for (const std::string& part : value.parts) one += "<" + part + ">";
        all.push_back(one);
    }
    return all;
}

TEST(Values, BelongToTheirTableAndPiece) {
    EXPECT_EQ(told("\n[job]\nnumber = \"K-7\"\ndate = 2026-05-04\n\n[[opening]]\nid = \"A\"\nspan = \"3.000000 mm\"\n\n"
                   "[opening.liner]\ntrim = \"4.000000 mm\"\n\n[[wall]]\nid = \"B\"\n\n[stock]\nlengths = []\n\n"
                   "[[material]]\nname = \"ash, \\\"wet\\\"\"\nsoftness = 2.000000000\n"),
              (std::vector<std::string>{"job||number|<K-7>", "job||date|<2026-05-04>", "opening|A|id|<A>",
                                        "opening|A|span|<3.000000 mm>", "opening.liner|A|trim|<4.000000 mm>",
                                        "wall|B|id|<B>", "stock||lengths|", "material|ash, \"wet\"|name|<ash, \"wet\">",
                                        "material|ash, \"wet\"|softness|<2.000000000>"}));
}

TEST(Values, AreTheElementsOfLists) {
    EXPECT_EQ(
        told("[wall]\ntails = [\"1.000000 mm\", \"2.000000 mm\"]\nkerfs = [\n    \"1 mm\",\n    \"2 mm\",\n]\n"
             "ordinates = [\n    [\"0 mm\", \"1 mm\"],\n    [\"5 mm\", \"-2 mm\"],\n]\ntoo_deep = [\n    [3, \"4 mm\"],"
             "\n]\nno_splice = [[\"1 mm\", \"2 mm\"], [\"3 mm\", \"4 mm\"]]\nside = \"convex\"\n"),
        (std::vector<std::string>{"wall||tails|<1.000000 mm><2.000000 mm>", "wall||kerfs|<1 mm><2 mm>",
                                  "wall||ordinates|<0 mm / 1 mm><5 mm / -2 mm>", "wall||too_deep|<3 / 4 mm>",
                                  "wall||no_splice|<1 mm / 2 mm><3 mm / 4 mm>", "wall||side|<convex>"}));
}

TEST(Values, LengthsAreReadBack) {
    EXPECT_DOUBLE_EQ(canonical_length("19.050000 mm")->mm(), 19.05);
    EXPECT_DOUBLE_EQ(canonical_length("-2.500000 mm")->mm(), -2.5);
    for (const char* other : {"", "mm", " mm", "wide mm", "19.05", "1 2 mm", "3 in"})
        EXPECT_FALSE(canonical_length(other)) << other;
}

}  // namespace
}  // namespace kerfpacket::job
