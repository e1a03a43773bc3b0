#include "sheets/templates/alike_segments.h"

#include <algorithm>

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;
using geom::Path;
using geom::Point;

/// A hundredth of the width of a pencil line: what arithmetic leaves, and no more.
constexpr measure::Length same_place = 0.01_mm;
constexpr int samples = 32;

/// Points all along the outline, level, counted from the left end of the inside edge; of the mirror image, when turned.
std::vector<Point> outline(const plan::CasingSegment& segment, bool turned) {
    const geom::Angle by = levelling(segment);
    std::vector<Point> points;
    for (const Path* edge : {&segment.inside, &segment.outside}) {
        const Path level = edge->turned(by);
        for (int i = 0; i <= samples; ++i) {
            const double part = static_cast<double>(turned ? samples - i : i) / samples;
            const Point p = level.at(level.length() * part).point;
            points.push_back(turned ? Point{-p.x, p.y} : p);
        }
    }
    const Point from = points.front();
    for (Point& p : points) p = p - from;
    return points;
}

bool alike(const plan::CasingSegment& a, const plan::CasingSegment& b, bool turned) {
    if (a.left_joint != (turned ? b.right_joint : b.left_joint)) return false;
    if (a.right_joint != (turned ? b.left_joint : b.right_joint)) return false;
    const std::vector<Point> of_a = outline(a, false), of_b = outline(b, turned);
    return std::equal(of_a.begin(), of_a.end(), of_b.begin(),
                      [](Point p, Point q) { return geom::distance(p, q) < same_place; });
}

}  // namespace

std::vector<int> AlikeSegments::numbers() const {
    std::vector<int> all{drawn->n};
    for (const Other& other : others) all.push_back(other.segment->n);
    return all;
}

std::vector<int> AlikeSegments::turned() const {
    std::vector<int> all;
    for (const Other& other : others)
        if (other.turned) all.push_back(other.segment->n);
    return all;
}

std::string segment_numbers(const std::vector<int>& numbers) {
    std::string text;
    for (std::size_t first = 0; first < numbers.size();) {
        std::size_t last = first;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) ++last;
        if (last < first + 4) last = first;  // a few that follow each other are named one by one
        text += (text.empty() ? "" : ", ") + std::to_string(numbers[first]);
        if (last > first) text += "-" + std::to_string(numbers[last]);
        first = last + 1;
    }
    return text;
}

geom::Angle levelling(const plan::CasingSegment& segment) {
    const Point along = segment.inside.end() - segment.inside.start();
    const bool forward = along.x.mm() * segment.grain.x + along.y.mm() * segment.grain.y > 0;
    return -(forward ? segment.grain : -segment.grain).angle();
}

std::vector<AlikeSegments> alike_segments(const std::vector<plan::CasingSegment>& segments) {
    std::vector<AlikeSegments> groups;
    for (const plan::CasingSegment& segment : segments) {
        bool found = false;
        for (AlikeSegments& group : groups) {
            for (const bool turned : {false, true}) {
                if (found || !alike(*group.drawn, segment, turned)) continue;
                group.others.push_back({&segment, turned});
                found = true;
            }
        }
        if (!found) groups.push_back({&segment, {}});
    }
    return groups;
}

}  // namespace kerfpacket::sheets
