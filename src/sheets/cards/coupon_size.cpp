#include "sheets/cards/coupon_size.h"

#include <algorithm>
#include <cmath>

#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// The tick stands on a coupon where it does on the board: at the blade's centre, or half a kerf beside it.
Length tick_beside_kerf(const plan::Piece& piece) {
    const plan::Kerf& governing = governing_kerf(piece);
    return (governing.mark - governing.at) * (piece.rake ? piece.rake->cosine() : 1);
}

Length first_kerf(const CouponSize& size) { return (size.length - size.spacing * (size.kerfs - 1)) / 2; }

}  // namespace

CouponSize coupon_size(const plan::Piece& piece, Unit unit) {
    const bool inch = unit == Unit::inch;
    const plan::Kerf& kerf = governing_kerf(piece);
    CouponSize size;
    size.rise = inch ? Length::inches(1) : Length::mm(25);
    size.spacing = kerf.spacing;
    size.side = piece.blank().bends_both_ways() ? kerf.on : piece.kerfs_on;
    const Length usual = inch ? Length::inches(12) : Length::mm(300);
    const Length step = inch ? Length::inches(1) : Length::mm(10);
    size.length = usual;
    // The arc whose middle stands a rise above its chord: half its angle is acos(1 - m/R).
    if (piece.radii.finish > size.rise) {
        const measure::Angle half = measure::Angle::radians(std::acos(1 - size.rise / piece.radii.finish));
        const Length arc = measure::arc_length(piece.radii.finish, half * 2);
        size.for_radius = arc > usual;
        if (size.for_radius) size.length = step * std::ceil(arc / step);
    }
    size.kerfs = static_cast<int>(std::floor(size.length / size.spacing + 1e-9));
    return size;
}

OneKerf one_kerf_test(const plan::Piece& piece, const CouponSize& size, Unit unit) {
    const bool inch = unit == Unit::inch;
    const Length clamped = inch ? Length::inches(3) : Length::mm(75);
    const Length read = inch ? Length::inches(0.01) : Length::mm(0.5);
    const int before = static_cast<int>(std::ceil((clamped - first_kerf(size)) / size.spacing - 1e-9));
    const int kerf = std::clamp(before + 1, 1, std::max(1, size.kerfs - 1));
    const Length wanted = inch ? Length::inches(12) : Length::mm(300);
    const int raised = std::min(size.kerfs, kerf + std::max(1, static_cast<int>(std::lround(wanted / size.spacing))));
    const Length away = size.spacing * (raised - kerf) + tick_beside_kerf(piece);
    return {kerf, raised, read * std::round(away / read)};
}

plan::Piece coupon_board(const plan::Piece& piece, const CouponSize& size, std::string name) {
    plan::Piece board = piece;
    board.id = std::move(name);
    board.kerfs_on = size.side;
    board.cut.spacing = board.cut.least_spacing = size.spacing;
    board.gaps = {size.spacing, size.spacing};
    board.joints.clear();
    board.rake.reset();  // its kerfs go square across it, and its edges are straight
    board.splay.reset();
    board.leg_boards.clear();
    plan::Blank blank;
    blank.zero = piece.blank().zero;
    blank.length = blank.bend_end = size.length;
    blank.runs = {{{}, size.length, size.side}};
    blank.ends[1].kerf_face = blank.ends[1].plain_face = size.length;
    const plan::Kerf& governing = governing_kerf(piece);
    const Length tick = tick_beside_kerf(piece);
    const Length first = first_kerf(size);
    for (int n = 1; n <= size.kerfs; ++n) {
        plan::Kerf kerf = governing;
        kerf.n = n;
        kerf.at = first + size.spacing * (n - 1);
        kerf.mark = kerf.at + tick;
        kerf.on = size.side;
        blank.kerfs.push_back(kerf);
    }
    board.whole = blank;
    board.blanks = {std::move(blank)};
    return board;
}

}  // namespace kerfpacket::sheets
