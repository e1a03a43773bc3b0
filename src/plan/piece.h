#pragma once
// One bent board: what the job asks for, in one form for liners and wall boards, and the piece computed from it.

#include "curve/curve.h"
#include "plan/plan.h"

namespace kerfpacket::plan {

/// A board and the curve it follows, wherever the job file gives them.
struct Request {
    std::string id;
    Kind kind = Kind::arch_liner;
    int quantity = 1;
    const job::Board* board = nullptr;
    curve::Curve measured;
    job::Surface measured_to = job::Surface::wall;
    job::Side side = job::Side::concave;
    std::array<Length, 2> tails;  ///< left, right, as seen from the room
};

Request request(const job::Opening& opening);
Request request(const job::Wall& wall);

/// Computes all of a piece but its lines and cautions, or says why it cannot be done.
tl::expected<Piece, job::Diagnostics> make_piece(const Request& wanted, const job::Job& job);

}  // namespace kerfpacket::plan
