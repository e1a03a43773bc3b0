#pragma once
// How far apart kerfs may stand where the board follows a given radius.

#include <unordered_map>

#include "bend/cell.h"

namespace kerfpacket::bend {

/// The largest spacing between `least` and `most` at which strain, closing and facet are all ok, radius after radius:
/// what is found out of a spacing is kept. Strain, closing radius and facet rise with the spacing and the strain at
/// which opening kerfs peel falls, so that bisection finds the border.
class SpacingSearch {
public:
    /// `cell.spacing` is not looked at. The material must outlive the search.
    SpacingSearch(const Cell& cell, const Material& material, KerfsOn side, Length least, Length most);
    /// `least` where none is ok.
    Length widest(Length radius);

private:
    bool ok(Length spacing, Length radius);

    Cell cell_;
    const Material& material_;
    KerfsOn side_;
    Length least_, most_;
    std::unordered_map<double, Length> tightest_;  ///< radius by spacing, in mm
};

}  // namespace kerfpacket::bend
