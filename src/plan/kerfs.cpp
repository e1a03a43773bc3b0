#include "plan/kerfs.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

/// A kerf this near the end of its reach counts as beyond it: rounding, not wood.
constexpr Length tolerance = Length::mm(1e-9);
/// Wood that stays between a kerf and a mitre. Judgement.
constexpr Length mitre_land = 0.25_in;

bend::KerfsOn side_of(double curvature) { return curvature < 0 ? bend::KerfsOn::outside : bend::KerfsOn::inside; }

/// How far into the board, from zero, the cut of a mitred end reaches at the kerf face and at the kerfs' bottom.
Length mitre_reach(const BoardEnd& end, const Cutting& cut, bool far) {
    const double at_bottom = cut.depth / cut.thickness;
    const Length bottom = end.kerf_face + (end.plain_face - end.kerf_face) * at_bottom;
    return far ? std::min(end.kerf_face, bottom) : std::max(end.kerf_face, bottom);
}

/// Where the middles of kerfs may stand: `reach` beyond the bend, but clear of mitres and of the board's ends.
struct Room {
    Length low;
    Length high;
};
/// From zero.
Room room_for_kerfs(const Blank& blank, const Cutting& cut, Length reach) {
    // With hardly any trim the bend reaches the end of the board: a kerf wants wood on both sides.
    Room room{std::max(blank.bend_start - reach, cut.kerf), std::min(blank.bend_end + reach, blank.length - cut.kerf)};
    const Length clear = mitre_land + cut.kerf / 2;
    if (blank.ends[0].mitre.radians() > 0)
        room.low = std::max(room.low, mitre_reach(blank.ends[0], cut, false) + clear);
    if (blank.ends[1].mitre.radians() > 0)
        room.high = std::min(room.high, mitre_reach(blank.ends[1], cut, true) - clear);
    return room;
}

/// How many kerfs stand between a place and each of the evenly spaced places at which a spacing is known, the spacing
/// running straight from one to the next: the integral of dl/s.
std::vector<double> running_count(const std::vector<Length>& spacings, Length step) {
    std::vector<double> running{0};
    running.reserve(spacings.size());
    for (std::size_t i = 1; i < spacings.size(); ++i) {
        const double change = (spacings[i] - spacings[i - 1]) / step;
        const double more =
            std::abs(change) < 1e-9 ? step / spacings[i] : std::log(spacings[i] / spacings[i - 1]) / change;
        running.push_back(running.back() + more);
    }
    return running;
}

/// Where that count passes i - 1/2 of `count` whole parts.
std::vector<Length> places_of(const std::vector<Length>& spacings, Length from, Length step) {
    const std::vector<double> running = running_count(spacings, step);
    const auto count = std::min(static_cast<std::size_t>(std::ceil(running.back() - 1e-9)), most_kerfs + 1);
    std::vector<Length> places;
    std::size_t k = 1;
    for (std::size_t i = 0; i < count; ++i) {
        const double wanted = running.back() * ((static_cast<double>(i) + 0.5) / static_cast<double>(count));
        while (k + 1 < running.size() && running[k] < wanted) ++k;
        const double more = wanted - running[k - 1];
        const double change = (spacings[k] - spacings[k - 1]) / step;
        const Length into = spacings[k - 1] * (std::abs(change) < 1e-9 ? more : std::expm1(change * more) / change);
        places.push_back(from + step * static_cast<double>(k - 1) + into);
    }
    return places;
}

/// Two more kerfs beyond a tangent point, at the gap that is there, as far as there is wood.
void go_on(std::vector<Length>& places, const Room& room, bool before, Length alone) {
    const std::size_t n = places.size();
    const Length gap = n < 2 ? alone : before ? places[1] - places[0] : places[n - 1] - places[n - 2];
    for (int more = 0; more < 2; ++more) {
        if (before && places.front() - gap > room.low) places.insert(places.begin(), places.front() - gap);
        if (!before && places.back() + gap < room.high) places.push_back(places.back() + gap);
    }
}

/// Half of the usual spacing to each side: what a kerf may bend.
std::vector<Length> least_around(const std::vector<Length>& spacings, Length step) {
    const auto reach = static_cast<std::size_t>(std::ceil(usual_spacing / 2 / step));
    std::vector<Length> least;
    least.reserve(spacings.size());
    for (std::size_t i = 0; i < spacings.size(); ++i) {
        const auto first = spacings.begin() + static_cast<std::ptrdiff_t>(i - std::min(i, reach));
        const auto last = spacings.begin() + static_cast<std::ptrdiff_t>(std::min(i + reach + 1, spacings.size()));
        least.push_back(*std::min_element(first, last));
    }
    return least;
}

/// At how many places, the first left out, a solved bend of that length is looked at.
int steps_along(Length length) {
    constexpr int fewest = 100;
    constexpr int most = 1000;
    return std::clamp(static_cast<int>(length.inches() * 10), fewest, most);
}

/// The stretch of a solved bend between whose ends kerfs stand, from the left end of the board: counted there because
/// a board numbered from the right is the same board read backward.
Room solved_stretch(const Blank& blank, const Unrolled& board, const Cutting& cut) {
    const Room room = room_for_kerfs(blank, cut, blank.length);
    const bool right = blank.zero == job::End::right;
    const Length low = blank.from_left(right ? room.high : room.low);
    const Length high = blank.from_left(right ? room.low : room.high);
    return {std::max(board.origin, low), std::min(board.bend_end(), high)};
}

