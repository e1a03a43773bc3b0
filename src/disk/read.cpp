#include "disk/read.h"

#include <algorithm>
#include <array>
#include <memory>

#include <dirent.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace kerfpacket::disk {
namespace {

Kind kind_of(mode_t mode) {
    if (S_ISREG(mode)) return Kind::file;
    return S_ISDIR(mode) ? Kind::folder : Kind::other;
}

[[noreturn]] void cannot(const char* what, const fs::path& path, const std::string& because) {
    throw Failure(std::string("cannot ") + what + " " + path.string() + ": " + because);
}

tl::unexpected<Unread> unread(int error) { return tl::unexpected(Unread{Unread::Kind::failed, why(error)}); }

/// No file, as far as its kind tells.
std::optional<Unread> no_file(Kind kind) {
    switch (kind) {
        case Kind::file: return std::nullopt;
        case Kind::nothing: return Unread{Unread::Kind::absent, "there is no such file"};
        case Kind::folder: return Unread{Unread::Kind::folder, "this is a folder"};
        case Kind::other: return Unread{Unread::Kind::special, "this is a device or a pipe"};
    }
    return std::nullopt;
}

tl::expected<std::string, Unread> read_open(int file, const fs::path& name, std::size_t most) {
    std::string bytes;
    std::array<char, 65536> piece;  // NOLINT(*-member-init): some forty files are read at a start, and most are small
    for (;;) {
        const ssize_t count = called(Operation::read, name, [&] { return ::read(file, piece.data(), piece.size()); });
        if (count < 0) return unread(errno);
        if (count == 0) return bytes;
        bytes.append(piece.data(), static_cast<std::size_t>(count));
        if (bytes.size() > most) return tl::unexpected(Unread{Unread::Kind::too_large, "it is too large"});
    }
}

struct CloseFolder {
    void operator()(DIR* folder) const { ::closedir(folder); }
};

}  // namespace

Seen look(const fs::path& path) {
    struct stat found {};
    if (called(Operation::look, path, [&] { return ::stat(path.c_str(), &found); }) == 0)
        return {kind_of(found.st_mode), found.st_dev, found.st_ino, found.st_mode & 07777U};
    if (errno != ENOENT && errno != ENOTDIR) cannot("look at", path, why(errno));
    if (::lstat(path.c_str(), &found) == 0 && S_ISLNK(found.st_mode))
        cannot("read", path, "it is a link that leads nowhere");
    return {};
}

tl::expected<std::string, Unread> read(const fs::path& file, std::size_t most) {
    try {
        // Before it is opened: to open a device may do something.
        if (auto refused = no_file(look(file).kind)) return tl::unexpected(*std::move(refused));
    } catch (const Failure& failure) {
        const std::string words = failure.what();
        return tl::unexpected(Unread{Unread::Kind::failed, words.substr(words.rfind(": ") + 2)});
    }
    const Descriptor open(called(Operation::open, file, [&] {
        return ::open(file.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC);  // NOLINT(*-vararg)
    }));
    if (!open.open()) return unread(errno);
    struct stat found {};
    if (::fstat(open.get(), &found) != 0) return unread(errno);
    if (auto refused = no_file(kind_of(found.st_mode))) return tl::unexpected(*std::move(refused));
    // What is larger is not even read. A file may grow meanwhile, and some systems tell no size.
    if (found.st_size > 0 && static_cast<std::uintmax_t>(found.st_size) > most)
        return tl::unexpected(Unread{Unread::Kind::too_large, "it is too large"});
    return read_open(open.get(), file, most);
}

tl::expected<std::string, Unread> read_input(std::size_t most) { return read_open(STDIN_FILENO, "", most); }

std::string must_read(const fs::path& file, std::size_t most) {
    auto bytes = read(file, most);
    if (!bytes) cannot("read", file, bytes.error().why);
    return *std::move(bytes);
}

std::optional<std::vector<std::string>> names_in(const fs::path& folder) {
    const Kind kind = look(folder).kind;
    if (kind == Kind::nothing) return std::nullopt;
    if (kind != Kind::folder) cannot("read", folder, "it is no folder");
    const std::unique_ptr<DIR, CloseFolder> open(passes(Operation::list, folder) ? ::opendir(folder.c_str()) : nullptr);
    if (!open) cannot("read the folder", folder, why(errno));
    std::vector<std::string> names;
    errno = 0;
    while (const dirent* entry = ::readdir(open.get())) {  // NOLINT(concurrency-mt-unsafe): a stream of our own
        const std::string name = &entry->d_name[0];
        if (name != "." && name != "..") names.push_back(name);
        errno = 0;
    }
    if (errno != 0 || !passes(Operation::list, folder)) cannot("read the folder", folder, why(errno));
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace kerfpacket::disk
