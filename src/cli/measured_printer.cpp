#include "cli/measured_printer.h"

#include "measure/require.h"

namespace kerfpacket::cli {
namespace {

/// The page turned so that the edge which came out first is at the top.
job::Margins as_fed(Edge first, const std::array<Length, 4>& lost) {
    const auto& [top, bottom, left, right] = lost;
    switch (first) {
        case Edge::top: return {left, right, top, bottom};
        case Edge::bottom: return {right, left, bottom, top};
        case Edge::left: return {bottom, top, left, right};
        case Edge::right: return {top, bottom, right, left};
    }
    throw measure::Bug("an edge without a name");
}

}  // namespace

job::Profile profile_of(const Measured& measured, const std::string& name) {
    const bool upright_feed = measured.first == Edge::top || measured.first == Edge::bottom;
    const double level = measured.level / measured.true_level;
    const double upright = measured.upright / measured.true_upright;
    job::Profile profile;
    profile.name = name;
    profile.feed = upright_feed ? job::Feed::short_edge : job::Feed::long_edge;
    profile.across = upright_feed ? level : upright;
    profile.along = upright_feed ? upright : level;
    profile.margins = as_fed(measured.first, measured.lost);
    return profile;
}

Length out_of_square(const Measured& measured) {
    if (!measured.diagonals) return {};
    const auto& [ac, bd] = *measured.diagonals;
    return (ac - bd) * ((ac + bd) / (measured.level * 4));
}

}  // namespace kerfpacket::cli
