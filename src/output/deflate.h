#pragma once
// Bytes made small, as every stream of a PDF and every picture's are.

#include <string>
#include <string_view>

namespace kerfpacket::output {

enum class Packing {
    small,  ///< for what is kept and sent
    quick,  ///< for what is looked at: two thirds of the time, for 5 % more
};

/// Packed as zlib does (RFC 1950), which is what /FlateDecode unpacks. The same bytes each time.
std::string deflated(std::string_view bytes, Packing packing = Packing::small);

}  // namespace kerfpacket::output
