// Segments of a ring in stacks: the closed form against gaps that are sampled, and counts worked out beforehand.

#include "plan/nest.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <set>

#include "job/read.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

struct Spot {
    double x = 0;
    double y = 0;
};

/// The edge of a sector in inches: both arcs and both ends, its axis along y, the ring's centre at `centre`.
std::vector<Spot> edge(const Sector& sector, double centre, int steps) {
    std::vector<Spot> spots;
    const double in = sector.inner.inches(), out = sector.outer.inches(), half = sector.half.radians();
    const auto add = [&](double radius, double angle) {
        spots.push_back({radius * std::sin(angle), centre + radius * std::cos(angle)});
    };
    for (int i = 0; i <= steps; ++i) {
        const double part = static_cast<double>(i) / steps;
        add(in, half * (2 * part - 1));
        add(out, half * (2 * part - 1));
        add(in + (out - in) * part, half);
        add(in + (out - in) * part, -half);
    }
    return spots;
}

/// How far a spot is from a sector whose ring has its centre at the origin; 0 inside.
double away(const Sector& sector, Spot spot) {
    const double in = sector.inner.inches(), out = sector.outer.inches(), half = sector.half.radians();
    const double radius = std::hypot(spot.x, spot.y);
    const double angle = std::atan2(std::abs(spot.x), spot.y);
    if (angle <= half) return std::max({0.0, radius - out, in - radius});
    // The nearest spot of the end on that side.
    const double along = std::clamp(std::abs(spot.x) * std::sin(half) + spot.y * std::cos(half), in, out);
    return std::hypot(std::abs(spot.x) - along * std::sin(half), spot.y - along * std::cos(half));
}

double gap(const Sector& sector, Length pitch, int steps) {
    double least = 1e9;
    for (const Spot& spot : edge(sector, pitch.inches(), steps)) least = std::min(least, away(sector, spot));
    // And the other way round: the lower one's edge from the upper one.
    for (const Spot& spot : edge(sector, -pitch.inches(), steps)) least = std::min(least, away(sector, spot));
    return least;
}

TEST(Nest, NeighboursStandAtLeastACutApartAndHardlyMore) {
    std::mt19937 random(4);
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random);
    };
    for (int i = 0; i < 400; ++i) {
        const double r = between(6, 90);
        const Sector sector{Length::inches(r), Length::inches(r + between(1, 8)), Angle::degrees(between(3, 85))};
        const double cut = between(0.06, 0.5);
        const Length pitch = nest_pitch(sector, Length::inches(cut));
        const double found = gap(sector, pitch, 1500);
        EXPECT_GE(found, cut - 1e-9) << r;
        // Corners are among the spots, so that the gap is found as it is: none is given away.
        EXPECT_LE(found, cut + 3e-4) << r;
        EXPECT_LT(gap(sector, pitch - 0.02_in, 1500), cut) << r;
    }
}

struct Published {
    double r, w, degrees, pitch, height;
    int count;
};

TEST(Nest, CountsOnASheetOfFortyNineByNinetySeven) {
    // Worked out and sampled before this room was written: inches, saw cut 1/8 in, no trim.
    for (const Published& one : {Published{32, 3.5, 60, 4.12, 7.79, 22}, Published{24, 3.5, 60, 4.10, 6.72, 33},
                                 Published{60, 5.5, 30, 5.81, 7.54, 16}, Published{20, 3.5, 45, 3.87, 5.02, 60}}) {
        const Sector sector{Length::inches(one.r), Length::inches(one.r + one.w), Angle::degrees(one.degrees / 2)};
        NestedSize size;
        size.width = sector.width();
        size.height = sector.height();
        size.pitch = nest_pitch(sector, 0.125_in);
        EXPECT_NEAR(size.pitch.inches(), one.pitch, 0.006);
        EXPECT_NEAR(size.height.inches(), one.height, 0.006);
        const auto [columns, rows] = nest_grid(size, 97_in, 49_in, 0.125_in);
        EXPECT_EQ(columns * rows, one.count) << one.r;
    }
}

