#include "cli/start/wrapped.h"

#include <algorithm>

#include "job/text.h"

namespace kerfpacket::cli {

std::string wrapped(std::string_view text) {
    constexpr std::size_t most = 79;
    std::string out;
    std::size_t column = 0;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find_first_of(" \n", from + 1), text.size());
        const std::string_view word = text.substr(from, end - from);
        const std::size_t wide = job::characters(word);
        const bool breaks = word.front() == ' ' && column + wide > most;
        if (breaks) out += "\n ";
        if (breaks) column = 1;
        if (word.front() == '\n') column = wide - 1;
        else column += wide;
        out += word;
        from = end;
    }
    return out;
}

}  // namespace kerfpacket::cli
