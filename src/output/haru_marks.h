#pragma once
// Marked content (ISO 32000-1, 14.6), for which libharu has no call.

#include <string>

namespace kerfpacket::output {

/// Writes operators into the content of a page (an HPDF_Page) as they stand.
void write_operators(void* page, const std::string& operators);

}  // namespace kerfpacket::output
