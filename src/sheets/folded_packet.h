#pragma once
// A packet of many pages.

#include <cstddef>
#include <limits>

#include "disk/side_by_side.h"
#include "page/folded.h"
#include "sheets/packet.h"

namespace kerfpacket::sheets {

/// No page is folded.
inline constexpr std::size_t all_open = std::numeric_limits<std::size_t>::max();

/// As make_packet, with a change page where it takes the place of a revision `before`. Pages behind the first `open`
/// are folded from when they are drawn, so that memory hardly grows with them. The same on any number of threads.
page::FoldedDocument make_folded_packet(const Revision& now, const Revision* before, const Kit& kit, const Part& part,
                                        std::size_t open, unsigned threads = disk::cores());

}  // namespace kerfpacket::sheets
