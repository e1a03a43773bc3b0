// Ticks on every paper that strips are printed on, as every reader and the filters of CUPS draw them at 600 dpi. Where
// they belong is told by the packet's own display list; that the list is true to the job is tested elsewhere.

#include <gtest/gtest.h>

#include <fmt/format.h>

#include <cmath>
#include <iostream>

#include "print/coupon_strips.h"
#include "print/cups.h"
#include "print/packet.h"
#include "print/raster.h"
#include "support/laid_out.h"

namespace kerfpacket::tests {
namespace {

using namespace measure::literals;
using geom::Point;

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
        // The shaft above the fine line is a tick too, and stands over it.
        if (path == nullptr || path->role != page::Role::tick || path->width > 0.6_pt) continue;
        const geom::Direction up = geom::direction(path->path.start(), path->path.end());
        const Point foot = path->path.start();
        all.push_back({std::abs(up.x) < 0.5, foot, foot + up * 4_pt, path->path.end() - up * 1_pt});
    }
    return all;
}

/// How far from its place a tick's ink stands, along the board.
Length off(const Raster& raster, const Tick& tick) {
    const Rect line = geom::united({tick.from, tick.from}, {tick.to, tick.to});
    if (tick.upright)
        return ink_centre(raster, {{line.low.x - 0.6_mm, line.low.y}, {line.high.x + 0.6_mm, line.high.y}}) -
               tick.foot.x;
    return ink_height(raster, {{line.low.x, line.low.y - 0.6_mm}, {line.high.x, line.high.y + 0.6_mm}}) - tick.foot.y;
}

