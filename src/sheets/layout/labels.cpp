#include "sheets/layout/labels.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace kerfpacket::sheets {
namespace {

constexpr double ascent = 0.76;  // parts of the type size
constexpr double descent = 0.24;
constexpr double leading = 1.32;
constexpr Length shortest_leader = Length::points(16);
constexpr Length off_own_line = Length::points(3);  // from here on a leader counts as crossing what it meets

/// Text is read from left to right, or upward.
Direction readable(Direction d) { return d.x < -1e-9 || (d.x < 1e-9 && d.y < 0) ? -d : d; }

/// How far the ends of a label would run into a line that bends toward it.
Length bend_allowance(const Path& run, Length at, Beside side, Length width) {
    const double curvature = run.curvature_at(at) * (side == Beside::left ? 1 : -1);
    return curvature > 0 ? width * (width.mm() * curvature / 8) : Length();
}

constexpr Length rounding = Length::mm(1e-6);

/// Parts of a run from its middle outward.
constexpr std::array<double, 13> outward{0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.09, 0.91, 0, 1};

}  // namespace

Block::Block(const Pen& pen, std::vector<Row> rows, Align align) : rows_(std::move(rows)), align_(align) {
    height_ = rows_.front().type.size * ascent + rows_.back().type.size * descent;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        width_ = std::max(width_, pen.width(rows_[i].text, rows_[i].type));
        if (i > 0) height_ += rows_[i].type.size * leading;
    }
}

void Block::draw(Pen& pen, Role role, Point centre, Direction along) const {
    const double shift = align_ == Align::centre ? 0 : align_ == Align::left ? -0.5 : 0.5;
    if (on_white_) pen.fill(role, Path::rectangle(box(centre, along, 1_pt).bounds()), Ink::white);
    Length up = height_ / 2 - rows_.front().type.size * ascent;
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        if (i > 0) up -= rows_[i].type.size * leading;
        Type type = rows_[i].type.turned(along.angle());
        type.align = align_;
        pen.text(role, centre + along * (width_ * shift) + along.left() * up, rows_[i].text, type);
    }
}

bool Labels::within_room(const Rect& bounds) const { return room_.contains(bounds.low) && room_.contains(bounds.high); }

void Labels::set(Role role, const Block& block, Point centre, Direction along, const TurnedBox& box) {
    block.draw(pen_, role, centre, along);
    taken_.take(box);
}

bool Labels::place(Role role, const Block& block, Point centre, Direction along, Length clearance) {
    const TurnedBox box = block.box(centre, along, clearance);
    if (!within_room(box.bounds()) || !taken_.is_free(box)) return false;
    set(role, block, centre, along, box);
    return true;
}

bool Labels::along(Role role, const Block& block, const Path& run, Beside side, Length gap) {
    const Length spare = run.length() - block.width();
    if (spare < 0_pt) return false;
    return std::any_of(outward.begin(), outward.end(), [&](double part) {
        const Length at = block.width() / 2 + spare * part;
        const geom::Station on = run.at(at);
        const Direction out = side == Beside::left ? on.direction.left() : -on.direction.left();
        const Length off = gap + block.height() / 2 + bend_allowance(run, at, side, block.width());
        return place(role, block, on.point + out * off, readable(on.direction));
    });
}

bool Labels::lead(Role role, const Block& block, const Leader& leader) {
    for (int ring = 1; ring <= 5; ++ring) {
        const Point tail = leader.on + leader.away * (shortest_leader * ring);
        const Point centre{tail.x + block.width() * (leader.away.x / 2),
                           tail.y + (block.height() / 2 + 3_pt) * (leader.away.y > 0 ? 1.0 : -1.0)};
        // No line may lie between the leader's end and its label either.
        const Point from = leader.on + leader.away * off_own_line;
        const Point to = tail + leader.away * off_own_line;
        const bool clear =
            taken_.clear_of_boxes(leader.on, tail) && (leader.may_cross || taken_.clear_of_paths(from, to));
        if (!clear) return false;  // nor is a longer one
        if (!place(role, block, centre)) continue;
        pen_.line(role, leader.on, tail, leader_width_);
        pen_.fill(role, Path::circle(leader.on, 1.2_pt));
        taken_.take(Path::line(leader.on, tail));
        return true;
    }
    return false;
}

bool Labels::with_leader(Role role, const Block& block, const Path& run, Beside side, Length beyond) {
    const auto try_all = [&](bool preferred, bool may_cross) {
        for (const double part : outward) {
            const geom::Station on = run.at(run.length() * part);
            if (!room_.grown(beyond).contains(on.point)) continue;
            const Direction out = side == Beside::left ? on.direction.left() : -on.direction.left();
            for (const int degrees : {90, 60, 120, -90, -60, -120, 30, 150, -30, -150}) {
                const Direction away = Direction::at(Angle::degrees(degrees));
                const bool on_side = away.x * out.x + away.y * out.y > 0.3;
                if (on_side == preferred && lead(role, block, {on.point, away, may_cross})) return true;
            }
        }
        return false;
    };
    return try_all(true, false) || try_all(false, false) || try_all(true, true) || try_all(false, true);
}

bool Labels::anywhere(Role role, const Block& block, const std::vector<Point>& first, Length clearance) {
    if (std::any_of(first.begin(), first.end(), [&](Point p) { return place(role, block, p, {1, 0}, clearance); }))
        return true;
    constexpr int steps = 24;
    const Rect inner = room_.grown(-clearance);
    const Length across = (inner.width() - block.width()) / steps;
    const Length down = (inner.height() - block.height()) / steps;
    if (across < -rounding || down < -rounding) return false;
    const Point first_centre{inner.low.x + block.width() / 2, inner.high.y - block.height() / 2};
    for (int row = 0; row <= steps; ++row)
        for (int column = 0; column <= steps; ++column) {
            const Point centre = first_centre + Point{across * column, -down * row};
            const TurnedBox box = block.box(centre, {1, 0}, clearance);
            const Rect bounds = box.bounds();
            if (!within_room(bounds)) continue;
            const std::optional<Length> past = taken_.free_from(box);
            if (!past) {
                set(role, block, centre, {1, 0}, box);
                return true;
            }
            // What it touches it touches until its left edge is past that.
            const double hidden = across > Length() ? std::ceil((*past - rounding - bounds.low.x) / across) - 1 : 0;
            column += static_cast<int>(std::clamp(hidden, 0.0, static_cast<double>(steps)));
        }
    return false;
}

std::vector<Point> Labels::corners(const Block& block, Length inset) const {
    const Length x = block.width() / 2 + inset;
    const Length y = block.height() / 2 + inset;
    return {{room_.high.x - x, room_.high.y - y},
            {room_.low.x + x, room_.high.y - y},
            {room_.high.x - x, room_.low.y + y},
            {room_.low.x + x, room_.low.y + y}};
}

}  // namespace kerfpacket::sheets
