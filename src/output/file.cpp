#include "output/file.h"

#include <cerrno>
#include <stdexcept>
#include <system_error>

#include <fcntl.h>
#include <unistd.h>

#include <fmt/format.h>

namespace kerfpacket::output {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const fs::path& target, int error) {
    const auto because = [&]() -> std::string {
        switch (error) {
            case ENOSPC:
            case EDQUOT: return "the disk is full";
            case EFBIG: return "the file is larger than is allowed here";
            case EACCES:
            case EPERM: return "no permission to write there";
            case EROFS: return "the disk is read-only";
            case ENOENT:
            case ENOTDIR: return "its folder does not exist";
            case EISDIR: return "a folder has that name";
            default: return std::generic_category().message(error);
        }
    };
    throw std::runtime_error(fmt::format("cannot write {}: {}", target.string(), because()));
}

/// An open file descriptor.
class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    ~Descriptor() { close(); }
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    int get() const { return number_; }
    int close() {
        const int open = number_;
        number_ = -1;
        return open < 0 ? 0 : ::close(open);
    }

private:
    int number_;
};

/// A new file beside the target, gone again unless it was moved onto it.
class TemporaryFile {
public:
    explicit TemporaryFile(const fs::path& target)
        : target_(target),
          path_(target.parent_path() / fmt::format(".{}.{}.part", target.filename().string(), ::getpid())),
          file_(::open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666)) {  // NOLINT(*-vararg)
        if (file_.get() < 0) fail(target_, errno);
    }
    ~TemporaryFile() {
        if (!moved_) ::unlink(path_.c_str());
    }
    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;

    void write(const std::string& bytes) const {
        for (std::size_t done = 0; done < bytes.size();) {
            const ssize_t count = ::write(file_.get(), bytes.data() + done, bytes.size() - done);
            if (count < 0 && errno != EINTR) fail(target_, errno);
            if (count > 0) done += static_cast<std::size_t>(count);
        }
        if (::fsync(file_.get()) != 0) fail(target_, errno);
    }

    void move_onto_target() {
        if (file_.close() != 0) fail(target_, errno);
        if (::rename(path_.c_str(), target_.c_str()) != 0) fail(target_, errno);
        moved_ = true;
    }

private:
    fs::path target_;
    fs::path path_;
    Descriptor file_;
    bool moved_ = false;
};

/// Puts the new name itself on the disk. Some file systems cannot (EINVAL); they keep no name less safely for it.
void flush_folder(const fs::path& target) {
    const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
    const Descriptor open(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));  // NOLINT(*-vararg)
    if (open.get() < 0 || (::fsync(open.get()) != 0 && errno != EINVAL)) fail(target, errno);
}

}  // namespace

void write_whole(const fs::path& target, const std::string& bytes) {
    // A link stays a link: what it leads to is replaced.
    std::error_code not_a_link;
    const fs::path real = fs::is_symlink(target, not_a_link) ? fs::weakly_canonical(target) : target;
    TemporaryFile file(real);
    file.write(bytes);
    file.move_onto_target();
    flush_folder(real);
}

}  // namespace kerfpacket::output
