#include "plan/judge.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <tuple>

#include "bend/yield.h"

namespace kerfpacket::plan {
namespace {

using bend::Concern;

/// A place half way between two kerfs, or where the bend ends before it.
struct Border {
    Length along;  ///< the line
    Angle turned;
};

/// The sharpest bend of what one kerf bends, to the side that the kerf is bent to: where the bend reverses, what is
/// bent to the other side takes from it. A magnitude.
double sharpest(curve::Curve::Following& line, Length low, Length high, bend::KerfsOn on) {
    double sharpest = 0;
    if (high <= low) return sharpest;
    // A hair inside, so that a joint's far side does not count.
    for (const double part : {0.001, 0.25, 0.5, 0.75, 0.999})
        sharpest = std::max(sharpest, -outward(on) * line.curvature(low + (high - low) * part));
    return sharpest;
}

/// Worse first by verdict, then by strain.
bool worse(const bend::Assessment& a, const bend::Assessment& b) {
    return a.verdict != b.verdict ? a.verdict > b.verdict : a.utilisation > b.utilisation;
}

/// From a kerf's middle to its mark. Left and right are those of the operator, who sees the distances of a board that
/// is numbered from the right run leftward.
Length mark_offset(job::Tick tick, job::End zero, Length kerf) {
    if (tick == job::Tick::centre) return {};
    const bool toward_zero = (tick == job::Tick::left) == (zero == job::End::left);
    return toward_zero ? -kerf / 2 : kerf / 2;
}

/// Adds up what is wrong anywhere; what is worse stands for what is less.
std::vector<Concern> joined(std::set<Concern> concerns) {
    if (concerns.contains(Concern::strain_break)) concerns.erase(Concern::strain_caution);
    if (concerns.contains(Concern::closes_before_bend)) concerns.erase(Concern::nearly_closes);
    return {concerns.begin(), concerns.end()};
}

/// Goes from kerf to kerf, for the first that does not hold may end it.
class Judging {
public:
    Judging(const std::vector<Length>& places, const Blank& blank, const Unrolled& board, const Cutting& cut,
            const Bending& bending)
        : places_(places),
          blank_(blank),
          board_(board),
          cut_(cut),
          bending_(bending),
          line_(board.line),
          before_{place_of_border(0), line_.turned(place_of_border(0))} {}

    /// The next kerf, but for its mark and its strain.
    Kerf next() {
        const std::size_t i = i_++;
        const Border before = before_;
        const Length to = place_of_border(i + 1);
        const bool leftward = before.along > to;
        before_ = {to, line_.turned(to)};
        const Angle turn = leftward ? before.turned - before_.turned : before_.turned - before.turned;
        Kerf kerf;
        kerf.n = static_cast<int>(i) + 1;
        kerf.at = places_[i];
        kerf.spacing = mean_gap(i);
        kerf.on_curve = board_.on_curve(along(kerf.at));
        kerf.on = run_at(kerf.at).on;
        // Where the bend changes sides it is the turn that is left which tells the kerf's.
        if (run_at(border(i)).on != run_at(border(i + 1)).on && turn.radians() != 0)
            kerf.on = turn.radians() < 0 ? bend::KerfsOn::outside : bend::KerfsOn::inside;
        // On a ripple it turns back a little: together they turn what the bend does.
        kerf.turn = kerf.on == bend::KerfsOn::outside ? Angle() - turn : turn;
        const double curvature = sharpest(line_, leftward ? to : before.along, leftward ? before.along : to, kerf.on);
        if (curvature < no_curvature) return kerf;
        kerf.radius = bending_.circular ? bending_.line_radius : Length::mm(1 / curvature);
        return kerf;
    }

    /// An end kerf may turn less than its share: on an arc the others tell what a kerf turns.
    Angle told_turn(const Kerf& kerf) const {
        const bool alike = bending_.circular && !cut_.kerfs_given;
        return alike ? board_.turn / static_cast<double>(places_.size()) : kerf.turn;
    }

private:
    /// Between kerf i and the one before it.
    Length border(std::size_t i) const {
        if (i == 0) return {};
        return i == places_.size() ? blank_.length : (places_[i - 1] + places_[i]) / 2;
    }

