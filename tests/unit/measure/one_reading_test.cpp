// Every length that is read has one reading: judged by a grammar of its own, written apart from the reader, from what
// tapes and rules show (common practice, no source: halves to sixty-fourths of an inch, feet and inches under twelve).
#include <cmath>
#include <optional>
#include <random>
#include <regex>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "measure/fraction.h"

using namespace kerfpacket::measure;

namespace {

/// What a text says in millimetres when it is one of the plain forms; none for every other text.
std::optional<double> only_reading(const std::string& text, Unit bare) {
    static const std::string fraction = "(?:([1-9][0-9]*)/(2|4|8|16|32|64))";
    static const std::string feet_mark = "(?: *(?:ft\\.?|foot|feet|'))",
                             inch_mark = "(?: *(?:in\\.?|inch|inches|\"|''))";
    static const std::regex decimal(
        "^ *(- *)?([0-9]{0,15}(?:\\.[0-9]+)?) *(mm|cm|m|ft\\.?|foot|feet|'|in\\.?|inch|inches|\"|'')? *$");
    static const std::regex mixed("^ *(- *)?(?:([0-9]+)(?:-| +))?" + fraction + "(?:" + inch_mark + "|(" + feet_mark +
                                  "))? *$");
    // "60 ft.2" runs a point and a figure together.
    static const std::string feet_before = "(?: *(?:ft\\.(?![0-9])|ft(?!\\.)|foot|feet|'))";
    static const std::regex both("^ *(- *)?([0-9]+)" + feet_before +
                                 "(?:-| *)(?:([0-9]+(?:\\.[0-9]+)?)|(?:([0-9]+)(?:-| +))?" + fraction + ")" +
                                 inch_mark + "? *$");
    std::smatch m;
    const auto number = [&](std::size_t i) { return m[i].length() > 0 ? std::stod(m[i].str()) : 0.0; };
    const auto proper = [&](std::size_t top, std::size_t bottom) { return number(top) < number(bottom); };
    const double inch = 25.4;
    if (std::regex_match(text, m, decimal) && m[2].length() > 0) {
        const double value = number(2);
        const std::string unit = m[3].str(), figures = m[2].str();
        double factor = bare == Unit::inch ? inch : 1;
        const bool mm = unit == "mm" || (unit.empty() && bare == Unit::millimetre);
        if (unit == "mm") factor = 1;
        else if (unit == "cm") factor = 10;
        else if (unit == "m") factor = 1000;
        else if (!unit.empty()) factor = unit[0] == 'f' || unit == "'" ? 12 * inch : inch;
        // 1.250 mm may be 1250 mm; 4.5 ft may be 4 ft 5 in.
        static const std::regex thousands("^[1-9][0-9]{0,2}\\.[0-9]{2}0$"), inches_behind("^[0-9]*\\.(0?[1-9]|1[01])$");
        if (mm && std::regex_match(figures, thousands)) return {};
        if (factor == 12 * inch && std::regex_match(figures, inches_behind)) return {};
        return (m[1].length() > 0 ? -1 : 1) * value * factor;
    }
    if (std::regex_match(text, m, mixed)) {
        const bool feet = m[5].length() > 0;
        const bool unit_given = feet || text.find_first_of("i\"'") != std::string::npos;
        if (!proper(3, 4) || (!unit_given && bare == Unit::millimetre)) return {};
        return (m[1].length() > 0 ? -1 : 1) * (number(2) + number(3) / number(4)) * inch * (feet ? 12 : 1);
    }
    if (std::regex_match(text, m, both)) {
        if (m[5].length() > 0 && !proper(5, 6)) return {};
        const double inches = m[5].length() > 0 ? number(4) + number(5) / number(6) : number(3);
        if (inches >= 12) return {};
        return (m[1].length() > 0 ? -1 : 1) * (number(2) * 12 + inches) * inch;
    }
    return {};
}

/// Texts in quotes of a hint that spells out two readings.
std::vector<std::string> readings(const std::string& hint) {
    std::vector<std::string> found;
    for (std::size_t open = hint.find('"'); open != std::string::npos; open = hint.find('"', open + 1)) {
        const std::size_t close = hint.find('"', open + 1);
        found.push_back(hint.substr(open + 1, close - open - 1));
        open = close;
    }
    return found;
}

TEST(OneReading, OfEveryTextThatIsRead) {
    const std::vector<std::string> parts{"0",   "1",   "2",    "5",    "8",    "12",   "16",  "22", "60",
                                         "3/4", "1/2", "5/16", "9/8",  "1/3",  ".",    "/",   ",",  "-",
                                         " ",   " ",   " ft",  " in",  "'",    "\"",   " mm", "ft", "in",
                                         "mm",  "1/0", ".125", ".250", "4 ft", "5/10", " m",  "''", "1/64"};
    std::mt19937 random(20261127);
    int read = 0, asked = 0, refused = 0;
    for (int i = 0; i < 300'000; ++i) {
        std::string text;
        const std::size_t count = 1 + random() % 6;
        for (std::size_t k = 0; k < count; ++k) text += parts[random() % parts.size()];
        const Unit unit = random() % 2 == 0 ? Unit::inch : Unit::millimetre;
        const auto length = parse_length(text, unit);
        const auto only = only_reading(text, unit);
        ASSERT_EQ(length.has_value(), only.has_value()) << "\"" << text << "\" " << (unit == Unit::inch ? "in" : "mm")
                                                        << ": " << (length ? "" : length.error().message);
        if (length) {
            ASSERT_NEAR(length->mm(), *only, 1e-9 * std::max(1.0, std::abs(*only))) << text;
            ++read;
        } else if (length.error().message == "this can be read in two ways") {
            const auto both = readings(length.error().hint);
            ASSERT_GE(both.size(), 2U) << text << ": " << length.error().hint;
            EXPECT_NE(both[0], both[1]) << text;
            ++asked;
        } else {
            ++refused;
        }
    }
    // Otherwise the texts would not try much.
    EXPECT_GT(read, 10'000);
    EXPECT_GT(asked, 10'000);
    EXPECT_GT(refused, 10'000);
}

struct Asked {
    const char* text;
    const char* one;
    const char* other;
    Unit unit = Unit::inch;
};
class TwoReadings : public testing::TestWithParam<Asked> {};

TEST_P(TwoReadings, AreSpelledOutAndEachIsReadAsItIsMeant) {
    const Asked& asked = GetParam();
    const auto length = parse_length(asked.text, asked.unit);
    ASSERT_FALSE(length.has_value()) << asked.text << " is " << length->inches();
    EXPECT_EQ(length.error().message, "this can be read in two ways");
    const auto both = readings(length.error().hint);
    ASSERT_GE(both.size(), 2U) << length.error().hint;
    EXPECT_EQ(both[0], asked.one);
    EXPECT_EQ(both[1], asked.other);
    for (const std::string& text : both) EXPECT_TRUE(parse_length(text, asked.unit).has_value()) << text;
}

INSTANTIATE_TEST_SUITE_P(
    Texts, TwoReadings,
    testing::Values(Asked{"60.1/2 in", "60-1/2 in", "30.05 in"}, Asked{"58.3/4", "58-3/4", "14.575"},
                    Asked{"4 ft 22 in", "5 ft 10 in", "4 ft 2 in"}, Asked{"4 ft 12 in", "5 ft", "4 ft 2 in"},
                    Asked{"5 3/2 in", "6-1/2 in", "26-1/2 in"}, Asked{"123/4 in", "12-3/4 in", "30-3/4 in"},
                    Asked{"9/8 in", "1-1/8 in", "9-1/8 in"}, Asked{"1/3 in", "0.3333 in", "1/4 in"},
                    Asked{"5/10 in", "0.5 in", "5/8 in"}, Asked{"5 -1/2 in", "5-1/2 in", "4-1/2 in"},
                    Asked{"5 - 1/2 in", "5-1/2 in", "4-1/2 in"}, Asked{"5\u22121/2 in", "5-1/2 in", "4-1/2 in"},
                    Asked{"1.250.5 mm", "1250.5 mm", "1.2505 mm"}, Asked{"1,250 in", "1250 in", "1.250 in"},
                    Asked{"4,5 in", "4.5 in", "4 in"}, Asked{"1.250 mm", "1250 mm", "1.25 mm"},
                    Asked{"4.5 ft", "4 ft 6 in", "4 ft 5 in"}, Asked{"4.5 ft 2 in", "4 ft 8 in", "4 ft 2 in"},
                    Asked{"5.5 1/2 in", "6 in", "5-1/2 in"}, Asked{"1/2.5 in", "1/2 in", "0.4 in"},
                    Asked{"12-3/4 mm", "12.75 mm", "12-3/4 in"},
                    Asked{"12-3/4", "12.75", "12-3/4 in", Unit::millimetre},
                    Asked{"6' -2\"", "6 ft 2 in", "5 ft 10 in"}, Asked{"\u2153 in", "0.3333 in", "1/4 in"}));

struct Typed {
    const char* text;
    double inches;
};
class AsItIsTyped : public testing::TestWithParam<Typed> {};

TEST_P(AsItIsTyped, IsRead) {
    const auto length = parse_length(GetParam().text, Unit::inch);
    ASSERT_TRUE(length.has_value()) << GetParam().text << ": " << length.error().message;
    EXPECT_DOUBLE_EQ(length->inches(), GetParam().inches);
}

INSTANTIATE_TEST_SUITE_P(Texts, AsItIsTyped,
                         testing::Values(Typed{"60\u00BD in", 60.5}, Typed{"60 \u00BD in", 60.5},
                                         Typed{"\u00BE in", 0.75}, Typed{"60-\u215D in", 60.625},
                                         Typed{"5\u20131/2 in", 5.5}, Typed{"5\u00A01/2\u00A0in", 5.5},
                                         Typed{"4\u2032 2\u00BD\u2033", 50.5}, Typed{"4\u2019 2 1\u20442\u201D", 50.5},
                                         Typed{"4 Ft. 2 In.", 50}, Typed{"4 FT 2 IN", 50}, Typed{"-\u00BC in", -0.25},
                                         Typed{"\u22121/4 in", -0.25}, Typed{"6'-2 1/2\"", 74.5},
                                         Typed{"4/8 in", 0.5}));

TEST(OneReading, StrangersAreToldByName) {
    const auto length = parse_length("5 \u00D7 3 in", Unit::inch);
    ASSERT_FALSE(length.has_value());
    EXPECT_EQ(length.error().message, "a length has no place for the multiplication sign (U+00D7)");
    EXPECT_EQ(length.error().offset, 2U);
    EXPECT_EQ(parse_length("5 \u2460", Unit::inch).error().message, "a length has no place for the character U+2460");
    EXPECT_EQ(parse_length("5\x01 in", Unit::inch).error().message, "a length has no place for the character U+0001");
}

TEST(OneReading, WhatIsWrittenReadsBack) {
    std::mt19937 random(7);
    for (int i = 0; i < 20'000; ++i) {
        const double value = std::uniform_real_distribution(0.0, 12000.0)(random);
        const Length length = i % 2 == 0 ? Length::inches(std::round(value * 64) / 64) : Length::mm(value);
        for (const Unit unit : {Unit::inch, Unit::millimetre}) {
            const std::string text = length_text(length, unit);
            const auto back = parse_length(text, Unit::inch);
            ASSERT_TRUE(back.has_value()) << text << ": " << back.error().message;
            EXPECT_NEAR(back->mm(), length.mm(), unit == Unit::inch ? 0.0005 * 25.4 + 1e-9 : 0.0051) << text;
        }
        const auto fraction = parse_length(inch_fraction(length), Unit::inch);
        ASSERT_TRUE(fraction.has_value()) << inch_fraction(length);
        EXPECT_NEAR(fraction->inches(), length.inches(), 1.0 / 32 + 1e-9);
    }
}

TEST(OneReading, LengthsBeyondWholeNumbersAreWrittenWithoutHarm) {
    EXPECT_EQ(inch_fraction(Length::inches(-9.3e18)).front(), '-');
    EXPECT_FALSE(inch_fraction(Length::inches(1e300)).empty());
    EXPECT_FALSE(inch_fraction(Length::inches(std::nan(""))).empty());
}

}  // namespace
