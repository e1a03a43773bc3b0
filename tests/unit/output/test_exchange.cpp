#include "output/exchange.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <sstream>

namespace kerfpacket::tests {
namespace {

using geom::Path;
using geom::Point;
using measure::Angle;
using measure::Length;

Point at(double x, double y) { return {Length::mm(x), Length::mm(y)}; }

/// The codes and values of a DXF text, two lines each.
std::vector<std::pair<int, std::string>> groups(const std::string& dxf) {
    std::vector<std::pair<int, std::string>> all;
    std::istringstream text(dxf);
    for (std::string code, value; std::getline(text, code) && std::getline(text, value);)
        all.emplace_back(std::stoi(code), value);
    return all;
}

std::vector<double> values(const std::string& dxf, int wanted) {
    std::vector<double> all;
    for (const auto& [code, value] : groups(dxf))
        if (code == wanted) all.push_back(std::stod(value));
    return all;
}

/// A quarter circle of radius 10 about the origin and back along two lines.
Path quarter() {
    return Path({{at(10, 0), at(0, 10), Angle::degrees(90)}, {at(0, 10), at(0, 0), {}}, {at(0, 0), at(10, 0), {}}},
                true);
}

TEST(Exchange, AnArcIsTheTangentOfAQuarterOfItsTurn) {
    const std::string text = output::dxf({{"A_CASING_1", {quarter()}}}, "a title");
    // DXF reference, VERTEX, group 42: the bulge is the tangent of one fourth the included angle. (From memory.)
    EXPECT_EQ(values(text, 42), std::vector<double>{std::round(std::tan(std::numbers::pi / 8) * 1e6) / 1e6});
    std::vector<std::string> kinds;
    for (const auto& [code, value] : groups(text))
        if (code == 0) kinds.push_back(value);
    EXPECT_EQ(std::count(kinds.begin(), kinds.end(), "VERTEX"), 3) << "a closed one goes back by itself";
    EXPECT_EQ(std::count(kinds.begin(), kinds.end(), "SEQEND"), 1);
    EXPECT_EQ(kinds.back(), "EOF");
    EXPECT_NE(text.find("AC1009"), std::string::npos);
    EXPECT_NE(text.find("millimetres"), std::string::npos);
}

TEST(Exchange, AnArcTurnsTheSameWayInSvg) {
    const std::string text = output::svg({{"A_WALL", {quarter()}}}, "one & <two>");
    // SVG 1.1, 8.3.8: sweep 0 goes toward smaller angles, which is anticlockwise where y points down.
    EXPECT_NE(text.find("M 10.000000 0.000000 A 10.000000 10.000000 0 0 0 0.000000 -10.000000 L"), std::string::npos)
        << text;
    EXPECT_NE(text.find(" Z\""), std::string::npos);
    EXPECT_NE(text.find("width=\"12.000000mm\""), std::string::npos) << "10 mm and a margin of 1 mm round it";
    EXPECT_NE(text.find("one &amp; &lt;two&gt;"), std::string::npos);
}

TEST(Exchange, AnOpenPathEndsWhereItEnds) {
    const std::string text = output::dxf({{"B_WALL", {Path::line(at(0, 0), at(5, -3))}}}, "t");
    const std::vector<double> y = values(text, 20);
    EXPECT_DOUBLE_EQ(y.back(), -3);
    EXPECT_TRUE(values(text, 42).empty());
    EXPECT_EQ(values(text, 70).back(), 0);
}

}  // namespace
}  // namespace kerfpacket::tests
