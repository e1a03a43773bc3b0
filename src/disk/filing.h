#pragma once
// Files written whole or not at all, several at once.

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "disk/temporary.h"

namespace kerfpacket::disk {

/// Writes each file to a temporary one beside its target and flushes it to the disk; moves them all into place only
/// when every one is written: a reader sees an old file or the whole new one. What is not moved leaves nothing behind.
/// A link stays a link: what it leads to is replaced. A file that is replaced keeps its permissions.
class Filing {
public:
    /// Throws as Temporary does.
    void add(const fs::path& target, std::string_view bytes, Over over = Over::anything, mode_t mode = 0);

    /// Moves them into place, in the order they were added. Throws Failure when one cannot be moved: those before it
    /// that were new are gone again, and which were replaced is told. Returns what must be told although all are in
    /// place: the disk does not confirm that they stay there.
    [[nodiscard]] std::vector<std::string> commit();

private:
    [[noreturn]] void undo(std::size_t failed, int error);
    std::vector<std::unique_ptr<Temporary>> files_;
};

/// Takes a file away; false, and errno set, where it cannot be.
bool remove(const fs::path& file);

/// A folder and those above it, made where they are not there, and gone again with this unless they are kept.
class NewFolder {
public:
    /// Throws Failure, "cannot make the folder PATH: why".
    explicit NewFolder(const fs::path& path);
    ~NewFolder();
    NewFolder(const NewFolder&) = delete;
    NewFolder& operator=(const NewFolder&) = delete;
    void keep() { made_.clear(); }

private:
    void make(const fs::path& path);
    void remove() const;
    std::vector<fs::path> made_;
};

}  // namespace kerfpacket::disk
