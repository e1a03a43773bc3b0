#include "plan/absurd_coupon.h"

#include <fmt/format.h>

namespace kerfpacket::plan {
namespace {

/// A coupon this much stronger or weaker than the table's board is more likely a slip than a board. Judgement:
/// two boards of a kind differ by about a third at most (src/bend/NOTES.md).
constexpr double strongest_coupon = 1.5;
constexpr double weakest_coupon = 0.5;

/// What was read, what it would mean, and the slips that give such figures.
class AbsurdCoupon {
public:
    AbsurdCoupon(const job::Coupon& given, const CouponResult& coupon, const bend::Cell& cell, double softness,
                 measure::Unit unit)
        : given_(given), coupon_(coupon), cell_(cell), softness_(softness), unit_(unit) {}

    /// Or none, where it is no question. One that only held or closed may be as weak as it likes.
    std::optional<job::Diagnostics> question() const {
        const bool strong = coupon_.times_table > strongest_coupon;
        const bool weak = coupon_.outcome == job::Outcome::cracked && coupon_.times_table < weakest_coupon;
        if (given_.believed || (!strong && !weak)) return std::nullopt;
        return job::Diagnostics{
            {job::Severity::error, strong ? given_.chord.at : given_.rise.at,
             fmt::format("{} is {} times as {} as the table's board: chord {}, rise {} is a radius "
                         "of {}, a strain of {} %; the table has {} %",
                         name(), times(strong), strong ? "strong" : "weak", text(given_.chord.value),
                         text(given_.rise.value), text(bend::circle_radius(coupon_.coupon)), percent(coupon_.strain),
                         percent(coupon_.table_limit)),
             strong ? strong_hint() : weak_hint()}};
    }

private:
    /// A trial of the shop file has no place in the job file: its day tells it.
    std::string name() const { return coupon_.trial ? "the trial of " + coupon_.date : "this coupon"; }
    std::string text(Length length) const { return measure::length_text(length, unit_); }
    static std::string percent(double strain) { return measure::fixed(strain * 100, 2); }
    std::string times(bool strong) const {
        return measure::fixed(strong ? coupon_.times_table : 1 / coupon_.times_table, 1);
    }
    std::string with_chord(Length chord) const {
        bend::Coupon other = coupon_.coupon;
        other.chord = chord;
        // Where that many times the chord cannot be, it is no likely slip.
        if (other.rise > other.chord * bend::most_rise_ratio) return "";
        return fmt::format(" ({} would be a strain of {} %)", text(chord),
                           percent(bend::coupon_strain(other, cell_, softness_)));
    }
    static constexpr const char* again =
        "measure on the plain face, the chord from end to end, the rise at its middle; what is so stands with "
        "believed = true";
    std::string strong_hint() const {
        return fmt::format("is the chord half of what it was{}, or the rise read to the kerf face? {}",
                           with_chord(given_.chord.value * 2), again);
    }
    std::string weak_hint() const {
        return fmt::format(
            "is the chord the disc's diameter or the coupon's length{}, or the rise read before it "
            "cracked? {}",
            with_chord(given_.chord.value / 2), again);
    }

    const job::Coupon& given_;
    const CouponResult& coupon_;
    const bend::Cell& cell_;
    double softness_;
    measure::Unit unit_;
};

}  // namespace

std::optional<job::Diagnostics> absurd_coupon(const job::Coupon& given, const CouponResult& coupon,
                                              const bend::Cell& cell, double softness, measure::Unit unit) {
    return AbsurdCoupon(given, coupon, cell, softness, unit).question();
}

}  // namespace kerfpacket::plan
