#pragma once
// Lengths of the command line, in the job file's notation.

#include <string>
#include <string_view>
#include <vector>

#include "measure/fraction.h"

namespace kerfpacket::cli {

/// Throws std::runtime_error, in words about the option, for what is no length or is negative.
measure::Length typed_length(const std::string& option, std::string_view text, measure::Unit unit);

/// So many of them with commas between, in the `order` that is told where they are not.
std::vector<measure::Length> typed_lengths(const std::string& option, const std::string& text, std::size_t count,
                                           measure::Unit unit, const char* order);

}  // namespace kerfpacket::cli
