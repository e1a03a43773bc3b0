#include "page/placing.h"

namespace kerfpacket::page {
namespace {

/// Puts every point of the page elsewhere; turns text by `turn`.
template <class Place>
void place(Page& page, const Place& to, Angle turn) {
    for (Item& item : page.items) {
        if (auto* line = std::get_if<PathItem>(&item)) {
            std::vector<geom::Segment> segments = line->path.segments();
            for (geom::Segment& segment : segments) {
                segment.from = to(segment.from);
                segment.to = to(segment.to);
            }
            line->path = geom::Path(std::move(segments), line->path.closed());
        } else if (auto* text = std::get_if<TextItem>(&item)) {
            text->anchor = to(text->anchor);
            text->angle = text->angle + turn;
        } else {
            Rect& area = std::get<LinkItem>(item).area;
            const Point a = to(area.low);
            const Point b = to(area.high);
            area = geom::united({a, a}, {b, b});
        }
    }
}

}  // namespace

void move(Page& page, Point by) {
    place(page, [&](Point p) { return p + by; }, {});
}

void turn_left(Page& page) {
    const Length height = page.height;
    place(
        page,
        [&](Point p) {
            return Point{height - p.y, p.x};
        },
        Angle::degrees(90));
    page.height = page.width;
    page.width = height;
}

Point corrected(const Page& page, Point point) {
    if (page.correction == Correction{}) return point;  // to the last bit
    const Point middle{page.width / 2, page.height / 2};
    return {middle.x + (point.x - middle.x) * page.correction.x, middle.y + (point.y - middle.y) * page.correction.y};
}

}  // namespace kerfpacket::page
