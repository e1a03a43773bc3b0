#pragma once
// How far apart kerfs may stand where the board follows a given radius.

#include "bend/cell.h"

namespace kerfpacket::bend {

/// The largest spacing between `least` and `most` at which strain, closing and facet are all ok; `least` where none is.
/// `cell.spacing` is not looked at. Strain, closing radius and facet rise with the spacing and the strain at which
/// opening kerfs peel falls, so that bisection finds the border.
Length widest_spacing(Cell cell, const Material& material, KerfsOn side, Length radius, Length least, Length most);

}  // namespace kerfpacket::bend
