#include "sheets/strips/strip_lean.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "geom/outside.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {

using namespace measure::literals;

StripLean::StripLean(const StripContext& context, const StripFrame& frame)
    : piece_(context.piece), blank_(piece_.blank()), frame_(frame), beside_(piece_.on_edge(piece_.cut.kerf)) {
    if (context.lanes.edge) return;
    lean_ = blank_.lean / context.piece.width * (frame.runs_right() ? 1 : -1);
}

double StripLean::at(Length from_zero) const {
    // Where the plumb lines of the wall's ends meet the front edge, but outside every kerf and, at a joint, every cut.
    const auto cut = [&](std::size_t end, Length plumb) {
        return is_scarf(piece_, end) ? (end == 0 ? waste_until(piece_) : waste_from(piece_)) : plumb;
    };
    const Length first = std::min(cut(0, blank_.bend_start - blank_.tails[0]), blank_.kerfs.front().at - beside_);
    const Length last = std::max(cut(1, blank_.bend_end + blank_.tails[1]), blank_.kerfs.back().at + beside_);
    constexpr Length hair = 1e-6_mm;
    if (from_zero < first && first > hair) return lean_ * std::max(0.0, from_zero / first);
    if (from_zero > last && blank_.length - last > hair)
        return lean_ * std::max(0.0, (blank_.length - from_zero) / (blank_.length - last));
    return lean_;
}

Point StripLean::operator()(Point drawn) const {
    return {drawn.x + (drawn.y - frame_.base()) * at(frame_.from_zero(drawn.x)), drawn.y};
}

Point StripLean::before(Point leant) const {
    Point drawn = leant;
    for (int i = 0; i < 20; ++i) drawn.x = leant.x - (leant.y - frame_.base()) * at(frame_.from_zero(drawn.x));
    return drawn;
}

Length StripLean::overhang(const plan::Piece& piece, const Lanes& lanes) {
    return lanes.edge ? Length() : measure::abs(piece.blank().lean) * (lanes.height / piece.width);
}

bool StripLean::to_the_left(const plan::Piece& piece) {
    return (piece.blank().lean < Length()) == (piece.blank().zero == job::End::left);
}

std::optional<OtherCut> other_cut(const StripContext& context, std::size_t end) {
    const plan::Blank& blank = context.piece.blank();
    if (context.lanes.edge) return std::nullopt;
    // Further along than that a flat cut would run through the marks of many kerfs.
    constexpr Length furthest = 1.5_in;
    constexpr Length hair = 0.001_mm;
    const Length at = blank.cut_at(end);
    const Length lean = blank.ends.at(end).lean;
    // One that begins at a corner of the blank does not lean with the strip, which ends there.
    const bool corner = lean != Length() && (at < hair || at > blank.length - hair);
    if (lean == blank.lean && !corner) return std::nullopt;
    const double slope = lean / context.piece.width;
    const double steep = std::abs(slope) * (context.lanes.height / furthest);
    return OtherCut{at, slope, context.lanes.height / std::max(1.0, steep)};
}

Length crossing(const OtherCut& cut, Length height, const StripFrame& frame, const StripLean& lean) {
    return frame.from_zero(lean.before({frame.at(cut.at(height), {}).x, frame.base() + height}).x);
}

std::vector<Length> other_cuts_across(const StripContext& context, const Strip& strip, const StripFrame& frame,
                                      Length up, Length size) {
    std::vector<Length> crossed;
    const StripLean lean(context, frame);
    for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
        const auto cut = other_cut(context, end);
        if (!cut) continue;
        for (Length height = up - 1_pt; height < std::min(up + size, cut->up); height += 1_pt) {
            const Length drawn = crossing(*cut, height, frame, lean);
            if (drawn >= strip.from && drawn <= strip.to) crossed.push_back(frame.at(drawn, {}).x);
        }
    }
    return crossed;
}

void draw_other_cuts(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame,
                     const StripLean& lean, std::size_t first) {
    const std::vector<Rect> words = pen.words_since(first, 1.5_pt);
    for (const std::size_t i : {std::size_t{0}, std::size_t{1}}) {
        const auto cut = other_cut(context, i);
        if (!cut) continue;
        // A long one goes on on the next strip.
        const auto on_strip = [&](Point there) {
            const Length drawn = frame.from_zero(lean.before(there).x);
            return drawn >= strip.from && drawn <= strip.to;
        };
        const auto line = geom::part_where(frame.at(cut->foot, {}), frame.at(cut->at(cut->up), cut->up), on_strip);
        if (line) pen.line_around(Role::limit, line->start(), line->end(), pen.kit().style.heavy, Dash::solid, words);
    }
}

}  // namespace kerfpacket::sheets
