#pragma once
// Ways to cut a board, and how the one that is taken came about.

#include <optional>
#include <utility>
#include <vector>

#include "bend/limit.h"

namespace kerfpacket::plan {

using measure::Length;

/// One way to cut the board, laid out and judged kerf by kerf.
struct Choice {
    Length depth;
    Length spacing;        ///< the largest
    Length least_spacing;  ///< the smallest
    int kerfs = 0;
    double utilisation = 0;
    bend::Verdict verdict = bend::Verdict::ok;
    bend::Limit limit = bend::Limit::strain;  ///< what governs it
};

/// How depth and spacing came about.
enum class Rule {
    given,            ///< both stand in the job file
    common_practice,  ///< half the thickness, one kerf every half inch (or what is given of them): it is ok
    thickest_web,     ///< the thickest web that is ok with kerfs at least 3/8 in apart
    closer,           ///< none was: the thickest web that is ok with kerfs down to 1/4 in apart
    least_strain,     ///< nothing is ok: the least strain there is
    kept,             ///< as before a coupon was bent, by which it is ok
};

struct Settings {
    Rule rule = Rule::given;
    bend::Limit limit = bend::Limit::strain;  ///< what stops a wider spacing or a thicker web
    std::optional<Length> ok_from{};  ///< where nothing is ok: the radius of the seen face from which something is
    bool ok_from_all = true;  ///< there nothing is said against it; else only what no setting changes, as of grain
    std::optional<Choice> common{};     ///< common practice, where it was not kept
    std::optional<Choice> solved{};     ///< what "solve" would take, where what is given is not ok
    std::optional<Choice> shallower{};  ///< the next depth less: a thicker web
    std::optional<Choice> deeper{};     ///< the next depth more
    std::optional<Choice> closer{};     ///< the same depth with kerfs 1/4 in apart, or the closest
    /// Where the depth that is given ends in a ply along the board: the nearest that ends in one across it.
    std::optional<Choice> cross_ply{};
};

/// Least radius of the seen face that is ok, against the spacing, for one depth.
struct LimitCurve {
    Length depth;
    std::vector<std::pair<Length, Length>> points;  ///< spacing, radius
};

}  // namespace kerfpacket::plan
