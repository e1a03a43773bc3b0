#include "bend/chance.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

// Shares of the whole scatter. Judgement, no source found.
constexpr double shop_share = 0.75;
constexpr double spot_share = 0.2;
/// How far the two modes of a board go together. Judgement, no source found.
constexpr double alike = 0.5;

constexpr std::size_t modes = 2;
/// Of a strain's logarithm: a tenth of what is printed.
constexpr double fine_enough = 5e-4;

double normal_below(double z) { return 0.5 * std::erfc(-z / std::sqrt(2.0)); }

/// Links of one spread, whose margins fall by as much on a weak board; the weakest first.
struct Alike {
    double spread = 0;
    std::vector<Link> links;
};

/// Under which margin a link can matter beside the weakest.
double strong_from(const std::vector<Link>& links) {
    double least = links.empty() ? 0 : links.front().margin;
    for (const Link& link : links) least = std::min(least, link.margin);
    return least + far_stronger;
}

std::vector<Alike> weak_ones(const std::vector<Link>& links) {
    const double strong = strong_from(links);
    std::vector<Alike> weak;
    for (const Link& link : links) {
        if (link.margin >= strong) continue;
        auto same = std::find_if(weak.begin(), weak.end(), [&](const Alike& a) { return a.spread == link.spread; });
        if (same == weak.end()) {
            same = weak.insert(weak.end(), {link.spread, {}});
            same->links.reserve(links.size());
        }
        same->links.push_back(link);
    }
    const auto weaker = [](const Link& a, const Link& b) { return a.margin < b.margin; };
    for (Alike& some : weak)
        if (!std::is_sorted(some.links.begin(), some.links.end(), weaker))
            std::stable_sort(some.links.begin(), some.links.end(), weaker);
    return weak;
}

/// Two laws of scatter with the same mean and deviation: the normal one, and that of the least of many, which makes
/// strengths Weibull and has the longer tail of weak boards. Which holds is not known.
enum class Law { normal, least };

// The standard law of the least, P(below z) = 1 - exp(-exp((z - mode_of_least)/scale)), with mean 0 and deviation 1.
constexpr double pi = 3.14159265358979323846;
const double scale = std::sqrt(6.0) / pi;
const double mode_of_least = 0.57721566490153286 * scale;

/// Density of what is common to a board standing z deviations to the weak side.
double density(Law law, double z) {
    if (law == Law::normal) return std::exp(-z * z / 2) / std::sqrt(2 * pi);
    const double t = (-z - mode_of_least) / scale;
    return std::exp(t - std::exp(t)) / scale;
}

/// The even steps over z that the integral is taken by, and what all densities from a step on come to.
struct Steps {
    static constexpr double step = 0.1;
    static constexpr double strong = -8;
    std::vector<double> densities;
    std::vector<double> from_here;

    explicit Steps(Law law) {
        const double weak = law == Law::normal ? 8 : 20;
        for (int i = 0; strong + i * step <= weak; ++i) densities.push_back(density(law, strong + i * step));
        from_here.resize(densities.size());
        double sum = 0;
        for (std::size_t i = densities.size(); i-- > 0;) from_here[i] = sum += densities[i];
    }
    /// Past the last of them.
    double weakest() const { return strong + static_cast<double>(densities.size()) * step; }
};

/// Under this logarithm of the chance to hold it is none, to the last bit that is added up.
constexpr double none_holds = -40;

/// The integral over z of density and chance to break: for a smooth function that dies away at both ends the
/// trapezoid's error falls faster than any power of the step. `holds` is the logarithm of the chance that no kerf
/// breaks; the weaker the board, the less it is. Boards on the strong side of `from` all hold.
template <typename Holds>
double integral(const Steps& steps, double from, const Holds& holds) {
    double sum = 0;
    const auto first = static_cast<std::size_t>(std::max(0.0, std::floor((from - Steps::strong) / Steps::step)));
    for (std::size_t i = first; i < steps.densities.size(); ++i) {
        const double log_holds = holds(Steps::strong + static_cast<double>(i) * Steps::step);
        if (log_holds < none_holds) return std::clamp((sum + steps.from_here[i]) * Steps::step, 0.0, 1.0);
        sum += steps.densities[i] * -std::expm1(log_holds);
    }
    return std::clamp(sum * Steps::step, 0.0, 1.0);
}

/// Logarithm of the normal law's chance to be below so many deviations. It is asked for some hundred thousand times a
/// board: from a table, by the cubic through four neighbours, off by less than 1e-9.
class LogBelow {
public:
    /// From here on it is as good as certain: the logarithm is less than that error.
    static constexpr double top = 6.5;

