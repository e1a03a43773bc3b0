#pragma once
// Printers that were measured: their files in the user's configuration folder.

#include <filesystem>
#include <string>
#include <vector>

#include "cli/console.h"
#include "cli/inputs.h"
#include "job/printer.h"
#include "job/read.h"

namespace kerfpacket::cli {

/// The file of the printer of this name; what is wrong, and what else is there, when it cannot be read. Throws
/// disk::Failure where the disk does not tell whether it is there.
ProfileText load_profile(const std::string& name);

/// Puts the measured printers that the job names into it. One that is not there, or is faulty, becomes an error of the
/// job at the place of the name; what is wrong in the profile's own file is told at once.
void use_profiles(job::Reading& reading, const std::vector<ProfileText>& profiles, Console& console);

/// Writes the profile under its name and returns the file. Throws std::runtime_error in plain words when one stands
/// there and is not to be replaced, or when it cannot be written.
std::filesystem::path store_profile(const job::Profile& profile, bool force, Console& console);

}  // namespace kerfpacket::cli
