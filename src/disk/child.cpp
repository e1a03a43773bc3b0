#include "disk/child.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <csignal>
#include <new>
#include <stdexcept>

#include <fcntl.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "disk/process.h"
#include "measure/require.h"

namespace kerfpacket::disk {
namespace {

/// The first byte of what the child writes.
constexpr char done = 'd', refused = 'r', failed = 'f', mistaken = 'm';

[[noreturn]] void fail(const std::string& file, int error) {
    throw Failure(file + " cannot be read: no process can be had for it: " + why(error));
}

void limit(__rlimit_resource resource, std::size_t most) {
    if (!set_limit(resource, most)) _exit(1);
}

void write_all(int pipe, const std::string& bytes) {
    for (std::size_t at = 0; at < bytes.size();) {
        const ssize_t count = ::write(pipe, bytes.data() + at, bytes.size() - at);
        if (count < 0 && errno != EINTR) _exit(1);
        if (count > 0) at += static_cast<std::size_t>(count);
    }
}

[[noreturn]] void child(const std::function<std::string()>& work, const Limits& limits, int pipe) {
    // The parent's files are none of its business, and the shell asks the parent.
    for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGXCPU})
        // What whoever started the program wants ignored (nohup) stays so.
        if (std::signal(signal, SIG_DFL) == SIG_IGN) std::signal(signal, SIG_IGN);
    limit(RLIMIT_AS, memory_in_use() + limits.memory);
    limit(RLIMIT_CPU, limits.seconds);
    limit(RLIMIT_CORE, 0);
    try {
        write_all(pipe, done + work());
    } catch (const std::bad_alloc&) { _exit(1); } catch (const Failure& told) {
        write_all(pipe, failed + std::string(told.what()));
    } catch (const measure::Bug& told) {
        write_all(pipe, mistaken + std::string(told.what()));
    } catch (const std::exception& told) { write_all(pipe, refused + std::string(told.what())); }
    // Nothing of the parent's is flushed or closed here.
    _exit(0);
}

/// What comes out of the pipe; one byte more than allowed is enough to know. Throws Failure.
std::string read_all(int pipe, std::size_t most, const std::string& file) {
    std::string all;
    std::array<char, 65536> piece{};
    while (all.size() <= most) {
        const ssize_t count = called(Operation::read, "", [&] { return ::read(pipe, piece.data(), piece.size()); });
        if (count == 0) break;
        if (count < 0) throw Failure(file + " cannot be read: " + why(errno));
        all.append(piece.data(), static_cast<std::size_t>(count));
    }
    return all;
}

/// A child that was started; it is waited for in any case.
class Started {
public:
    explicit Started(pid_t number) : number_(number) {}
    ~Started() { wait(); }
    Started(const Started&) = delete;
    Started& operator=(const Started&) = delete;

    /// True where it ended by itself, and well.
    bool wait() {
        if (number_ <= 0) return false;
        int status = 0;
        pid_t ended = 0;
        do ended = ::waitpid(number_, &status, 0);
        while (ended < 0 && errno == EINTR);
        number_ = 0;
        return ended > 0 && WIFEXITED(status) && WEXITSTATUS(status) == 0;
    }

private:
    pid_t number_;
};

}  // namespace

std::string in_child(const std::function<std::string()>& work, const Limits& limits, const std::string& file,
                     const std::string& over) {
    std::array<int, 2> ends{};
    if (called(Operation::pipe, "", [&] { return ::pipe2(ends.data(), O_CLOEXEC); }) != 0) fail(file, errno);
    Descriptor out(ends[0]), in(ends[1]);
    const pid_t parent = ::getpid();
    const pid_t pid = called(Operation::fork, "", [] { return ::fork(); });
    if (pid < 0) fail(file, errno);
    if (pid == 0) {
        // It must not outlive its parent, which may be gone already.
        ::prctl(PR_SET_PDEATHSIG, SIGKILL);  // NOLINT(*-vararg)
        if (::getppid() != parent) _exit(1);
        // Nothing of the parent's stays open but the pipe: neither its other end, or nobody would be told that the
        // parent reads no more; nor a lock, which would be held a moment longer than the parent lives.
        const auto pipe = static_cast<unsigned>(in.get());
        ::close_range(STDERR_FILENO + 1, pipe - 1, 0);
        ::close_range(pipe + 1, ~0U, 0);
        child(work, limits, in.get());
    }
    Started started(pid);
    in = Descriptor();
    std::string answer;
    try {
        answer = read_all(out.get(), limits.answer, file);
    } catch (const std::bad_alloc&) { answer.clear(); }
    // A child that still writes is ended by the closed pipe.
    out = Descriptor();
    const bool well = passes(Operation::wait, "") && started.wait();
    if (!well || answer.empty() || answer.size() > limits.answer) throw Failure(over);
    std::string words = answer.substr(1);
    if (answer.front() == failed) throw Failure(words);
    if (answer.front() == mistaken) throw measure::Bug(words);
    if (answer.front() == refused) throw std::runtime_error(words);
    return words;
}

std::string packed(std::string_view text) { return std::to_string(text.size()) + ":" + std::string(text); }

std::string unpacked(std::string_view& rest) {
    std::size_t size = 0;
    const auto [end, wrong] = std::from_chars(rest.data(), rest.data() + rest.size(), size);
    const auto from = static_cast<std::size_t>(end - rest.data()) + 1;
    measure::require(wrong == std::errc{} && from + size <= rest.size(), "the child's answer is whole");
    std::string text(rest.substr(from, size));
    rest.remove_prefix(from + size);
    return text;
}

}  // namespace kerfpacket::disk
