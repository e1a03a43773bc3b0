#include "job/values.h"

#include <charconv>
#include <map>
#include <sstream>
#include <string_view>

namespace kerfpacket::job {
namespace {

/// The words or figures of a value from `at` on, without quotes; `at` is behind them afterwards.
std::string scalar(std::string_view text, std::size_t& at) {
    std::string out;
    if (text[at] != '"') {
        while (at < text.size() && text[at] != ',' && text[at] != ']') out += text[at++];
        return out;
    }
    for (++at; at < text.size() && text[at] != '"'; ++at) {
        if (text[at] == '\\' && at + 1 < text.size()) ++at;
        out += text[at];
    }
    ++at;
    return out;
}

std::vector<std::string> parts_of(std::string_view text) {
    std::vector<std::string> parts;
    int depth = 0;
    bool first_of_pair = true;
    for (std::size_t at = 0; at < text.size();) {
        const char c = text[at];
        if (c == '[' || c == ']') {
            depth += c == '[' ? 1 : -1;
            first_of_pair = true;
            ++at;
        } else if (c == ',' || c == ' ') {
            ++at;
        } else {
            std::string one = scalar(text, at);
            if (depth < 2 || first_of_pair) parts.push_back(std::move(one));
            else parts.back() += " / " + one;
            first_of_pair = false;
        }
    }
    return parts;
}

bool of_a_piece(std::string_view table) { return table.starts_with("opening.") || table.starts_with("wall."); }

bool of_many(std::string_view table) { return table == "trial" || table.ends_with(".coupon"); }

}  // namespace

std::vector<Value> values_of(const std::string& normalised) {
    std::vector<Value> values;
    std::string table, piece;
    std::map<std::string, int> rows;  // of tables that may stand several times within a piece or the job
    std::istringstream lines(normalised);
    for (std::string line; std::getline(lines, line);) {
        const std::size_t equals = line.find(" = ");
        if (line.starts_with("[")) {
            const std::size_t from = line.find_first_not_of('[');
            table = line.substr(from, line.find(']') - from);
            if (!of_a_piece(table)) piece.clear();
            ++rows[table + " " + piece];
        } else if (equals != std::string::npos) {
            const std::string key = line.substr(0, equals);
            std::string text = line.substr(equals + 3);
            // A long list stands one element on a line, up to its bracket.
            if (text == "[")
                for (std::string more; text.back() != ']' && std::getline(lines, more);) text += more;
            // A material or a piece is called what its first value says.
            std::vector<std::string> parts = parts_of(text);
            if ((key == "id" || key == "name") && !parts.empty()) piece = parts.front();
            values.push_back({table, piece, key, std::move(parts), of_many(table) ? rows[table + " " + piece] : 1});
        }
    }
    return values;
}

std::optional<measure::Length> canonical_length(const std::string& text) {
    if (!text.ends_with(" mm")) return {};
    const char* end = text.data() + text.size() - 3;
    double mm = 0;
    const auto read = std::from_chars(text.data(), end, mm);
    if (read.ec != std::errc() || read.ptr != end) return {};
    return measure::Length::mm(mm);
}

}  // namespace kerfpacket::job
