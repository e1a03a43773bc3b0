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

/// The coupon's strain in place of the table's; with kerfs outside it stands for the peel as well.
void take_limit(bend::Material& material, bend::KerfsOn side, double strain) {
    limit_of(material, side) = strain;
    if (side == bend::KerfsOn::outside) material.peel.reset();
}

job::Diagnostics refused(job::Position at, std::string message, std::string hint) {
    return {{job::Severity::error, at, std::move(message), std::move(hint)}};
}

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
    if (coupon.counts) take_limit(material, side, coupon.strain);
    return found;
}

}  // namespace kerfpacket::plan
