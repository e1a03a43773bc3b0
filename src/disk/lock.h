#pragma once
// One program at a time writes a file.

#include <memory>

#include "disk/calls.h"

namespace kerfpacket::disk {

/// Where the file really is: what a link leads to. Throws Failure for a link that leads nowhere.
fs::path real_place(const fs::path& path);

/// Names of ours beside the user's files, which no listing shows and nobody types: ".kerfpacket-" and what follows.
fs::path beside(const fs::path& target, const std::string& rest);

/// Nobody else who asks for a lock on the same target gets one while this lives. Held by a lock of the system (flock)
/// on a file beside the target, so that it ends with the program however that ends, and a file that was left behind
/// locks nothing.
class Lock {
public:
    /// Throws Failure at once, with who has it, when somebody has.
    explicit Lock(const fs::path& target);
    ~Lock();
    Lock(const Lock&) = delete;
    Lock& operator=(const Lock&) = delete;

private:
    struct Held;
    std::unique_ptr<Held> held_;
};

/// Removes what programs that are dead left in the folder of the target: ".kerfpacket-*.part" that nobody has a lock
/// on. (A lock that was left behind is taken by the next who writes that target.) Never throws for the disk's sake.
void sweep(const fs::path& target);

}  // namespace kerfpacket::disk
