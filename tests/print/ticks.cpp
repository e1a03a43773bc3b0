// Where the ticks of a 236 in blank stand on paper: in the content stream and in pixels, strip by strip and after
// joining all strips edge to edge as a person does.

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>

#include "print/content.h"
#include "print/packet.h"
#include "print/raster.h"

namespace kerfpacket::tests {
namespace {

using namespace measure::literals;

/// Half an inch lands on whole pixels at 600 dpi and flatters every renderer; the other spacing does not.
class Ticks : public testing::TestWithParam<std::string> {
protected:
    const BuiltPacket packet_{harbor_stair(GetParam()), {"--only", "strips"}};
    const std::vector<PrintedStrip> strips_ = printed_strips(read_content(packet_.pdf()));
    const std::vector<double> kerfs_ = packet_.kerfs_mm();
};

/// Largest and mean distance from where things should be.
struct Deviation {
    double worst = 0;
    void add(double mm) { worst = std::max(worst, std::abs(mm)); }
};

/// What joining told: how far each tick is from its kerf, after every joint before it.
struct Joined {
    double worst = 0;         ///< anywhere along the blank
    double worst_in_115 = 0;  ///< within 115 in of zero
    int within_115 = 0;       ///< ticks within 115 in
};

/// Lays the strips end to end by their printed edges, from the zero end. `measured` gives where a line at that x of
/// a strip is seen to stand.
template <class Measured>
Joined join(const std::vector<PrintedStrip>& strips, const std::vector<double>& kerfs, Measured&& measured) {
    Joined result;
    double zero_of_strip = 0;
    std::size_t n = 0;
    for (const PrintedStrip& strip : strips) {
        const double left = measured(strip, strip.outline.low.x);
        for (const Length tick : strip.ticks) {
            const double at = zero_of_strip + measured(strip, tick) - left;
            const double off = std::abs(at - kerfs.at(n++));
            result.worst = std::max(result.worst, off);
            if (at > 115 * 25.4) continue;
            result.worst_in_115 = std::max(result.worst_in_115, off);
            ++result.within_115;
        }
        zero_of_strip += measured(strip, strip.outline.high.x) - left;
    }
    EXPECT_EQ(n, kerfs.size());
    return result;
}

TEST_P(Ticks, StandAtWholeSpacingsFromZero) {
    const double spacing = packet_.report().at("pieces").at(0).at("spacing_mm");
    ASSERT_GT(kerfs_.size(), 400U);
    for (const double at : kerfs_) EXPECT_NEAR(at, std::round(at / spacing) * spacing, 1e-5);
}

TEST_P(Ticks, OneAKerfOnEveryStrip) {
    std::size_t ticks = 0;
    for (const PrintedStrip& strip : strips_) ticks += strip.ticks.size();
    EXPECT_EQ(ticks, kerfs_.size());
    EXPECT_GT(strips_.size(), 20U);
}

TEST_P(Ticks, ContentStreamJoinsToThePlan) {
    const Joined joined = join(strips_, kerfs_, [](const PrintedStrip&, Length x) { return x.mm(); });
    std::cout << "joined, content stream: worst " << joined.worst << " mm in all\n";
    EXPECT_LE(joined.worst_in_115, 0.05);
    EXPECT_LE(joined.worst, 0.05);
    EXPECT_GT(joined.within_115, 200);
}

TEST_P(Ticks, ContentStreamIsTrueWithinAStrip) {
    Deviation deviation;
    std::size_t n = 0;
    for (const PrintedStrip& strip : strips_) {
        const std::size_t first = n;
        for (const Length tick : strip.ticks)
            deviation.add((tick - strip.ticks.front()).mm() - (kerfs_.at(n++) - kerfs_.at(first)));
    }
    std::cout << "content stream: worst " << deviation.worst << " mm\n";
    EXPECT_LE(deviation.worst, 0.001);
}

/// The page's pixels, drawn once a page; strips come in page order.
class Pixels {
public:
    Pixels(Renderer renderer, fs::path pdf) : renderer_(renderer), pdf_(std::move(pdf)) {}

