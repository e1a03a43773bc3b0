#include "page/placing.h"

namespace kerfpacket::page {
namespace {

/// The rectangle with these corners once they are elsewhere.
template <class Place>
Rect placed(const Rect& area, const Place& to) {
    const Point a = to(area.low);
    const Point b = to(area.high);
    return geom::united({a, a}, {b, b});
}

/// Puts every point of the page elsewhere; turns text by `turn`. A code's cells are not turned: see turn_left.
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
        } else if (auto* code = std::get_if<CodeItem>(&item)) {
            code->area = placed(code->area, to);
        } else {
            Rect& area = std::get<LinkItem>(item).area;
            area = placed(area, to);
        }
    }
}

/// The cells a quarter turn to the left: what was the right column is the top row.
std::vector<bool> turned_left(const CodeItem& code) {
    std::vector<bool> turned;
    turned.reserve(code.dark.size());
    for (std::size_t row = 0; row < code.side; ++row)
        for (std::size_t column = 0; column < code.side; ++column)
            turned.push_back(code.dark[column * code.side + code.side - 1 - row]);
    return turned;
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
    for (Item& item : page.items)
        if (auto* code = std::get_if<CodeItem>(&item)) code->dark = turned_left(*code);
    page.height = page.width;
    page.width = height;
}

Point corrected(const Page& page, Point point) {
    if (page.correction == Correction{}) return point;  // to the last bit
    const Point middle{page.width / 2, page.height / 2};
    return {middle.x + (point.x - middle.x) * page.correction.x, middle.y + (point.y - middle.y) * page.correction.y};
}

}  // namespace kerfpacket::page
