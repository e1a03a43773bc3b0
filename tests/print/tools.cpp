// The measuring tools themselves, on pages whose lines are known.

#include <gtest/gtest.h>

#include "output/pdf.h"
#include "print/content.h"
#include "print/raster.h"
#include "support/program.h"

namespace kerfpacket::tests {
namespace {

using namespace measure::literals;
using geom::Path;
using page::Role;

/// One strip of 400 x 72 pt with ticks at odd places, and a line that is no tick.
const std::vector<Length> ticks = {61.7_pt, 100_pt, 132.123_pt, 299.999_pt};

page::Document one_strip() {
    page::Page page{"strips", "A", 792_pt, 612_pt, {}};
    page.items.emplace_back(
        page::PathItem{Role::outline, Path::rectangle({{54_pt, 400_pt}, {454_pt, 472_pt}}), 0.7_pt});
    for (const Length x : ticks)
        page.items.emplace_back(page::PathItem{Role::tick, Path::line({x, 400_pt}, {x, 412_pt}), 0.5_pt});
    page.items.emplace_back(page::PathItem{Role::limit, Path::line({200_pt, 400_pt}, {200_pt, 472_pt}), 1.4_pt});
    page.items.emplace_back(
        page::TextItem{Role::text, "strip", page::Face::regular, 9_pt, {54_pt, 500_pt}, page::Align::left, {}, 0_pt});
    return {"tools", "", "en-US", "2026-01-02", {page}, {}};
}

class Tools : public testing::Test {
protected:
    Tools() {
        const fonts::Faces faces(fs::path(KERFPACKET_BUILD_DIR) / "fonts");
        spill(pdf(), output::pdf(one_strip(), faces));
    }
    fs::path pdf() const { return folder_ / "tools.pdf"; }
    const Folder folder_;
};

TEST_F(Tools, ContentTellsStripsAndTicks) {
    const std::vector<PrintedPage> pages = read_content(pdf());
    ASSERT_EQ(pages.size(), 1U);
    EXPECT_NEAR(pages[0].media.width().points(), 792, 1e-6);
    const std::vector<PrintedStrip> strips = printed_strips(pages);
    ASSERT_EQ(strips.size(), 1U);
    EXPECT_NEAR(strips[0].outline.low.x.points(), 54, 1e-4);
    EXPECT_NEAR(strips[0].outline.high.x.points(), 454, 1e-4);
    ASSERT_EQ(strips[0].ticks.size(), ticks.size());
    for (std::size_t i = 0; i < ticks.size(); ++i) EXPECT_NEAR(strips[0].ticks[i].mm(), ticks[i].mm(), 0.001);
}

TEST_F(Tools, PixelsTellWhereALineIs) {
    const Raster mupdf = draw_page(Renderer::mupdf, pdf(), 1, 600);
    const Raster poppler = draw_page(Renderer::poppler, pdf(), 1, 600);
    for (const Length x : ticks) {
        const Rect window{{x - 0.6_mm, 404_pt}, {x + 0.6_mm, 411_pt}};
        EXPECT_NEAR(ink_centre(mupdf, window).mm(), x.mm(), 0.01);
        EXPECT_NEAR(ink_centre(poppler, window).mm(), x.mm(), 0.025);
        // A line that stands elsewhere in the same window is told to do so.
        const Rect beside{{x - 0.3_mm, 404_pt}, {x + 0.9_mm, 411_pt}};
        EXPECT_NEAR(ink_centre(mupdf, beside).mm(), x.mm(), 0.01);
    }
}

TEST_F(Tools, NoInkIsNoLine) {
    const Raster raster = draw_page(Renderer::mupdf, pdf(), 1, 600);
    EXPECT_THROW(ink_centre(raster, {{110_pt, 404_pt}, {114_pt, 411_pt}}), std::runtime_error);
}

TEST_F(Tools, CropAndFrameKeepEveryPixel) {
    const Raster raster = draw_page(Renderer::mupdf, pdf(), 1, 300);
    const Raster part = crop(raster, {{195_pt, 420_pt}, {205_pt, 440_pt}});
    const Raster sheet = framed(part);
    const auto ink = [](const Raster& one) {
        double sum = 0;
        for (int y = 0; y < one.height; ++y)
            for (int x = 0; x < one.width; ++x) sum += one.ink(x, y);
        return sum;
    };
    EXPECT_GT(ink(part), 0);
    EXPECT_EQ(ink(sheet), ink(part));
}

}  // namespace
}  // namespace kerfpacket::tests
