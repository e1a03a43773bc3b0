#include "disk/detached.h"

#include <array>
#include <csignal>

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "disk/calls.h"
#include "disk/process.h"

namespace kerfpacket::disk {
namespace {

/// In the child of a child, so that nobody has to wait for it. Tells the pipe why where it cannot; a program that was
/// started closes the pipe.
[[noreturn]] void become(const std::vector<char*>& words, int pipe) {
    ::setsid();
    for (const int signal : {SIGXFSZ, SIGPIPE}) std::signal(signal, SIG_DFL);
    set_limit(RLIMIT_AS, RLIM_INFINITY);
    const int nothing = ::open("/dev/null", O_RDWR);  // NOLINT(*-vararg)
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) ::dup2(nothing, stream);
    ::execvp(words.front(), words.data());
    const int error = errno;
    _exit(::write(pipe, &error, sizeof error) == sizeof error ? 0 : 1);
}

}  // namespace

int start_detached(const std::vector<std::string>& words) {
    std::vector<std::string> own = words;
    std::vector<char*> pointers;
    pointers.reserve(own.size() + 1);
    for (std::string& word : own) pointers.push_back(word.data());
    pointers.push_back(nullptr);

    std::array<int, 2> ends{};
    if (called(Operation::pipe, "", [&] { return ::pipe2(ends.data(), O_CLOEXEC); }) != 0) return errno;
    const Descriptor out(ends[0]);
    Descriptor in(ends[1]);
    const pid_t pid = called(Operation::fork, "", [] { return ::fork(); });
    if (pid < 0) return errno;
    if (pid == 0) {
        const pid_t inner = ::fork();
        if (inner == 0) become(pointers, in.get());
        const int error = errno;
        _exit(inner > 0 || ::write(in.get(), &error, sizeof error) == sizeof error ? 0 : 1);
    }
    in = Descriptor();
    int status = 0;
    while (::waitpid(pid, &status, 0) < 0 && errno == EINTR) continue;
    int error = 0;
    const auto count = called(Operation::read, "", [&] { return ::read(out.get(), &error, sizeof error); });
    return count < 0 ? errno : count == 0 ? 0 : error;
}

}  // namespace kerfpacket::disk
