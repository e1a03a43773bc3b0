#include "output/image.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <fstream>
#include <iterator>
#include <memory>
#include <vector>

#include <cairo/cairo.h>
#include <gtest/gtest.h>

#include "output/pdf.h"
#include "output/png.h"
#include "output/sample.h"
#include "scratch.h"

namespace kerfpacket::output {
namespace {

using namespace measure::literals;
using geom::Path;

/// A PNG read back by Cairo; grey level of a pixel, 255 white.
class Picture {
public:
    explicit Picture(std::string bytes) : bytes_(std::move(bytes)) {
        surface_.reset(cairo_image_surface_create_from_png_stream(take, this));
        EXPECT_EQ(cairo_surface_status(surface_.get()), CAIRO_STATUS_SUCCESS);
        EXPECT_EQ(cairo_image_surface_get_format(surface_.get()), CAIRO_FORMAT_RGB24);
    }
    int width() const { return cairo_image_surface_get_width(surface_.get()); }
    int height() const { return cairo_image_surface_get_height(surface_.get()); }
    int grey(int x, int y) const {
        const std::ptrdiff_t stride = cairo_image_surface_get_stride(surface_.get());
        return cairo_image_surface_get_data(surface_.get())[y * stride + std::ptrdiff_t{4} * x];
    }
    bool ink_in(int x0, int y0, int x1, int y1) const {
        for (int y = y0; y < y1; ++y)
            for (int x = x0; x < x1; ++x)
                if (grey(x, y) < 128) return true;
        return false;
    }

private:
    static cairo_status_t take(void* self, unsigned char* data, unsigned int length) {
        auto* picture = static_cast<Picture*>(self);
        if (picture->bytes_.size() - picture->done_ < length) return CAIRO_STATUS_READ_ERROR;
        std::memcpy(data, picture->bytes_.data() + picture->done_, length);
        picture->done_ += length;
        return CAIRO_STATUS_SUCCESS;
    }
    std::string bytes_;
    std::size_t done_ = 0;
    std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface_{nullptr, cairo_surface_destroy};
};

// At 254 dpi a millimetre is ten pixels.
TEST(Png, HasInkWhereItemsAreAndNoneElsewhere) {
    const page::PathItem box{
        page::Role::foot, Path::rectangle({{50_mm, 20_mm}, {60_mm, 30_mm}}), {}, page::Dash::solid, true};
    const Picture picture(png(one_item(box).pages[0], test_faces(), 254));
    ASSERT_EQ(picture.width(), 2000);
    ASSERT_EQ(picture.height(), 1000);
    EXPECT_EQ(picture.grey(550, 750), 0);  // the middle of the box, y counted down from the top
    EXPECT_EQ(picture.grey(501, 799), 0);
    EXPECT_EQ(picture.grey(498, 750), 255);
    EXPECT_EQ(picture.grey(550, 697), 255);
    EXPECT_EQ(picture.grey(5, 5), 255);
}

TEST(Png, AHairlineKeepsItsWeight) {
    const page::PathItem line{page::Role::tick, Path::line({50_mm, 10_mm}, {50_mm, 90_mm}), 1_mm};
    const Picture picture(png(one_item(line).pages[0], test_faces(), 254));
    int ink = 0;
    for (int x = 480; x < 520; ++x) ink += 255 - picture.grey(x, 500);
    EXPECT_NEAR(ink / 255.0, 10, 0.05);
}

TEST(Png, SetsTextFromItsAnchorAndWhiteOnBlack) {
    page::Document document = one_item(words("HHHH"));
    auto& text = std::get<page::TextItem>(document.pages[0].items[0]);
    text.size = 10_mm;
    text.advance = test_faces().width(text.face, text.text, text.size);
    const auto ink = [&] {
        const Picture picture(png(document.pages[0], test_faces(), 254));
        const int baseline = 500;
        const int cap = static_cast<int>(test_faces().cap_height(text.face) * 100);
        EXPECT_FALSE(picture.ink_in(0, baseline + 2, 2000, 1000));
        EXPECT_FALSE(picture.ink_in(0, 0, 2000, baseline - cap - 2));
        int left = 2000, right = 0;
        for (int x = 0; x < 2000; ++x)
            if (picture.ink_in(x, 0, x + 1, 1000)) left = std::min(left, x), right = x;
        return std::pair{left, right};
    };
    const int advance = static_cast<int>(text.advance.mm() * 10);
    const auto [left, right] = ink();
    EXPECT_NEAR(left, 100, 15);  // side bearing of H: 0.1 em
    EXPECT_NEAR(right, 100 + advance, 15);
    text.anchor.x = 100_mm;
    text.align = page::Align::centre;
    const auto [l, r] = ink();
    EXPECT_NEAR((l + r) / 2.0, 1000, 2);
    text.align = page::Align::right;
    EXPECT_NEAR(ink().second, 1000, 15);
}

TEST(Png, WhiteLettersStandOnBlack) {
    const Picture picture(png(sample_document().pages[0], test_faces(), 254));
    const int top = picture.height() - 2600;
    bool white = false;
    for (int y = top + 10; y < top + 90; ++y)
        for (int x = 210; x < 290; ++x) white = white || picture.grey(x, y) > 200;
    EXPECT_TRUE(white);
    EXPECT_LT(picture.grey(203, top + 3), 10);
}

// The last column of an odd width has a byte for itself.
TEST(Png, HasSixteenShadesFromPaperToInk) {
    for (const std::size_t width : {2U, 3U, 31U}) {
        std::string ink, rows;
        for (std::size_t i = 0; i < 2 * (width + 1); ++i) ink += static_cast<char>(i * 37 % 256);
        ink[0] = '\0';
        ink[width - 1] = '\xFF';
        std::vector<unsigned char> bytes(ink.begin(), ink.end());
        const Picture picture(ink_png(bytes.data(), width, 2, width + 1, rows));
        ASSERT_EQ(picture.width(), static_cast<int>(width));
        ASSERT_EQ(picture.height(), 2);
        EXPECT_EQ(picture.grey(0, 0), 255);
        EXPECT_EQ(picture.grey(static_cast<int>(width) - 1, 0), 0);
        for (std::size_t y = 0; y < 2; ++y)
            for (std::size_t x = 0; x < width; ++x)
                EXPECT_NEAR(picture.grey(static_cast<int>(x), static_cast<int>(y)), 255 - bytes[y * (width + 1) + x],
                            15)
                    << width << " wide, " << x << ' ' << y;
    }
}

TEST(Png, TheSamePageGivesTheSameBytes) {
    const page::Page page = sample_document().pages[0];
    EXPECT_EQ(png(page, test_faces(), 96), png(page, test_faces(), 96));
}

TEST(Png, TooLargeAPictureIsRefusedInPlainWords) {
    page::Page page = sample_document().pages[1];
    page.width = 200_in;
    EXPECT_NE(thrown_by([&] { png(page, test_faces(), 300); }).find("too large"), std::string::npos);
    EXPECT_NE(thrown_by([&] { png(page, test_faces(), 0); }), "");
    EXPECT_NE(thrown_by([&] { png(page, test_faces(), std::nan("")); }), "");
}

TEST(Png, WhatNoFaceCanPrintIsRefused) {
    EXPECT_THROW(png(one_item(words("弧")).pages[0], test_faces(), 96), fonts::MissingCharacter);
    EXPECT_THROW(svg(one_item(words("弧")).pages[0], test_faces()), fonts::MissingCharacter);
}

/// A grey PGM file: its size and its bytes, from the top.
struct Pgm {
    int width = 0;
    int height = 0;
    std::string grey;

