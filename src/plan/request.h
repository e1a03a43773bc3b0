#pragma once
// One bent board: what the job asks for, in one form for liners and wall boards, and the piece computed from it.

#include "curve/outline.h"
#include "plan/kerfs.h"
#include "plan/plan.h"

namespace kerfpacket::plan {

/// Distances of the two faces of the board to the left of the measured curve.
struct Faces {
    Length wall;    ///< the kerf face: back of a liner, back of a wall board
    Length finish;  ///< the plain face, which is seen
};
/// The seen face stands a thickness nearer the room, which is on the right of travel.
Faces faces(job::Surface measured_to, Length thickness);

/// The runs of a curve, left to right, with kerfs on its left. What bends nothing to speak of is no run of its own.
/// This alone says on which side the kerfs are; strips, cards, sheets and forms ask what it told.
std::vector<BendRun> bend_runs(const curve::Curve& curve);

/// Common practice, no source: half the thickness deep.
Length usual_depth(const job::Board& board);

/// How a board ends at one end of its curve, in distances along the measured curve.
struct CurveEnd {
    BoardEnd::Meets meets = BoardEnd::Meets::nothing;
    Angle mitre;
    Length wall;    ///< where the kerf face ends
    Length finish;  ///< where the plain face ends
};

/// A board and the curve it follows, wherever the job file gives them.
struct Request {
    std::string id;
    Kind kind = Kind::arch_liner;
    int board = 1;
    int boards = 1;
    int quantity = 1;
    const job::Board* wanted = nullptr;
    curve::Curve curve;              ///< of the measured surface, left to right
    std::array<CurveEnd, 2> ends{};  ///< left, right
    std::array<Length, 2> tails{};   ///< left, right, as seen from the room
    job::Surface measured_to = job::Surface::wall;
    job::Side side = job::Side::concave;
    job::Shape shape = job::Shape::segmental;
    Length span;  ///< or the chord
    Length rise;

    /// The curve where there is wood of the board's bend, on either face.
    curve::Curve bent() const;
};

/// Where a board bends most to one side, as a radius of the measured curve.
struct TightSpot {
    bend::KerfsOn on = bend::KerfsOn::outside;
    Length measured_radius;

    /// Of the plain face of a board of that thickness.
    Length plain_radius(job::Surface measured_to, Length thickness) const;
};
/// One for each way the board bends, the tightest first.
std::vector<TightSpot> tight_spots(const Request& wanted);

/// Figures of the wood: of the table, the user's, or with what a coupon told.
struct Wood {
    bend::Material material;  ///< with the weakest coupon's limits
    double hinge_part = 0.5;  ///< as in bend::Cell
    bend::Material table;     ///< without any coupon
    bend::Knowledge known;    ///< of all coupons and trials, against the table
};
/// Wood of which no coupon was bent.
inline Wood untried(const bend::Material& material) {
    return {material, 0.5, material, bend::Knowledge(material.scatter)};
}

/// Common practice, no source: of plywood that ply across the board whose middle is nearest to half the thickness.
Length first_depth(const job::Board& board, measure::Unit unit);

/// The plies of the board, made to add up to its thickness.
std::vector<Length> plies_of(const job::Board& board);

/// What is known of the errors and of the wood as a chance; the rest of `Chance` is filled in with the cards.
Chance chance_of(const Piece& piece, const Wood& wood, const job::Job& job);
/// The same with the strains at which more of them would break.
void add_levels(Piece& piece, const Wood& wood, const job::Job& job);

/// Lays out one way to cut the board and judges it kerf by kerf, or says why that cannot be. Lines, cautions and what
/// the cards say besides are not filled in. The board must have passed its checks and the faces must not fold.
tl::expected<Piece, job::Diagnostics> lay_out(const Request& wanted, const Cut& cut, const Wood& wood,
                                              const job::Job& job);

}  // namespace kerfpacket::plan
