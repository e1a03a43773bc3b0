#pragma once
// A measured printer as a file: what `printer-check` stores and `build` reads.

#include "job/job.h"

namespace kerfpacket::job {

/// What a printer may err and still be corrected, over true length. "Fit to page" errs more: Letter put on A4 without
/// its margins is 3 % off.
inline constexpr double most_printer_error = 0.02;

struct ProfileReading {
    Profile profile;
    Diagnostics diagnostics;  ///< they point into the profile
};

/// Reads the text of a profile; its name is that of its file.
ProfileReading read_profile(const Source& source, const std::string& name);

/// The profile as text that reads back the same.
std::string profile_text(const Profile& profile);

/// Whether a profile may be called so: letters, digits, spaces, "-" and "_", for it is a file's name.
bool is_profile_name(std::string_view name);

}  // namespace kerfpacket::job
