#include "sheets/cards/coupon_size.h"

#include <cmath>

#include "sheets/words/wording.h"

namespace kerfpacket::sheets {

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

}  // namespace kerfpacket::sheets
