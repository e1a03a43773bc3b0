#pragma once
// Where sheets outside a packet are written: forms to measure with, the page a printer is measured by, labels, bids.

#include <filesystem>
#include <string>

#include "cli/console.h"
#include "cli/inputs.h"
#include "disk/lock.h"

namespace kerfpacket::cli {

class SheetTarget {
public:
    /// Locks the place and looks what stands there. Throws std::runtime_error where a sheet may not take its place.
    SheetTarget(const std::filesystem::path& out, bool force) : SheetTarget(out, force, {}, ".pdf") {}
    /// The same of a sheet of a job: without `out` its name is the job file's with `ending`, beside it.
    SheetTarget(const std::filesystem::path& out, bool force, const JobChoice& job, const char* ending);

    const std::filesystem::path& file() const { return file_; }
    void write(const std::string& bytes, Console& console) const;

private:
    std::filesystem::path file_;
    disk::Lock lock_;
};

}  // namespace kerfpacket::cli
