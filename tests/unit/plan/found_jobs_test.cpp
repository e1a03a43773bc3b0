// Jobs that once came out wrong, against what is right.

#include <gtest/gtest.h>
#include <fstream>
#include <sstream>

#include "curve/shape.h"
#include "job/read.h"
#include "plan/plan.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

const std::string folder = KERFPACKET_SOURCE_DIR "/tests/property/found/";

job::Job found(const std::string& name) { return job::read_job(job::load(folder + name).value()).job; }

const ArchLines& lines_of(const Piece& piece) { return std::get<ArchLines>(piece.lines); }

/// The pairs of the lines "# truth x y x y ...", inches from the first measured point.
std::vector<Point> truth(const std::string& name) {
    std::ifstream file(folder + name);
    std::vector<Point> points;
    for (std::string line; std::getline(file, line);) {
        if (!line.starts_with("# truth ")) continue;
        std::istringstream words(line.substr(8));
        for (double x = 0, y = 0; words >> x >> y;) points.push_back({Length::inches(x), Length::inches(y)});
    }
    return points;
}

/// Its points are right to 0.3 mm; a plain spline through them stays within 0.6 mm of the curve.
TEST(FoundJobs, a_fair_curve_keeps_to_its_steep_ends) {
    const std::string name = "fair-curve-with-steep-ends.toml";
    const job::Opening opening = found(name).openings.at(0);
    const curve::Head head = curve::head(opening, measure::Unit::millimetre).value();
    const curve::Curve& arch = head.outline.runs().at(1);
    const Point first = head.survey->points.front();
    std::vector<Point> on_curve;
    constexpr int places = 20000;
    for (int i = 0; i <= places; ++i) on_curve.push_back(arch.at(arch.length() * (i / double{places})).point - first);
    Length worst;
    for (const Point p : truth(name)) {
        Length nearest = 1000_in;
        for (const Point on : on_curve) nearest = std::min(nearest, distance(on, p));
        worst = std::max(worst, nearest);
    }
    EXPECT_LE(worst, 0.8_mm);
    EXPECT_LE(head.survey->fair.misses.worst(), 0.35_mm);
}

TEST(FoundJobs, a_casing_of_an_eyebrow_goes_on_level) {
    const auto plan = make_plan(found("casing-of-an-eyebrow-on-legs.toml"));
    ASSERT_TRUE(plan.has_value());
    const ArchLines& lines = lines_of(plan->pieces.at(0));
    for (const auto& edge : {lines.casing_inside, lines.casing_outside}) {
        ASSERT_TRUE(edge.has_value());
        const Length level = edge->start().y;
        EXPECT_NEAR(edge->end().y.mm(), level.mm(), 1e-6);
        const Length spring = lines.wall_springs[1].x;
        int beyond = 0;
        for (int i = 0; i <= 1000; ++i) {
            const Point p = edge->at(edge->length() * (i / 1000.0)).point;
            EXPECT_GE(p.y, level - 1e-6_mm);
            if (measure::abs(p.x) < spring) continue;
            EXPECT_NEAR(p.y.mm(), level.mm(), 0.01);
            ++beyond;
        }
        EXPECT_GT(beyond, edge == lines.casing_outside ? 100 : 0);
    }
    // The mitres stand at half a right angle between a level edge and an upright leg.
    for (const Path& mitre : {lines.mitres.front(), lines.mitres.back()})
        EXPECT_NEAR(std::abs((mitre.end().y - mitre.start().y) / (mitre.end().x - mitre.start().x)), 1, 1e-6);
}

}  // namespace
}  // namespace kerfpacket::plan
