#pragma once
// Work on a file that somebody else may have made, in a process of its own with limits.

#include <cstddef>
#include <functional>
#include <string>

namespace kerfpacket::output {

struct Limits {
    std::size_t memory = 0;  ///< bytes, besides what this process has already
    unsigned seconds = 0;    ///< of the processor
    std::size_t answer = 0;  ///< bytes
};

/// Does the work in a child of this process and gives its answer. What the work throws is thrown again as a
/// std::runtime_error of the same words; one that goes over a limit or crashes is a std::runtime_error of `over`.
std::string in_child(const std::function<std::string()>& work, const Limits& limits, const std::string& over);

}  // namespace kerfpacket::output
