#pragma once
// Which of the places where joints can be are taken, inside this room only.

#include <vector>

#include "plan/splice_places.h"

namespace kerfpacket::plan {

/// The fewest joints and of those the cheapest, by going from place to place, a joint more each time; none where that
/// cannot be.
std::vector<Place> chosen_joints(const Splicing& splicing, const std::vector<Place>& places);

}  // namespace kerfpacket::plan