class Worst {
public:
    void page(const Raster& raster, const page::Page& page) {
        for (const Tick& tick : ticks_on(page)) {
            worst_ = std::max(worst_, std::abs(off(raster, tick).mm()));
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
    std::string board{};  ///< lines of the board
    double degrees = 50;  ///< of a bend of 40 in radius
};

class OnPaper {
protected:
    explicit OnPaper(const Paper& paper) : packet_(paper_trial(paper.printer, paper.board, paper.degrees)) {}

    /// What the strips alone are printed from, and what stands on them.
    fs::path strips() const {
        fs::path target = packet_.job().parent_path() / "strips.pdf";
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
        EXPECT_EQ(worst.ticks(), packet_.kerfs_mm().size() + kerfs_of_coupon(laid_out(packet_.job())));
        return worst.mm();
    }

    const BuiltPacket packet_;
};

class Readers : public OnPaper, public testing::TestWithParam<Paper> {
protected:
    Readers() : OnPaper(GetParam()) {}
};

TEST_P(Readers, TicksStandWhereTheyBelong) {
    const double mupdf = worst(Renderer::mupdf);
    const double poppler = worst(Renderer::poppler);
    const double ghostscript = worst(Renderer::ghostscript);
    std::cout << GetParam().name << ": mupdf " << mupdf << ", poppler " << poppler << ", ghostscript " << ghostscript
              << " mm\n";
    EXPECT_LE(mupdf, 0.01);
    EXPECT_LE(poppler, 0.025);
    EXPECT_LE(ghostscript, 0.025);
}

// On the wide rolls strips lie side by side: boards long enough for two and three of them.
INSTANTIATE_TEST_SUITE_P(
    Papers, Readers,
    testing::Values(Paper{"Letter", R"(media = "na_letter_8.5x11in")"}, Paper{"A4", R"(media = "iso_a4_210x297mm")"},
                    Paper{"Legal", R"(media = "na_legal_8.5x14in")"}, Paper{"Ledger", R"(media = "na_ledger_11x17in")"},
                    Paper{"A3", R"(media = "iso_a3_297x420mm")"}, Paper{"Custom", R"(media = "custom_shop_12x19.5in")"},
                    Paper{"Adhesive", "adhesive = true"}, Paper{"Edge", "", R"(strip = "edge")"},
                    Paper{"FromTheRight", "", "zero = \"right\"\ntick = \"right\""},
                    Paper{"Roll1in", R"(strip_media = "custom_roll_1in")"},
                    Paper{"Roll62mm", R"(strip_media = "custom_roll_62mm")"},
                    Paper{"Roll62mmEdge", R"(strip_media = "custom_roll_62mm")", R"(strip = "edge")"},
                    Paper{"Roll62mmFromTheRight", R"(strip_media = "custom_roll_62mm")",
                          "zero = \"right\"\ntick = \"left\""},
                    Paper{"Roll4in", R"(strip_media = "custom_roll_4in")"},
                    Paper{"Roll24in", R"(strip_media = "custom_roll_24in")", "", 100},
                    Paper{"Roll36in", R"(strip_media = "custom_roll_36in")", "", 140}),
    [](const auto& paper) { return paper.param.name; });

struct Fed {
    Paper paper;
    CupsFilter filter;
};

class ThroughCups : public OnPaper, public testing::TestWithParam<Fed> {
protected:
    ThroughCups() : OnPaper(GetParam().paper) {}
};

/// Letter, whichever way the page lies on it, or a piece of a roll. PWG 5101.1 counts in hundredths of a millimetre,
/// and mupdftoraster takes the whole points in that: a piece must not be said to be a hair too short.
std::string fed_as(const page::Page& page) {
    if (std::abs(std::min(page.width, page.height).points() - 612) < 1e-6) return "na_letter_8.5x11in";
    const auto up = [](Length length) { return std::ceil(length.mm() * 100 - 1e-6) / 100; };
    return fmt::format("Custom.{:.2f}x{:.2f}mm", up(page.width), up(page.height));
}

TEST_P(ThroughCups, TicksStandWhereTheyBelong) {
    const CupsFilter filter = GetParam().filter;
    const std::vector<page::Page> all = pages();
    const std::vector<Raster> rasters = through_cups(filter, strips(), fed_as(all.front()));
    ASSERT_EQ(rasters.size(), all.size());
    Worst worst;
    for (std::size_t i = 0; i < all.size(); ++i) {
        // A sheet whose strips lie across the paper comes turned to the left, as it is fed.
        const bool turned = (rasters[i].width < rasters[i].height) != (all[i].width < all[i].height);
        worst.page(turned ? turned_right(rasters[i]) : rasters[i], all[i]);
    }
    EXPECT_EQ(worst.ticks(), packet_.kerfs_mm().size() + kerfs_of_coupon(laid_out(packet_.job())));
    std::cout << GetParam().paper.name << ", " << name_of(filter) << ": " << worst.mm() << " mm\n";
    EXPECT_LE(worst.mm(), filter == CupsFilter::mupdftoraster ? 0.01 : filter == CupsFilter::gstoraster ? 0.025 : 0.06);
}

const Paper letter{"Letter", R"(media = "na_letter_8.5x11in")"};
const Paper roll_4in{"Roll4in", R"(strip_media = "custom_roll_4in")"};
const Paper roll_62mm{"Roll62mm", R"(strip_media = "custom_roll_62mm")"};

// mupdftoraster counts paper in whole points and shrinks a page of 175.75 to 175, whoever wrote it: on 62 mm it is left
// out, and a printer that is fed so has to be measured.
INSTANTIATE_TEST_SUITE_P(Papers, ThroughCups,
                         testing::Values(Fed{letter, CupsFilter::mupdftoraster}, Fed{letter, CupsFilter::gstoraster},
                                         Fed{letter, CupsFilter::pdftoraster}, Fed{roll_4in, CupsFilter::mupdftoraster},
                                         Fed{roll_4in, CupsFilter::gstoraster}, Fed{roll_4in, CupsFilter::pdftoraster},
                                         Fed{roll_62mm, CupsFilter::gstoraster},
                                         Fed{roll_62mm, CupsFilter::pdftoraster}),
                         [](const auto& fed) { return fed.param.paper.name + "_" + name_of(fed.param.filter); });

}  // namespace
}  // namespace kerfpacket::tests
