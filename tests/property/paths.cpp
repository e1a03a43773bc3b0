// Runs of segments: parallels, reversal, moving, clipping.

#include <gtest/gtest.h>

#include "arbitrary.h"

namespace kerfpacket::geom {
namespace {

using tests::between;
using tests::near;

const Length hair = Length::mm(1e-6);

/// An offset to the left that no arc of the path folds under.
Length small_offset(const Path& path, double share) {
    Length by = Length::mm(100);
    for (const Segment& s : path.segments())
        if (!s.is_line()) by = std::min(by, s.radius());
    return by * share;
}

RC_GTEST_PROP(Paths, offset_there_and_back, ()) {
    const Path path = *tests::smooth_path();
    const Length by = small_offset(path, *between(-0.9, 0.9));
    const Path back = path.offset_left(by).offset_left(-by);
    for (std::size_t i = 0; i < path.segments().size(); ++i) {
        RC_ASSERT(near(back.segments()[i].from, path.segments()[i].from, hair));
        RC_ASSERT(near(back.segments()[i].to, path.segments()[i].to, hair));
    }
}

// The length of a parallel to a path of tangent segments differs by offset times turn (Steiner).
RC_GTEST_PROP(Paths, offset_changes_length_by_the_turn, ()) {
    const Path path = *tests::smooth_path();
    const Length by = small_offset(path, *between(-0.9, 0.9));
    const Path parallel = path.offset_left(by);
    RC_ASSERT(measure::abs(path.length() - parallel.length() - by * path.turn().radians()) <= hair);
    for (std::size_t i = 1; i < path.segments().size(); ++i)
        RC_ASSERT(near(parallel.segments()[i - 1].to, parallel.segments()[i].from, hair));
}

RC_GTEST_PROP(Paths, reversal_keeps_every_point, ()) {
    const Path path = *tests::smooth_path();
    const Length along = path.length() * *between(0, 1);
    const Station there = path.at(along);
    const Station back = path.reversed().at(path.length() - along);
    RC_ASSERT(near(there.point, back.point, hair));
    RC_ASSERT(std::abs(there.direction.x + back.direction.x) + std::abs(there.direction.y + back.direction.y) < 1e-6);
    RC_ASSERT(std::abs(path.turn().radians() + path.reversed().turn().radians()) < 1e-9);
}

RC_GTEST_PROP(Paths, turning_and_moving_keep_length_and_shape, ()) {
    const Path path = *tests::smooth_path();
    const Angle by = Angle::degrees(*between(-180, 180));
    const Point shift = *tests::point(2000);
    const Path moved = path.turned(by).moved(shift);
    const Length along = path.length() * *between(0, 1);
    RC_ASSERT(measure::abs(moved.length() - path.length()) <= hair);
    RC_ASSERT(near(moved.at(along).point, turned(path.at(along).point, by) + shift, hair));
}

Length total_length(const std::vector<Path>& pieces) {
    Length total;
    for (const Path& piece : pieces) total += piece.length();
    return total;
}

RC_GTEST_PROP(Clipping, keeps_all_inside_a_window_that_covers, ()) {
    const Path path = *tests::smooth_path();
    const std::vector<Path> pieces = clip(path, path.bounds().grown(Length::mm(1)));
    RC_ASSERT(pieces.size() == 1U);
    RC_ASSERT(measure::abs(pieces.front().length() - path.length()) <= hair);
}

RC_GTEST_PROP(Clipping, pieces_lie_inside, ()) {
    const Path path = *tests::smooth_path();
    const Point low = *tests::point(3000);
    const Rect window{low, low + Point{Length::mm(*between(1, 2000)), Length::mm(*between(1, 2000))}};
    for (const Path& piece : clip(path, window))
        for (const Segment& s : piece.segments())
            for (const double f : {0.0, 0.25, 0.5, 0.75, 1.0}) RC_ASSERT(window.grown(10 * hair).contains(s.point(f)));
}

// What tiling rests on: cells side by side hold all of a line, none of it twice. (A line that runs right along an edge
// belongs to both its cells; the lopsided margin keeps edges off the round numbers that paths are made of.)
RC_GTEST_PROP(Clipping, cells_side_by_side_hold_the_whole_path, ()) {
    const Path path = *tests::smooth_path();
    const Rect box = path.bounds().grown(Length::mm(1));
    const Rect all{box.low, box.high + Point{Length::mm(0.37), Length::mm(0.53)}};
    const int columns = *rc::gen::inRange(1, 5);
    const int rows = *rc::gen::inRange(1, 5);
    Length total;
    for (int i = 0; i < columns; ++i)
        for (int j = 0; j < rows; ++j) {
            const Point low{all.low.x + all.width() * (double(i) / columns),
                            all.low.y + all.height() * (double(j) / rows)};
            total += total_length(clip(path, {low, low + Point{all.width() / columns, all.height() / rows}}));
        }
    RC_ASSERT(measure::abs(total - path.length()) <= Length::mm(1e-4));
}

}  // namespace
}  // namespace kerfpacket::geom
