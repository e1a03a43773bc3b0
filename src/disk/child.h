#pragma once
// Work on a file that somebody else may have made, in a process of its own with limits.

#include <cstddef>
#include <functional>
#include <string>

#include "disk/calls.h"

namespace kerfpacket::disk {

struct Limits {
    std::size_t memory = 0;  ///< bytes, besides what this process has already
    unsigned seconds = 0;    ///< of the processor
    std::size_t answer = 0;  ///< bytes
};

/// Does the work in a child of this process and gives its answer. What the work throws is thrown again as a
/// std::runtime_error of the same words, or as the Failure or Bug that it is. One that goes over a limit or crashes is
/// a Failure of `over`, and so is a process that cannot be had: neither says anything of the file. `file` is named
/// then.
std::string in_child(const std::function<std::string()>& work, const Limits& limits, const std::string& file,
                     const std::string& over);

// Between two processes a text goes as its size, a colon and itself.
std::string packed(std::string_view text);
/// Takes the first of such texts off.
std::string unpacked(std::string_view& rest);

}  // namespace kerfpacket::disk
