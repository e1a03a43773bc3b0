#pragma once
// What a job says, value by value, in the order of its canonical text.

#include <string>
#include <variant>
#include <vector>

#include "measure/length.h"

namespace kerfpacket::job {

using measure::Angle;
using measure::Length;

/// A number that is no length: of pieces, of a kerf, of a softness.
struct Figure {
    double value = 0;
    bool whole = false;
};
/// 0.01 is 1 %.
struct Percent {
    double fraction = 0;
};
/// Words of the user, or of the file's own.
struct Words {
    std::string text;
};
/// A board by its name in the file.
struct MaterialName {
    std::string name;
};
/// YYYY-MM-DD.
struct Day {
    std::string text;
};
/// True: what is not so is not written.
struct Flag {};
using Scalar = std::variant<Length, Angle, Figure, Percent, Words, MaterialName, Day, Flag>;
/// One, or the two of a pair: a station and its height, a kerf and its depth.
using Element = std::vector<Scalar>;

/// As a job file writes it: lengths to a millionth of a millimetre, other figures to nine places.
std::string canonical(const Scalar& scalar);
std::string canonical(const Element& element);

struct Value {
    std::string table;  ///< "job", "opening", "opening.casing", ...
    std::string piece;  ///< id of the opening or wall, or name of the material; empty for what is of the whole job
    std::string key;
    std::vector<Element> elements;  ///< the value itself, or the elements of a list
    int row = 1;                    ///< of several coupons or trials, which

    /// Whether both are the same value of the same thing, whatever it comes to.
    bool same_place(const Value& other) const {
        return table == other.table && piece == other.piece && key == other.key && row == other.row;
    }
    /// Whether both come to the same, as canonical text tells it.
    bool same_value(const Value& other) const;
};

/// A job as text and as the values that the text is written from.
struct Canonical {
    std::string text;
    std::vector<Value> values;
};

}  // namespace kerfpacket::job
