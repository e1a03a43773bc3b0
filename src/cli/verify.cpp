#include "cli/verify.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "cli/gather.h"
#include "cli/made_again.h"
#include "cli/record.h"
#include "cli/street.h"
#include "cli/trouble.h"
#include "output/packet_reader.h"
#include "output/seal.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

/// A packet as it was read.
struct Opened {
    std::string name;
    std::string bytes;
    Filed filed;
    Again again;
};

Opened open(const fs::path& packet) {
    Opened opened;
    opened.name = packet.string();
    opened.bytes = output::load_packet(packet);
    try {
        const output::PacketContents contents = output::read_packet(opened.bytes, packet);
        if (!contents.ours) throw output::Refusal("is not a packet that kerfpacket wrote");
        opened.filed = filed(contents.files, opened.name);
    } catch (const output::Refusal& told) { throw std::runtime_error(fmt::format("{} {}", opened.name, told.what())); }
    return opened;
}

std::string self_told(const Filed& filed) {
    const Statement& own = filed.statement;
    return fmt::format("job {}, \"{}\", revision {}, fingerprint {}, {}{}, written by kerfpacket {}", own.number,
                       own.title, own.revision, own.fingerprint, filed.record.part.whole() ? "" : "a reprint of ",
                       counted(own.pages, "page"), own.version);
}

void tell_changed(const Opened& opened, const std::string& how, Console& console) {
    console.result(fmt::format("{}: CHANGED after it was written: do not cut by it\n{}it calls itself {}\n",
                               opened.name, how, self_told(opened.filed)));
}

/// Of a packet whose seal holds and that this very version wrote.
Status compared(const Opened& opened, Console& console) {
    if (opened.again.same) {
        console.result(
            fmt::format("{}: intact; made again from its own job file it comes out the same\n", opened.name));
        return Status::done;
    }
    tell_changed(opened,
                 fmt::format("{}, though its seal holds: it was sealed again, or the words or faces of this "
                             "kerfpacket are not those that it was written with\n",
                             opened.again.made ? "made again from its own job file it comes out different"
                                               : "its own job file cannot be printed"),
                 console);
    return Status::errors;
}

/// Of one that another version wrote: its bytes cannot be had again, but its figures can.
Status compared_in_part(const Opened& opened, Console& console) {
    const Statement& own = opened.filed.statement;
    const std::string intact = fmt::format(
        "{}: intact as far as its seal tells; this is kerfpacket {}, which cannot make it again byte for "
        "byte\n",
        opened.name, KERFPACKET_VERSION);
    if (!opened.again.made) {
        console.result(intact + "its own job file cannot be printed by this version\n");
        return Status::cautions;
    }
    const Statement& now = opened.again.statement;
    if (now.number != own.number || now.revision != own.revision || now.fingerprint != own.fingerprint) {
        tell_changed(opened, "its own job file is not the one that it was made from, though its seal holds\n", console);
        return Status::errors;
    }
    console.result(intact + fmt::format("its own job file still has that number, revision and fingerprint, and now "
                                        "makes {}\n",
                                        counted(now.pages, "page")));
    return Status::cautions;
}

bool same_text(const tl::expected<job::Source, job::Diagnostic>& a,
               const tl::expected<job::Source, job::Diagnostic>& b) {
    return a && b && a->text == b->text;
}

/// What the job itself does not say: a printer measured again, the shop's words.
std::vector<std::string> beside_the_job(const Inputs& before, const Inputs& now) {
    std::vector<std::string> told;
    const auto same_words = [](const fonts::WordFile& a, const fonts::WordFile& b) {
        return a.name == b.name && a.text == b.text;
    };
    for (const ProfileText& profile : now.profiles)
        for (const ProfileText& old : before.profiles)
            if (old.name == profile.name && !same_text(old.source, profile.source))
                told.push_back(fmt::format("the printer {} was measured again", profile.name));
    if (!std::equal(before.words.begin(), before.words.end(), now.words.begin(), now.words.end(), same_words))
        told.emplace_back("the shop's own words have changed");
    return told;
}

/// The job on the disk, printed as the packet was.
Status compare_job(const Opened& opened, JobChoice job, Console& console, const fs::path& home) {
    job.print = opened.filed.record.inputs.print;
    const std::optional<Planned> now = planned(job, console);
    if (!now) return Status::errors;
    Record record = opened.filed.record;
    record.inputs = now->inputs;
    const std::optional<Packet> packet = make_packet(record, *now, console, home, true);
    if (!packet) return Status::errors;
    if (opened.again.made && packet->sheets == opened.again.sheets) {
        console.result(fmt::format("{}: would print the same sheets\n", job.file.string()));
        return Status::done;
    }
    console.result(fmt::format("{}: would print other sheets\n", job.file.string()));
    std::vector<std::string> told = beside_the_job(opened.filed.record.inputs, now->inputs);
    for (std::string& sentence : opened.again.planned ? differences(opened.name, opened.filed.record.inputs, *now, home)
                                                      : std::vector<std::string>{})
        told.push_back(std::move(sentence));
    for (const std::string& sentence : told) console.result(fmt::format("    {}\n", sentence));
    return Status::cautions;
}

}  // namespace

Status verify(const VerifyChoice& choice, Console& console, const fs::path& home) {
    console.doing("reading the packet");
    Opened opened = open(choice.packet);
    console.doing("");
    if (!output::seal_holds(opened.bytes)) {
        tell_changed(opened, "", console);
        return Status::errors;
    }
    console.doing("making the packet again");
    const bool with_job = !choice.job.file.empty();
    opened.again = made_again(opened.name, opened.bytes, opened.filed.record, home, with_job);
    if (!opened.again.made) console.message(opened.again.said);
    console.doing("");
    const bool comparable = opened.filed.statement.version == KERFPACKET_VERSION;
    const Status status = comparable ? compared(opened, console) : compared_in_part(opened, console);
    if (status == Status::errors) return status;
    console.result(self_told(opened.filed) + "\n");
    if (!with_job) return status;
    const Status of_job = compare_job(opened, choice.job, console, home);
    return of_job == Status::done ? status : of_job;
}

}  // namespace kerfpacket::cli
