// Ticks on every paper that strips are printed on, as every reader and the filters of CUPS draw them at 600 dpi. Where
// they belong is told by the packet's own display list; that the list is true to the job is tested elsewhere.

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>

#include "print/cups.h"
#include "print/packet.h"
#include "print/raster.h"
#include "support/laid_out.h"

namespace kerfpacket::tests {
namespace {

using namespace measure::literals;
using geom::Point;

/// A wall of 78 kerfs, an odd 11.3 mm apart, numbered from the left, on this paper.
std::string on_paper(const std::string& printer) {
    return R"([job]
number = "P-8"
title = "Paper trial"
revision = "A"
date = 2026-03-09
units = "in"

[saw]
blade_diameter = "12 in"
kerf = 0.118

[printer]
)" + printer +
           R"(
[[wall]]
id = "B"
radius = "40 in"
angle = 50
side = "concave"

[wall.board]
material = "mdf"
thickness = "3/4 in"
width = "7-1/4 in"
spacing = "11.3 mm"
)";
}

/// Where a kerf is marked: the middle of its line, and the part of it where nothing else stands.
struct Tick {
    bool upright = true;
    Point foot;
    Point from;
    Point to;
};

std::vector<Tick> ticks_on(const page::Page& page) {
    std::vector<Tick> all;
    for (const page::Item& item : page.items) {
        const auto* path = std::get_if<page::PathItem>(&item);
        // The shaft above the hairline is a tick too, and stands over it.
        if (path == nullptr || path->role != page::Role::tick || path->width > 0.3_pt) continue;
        const geom::Direction up = geom::direction(path->path.start(), path->path.end());
        const Point foot = path->path.start();
        all.push_back({std::abs(up.x) < 0.5, foot, foot + up * 4_pt, foot + up * 11_pt});
    }
    return all;
}

/// How far from its place a tick's ink stands, along the board. `turned` is the same page turned a quarter turn to the
/// right, for ticks that lie.
Length off(const Raster& raster, const Raster& turned, const page::Page& page, const Tick& tick) {
    const auto window = [](Point a, Point b) {
        const Rect along = geom::united({a, a}, {b, b});
        return Rect{{along.low.x - 0.6_mm, along.low.y}, {along.high.x + 0.6_mm, along.high.y}};
    };
    if (tick.upright) return ink_centre(raster, window(tick.from, tick.to)) - tick.foot.x;
    const auto turn = [&](Point p) { return Point{p.y, page.width - p.x}; };
    return ink_centre(turned, window(turn(tick.from), turn(tick.to))) - tick.foot.y;
}

class Worst {
public:
    void page(const Raster& raster, const page::Page& page) {
        const std::vector<Tick> ticks = ticks_on(page);
        const bool lying = std::any_of(ticks.begin(), ticks.end(), [](const Tick& t) { return !t.upright; });
        const Raster turned = lying ? turned_right(raster) : Raster{};
        for (const Tick& tick : ticks) {
            worst_ = std::max(worst_, std::abs(off(raster, turned, page, tick).mm()));
            ++ticks_;
        }
    }
    double mm() const { return worst_; }
    std::size_t ticks() const { return ticks_; }

private:
    double worst_ = 0;
    std::size_t ticks_ = 0;
};

struct Paper {
    std::string name;
    std::string printer;  ///< lines of [printer]
};

class OnPaper : public testing::TestWithParam<Paper> {
protected:
    /// What the strips alone are printed from, and what stands on them.
    fs::path strips() const {
        const fs::path target = packet_.job().parent_path() / "strips.pdf";
        const Outcome built = run_program(
            {KERFPACKET_PROGRAM, "build", packet_.job().string(), "--only", "strips", "--out", target.string()});
        EXPECT_TRUE(built.status == 0 || built.status == 3) << built.err;
        return target;
    }
    std::vector<page::Page> pages() const {
        std::vector<page::Page> found;
        for (const page::Page& page : laid_out(packet_.job()).pages)
            if (page.sheet == "strips") found.push_back(page);
        return found;
    }
    double worst(Renderer renderer) const {
        Worst worst;
        const std::vector<page::Page> all = pages();
        const fs::path pdf = strips();
        for (std::size_t i = 0; i < all.size(); ++i)
            worst.page(draw_page(renderer, pdf, static_cast<int>(i) + 1, 600), all[i]);
        EXPECT_EQ(worst.ticks(), packet_.kerfs_mm().size());
        return worst.mm();
    }

    const BuiltPacket packet_{on_paper(GetParam().printer)};
};

TEST_P(OnPaper, TicksStandWhereTheyBelong) {
    const double mupdf = worst(Renderer::mupdf);
    const double poppler = worst(Renderer::poppler);
    const double ghostscript = worst(Renderer::ghostscript);
    std::cout << GetParam().name << ": mupdf " << mupdf << ", poppler " << poppler << ", ghostscript " << ghostscript
              << " mm\n";
    EXPECT_LE(mupdf, 0.01);
    EXPECT_LE(poppler, 0.025);
    EXPECT_LE(ghostscript, 0.025);
}

INSTANTIATE_TEST_SUITE_P(Papers, OnPaper,
                         testing::Values(Paper{"Letter", R"(media = "na_letter_8.5x11in")"},
                                         Paper{"A4", R"(media = "iso_a4_210x297mm")"}),
                         [](const auto& paper) { return paper.param.name; });

/// A sheet whose strips lie across the paper comes turned to the left, as it is fed.
class ThroughCups : public OnPaper {};

TEST_P(ThroughCups, TicksStandWhereTheyBelong) {
    const std::vector<page::Page> all = pages();
    const fs::path pdf = strips();
    for (const CupsFilter filter : {CupsFilter::mupdftoraster, CupsFilter::gstoraster, CupsFilter::pdftoraster}) {
        const std::string media = all.front().width > all.front().height ? "na_letter_8.5x11in" : "custom";
        const std::vector<Raster> rasters = through_cups(filter, pdf, media);
        ASSERT_EQ(rasters.size(), all.size());
        Worst worst;
        for (std::size_t i = 0; i < all.size(); ++i) {
            const bool turned = (rasters[i].width < rasters[i].height) != (all[i].width < all[i].height);
            worst.page(turned ? turned_right(rasters[i]) : rasters[i], all[i]);
        }
        EXPECT_EQ(worst.ticks(), packet_.kerfs_mm().size());
        std::cout << GetParam().name << ", " << name_of(filter) << ": " << worst.mm() << " mm\n";
        EXPECT_LE(worst.mm(), filter == CupsFilter::mupdftoraster ? 0.01
                              : filter == CupsFilter::gstoraster  ? 0.025
                                                                  : 0.06);
    }
}

INSTANTIATE_TEST_SUITE_P(Papers, ThroughCups, testing::Values(Paper{"Letter", R"(media = "na_letter_8.5x11in")"}),
                         [](const auto& paper) { return paper.param.name; });

}  // namespace
}  // namespace kerfpacket::tests