    /// Middle of the upright line near x, between 4 and 11 pt above the front edge, where nothing but lines stands.
    double operator()(const PrintedStrip& strip, Length x) {
        if (strip.page != page_) raster_ = draw_page(renderer_, pdf_, strip.page, 600);
        page_ = strip.page;
        const Length base = strip.outline.low.y;
        return ink_centre(raster_, {{x - 0.6_mm, base + 4_pt}, {x + 0.6_mm, base + 11_pt}}).mm();
    }

private:
    Renderer renderer_;
    fs::path pdf_;
    int page_ = 0;
    Raster raster_;
};

double worst_tick(const std::vector<PrintedStrip>& strips, Pixels& pixels) {
    Deviation deviation;
    for (const PrintedStrip& strip : strips)
        for (const Length tick : strip.ticks) deviation.add(pixels(strip, tick) - tick.mm());
    return deviation.worst;
}

TEST_P(Ticks, PixelsOfMupdf) {
    Pixels pixels(Renderer::mupdf, packet_.pdf());
    const double worst = worst_tick(strips_, pixels);
    std::cout << "mupdf 600 dpi: worst " << worst << " mm\n";
    EXPECT_LE(worst, 0.01);
}

TEST_P(Ticks, PixelsOfPoppler) {
    Pixels pixels(Renderer::poppler, packet_.pdf());
    const double worst = worst_tick(strips_, pixels);
    std::cout << "poppler 600 dpi: worst " << worst << " mm\n";
    EXPECT_LE(worst, 0.025);
}

TEST_P(Ticks, PixelsOfMupdfJoinToThePlan) {
    Pixels pixels(Renderer::mupdf, packet_.pdf());
    const Joined joined = join(strips_, kerfs_, pixels);
    std::cout << "joined, mupdf 600 dpi: worst " << joined.worst_in_115 << " mm to 115 in, " << joined.worst
              << " mm in all\n";
    EXPECT_LE(joined.worst_in_115, 0.05);
}

INSTANTIATE_TEST_SUITE_P(HarborStair, Ticks, testing::Values("1/2 in", "11.3 mm"),
                         [](const auto& spacing) { return spacing.index == 0 ? "HalfInch" : "OddSpacing"; });

/// Distances run leftward from the right end of each strip and ticks stand half a kerf from the middles of the kerfs.
TEST(TicksFromTheRight, StandWhereTheBladesLeftSideGoes) {
    const BuiltPacket packet(golden_job("metric-right"), {"--only", "strips"});
    const std::vector<PrintedStrip> strips = printed_strips(read_content(packet.pdf()));
    const std::vector<double> kerfs = packet.kerfs_mm();
    const double half_kerf = 1.4;
    Pixels mupdf(Renderer::mupdf, packet.pdf());
    Deviation content, pixels;
    double zero_of_strip = 0;
    std::size_t n = 0;
    for (const PrintedStrip& strip : strips) {
        for (auto tick = strip.ticks.rbegin(); tick != strip.ticks.rend(); ++tick, ++n) {
            // The blade's left side is farther from a zero at the right.
            const double expected = kerfs.at(n) + half_kerf - zero_of_strip;
            content.add((strip.outline.high.x - *tick).mm() - expected);
            pixels.add(strip.outline.high.x.mm() - mupdf(strip, *tick) - expected);
        }
        zero_of_strip += strip.outline.width().mm();
    }
    EXPECT_EQ(n, kerfs.size());
    std::cout << "from the right: worst " << content.worst << " mm in the content stream, " << pixels.worst
              << " mm in mupdf's pixels\n";
    EXPECT_LE(content.worst, 0.002);  // five strips laid end to end
    EXPECT_LE(pixels.worst, 0.01);
}

}  // namespace
}  // namespace kerfpacket::tests