/// Places counted from the left, from zero.
std::vector<Length> from_zero(const Blank& blank, std::vector<Length> places) {
    if (blank.zero == job::End::left) return places;
    std::reverse(places.begin(), places.end());
    for (Length& place : places) place = blank.from_left(place);
    return places;
}

}  // namespace

std::vector<Length> even_places(const Blank& blank, const Cutting& cut) {
    const Room room = room_for_kerfs(blank, cut, cut.spacing / 2 - tolerance);
    const double first = std::ceil(room.low / cut.spacing);
    std::vector<Length> places;
    // Stops one past the most that is allowed.
    for (std::size_t i = 0; i <= most_kerfs; ++i) {
        const Length at = cut.spacing * (first + static_cast<double>(i));
        if (at > room.high) break;
        places.push_back(at);
    }
    return places;
}

SpacingByBend::SpacingByBend(const Cutting& cutting, const bend::Material& material, const Cut& cut)
    : least_(cut.least),
      most_(cut.most),
      tighter_(cut.tighter),
      inside_(cutting.cell(cut.most), material, bend::KerfsOn::inside, cut.least, cut.most),
      outside_(cutting.cell(cut.most), material, bend::KerfsOn::outside, cut.least, cut.most) {}

Length SpacingByBend::at(double curvature) {
    curvature /= 1 - tighter_;
    if (std::abs(curvature) < no_curvature) return most_;
    bend::SpacingSearch& on = side_of(curvature) == bend::KerfsOn::inside ? inside_ : outside_;
    return on.widest(Length::mm(1 / std::abs(curvature)));
}

Bends bends_along(const curve::Curve& line, Length from, Length to) {
    const int steps = steps_along(to - from);
    Bends bends{(to - from) / steps, {}};
    bends.curvatures.reserve(static_cast<std::size_t>(steps) + 1);
    curve::Curve::Following following(line);
    for (int i = 0; i <= steps; ++i) bends.curvatures.push_back(following.curvature(from + bends.step * i));
    return bends;
}

std::vector<Length> local_spacings(SpacingByBend& allowed, const Bends& bends) {
    const auto& [step, curvatures] = bends;
    std::vector<Length> each;
    each.reserve(curvatures.size());
    for (const double curvature : curvatures) each.push_back(allowed.at(curvature));
    std::vector<Length> spacings = least_around(each, step);
    // Where the spacing grows by ds over a length dl, the gaps of kerfs placed by the integral of dl/s grow by the
    // factor exp(ds/dl).
    const Length most_change = step * (std::log(most_gap_ratio) * 0.98);
    for (std::size_t i = 1; i < spacings.size(); ++i)
        spacings[i] = std::min(spacings[i], spacings[i - 1] + most_change);
    for (std::size_t i = spacings.size() - 1; i > 0; --i)
        spacings[i - 1] = std::min(spacings[i - 1], spacings[i] + most_change);
    return spacings;
}

ArcKerfs arc_kerfs(const Blank& blank, const Unrolled& board, const Cutting& cut) {
    const Room stretch = solved_stretch(blank, board, cut);
    const Length length = std::max(Length(), stretch.high - stretch.low);
    const double count = std::min(std::ceil(length / cut.spacing - 1e-9), static_cast<double>(most_kerfs + 1));
    return {static_cast<int>(count), count > 0 ? length / count : cut.spacing};
}

Length arc_gap(const Blank& blank, const Unrolled& board, const Cutting& cut, int count) {
    const Room stretch = solved_stretch(blank, board, cut);
    return (stretch.high - stretch.low) / count;
}

std::vector<Length> arc_places(const Blank& blank, const Unrolled& board, const Cutting& cut, int count) {
    const Length from = solved_stretch(blank, board, cut).low;
    const Length gap = arc_gap(blank, board, cut, count);
    std::vector<Length> places;
    places.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) places.push_back(from + gap * (i + 0.5));
    return from_zero(blank, std::move(places));
}

std::vector<Length> solved_places(const Blank& blank, const Unrolled& board, const Cutting& cutting,
                                  SpacingByBend& allowed) {
    const Room stretch = solved_stretch(blank, board, cutting);
    const Length from = stretch.low;
    if (stretch.high - from < tight_spacing) return {};
    const Length low = from - board.origin, high = stretch.high - board.origin;
    const std::vector<Length> spacings =
        allowed.alike() ? std::vector(static_cast<std::size_t>(steps_along(high - low)) + 1, allowed.most())
                        : local_spacings(allowed, bends_along(board.line, low, high));
    const Length step = (stretch.high - from) / static_cast<double>(spacings.size() - 1);
    std::vector<Length> places = places_of(spacings, from, step);
    const Room room{cutting.kerf, board.length - cutting.kerf};
    if (board.ends[0].mitre.radians() == 0) go_on(places, room, true, spacings.front());
    if (board.ends[1].mitre.radians() == 0) go_on(places, room, false, spacings.back());
    return from_zero(blank, std::move(places));
}

}  // namespace kerfpacket::plan