    int at(int x, int y) const {
        const auto row = static_cast<std::size_t>(y) * static_cast<std::size_t>(width);
        return static_cast<unsigned char>(grey.at(row + static_cast<std::size_t>(x)));
    }
};

Pgm read_pgm(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::string kind;
    int most = 0;
    Pgm pgm;
    in >> kind >> pgm.width >> pgm.height >> most;
    in.get();
    pgm.grey = std::string(std::istreambuf_iterator<char>(in), {});
    EXPECT_EQ(kind, "P5");
    return pgm;
}

// Two writers that share nothing but the items, read by two renderers: what one draws and the other does not, or
// somewhere else, shows. Compared by the mean grey of squares of 5 mm, for each renderer smooths edges in its own way:
// when this was written they differed by 0.9 of 255 at most, and by 2.8 with nothing but the hairline ticks left out.
TEST(Png, LooksLikeThePdfAsMupdfDrawsIt) {
    const Scratch scratch;
    const page::Document document = sample_document();
    scratch.write("a.pdf", pdf(document, test_faces()));
    const std::string folder = scratch.path().string();
    ASSERT_EQ(run("mutool draw -q -r 300 -c gray -A 8 -o " + folder + "/a.pgm " + folder + "/a.pdf 1").status, 0);
    const Pgm mupdf = read_pgm(scratch.path() / "a.pgm");
    const Picture ours(png(document.pages[0], test_faces(), 300));
    ASSERT_EQ(mupdf.width, ours.width());
    ASSERT_EQ(mupdf.height, ours.height());
    constexpr int side = 60;
    double worst = 0;
    for (int top = 0; top + side <= mupdf.height; top += side)
        for (int left = 0; left + side <= mupdf.width; left += side) {
            int difference = 0;
            for (int y = top; y < top + side; ++y)
                for (int x = left; x < left + side; ++x) difference += ours.grey(x, y) - mupdf.at(x, y);
            worst = std::max(worst, std::abs(difference / double{side * side}));
        }
    EXPECT_LT(worst, 1.5);
    EXPECT_GT(worst, 0);
}

TEST(Svg, IsWellFormedAndOfThePagesSize) {
    const Scratch scratch;
    const std::string bytes = svg(sample_document().pages[0], test_faces());
    scratch.write("page.svg", bytes);
    const Ran ran = run("xmllint --noout " + (scratch.path() / "page.svg").string());
    EXPECT_EQ(ran.status, 0) << ran.printed;
    EXPECT_NE(bytes.find("width=\"612pt\" height=\"792pt\""), std::string::npos) << bytes.substr(0, 300);
}

TEST(Svg, TheSamePageGivesTheSameBytes) {
    const page::Page page = sample_document().pages[0];
    EXPECT_EQ(svg(page, test_faces()), svg(page, test_faces()));
}

// At 25.4 dpi a millimetre is a pixel.
TEST(ContactSheet, ShowsEveryPageOnceWithinItsFrame) {
    const page::PathItem box{
        page::Role::foot, Path::rectangle({{50_mm, 20_mm}, {150_mm, 80_mm}}), {}, page::Dash::solid, true};
    page::Document document = one_item(box);
    document.pages.resize(3, document.pages.front());
    const Picture picture(contact_sheet(document, test_faces(), 25.4));
    // Rows of ink as wide as the box; its edges may be grey.
    int rows = 0;
    for (int y = 0; y < picture.height(); ++y) {
        int run = 0;
        for (int x = 0; x < picture.width(); ++x) {
            run = picture.grey(x, y) < 128 ? run + 1 : 0;
            const bool ends = x + 1 == picture.width() || picture.grey(x + 1, y) >= 128;
            if (ends && run >= 99 && run <= 101) ++rows;
        }
    }
    EXPECT_NEAR(rows, 3 * 60, 3);
    EXPECT_EQ(picture.grey(picture.width() - 1, picture.height() - 1), 255);
}

TEST(ContactSheet, DrawsAPageOfARollSmaller) {
    page::Document document = one_item(words("a"));
    document.pages[0].height = 200_in;
    document.pages[0].width = 62_mm;
    const Picture picture(contact_sheet(document, test_faces(), 10));
    EXPECT_LT(picture.height(), 200);
    EXPECT_TRUE(picture.ink_in(0, 0, picture.width(), picture.height()));
}

}  // namespace
}  // namespace kerfpacket::output
