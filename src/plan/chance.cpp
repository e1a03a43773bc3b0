// What the kerfs of a piece come to as a chance of breaking.

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <span>
#include <utility>

#include "bend/limit.h"
#include "bend/verdict.h"
#include "bend/yield.h"
#include "plan/lay_out.h"

namespace kerfpacket::plan {
namespace {

/// What the closed form of strain may be wrong by. Source: src/bend/NOTES.md.
constexpr double formula_error = 0.048;
/// From a bound, within which an error may lie anywhere, to its standard deviation.
const double evenly = 1 / std::sqrt(3.0);

/// What the depth stop is off by.
Length depth_error(measure::Unit unit) {
    return unit == measure::Unit::inch ? Length::inches(1.0 / 64) : Length::mm(0.5);
}

/// Of the strain at the kerf that governs, when it is cut a little shallower or deeper.
double by_depth(const Laid& laid, const bend::Material& material, measure::Unit unit) {
    const Kerf& kerf = laid.governing_kerf();
    const bend::Cell cell = laid.cut.cell(kerf.spacing);
    const double meant =
        bend::web_strain(cell, material.softness, laid.radii.line) / bend::break_strain(cell, material, kerf.on);
    double most = 0;
    for (const Length by : {-depth_error(unit), depth_error(unit)}) {
        bend::Cell other = cell;
        other.depth += by;
        if (other.depth.mm() <= 0 || other.thinnest_web().mm() <= 0) continue;
        const double then =
            bend::web_strain(other, material.softness, laid.radii.line) / bend::break_strain(other, material, kerf.on);
        most = std::max(most, std::abs(std::log(then / meant)));
    }
    return most;
}

/// Of the curvature, when span and rise are read wrong. Of a curve that is no arc a bound: its sharpest place goes with
/// the square of the rise at most.
double by_tape(const Request& wanted, bool circular, Length tape) {
    if (wanted.rise.mm() <= 0 || wanted.span.mm() <= 0) return 0;
    if (!circular) return 2 * (tape / wanted.rise + tape / wanted.span);
    return bend::coupon_error({wanted.span, wanted.rise}, tape, tape);
}

struct Load {
    double bound = 0;   ///< depth and tape at worst
    double spread = 0;  ///< standard deviation of all errors of the strain
};

Load load_of(const Laid& laid, const Request& wanted, const bend::Material& material, const job::Job& job) {
    const Length tape = job.header.tape > Length() ? job.header.tape : job::usual_tape;
    const double depth = by_depth(laid, material, job.header.units);
    const double radius = by_tape(wanted, laid.circular, tape);
    return {depth + radius, evenly * std::hypot(depth, radius, formula_error)};
}

/// A way of breaking, and how far from it kerfs are by the table.
struct Way {
    bend::Mode mode = bend::Mode::strain;
    double margin = 0;  ///< logarithm of limit over strain
    int kerfs = 1;
};

/// Of every kerf that bends; those that are alike together.
std::vector<Way> ways_to_break(const Laid& laid, const bend::Material& table) {
    std::vector<Way> ways;
    // Where the margins of either mode stand among the ways: the earliest that is alike is taken.
    std::array<std::map<double, std::size_t>, 2> margins;
    const auto add = [&](double limit, double strain, bend::Mode mode) {
        constexpr double alike = 1e-9;
        const double margin = std::log(limit / strain);
        auto& known = margins.at(static_cast<std::size_t>(mode));
        std::size_t earliest = ways.size();
        for (auto it = known.lower_bound(margin - 2 * alike); it != known.end() && it->first < margin + alike; ++it)
            if (std::abs(it->first - margin) < alike) earliest = std::min(earliest, it->second);
        if (earliest < ways.size()) {
            ++ways[earliest].kerfs;
            return;
        }
        known.emplace(margin, ways.size());
        ways.push_back({mode, margin, 1});
    };
    bend::AtSpacings kerfs(laid.cut.cell(laid.cut.spacing), table.softness);
    const Kerf* before = nullptr;
    double strain = 0, peel = 0;
    for (const Kerf& kerf : laid.blank.kerfs) {
        if (kerf.radius.mm() <= 0) continue;
        const bool outside = kerf.on == bend::KerfsOn::outside;
        const bool peels = outside && table.peel;
        // On an arc a kerf does what the one before it does.
        if (before == nullptr || before->spacing != kerf.spacing || before->radius != kerf.radius ||
            before->on != kerf.on) {
            const bend::Yield yield = kerfs.at(kerf.spacing);
            strain = yield.web_strain(kerf.radius);
            if (peels) peel = yield.peel_strain(table);
        }
        before = &kerf;
        add(outside ? table.break_strain_outside : table.break_strain_inside, strain, bend::Mode::strain);
        if (peels) add(peel, strain, bend::Mode::peel);
    }
    return ways;
}

/// The same with what is known of the wood, and with the spread of the load.
std::vector<bend::Link> links_of(std::span<const Way> ways, const bend::Knowledge& known, double load) {
    const auto of = [&](bend::Mode mode) { return std::pair(known.mean(mode), std::hypot(known.spread(mode), load)); };
    const auto strain = of(bend::Mode::strain), peel = of(bend::Mode::peel);
    std::vector<bend::Link> links;
    links.reserve(ways.size());
    for (const Way& way : ways) {
        const auto& [mean, spread] = way.mode == bend::Mode::peel ? peel : strain;
        links.push_back({way.margin + mean, spread, way.kerfs});
    }
    return links;
}

Chance chance_of(const std::vector<bend::Link>& links, const Load& load, const Wood& wood) {
    Chance chance;
    chance.load = load.bound;
    chance.breaks = bend::chance_of_breaking(links, wood.known.spot());
    return chance;
}

/// The kerf that governs, and the way in which it breaks first by the table. Of the ways the weakest come first.
class Governing {
public:
    Governing(const Laid& laid, const std::vector<Way>& ways, const Wood& wood, double load)
        : laid_(laid), ways_(ways), wood_(wood), load_(load), kerf_(laid.governing_kerf()) {
        const bend::Cell cell = laid.cut.cell(kerf_.spacing);
        limit_ = bend::break_strain(cell, wood.table, kerf_.on);
        const bool outside = kerf_.on == bend::KerfsOn::outside;
        if (outside && wood.table.peel && limit_ < wood.table.break_strain_outside) mode_ = bend::Mode::peel;
        weakest_ = bend::weakest_of(bend::kerfs_at_most(coupon, kerf_.spacing));
    }

