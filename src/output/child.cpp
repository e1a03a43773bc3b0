#include "output/child.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <fstream>
#include <new>
#include <stdexcept>
#include <system_error>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "measure/require.h"

namespace kerfpacket::output {
namespace {

/// The first byte of what the child writes.
constexpr char done = 'd', refused = 'r';

[[noreturn]] void fail(int error) {
    throw std::runtime_error("cannot start a process to read the file in: " + std::generic_category().message(error));
}

/// Bytes of address space that this process has now; 0 when the system does not tell.
std::size_t memory_now() {
    std::size_t pages = 0;
    std::ifstream("/proc/self/statm") >> pages;
    return pages * static_cast<std::size_t>(sysconf(_SC_PAGESIZE));
}

void limit(__rlimit_resource resource, std::size_t most) {
    rlimit now{};
    getrlimit(resource, &now);
    now.rlim_cur = std::min<rlim_t>(most, now.rlim_max);
    if (setrlimit(resource, &now) != 0) _exit(1);
}

void write_all(int pipe, const std::string& bytes) {
    for (std::size_t at = 0; at < bytes.size();) {
        const ssize_t count = ::write(pipe, bytes.data() + at, bytes.size() - at);
        if (count < 0 && errno != EINTR) _exit(1);
        if (count > 0) at += static_cast<std::size_t>(count);
    }
}

[[noreturn]] void child(const std::function<std::string()>& work, const Limits& limits, int pipe) {
    limit(RLIMIT_AS, memory_now() + limits.memory);
    limit(RLIMIT_CPU, limits.seconds);
    limit(RLIMIT_CORE, 0);
    try {
        write_all(pipe, done + work());
    } catch (const std::bad_alloc&) { _exit(1); } catch (const std::exception& told) {
        write_all(pipe, refused + std::string(told.what()));
    }
    // Nothing of the parent's is flushed or closed here.
    _exit(0);
}

/// What comes out of the pipe; one byte more than allowed is enough to know.
std::string read_all(int pipe, std::size_t most) {
    std::string all;
    std::array<char, 65536> piece{};
    while (all.size() <= most) {
        const ssize_t count = ::read(pipe, piece.data(), piece.size());
        if (count == 0) break;
        if (count > 0) all.append(piece.data(), static_cast<std::size_t>(count));
        else if (errno != EINTR) break;
    }
    return all;
}

}  // namespace

std::string in_child(const std::function<std::string()>& work, const Limits& limits, const std::string& over) {
    std::array<int, 2> ends{};
    if (::pipe(ends.data()) != 0) fail(errno);
    const pid_t pid = ::fork();
    if (pid < 0) {
        const int error = errno;
        ::close(ends[0]);
        ::close(ends[1]);
        fail(error);
    }
    if (pid == 0) {
        ::close(ends[0]);
        child(work, limits, ends[1]);
    }
    ::close(ends[1]);
    std::string answer;
    try {
        answer = read_all(ends[0], limits.answer);
    } catch (const std::bad_alloc&) { answer.clear(); }
    // A child that still writes is ended by the closed pipe.
    ::close(ends[0]);
    int status = 0;
    while (::waitpid(pid, &status, 0) < 0 && errno == EINTR) {}
    if (!WIFEXITED(status) || WEXITSTATUS(status) != 0 || answer.empty() || answer.size() > limits.answer)
        throw std::runtime_error(over);
    const std::string words = answer.substr(1);
    if (answer.front() == refused) throw std::runtime_error(words);
    return words;
}

}  // namespace kerfpacket::output