    double operator()(double z) const {
        if (z >= top) return 0;
        if (z <= bottom) return none_holds - 1;
        const double place = (z - bottom) * per_unit;
        const auto i = static_cast<std::size_t>(place);
        const double t = place - static_cast<double>(i);
        const double a = values_[i], b = values_[i + 1], c = values_[i + 2], d = values_[i + 3];
        return b + t * ((c - a) / 2 + t * (a - 2.5 * b + 2 * c - d / 2 + t * (1.5 * (b - c) + (d - a) / 2)));
    }

private:
    static constexpr double bottom = -9, per_unit = 64;
    std::vector<double> values_ = [] {
        std::vector<double> values;
        for (int i = -1; i <= (top - bottom) * per_unit + 2; ++i)
            values.push_back(std::log(normal_below(bottom + i / per_unit)));
        return values;
    }();
};

/// Each kerf's spot normally distributed.
double breaks_by_normal(const std::vector<Alike>& weak, double spot, double log_times) {
    static const Steps steps(Law::normal);
    static const LogBelow log_below;
    double from = steps.weakest();
    for (const Alike& some : weak)
        from = std::min(from, (some.links.front().margin - log_times - LogBelow::top * spot) / some.spread);
    return integral(steps, from, [&](double z) {
        double holds = 0;
        for (const Alike& some : weak) {
            const double fallen = log_times + some.spread * z;
            for (const Link& link : some.links) {
                const double above = (link.margin - fallen) / spot;
                // All that follow hold as well; and where none is left to hold, no more is asked.
                if (above >= LogBelow::top || holds < none_holds) break;
                holds += link.kerfs * log_below(above);
            }
        }
        return holds;
    });
}

/// Each kerf's spot the least of many. A kerf holds with exp(-exp(a + b z)), so that links of one spread, which have
/// one b, are a single such kerf.
double breaks_by_least(const std::vector<Alike>& weak, double spot, double log_times) {
    static const Steps steps(Law::least);
    /// What is smaller adds nothing.
    constexpr double log_nothing = -46;
    struct Together {
        double at_zero;
        double by_z;
    };
    std::vector<Together> all;
    double from = steps.weakest();
    for (const Alike& some : weak) {
        const double least = some.links.front().margin;
        double sum = 0;
        for (const Link& link : some.links) sum += link.kerfs * std::exp((least - link.margin) / spot / scale);
        all.push_back(
            {std::log(sum) + ((log_times - least) / spot - mode_of_least) / scale, some.spread / spot / scale});
        from = std::min(from, (log_nothing - all.back().at_zero) / all.back().by_z);
    }
    return integral(steps, from, [&](double z) {
        double holds = 0;
        for (const Together& one : all) holds -= std::exp(one.at_zero + one.by_z * z);
        return holds;
    });
}

/// Half way between the two laws, by ratio: within a factor of two of either where they differ four times.
double breaks(const std::vector<Alike>& weak, double spot, double log_times) {
    return std::sqrt(breaks_by_normal(weak, spot, log_times) * breaks_by_least(weak, spot, log_times));
}

double mean_of_weakest(const Weakest& weakest) { return (weakest.mean - scale * std::log(weakest.count)) / 2; }

/// Looks for the factor at which chances are reached that rise, one after the other.
class Reaching {
public:
    Reaching(const std::vector<Link>& links, double spot) : weak_(weak_ones(links)), spot_(spot) {
        const double strong = strong_from(links);
        const auto near =
            std::find_if(links.begin(), links.end(), [&](const Link& link) { return link.margin < strong; });
        measure::require(near != links.end(), "a board has a kerf that can break");
        near_ = place_ = near->margin;
        off_ = std::log(breaks(weak_, spot_, place_));
    }

    double times(double chance) {
        measure::require(chance > 0 && chance < 1, "a chance between never and always");
        off_ += std::log(chance_ / chance);
        chance_ = chance;
        above_ = never;
        close_in();
        double low = near_ - 4;
        double high = near_ + 4;
        while (high - low > fine_enough) {
            const double middle = (low + high) / 2;
            (less(middle) ? low : high) = middle;
        }
        return std::exp(low);
    }

private:
    static constexpr double never = std::numeric_limits<double>::infinity();

    /// About where it passes, by secants, for its logarithm is all but straight; then so near to both sides that the
    /// halving, which tells it, has hardly anything left to ask.
    void close_in() {
        constexpr double narrow = fine_enough / 4;
        for (int step = 0; step < 8 && std::abs(off_ / slope_) > narrow; ++step) {
            const double next = place_ - off_ / slope_;
            const double there = ask(next);
            slope_ = (there - off_) / (next - place_);
            place_ = next;
            off_ = there;
        }
        less(place_ - off_ / slope_ - narrow);
        less(place_ - off_ / slope_ + narrow);
    }

