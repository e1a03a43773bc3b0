// An angle has one reading, or is a question that spells out both.
#include <cmath>
#include <string>

#include "jobs.h"

using namespace kerfpacket::job;
using namespace kerfpacket::job::tests;

namespace {

Diagnostics told(const std::string& angle) {
    return read_job({"job.toml", wall_text("radius = \"9 ft\"\nangle = " + angle)}).diagnostics;
}

TEST(Angles, HaveOneReading) {
    const std::vector<std::pair<std::string, double>> good{{"45", 45},
                                                           {"45.3", 45.3},
                                                           {"\"45.3\"", 45.3},
                                                           {"\"45.3 deg\"", 45.3},
                                                           {"\"45.3deg\"", 45.3},
                                                           {"\" 45.3 degrees \"", 45.3},
                                                           {"\"45.3\u00B0\"", 45.3},
                                                           {"45.25", 45.25},
                                                           {"45.00", 45},
                                                           {"45.70", 45.7},
                                                           {"45.300", 45.3},
                                                           {"+45", 45},
                                                           {"65.123456789", 65.123456789}};
    for (const auto& [text, degrees] : good) {
        const Wall wall = read_wall("radius = \"9 ft\"\nangle = " + text);
        ASSERT_TRUE(wall.angle) << text;
        EXPECT_NEAR(wall.angle->value.degrees(), degrees, 1e-9) << text;
    }
}

TEST(Angles, ThatHaveTwoAreAsked) {
    struct Asked {
        std::string text, one, other;
    };
    for (const Asked& asked : {Asked{"45.30", "45.3", "45.5"}, Asked{"\"22.50 deg\"", "22.5", "22.8333"},
                               Asked{"\"45 30\"", "45.5", "45.3"}, Asked{"\"7 5\"", "7.0833", "7.5"}}) {
        const Diagnostics found = told(asked.text);
        ASSERT_EQ(found.size(), 1U) << asked.text;
        EXPECT_EQ(found.front().message, "angle: this can be read in two ways") << asked.text;
        EXPECT_EQ(found.front().hint,
                  "write \"" + asked.one + " deg\", or \"" + asked.other + " deg\", whichever is meant");
    }
}

TEST(Angles, OfAnotherFormAreToldHowToBeWritten) {
    const std::vector<std::pair<std::string, std::string>> forms{
        {"\"22 1/2\"", "write \"22.5 deg\""},
        {"\"22-1/2 deg\"", "write \"22.5 deg\""},
        {"\"22 1/2\u00B0\"", "write \"22.5 deg\""},
        {"\"45 30'\"", "write \"45.5 deg\""},
        {"\"45\u00B030\u2032\"", "write \"45.5 deg\""},
        {"\"45 deg 30 min\"", "write \"45.5 deg\""},
        {"\"45d30m\"", "write \"45.5 deg\""},
        {"\"45:30\"", "write \"45.5 deg\""},
        {"\"45-30\"", "write \"45.5 deg\""},
        {"\"22,5\"", "decimals have a point: write \"22.5 deg\""}};
    for (const auto& [text, hint] : forms) {
        const Diagnostics found = told(text);
        ASSERT_EQ(found.size(), 1U) << text;
        EXPECT_EQ(found.front().hint, hint) << text;
    }
}

TEST(Angles, WhatIsNoneIsTold) {
    for (const std::string text :
         {"\"\"",     "\" \"",          "\"deg\"",      "\"-\"",       "\"1e2\"",    "\"0x10\"",
          "\"inf\"",  "\"nan\"",        "\"30 grad\"",  "\"0.5 rad\"", "\"3/12\"",   "\"3 in 12\"",
          "\"45.\"",  "\".5\"",         "\"1.2.3\"",    "\"1,2,3\"",   "\"22 1/0\"", "\"45 75'\"",
          "\"50 %\"", "\"45 deg deg\"", "\"45 30 20\"", "inf",         "nan",        "true",
          "[45]",     "07:30:00",       "0x2D",         "4_5",         "4.5e1"}) {
        const Diagnostics found = told(text);
        ASSERT_EQ(found.size(), 1U) << text;
        EXPECT_FALSE(found.front().hint.empty()) << text;
    }
}

}  // namespace
