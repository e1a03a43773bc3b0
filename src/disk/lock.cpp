#include "disk/lock.h"

#include <array>
#include <cstdint>
#include <optional>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "disk/leftovers.h"
#include "disk/read.h"

namespace kerfpacket::disk {
namespace {

constexpr std::string_view front = ".kerfpacket-";
constexpr std::string_view part_ending = ".part";

/// A short name for one of any length: 64-bit FNV-1a, in hexadecimal.
std::string short_name(const std::string& name) {
    std::uint64_t hash = 14695981039346656037U;
    for (const char c : name) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211U;
    std::string text;
    for (int shift = 60; shift >= 0; shift -= 4)
        text += "0123456789abcdef"[(hash >> static_cast<unsigned>(shift)) & 15U];
    return text;
}

/// "process 4711 on the computer anvil".
std::string whoami() {
    std::array<char, 256> host{};
    const bool named = ::gethostname(host.data(), host.size() - 1) == 0;
    return "process " + std::to_string(::getpid()) + (named ? std::string(" on the computer ") + host.data() : "");
}

/// True while the file that is open still goes by this name.
bool still_named(int file, const fs::path& name) {
    struct stat open {
    }, named{};
    return ::fstat(file, &open) == 0 && ::lstat(name.c_str(), &named) == 0 && open.st_dev == named.st_dev &&
           open.st_ino == named.st_ino;
}

/// `made` is true where the file was not there before.
int open_lock(const fs::path& name, bool& made) {
    const auto opened = [&](int flags) {
        return called(Operation::open, name, [&] {
            return ::open(name.c_str(), flags | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK, 0666);  // NOLINT(*-vararg)
        });
    };
    int file = opened(O_RDWR | O_CREAT | O_EXCL);
    made = file >= 0;
    if (file < 0 && errno == EEXIST) file = opened(O_RDWR | O_CREAT);
    // Another user's, left behind: to read is enough for a lock.
    return file < 0 && errno == EACCES ? opened(O_RDONLY) : file;
}

int try_lock(int file, const fs::path& name) {
    return called(Operation::lock, name, [&] { return ::flock(file, LOCK_EX | LOCK_NB); });
}

}  // namespace

struct Lock::Held {
    fs::path name;
    std::optional<Leftover> leftover;
    Descriptor file;
};

fs::path real_place(const fs::path& path) {
    struct stat found {};
    if (::lstat(path.c_str(), &found) != 0 || !S_ISLNK(found.st_mode)) return path;
    look(path);  // throws for a link that leads nowhere
    std::error_code failed;
    fs::path real = fs::canonical(path, failed);
    if (failed) throw Failure("cannot follow the link " + path.string() + ": " + failed.message());
    return real;
}

fs::path beside(const fs::path& target, const std::string& rest) {
    return target.parent_path() / (std::string(front) + rest);
}

Lock::Lock(const fs::path& target) : held_(std::make_unique<Held>()) {
    const fs::path real = real_place(target);
    sweep(real);
    held_->name = beside(real, short_name(real.filename().string()) + ".lock");
    const auto fail = [&](int error) {
        throw Failure("cannot write " + target.string() + ": " +
                      (error == ENOENT ? "its folder does not exist" : why(error)));
    };
    while (true) {
        bool made = false;
        held_->file = Descriptor(open_lock(held_->name, made));
        if (!held_->file.open()) fail(errno);
        if (try_lock(held_->file.get(), held_->name) != 0) {
            const int error = errno;
            if (error != EWOULDBLOCK) {
                // A disk that takes no locks is left without the file that was to be locked.
                if (made) called(Operation::remove, held_->name, [&] { return ::unlink(held_->name.c_str()); });
                fail(error);
            }
            const auto owner = read(held_->name, 1000);
            throw Failure(target.string() + " is being written by another kerfpacket" +
                          (owner && !owner->empty() ? ", " + *owner : "") + "; wait until it is done and try again");
        }
        // Whoever had it before may have removed it in between.
        if (still_named(held_->file.get(), held_->name)) break;
    }
    held_->leftover.emplace(held_->name);
    const std::string me = whoami();
    if (::ftruncate(held_->file.get(), 0) != 0) return;
    // Only for the message of others: a lock holds without it.
    if (::write(held_->file.get(), me.data(), me.size()) < 0) return;
}

Lock::~Lock() {
    // Removed while it is held: a lock that somebody takes on it from here on is told by its name to be none.
    if (held_->file.open()) called(Operation::remove, held_->name, [&] { return ::unlink(held_->name.c_str()); });
}

void sweep(const fs::path& target) try {
    const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
    for (const std::string& entry : names_in(folder).value_or(std::vector<std::string>{})) {
        if (!entry.starts_with(front) || !entry.ends_with(part_ending)) continue;
        const fs::path name = folder / entry;
        const Descriptor file(called(Operation::open, name, [&] {
            return ::open(name.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);  // NOLINT(*-vararg)
        }));
        if (!file.open() || try_lock(file.get(), name) != 0 || !still_named(file.get(), name)) continue;
        called(Operation::remove, name, [&] { return ::unlink(name.c_str()); });
    }
} catch (const Failure&) {
    // A folder that cannot be read can still be written to.
}

}  // namespace kerfpacket::disk
