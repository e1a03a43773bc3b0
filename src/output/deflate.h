#pragma once
// Bytes made small, as every stream of a PDF and every picture's are.

#include <string>
#include <string_view>

namespace kerfpacket::output {

/// Packed as zlib does (RFC 1950), which is what /FlateDecode unpacks. The same bytes each time.
std::string deflated(std::string_view bytes);

}  // namespace kerfpacket::output
