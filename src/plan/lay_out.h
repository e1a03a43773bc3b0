#pragma once
// One way to cut a board, laid out on its curve and judged kerf by kerf.

#include <span>

#include <tl/expected.hpp>

#include "bend/assess.h"
#include "plan/judge.h"
#include "plan/request.h"
#include "plan/wood.h"

namespace kerfpacket::plan {

/// A board that is cut and judged; what the same members of Piece say.
struct Laid {
    Cut asked;  ///< as which it was laid out
    Cutting cut;
    Blank blank;
    std::optional<Rake> rake;
    std::optional<Blank> square;  ///< of a board that climbs: as it is laid out, square to its kerfs
    std::optional<Splay> splay;
    bool circular = true;
    bend::KerfsOn kerfs_on = bend::KerfsOn::outside;
    Angle turn;
    Radii radii;
    int governing = 1;
    bend::Assessment bend;

    const Kerf& governing_kerf() const { return blank.kerfs.at(static_cast<std::size_t>(governing - 1)); }
};

/// Lays out one way to cut the board and judges it, or says why that cannot be. The board must have passed its checks
/// and the faces must not fold.
tl::expected<Laid, job::Diagnostics> lay_out(const Request& wanted, const Cut& cut, const Wood& wood,
                                             const job::Job& job);
/// The same kerfs as in wood of which that was known then, judged by what is known of it now.
tl::expected<Laid, job::Diagnostics> lay_out_again(const Request& wanted, const Cut& cut, const Wood& then,
                                                   const Wood& now, const job::Job& job);
/// Where no cut has only concerns that may stand.
enum class OrElse { nothing, the_last };
/// The first of some cuts that has only concerns that may stand. They differ only in how much tighter a bend they allow
/// for.
tl::expected<std::optional<Laid>, job::Diagnostics> lay_out_first(const Request& wanted, std::span<const Cut> cuts,
                                                                  const Wood& wood, const job::Job& job,
                                                                  const MayStand& may_stand, OrElse otherwise);

/// How many boards like this would break, by what is known of its errors and of its wood; without the strains at which
/// more of them would.
Chance chance_of(const Laid& laid, const Request& wanted, const Wood& wood, const job::Job& job);
/// The same with them.
Chance chance_with_levels(const Laid& laid, const Request& wanted, const Wood& wood, const job::Job& job);

}  // namespace kerfpacket::plan
