#include "disk/process.h"

#include <algorithm>
#include <charconv>
#include <string>

#include <fcntl.h>
#include <malloc.h>
#include <unistd.h>

#include "disk/leftovers.h"
#include "disk/read.h"

namespace kerfpacket::disk {
namespace {

void hold_standard_streams() {
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
        if (::fcntl(stream, F_GETFD) < 0)                                       // NOLINT(*-vararg)
            ::open("/dev/null", stream == STDIN_FILENO ? O_WRONLY : O_RDONLY);  // NOLINT(*-vararg)
}

void open_many_files() {
    constexpr rlim_t enough = 65536;
    rlimit files{};
    if (::getrlimit(RLIMIT_NOFILE, &files) != 0) return;
    files.rlim_cur = std::max(files.rlim_cur, std::min(files.rlim_max, enough));
    ::setrlimit(RLIMIT_NOFILE, &files);
}

}  // namespace

std::size_t memory_in_use() {
    const std::string pages = read("/proc/self/statm", 1000).value_or("");
    std::size_t count = 0;
    std::from_chars(pages.data(), pages.data() + pages.size(), count);
    return count * static_cast<std::size_t>(::sysconf(_SC_PAGESIZE));
}

bool set_limit(__rlimit_resource resource, std::size_t most) {
    rlimit now{};
    if (::getrlimit(resource, &now) != 0) return false;
    now.rlim_cur = std::min<rlim_t>(most, now.rlim_max);
    return ::setrlimit(resource, &now) == 0;
}

void give_memory_back() { ::malloc_trim(0); }

void settle_process() {
    hold_standard_streams();
    open_many_files();
    // A heap for this thread and one for its helpers: of one alone the lock is waited for at every page, and each heap
    // takes address space that the limit counts and nobody uses.
    ::mallopt(M_ARENA_MAX, 2);
    set_limit(RLIMIT_AS, memory_in_use() + most_to_build);
    tidy_up_on_signals();
}

}  // namespace kerfpacket::disk
