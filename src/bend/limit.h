#pragma once
// How tight a board may be bent and still be called ok, and what stops it.

#include "bend/cell.h"
#include "bend/verdict.h"

namespace kerfpacket::bend {

class Yield;

/// What keeps a bend from being tighter, or a setting from being taken.
enum class Limit { strain, peel, closing, facet, web };

/// Kerfs inside should still be this far from closing: `close_radius` at most this part of the bend's radius. 0.85, and
/// less where that radius is known less well: in shallow kerfs it comes out too small. Source: src/bend/NOTES.md.
double closing_margin(const Cell& cell);
/// A deeper facet is seen through paint. Judgement: src/bend/NOTES.md.
inline constexpr Length facet_limit = Length::mm(0.10);
/// Under this web a board is refused, under the other it is a caution. Judgement: src/bend/NOTES.md.
inline constexpr Length least_web = Length::inches(1.0 / 16);
inline constexpr Length thin_web = Length::inches(3.0 / 32);

/// The least radius of the length-keeping line at which the verdict on the bend is no worse than ok or caution, and
/// what sets it. The web and the range of the formulas are not looked at.
struct Tightest {
    Length radius;
    Limit limit = Limit::strain;
};
Tightest tightest(const Cell& cell, const Material& material, KerfsOn side, Verdict no_worse = Verdict::ok);
Tightest tightest(const Yield& yield, const Material& material, KerfsOn side, Verdict no_worse = Verdict::ok);

/// The same as a radius of the plain (seen) face.
Length plain_radius(const Cell& cell, const Material& material, KerfsOn side, Length line_radius);

}  // namespace kerfpacket::bend
