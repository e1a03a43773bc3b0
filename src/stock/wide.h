#pragma once
// Whole numbers that hold a price times a length times a count.

namespace kerfpacket::stock {

__extension__ typedef __int128 Wide;  // NOLINT(modernize-use-using): the other form takes no __extension__

}  // namespace kerfpacket::stock
