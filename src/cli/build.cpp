#include "cli/build.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cli/report.h"
#include "cli/revision.h"
#include "cli/target.h"
#include "cli/trouble.h"
#include "disk/detached.h"
#include "disk/lock.h"
#include "output/packet_reader.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

/// Kerfs that are given by hand and have a weak link among them are not printed unasked: false, and told, then.
bool weak_links_told(const plan::Plan& plan, Console& console) {
    bool none = true;
    for (const plan::Piece& piece : plan.pieces) {
        if (piece.weak_links.empty()) continue;
        none = false;
        console.message(
            fmt::format("kerfpacket: piece {} has weak links, where a board breaks first: the gaps beside {} {} differ "
                        "by more than "
                        "{} times; even them out, or print all the same with --force\n",
                        piece.id, piece.weak_links.size() == 1 ? "kerf" : "kerfs", fmt::join(piece.weak_links, ", "),
                        plan::most_gap_ratio));
    }
    return none;
}

/// The packet that the job's whole packet takes the place of: a part is a part of that one.
fs::path whole_packet(const BuildChoice& choice) {
    // A part of a job without a name is a part of a packet that nobody knows.
    if (!choice.out.empty() && (choice.part.whole() || choice.job.from_input())) return choice.out;
    return choice.job.file.parent_path() / (choice.job.file.stem().string() + ".pdf");
}

/// What is written can be read back by whoever verifies or revises it. Throws std::runtime_error where it cannot.
void require_readable(const std::string& bytes, const fs::path& target) {
    const std::string split = "; print fewer openings and walls in one job";
    if (bytes.size() > output::most_packet_bytes)
        throw std::runtime_error(fmt::format("{} would be {} MB, and a packet over {} MB is not read again{}",
                                             target.string(), bytes.size() >> 20U, output::most_packet_bytes >> 20U,
                                             split));
    try {
        filed(output::read_packet(bytes, target).files, target.string());
    } catch (const output::Refusal& refused) {
        throw std::runtime_error(
            fmt::format("{} could not be read again: it {}{}", target.string(), refused.what(), split));
    }
}

/// The desktop's own choice of a program shows it; that there is none is a caution, for all is written.
void show(const fs::path& target, Console& console) {
    const int error = disk::start_detached({"xdg-open", fs::absolute(target).string()});
    if (error != 0)
        console.doubt(
            fmt::format("kerfpacket: caution: written, but it cannot be opened: xdg-open: {}\n", disk::why(error)));
}

}  // namespace

Status build(const BuildChoice& choice, Console& console, const fs::path& home) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    if (!choice.force && !weak_links_told(job->plan, console)) return Status::errors;
    const bool whole = choice.part.whole();
    const fs::path target = packet_target(choice.out, choice.job, whole ? ".pdf" : "-part.pdf");
    // Nobody else may read what stands there until the new packet is there.
    const disk::Lock lock(target);
    const Found there = found_at(target);
    if (!whole) require_no_packet(there);
    const std::optional<Standing> old =
        standing(whole ? there : found_at(whole_packet(choice)), *job, choice.force, home);
    require_replaceable(there, choice.force);
    const Record record{job->inputs, choice.part, old ? old->previous : std::nullopt};
    const std::optional<Packet> packet = make_packet(record, *job, console, home);
    if (!packet) return Status::errors;
    require_readable(packet->bytes, target);
    disk::Filing filing;
    const bool revised = whole && old && !old->same_revision;
    if (revised) keep(there, *old, filing);
    const bool vacant = there.seen.kind == disk::Kind::nothing;
    filing.add(target, packet->bytes, vacant ? disk::Over::nothing : disk::Over::anything);
    put(filing, console);
    if (revised)
        console.done(fmt::format("{}: revision {}, kept\n", kept_path(target, old->revision).string(), old->revision));
    console.done(fmt::format("{}: {}\n", target.string(), counted(packet->pages, "page")));
    console.done(verdict_line(job->plan));
    if (choice.open) show(target, console);
    else console.next(fmt::format("print {} at 100 %, and measure its printed bars", target.string()));
    return job->status;
}

}  // namespace kerfpacket::cli
