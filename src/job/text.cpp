#include "job/text.h"

namespace kerfpacket::job {

std::string listed(const std::vector<std::string_view>& words, std::string_view quote) {
    std::string row;
    for (const auto word : words) {
        if (!row.empty()) row += ", ";
        row.append(quote).append(word).append(quote);
    }
    return row;
}

}  // namespace kerfpacket::job