    double limit() const { return limit_; }

    double breaks(const bend::Knowledge& known) const {
        return bend::chance_of_breaking(links_of(that_matter(known), known, load_), known.spot());
    }

    Told told(Told::By by, const bend::Knowledge& known) const {
        return {by, limit_ * std::exp(known.mean(mode_)), known.spread(mode_), breaks(known)};
    }

    /// Chance once one more coupon of the board, bent round a disc, broke at that strain.
    double with_coupon(double strain) const {
        bend::Knowledge known = wood_.known;
        known.take_coupon(mode_, std::log(strain / limit_),
                          evenly * bend::coupon_error(coupon, bend::coupon_reading, bend::coupon_reading), weakest_);
        return breaks(known);
    }

    /// The verdict then, by that chance and by the weakest coupon.
    bend::Verdict verdict_with(double strain, double chance, double weakest) const {
        return std::max(bend::strain_verdict(laid_.bend.strain / std::min(strain, weakest)),
                        bend::chance_verdict(chance));
    }

private:
    /// A foot of the board, bent to where chord and rise read well.
    static constexpr bend::Coupon coupon{Length::inches(12), Length::inches(1.5)};

    /// The others are far stronger than the first, whatever sets the two modes apart.
    std::span<const Way> that_matter(const bend::Knowledge& known) const {
        if (ways_.empty()) return ways_;
        constexpr double rounding = 1e-6;
        const double apart = std::abs(known.mean(bend::Mode::strain) - known.mean(bend::Mode::peel));
        const double far = ways_.front().margin + apart + bend::far_stronger + rounding;
        const auto end =
            std::partition_point(ways_.begin(), ways_.end(), [&](const Way& way) { return way.margin < far; });
        return {ways_.begin(), end};
    }

