#include "output/pdf.h"

#include <array>
#include <clocale>
#include <cstdlib>
#include <limits>
#include <locale>
#include <regex>
#include <set>
#include <sstream>
#include <vector>

#include <gtest/gtest.h>

#include "measure/require.h"
#include "output/dump.h"
#include "output/image.h"
#include "output/sample.h"
#include "page/placing.h"
#include "scratch.h"

namespace kerfpacket::output {
namespace {

using namespace measure::literals;
using geom::Path;
using page::Length;
using Object = QPDFObjectHandle;

std::string sample() { return pdf(sample_document(), test_faces()); }

TEST(Pdf, TheSameDocumentGivesTheSameBytes) { EXPECT_EQ(sample(), sample()); }

/// A German locale made for the test (localedef comes with libc-bin, its sources with Debian's package locales), and
/// a C++ locale to match; both are left again afterwards.
class DecimalComma {
public:
    DecimalComma() {
        const std::string folder = scratch_.path().string();
        const Ran made = run("localedef -i de_DE -f UTF-8 " + folder + "/comma.UTF-8");
        ::setenv("LOCPATH", folder.c_str(), 1);
        found_ =
            std::setlocale(LC_ALL, "comma.UTF-8") != nullptr && std::string(std::localeconv()->decimal_point) == ",";
        EXPECT_TRUE(found_) << made.printed;
        cpp_ = std::locale::global(std::locale(std::locale::classic(), new Comma));
    }
    ~DecimalComma() {
        std::locale::global(cpp_);
        std::setlocale(LC_ALL, "C");
        ::unsetenv("LOCPATH");
    }
    DecimalComma(const DecimalComma&) = delete;
    DecimalComma& operator=(const DecimalComma&) = delete;

private:
    struct Comma : std::numpunct<char> {
        char do_decimal_point() const override { return ','; }
        char do_thousands_sep() const override { return '.'; }
        std::string do_grouping() const override { return "\3"; }
    };
    Scratch scratch_;
    bool found_ = false;
    std::locale cpp_;
};

TEST(Pdf, ADecimalCommaChangesNothing) {
    const std::string before = sample();
    const std::string picture = svg(sample_document().pages[0], test_faces());
    const std::string text = dump(sample_document());
    const DecimalComma comma;
    EXPECT_EQ(sample(), before);
    EXPECT_EQ(svg(sample_document().pages[0], test_faces()), picture);
    EXPECT_EQ(dump(sample_document()), text);
}

TEST(Pdf, TellsPrintersNotToScale) {
    const std::string bytes = sample();
    const auto opened = open_pdf(bytes);
    Object root = opened->getRoot();
    Object preferences = root.getKey("/ViewerPreferences");
    EXPECT_EQ(preferences.getKey("/PrintScaling").getName(), "/None");
    EXPECT_EQ(preferences.getKey("/Enforce").getArrayItem(0).getName(), "/PrintScaling");
    EXPECT_TRUE(preferences.getKey("/PickTrayByPDFSize").getBoolValue());
    EXPECT_TRUE(preferences.getKey("/DisplayDocTitle").getBoolValue());
    EXPECT_EQ(root.getKey("/Lang").getUTF8Value(), "en-US");
    EXPECT_EQ(root.getKey("/PageLabels").getKey("/Nums").getArrayItem(1).getKey("/S").getName(), "/D");
}

TEST(Pdf, NamesItsJobAndItsMakerAndNoClock) {
    const std::string bytes = sample();
    const auto opened = open_pdf(bytes);
    Object info = opened->getTrailer().getKey("/Info");
    EXPECT_EQ(info.getKey("/Title").getUTF8Value(), "Probe job ½″ señal");
    EXPECT_EQ(info.getKey("/Subject").getUTF8Value(), "An opening and a wall");
    EXPECT_TRUE(info.getKey("/Producer").getUTF8Value().starts_with("kerfpacket "));
    EXPECT_EQ(info.getKey("/CreationDate").getStringValue(), "D:20260228000000Z");
    EXPECT_EQ(info.getKey("/ModDate").getStringValue(), "D:20260228000000Z");
    EXPECT_EQ(info.getKeys().size(), 5U);
    page::Document undated = sample_document();
    undated.date.clear();
    const std::string without = pdf(undated, test_faces());
    const auto plain = open_pdf(without);
    EXPECT_FALSE(plain->getTrailer().getKey("/Info").hasKey("/CreationDate"));
}

TEST(Pdf, PagesHaveTheSizeOfTheSheets) {
    const std::string bytes = sample();
    const auto opened = open_pdf(bytes);
    ASSERT_EQ(opened->getAllPages().size(), 2U);
    Object box = page_of(*opened, 1).getKey("/MediaBox");
    EXPECT_DOUBLE_EQ(box.getArrayItem(2).getNumericValue(), 792);
    EXPECT_DOUBLE_EQ(box.getArrayItem(3).getNumericValue(), 612);
}

TEST(Pdf, EveryFontIsEmbeddedOnceAndCanBeReadBack) {
    const std::string bytes = sample();
    const auto opened = open_pdf(bytes);
    std::set<std::string> names;
    std::set<QPDFObjGen> files;
    std::size_t fonts = 0;
    for (auto& [key, font] : page_of(*opened, 0).getKey("/Resources").getKey("/Font").getDictAsMap()) {
        ++fonts;
        Object descriptor = font.getKey("/FontDescriptor");
        names.insert(descriptor.getKey("/FontName").getName());
        ASSERT_TRUE(descriptor.getKey("/FontFile2").isStream());
        files.insert(descriptor.getKey("/FontFile2").getObjGen());
        EXPECT_EQ(descriptor.getKey("/CapHeight").getIntValue(), 729);  // 1493/2048 em
        // A symbolic font has codes of its own, and no encoding (ISO 19005-1, 6.3.7).
        EXPECT_EQ(font.getKey("/Subtype").getName(), "/TrueType");
        EXPECT_EQ(descriptor.getKey("/Flags").getIntValue(), 4);
        EXPECT_FALSE(font.hasKey("/Encoding"));
        EXPECT_TRUE(font.getKey("/ToUnicode").isStream());
        EXPECT_EQ(font.getKey("/Widths").getArrayNItems(),
                  font.getKey("/LastChar").getIntValue() - font.getKey("/FirstChar").getIntValue() + 1);
    }
    EXPECT_EQ(names.size(), 4U);
    EXPECT_EQ(files.size(), 4U);
    EXPECT_EQ(fonts, 4U);
}

TEST(Pdf, LinksHaveNoBorderArePrintableAndLeadToTheirPage) {
    const std::string bytes = sample();
    const auto opened = open_pdf(bytes);
    Object link = page_of(*opened, 0).getKey("/Annots").getArrayItem(0);
    EXPECT_EQ(link.getKey("/F").getIntValue(), 4);
    EXPECT_EQ(link.getKey("/Dest").getArrayItem(0).getObjGen(), page_of(*opened, 1).getObjGen());
    const bool bordered = link.getKey("/BS").isDictionary()
                              ? link.getKey("/BS").getKey("/W").getNumericValue() != 0
                              : link.getKey("/Border").getArrayItem(2).getNumericValue() != 0;
    EXPECT_FALSE(bordered);
}

TEST(Pdf, TheOutlineKeepsItsLevelsAndLetters) {
    const std::string bytes = sample();
    const auto opened = open_pdf(bytes);
    Object first = opened->getRoot().getKey("/Outlines").getKey("/First");
    EXPECT_EQ(first.getKey("/Title").getUTF8Value(), "Strips – señal");
    EXPECT_EQ(first.getKey("/First").getKey("/Title").getUTF8Value(), "Inside");
    EXPECT_EQ(first.getKey("/Next").getKey("/Title").getUTF8Value(), "Empty");
    EXPECT_FALSE(first.getKey("/Next").hasKey("/Next"));
}

/// x of every upright line "x y m x y l", in points.
std::vector<double> upright_lines(const std::string& content) {
    const std::regex line(R"((\S+) (\S+) m\n(\S+) (\S+) l\n)");
    std::vector<double> found;
    for (auto at = std::sregex_iterator(content.begin(), content.end(), line); at != std::sregex_iterator(); ++at)
        if ((*at)[1] == (*at)[3]) found.push_back(std::stod((*at)[1]));
    return found;
}

TEST(Pdf, TicksStandWithinAThousandthOfAMillimetre) {
    const std::string bytes = sample();
    const std::vector<double> found = upright_lines(content_of(*open_pdf(bytes), 0));
    ASSERT_EQ(found.size(), 20U);
    for (std::size_t i = 0; i < found.size(); ++i)
        EXPECT_NEAR(found[i] / 72 * 25.4, 20 + 7.919 * static_cast<double>(i), 0.001);
}

TEST(Pdf, ATickAtTheFarEndOfTheLongestPageStandsAsTrue) {
    page::Document document{"Long", "", "en-US", "", {}, {}};
    page::Page page{"strips", "A", 200_in, 3_in, {}};
    std::vector<double> expected;
    for (int i = 0; i < 400; ++i) {
        const Length x = 12.677_mm * i;
        expected.push_back(x.mm());
        page.items.emplace_back(page::PathItem{page::Role::tick, Path::line({x, 1_in}, {x, 2_in}), 0.25_pt});
    }
    document.pages.push_back(page);
    const std::string bytes = pdf(document, test_faces());
    const std::vector<double> found = upright_lines(content_of(*open_pdf(bytes), 0));
    ASSERT_EQ(found.size(), expected.size());
    for (std::size_t i = 0; i < found.size(); ++i) EXPECT_NEAR(found[i] / 72 * 25.4, expected[i], 0.001);
}

TEST(Pdf, AnEmptyPageStillHasContent) {
    const std::string bytes = sample();
    EXPECT_FALSE(content_of(*open_pdf(bytes), 1).empty());
}

TEST(Pdf, APageWithoutTextNeedsNoFont) {
    const page::PathItem line{page::Role::tick, Path::line({10_mm, 10_mm}, {10_mm, 20_mm}), 0.25_pt};
    const std::string bytes = pdf(one_item(line), test_faces());
    const auto opened = open_pdf(bytes);
    EXPECT_FALSE(page_of(*opened, 0).getKey("/Resources").getKey("/Font").isDictionary());
    EXPECT_EQ(upright_lines(content_of(*opened, 0)).size(), 1U);
    const Scratch scratch;
    scratch.write("a.pdf", bytes);
    const Ran ran = run("qpdf --check " + (scratch.path() / "a.pdf").string());
    EXPECT_EQ(ran.status, 0) << ran.printed;
    EXPECT_EQ(ran.printed.find("WARNING"), std::string::npos) << ran.printed;
}

std::ptrdiff_t count(const std::string& text, const std::string& pattern) {
    const std::regex found(pattern);
    return std::distance(std::sregex_iterator(text.begin(), text.end(), found), std::sregex_iterator());
}

TEST(Pdf, LinesOfOnePenAreOneStroke) {
    const std::string bytes = sample();
    const std::string content = content_of(*open_pdf(bytes), 0);
    EXPECT_EQ(count(content, R"((^|\n)\S+ w\n)"), 3);  // the page's first operator, then 0.25 and 1.4
    EXPECT_EQ(count(content, R"(\nS\n)"), 2);
    EXPECT_EQ(count(content, R"(\nf\n)"), 21);  // areas stay apart: 20 feet, the black square
}

/// What is between the first and the last point of every circle, in its own coordinates.
std::vector<std::string> circles(const std::string& content) {
    std::vector<std::string> found;
    const std::regex circle(R"(q\n1 0 0 1 [-0-9.]+ [-0-9.]+ cm\n([^qQ]*)Q\n)");
    for (auto at = std::sregex_iterator(content.begin(), content.end(), circle); at != std::sregex_iterator(); ++at)
        found.push_back((*at)[1]);
    return found;
}

TEST(Pdf, CirclesOfASizeAreToldAlikeWhereverTheyStand) {
    page::Document document =
        one_item(page::PathItem{page::Role::registration, Path::circle({30.123_mm, 40.456_mm}, 10_pt), 0.7_pt});
    auto other = std::get<page::PathItem>(document.pages[0].items[0]);
    other.path = Path::circle({71.9_mm, 13.37_mm}, 10_pt);
    document.pages[0].items.emplace_back(other);
    document.pages[0].correction = {1.004, 0.998};
    const std::string bytes = pdf(document, test_faces());
    const std::vector<std::string> told = circles(content_of(*open_pdf(bytes), 0));
    ASSERT_EQ(told.size(), 2U);
    EXPECT_EQ(told[0], told[1]);
    // About the middle, as large as the page is stretched: right, up, left, down.
    EXPECT_TRUE(told[0].starts_with("10.04 0 m\n"));
    for (const char* quarter : {" 0 9.98 c\n", " -10.04 0 c\n", " 0 -9.98 c\n", " 10.04 0 c\nh\nS\n"})
        EXPECT_NE(told[0].find(quarter), std::string::npos) << quarter;
}

/// A square code with its three finders; the other cells, where they may be dark, by chance.
page::CodeItem square_code() {
    page::CodeItem code;
    code.area = {{10_mm, 10_mm}, {31_mm, 31_mm}};
    code.side = 21;
    code.dark.resize(code.side * code.side);
    unsigned chance = 1;
    for (std::size_t i = 0; i < code.dark.size(); ++i) {
        const std::size_t row = i / 21, column = i % 21;
        const bool corner = (row < 8 || row > 12) && (column < 8 || column > 12) && (row < 8 || column < 8);
        chance = chance * 1664525 + 1013904223;
        const auto off = [](std::size_t at) {
            return at < 10 ? std::max(at, 3UL) - std::min(at, 3UL) : std::max(at, 17UL) - std::min(at, 17UL);
        };
        const std::size_t ring = std::max(off(row), off(column));
        code.dark[i] = corner ? ring != 2 && ring < 4 : (chance >> 16U & 1U) != 0;
    }
    return code;
}

/// Which cells are dark by the areas of the only code of a page; each is drawn once.
std::vector<bool> cells_drawn(const std::string& content, std::size_t side) {
    std::vector<bool> dark(side * side);
    const std::regex area(R"((\d+) (\d+) (\d+) (\d+) re\n)");
    for (auto at = std::sregex_iterator(content.begin(), content.end(), area); at != std::sregex_iterator(); ++at) {
        const auto number = [&](std::size_t i) { return std::stoul((*at)[i]); };
        for (std::size_t x = number(1); x < number(1) + number(3); ++x)
            for (std::size_t y = number(2); y < number(2) + number(4); ++y) {
                EXPECT_FALSE(dark.at((side - 1 - y) * side + x));
                dark.at((side - 1 - y) * side + x) = true;
            }
    }
    return dark;
}

TEST(Pdf, ACodeIsDrawnCellByCellAndItsFindersStandInTheFileOnce) {
    page::Document document = one_item(square_code());
    document.pages.push_back(document.pages[0]);
    auto& other = std::get<page::CodeItem>(document.pages[1].items[0]);
    for (std::size_t i = 9; i < 12; ++i) other.dark[i * 22] = !other.dark[i * 22];
    document.pages.push_back(document.pages[0]);
    page::turn_left(document.pages[2]);
    const std::string bytes = pdf(document, test_faces());
    const auto opened = open_pdf(bytes);
    const auto finders = [&](std::size_t page) {
        return page_of(*opened, page).getKey("/Contents").getArrayItem(1).getObjGen();
    };
    EXPECT_EQ(finders(0), finders(1));
    EXPECT_NE(finders(0), finders(2)) << "others, elsewhere";
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const auto& code = std::get<page::CodeItem>(document.pages[i].items[0]);
        EXPECT_EQ(cells_drawn(content_of(*opened, i), code.side), code.dark) << i;
    }
}

TEST(Pdf, AreasThatOverlapCutNoHoles) {
    page::Document document = one_item(
        page::PathItem{page::Role::foot,
                       Path::polyline({{20_mm, 20_mm}, {40_mm, 20_mm}, {40_mm, 40_mm}, {20_mm, 40_mm}, {20_mm, 20_mm}}),
                       {},
                       page::Dash::solid,
                       true});
    auto turned = std::get<page::PathItem>(document.pages[0].items[0]);
    turned.path = turned.path.reversed();
    document.pages[0].items.emplace_back(turned);
    const std::string bytes = pdf(document, test_faces());
    EXPECT_EQ(count(content_of(*open_pdf(bytes), 0), R"(\nf\n)"), 2);
}

TEST(Pdf, WhatNoFaceCanPrintIsRefused) {
    EXPECT_THROW(pdf(one_item(words("arc 弧")), test_faces()), fonts::MissingCharacter);
    EXPECT_THROW(pdf(one_item(words("caf\xE9")), test_faces()), fonts::MissingCharacter);
    EXPECT_THROW(pdf(one_item(words("\U0001F600")), test_faces()), fonts::MissingCharacter);
}

TEST(Pdf, ValuesThatAreNoPlaceOnPaperAreRefused) {
    for (const double bad :
         {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(), 12000.0}) {
        const Length x = Length::mm(bad);
        const page::PathItem line{page::Role::tick, Path::line({x, 1_mm}, {1_mm, 1_mm}), 1_pt};
        EXPECT_THROW(pdf(one_item(line), test_faces()), measure::Bug) << bad;
        page::TextItem text = words("x");
        text.anchor.y = x;
        EXPECT_THROW(pdf(one_item(text), test_faces()), measure::Bug) << bad;
        EXPECT_THROW(pdf(one_item(page::LinkItem{{{1_mm, 1_mm}, {2_mm, x}}, 0}), test_faces()), measure::Bug) << bad;
    }
    EXPECT_THROW(pdf(one_item(page::LinkItem{{{1_mm, 1_mm}, {2_mm, 2_mm}}, 9}), test_faces()), measure::Bug);
}

TEST(Pdf, PagesNoReaderTakesAreRefusedInPlainWords) {
    page::Document document = sample_document();
    document.pages[1].width = 201_in;
    const std::string said = thrown_by([&] { pdf(document, test_faces()); });
    EXPECT_NE(said.find("page 2"), std::string::npos) << said;
    document.pages[1].width = 2_pt;
    EXPECT_NE(thrown_by([&] { pdf(document, test_faces()); }), "");
}

/// Other people's readers, each told to be strict, must find nothing to say.
class PdfReaders : public ::testing::Test {
protected:
    PdfReaders() { scratch_.write("a.pdf", sample()); }
    std::string file() const { return (scratch_.path() / "a.pdf").string(); }
    std::string folder() const { return scratch_.path().string(); }
    Scratch scratch_;
};

TEST_F(PdfReaders, QpdfFindsNothing) {
    const Ran ran = run("qpdf --check " + file());
    EXPECT_EQ(ran.status, 0) << ran.printed;
    EXPECT_EQ(ran.printed.find("WARNING"), std::string::npos) << ran.printed;
}

TEST_F(PdfReaders, PopplerIsSilent) {
    const Ran ran = run("pdftoppm -r 50 -png " + file() + " " + folder() + "/page");
    EXPECT_EQ(ran.status, 0);
    EXPECT_EQ(ran.printed, "");
}

TEST_F(PdfReaders, MupdfIsSilent) {
    Ran ran = run("mutool draw -q -r 50 -o " + folder() + "/m%d.png " + file());
    // Debian builds mupdf without colour profiles, and it says so for any file.
    const std::string habit = "warning: ICC support is not available\n";
    if (ran.printed.starts_with(habit)) ran.printed.erase(0, habit.size());
    EXPECT_EQ(ran.status, 0);
    EXPECT_EQ(ran.printed, "");
}

TEST_F(PdfReaders, GhostscriptIsSilent) {
    const Ran ran = run("gs -q -dPDFSTOPONERROR -dNOPAUSE -dBATCH -sDEVICE=nullpage " + file());
    EXPECT_EQ(ran.status, 0);
    EXPECT_EQ(ran.printed, "");
}

TEST_F(PdfReaders, TextComesBackAsItWentIn) {
    const Ran ran = run("pdftotext -l 1 " + file() + " -");
    EXPECT_EQ(ran.status, 0);
    for (const char* text : {"Mark strip 5|6 × 12-3/4″ ±", "Señal ▲ ☐ ⚠ Řád", "“Done” → 40", "CHECK 6 in"})
        EXPECT_NE(ran.printed.find(text), std::string::npos) << text << " is not in:\n" << ran.printed;
}

TEST(Pdf, PagesKeepTheirNumbersOfTheWholePacket) {
    page::Document document = one_item(words("a"));
    document.pages.resize(4, document.pages.front());
    const std::array<std::size_t, 4> numbers{3, 4, 9, 1};
    for (std::size_t i = 0; i < 4; ++i) document.pages[i].number = numbers.at(i);
    const std::string bytes = pdf(document, test_faces());
    const auto file = open_pdf(bytes);
    const std::string labels = file->getRoot().getKey("/PageLabels").getKey("/Nums").unparse();
    EXPECT_EQ(labels, "[ 0 << /S /D /St 3 >> 2 << /S /D /St 9 >> 3 << /S /D >> ]");
}

TEST(Pdf, AStretchedPageHasItsPointsStretchedAboutItsMiddle) {
    page::PathItem line;
    line.width = 1_mm;
    line.path = Path::line({20_mm, 10_mm}, {180_mm, 10_mm});
    page::Document document = one_item(line);
    document.pages[0].correction = {1.004, 0.998};
    const std::string bytes = pdf(document, test_faces());
    const auto file = open_pdf(bytes);
    const std::string content = content_of(*file, 0);
    std::smatch found;
    ASSERT_TRUE(std::regex_search(content, found, std::regex("([0-9.]+) ([0-9.]+) m\\s+([0-9.]+) ([0-9.]+) l")));
    // 200 x 100 mm: 80 mm left and right of the middle, 40 mm under it.
    const auto mm = [&](std::size_t i) { return std::stod(found[i]) / 72 * 25.4; };
    EXPECT_NEAR(mm(1), 100 - 80 * 1.004, 0.0005);
    EXPECT_NEAR(mm(3), 100 + 80 * 1.004, 0.0005);
    EXPECT_NEAR(mm(2), 50 - 40 * 0.998, 0.0005);
}

TEST(Pdf, APacketIsReadBackFromAFewObjects) {
    // Who looks for its job unpacks the stream of objects that its catalogue stands in, and no page's.
    page::Document document = sample_document();
    document.pages.resize(60, document.pages.front());
    const std::string bytes = pdf(document, test_faces(), {{"job.toml", "a = 1\n", "a job", "Source"}});
    const auto file = open_pdf(bytes);
    const auto objects = file->getXRefTable();
    EXPECT_GT(objects.size(), 300U);
    const int stream = objects.at(file->getRoot().getObjGen()).getObjStreamNumber();
    EXPECT_EQ(objects.at(file->getRoot().getKey("/AF").getArrayItem(0).getObjGen()).getObjStreamNumber(), stream);
    EXPECT_LT(file->getObjectByID(stream, 0).getDict().getKey("/N").getIntValue(), 20);
}

}  // namespace
}  // namespace kerfpacket::output
