#include "cli/sheet_target.h"

#include "cli/found.h"
#include "cli/target.h"

namespace kerfpacket::cli {

SheetTarget::SheetTarget(const std::filesystem::path& out, bool force, const JobChoice& job, const char* ending)
    : file_(packet_target(out, job, ending)), lock_(file_) {
    const Found there = found_at(file_);
    require_replaceable(there, force);
    require_no_packet(there);
}

void SheetTarget::write(const std::string& bytes, Console& console) const {
    disk::Filing filing;
    filing.add(file_, bytes);
    put(filing, console);
}

}  // namespace kerfpacket::cli
