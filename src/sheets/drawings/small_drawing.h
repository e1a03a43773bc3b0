#pragma once
// A drawing made smaller to fit a place on a page.

#include <utility>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::sheets {

class SmallDrawing {
public:
    /// The drawing's point `from` comes to stand on the page's point `to`.
    SmallDrawing(geom::Point from, geom::Point to, double scale) : from_(from), to_(to), scale_(scale) {}

    double scale() const { return scale_; }
    geom::Point at(geom::Point p) const { return to_ + (p - from_) * scale_; }
    geom::Rect at(const geom::Rect& r) const { return {at(r.low), at(r.high)}; }
    geom::Path at(const geom::Path& path) const {
        std::vector<geom::Segment> segments = path.segments();
        for (geom::Segment& s : segments) s = {at(s.from), at(s.to), s.turn};
        return geom::Path(std::move(segments), path.closed());
    }

private:
    geom::Point from_;
    geom::Point to_;
    double scale_;
};

}  // namespace kerfpacket::sheets
