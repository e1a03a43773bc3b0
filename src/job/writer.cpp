#include "job/writer.h"

namespace kerfpacket::job {

void Writer::header(std::string_view line) { text_.append("\n").append(line).append("\n"); }

void Writer::bare(std::string_view key, std::string_view value) {
    text_.append(key).append(" = ").append(value).append("\n");
}

void Writer::words(std::string_view key, std::string_view value) { bare(key, quoted(value)); }

void Writer::rows(std::string_view key, const std::vector<std::string>& values) {
    std::string list = "[\n";
    for (const auto& value : values) list.append("    ").append(value).append(",\n");
    bare(key, list + "]");
}

std::string Writer::quoted(std::string_view words) {
    std::string out = "\"";
    for (const char c : words) {
        if (c == '"' || c == '\\') out += '\\';
        out += c;
    }
    return out + "\"";
}

std::string Writer::list(const std::vector<Length>& values) {
    std::string row = "[";
    for (const Length value : values) row += (row.size() > 1 ? ", " : "") + quoted(value);
    return row + "]";
}

}  // namespace kerfpacket::job
