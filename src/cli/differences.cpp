#include "cli/differences.h"

#include <algorithm>
#include <sstream>
#include <utility>

#include <fmt/format.h>

namespace kerfpacket::cli {
namespace {

/// Where a value stands, "[opening A] span", and the value.
using Values = std::vector<std::pair<std::string, std::string>>;

/// The values of a normalised job in their order: a list that goes over lines is one value.
Values values_of(const std::string& job_text) {
    Values values;
    std::string table, piece;
    std::istringstream lines(job_text);
    for (std::string line; std::getline(lines, line);) {
        const std::size_t equals = line.find(" = ");
        if (line.starts_with("[")) {
            const std::size_t from = line.find_first_not_of('[');
            table = line.substr(from, line.find(']') - from);
            if (line.starts_with("[[")) piece.clear();
        } else if (equals != std::string::npos) {
            const std::string key = line.substr(0, equals), value = line.substr(equals + 3);
            if (key == "id" || key == "name") piece = " " + value.substr(1, value.size() - 2);
            values.emplace_back(fmt::format("[{}{}] {}", table, piece, key), value);
        } else if (!values.empty()) {
            values.back().second += line;
        }
    }
    return values;
}

const std::string* find(const Values& values, const std::string& where) {
    const auto found = std::find_if(values.begin(), values.end(), [&](const auto& one) { return one.first == where; });
    return found == values.end() ? nullptr : &found->second;
}

}  // namespace

std::vector<std::string> differences(const Planned& before, const Planned& now) {
    const Values old_values = values_of(before.job_text), new_values = values_of(now.job_text);
    std::vector<std::string> sentences;
    for (const auto& [where, value] : new_values) {
        const std::string* old = find(old_values, where);
        if (old == nullptr) sentences.push_back(fmt::format("{} is new: {}", where, value));
        else if (*old != value) sentences.push_back(fmt::format("{} was {}, now {}", where, *old, value));
    }
    for (const auto& [where, value] : old_values)
        if (find(new_values, where) == nullptr) sentences.push_back(fmt::format("{} was {}, now gone", where, value));
    return sentences;
}

}  // namespace kerfpacket::cli
