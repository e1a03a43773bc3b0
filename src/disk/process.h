#pragma once
// What the program settles with the system before it does anything, and what it may take of it.

#include <cstddef>

#include <sys/resource.h>

namespace kerfpacket::disk {

/// What verify may take to make a packet again, besides what the program has before it begins.
inline constexpr std::size_t most_memory = 1U << 30U;
/// What any command may take: several times what the largest house takes, and so much less that what could be built can
/// be made again, for verify takes about a third more (measured) to compare.
inline constexpr std::size_t most_to_build = most_memory / 8 * 5;

/// Bytes of address space that this process has now; 0 when the system does not tell.
std::size_t memory_in_use();

/// False where the system refuses. A hard limit (ulimit) that is lower stays.
bool set_limit(__rlimit_resource resource, std::size_t most);

/// Gives back to the system what was freed: worth while after pages by the hundred.
void give_memory_back();

/// Holds the standard streams that whoever started the program has closed, so that no file gets their numbers (what is
/// told there fails, as it should); takes no more memory than `most_to_build` allows, so that a job that is too large
/// ends this program and no other; takes as many open files as this user may have, for one is open a picture until all
/// are written; and tidies up when a signal ends the program (`tidy_up_on_signals`).
void settle_process();

}  // namespace kerfpacket::disk
