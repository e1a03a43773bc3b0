#include <fcntl.h>
#include <sys/resource.h>
#include <unistd.h>

#include <algorithm>
#include <iostream>

#include "cli/run.h"
#include "disk/leftovers.h"

namespace {

/// A stream that is closed is nobody's: without this the next file opened would get its number, and what is told there.
/// What is told of a stream that was closed fails, as it should.
void hold_standard_streams() {
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
        if (::fcntl(stream, F_GETFD) < 0) ::open("/dev/null", stream == STDIN_FILENO ? O_WRONLY : O_RDONLY);  // NOLINT
}

/// One file a picture is open until all are written: as many as this user may have.
void open_many_files() {
    rlimit files{};
    if (::getrlimit(RLIMIT_NOFILE, &files) != 0) return;
    files.rlim_cur = std::max(files.rlim_cur, std::min<rlim_t>(files.rlim_max, 65536));
    ::setrlimit(RLIMIT_NOFILE, &files);
}

}  // namespace

int main(int argc, char** argv) {
    hold_standard_streams();
    open_many_files();
    kerfpacket::disk::tidy_up_on_signals();
    kerfpacket::cli::Console console(std::cout, std::cerr, isatty(STDERR_FILENO) != 0);
    return kerfpacket::cli::run({argv + (argc > 0 ? 1 : 0), argv + argc}, console, kerfpacket::cli::program_folder());
}
