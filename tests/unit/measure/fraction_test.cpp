#include "measure/fraction.h"

#include <clocale>
#include <cmath>
#include <locale>
#include <sstream>
#include <string>

#include <gtest/gtest.h>

using namespace kerfpacket::measure;
using namespace kerfpacket::measure::literals;

namespace {

double mm_of(std::string_view text, Unit unit = Unit::inch) {
    const auto length = parse_length(text, unit);
    EXPECT_TRUE(length.has_value()) << text << ": " << (length ? "" : length.error().message);
    return length ? length->mm() : -12345;
}

// Sizes by arithmetic from 1 in = 25.4 mm and 1 ft = 12 in (international yard and pound agreement, 1959).
TEST(ParseLength, FeetAndInches) {
    EXPECT_DOUBLE_EQ(mm_of("4 ft 2-1/2 in"), 50.5 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of("6' 2 1/2"), 74.5 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of("6'-2 1/2\""), 74.5 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of("6'2''"), 74 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of("3 feet 1 inch"), 37 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of("1 foot"), 304.8);
    EXPECT_DOUBLE_EQ(mm_of("5 ft 3/4 in"), 60.75 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of("6\xE2\x80\xB2 2\xE2\x80\xB3"), 74 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of("6\xE2\x80\x99 2\xE2\x80\x9D"), 74 * 25.4);
}

TEST(ParseLength, Decimals) {
    EXPECT_DOUBLE_EQ(mm_of("0.118 in"), 0.118 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of(".5 in"), 12.7);
    EXPECT_DOUBLE_EQ(mm_of("1880 mm"), 1880);
    EXPECT_DOUBLE_EQ(mm_of("18.4cm"), 184);
    EXPECT_DOUBLE_EQ(mm_of("2.1 m"), 2100);
}

TEST(ParseLength, BareNumbersTakeTheUnit) {
    EXPECT_DOUBLE_EQ(mm_of("12-3/4"), 12.75 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of("12 3/4"), 12.75 * 25.4);
    EXPECT_DOUBLE_EQ(mm_of("3/8"), 9.525);
    EXPECT_DOUBLE_EQ(mm_of("1880", Unit::millimetre), 1880);
    EXPECT_DOUBLE_EQ(mm_of("3/8 in", Unit::millimetre), 9.525);
}

TEST(ParseLength, KeepsTheSign) {
    EXPECT_DOUBLE_EQ(mm_of("-1 in"), -25.4);
    EXPECT_DOUBLE_EQ(mm_of("-1-1/2 in"), -38.1);
    EXPECT_DOUBLE_EQ(mm_of("  -  2 mm "), -2);
}

struct BadLength {
    std::string_view text;
    std::string_view message;
    std::size_t offset;
};

class ParseLengthRefuses : public testing::TestWithParam<BadLength> {};

TEST_P(ParseLengthRefuses, SaysWhatAndWhere) {
    const auto length = parse_length(GetParam().text, Unit::inch);
    ASSERT_FALSE(length.has_value()) << length->mm();
    EXPECT_EQ(length.error().message, GetParam().message);
    EXPECT_EQ(length.error().offset, GetParam().offset);
}

INSTANTIATE_TEST_SUITE_P(
    Texts, ParseLengthRefuses,
    testing::Values(BadLength{"", "the length is empty", 0}, BadLength{"  ", "the length is empty", 2},
                    BadLength{"wide", "expected a number", 0}, BadLength{"nan", "expected a number", 0},
                    BadLength{"-inf", "expected a number", 1}, BadLength{"+3 in", "expected a number", 0},
                    BadLength{"5 yards", "did not expect this after the length", 2},
                    BadLength{"5 inside", "did not expect this after the length", 2},
                    BadLength{"0,118 in", "a comma stands in the number", 0},
                    BadLength{"1/2/3 in", "did not expect this after the length", 3},
                    BadLength{"5 ft 20 mm", "only inches can follow feet", 8},
                    BadLength{"6-5/ in", "expected a number other than 0 under the fraction line", 5},
                    BadLength{"1/0 in", "expected a number other than 0 under the fraction line", 2},
                    BadLength{"6-5 in", "expected a fraction such as 1/2", 4},
                    BadLength{"1e999 in", "did not expect this after the length", 1},
                    BadLength{"1234567890123456 in", "the number is too large", 0}));

TEST(InchFraction, IsReduced) {
    EXPECT_EQ(inch_fraction(7.75_in), "7-3/4");
    EXPECT_EQ(inch_fraction(0.5_in), "1/2");
    EXPECT_EQ(inch_fraction(12_in), "12");
    EXPECT_EQ(inch_fraction(0_in), "0");
    EXPECT_EQ(inch_fraction(Length::inches(-1.0625)), "-1-1/16");
    EXPECT_EQ(inch_fraction(1.03125_in, 32), "1-1/32");
}

TEST(InchFraction, RoundsFirstAndCarries) {
    EXPECT_EQ(inch_fraction(0.99_in), "1");
    EXPECT_EQ(inch_fraction(11.97_in), "12");
    EXPECT_EQ(inch_fraction(0.03_in), "0");
    EXPECT_EQ(inch_fraction(Length::inches(-0.03)), "0");
    EXPECT_EQ(inch_fraction(0.03125_in), "1/16");  // halves away from zero
}

TEST(InchFraction, ReadsBackForEverySixteenth) {
    for (int n = -400; n <= 400; ++n) {
        const Length value = Length::inches(n / 16.0);
        const auto back = parse_length(inch_fraction(value), Unit::inch);
        ASSERT_TRUE(back.has_value()) << n;
        EXPECT_NEAR(back->mm(), value.mm(), 1e-9) << n;
    }
}

TEST(InchText, IsAFractionWhenItIsOne) {
    EXPECT_EQ(inch_text(0.375_in), "3/8");
    EXPECT_EQ(inch_text(0.015625_in), "1/64");
    EXPECT_EQ(inch_text(0.118_in), "0.118");
    EXPECT_TRUE(is_inch_fraction(0.0625_in, 16));
    EXPECT_FALSE(is_inch_fraction(0.03125_in, 16));
}

TEST(Fixed, RoundsAndNeverPrintsMinusZero) {
    EXPECT_EQ(fixed(1327.1499, 1), "1327.1");
    EXPECT_EQ(fixed(2.0, 3), "2.000");
    EXPECT_EQ(fixed(-0.04, 1), "0.0");
    EXPECT_EQ(fixed(-0.06, 1), "-0.1");
    EXPECT_EQ(fixed(1e300, 0).size(), 301U);
    EXPECT_EQ(mm_text(1_in), "25.4");
    EXPECT_EQ(mm_text(Length::mm(-0.01)), "0.0");
}

/// A locale that writes 1.234,5: through C++ always, through C when the machine has one.
class DecimalComma : public testing::Test {
protected:
    struct Commas : std::numpunct<char> {
        char do_decimal_point() const override { return ','; }
        char do_thousands_sep() const override { return '.'; }
        std::string do_grouping() const override { return "\3"; }
    };
    void SetUp() override {
        before_ = std::locale::global(std::locale(std::locale::classic(), new Commas));
        for (const char* name : {"de_DE.UTF-8", "es_ES.UTF-8", "fr_FR.UTF-8", "de_DE.utf8"})
            if (std::setlocale(LC_ALL, name) != nullptr) break;
    }
    void TearDown() override {
        std::setlocale(LC_ALL, "C");
        std::locale::global(before_);
    }

private:
    std::locale before_;
};

TEST_F(DecimalComma, TheLocaleItselfWritesCommas) {
    std::ostringstream stream;
    stream << 1234.5;
    ASSERT_EQ(stream.str(), "1.234,5");  // otherwise the next tests would prove nothing
}

TEST_F(DecimalComma, NumbersAreWrittenWithAPoint) {
    EXPECT_EQ(fixed(1234.5, 2), "1234.50");
    EXPECT_EQ(mm_text(1234.5_mm), "1234.5");
    EXPECT_EQ(inch_text(0.118_in), "0.118");
    EXPECT_EQ(inch_fraction(1234.5_in), "1234-1/2");
}

TEST_F(DecimalComma, LengthsAreReadWithAPoint) {
    EXPECT_DOUBLE_EQ(mm_of("0.118 in"), 0.118 * 25.4);
    EXPECT_FALSE(parse_length("0,118 in", Unit::inch).has_value());
}

}  // namespace
