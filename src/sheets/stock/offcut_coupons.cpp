#include "sheets/stock/offcut_coupons.h"

#include <algorithm>

#include "plan/stock_boards.h"
#include "sheets/cards/coupon_size.h"

namespace kerfpacket::sheets {
namespace {

/// Boards that are alike share one record of coupons.
bool same_coupon(const plan::Piece& a, const plan::Piece& b, Unit unit) {
    const CouponSize one = coupon_size(a, unit);
    const CouponSize other = coupon_size(b, unit);
    return one.length == other.length && one.spacing == other.spacing && one.side == other.side &&
           a.cut.depth == b.cut.depth;
}

/// What the coupons of a section's boards take, the longest first.
std::vector<Coupons> wanted(const plan::Plan& plan, const plan::StockSection& section) {
    const plan::SectionKey key = plan::section_of(section.material, section.thickness, section.width, plan.stock);
    std::vector<Coupons> all;
    std::vector<const plan::Piece*> seen;
    for (const plan::Piece& piece : plan.pieces) {
        if (plan::section_of(piece.material, piece.cut.thickness, piece.width, plan.stock) != key) continue;
        if (piece.coupon && piece.coupon->counts) continue;
        const Unit unit = plan.header.units;
        const auto alike = [&](const plan::Piece* other) { return same_coupon(*other, piece, unit); };
        if (std::any_of(seen.begin(), seen.end(), alike)) continue;
        seen.push_back(&piece);
        all.push_back({piece.id, coupons_of_board, coupon_size(piece, unit).length});
    }
    std::stable_sort(all.begin(), all.end(), [](const Coupons& a, const Coupons& b) { return a.length > b.length; });
    return all;
}

void add_one(std::vector<Coupons>& to, const Coupons& coupons) {
    if (to.empty() || to.back().piece != coupons.piece) to.push_back({coupons.piece, 0, coupons.length});
    ++to.back().count;
}

}  // namespace

OffcutCoupons offcut_coupons(const plan::Plan& plan, const plan::StockSection& section) {
    OffcutCoupons result{std::vector<std::vector<Coupons>>(section.sticks.size()), {}};
    std::vector<measure::Length> left;
    for (const plan::CutStick& stick : section.sticks) left.push_back(stick.offcut);
    for (const Coupons& coupons : wanted(plan, section)) {
        for (int i = 0; i < coupons.count; ++i) {
            auto best = left.end();
            for (auto at = left.begin(); at != left.end(); ++at)
                if (*at >= coupons.length && (best == left.end() || *at < *best)) best = at;
            if (best == left.end()) {
                add_one(result.no_offcut, coupons);
                continue;
            }
            *best = *best - coupons.length - plan.stock_plan->kerf;
            add_one(result.of_sticks[static_cast<std::size_t>(best - left.begin())], coupons);
        }
    }
    return result;
}

}  // namespace kerfpacket::sheets
