#pragma once
// What can be judged by arithmetic on the measurements alone. Values that could not be read are passed over.

#include "job/context.h"

namespace kerfpacket::job {

/// A segmental arch rises at most half its span, a semicircular one just that. What other shapes can be is for the
/// curve itself to say.
void check_head(Context& context, const Opening& opening);
/// The wall's curve, and that the board can lie inside it.
void check_wall(Context& context, const Wall& wall);
/// That the board fits inside the radius of a segmental or a semicircular head.
void check_liner(Context& context, const Opening& opening);
/// Enough points, stations that rise from one to the next, and a curve in them.
void check_ordinates(Context& context, const Ordinates& ordinates);
/// Stations that rise; false, and each that does not told, where they do not.
bool check_rising(Context& context, const std::vector<Sourced<Length>>& stations);
/// That segments can come out of the board given for them.
void check_casing(Context& context, const Casing& casing);
/// Stations that rise, and no more steps than a table holds in the width of the curve, where that is known.
void check_form(Context& context, const Form& form, std::optional<Length> width);
/// Width of a wall's curve: its chord or what its stations reach over; none where too little was read.
std::optional<Length> width_of(const Wall& wall);
/// That a trial groove can have been cut with the blade, and gets shallower toward the fence.
void check_saw(Context& context, const Saw& saw);
/// That the figures of a coupon can tell something.
void check_coupon(Context& context, const Coupon& coupon);
/// Depth against thickness and blade, spacing against kerf, kerfs one by one, those too deep, coupon, splices.
void check_board(Context& context, const Board& board, const Saw& saw);

}  // namespace kerfpacket::job
