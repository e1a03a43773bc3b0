#pragma once
// The face that the numbers of kerfs are set in, wherever they stand.

#include "page/document.h"

namespace kerfpacket::sheets {

/// Narrow, for they stand a kerf's spacing apart; tens stand out.
inline constexpr page::Face numeral_face = page::Face::condensed;
inline constexpr page::Face numeral_face_of_tens = page::Face::condensed_bold;
inline constexpr page::Face numeral_face_of(int n) { return n % 10 == 0 ? numeral_face_of_tens : numeral_face; }

}  // namespace kerfpacket::sheets
