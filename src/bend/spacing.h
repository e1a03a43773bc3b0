#pragma once
// How far apart kerfs may stand where the board follows a given radius.

#include <array>
#include <optional>
#include <vector>

#include "bend/yield.h"

namespace kerfpacket::bend {

/// The largest spacing between `least` and `most` at which strain, closing and facet are all ok, radius after radius:
/// what is found out of a spacing is kept. Strain, closing radius and facet rise with the spacing and the strain at
/// which opening kerfs peel falls, so that bisection finds the border.
class SpacingSearch {
public:
    /// `cell.spacing` is not looked at. The material must outlive the search.
    SpacingSearch(Cell cell, const Material& material, KerfsOn side, Length least, Length most);
    /// `least` where none is ok.
    Length widest(Length radius);

private:
    Length tightest_at(Length spacing);

    AtSpacings kerfs_;
    const Material& material_;
    KerfsOn side_;
    Length least_, most_;
    std::array<Length, 2> at_ends_;  ///< the tightest radius at the least spacing and at the largest
    /// The same at the middles: that of the whole range at 1, those of the halves of the range at i at 2 i and 2 i + 1.
    std::vector<std::optional<Length>> at_middles_;
};

}  // namespace kerfpacket::bend
