#include "plan/wood.h"

#include <algorithm>

#include <fmt/format.h>

#include "measure/require.h"

namespace kerfpacket::plan {
namespace {

bend::Held held(job::Held held) {
    switch (held) {
        case job::Held::disc: return bend::Held::disc;
        case job::Held::ends: return bend::Held::ends;
        case job::Held::centre: return bend::Held::centre;
    }
    throw measure::Bug("a coupon held in no way");
}

double& limit_of(bend::Material& material, bend::KerfsOn side) {
    return side == bend::KerfsOn::inside ? material.break_strain_inside : material.break_strain_outside;
}

/// Makes the board's limits agree with a coupon that was cut like `cell`: the least of them, there, is the coupon's
/// strain. Which of them stopped it is not seen in a broken piece, only what the other must have stood: where the
/// coupon is weaker than the table both are taken down alike, where it is stronger each is raised to what the coupon
/// reached. So neither is ever left out: a coupon with kerfs close together says little of a board that peels between
/// kerfs far apart. Derived in src/bend/NOTES.md.
void take_limit(bend::Material& material, bend::KerfsOn side, const bend::Cell& cell, double strain) {
    const double weaker = std::min(1.0, strain / bend::break_strain(cell, material, side));
    if (side == bend::KerfsOn::outside && material.peel) {
        const double peel = bend::peel_strain(cell, material);
        // The strain rises with the root of the energy.
        const double times = std::max(peel * weaker, strain) / peel;
        material.peel->fracture_energy_j_m2 *= times * times;
    }
    double& limit = limit_of(material, side);
    limit = std::max(limit * weaker, strain);
}

job::Diagnostics refused(job::Position at, std::string message, std::string hint) {
    return {{job::Severity::error, at, std::move(message), std::move(hint)}};
}

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
        return refused(strong ? given_.chord.at : given_.rise.at,
                       fmt::format("this coupon is {} times as {} as the table's board: chord {}, rise {} is a radius "
                                   "of {}, a strain of {} %; the table has {} %",
                                   times(strong), strong ? "strong" : "weak", text(given_.chord.value),
                                   text(given_.rise.value), text(bend::circle_radius(coupon_.coupon)),
                                   percent(coupon_.strain), percent(coupon_.table_limit)),
                       strong ? strong_hint() : weak_hint());
    }

private:
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

/// Where the kerfs of a coupon closed tells the hinge; false where the figures cannot be.
bool take_hinge(CouponedWood& found, const bend::Cell& cell) {
    const auto part = bend::closed_hinge_part(found.coupon->coupon, cell, found.wood.material.softness);
    if (!part) return false;
    found.wood.hinge_part = *part;
    found.coupon->hinge = cell.web() * *part;
    return true;
}

}  // namespace

std::optional<bend::Material> material_of(const job::Board& board, const job::Job& job) {
    const auto own = std::find_if(job.materials.begin(), job.materials.end(), [&](const job::Material& material) {
        return material.name.value == board.material.value;
    });
    if (own != job.materials.end()) {
        bend::Material material{
            own->name.value, own->break_strain_inside, own->break_strain_outside, own->softness, std::nullopt,
            own->grain};
        if (own->peel) material.peel = bend::Peel{own->peel->front(), own->peel->back()};
        return material;
    }
    const bend::Material* known = bend::find_material(board.material.value);
    return known == nullptr ? std::nullopt : std::optional(*known);
}

tl::expected<CouponedWood, job::Diagnostics> wood_of(const job::Board& board, bend::KerfsOn side, const job::Job& job) {
    CouponedWood found{{*material_of(board, job)}, std::nullopt};
    if (!board.coupon) return found;
    const job::Coupon& given = *board.coupon;
    bend::Material& material = found.wood.material;
    CouponResult coupon;
    coupon.by = given.by;
    coupon.coupon = {given.chord.value, given.rise.value, held(given.held.value), side};
    coupon.outcome = given.outcome.value;
    coupon.depth = given.kerf_depth ? given.kerf_depth->value : board.kerf_depth.given.value_or(usual_depth(board));
    coupon.spacing = given.spacing ? given.spacing->value : board.spacing.given.value_or(usual_spacing);
    const bend::Cell cell{board.thickness.value, coupon.depth, job.saw.kerf.value, coupon.spacing};
    coupon.table_limit = bend::break_strain(cell, material, side);
    coupon.strain = bend::coupon_strain(coupon.coupon, cell, material.softness);
    coupon.times_table = coupon.strain / coupon.table_limit;
    coupon.error = bend::coupon_error(coupon.coupon, bend::coupon_reading, bend::coupon_reading);
    coupon.counts = coupon.outcome == job::Outcome::cracked || coupon.strain > coupon.table_limit;
    if (coupon.outcome == job::Outcome::closed && side == bend::KerfsOn::outside)
        return tl::unexpected(refused(given.outcome.at, "this board's kerfs are outside the bend: they open",
                                      R"(kerfs that open do not close: expected result = "cracked" or "held")"));
    found.coupon = coupon;
    if (coupon.outcome == job::Outcome::closed && !take_hinge(found, cell))
        return tl::unexpected(
            refused(given.rise.at,
                    fmt::format("a coupon bent to a radius of {} cannot have closed its kerfs",
                                measure::length_text(bend::circle_radius(coupon.coupon), job.header.units)),
                    fmt::format("by their width and depth they close at about {}: measure chord and rise again",
                                measure::length_text(bend::close_radius(cell, material.softness), job.header.units))));
    const AbsurdCoupon absurd(given, coupon, cell, material.softness, job.header.units);
    if (auto question = absurd.question()) return tl::unexpected(*question);
    if (coupon.counts) take_limit(material, side, cell, coupon.strain);
    return found;
}

}  // namespace kerfpacket::plan
