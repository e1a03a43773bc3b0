#include "disk/temporary.h"

#include <random>
#include <string>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "disk/lock.h"

namespace kerfpacket::disk {
namespace {

/// ".kerfpacket-k3x9...part": no two programs think of one.
fs::path temporary_name(const fs::path& target) {
    std::random_device chance;
    std::string name;
    for (int i = 0; i < 16; ++i) name += "abcdefghijklmnopqrstuvwxyz234567"[chance() % 32U];
    return beside(target, name + ".part");
}

/// Refused where something has appeared in between. Where the disk cannot, it is moved all the same.
int move_to_vacant(const fs::path& from, const fs::path& to) {
    const int moved = ::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE);
    return moved != 0 && (errno == EINVAL || errno == ENOSYS) ? ::rename(from.c_str(), to.c_str()) : moved;
}

}  // namespace

Temporary::Temporary(const fs::path& target, Over over)
    : shown_(target), target_(real_place(target)), over_(over), before_(look(target_)) {
    if (before_.kind == Kind::folder) fail(EISDIR);
}

Temporary::~Temporary() {
    if (!moved_ && file_.open()) called(Operation::remove, path_, [&] { return ::unlink(path_.c_str()); });
}

void Temporary::fail(int error) const {
    throw Failure("cannot write " + shown_.string() + ": " +
                  (error == ENOENT || error == ENOTDIR ? "its folder does not exist" : why(error)));
}

void Temporary::open(mode_t mode) {
    struct stat found {};
    while (found.st_nlink == 0) {
        path_ = temporary_name(target_);
        leftover_.emplace(path_);
        file_ = Descriptor(called(Operation::open, path_, [&] {
            return ::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC,  // NOLINT(*-vararg)
                          mode == 0 ? 0666U : mode & 0777U);
        }));
        if (!file_.open()) fail(errno);
        // The lock says that somebody is at work on it; `sweep` may have been faster, then it is gone.
        if (called(Operation::lock, path_, [&] { return ::flock(file_.get(), LOCK_EX); }) != 0) fail(errno);
        if (called(Operation::look, path_, [&] { return ::fstat(file_.get(), &found); }) != 0) fail(errno);
    }
    if (mode == 0 || (found.st_mode & 07777U) == mode) return;
    if (called(Operation::mode, path_, [&] { return ::fchmod(file_.get(), mode); }) != 0) fail(errno);
}

void Temporary::write(std::string_view bytes, mode_t mode) {
    open(before_.kind == Kind::nothing ? mode : before_.mode);
    while (!bytes.empty()) {
        const ssize_t count =
            called(Operation::write, path_, [&] { return ::write(file_.get(), bytes.data(), bytes.size()); });
        if (count < 0) fail(errno);
        bytes.remove_prefix(static_cast<std::size_t>(count));
    }
    if (called(Operation::flush, path_, [&] { return ::fsync(file_.get()); }) != 0) fail(errno);
}

bool Temporary::move() {
    const auto rename = [&] {
        return over_ == Over::nothing ? move_to_vacant(path_, target_) : ::rename(path_.c_str(), target_.c_str());
    };
    moved_ = called(Operation::rename, target_, rename) == 0;
    return moved_;
}

bool Temporary::take_back() const {
    struct stat mine {
    }, there{};
    return before_.kind == Kind::nothing && ::fstat(file_.get(), &mine) == 0 && ::lstat(target_.c_str(), &there) == 0 &&
           mine.st_ino == there.st_ino && mine.st_dev == there.st_dev && ::unlink(target_.c_str()) == 0;
}

bool Temporary::untouched() const {
    struct stat there {};
    if (::stat(target_.c_str(), &there) != 0) return before_.kind == Kind::nothing && errno == ENOENT;
    return before_.same_as({Kind::file, there.st_dev, there.st_ino, 0});
}

fs::path Temporary::folder() const { return target_.has_parent_path() ? target_.parent_path() : fs::path("."); }

}  // namespace kerfpacket::disk
