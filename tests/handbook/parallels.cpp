// Parallels against the buffers of GEOS, a geometry library: the curve parallel to an ellipse is no ellipse.

#include <geos_c.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <memory>
#include <stdexcept>
#include <vector>

#include "curve/outline.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;

constexpr int points_around = 20000;

/// A GEOS context of the test's own.
class Geos {
public:
    using Geometry = std::unique_ptr<GEOSGeometry, std::function<void(GEOSGeometry*)>>;

    Geos() : handle_(GEOS_init_r()) {}
    ~Geos() { GEOS_finish_r(handle_); }
    Geos(const Geos&) = delete;
    Geos& operator=(const Geos&) = delete;

    Geometry polygon(const std::vector<Point>& points) const {
        const auto count = static_cast<unsigned>(points.size());
        GEOSCoordSequence* ring = GEOSCoordSeq_create_r(handle_, count + 1, 2);
        for (unsigned i = 0; i <= count; ++i)
            GEOSCoordSeq_setXY_r(handle_, ring, i, points[i % count].x.mm(), points[i % count].y.mm());
        return own(GEOSGeom_createPolygon_r(handle_, GEOSGeom_createLinearRing_r(handle_, ring), nullptr, 0));
    }
    /// What lies within `by` of an area, or, negative, what of it lies deeper than that.
    Geometry grown(const Geometry& area, double by) const { return own(GEOSBuffer_r(handle_, area.get(), by, 500)); }
    Geometry border(const Geometry& area, double by) const {
        return own(GEOSBoundary_r(handle_, grown(area, by).get()));
    }
    Geometry border_under_both(const Geometry& a, const Geometry& b, double by) const {
        const Geometry both = own(GEOSIntersection_r(handle_, grown(a, by).get(), grown(b, by).get()));
        return own(GEOSBoundary_r(handle_, both.get()));
    }
    double distance(const Geometry& line, Point p) const {
        const Geometry point = own(GEOSGeom_createPointFromXY_r(handle_, p.x.mm(), p.y.mm()));
        double distance = -1;
        GEOSDistance_r(handle_, line.get(), point.get(), &distance);
        return distance;
    }
    double worst(const Geometry& line, const Path& path) const {
        double worst = 0;
        for (int i = 0; i <= 60; ++i)
            worst = std::max(worst, distance(line, path.at(path.length() * (i / 60.0)).point));
        return worst;
    }

private:
    Geometry own(GEOSGeometry* geometry) const {
        if (geometry == nullptr) throw std::runtime_error("GEOS made nothing");
        return {geometry, [handle = handle_](GEOSGeometry* g) { GEOSGeom_destroy_r(handle, g); }};
    }

    GEOSContextHandle_t handle_;
};

TEST(Parallels, of_an_ellipse_are_the_buffers_of_a_library) {
    // An opening of 84-1/4 by 21-1/2 in, both halves, so that it is closed.
    const double a = Length::inches(42.125).mm();
    const double b = Length::inches(21.5).mm();
    const Parametric around{[a, b](double u) {
                                const double c = std::cos(u);
                                const double s = std::sin(u);
                                return Jet{{Length::mm(-a * c), Length::mm(b * s)},
                                           {Length::mm(a * s), Length::mm(b * c)},
                                           {Length::mm(a * c), Length::mm(-b * s)}};
                            },
                            0, 2 * Angle::pi};
    const Geos geos;
    std::vector<Point> points;
    points.reserve(points_around);
    for (int i = 0; i < points_around; ++i) points.push_back(around.at(2 * Angle::pi * i / points_around).point);
    const Curve curve({around});
    for (const Length left : {0.75_in, -0.75_in, 3.5_in, -6_in}) {
        // Travel is clockwise: left is outward.
        const Geos::Geometry border = geos.border(geos.polygon(points), left.mm());
        EXPECT_LT(geos.worst(border, curve.parallel(left).path()), 0.01) << left.inches();
        // An ellipse with axes longer by as much lies elsewhere.
        const Parametric grown{[&](double u) {
                                   const double c = std::cos(u);
                                   const double s = std::sin(u);
                                   const double ga = a + left.mm();
                                   const double gb = b + left.mm();
                                   return Jet{{Length::mm(-ga * c), Length::mm(gb * s)},
                                              {Length::mm(ga * s), Length::mm(gb * c)},
                                              {Length::mm(ga * c), Length::mm(-gb * s)}};
                               },
                               0, 2 * Angle::pi};
        EXPECT_GT(geos.worst(border, Curve({grown}).path()), 0.1);
    }
}

TEST(Parallels, of_a_pointed_head_meet_on_the_mitre_as_a_library_says) {
    // Radius 46 over a span of 38-1/2 in, closed by a line far below.
    const double half = Length::inches(19.25).mm();
    const double radius = Length::inches(46).mm();
    const double turn = std::acos((radius - half) / radius);
    const double rise = radius * std::sin(turn);
    const Length foot = -Length::inches(60);
    const Point left{Length::mm(-half), {}};
    const Point right{Length::mm(half), {}};
    const Point top{{}, Length::mm(rise)};
    const Outline outline(
        {Curve::of(Path::line({left.x, foot}, left)), Curve::of(Path::arc(left, top, Angle::radians(-turn))),
         Curve::of(Path::arc(top, right, Angle::radians(-turn))), Curve::of(Path::line(right, {right.x, foot}))});
    // Each side is a part of a circle, and what lies under both circles is the head: the casing's outside edge goes on
    // as a circle to the new point, where a library's own mitre would go on along a tangent.
    const Geos geos;
    const auto disc = [&](const Curve& side) {
        const Point centre = side.path().segments().front().centre();
        std::vector<Point> points;
        points.reserve(points_around);
        for (int i = 0; i < points_around; ++i)
            points.push_back(centre +
                             Direction::at(Angle::radians(2 * Angle::pi * i / points_around)) * Length::mm(radius));
        return geos.polygon(points);
    };
    const Geos::Geometry first = disc(outline.runs()[1]);
    const Geos::Geometry second = disc(outline.runs()[2]);
    for (const Length by : {0.75_in, -0.75_in, 4.25_in}) {
        const Geos::Geometry border = geos.border_under_both(first, second, by.mm());
        const std::vector<Path> parallel = outline.parallel(by);
        for (const std::size_t run : {1U, 2U}) EXPECT_LT(geos.worst(border, parallel[run]), 0.01) << by.inches();
    }
}

}  // namespace
}  // namespace kerfpacket::curve
