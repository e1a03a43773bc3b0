#pragma once
// Revisions: the one that follows, and whether a new packet may take the place of the one that stands there.

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "cli/found.h"
#include "cli/street.h"
#include "disk/filing.h"

namespace kerfpacket::cli {

/// The revision after this one: "A" -> "B", "Z" -> "AA", "az" -> "ba", "09" -> "10"; none after one that is neither
/// one or two letters of one size nor digits.
std::optional<std::string> next_revision(std::string_view revision);

/// Where the packet of a revision is kept once the next has taken its place: "arch-rev-A.pdf" for "arch.pdf".
/// Signs that some disk takes for its own are written as %XX, so that no two revisions share a name.
std::filesystem::path kept_path(const std::filesystem::path& packet, const std::string& revision);

/// A whole packet that stands where the new one goes, or would go were it whole.
struct Standing {
    std::string revision;
    bool same_revision = false;
    std::optional<Inputs> previous;  ///< what the new packet carries of the revision before it
};

/// The packet of an earlier run, if one stands there; none where nothing stands, or a part, or what is not ours. Throws
/// std::runtime_error, in words about what to do, when the new packet may not take its place: it is of another job; it
/// has the same revision, or one that was kept has, and the job has changed, told with what changed and the next
/// revision; the revision was kept before; it was changed after it was written, unless `force`.
std::optional<Standing> standing(const Found& there, const Planned& now, bool force, const std::filesystem::path& home);

/// Adds what keeps the packet of the revision before under its own name. Throws std::runtime_error where something else
/// has that name.
void keep(const Found& there, const Standing& old, disk::Filing& filing);

}  // namespace kerfpacket::cli
