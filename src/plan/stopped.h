#pragma once
// Which boards are not to be cut, and what is not made at all: decided here for every sheet, command and machine.

#include <string>
#include <vector>

#include "plan/plan.h"

namespace kerfpacket::plan {

/// Why a board is not to be cut.
enum class Stopped {
    no,         ///< it may be
    breaks,     ///< it will likely break, or is scrap
    weak_link,  ///< its gaps differ too much
};
Stopped stopped(const Piece& piece);

/// As a house names a board or a blank: where there are several jobs, with the number of its own before it.
std::string name_in_house(const Plan& job, const std::string& id, bool several);

/// The boards of these jobs that are not to be cut, and the openings and walls of which nothing is made.
std::vector<std::string> stopped_boards(const std::vector<const Plan*>& jobs);
std::vector<std::string> not_made(const std::vector<const Plan*>& jobs);

}  // namespace kerfpacket::plan
