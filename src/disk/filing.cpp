#include "disk/filing.h"

#include <map>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

namespace kerfpacket::disk {
namespace {

/// Opened before anything is moved; not open for a folder that may be written to and not read, which nobody can flush.
Descriptor opened_folder(const fs::path& folder) {
    Descriptor open(called(Operation::open, folder, [&] {
        return ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);  // NOLINT(*-vararg)
    }));
    if (!open.open() && errno != EACCES)
        throw Failure("cannot write into the folder " + folder.string() + ": " + why(errno));
    return open;
}

}  // namespace

void Filing::add(const fs::path& target, std::string_view bytes, Over over, mode_t mode) {
    files_.push_back(std::make_unique<Temporary>(target, over));
    files_.back()->write(bytes, mode);
}

std::vector<std::string> Filing::commit() {
    std::map<fs::path, Descriptor> folders;
    for (const auto& file : files_)
        if (!folders.contains(file->folder())) folders.emplace(file->folder(), opened_folder(file->folder()));
    for (std::size_t i = 0; i < files_.size(); ++i)
        if (!files_[i]->move()) undo(i, errno);
    // The new names themselves. Some disks cannot (EINVAL); they keep no name less safely for it.
    std::vector<std::string> doubts;
    for (const auto& [name, folder] : folders)
        if (folder.open() && called(Operation::flush, name, [file = folder.get()] { return ::fsync(file); }) != 0 &&
            errno != EINVAL && errno != ENOTSUP)
            doubts.push_back("the folder " + name.string() + " could not be flushed to the disk: " + why(errno));
    files_.clear();
    return doubts;
}

void Filing::undo(std::size_t failed, int error) {
    std::string told = "cannot write " + files_[failed]->target().string() + ": " +
                       (error == EEXIST ? "something has appeared there meanwhile" : why(error));
    // Where the disk moved it all the same, what was kept of the old one is all there is of it.
    const bool untouched = files_[failed]->untouched();
    for (std::size_t i = 0; i < failed; ++i)
        if (!untouched || !files_[i]->take_back()) told += "; new is already " + files_[i]->target().string();
    files_.clear();
    throw Failure(told);
}

bool remove(const fs::path& file) {
    return called(Operation::remove, file, [&] { return ::unlink(file.c_str()); }) == 0;
}

NewFolder::NewFolder(const fs::path& path) {
    try {
        make(path);
    } catch (const Failure&) {
        remove();
        throw;
    }
}

NewFolder::~NewFolder() { remove(); }

void NewFolder::remove() const {
    for (auto folder = made_.rbegin(); folder != made_.rend(); ++folder) ::rmdir(folder->c_str());
}

void NewFolder::make(const fs::path& path) {
    if (path.empty()) return;
    switch (look(path).kind) {
        case Kind::folder: return;
        case Kind::nothing: break;
        default: throw Failure("cannot make the folder " + path.string() + ": a file has that name");
    }
    if (path.has_relative_path() && path.parent_path() != path) make(path.parent_path());
    if (called(Operation::make_folder, path, [&] { return ::mkdir(path.c_str(), 0777); }) != 0) {
        if (errno == EEXIST) return;
        throw Failure("cannot make the folder " + path.string() + ": " + why(errno));
    }
    made_.push_back(path);
}

}  // namespace kerfpacket::disk
