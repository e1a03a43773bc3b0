#pragma once
// A moulded board as strips side by side across its width, each a cell by finite elements: an answer to what bend/
// says of moulded boards that shares nothing with it.

#include <vector>

#include "cell_elements.h"

namespace kerfpacket::elements {

/// Thicknesses of strips of even width, from the profile.
std::vector<Length> strips_of(const std::vector<bend::ProfilePoint>& profile, int count);

/// A board of strips bent to a unit curvature (1/mm), without pull. The strips turn and stretch alike from the middle
/// of a kerf to that of the land: both are planes of symmetry in a board that is bent evenly.
struct StripBoard {
    double stiffness_ratio = 0;   ///< over that of the same strips without kerfs
    Length length_keeping_depth;  ///< from the plain face of the thickest
    /// Of each strip, then at each point of the profile: nominal, of pull and moment in its web, on the worse face.
    std::vector<double> strain;
};
StripBoard bend_strips(const bend::Cell& cell, const std::vector<Length>& strips, const Stuff& stuff);

}  // namespace kerfpacket::elements
