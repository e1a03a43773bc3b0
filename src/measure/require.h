#pragma once
// Checks for bugs that stay on in release builds: a wrong mark is worse than a stopped program.

#include <stdexcept>
#include <string>

namespace kerfpacket::measure {

/// A mistake in this program, never in the user's job.
class Bug : public std::logic_error {
public:
    using std::logic_error::logic_error;
};

/// Throws Bug unless `holds`; `what` says what should have been true.
inline void require(bool holds, const char* what) {
    if (!holds) throw Bug(std::string("internal check failed: ") + what);
}

}  // namespace kerfpacket::measure
