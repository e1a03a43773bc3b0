#pragma once
// A printer that was measured, in a file of its own: how it is read, judged and written.

#include <optional>
#include <string>

#include "job/printer.h"
#include "job/read.h"

namespace kerfpacket::job {

inline constexpr FileKind profile_file{"printer profile", "name, feed, across, along and [margins]"};

/// A printer does not err by more: that is the print dialogue fitting the page to the paper. Judgement, no source.
inline constexpr double most_printer_error = 0.02;
/// True for a factor within that, to the 5 decimals of a profile's file.
bool is_printer_error(double factor);
/// What to switch off where a printer seems to err by more.
extern const std::string fit_to_page_hint;

struct ProfileReading {
    std::optional<Profile> profile;  ///< none when there are errors
    Diagnostics diagnostics;         ///< they point into the profile's file
};

/// Letters, digits and hyphens: what can be the name of a file anywhere.
bool is_profile_name(std::string_view name);

/// Reads the text of the profile that must have this name.
ProfileReading read_profile(const Source& source, std::string_view name);

/// The profile as such a text; read back it is the same profile, factors to 5 decimals.
std::string profile_text(const Profile& profile);

/// "0.40 % short", "0.20 % long", "true".
std::string printer_error(double factor);

}  // namespace kerfpacket::job
