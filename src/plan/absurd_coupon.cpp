#include "plan/absurd_coupon.h"

namespace kerfpacket::plan {
namespace {

using job::say;
using job::Told;

/// A coupon this much stronger or weaker than the table's board is more likely a slip than a board. Judgement:
/// two boards of a kind differ by about a third at most (src/bend/NOTES.md).
constexpr double strongest_coupon = 1.5;
constexpr double weakest_coupon = 0.5;
/// No word makes a coupon count that is stronger still: what bends so far is another material. Judgement: twice that
/// third, on either board, and as much again.
constexpr double strongest_believed = 3;

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
        if ((given_.believed && !beyond_belief()) || (!strong && !weak)) return std::nullopt;
        return job::Diagnostics{{job::Severity::error, strong ? given_.chord.at : given_.rise.at,
                                 say(strong ? "coupon_strong" : "coupon_weak",
                                     strong ? "{name} is {times} times as strong as the table's board: {read}"
                                            : "{name} is {times} times as weak as the table's board: {read}",
                                     {{"name", name()}, {"times", times(strong)}, {"read", read()}}),
                                 strong ? strong_hint() : weak_hint()}};
    }

private:
    Told read() const {
        return say(
            "coupon_read",
            "chord {chord}, rise {rise} is a radius of {radius}, a strain of {strain} %; the table has {table} %",
            {{"chord", shown(given_.chord.value)},
             {"rise", shown(given_.rise.value)},
             {"radius", shown(bend::circle_radius(coupon_.coupon))},
             {"strain", percent(coupon_.strain)},
             {"table", percent(coupon_.table_limit)}});
    }
    /// A trial of the shop file has no place in the job file: its day tells it.
    Told name() const {
        return coupon_.trial ? say("the_trial", "the trial of {date}", {{"date", coupon_.date}})
                             : say("this_coupon", "this coupon");
    }
    Told shown(Length length) const { return job::shown(length, unit_); }
    static Told percent(double strain) { return job::figure(measure::fixed(strain * 100, 2)); }
    Told times(bool strong) const {
        return job::figure(measure::fixed(strong ? coupon_.times_table : 1 / coupon_.times_table, 1));
    }
    /// What a chord that was mistaken would tell; nothing where that much of a chord cannot be, which is no likely
    /// slip.
    Told with_chord(Length chord) const {
        bend::Coupon other = coupon_.coupon;
        other.chord = chord;
        if (other.rise > other.chord * bend::most_rise_ratio) return {};
        return say("with_chord", " ({chord} would be a strain of {strain} %)",
                   {{"chord", shown(chord)}, {"strain", percent(bend::coupon_strain(other, cell_, softness_))}});
    }
    static Told again() {
        return say("coupon_again",
                   "measure on the plain face, the chord from end to end, the rise at its middle; what is so stands "
                   "with believed = true");
    }
    static Told of_its_own() {
        return say("coupon_of_its_own",
                   "no two boards of a kind differ so much: measure again, or name this one as a [[material]] of its "
                   "own, with its break_strain");
    }
    bool beyond_belief() const { return coupon_.times_table > strongest_believed; }
    Told strong_hint() const {
        return say("coupon_strong_do",
                   "is the chord half of what it was{with}, or the rise read to the kerf face? {again}",
                   {{"with", with_chord(given_.chord.value * 2)}, {"again", beyond_belief() ? of_its_own() : again()}});
    }
    Told weak_hint() const {
        return say("coupon_weak_do",
                   "is the chord the disc's diameter or the coupon's length{with}, or the rise read before it cracked? "
                   "{again}",
                   {{"with", with_chord(given_.chord.value / 2)}, {"again", again()}});
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
