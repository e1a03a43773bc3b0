#include "sheets/stock/offcut_coupons.h"

#include <algorithm>

#include "plan/stock_boards.h"
#include "sheets/cards/coupon_size.h"
#include "sheets/one_sheet.h"

namespace kerfpacket::sheets {
namespace {

/// The boards that coupons are made of: one for each record of the packet, but those that a coupon of theirs judges.
std::vector<const plan::Piece*> with_coupons(const plan::Plan& plan, const Kit& kit) {
    std::vector<const plan::Piece*> pieces;
    for (const std::size_t i : PieceSheets(plan, kit, {"coupon"}).firsts("coupon")) {
        const plan::Piece& piece = plan.pieces[i];
        if (!piece.blank().kerfs.empty() && !(piece.coupon && piece.coupon->counts)) pieces.push_back(&piece);
    }
    return pieces;
}

/// What the coupons of a section's boards take, the longest first.
std::vector<Coupons> wanted(const plan::Plan& plan, const plan::StockSection& section,
                            const std::vector<const plan::Piece*>& pieces) {
    std::vector<Coupons> all;
    for (const plan::Piece* piece : pieces)
        if (plan::section_of(*piece, plan.stock) == plan::key_of(section))
            all.push_back({piece->id, coupons_of_board, coupon_size(*piece, plan.header.units).length});
    std::stable_sort(all.begin(), all.end(), [](const Coupons& a, const Coupons& b) { return a.length > b.length; });
    return all;
}

void add_one(std::vector<Coupons>& to, const Coupons& coupons) {
    if (to.empty() || to.back().piece != coupons.piece) to.push_back({coupons.piece, 0, coupons.length});
    ++to.back().count;
}

OffcutCoupons of_section(const plan::Plan& plan, const plan::StockSection& section,
                         const std::vector<const plan::Piece*>& pieces) {
    OffcutCoupons result{std::vector<std::vector<Coupons>>(section.sticks.size()), {}, {}};
    std::vector<measure::Length>& left = result.rest;
    for (const plan::CutStick& stick : section.sticks) left.push_back(stick.offcut);
    for (const Coupons& coupons : wanted(plan, section, pieces)) {
        for (int i = 0; i < coupons.count; ++i) {
            auto best = left.end();
            for (auto at = left.begin(); at != left.end(); ++at)
                if (*at >= coupons.length && (best == left.end() || *at < *best)) best = at;
            if (best == left.end()) {
                add_one(result.no_offcut, coupons);
                continue;
            }
            // The kerf after the last one may run out of the wood.
            *best = std::max(measure::Length(), *best - coupons.length - plan.stock_plan->kerf);
            add_one(result.of_sticks[static_cast<std::size_t>(best - left.begin())], coupons);
        }
    }
    return result;
}

}  // namespace

std::vector<OffcutCoupons> offcut_coupons(const plan::Plan& plan, const Kit& kit) {
    // Which boards share a record is told by their sheets, which are drawn for it: once for all sections.
    const std::vector<const plan::Piece*> pieces = with_coupons(plan, kit);
    std::vector<OffcutCoupons> all;
    for (const plan::StockSection& section : plan.stock_plan->sections)
        all.push_back(of_section(plan, section, pieces));
    return all;
}

int coupons_asked(const plan::House& house, const Kit& kit) {
    int count = 0;
    for (const plan::Plan* job : house.jobs)
        count += coupons_of_board * static_cast<int>(with_coupons(*job, kit).size());
    return count;
}

}  // namespace kerfpacket::sheets