std::string arch(const std::string& id, const std::string& shape, const std::string& more, int quantity) {
    return "[[opening]]\nid = \"" + id + "\"\nshape = \"" + shape + "\"\nspan = \"5 ft\"\n" + more +
           "legs = \"80 in\"\ndepth = \"5 in\"\nquantity = " + std::to_string(quantity) +
           "\n[opening.liner]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\n[opening.casing]\nwidth = \"3 1/2 in\"\n"
           "reveal = \"1/4 in\"\nsegments = 4\n";
}

Plan planned(const std::string& pieces) {
    const std::string text =
        "[job]\nnumber = \"7\"\ntitle = \"t\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = \"in\"\n"
        "[saw]\nblade_diameter = 10\nkerf = 0.126\n" +
        pieces;
    const job::Reading reading = job::read_job({"job.toml", text});
    EXPECT_TRUE(reading.complete) << job::render(reading.diagnostics, {"job.toml", text});
    return make_plan(reading.job).value();
}

/// Every segment once, none over a neighbour's strip, column or stack, all within the trims.
void expect_laid(const NestPlan& plan) {
    std::multiset<std::array<int, 3>> seen;
    for (const NestSheet& sheet : plan.sheets) {
        Length edge = plan.trim - plan.cut;
        for (const NestStrip& strip : sheet.strips) {
            const NestedSize& size = plan.sizes[strip.size];
            EXPECT_GE(strip.from - edge, plan.cut - 1e-6_mm);
            edge = strip.from + size.height + size.pitch * (strip.rows - 1);
            const int columns = (strip.count + strip.rows - 1) / strip.rows;
            EXPECT_LE(size.width * columns + plan.cut * (columns - 1), plan.length - plan.trim * 2 + 1e-6_mm);
            for (int i = 0; i < strip.count; ++i) {
                const auto [copy, n] = plan.copy_and_number(strip.size, strip.first + i);
                seen.insert({static_cast<int>(strip.size), copy, n});
            }
        }
        EXPECT_LE(edge, plan.width - plan.trim + 1e-6_mm);
    }
    std::size_t all = 0;
    for (const NestedSize& size : plan.sizes) all += static_cast<std::size_t>(size.all());
    EXPECT_EQ(seen.size(), all);
    const std::set<std::array<int, 3>> once(seen.begin(), seen.end());
    EXPECT_EQ(once.size(), all);
}

TEST(Nest, SegmentsOfAJobLieOnSheetsEachOnce) {
    const Plan job = planned(arch("A", "segmental", "rise = \"14 in\"\n", 9) + arch("B", "semicircular", "", 3) +
                             arch("C", "elliptical", "rise = \"20 in\"\n", 2));
    const NestPlan plan = nest_plan({&job}, Nested::segments);
    expect_laid(plan);
    EXPECT_EQ(plan.length, 97_in);
    EXPECT_EQ(plan.width, 49_in);
    int nested = 0;
    for (const NestedSize& size : plan.sizes) {
        EXPECT_EQ(size.sector.has_value(), size.id != "C") << size.id;
        nested += size.sector ? size.all() : 0;
        if (size.sector) { EXPECT_LT(size.pitch, size.height); }
    }
    EXPECT_EQ(nested, 9 * 4 + 3 * 4);
    EXPECT_GE(plan.sheets.size(), 2U);
}

// The ellipse is the same to both sides of its crown: of four segments 1 and 4, 2 and 3 are each other's mirror images,
// and of two both are one size.
TEST(Nest, MirrorImagesWithoutACentreAreOfOneSize) {
    const Plan four = planned(arch("C", "elliptical", "rise = \"20 in\"\n", 2));
    const NestPlan plan = nest_plan({&four}, Nested::segments);
    expect_laid(plan);
    ASSERT_EQ(plan.sizes.size(), 2U);
    std::set<std::vector<int>> numbers;
    for (const NestedSize& size : plan.sizes) {
        EXPECT_FALSE(size.sector);
        EXPECT_EQ(size.all(), 4);
        numbers.insert(size.n);
    }
    EXPECT_EQ(numbers, (std::set<std::vector<int>>{{1, 4}, {2, 3}}));
}

