#include "cli/revision.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "disk/read.h"

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

bool is_there(const fs::path& path) { return disk::look(path).kind != disk::Kind::nothing; }

/// "revision = "B" in the job file", or what to do where no revision follows.
std::string advice(const fs::path& packet, const std::string& revision) {
    auto next = next_revision(revision);
    while (next && is_there(kept_path(packet, *next))) next = next_revision(*next);
    return next ? fmt::format("write revision = \"{}\" in the job file", *next)
                : "write another revision in the job file";
}

/// Throws unless the job still says what the packet of its revision was made from: `found`, which stands at `packet` or
/// is kept beside it.
void require_unchanged(const Found& found, const fs::path& packet, const Planned& now, const fs::path& home) {
    const std::optional<Planned> before = planned_quietly(found.filed->record.inputs);
    const std::string& revision = now.plan.header.revision;
    if (!before)
        refuse(
            fmt::format("{} is revision {} of this job, whose job file this version of kerfpacket cannot read; {}, or "
                        "choose another place with --out",
                        found.file.string(), revision, advice(packet, revision)));
    if (before->canonical.text == now.canonical.text) return;
    refuse(fmt::format(
        "{} is revision {} of this job, and the job has changed since:\n    {}\n{}, or choose another "
        "place with --out",
        found.file.string(), revision, fmt::join(differences(*before, now, home), "\n    "), advice(packet, revision)));
}

/// A revision that was kept is never printed with other figures, whatever stands where it was printed.
void require_kept_unchanged(const fs::path& packet, const Planned& now, bool force, const fs::path& home) {
    const job::Header& header = now.plan.header;
    const Found kept = found_at(kept_path(packet, header.revision));
    if (kept.ours && !kept.fault.empty() && !force)
        refuse(
            fmt::format("{}, where this revision was kept, {}; \"kerfpacket verify\" tells more, --force builds all "
                        "the same",
                        kept.file.string(), kept.fault));
    const Filed* filed = kept.whole();
    if (filed != nullptr && filed->statement.number == header.number) require_unchanged(kept, packet, now, home);
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
    std::string plain;
    for (const char c : revision) {
        // As in addresses (RFC 3986, 2.1), so that no two revisions share a name: "A/1" is "A%2F1", "A 1" is "A%201".
        const bool kept = std::string_view("/\\: %*?\"<>|").find(c) == std::string_view::npos;
        plain += kept ? std::string(1, c) : fmt::format("%{:02X}", static_cast<unsigned>(c));
    }
    return packet.parent_path() /
           fmt::format("{}-rev-{}{}", packet.stem().string(), plain, packet.extension().string());
}

std::optional<Standing> standing(const Found& there, const Planned& now, bool force, const fs::path& home) {
    const fs::path& packet = there.file;
    if (there.ours && !there.fault.empty() && !force)
        refuse(fmt::format("{} {}; \"kerfpacket verify\" tells more, --force builds all the same", packet.string(),
                           there.fault));
    const job::Header& header = now.plan.header;
    const Filed* filed = there.whole();
    if (filed != nullptr && filed->statement.number != header.number)
        refuse(fmt::format("{} is the packet of another job, {}; choose another place with --out", packet.string(),
                           filed->statement.number));
    if (filed == nullptr || filed->statement.revision == header.revision) {
        if (filed != nullptr) require_unchanged(there, packet, now, home);
        require_kept_unchanged(packet, now, force, home);
        if (filed == nullptr) return {};
        return Standing{header.revision, true, filed->record.previous};
    }
    const std::string& old = filed->statement.revision;
    if (is_there(kept_path(packet, header.revision)))
        refuse(fmt::format("revision {} was printed before and is kept as {}; {} is revision {}: {}", header.revision,
                           kept_path(packet, header.revision).string(), packet.string(), old, advice(packet, old)));
    return Standing{old, false, filed->record.inputs};
}

void keep(const Found& there, const Standing& old, disk::Filing& filing) {
    const fs::path kept = kept_path(there.file, old.revision);
    const Found before = found_at(kept);
    if (before.seen.kind == disk::Kind::nothing)
        return filing.add(kept, there.bytes, disk::Over::nothing, there.seen.mode);
    if (before.bytes != there.bytes)
        refuse(fmt::format("revision {} is to be kept as {}, where another file stands; move that away", old.revision,
                           kept.string()));
}

}  // namespace kerfpacket::cli
