#pragma once
// What no sheet may promise: the work can hurt someone, and the calculation is no test of the board.

#include <regex>
#include <string>

namespace kerfpacket::tests {

/// The first promise in a text, or nothing.
inline std::string promise_in(const std::string& text) {
    // The Spanish ones end in letters that \w and \b do not know: nothing is asked of what follows.
    static const std::regex promise(
        R"(\b(safe(?!ty(\b|_))\w*|will\s+bend|compliant|compliance)\b)"
        R"(|\b(segur[oa]|garantiz|sin\s+(riesgo|peligro)|(se\s+)?doblar(\xC3\xA1|\xC3\xA1n)|cumple|conforme))",
        std::regex::icase | std::regex::ECMAScript);
    std::smatch match;
    return std::regex_search(text, match, promise) ? match.str() : "";
}

}  // namespace kerfpacket::tests
