#include "cli/typed_length.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

namespace kerfpacket::cli {

using measure::Length;
using measure::Unit;

Length typed_length(const std::string& option, std::string_view text, Unit unit) {
    const auto length = measure::parse_length(text, unit);
    if (!length)
        throw std::runtime_error(fmt::format("{} \"{}\": {}{}{}", option, text, length.error().message,
                                             length.error().hint.empty() ? "" : "; ", length.error().hint));
    if (*length < Length()) throw std::runtime_error(fmt::format("{} \"{}\" is negative", option, text));
    return *length;
}

std::vector<Length> typed_lengths(const std::string& option, const std::string& text, std::size_t count, Unit unit,
                                  const char* order) {
    std::vector<Length> lengths;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t comma = std::min(text.find(',', from), text.size());
        lengths.push_back(typed_length(option, std::string_view(text).substr(from, comma - from), unit));
        from = comma + 1;
    }
    if (lengths.size() != count)
        throw std::runtime_error(fmt::format("{} \"{}\": expected {}, with commas between them", option, text, order));
    return lengths;
}

}  // namespace kerfpacket::cli
