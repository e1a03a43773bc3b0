#pragma once
// How many boards of a hundred break: what is known of how strong this board is, and the weakest of its kerfs. Derived
// in src/bend/NOTES.md, "Chance".

#include <array>
#include <cstddef>
#include <vector>

#include "bend/verdict.h"

namespace kerfpacket::bend {

/// Scatter of break strain, as a part of the mean, where a material has no figure of its own: that of the peel energy
/// of MDF, halved, since strain goes with its root. Source: src/bend/NOTES.md.
inline constexpr double usual_scatter = 0.16;

/// The scatter of one spot of one board, taken apart. Standard deviations of logarithms; their squares add up to the
/// whole's. How it divides is judgement, no source found.
struct Scatter {
    double shop = 0;   ///< of what one shop buys, against the table
    double board = 0;  ///< between boards of that
    double spot = 0;   ///< within a board
};
Scatter scatter_of(double whole);

/// The weakest of so many that are normally distributed: mean and standard deviation, in units of theirs. Blom's
/// approximation of the mean; the deviation within 5 % from 1 to 100, fitted to tables of order statistics.
struct Weakest {
    double mean = 0;
    double spread = 1;
    double count = 1;  ///< of how many
};
Weakest weakest_of(double count);

/// The two ways a kerf breaks.
enum class Mode : std::size_t { strain, peel };

/// How strong this board is against the table: the logarithm of its limit over the table's, normally distributed, for
/// either mode. A coupon or a trial reads one of them; the other follows half way (judgement).
class Knowledge {
public:
    explicit Knowledge(double scatter = usual_scatter);

    /// A piece of this board, or of another that the shop bought, broke at exp(`log_ratio`) of the table's limit, at
    /// its weakest kerf; `reading` is the standard deviation of that, of the tape's errors.
    void take_coupon(Mode mode, double log_ratio, double reading, const Weakest& weakest);
    void take_trial(Mode mode, double log_ratio, double reading, const Weakest& weakest);

    /// Mean of the logarithm. Of a mode that was never read no more than that of the other: a weak board is weak in
    /// both until something else is seen.
    double mean(Mode mode) const;
    double spread(Mode mode) const;
    double spot() const { return scatter_.spot; }
    int counted() const { return counted_; }

private:
    void take(std::size_t place, double log_ratio, double variance);
    double spot_variance(const Weakest& weakest) const;

    Scatter scatter_;
    /// What is not known: limits of the shop's boards for both modes, then those of this board.
    std::array<double, 4> mean_{};
    std::array<std::array<double, 4>, 4> covariance_{};
    std::array<bool, 2> read_{};
    int counted_ = 0;
};

/// One or several kerfs that are bent alike, in one mode.
struct Link {
    double margin = 0;  ///< logarithm of mean limit over strain
    double spread = 0;  ///< of that margin, the same error for all kerfs of a board
    int kerfs = 1;
};

/// A link whose margin is this much more than the weakest one's does not matter beside it.
inline constexpr double far_stronger = 0.5;

/// Chance that any link breaks: over what is common to the board the kerfs fail apart from each other, each with `spot`
/// of its own. Between 0 and 1; never falls when a margin does.
double chance_of_breaking(const std::vector<Link>& links, double spot);

/// How many times the strain may be for chances that rise: the factors on all strains.
std::vector<double> times_for_chances(const std::vector<Link>& links, double spot, const std::vector<double>& chances);

/// Rounded to what is known: 100 for less than 1 in 100, then 50, 20, 10, 4, 2 for about 1 in so many; 1 for more
/// likely than not. The borders lie half way between, by ratio.
int one_in(double chance);

/// Chances up to which a bend is called ok, and caution, once a coupon or a trial counts. Judgement: src/bend/NOTES.md.
inline constexpr double ok_chance = 0.01;
inline constexpr double caution_chance = 0.1;

inline Verdict chance_verdict(double breaks) {
    if (breaks > caution_chance) return Verdict::break_likely;
    return breaks > ok_chance ? Verdict::caution : Verdict::ok;
}

}  // namespace kerfpacket::bend
