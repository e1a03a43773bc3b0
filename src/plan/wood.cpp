#include "plan/wood.h"

#include <algorithm>
#include <cmath>

#include "bend/cell.h"
#include "measure/require.h"
#include "plan/absurd_coupon.h"
#include "plan/cut.h"

namespace kerfpacket::plan {
namespace {

using job::say;

bend::Held held(job::Held held) {
    switch (held) {
        case job::Held::disc: return bend::Held::disc;
        case job::Held::ends: return bend::Held::ends;
        case job::Held::centre: return bend::Held::centre;
        case job::Held::one_kerf: return bend::Held::one_kerf;
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

job::Diagnostics refused(job::Position at, job::Told message, job::Told hint) {
    return {{job::Severity::error, at, std::move(message), std::move(hint)}};
}

/// Which way of breaking a piece cut like that comes to first.
bend::Mode mode_of(const bend::Cell& cell, const bend::Material& table, bend::KerfsOn side) {
    const bool peels =
        side == bend::KerfsOn::outside && table.peel && bend::peel_strain(cell, table) < table.break_strain_outside;
    return peels ? bend::Mode::peel : bend::Mode::strain;
}

/// Reads the pieces that were bent, one after the other.
class Tried {
public:
    Tried(const job::Board& board, bend::KerfsOn side, Angle across, const job::Job& job)
        : board_(board),
          side_(side),
          job_(job),
          found_{untried(bend::bent_across(*material_of(board, job), across)), std::nullopt, {}} {}

    tl::expected<CouponedWood, job::Diagnostics> run() {
        for (const job::Trial& trial : job_.trials)
            if (trial.material.value == board_.material.value && !take(trial)) return tl::unexpected(wrong_);
        found_.wood.by_trials = found_.wood.known;
        for (const job::Coupon& coupon : board_.coupons)
            if (!take(coupon)) return tl::unexpected(wrong_);
        if (found_.coupon && found_.coupon->counts)
            take_limit(found_.wood.material, side_, cell_of(*found_.coupon), found_.coupon->strain);
        return std::move(found_);
    }

private:
    const bend::Material& table() const { return found_.wood.table; }

    bend::Cell cell_of(const CouponResult& coupon) const {
        return {board_.thickness.value, coupon.depth,      job_.saw.kerf.value, coupon.spacing, 0.5,
                plies_of(board_),       profile_of(board_)};
    }

    /// What a bent piece tells; its strain is judged against the table's board cut like `cell`.
    CouponResult result(const job::Coupon& given, bend::KerfsOn side, const bend::Cell& cell) const {
        CouponResult coupon;
        coupon.by = given.by;
        coupon.coupon = {given.chord.value, given.rise.value, held(given.held.value), side};
        coupon.outcome = given.outcome.value;
        coupon.depth = cell.depth;
        coupon.spacing = cell.spacing;
        coupon.table_limit = bend::break_strain(cell, table(), side);
        if (coupon.coupon.held == bend::Held::one_kerf) return coupon;
        coupon.strain = bend::coupon_strain(coupon.coupon, cell, table().softness);
        coupon.times_table = coupon.strain / coupon.table_limit;
        coupon.error = bend::coupon_error(coupon.coupon, bend::coupon_reading, bend::coupon_reading);
        coupon.counts =
            coupon.strain > 0 && (coupon.outcome == job::Outcome::cracked || coupon.strain > coupon.table_limit);
        return coupon;
    }

    bool ask(const job::Coupon& given, const CouponResult& coupon, const bend::Cell& cell) {
        auto question = absurd_coupon(given, coupon, cell, table().softness, job_.header.units);
        if (question) wrong_ = *std::move(question);
        return wrong_.empty();
    }

    /// The tape's error within its bound, evenly.
    static double reading(const CouponResult& coupon) { return coupon.error / std::sqrt(3.0); }

    bool take(const job::Trial& trial) {
        const bend::KerfsOn side = trial.kerfs_outside ? bend::KerfsOn::outside : bend::KerfsOn::inside;
        const bend::Cell cell{trial.thickness.value, trial.tried.kerf_depth->value, trial.kerf.value,
                              trial.tried.spacing->value};
        CouponResult coupon = result(trial.tried, side, cell);
        coupon.trial = true;
        coupon.date = trial.date;
        if (!ask(trial.tried, coupon, cell)) return false;
        if (coupon.counts)
            found_.wood.known.take_trial(mode_of(cell, table(), side), std::log(coupon.times_table), reading(coupon),
                                         bend::weakest_of(bend::kerfs_at_most(coupon.coupon, coupon.spacing)));
        found_.tried.push_back(std::move(coupon));
        return true;
    }

    bool take(const job::Coupon& given) {
        bend::Cell cell{
            board_.thickness.value,
            given.kerf_depth ? given.kerf_depth->value : board_.kerf_depth.given.value_or(usual_depth(board_)),
            job_.saw.kerf.value,
            given.spacing ? given.spacing->value : board_.spacing.given.value_or(usual_spacing),
            0.5,
            plies_of(board_),
            profile_of(board_)};
        CouponResult coupon = result(given, side_, cell);
        if (coupon.outcome == job::Outcome::closed && !take_hinge(given, coupon, cell)) return false;
        if (coupon.coupon.held == bend::Held::one_kerf) {
            found_.tried.push_back(std::move(coupon));
            return true;
        }
        if (!ask(given, coupon, cell)) return false;
        if (coupon.counts)
            found_.wood.known.take_coupon(mode_of(cell, table(), side_), std::log(coupon.times_table), reading(coupon),
                                          bend::weakest_of(bend::kerfs_at_most(coupon.coupon, coupon.spacing)));
        const bool first = !found_.coupon;
        const bool weaker =
            coupon.counts && (first || !found_.coupon->counts || coupon.times_table < found_.coupon->times_table);
        if (first || weaker) found_.coupon = coupon;
        found_.tried.push_back(std::move(coupon));
        return true;
    }

    /// Where the kerfs of a coupon closed tells the hinge; of several that which closes soonest.
    bool take_hinge(const job::Coupon& given, CouponResult& coupon, const bend::Cell& cell) {
        if (side_ == bend::KerfsOn::outside) {
            wrong_ =
                refused(given.outcome.at, say("kerfs_open", "this board's kerfs are outside the bend: they open"),
                        say("kerfs_open_do", R"(kerfs that open do not close: expected result = "cracked" or "held")"));
            return false;
        }
        const auto shown = [&](Length length) { return job::shown(length, job_.header.units); };
        const bool alone = coupon.coupon.held == bend::Held::one_kerf;
        const auto part = alone ? bend::lone_hinge_part(coupon.coupon, cell, table().softness)
                                : bend::closed_hinge_part(coupon.coupon, cell, table().softness);
        if (!part && alone) {
            wrong_ =
                refused(given.rise.at,
                        say("lone_kerf_open",
                            "a kerf {kerf} wide and {depth} deep cannot have closed at a rise of {rise} in {chord}",
                            {{"kerf", shown(cell.kerf)},
                             {"depth", shown(cell.depth)},
                             {"rise", shown(given.rise.value)},
                             {"chord", shown(given.chord.value)}}),
                        say("lone_kerf_open_do",
                            "chord from the kerf's middle to where the rise is measured, the other side clamped flat "
                            "up to the kerf: measure both again"));
            return false;
        }
        if (!part) {
            wrong_ = refused(given.rise.at,
                             say("coupon_open", "a coupon bent to a radius of {radius} cannot have closed its kerfs",
                                 {{"radius", shown(bend::circle_radius(coupon.coupon))}}),
                             say("coupon_open_do",
                                 "by their width and depth they close at about {radius}: measure chord and rise again",
                                 {{"radius", shown(bend::close_radius(cell, table().softness))}}));
            return false;
        }
        bend::Cell with = cell;
        with.hinge_part = *part;
        coupon.hinge = bend::hinge_height(with);
        found_.wood.hinge_part = hinge_told_ ? std::max(found_.wood.hinge_part, *part) : *part;
        hinge_told_ = true;
        return true;
    }

    const job::Board& board_;
    bend::KerfsOn side_;
    const job::Job& job_;
    CouponedWood found_;
    job::Diagnostics wrong_;
    bool hinge_told_ = false;
};

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
        if (own->scatter) material.scatter = *own->scatter;
        return material;
    }
    const bend::Material* known = bend::find_material(board.material.value);
    return known == nullptr ? std::nullopt : std::optional(*known);
}

tl::expected<CouponedWood, job::Diagnostics> wood_of(const job::Board& board, bend::KerfsOn side, Angle across,
                                                     const job::Job& job) {
    return Tried(board, side, across, job).run();
}

}  // namespace kerfpacket::plan