    const Laid& laid_;
    const std::vector<Way>& ways_;
    const Wood& wood_;
    double load_;
    const Kerf& kerf_;
    double limit_ = 0;
    bend::Mode mode_ = bend::Mode::strain;
    bend::Weakest weakest_;  ///< of the kerfs of that coupon
};

std::vector<Told> told(const Governing& kerf, const Wood& wood) {
    std::vector<Told> all{kerf.told(Told::By::table, bend::Knowledge(wood.table.scatter))};
    if (wood.by_trials.counted() > 0) all.push_back(kerf.told(Told::By::trials, wood.by_trials));
    if (wood.known.counted() > wood.by_trials.counted()) all.push_back(kerf.told(Told::By::coupons, wood.known));
    return all;
}

/// A coupon weaker or stronger than this against the table is asked about before it counts.
constexpr double weakest_read = 0.5;
constexpr double strongest_read = 1.5;

/// The least strain in the range of some known chances at which the verdict is no worse; 0 where there is none.
double strain_for(const Governing& kerf, const std::vector<std::pair<double, double>>& chances, double weakest,
                  bend::Verdict no_worse) {
    const auto worse = [&](double strain, double chance) {
        return kerf.verdict_with(strain, chance, weakest) > no_worse;
    };
    const auto known = std::partition_point(chances.begin(), chances.end(),
                                            [&](const auto& at) { return worse(at.first, at.second); });
    if (known == chances.end()) return 0;
    if (known == chances.begin()) return known->first;
    double low = chances.front().first;
    double high = chances.back().first;
    // To a hundredth of a per cent of strain, as it is printed.
    constexpr double fine = 5e-5;
    while (high - low > fine) {
        const double middle = (low + high) / 2;
        const bool below = middle <= std::prev(known)->first;
        const bool above = middle >= known->first;
        (below || (!above && worse(middle, kerf.with_coupon(middle))) ? low : high) = middle;
    }
    return high;
}

NextCoupon next_coupon(const Governing& kerf, const Laid& laid, const Wood& wood) {
    // Where coupons count already, the weakest of all is the board's.
    const bool has_coupon = wood.known.counted() > wood.by_trials.counted();
    const double weakest = has_coupon ? laid.bend.strain_limit : kerf.limit() * strongest_read;
    NextCoupon next;
    constexpr int steps = 48;
    for (int i = 0; i <= steps; ++i) {
        const double part = weakest_read + (strongest_read - weakest_read) * i / steps;
        next.chances.emplace_back(kerf.limit() * part, kerf.with_coupon(kerf.limit() * part));
    }
    next.ok_from = strain_for(kerf, next.chances, weakest, bend::Verdict::ok);
    next.caution_from = strain_for(kerf, next.chances, weakest, bend::Verdict::caution);
    return next;
}

}  // namespace

Chance chance_of(const Laid& laid, const Request& wanted, const Wood& wood, const job::Job& job) {
    const Load load = load_of(laid, wanted, wood.table, job);
    return chance_of(links_of(ways_to_break(laid, wood.table), wood.known, load.spread), load, wood);
}

Chance chance_with_levels(const Laid& laid, const Request& wanted, const Wood& wood, const job::Job& job) {
    const Load load = load_of(laid, wanted, wood.table, job);
    std::vector<Way> ways = ways_to_break(laid, wood.table);
    const std::vector<bend::Link> links = links_of(ways, wood.known, load.spread);
    Chance chance = chance_of(links, load, wood);
    if (links.empty()) return chance;
    const std::vector<double> times = bend::times_for_chances(links, wood.known.spot(), {0.01, 0.05, 0.25, 0.5});
    std::copy(times.begin(), times.end(), chance.times.begin());
    // The weakest first, as a chance asks for them, which is reckoned some seventy times more.
    std::sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) { return a.margin < b.margin; });
    const Governing kerf(laid, ways, wood, load.spread);
    chance.told = told(kerf, wood);
    chance.next = next_coupon(kerf, laid, wood);
    return chance;
}

}  // namespace kerfpacket::plan
