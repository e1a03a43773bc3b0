#pragma once
// How the program writes JSON for scripts.

#include <cmath>
#include <nlohmann/json.hpp>

#include "measure/length.h"

namespace kerfpacket::cli {

using Json = nlohmann::ordered_json;

/// To six decimals: a millionth of a millimetre or degree is noise of the arithmetic.
inline double six_decimals(double value) { return std::round(value * 1e6) / 1e6; }
inline double mm(measure::Length length) { return six_decimals(length.mm()); }

}  // namespace kerfpacket::cli
