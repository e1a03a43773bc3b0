#include "cli/revision.h"

#include <algorithm>
#include <stdexcept>
#include <system_error>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cli/record.h"
#include "output/packet_reader.h"
#include "output/seal.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const std::string& why) { throw std::runtime_error(why); }

/// Counts on in these signs, from the last place: over the top a place starts again and the one before it goes on.
std::string counted_on(std::string text, char first, char last, char carry) {
    for (auto place = text.rbegin(); place != text.rend(); ++place) {
        if (*place != last) {
            ++*place;
            return text;
        }
        *place = first;
    }
    return carry + text;
}

bool is_there(const fs::path& path) {
    std::error_code ignored;
    return fs::exists(path, ignored);
}

/// "revision = "B" in the job file", or what to do where no revision follows.
std::string advice(const fs::path& packet, const std::string& revision) {
    auto next = next_revision(revision);
    while (next && is_there(kept_path(packet, *next))) next = next_revision(*next);
    return next ? fmt::format("write revision = \"{}\" in the job file", *next)
                : "write another revision in the job file";
}

/// The record of a whole packet; none of a file that carries none.
std::optional<Filed> read(const fs::path& packet, const std::string& bytes) {
    output::PacketContents contents;
    try {
        contents = output::read_packet(bytes);
    } catch (const std::runtime_error&) { return {}; }
    if (!contents.ours || contents.files.empty()) return {};
    if (!output::seal_holds(bytes)) refuse("was changed after it was written");
    Filed filed = cli::filed(contents.files, packet.string());
    if (!filed.record.part.whole()) return {};
    return filed;
}

void require_unchanged(const fs::path& packet, const Inputs& inputs, const Planned& now, const fs::path& home) {
    const std::optional<Planned> before = planned_quietly(inputs);
    const std::string& revision = now.plan.header.revision;
    if (!before)
        refuse(
            fmt::format("{} is revision {} of this job, whose job file this version of kerfpacket cannot read; {}, or "
                        "choose another place with --out",
                        packet.string(), revision, advice(packet, revision)));
    if (before->job_text == now.job_text) return;
    refuse(fmt::format(
        "{} is revision {} of this job, and the job has changed since:\n    {}\n{}, or choose another "
        "place with --out",
        packet.string(), revision, fmt::join(differences(*before, now, home), "\n    "), advice(packet, revision)));
}

}  // namespace

std::optional<std::string> next_revision(std::string_view revision) {
    const auto all = [&](char first, char last) {
        return !revision.empty() &&
               std::all_of(revision.begin(), revision.end(), [&](char c) { return first <= c && c <= last; });
    };
    // More letters are a word.
    const bool letters = revision.size() <= 2;
    if (letters && all('A', 'Z')) return counted_on(std::string(revision), 'A', 'Z', 'A');
    if (letters && all('a', 'z')) return counted_on(std::string(revision), 'a', 'z', 'a');
    if (all('0', '9')) return counted_on(std::string(revision), '0', '9', '1');
    return std::nullopt;
}

fs::path kept_path(const fs::path& packet, const std::string& revision) {
    std::string plain = revision;
    std::replace_if(
        plain.begin(), plain.end(), [](char c) { return c == '/' || c == '\\' || c == ':' || c == ' '; }, '-');
    return packet.parent_path() /
           fmt::format("{}-rev-{}{}", packet.stem().string(), plain, packet.extension().string());
}

void require_no_packet(const fs::path& target) {
    std::error_code ignored;
    if (!fs::is_regular_file(target, ignored)) return;
    std::optional<Filed> filed;
    try {
        filed = read(target, output::load_packet(target));
    } catch (const std::runtime_error&) { return; }
    if (filed)
        refuse(fmt::format("{} is the packet of job {}, revision {}; choose another place with --out", target.string(),
                           filed->statement.number, filed->statement.revision));
}

std::optional<Standing> standing(const fs::path& packet, const Planned& now, bool force, const fs::path& home) {
    std::error_code ignored;
    if (!fs::is_regular_file(packet, ignored)) return {};
    std::string bytes;
    std::optional<Filed> filed;
    try {
        bytes = output::load_packet(packet);
        filed = read(packet, bytes);
    } catch (const std::runtime_error& told) {
        if (!force)
            refuse(fmt::format("{} {}; \"kerfpacket verify\" tells more, --force builds all the same", packet.string(),
                               told.what()));
    }
    if (!filed) return {};
    const Statement& old = filed->statement;
    const job::Header& header = now.plan.header;
    if (old.number != header.number)
        refuse(fmt::format("{} is the packet of another job, {}; choose another place with --out", packet.string(),
                           old.number));
    if (old.revision == header.revision) {
        require_unchanged(packet, filed->record.inputs, now, home);
        return Standing{std::move(bytes), old.revision, true, std::move(filed->record.previous)};
    }
    if (is_there(kept_path(packet, header.revision)))
        refuse(fmt::format("revision {} was printed before and is kept as {}; {} is revision {}: {}", header.revision,
                           kept_path(packet, header.revision).string(), packet.string(), old.revision,
                           advice(packet, old.revision)));
    return Standing{std::move(bytes), old.revision, false, std::move(filed->record.inputs)};
}

}  // namespace kerfpacket::cli
