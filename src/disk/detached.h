#pragma once
// A program started for the user, which lives on without this one.

#include <string>
#include <vector>

namespace kerfpacket::disk {

/// Starts the program that `words` begin with, found on PATH, with the others as its arguments, without a terminal and
/// with the limits and signals that this program was started with. 0, or the error number of why it cannot be started.
int start_detached(const std::vector<std::string>& words);

}  // namespace kerfpacket::disk
