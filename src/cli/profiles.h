#pragma once
// Printers that were measured, each a file in the user's settings.

#include <filesystem>
#include <string>

#include "job/job.h"

namespace kerfpacket::cli {

/// The file of a profile; throws std::runtime_error when the system tells no folder for settings.
std::filesystem::path profile_file(const std::string& name);

/// Reads the profiles that the job's printer names. One that is missing or wrong is told, with the place in the job
/// file that names it.
job::Diagnostics read_profiles(job::Printer& printer);

}  // namespace kerfpacket::cli
