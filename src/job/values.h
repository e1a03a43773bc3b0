#pragma once
// The values of a job one by one, as its canonical text gives them.

#include <optional>
#include <string>
#include <vector>

#include "measure/length.h"

namespace kerfpacket::job {

struct Value {
    std::string table;  ///< "job", "opening", "opening.casing", ...
    std::string piece;  ///< id of the opening or wall, or name of the material; empty for what is of the whole job
    std::string key;
    std::vector<std::string> parts;  ///< the value itself, or the elements of a list; a pair is "a / b"
    int row = 1;                     ///< of several coupons or trials, which

    /// Whether both are the same value of the same thing, whatever it comes to.
    bool same_place(const Value& other) const {
        return table == other.table && piece == other.piece && key == other.key && row == other.row;
    }
};

/// In the order of the text, which `normalised` made.
std::vector<Value> values_of(const std::string& normalised);

/// The length that canonical text writes as "19.050000 mm"; none of any other text.
std::optional<measure::Length> canonical_length(const std::string& text);

}  // namespace kerfpacket::job
