#include "disk/side_by_side.h"

#include <sched.h>

namespace kerfpacket::disk {

unsigned cores_allowed() {
    // The C++ library tells what the machine has. A thread more than there are cores for it waits for the others, and
    // takes what they keep near the core.
    cpu_set_t allowed;
    if (::sched_getaffinity(0, sizeof allowed, &allowed) == 0) return static_cast<unsigned>(CPU_COUNT(&allowed));
    // A machine of more cores than such a set can name.
    return std::max(std::thread::hardware_concurrency(), 1U);
}

}  // namespace kerfpacket::disk