    /// How far off the chance is there, as a logarithm.
    double ask(double at) {
        const double there = breaks(weak_, spot_, at);
        (there < chance_ ? below_ : above_) = at;
        return std::log(there / chance_);
    }

    /// The chance never falls: what is known of two places is known of all that lie beyond them.
    bool less(double at) {
        if (at > below_ && at < above_) ask(at);
        return at <= below_;
    }

    std::vector<Alike> weak_;
    double spot_;
    double near_ = 0;        ///< a margin of a link that can break
    double chance_ = 1;      ///< that is looked for
    double below_ = -never;  ///< the highest place known to have less
    double above_ = never;   ///< the lowest known to have as much
    double place_ = 0;       ///< last asked for, with how far it was off, and how fast that rises
    double off_ = 0;
    double slope_ = 5;
};

}  // namespace

Scatter scatter_of(double whole) {
    return {whole * shop_share, whole * std::sqrt(1 - shop_share * shop_share - spot_share * spot_share),
            whole * spot_share};
}

Weakest weakest_of(double count) {
    measure::require(count >= 1, "a board has a kerf");
    const double part = (1 - 0.375) / (count + 0.25);
    double low = -10;
    double high = 0;
    while (high - low > 1e-9) {
        const double middle = (low + high) / 2;
        (normal_below(middle) < part ? low : high) = middle;
    }
    constexpr double narrowing = 0.85;
    return {low, 1 / std::sqrt(1 + narrowing * std::log(count)), count};
}

Knowledge::Knowledge(double scatter) : scatter_(scatter_of(scatter)) {
    const double shop = scatter_.shop * scatter_.shop;
    const double board = scatter_.board * scatter_.board;
    for (std::size_t i = 0; i < mean_.size(); ++i)
        for (std::size_t j = 0; j < mean_.size(); ++j) {
            const double together = i % modes == j % modes ? 1 : alike;
            const bool this_board = i >= modes && j >= modes;
            covariance_.at(i).at(j) = together * (this_board ? shop + board : shop);
        }
}

/// One reading of a normal variable changes the others by their covariance with it.
void Knowledge::take(std::size_t place, double log_ratio, double variance) {
    const std::array<double, 4> with = covariance_.at(place);
    const double whole = with.at(place) + variance;
    const double off = log_ratio - mean_.at(place);
    for (std::size_t i = 0; i < mean_.size(); ++i) {
        mean_.at(i) += with.at(i) / whole * off;
        for (std::size_t j = 0; j < mean_.size(); ++j) covariance_.at(i).at(j) -= with.at(i) * with.at(j) / whole;
    }
    ++counted_;
}

// Both half way between the two laws: the least of many normal ones scatters less than one, that of the other as much.
double Knowledge::spot_variance(const Weakest& weakest) const { return scatter_.spot * scatter_.spot * weakest.spread; }

void Knowledge::take_coupon(Mode mode, double log_ratio, double reading, const Weakest& weakest) {
    const auto at = static_cast<std::size_t>(mode);
    read_.at(at) = true;
    take(modes + at, log_ratio - scatter_.spot * mean_of_weakest(weakest), spot_variance(weakest) + reading * reading);
}

void Knowledge::take_trial(Mode mode, double log_ratio, double reading, const Weakest& weakest) {
    const auto at = static_cast<std::size_t>(mode);
    read_.at(at) = true;
    take(at, log_ratio - scatter_.spot * mean_of_weakest(weakest),
         scatter_.board * scatter_.board + spot_variance(weakest) + reading * reading);
}

double Knowledge::mean(Mode mode) const {
    const auto at = static_cast<std::size_t>(mode);
    const double own = mean_.at(modes + at);
    return read_.at(at) ? own : std::min(own, mean_.at(modes + 1 - at));
}

double Knowledge::spread(Mode mode) const {
    const std::size_t at = modes + static_cast<std::size_t>(mode);
    return std::sqrt(std::max(0.0, covariance_.at(at).at(at)));
}

double chance_of_breaking(const std::vector<Link>& links, double spot) {
    measure::require(spot > 0, "a board's spots scatter");
    return breaks(weak_ones(links), spot, 0);
}

std::vector<double> times_for_chances(const std::vector<Link>& links, double spot, const std::vector<double>& chances) {
    Reaching reaching(links, spot);
    std::vector<double> all;
    for (const double chance : chances) all.push_back(reaching.times(chance));
    return all;
}

int one_in(double chance) {
    constexpr std::array<int, 6> words{100, 50, 20, 10, 4, 2};
    if (chance < ok_chance) return words.front();
    if (chance > 0.5) return 1;
    for (std::size_t i = 1; i + 1 < words.size(); ++i)
        if (chance < 1 / std::sqrt(static_cast<double>(words.at(i) * words.at(i + 1)))) return words.at(i);
    return words.back();
}

}  // namespace kerfpacket::bend
