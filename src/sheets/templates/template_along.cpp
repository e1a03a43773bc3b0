#include "sheets/templates/template_along.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

#include "geom/guide.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

using geom::Direction;
using geom::Segment;

constexpr Length sample_step = 0.2_in;
constexpr Length sample_rounding = 0.02_in;  // what an arc may bulge between two samples
constexpr Length shortest_part = 0.5_in;     // of the guide on one sheet
constexpr Length least_across = 2_in;        // from the guide to a cross
constexpr Length clear_of_tick = 0.1_in;
constexpr std::size_t together = 32;  // samples that are looked at as one
constexpr int grid = 1 << 16;         // of 30 ft, less than a hundredth of an inch

/// The corners of the convex figure round some points: however they are turned, they reach no further than these.
std::vector<Point> outermost(std::vector<Point> points) {
    std::sort(points.begin(), points.end(), [](Point a, Point b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
    std::vector<Point> corners;
    // Along the lower side, then back along the upper.
    for (int side = 0; side < 2; ++side) {
        const std::size_t first = corners.size();
        for (const Point p : points) {
            const auto inside = [&] {
                const Point run = corners.back() - corners[corners.size() - 2], on = p - corners.back();
                return run.x.mm() * on.y.mm() <= run.y.mm() * on.x.mm();
            };
            while (corners.size() >= first + 2 && inside()) corners.pop_back();
            corners.push_back(p);
        }
        corners.pop_back();
        std::reverse(points.begin(), points.end());
    }
    return corners;
}

class Layer {
public:
    explicit Layer(const Band& band) : guide_(band.guide), length_(guide_.length()), cross_reach_(band.cross_reach) {
        for (const Path& path : band.drawing) {
            add_sample(path.start());
            for (const Segment& s : path.segments()) {
                const int steps = std::max(1, static_cast<int>(std::ceil(s.length() / sample_step)));
                for (int i = 1; i <= steps; ++i) add_sample(s.point(static_cast<double>(i) / steps));
            }
        }
        std::sort(samples_.begin(), samples_.end(), [](const Sample& a, const Sample& b) { return a.at < b.at; });
        for (std::size_t i = 0; i + together <= samples_.size(); i += together) {
            std::vector<Point> points;
            for (std::size_t k = i; k < i + together; ++k) points.push_back(samples_[k].point);
            outermost_.push_back(outermost(std::move(points)));
        }
        for (const Path& tick : band.ticks) ticks_.push_back(guide_.nearest(geom::middle(tick.start(), tick.end())));
        std::sort(ticks_.begin(), ticks_.end());
    }

    SheetsAlong lay(const std::vector<CellSize>& cells) {
        const std::vector<Length> ends = shortened(fewest_ends(cells));
        if (cell_.roll) cell_.width = cut_length(ends);
        SheetsAlong sheets{{}, {}, cell_};
        Length from;
        for (const Length to : ends) {
            sheets.tiles.push_back(tile(static_cast<int>(sheets.tiles.size()), from, to));
            from = to;
        }
        for (std::size_t i = 0; i + 1 < ends.size(); ++i)
            sheets.joints.push_back(joint(ends[i], sheets.tiles[i], sheets.tiles[i + 1]));
        return sheets;
    }

private:
    struct Sample {
        Length at;  ///< along the guide
        Point point;
    };

    void add_sample(Point p) {
        const auto [at, off] = guide_.nearest_and_left(p);
        samples_.push_back({at, p});
        if (at < sample_step || at > length_ - sample_step) return;
        across_ = {std::min(across_[0], off), std::max(across_[1], off)};
    }

    static Angle turn(const geom::Station& from, const geom::Station& to) {
        const bool apart = geom::distance(from.point, to.point) > 1e-3_mm;
        return (apart ? geom::direction(from.point, to.point) : from.direction).angle();
    }

    /// What a sheet must hold, in the drawing turned back by its turn; or so much of it that it is larger than
    /// `enough`.
    Rect room(Length from, Length to, Point enough = {Length::mm(1e9), Length::mm(1e9)}) const {
        const std::array ends{guide_.at(from), guide_.at(to)};
        const Direction along = Direction::at(turn(ends[0], ends[1]));
        const auto turned_back = [along](Point p) {
            return Point{p.x * along.x + p.y * along.y, p.y * along.x - p.x * along.y};
        };
        const Point start = turned_back(ends[0].point);
        Rect box{start, start};
        const auto first = std::lower_bound(samples_.begin(), samples_.end(), from - 1e-6_mm,
                                            [](const Sample& s, Length at) { return s.at < at; });
        const auto add = [&](Point p) { box = geom::united(box, {p, p}); };
        for (std::size_t i = 0; i < ends.size(); ++i) {
            const Length joint = i == 0 ? from : to;
            if (joint == Length() || joint == length_) continue;
            for (const Length off : across_) add(turned_back(ends[i].point + ends[i].direction.left() * off));
        }
        const auto last =
            std::upper_bound(first, samples_.end(), to + 1e-6_mm, [](Length at, const Sample& s) { return at < s.at; });
        auto i = static_cast<std::size_t>(first - samples_.begin());
        const auto end = static_cast<std::size_t>(last - samples_.begin());
        while (i < end && box.width() <= enough.x && box.height() <= enough.y) {
            const std::size_t next = std::min(end, (i / together + 1) * together);
            if (next - i == together)
                for (const Point p : outermost_[i / together]) add(turned_back(p));
            else
                for (std::size_t k = i; k < next; ++k) add(turned_back(samples_[k].point));
            i = next;
        }
        return box.grown(sample_rounding);
    }

    /// How much shorter the sheet's room is than its cell; nothing where it does not fit.
    std::optional<Length> to_spare(Length from, Length to, double part) const {
        const Length width = cell_.width * part;
        const Rect box = room(from, to, {width, cell_.height});
        if (box.width() > width || box.height() > cell_.height) return std::nullopt;
        return width - box.width();
    }

    /// The farthest place to which a sheet reaches, on a grid of so many steps. What two places that fit leave to spare
    /// tells where the next is looked for; half way to what does not fit where they do not tell.
    Length farthest(Length from, double part) const {
        const Length start = std::min(from + shortest_part, length_);
        const Length step = (length_ - start) / grid;
        int fits = 0, fits_not = grid;
        std::optional<double> last;  // to spare at `fits`, in steps
        double rate = 1.3;           // by which that falls, step by step
        double next = (cell_.width * part * 0.9 - shortest_part) / step;
        while (fits_not - fits > 1) {
            const bool told = next > fits && next < fits_not;
            const int at = told ? static_cast<int>(next) : (fits + fits_not) / 2;
            const auto spare = to_spare(from, start + step * at, part);
            next = 0;
            if (!spare) {
                fits_not = at;
                continue;
            }
            const double now = *spare / step;
            if (last) rate = std::max((*last - now) / (at - fits) * 1.02, 0.2);
            fits = at;
            last = now;
            next = fits + std::max(1.0, now / rate);
        }
        return start + step * fits;
    }

    /// Where each sheet ends, when their cells are so much shorter; nothing when that takes more than so many sheets.
    std::vector<Length> ends_in(double part, std::size_t most_sheets) const {
        std::vector<Length> ends;
        Length from;
        while (true) {
            if (to_spare(from, length_, part)) break;
            const Length low = farthest(from, part);
            if (low >= length_ - 1e-3_mm) break;
            from = between_ticks(from, low);
            ends.push_back(from);
            if (ends.size() >= most_sheets) return {};
        }
        ends.push_back(length_);
        return ends;
    }

    /// On sheets of the first cell that takes the fewest, which is the one from here on.
    std::vector<Length> fewest_ends(const std::vector<CellSize>& cells) {
        cell_ = cells.front();
        std::vector<Length> ends = ends_in(1, samples_.size());
        for (std::size_t i = 1; i < cells.size() && ends.size() > 1; ++i) {
            const CellSize before = std::exchange(cell_, cells[i]);
            std::vector<Length> fewer = ends_in(1, ends.size() - 1);
            if (fewer.empty()) cell_ = before;
            else ends = std::move(fewer);
        }
        return ends;
    }

    /// The same number of sheets, with the shortest cells.
    std::vector<Length> shortened(std::vector<Length> ends) const {
        double least = 0.4;
        double most = 1;
        for (int i = 0; i < 6; ++i) {
            const double part = (least + most) / 2;
            std::vector<Length> shorter = ends_in(part, ends.size());
            if (shorter.empty()) least = part;
            else {
                most = part;
                ends = std::move(shorter);
            }
        }
        return ends;
    }

    /// The farthest place that is not beyond `to`, midway between two ticks.
    Length between_ticks(Length from, Length to) const {
        auto after = std::lower_bound(ticks_.begin(), ticks_.end(), to);
        if (after == ticks_.end() && after != ticks_.begin() && to - *(after - 1) < clear_of_tick) --after;
        if (after == ticks_.end()) return to;
        for (;; --after) {
            if (after == ticks_.begin()) return to;
            const Length middle = (*(after - 1) + *after) / 2;
            if (middle <= from + shortest_part) return to;
            if (middle <= to && *after - *(after - 1) > 0.5_mm) return middle;
        }
    }

    /// What the longest sheet takes of a roll.
    Length cut_length(const std::vector<Length>& ends) const {
        Length most;
        Length from;
        for (const Length to : ends) {
            most = std::max(most, room(from, to).width());
            from = to;
        }
        return whole_inches_over(most);
    }

    Tile tile(int number, Length from, Length to) const {
        const Rect box = room(from, to);
        const Point middle = geom::middle(box.low, box.high);
        const Point half{cell_.width / 2, cell_.height / 2};
        return {number, 0, {middle - half, middle + half}, false, false, turn(guide_.at(from), guide_.at(to))};
    }

    /// As far across as both cells reach; of a band inside its edges.
    Joint joint(Length at, const Tile& before, const Tile& after) const {
        const geom::Station on = guide_.at(at);
        if (cross_reach_) {
            const Point across = on.direction.left() * *cross_reach_;
            return {on.point - across, on.point + across};
        }
        const Point reach = on.direction.left() * (cell_.width + cell_.height);
        Path line = Path::line(on.point - reach, on.point + reach);
        for (const Tile* tile : {&before, &after}) {
            const auto parts = geom::clip(line.turned(-tile->turn), tile->cell);
            if (!parts.empty()) line = parts.front().turned(tile->turn);
        }
        return {line.start(), line.end()};
    }

    geom::Guide guide_;
    Length length_;
    std::optional<Length> cross_reach_;
    std::vector<Sample> samples_;
    std::vector<std::vector<Point>> outermost_;  ///< of so many samples together after the other
    std::vector<Length> ticks_;
    CellSize cell_;
    std::array<Length, 2> across_{-least_across, least_across};  ///< how far the band reaches to both sides
};

}  // namespace

SheetsAlong lay_along(const Band& band, const std::vector<CellSize>& cells) { return Layer(band).lay(cells); }

}  // namespace kerfpacket::sheets
