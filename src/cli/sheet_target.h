#pragma once
// Where a sheet of no job is written: a form to measure with, the page a printer is measured by.

#include <filesystem>
#include <string>

#include "cli/console.h"
#include "disk/lock.h"

namespace kerfpacket::cli {

class SheetTarget {
public:
    /// Locks the place and looks what stands there. Throws std::runtime_error where a sheet may not take its place.
    SheetTarget(const std::filesystem::path& out, bool force);

    const std::filesystem::path& file() const { return file_; }
    void write(const std::string& bytes, Console& console) const;

private:
    std::filesystem::path file_;
    disk::Lock lock_;
};

}  // namespace kerfpacket::cli
