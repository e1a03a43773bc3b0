#pragma once
// A test on one core of however many the machine has.

#include <sched.h>

#include <stdexcept>

namespace kerfpacket::tests {

/// While it lives, the thread that made it and the programs that it starts have one core.
class OnOneCore {
public:
    OnOneCore() {
        if (sched_getaffinity(0, sizeof before_, &before_) != 0) throw std::runtime_error("no cores are told");
        cpu_set_t one;
        CPU_ZERO(&one);
        for (std::size_t core = 0; CPU_COUNT(&one) == 0; ++core)
            if (CPU_ISSET(core, &before_)) CPU_SET(core, &one);
        if (sched_setaffinity(0, sizeof one, &one) != 0) throw std::runtime_error("no core can be chosen");
    }
    ~OnOneCore() { sched_setaffinity(0, sizeof before_, &before_); }
    OnOneCore(const OnOneCore&) = delete;
    OnOneCore& operator=(const OnOneCore&) = delete;

private:
    cpu_set_t before_{};
};

}  // namespace kerfpacket::tests
