#include "plan/request.h"

#include <algorithm>
#include <cmath>

#include "curve/developed.h"

namespace kerfpacket::plan {
namespace {

/// Where a curve bends the other way for good: a lobe that turns less than a hundredth of a degree is rounding, or a
/// ripple of the tape.
std::vector<Length> changes_of_side(const curve::Curve& curve) {
    constexpr Angle least = Angle::degrees(0.01);
    std::vector<Length> places = curve.inflections();
    const auto turn = [&](std::size_t lobe) {
        const Length from = lobe == 0 ? Length() : places[lobe - 1];
        const Length to = lobe == places.size() ? curve.length() : places[lobe];
        return std::abs((curve.at(to).turned - curve.at(from).turned).radians());
    };
    for (std::size_t lobe = 0; lobe <= places.size() && !places.empty();) {
        if (turn(lobe) >= least.radians()) {
            ++lobe;
            continue;
        }
        // Without the lobe its neighbours are one.
        const auto first = places.begin() + static_cast<std::ptrdiff_t>(lobe == 0 ? 0 : lobe - 1);
        places.erase(first, lobe == 0 || lobe == places.size() ? first + 1 : first + 2);
        lobe = 0;
    }
    return places;
}

}  // namespace

Faces faces(job::Surface measured_to, Length thickness) {
    if (measured_to == job::Surface::wall) return {{}, -thickness};
    return {thickness, {}};
}

std::vector<BendRun> bend_runs(const curve::Curve& curve) {
    std::vector<Length> ends = changes_of_side(curve);
    ends.push_back(curve.length());
    std::vector<BendRun> runs;
    Length from;
    for (const Length to : ends) {
        // The kerfs are on the left of travel.
        const double turned = (curve.at(to).turned - curve.at(from).turned).radians();
        runs.push_back({from, to, turned > 0 ? bend::KerfsOn::inside : bend::KerfsOn::outside});
        from = to;
    }
    return runs;
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
    return Opened{alpha, narrow, splay.wide == job::Toward::room ? narrow + side : narrow};
}

Length sawn_width(const job::Opening& opening) {
    const Opened splay = *opened(opening);
    return opening.liner.width.value / splay.cosine() +
           opening.liner.thickness.value * std::tan(splay.alpha.radians());
}

Faces room_faces(const job::Opening& opening) {
    const Faces square = faces(opening.measured_to, opening.liner.thickness.value);
    const auto splay = opened(opening);
    return splay ? splay->in_plane(square, splay->room) : square;
}

Faces narrow_faces(const job::Opening& opening) {
    const Faces square = faces(opening.measured_to, opening.liner.thickness.value);
    const auto splay = opened(opening);
    return splay ? splay->in_plane(square, splay->narrow) : square;
}

Faces Request::faces() const {
    const Faces square = plan::faces(measured_to, wanted->thickness.value);
    return splay ? splay->in_plane(square, splay->narrow) : square;
}

Length Request::line_left(Length below_face) const {
    return faces().finish + (splay ? below_face / splay->cosine() : below_face);
}

curve::Curve Request::bent_line(Length below_face) const {
    const curve::Curve line = bent().parallel(line_left(below_face));
    return splay ? curve::developed(line, splay->cosine()) : line;
}

curve::Extent Request::extent() const {
    return {std::min(ends[0].wall, ends[0].finish), std::max(ends[1].wall, ends[1].finish)};
}

curve::Curve Request::bent() const {
    const auto [from, to] = extent();
    return curve.part(from, to);
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

std::vector<TightSpot> tight_spots(const Request& wanted) {
    const curve::Curve curve = wanted.bent();
    const double left = curve.sharpest_left({}, curve.length()).curvature;
    const double right = curve.sharpest_right({}, curve.length()).curvature;
    const auto spot = [&](bend::KerfsOn on, double curvature) {
        return TightSpot{on, Length::mm(1 / std::max(curvature, 1e-9)), wanted.splay};
    };
    std::vector<TightSpot> spots{spot(bend::KerfsOn::outside, right), spot(bend::KerfsOn::inside, left)};
    if (left > right) std::swap(spots[0], spots[1]);
    if (std::min(left, right) < no_curvature) spots.pop_back();
    return spots;
}

}  // namespace kerfpacket::plan
