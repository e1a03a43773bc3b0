#include "cli/build.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cli/report.h"
#include "cli/revision.h"
#include "cli/target.h"
#include "cli/trouble.h"
#include "output/file.h"
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
    if (!choice.out.empty() && choice.part.whole()) return choice.out;
    return choice.job.file.parent_path() / (choice.job.file.stem().string() + ".pdf");
}

/// Keeps the packet of the revision before under its own name, over nothing that is not the same.
void keep(const fs::path& packet, const Standing& old, Console& console) {
    const fs::path kept = kept_path(packet, old.revision);
    std::error_code ignored;
    if (fs::exists(kept, ignored) && output::load_packet(kept) != old.bytes)
        throw std::runtime_error(fmt::format(
            "revision {} is to be kept as {}, where another file stands; move that away", old.revision, kept.string()));
    output::write_whole(kept, old.bytes);
    console.result(fmt::format("{}: revision {}, kept\n", kept.string(), old.revision));
}

}  // namespace

Status build(const BuildChoice& choice, Console& console, const fs::path& home) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    if (!choice.force && !weak_links_told(job->plan, console)) return Status::errors;
    const fs::path target =
        packet_target(choice.out, choice.job.file, choice.part.whole() ? ".pdf" : "-part.pdf", choice.force);

    const bool whole = choice.part.whole();
    if (!whole) require_no_packet(target);
    const std::optional<Standing> old = standing(whole_packet(choice), *job, choice.force, home);
    const Record record{job->inputs, choice.part, old ? old->previous : std::nullopt};
    const std::optional<Packet> packet = make_packet(record, *job, console, home);
    if (!packet) return Status::errors;
    if (whole && old && !old->same_revision) keep(target, *old, console);
    output::write_whole(target, packet->bytes);
    console.result(fmt::format("{}: {}\n", target.string(), counted(packet->document.pages.size(), "page")));
    console.result(verdict_line(job->plan));
    return job->status;
}

}  // namespace kerfpacket::cli
