#pragma once
// What stands on the disk, looked at and read.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <sys/types.h>
#include <tl/expected.hpp>

#include "disk/calls.h"

namespace kerfpacket::disk {

enum class Kind { nothing, file, folder, other };

/// What stands under a name.
struct Seen {
    Kind kind = Kind::nothing;
    dev_t device = 0;
    ino_t number = 0;
    mode_t mode = 0;  ///< its permissions

    bool same_as(const Seen& other) const {
        return kind != Kind::nothing && device == other.device && number == other.number;
    }
};

/// Looks, through links. Throws Failure where it cannot be told, and for a link that leads nowhere: something was meant
/// to stand there.
Seen look(const fs::path& path);

/// Why a file could not be read.
struct Unread {
    enum class Kind { absent, folder, special, too_large, failed };
    Kind kind = Kind::failed;
    std::string why;  ///< "the disk failed"
};

/// All bytes of a file of at most so many. Never waits: what is no plain file is not read.
tl::expected<std::string, Unread> read(const fs::path& file, std::size_t most);

/// All bytes of the standard input, of at most so many; waits for its end.
tl::expected<std::string, Unread> read_input(std::size_t most);

/// `read` of a file that must be there; throws Failure, "cannot read FILE: why".
std::string must_read(const fs::path& file, std::size_t most);

/// The names in a folder, sorted; nothing where nothing stands. Throws Failure where a folder cannot be read, or is
/// none.
std::optional<std::vector<std::string>> names_in(const fs::path& folder);

}  // namespace kerfpacket::disk
