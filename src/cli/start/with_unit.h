#pragma once
// A figure without a unit gets that of the job.

#include <string>
#include <string_view>

namespace kerfpacket::cli {

/// The value with the unit of the job behind figures that have none, so that nothing hangs on `units`.
inline std::string with_unit(std::string_view value, std::string_view units) {
    const bool figures = !value.empty() && value.find_first_not_of("0123456789 .-/") == std::string_view::npos;
    return std::string(value) + (figures ? " " + std::string(units) : "");
}

}  // namespace kerfpacket::cli
