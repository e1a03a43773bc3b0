#pragma once
// A new file on its way to its place.

#include <optional>
#include <string_view>

#include "disk/calls.h"
#include "disk/leftovers.h"
#include "disk/read.h"

namespace kerfpacket::disk {

/// What may stand where a file is put.
enum class Over { nothing, anything };

/// Written beside its target, and gone again unless it was moved there.
class Temporary {
public:
    /// Throws Failure for a target that is a folder, or a link that leads nowhere.
    Temporary(const fs::path& target, Over over);
    ~Temporary();
    Temporary(const Temporary&) = delete;
    Temporary& operator=(const Temporary&) = delete;

    /// All bytes, flushed to the disk, with the permissions of what stands at the target; of a new file `mode`, or with
    /// 0 what the user's own setting (umask) leaves. Throws Failure, "cannot write TARGET: why".
    void write(std::string_view bytes, mode_t mode);

    /// Onto the target; false, and errno set, where it cannot be moved.
    bool move();
    /// Takes a file away again that was moved to where nothing stood; false where it cannot.
    bool take_back() const;
    /// True while at the target stands what stood there before.
    bool untouched() const;

    fs::path folder() const;
    const fs::path& target() const { return shown_; }

private:
    [[noreturn]] void fail(int error) const;
    void open(mode_t mode);

    fs::path shown_;   ///< as the user calls it
    fs::path target_;  ///< where it really is
    Over over_;
    Seen before_;
    fs::path path_;
    std::optional<Leftover> leftover_;
    Descriptor file_;
    bool moved_ = false;
};

}  // namespace kerfpacket::disk
