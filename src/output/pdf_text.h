#pragma once
// Values as a PDF writes them (ISO 32000-1, 7.3).

#include <string>
#include <string_view>

#include "geom/path.h"

namespace kerfpacket::output {

using geom::Length;

/// A length in thousandths of a point (0.00035 mm), the unit of every place in a file: shorter numbers. A value that is
/// not finite, or more than readers take, is a Bug.
long long thousandths(Length value);
/// The same to the nearest ten: near enough for where words stand.
long long to_a_hundredth(Length value);

/// Appends a number of so many decimals, without the zeros at its end.
void add_number(std::string& to, double value, int decimals);
/// The same of a whole number of thousandths.
void add_thousandths(std::string& to, long long value);
inline void add_length(std::string& to, Length value) { add_thousandths(to, thousandths(value)); }

/// "[0 0 612 792]"
std::string corners(const geom::Rect& area);
/// Appends bytes between brackets, what would end them escaped.
void add_literal(std::string& to, std::string_view bytes);
/// UTF-8 as a text string: as it stands where it is ASCII, else as UTF-16BE (7.9.2.2).
std::string text_string(std::string_view text);

}  // namespace kerfpacket::output
