#include "disk/process.h"

#include <algorithm>

#include <fcntl.h>
#include <sys/resource.h>
#include <unistd.h>

#include "disk/leftovers.h"

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

void settle_process() {
    hold_standard_streams();
    open_many_files();
    tidy_up_on_signals();
}

}  // namespace kerfpacket::disk
