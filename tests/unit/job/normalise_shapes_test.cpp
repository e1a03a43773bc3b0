// The canonical text of the shapes: all that was given is in it, defaults too, and it reads back as the same job.
#include "jobs.h"

using namespace kerfpacket::job;
using namespace kerfpacket::job::tests;

namespace {

/// Reads back as the same text and gives it.
std::string there_and_back(const std::string& text) {
    std::string once = normalised(read_well(text));
    EXPECT_EQ(normalised(read_well(once)), once);
    return once;
}

bool has(const std::string& text, std::string_view line) {
    return text.find("\n" + std::string(line) + "\n") != std::string::npos;
}

TEST(NormalisedShapes, RadiiOfEachShape) {
    const std::string size = "\nspan = \"60 in\"\nrise = \"14 in\"\n";
    const std::string tudor =
        there_and_back(opening_text("shape = \"tudor\"" + size + "side_radius = \"8 in\"\ncrown_radius = \"70 in\""));
    EXPECT_TRUE(has(tudor, "shape = \"tudor\""));
    EXPECT_TRUE(has(tudor, "side_radius = \"203.200000 mm\""));
    EXPECT_TRUE(has(tudor, "crown_radius = \"1778.000000 mm\""));
    const std::string three = there_and_back(opening_text("shape = \"three-centred\"" + size));
    EXPECT_EQ(three.find("radius"), std::string::npos);
    const std::string eyebrow =
        there_and_back(opening_text("shape = \"eyebrow\"" + size + "reverse_radius = \"50 in\""));
    EXPECT_TRUE(has(eyebrow, "reverse_radius = \"1270.000000 mm\""));
    const std::string pointed =
        there_and_back(opening_text("shape = \"pointed\"\nspan = \"50 in\"\nradius = \"50 in\""));
    EXPECT_TRUE(has(pointed, "radius = \"1270.000000 mm\""));
    EXPECT_EQ(pointed.find("rise"), std::string::npos);
}

TEST(NormalisedShapes, Ordinates) {
    const std::string text =
        there_and_back(opening_text("shape = \"ordinates\"\nordinates = [[0, 0], [10, 4], [\"20 in\", 5], [30, "
                                    "0]]\nend_angles = [30, \"-45 deg\"]"));
    EXPECT_TRUE(has(text,
                    "ordinates = [\n"
                    "    [\"0.000000 mm\", \"0.000000 mm\"],\n"
                    "    [\"254.000000 mm\", \"101.600000 mm\"],\n"
                    "    [\"508.000000 mm\", \"127.000000 mm\"],\n"
                    "    [\"762.000000 mm\", \"0.000000 mm\"],\n"
                    "]"));
    EXPECT_TRUE(has(text, "fit = \"fair\""));
    EXPECT_TRUE(has(text, "end_angles = [30.000000000, -45.000000000]"));
    EXPECT_EQ(text.find("span"), std::string::npos);
    EXPECT_EQ(text.find("rise"), std::string::npos);
    const std::string wall = there_and_back(wall_text("ordinates = [[0, 0], [10, 4], [30, 0]]\nfit = \"arc\""));
    EXPECT_TRUE(has(wall, "fit = \"arc\""));
}

TEST(NormalisedShapes, FairIsWhatIsDrawnWhenNothingElseIsSaid) {
    const std::string points = "shape = \"ordinates\"\nordinates = [[0, 0], [10, 4], [30, 0]]";
    EXPECT_EQ(fingerprint(read_well(opening_text(points))),
              fingerprint(read_well(opening_text(points + "\nfit = \"fair\""))));
    EXPECT_NE(fingerprint(read_well(opening_text(points))),
              fingerprint(read_well(opening_text(points + "\nfit = \"arc\""))));
}

TEST(NormalisedShapes, ManyPointsReadBack) {
    std::string list = "shape = \"ordinates\"\nordinates = [\n";
    for (int i = 0; i <= 4999; ++i)
        list += "[" + std::to_string(i) + ", " + kerfpacket::measure::fixed(i * (4999 - i) / 1e6, 6) + "],\n";
    there_and_back(opening_text(list + "]"));
}

TEST(NormalisedShapes, LegsThatAreEqualAreOneLength) {
    const std::string arch = "shape = \"parabolic\"\nspan = 60\nrise = 14\n";
    const std::string one = there_and_back(opening_text(arch + "legs = \"72 in\""));
    EXPECT_TRUE(has(one, "legs = \"1828.800000 mm\""));
    EXPECT_EQ(there_and_back(opening_text(arch + "legs = [\"6 ft\", 72]\nthrough_legs = false")), one);
    const std::string two = there_and_back(opening_text(arch + "legs = [72, 71]\nthrough_legs = true"));
    EXPECT_TRUE(has(two, "legs = [\"1828.800000 mm\", \"1803.400000 mm\"]\nthrough_legs = true"));
}

TEST(NormalisedShapes, CasingAndForm) {
    const std::string arch = "shape = \"segmental\"\nspan = 60\nrise = 14";
    const std::string bare = there_and_back(opening_text(arch, "[opening.casing]\nwidth = 3\n[opening.form]\n"));
    EXPECT_EQ(bare.find("segments"), std::string::npos);
    EXPECT_TRUE(has(bare, "[opening.form]"));
    const std::string full = there_and_back(
        opening_text(arch, "[opening.casing]\nwidth = 3\nsegments = 4\nboard = 7\n[opening.form]\nstep = \"5 in\"\n"));
    EXPECT_TRUE(has(full, "segments = 4\nboard = \"177.800000 mm\""));
    EXPECT_TRUE(has(full, "[opening.form]\nstep = \"127.000000 mm\""));
    const std::string wall = there_and_back(wall_text("radius = 90\nangle = 40", "[wall.form]\nstations = [5, 10]\n"));
    EXPECT_TRUE(has(wall, "stations = [\n    \"127.000000 mm\",\n    \"254.000000 mm\",\n]"));
}

TEST(NormalisedShapes, EveryFigureChangesTheFingerprint) {
    const auto print_of = [](const std::string& keys) {
        return read_well(opening_text("shape = \"ordinates\"\n" + keys)).fingerprint;
    };
    const std::string before = print_of("ordinates = [[0, 0], [10, 4], [30, 0]]");
    EXPECT_NE(print_of("ordinates = [[0, 0], [10, \"4-1/64 in\"], [30, 0]]"), before);
    EXPECT_NE(print_of("ordinates = [[0, 0], [\"10-1/64 in\", 4], [30, 0]]"), before);
    EXPECT_NE(print_of("ordinates = [[0, 0], [10, 4], [30, 0]]\nend_angles = [0, 0]"), before);
    EXPECT_NE(print_of("ordinates = [[0, 0], [10, 4], [30, 0]]\nlegs = [1, 2]"), before);
}

}  // namespace
