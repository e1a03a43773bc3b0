#include "plan/request.h"

#include <algorithm>
#include <cmath>

#include "curve/developed.h"

namespace kerfpacket::plan {
namespace {

/// What a computation may be off: no curve that is told bends less.
constexpr Length rounding = Length::mm(0.01);

/// How far a stretch leaves the straight line between its ends.
Length sagitta(const curve::Curve& curve, Length from, Length to) {
    constexpr int parts = 16;
    const geom::Point start = curve.at(from).point;
    const geom::Point end = curve.at(to).point;
    if (geom::distance(start, end) < rounding) return {};
    const geom::Direction out = geom::direction(start, end).left();
    Length most;
    for (int i = 1; i < parts; ++i) {
        const geom::Point off = curve.at(from + (to - from) * (static_cast<double>(i) / parts)).point - start;
        most = std::max(most, measure::abs(off.x * out.x + off.y * out.y));
    }
    return most;
}

/// Where a curve bends the other way for good. A lobe that leaves its chord by less than the tape tells cannot have
/// been measured: it is a ripple of its neighbours, which are one without it. The least goes first.
std::vector<Length> changes_of_side(const curve::Curve& curve, Length tape) {
    std::vector<Length> ends = curve.inflections();
    ends.insert(ends.begin(), Length());
    ends.push_back(curve.length());
    while (ends.size() > 2) {
        std::vector<Length> heights;
        for (std::size_t i = 1; i < ends.size(); ++i) heights.push_back(sagitta(curve, ends[i - 1], ends[i]));
        const auto least = std::min_element(heights.begin(), heights.end());
        if (*least >= std::max(tape, rounding)) break;
        const auto from = ends.begin() + (least - heights.begin());
        const auto first = from == ends.begin() ? from + 1 : from;
        const auto last = from + 2 == ends.end() ? from + 1 : from + 2;
        ends.erase(first, last);
    }
    return {ends.begin() + 1, ends.end() - 1};
}

std::vector<BendRun> bend_runs(const curve::Curve& curve, Length start, Length tape) {
    std::vector<Length> ends = changes_of_side(curve, tape);
    ends.push_back(curve.length());
    std::vector<BendRun> runs;
    Length from;
    for (const Length to : ends) {
        // The kerfs are on the left of travel.
        const double turned = (curve.at(to).turned - curve.at(from).turned).radians();
        runs.push_back({start + from, start + to, turned > 0 ? bend::KerfsOn::inside : bend::KerfsOn::outside});
        from = to;
    }
    return runs;
}

std::vector<TightSpot> tight_spots(const curve::Curve& curve, const std::vector<BendRun>& runs,
                                   const std::optional<Opened>& splay) {
    const double left = curve.sharpest_left({}, curve.length()).curvature;
    const double right = curve.sharpest_right({}, curve.length()).curvature;
    const auto spot = [&](bend::KerfsOn on, double curvature) {
        return TightSpot{on, Length::mm(1 / std::max(curvature, 1e-9)), splay};
    };
    std::vector<TightSpot> spots{spot(bend::KerfsOn::outside, right), spot(bend::KerfsOn::inside, left)};
    if (left > right) std::swap(spots[0], spots[1]);
    if (std::min(left, right) < no_curvature || runs.size() == 1) spots.pop_back();
    // What a ripple bends the other way the kerfs of its run must bear too.
    if (runs.size() == 1) spots.front().on = runs.front().on;
    return spots;
}

/// One arc and nothing else.
bool is_one_arc(const curve::Curve& curve) {
    return curve.is_exact_path() && curve.joints().size() == 2 && !curve.path().segments().front().is_line();
}

}  // namespace

Request with_bend(Request wanted) {
    const auto [from, to] = wanted.extent();
    Bend bend{wanted.curve.part(from, to)};
    bend.circular = is_one_arc(bend.curve);
    bend.runs = bend_runs(bend.curve, from, wanted.tape);
    bend.spots = tight_spots(bend.curve, bend.runs, wanted.splay);
    wanted.bend = std::make_shared<const Bend>(std::move(bend));
    return wanted;
}

Faces faces(job::Surface measured_to, Length thickness) {
    if (measured_to == job::Surface::wall) return {{}, -thickness};
    return {thickness, {}};
}

Length splayed_side(const job::Opening& opening) {
    if (!opening.splay) return {};
    return opening.liner.width.value * std::tan(opening.splay->angle(opening.liner.width.value).radians());
}

std::optional<Opened> opened(const job::Opening& opening) {
    if (!opening.splay) return std::nullopt;
    const job::Splay& splay = *opening.splay;
    const Angle alpha = splay.angle(opening.liner.width.value);
    const Length side = splayed_side(opening);
    const Length narrow = splay.measured == job::Edge::narrow ? Length() : -side;
    const Length wide = narrow + side;
    const bool wide_at_room = splay.wide == job::Toward::room;
    return Opened{alpha, narrow, wide_at_room ? wide : narrow, wide_at_room ? narrow : wide};
}

Length sawn_width(const job::Opening& opening) {
    const Opened splay = *opened(opening);
    return opening.liner.width.value / splay.cosine() + opening.liner.thickness.value * std::tan(splay.alpha.radians());
}

Faces in_plane(const Faces& square, const std::optional<Opened>& splay, Length Opened::*edge) {
    return splay ? splay->in_plane(square, *splay.*edge) : square;
}

namespace {

Faces faces_at(const job::Opening& opening, Length Opened::*edge) {
    return in_plane(faces(opening.measured_to, opening.liner.thickness.value), opened(opening), edge);
}

}  // namespace

Faces room_faces(const job::Opening& opening) { return faces_at(opening, &Opened::room); }
Faces away_faces(const job::Opening& opening) { return faces_at(opening, &Opened::away); }
Faces narrow_faces(const job::Opening& opening) { return faces_at(opening, &Opened::narrow); }

Faces faces_out(const job::Opening& opening, Length out) {
    const Opened splay = *opened(opening);
    const Length seen = narrow_faces(opening).finish + out * std::sin(splay.alpha.radians());
    return {seen + opening.liner.thickness.value * splay.cosine(), seen};
}

std::vector<Faces> faces_across(const job::Opening& opening) {
    constexpr int steps = 16;
    std::vector<Faces> across;
    for (int i = 0; i <= steps; ++i)
        across.push_back(faces_out(opening, sawn_width(opening) * (static_cast<double>(i) / steps)));
    return across;
}

Faces Request::faces() const {
    return in_plane(plan::faces(measured_to, wanted->thickness.value), splay, &Opened::narrow);
}

Length Request::line_left(Length below_face) const {
    return faces().finish + (splay ? below_face / splay->cosine() : below_face);
}

curve::Curve Request::bent_line(Length below_face) const {
    const curve::Curve line = bend->curve.parallel(line_left(below_face));
    return splay ? curve::developed(line, splay->cosine()) : line;
}

curve::Extent Request::extent() const {
    return {std::min(ends[0].wall, ends[0].finish), std::max(ends[1].wall, ends[1].finish)};
}

Length TightSpot::plain_radius(job::Surface measured_to, Length thickness) const {
    const Length face = faces(measured_to, thickness).finish;
    if (!splay) return measured_radius + face * outward(on);
    return (measured_radius + splay->in_plane({{}, face}, splay->narrow).finish * outward(on)) / splay->cosine();
}

Length TightSpot::line_radius(job::Surface measured_to, Length thickness, Length below_face) const {
    const double opened = splay ? splay->cosine() : 1;
    return plain_radius(measured_to, thickness) + below_face * outward(on) / (opened * opened);
}

Length TightSpot::measured_for(Length plain, job::Surface measured_to, Length thickness) const {
    return measured_radius + (plain - plain_radius(measured_to, thickness)) * (splay ? splay->cosine() : 1);
}

}  // namespace kerfpacket::plan
