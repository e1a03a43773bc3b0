#pragma once
// What can be judged by arithmetic on the measurements alone. Values that could not be read are passed over.

#include "job/context.h"

namespace kerfpacket::job {

/// The head's own shape: a segmental arch rises at most half its span.
void check_head(Context& context, const Opening& opening);
/// The wall's curve, and that the board can lie inside it.
void check_wall(Context& context, const Wall& wall);
/// That the board fits inside the head's radius.
void check_liner(Context& context, const Opening& opening);
/// Depth against thickness and blade, spacing against kerf, splices.
void check_board(Context& context, const Board& board, const Saw& saw);

}  // namespace kerfpacket::job
