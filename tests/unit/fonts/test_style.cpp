#include "fonts/style.h"

#include <sstream>

#include <gtest/gtest.h>

#include "scratch.h"

namespace kerfpacket::fonts {
namespace {

std::string shipped() {
    std::ostringstream text;
    text << std::ifstream(KERFPACKET_SOURCE_DIR "/templates/layout.toml").rdbuf();
    return text.str();
}

/// What read_style says about the shipped layout with one text put for another.
std::string complaint(const std::string& from, const std::string& to) {
    std::string text = shipped();
    const std::size_t at = text.find(from);
    if (at == std::string::npos) return "the test looks for text that is not there";
    const Scratch scratch;
    scratch.write("layout.toml", text.replace(at, from.size(), to));
    return thrown_by([&] { read_style(scratch.path()); });
}

TEST(Style, TheShippedLayoutIsTheDesign) {
    const Style style = read_style(KERFPACKET_SOURCE_DIR "/templates");
    EXPECT_EQ(style.order, (std::vector<std::string>{"cover", "changes", "refused", "safety", "stock", "work-order",
                                                     "climb", "survey", "coupon", "setup", "strain", "strips",
                                                     "flat-blank", "checklist", "template", "casing", "form", "install"}));
    const std::vector<std::pair<Length, double>> expected = {
        {style.tiny, 8},  {style.small, 9},         {style.text, 11},      {style.strong, 13},      {style.title, 17},
        {style.huge, 24}, {style.hair, 0.25},       {style.fine, 0.5},     {style.line, 0.7},       {style.heavy, 1.4},
        {style.end, 2.8}, {style.strip_height, 72}, {style.strip_lap, 54}, {style.tile_overlap, 27}};
    for (const auto& [length, points] : expected) EXPECT_NEAR(length.points(), points, 1e-12);
}

TEST(Style, MistakesNameFileLineAndKey) {
    const std::string text = complaint("tiny = 8 ", "tiny = \"8\" ");
    EXPECT_NE(text.find("layout.toml:9: type.tiny must be a number"), std::string::npos) << text;
    EXPECT_NE(complaint("hair = 0.25", "hair = 0").find("line.hair"), std::string::npos);
    EXPECT_NE(complaint("hair = 0.25", "hair = nan").find("line.hair"), std::string::npos);
    EXPECT_NE(complaint("lap = 54", "pal = 54").find("strip.lap is missing"), std::string::npos);
    EXPECT_NE(complaint("[tile]", "[tiles]").find("tile.overlap is missing"), std::string::npos);
    EXPECT_NE(complaint("\"cover\"", "1").find("order"), std::string::npos);
    EXPECT_NE(complaint("order = ", "sequence = ").find("order must be a list"), std::string::npos);
}

TEST(Style, AMissingFileIsNamed) {
    EXPECT_NE(thrown_by([] { read_style("/nowhere"); }).find("/nowhere/layout.toml"), std::string::npos);
}

}  // namespace
}  // namespace kerfpacket::fonts
