#include "cli/found.h"

#include <stdexcept>

#include <fmt/format.h>

#include "output/packet_reader.h"
#include "output/seal.h"

namespace kerfpacket::cli {
namespace {

/// Fills in what the file says of itself.
void read_record(Found& found, const output::PacketContents& contents) {
    // A sheet of no job carries no files; it has no seal, so that what was worked on is told by other signs.
    if (contents.files.empty()) {
        if (contents.worked_on) found.fault = "was filled in or added to after it was written";
        return;
    }
    if (!output::seal_holds(found.bytes)) {
        found.fault = "was changed after it was written";
        return;
    }
    try {
        found.filed = filed(contents.files, found.file.string());
    } catch (const output::Refusal& refused) {
        // Its seal holds: it may well be a packet that somebody needs.
        throw std::runtime_error(
            fmt::format("{} {}, though its seal holds; move it away first", found.file.string(), refused.what()));
    }
}

}  // namespace

Found found_at(const std::filesystem::path& file) {
    Found found{file, disk::look(file), "", false, "", {}};
    if (found.seen.kind != disk::Kind::file) return found;
    try {
        found.bytes = output::load_packet(file);
        const output::PacketContents contents = output::read_packet(found.bytes, file);
        found.ours = contents.ours;
        if (found.ours) read_record(found, contents);
    } catch (const output::TooLarge&) {
        // No packet is: it is not ours.
    } catch (const output::Refusal&) {
        // The same.
    }
    return found;
}

void require_replaceable(const Found& there, bool force) {
    const std::string name = there.file.string();
    if (there.seen.kind == disk::Kind::nothing) return;
    if (there.seen.kind != disk::Kind::file)
        throw std::runtime_error(
            fmt::format("{} is not a file that can be replaced; choose another name with --out", name));
    if (force || (there.ours && there.fault.empty())) return;
    if (there.ours)
        throw std::runtime_error(fmt::format(
            "{} {}; \"kerfpacket verify\" tells more, --force replaces it, --out writes elsewhere", name, there.fault));
    throw std::runtime_error(
        fmt::format("{} is there already and is not a packet that kerfpacket wrote; --force replaces it, --out writes "
                    "elsewhere",
                    name));
}

void require_no_packet(const Found& there) {
    if (const Filed* packet = there.whole())
        throw std::runtime_error(fmt::format("{} is the packet of job {}, revision {}; choose another place with --out",
                                             there.file.string(), packet->statement.number,
                                             packet->statement.revision));
}

}  // namespace kerfpacket::cli
