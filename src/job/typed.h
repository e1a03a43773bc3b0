#pragma once
// A job file in the words of the person who gave its figures, with a comment beside every line.

#include <string>
#include <string_view>
#include <vector>

namespace kerfpacket::job {

/// One key of a job file as it was typed.
struct TypedLine {
    std::string header;  ///< "[saw]", "[[opening]]"; what follows under the same one stands in one table
    std::string key;
    std::string value;    ///< TOML: `toml_words`, a list of them, a date, a number
    std::string comment;  ///< one line, without its #; may be empty
    bool again = false;   ///< begins a further table of the same header
};

struct TypedJob {
    std::string text;
    std::vector<int> line_of;  ///< where each of the lines begins, counted from 1
};

/// Writes them in the order in which they are given, by the writer of the normalised job. `heading` is a comment above
/// all of them, a line each.
TypedJob typed_job(const std::vector<std::string>& heading, const std::vector<TypedLine>& lines);

/// Words as a job file holds them, within quotes.
std::string toml_words(std::string_view words);

}  // namespace kerfpacket::job
