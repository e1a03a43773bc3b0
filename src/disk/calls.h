#pragma once
// Every call on the system for a file or a process passes one gate, where a test can make it fail.

#include <cerrno>
#include <filesystem>
#include <functional>
#include <stdexcept>
#include <string>

namespace kerfpacket::disk {

namespace fs = std::filesystem;

/// What the system is asked to do.
enum class Operation {
    look,
    open,
    read,
    write,
    flush,
    mode,
    lock,
    rename,
    remove,
    make_folder,
    list,
    pipe,
    fork,
    wait
};

/// Asked before an operation on what has this name (empty: no file): the error number that it fails with, or 0.
using Gate = std::function<int(Operation, const fs::path&)>;

/// Puts a gate before all operations while it lives: for tests, one at a time.
class Gated {
public:
    explicit Gated(Gate put);
    ~Gated();
    Gated(const Gated&) = delete;
    Gated& operator=(const Gated&) = delete;
};

/// False, and errno set, where the gate makes the operation fail.
bool passes(Operation operation, const fs::path& what);

/// What the call gives, or -1 and errno where the gate makes it fail. A call that a signal interrupted is made again.
template <class Call>
auto called(Operation operation, const fs::path& what, Call call) -> decltype(call()) {
    if (!passes(operation, what)) return -1;
    auto result = call();
    while (result < 0 && errno == EINTR) result = call();
    return result;
}

/// The disk, or the system, did not do what was asked of it: nothing is known of what a file holds. The words name the
/// file.
class Failure : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// An error number in plain words: "the disk is full".
std::string why(int error);

/// An open file, closed with its scope.
class Descriptor {
public:
    explicit Descriptor(int number = -1) : number_(number) {}
    Descriptor(Descriptor&& other) noexcept : number_(other.release()) {}
    Descriptor& operator=(Descriptor&& other) noexcept;
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor();

    int get() const { return number_; }
    bool open() const { return number_ >= 0; }
    int release();

private:
    int number_;
};

}  // namespace kerfpacket::disk
