#pragma once
// What no sheet may promise: the work can hurt someone, and the calculation is no test of the board.

#include <map>
#include <regex>
#include <string>

namespace kerfpacket::tests {

/// By language. The Spanish ones end in letters that \w and \b do not know: nothing is asked of what follows.
inline const std::map<std::string, std::string>& promises() {
    static const std::map<std::string, std::string> all{
        {"en", R"(\b(safe(?!ty(\b|_))\w*|will\s+bend|compliant|compliance)\b)"},
        {"es", R"(\b(segur[oa]|garantiz|sin\s+(riesgo|peligro)|(se\s+)?doblar(\xC3\xA1|\xC3\xA1n)|cumple|conforme))"}};
    return all;
}

/// The first promise of any language in a text, or nothing.
inline std::string promise_in(const std::string& text) {
    static const std::regex promise = [] {
        std::string any;
        for (const auto& [language, words] : promises()) any += (any.empty() ? "" : "|") + words;
        return std::regex(any, std::regex::icase | std::regex::ECMAScript);
    }();
    std::smatch match;
    return std::regex_search(text, match, promise) ? match.str() : "";
}

}  // namespace kerfpacket::tests
