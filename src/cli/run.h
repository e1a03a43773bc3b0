#pragma once
// The command line: which command, with which options, and how every failure is told.

#include <filesystem>
#include <string>
#include <vector>

#include "cli/console.h"

namespace kerfpacket::cli {

/// Runs one command. `home` is the folder in which templates/ and fonts/ stand. Never throws: failures become a
/// message and exit status 2.
int run(const std::vector<std::string>& arguments, Console& console, const std::filesystem::path& home);

/// The folder that the running program stands in; empty when the system does not tell.
std::filesystem::path program_folder();

}  // namespace kerfpacket::cli
