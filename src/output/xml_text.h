#pragma once
// Text that stands in an XML document.

#include <string>
#include <string_view>

namespace kerfpacket::output {

inline std::string xml_text(std::string_view text) {
    std::string escaped;
    for (const char c : text) {
        if (c == '&') escaped += "&amp;";
        else if (c == '<') escaped += "&lt;";
        else if (c == '>') escaped += "&gt;";
        else escaped += c;
    }
    return escaped;
}

}  // namespace kerfpacket::output
