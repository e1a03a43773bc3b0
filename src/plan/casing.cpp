#include "plan/casing.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include <tl/expected.hpp>

#include "plan/checks.h"
#include "plan/make_lines.h"

namespace kerfpacket::plan {
namespace {

using job::say;

constexpr int most_segments = 100;
/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = Length::mm(0.001);

/// The two edges of a casing round one run of the head.
struct Band {
    const curve::Curve* run = nullptr;
    Length inside;  ///< of the edges, to the left of the measured curve
    Length outside;
    curve::Extent inside_extent;
    curve::Extent outside_extent;
};

struct Board {
    Length length;
    Length width;
};

/// What a segment's edges take along and across its grain.
Board board_for(const CasingSegment& segment) {
    const Angle level = -segment.grain.angle();
    const geom::Rect box = united(segment.inside.turned(level).bounds(), segment.outside.turned(level).bounds());
    return {box.width(), box.height()};
}

/// A band in equal parts of its inside edge, the joints between them square to the curve; none where a mitre takes up
/// the whole of a part.
std::vector<CasingSegment> cut(const Band& band, int parts) {
    const auto on_edge = [&](Length along) { return band.run->on_parallel(along, band.inside); };
    const Length first = on_edge(band.inside_extent.from);
    const Length last = on_edge(band.inside_extent.to);
    std::vector<Length> joints;
    for (int i = 1; i < parts; ++i)
        joints.push_back(
            band.run->from_parallel(first + (last - first) * (static_cast<double>(i) / parts), band.inside));
    std::vector<CasingSegment> segments;
    for (int i = 0; i < parts; ++i) {
        const auto edge = [&](Length left, const curve::Extent& extent) {
            const Length from = i == 0 ? extent.from : joints[static_cast<std::size_t>(i) - 1];
            const Length to = i + 1 == parts ? extent.to : joints[static_cast<std::size_t>(i)];
            return to - from > slack ? band.run->part(from, to).parallel(left).path() : Path();
        };
        CasingSegment segment;
        segment.inside = edge(band.inside, band.inside_extent);
        segment.outside = edge(band.outside, band.outside_extent);
        if (segment.inside.empty() || segment.outside.empty()) return {};
        segment.left = Path::line(segment.inside.start(), segment.outside.start());
        segment.right = Path::line(segment.inside.end(), segment.outside.end());
        segment.grain = geom::direction(segment.outside.start(), segment.outside.end());
        const Board board = board_for(segment);
        segment.board_length = board.length;
        segment.board_width = board.width;
        segments.push_back(std::move(segment));
    }
    return segments;
}

/// All bands in `count` segments, numbered from the left; every band gets as many. None where that cannot be.
std::vector<CasingSegment> cut_all(const std::vector<Band>& bands, int count) {
    std::vector<CasingSegment> all;
    for (const Band& band : bands) {
        std::vector<CasingSegment> segments = cut(band, count / static_cast<int>(bands.size()));
        if (segments.empty()) return {};
        std::move(segments.begin(), segments.end(), std::back_inserter(all));
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].n = static_cast<int>(i) + 1;
        all[i].left_joint = i > 0;
        all[i].right_joint = i + 1 < all.size();
    }
    return all;
}

/// What segments are cut from: no wider and no longer than this.
Board largest_board(const job::Casing& casing, const job::Stock& stock) {
    const std::array<Length, 2> sheet = stock.sheet.value_or(usual_sheet);
    const Board whole{std::max(sheet[0], sheet[1]), std::min(sheet[0], sheet[1])};
    if (!casing.board) return whole;
    Length longest = whole.length;
    for (const auto& length : stock.lengths) longest = std::max(longest, length.value);
    return {longest, casing.board->value};
}

bool fit(const std::vector<CasingSegment>& segments, const Board& board) {
    return !segments.empty() && std::all_of(segments.begin(), segments.end(), [&](const CasingSegment& s) {
        return s.board_width <= board.width + slack && s.board_length <= board.length + slack;
    });
}

/// The fewest segments that fit; 0 for none. More segments are narrower and shorter, until mitres use them up: counts
/// are tried in steps that grow, then halved.
int fewest(const std::vector<Band>& bands, const Board& board) {
    const int step = static_cast<int>(bands.size());
    const auto fits = [&](int shares) { return fit(cut_all(bands, shares * step), board); };
    int bad = 0;
    int good = 1;
    while (!fits(good)) {
        bad = good;
        good *= 2;
        if (good * step > most_segments) return 0;
    }
    while (good - bad > 1) {
        const int middle = (good + bad) / 2;
        (fits(middle) ? good : bad) = middle;
    }
    return good * step;
}

job::Diagnostic uneven(const job::Casing& casing, int sides) {
    return {job::Severity::error, casing.segments->at,
            say("segments_uneven", "{n} casing segments do not part evenly over the {sides} sides of the head",
                {{"n", casing.segments->value}, {"sides", sides}}),
            say("segments_uneven_do", "a joint stands at the point: expected {a}, {b} or {c}",
                {{"a", sides}, {"b", sides * 2}, {"c", sides * 3}})};
}

job::Diagnostic too_wide(const job::Casing& casing, const Board& board, int possible, const job::Job& job) {
    const auto shown = [&](Length length) { return job::shown(length, job.header.units); };
    const job::Told from = casing.board ? say("from_board", "a board {width} wide", {{"width", shown(board.width)}})
                                        : say("from_sheet", "a sheet of {width} by {length}",
                                              {{"width", shown(board.width)}, {"length", shown(board.length)}});
    const job::Position at = casing.segments ? casing.segments->at : casing.board ? casing.board->at : casing.width.at;
    return {job::Severity::error, at,
            casing.segments
                ? say("segments_do_not", "{n} casing segments do not come out of {from}",
                      {{"n", casing.segments->value}, {"from", from}})
                : say("segments_never", "any number of casing segments do not come out of {from}", {{"from", from}}),
            possible > 0 ? say("segments_fit", "{n} segments fit", {{"n", possible}})
                         : say("segments_none", "no number of segments fits: a wider board, or a narrower casing")};
}

/// Mirrored about the middle of the head, and run from left to right again.
Path mirrored_back(const Path& path) { return path.mirrored_left_right().reversed(); }

/// As whoever stands on the other side of the wall sees them, from the left.
std::vector<CasingSegment> seen_from_behind(const std::vector<CasingSegment>& segments) {
    std::vector<CasingSegment> seen;
    seen.reserve(segments.size());
    for (const CasingSegment& segment : segments) {
        CasingSegment behind = segment;
        behind.side = job::Toward::away;
        behind.n = static_cast<int>(segments.size() - seen.size());
        behind.inside = mirrored_back(segment.inside);
        behind.outside = mirrored_back(segment.outside);
        behind.left = segment.right.mirrored_left_right();
        behind.right = segment.left.mirrored_left_right();
        std::swap(behind.left_joint, behind.right_joint);
        behind.grain = geom::direction(behind.outside.start(), behind.outside.end());
        seen.push_back(std::move(behind));
    }
    std::reverse(seen.begin(), seen.end());
    return seen;
}

/// The casing of one side of the wall.
struct SideCasing {
    Length inside;  ///< edges, to the left of the measured curve
    Length outside;
    std::size_t bands = 0;
    std::vector<CasingSegment> segments;  ///< as seen from the room
};

tl::expected<SideCasing, job::Diagnostic> side_casing(Length finish, const curve::Head& head, const job::Casing& casing,
                                                      const job::Job& job) {
    SideCasing side;
    side.inside = finish + casing.reveal.value;
    side.outside = side.inside + casing.width.value;
    const auto& runs = head.outline.runs();
    const auto in = head.outline.extents(side.inside);
    const auto out = head.outline.extents(side.outside);
    for (const auto& extents : {in, out})
        if (!extents) return tl::unexpected(folded(extents.error(), casing.width.at, say("casing", "casing"), job));
    std::vector<Band> bands;
    for (std::size_t i = 1; i + 1 < runs.size(); ++i)
        bands.push_back({&runs[i], side.inside, side.outside, (*in)[i], (*out)[i]});
    side.bands = bands.size();

    const Board board = largest_board(casing, job.stock);
    if (casing.segments && casing.segments->value % static_cast<int>(bands.size()) != 0)
        return tl::unexpected(uneven(casing, static_cast<int>(bands.size())));
    const int count = casing.segments ? casing.segments->value : fewest(bands, board);
    if (count > 0) side.segments = cut_all(bands, count);
    if (count == 0 || !fit(side.segments, board))
        return tl::unexpected(too_wide(casing, board, fewest(bands, board), job));
    return side;
}

void add_at_room(ArchLines& lines, const curve::Head& head, SideCasing side) {
    lines.casing_inside = arch_parallel(head, side.inside);
    lines.casing_outside = arch_parallel(head, side.outside);
    for (std::size_t i = 0; i < side.segments.size(); ++i) {
        const CasingSegment& segment = side.segments[i];
        if (i == 0) lines.mitres.push_back(segment.left);
        const bool at_corner = (i + 1) % (side.segments.size() / side.bands) == 0;
        (at_corner ? lines.mitres : lines.segment_joints).push_back(segment.right);
    }
    lines.segments = std::move(side.segments);
}

void add_behind(ArchLines& lines, const SideCasing& side) {
    const auto at_room = static_cast<int>(lines.segments.size());
    for (CasingSegment& segment : seen_from_behind(side.segments)) {
        segment.n += at_room;
        lines.segments.push_back(std::move(segment));
    }
}

}  // namespace

job::Diagnostics add_casing(ArchLines& lines, const curve::Head& head, const job::Opening& opening,
                            const job::Job& job) {
    const job::Casing& casing = *opening.casing;
    if (casing.wall_side != job::WallSide::away) {
        auto side = side_casing(room_faces(opening).finish, head, casing, job);
        if (!side) return {side.error()};
        add_at_room(lines, head, std::move(*side));
    }
    if (casing.wall_side != job::WallSide::room) {
        const auto side = side_casing(away_faces(opening).finish, head, casing, job);
        if (!side) return {side.error()};
        add_behind(lines, *side);
    }
    return {};
}

}  // namespace kerfpacket::plan