    Length place_of_border(std::size_t i) const {
        return std::clamp(along(border(i)), board_.bend_from, board_.bend_to);
    }

    Length along(Length from_zero) const { return blank_.from_left(from_zero) - board_.origin; }

    /// The run a kerf stands on; beyond the bend the nearest.
    const BendRun& run_at(Length at) const {
        return *std::find_if(blank_.runs.begin(), blank_.runs.end() - 1,
                             [&](const BendRun& run) { return at <= run.to; });
    }

    /// The gap before kerf i: where kerfs are given by hand and stop short of the bend's end, as if the next stood as
    /// far beyond that end.
    Length gap_before(std::size_t i) const {
        if (i > 0) return places_[i] - places_[i - 1];
        const Length after = places_[1] - places_[0];
        return cut_.kerfs_given ? std::max(after, (places_[0] - blank_.bend_start) * 2) : after;
    }

    Length gap_after(std::size_t i) const {
        if (i + 1 < places_.size()) return places_[i + 1] - places_[i];
        const Length before = places_[i] - places_[i - 1];
        return cut_.kerfs_given ? std::max(before, (blank_.bend_end - places_[i]) * 2) : before;
    }

    /// The mean of the gaps beside kerf i; an end kerf has but one.
    Length mean_gap(std::size_t i) const {
        const bool even = cut_.even() && !cut_.kerfs_given;
        if (even || places_.size() < 2) return cut_.spacing;
        return (gap_before(i) + gap_after(i)) / 2;
    }

    const std::vector<Length>& places_;
    const Blank& blank_;
    const Unrolled& board_;
    const Cutting& cut_;
    const Bending& bending_;
    curve::Curve::Following line_;
    std::size_t i_ = 0;
    Border before_;  ///< that kerf
};

}  // namespace

std::optional<Judged> judge(const std::vector<Length>& places, job::Tick tick, const Blank& blank,
                            const Unrolled& board, const Cutting& cut, const Bending& bending,
                            const bend::Material& material, const MayStand& may_stand) {
    Judging judging(places, blank, board, cut, bending);
    const Length offset = mark_offset(tick, blank.zero, cut.kerf);
    Judged judged;
    judged.line_radius = bending.line_radius;
    std::set<Concern> concerns;
    std::optional<bend::Assessment> worst;
    Length facet;
    Length close;
    judged.kerfs.reserve(places.size());
    bend::AtSpacings kerfs(cut.cell(cut.spacing), material.softness);
    // On an arc a kerf does what the one before it does.
    std::optional<bend::Assessment> last;
    std::tuple<Length, bend::KerfsOn, Length, Angle> assessed;
    for (std::size_t i = 0; i < places.size(); ++i) {
        Kerf& kerf = judged.kerfs.emplace_back(judging.next());
        kerf.mark = kerf.at + offset;
        if (kerf.radius.mm() <= 0) continue;
        const std::tuple asked{kerf.spacing, kerf.on, kerf.radius, judging.told_turn(kerf)};
        if (!last || asked != assessed)
            last = bend::assess(kerfs.at(kerf.spacing), material, kerf.on, kerf.radius, judging.told_turn(kerf), 1);
        assessed = asked;
        const bend::Assessment& here = *last;
        if (may_stand && !std::all_of(here.concerns.begin(), here.concerns.end(), may_stand)) return std::nullopt;
        kerf.utilisation = here.utilisation;
        concerns.insert(here.concerns.begin(), here.concerns.end());
        facet = std::max(facet, here.facet);
        close = std::max(close, here.close_radius);
        if (worst && !worse(here, *worst)) continue;
        worst = here;
        judged.line_radius = kerf.radius;
        judged.governing = kerf.n;
    }
    if (!worst) return judged;
    judged.bend = *worst;
    judged.bend.concerns = joined(std::move(concerns));
    judged.bend.facet = facet;
    judged.bend.close_radius = close;
    return judged;
}

}  // namespace kerfpacket::plan
