#include "sheets/strips/strip_lanes.h"

#include <algorithm>

#include "plan/strip_room.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

/// The height for which the layout system gives its figures.
constexpr Length full_height = 72_pt;

}  // namespace

Lanes face_lanes(Length height) {
    // Between the lowest strip and the full one every lane moves evenly.
    const double part =
        std::clamp((height - plan::least_face_strip) / (full_height - plan::least_face_strip), 0.0, 1.0);
    const auto lane = [&](Length low, Length full) { return part == 1 ? full : low + (full - low) * part; };
    Lanes lanes;
    lanes.height = height;
    lanes.tick_top = 12_pt;
    lanes.numeral = lane(21.5_pt, 25_pt);
    lanes.odd = lane(15.8_pt, 19_pt);
    lanes.even = lane(27_pt, 32_pt);
    lanes.running = lane(37.2_pt, 43_pt);
    lanes.running_two_rows = lane(38.3_pt, 45.5_pt);
    lanes.words = lane(49.6_pt, 59_pt);
    lanes.pointer = 13_pt;
    lanes.ends = {lanes.words,          lane(20_pt, 25_pt),   lane(27_pt, 32_pt),
                  lane(16_pt, 21_pt),   lane(39.5_pt, 47_pt), lane(36_pt, 42_pt),
                  lane(24.5_pt, 28_pt), lane(14_pt, 16_pt),   lane(26_pt, 30_pt)};
    return lanes;
}

Lanes edge_lanes(const plan::Piece& piece) {
    const Length fold = piece.cut.thickness;
    const Length web = piece.cut.web();
    const Length numeral = web - 12.2_pt;  // 13 pt figures close under the depth line
    Lanes lanes;
    lanes.edge = true;
    lanes.height = fold + plan::edge_flap;
    lanes.mark = fold;
    lanes.cut = web;
    lanes.tick_top = 7_pt;
    lanes.two_rows = web >= 36_pt;
    lanes.numeral = numeral;
    lanes.odd = numeral;
    lanes.even = numeral - 12_pt;
    lanes.running = numeral - 8.3_pt;
    lanes.running_two_rows = lanes.even - 8.3_pt;
    lanes.words = fold + 9.5_pt;
    lanes.pointer = 11.5_pt;
    const Length middle = fold / 2;
    const Length tail = web / 2 - 3.3_pt;
    // A thick board has room for the trim beside its edge's other words, a thin one only on the flap.
    if (fold >= 46_pt) {
        const Length trim = fold - 13_pt;
        lanes.ends = {trim, 8_pt, 18_pt, 6_pt, {}, trim, 20_pt, 8_pt, tail};
    } else {
        lanes.ends = {lanes.words, middle - 8.8_pt, middle + 1.5_pt, middle - 9_pt, {},
                      lanes.words, middle + 1.5_pt, middle - 9_pt,   tail};
    }
    return lanes;
}

}  // namespace kerfpacket::sheets