TEST(Nest, EverySegmentLiesWithinTheSectorThatIsLaidForIt) {
    const Plan job = planned(arch("A", "segmental", "rise = \"14 in\"\n", 1));
    const NestPlan plan = nest_plan({&job}, Nested::segments);
    ASSERT_EQ(plan.sizes.size(), 1U);
    const Sector& sector = plan.sizes[0].sector.value();
    for (const CasingSegment& segment : std::get<ArchLines>(job.pieces.at(0).lines).segments) {
        const geom::Segment& out = segment.outside.segments().front();
        const Point centre = out.centre(), middle = out.point(0.5);
        const Angle up = geom::direction(centre, middle).angle();
        for (const Path* line : {&segment.inside, &segment.outside, &segment.left, &segment.right})
            for (int i = 0; i <= 20; ++i) {
                const Point at = line->segments().front().point(i / 20.0);
                const double radius = distance(at, centre).inches();
                const double off =
                    std::remainder(geom::direction(centre, at).angle().radians() - up.radians(), 2 * M_PI);
                EXPECT_LE(std::abs(off), sector.half.radians() + 1e-9);
                EXPECT_LE(radius, sector.outer.inches() + 1e-6);
                EXPECT_GE(radius, sector.inner.inches() - 1e-6);
            }
    }
}

TEST(Nest, TheOrderOfTheFileDoesNotMatterAndBoardsAreLeftOut) {
    const std::string a = arch("A", "segmental", "rise = \"14 in\"\n", 2), b = arch("B", "semicircular", "", 1);
    const Plan one = planned(a + b), other = planned(b + a), board = planned(a + "board = \"11 1/4 in\"\n");
    const NestPlan left = nest_plan({&one}, Nested::segments), right = nest_plan({&other}, Nested::segments);
    ASSERT_EQ(left.sizes.size(), right.sizes.size());
    for (std::size_t i = 0; i < left.sizes.size(); ++i) EXPECT_EQ(left.sizes[i].id, right.sizes[i].id);
    ASSERT_EQ(left.sheets.size(), right.sheets.size());
    for (std::size_t i = 0; i < left.sheets.size(); ++i) EXPECT_EQ(left.sheets[i].offcut, right.sheets[i].offcut);
    EXPECT_TRUE(nest_plan({&board}, Nested::segments).empty());
}

TEST(Nest, RibsLieOnSheetsOfTheirOwnOnceForBoardsAlike) {
    const std::string form = "[opening.form]\nribs = 5\nbelow = \"3 in\"\n";
    const Plan job = planned(arch("A", "segmental", "rise = \"14 in\"\n", 3) + form +
                             arch("B", "pointed", "radius = \"60 in\"\n", 1) + form + arch("C", "semicircular", "", 1));
    const NestPlan plan = nest_plan({&job}, Nested::ribs);
    expect_laid(plan);
    // Neither three times for three alike, nor for the second board of the pointed head, its mirror image.
    ASSERT_EQ(plan.sizes.size(), 2U);
    for (const NestedSize& size : plan.sizes) EXPECT_EQ(size.all(), 5) << size.id;
    // The rib of A follows the seen face of the board: a chord of 5 ft between walls, less the board where it springs.
    const auto a = std::find_if(plan.sizes.begin(), plan.sizes.end(), [](const auto& size) { return size.id == "A"; });
    ASSERT_NE(a, plan.sizes.end());
    const FormRib& rib = *job.pieces.at(0).form;
    EXPECT_NEAR(a->width.inches(), rib.curve.end().x.inches(), 1.0 / 16);
    EXPECT_GE(a->width, rib.curve.end().x - 1e-6_mm);
    EXPECT_NEAR(a->height.inches(), rib.curve.bounds().high.y.inches() + 3, 1.0 / 16);
    // The casings beside them, one ring each: both sides of B have one radius.
    EXPECT_EQ(nest_plan({&job}, Nested::segments).sizes.size(), 3U);
    const Plan silent = planned(arch("A", "segmental", "rise = \"14 in\"\n", 1) + "[opening.form]\n");
    EXPECT_TRUE(nest_plan({&silent}, Nested::ribs).empty());
}

}  // namespace
}  // namespace kerfpacket::plan
