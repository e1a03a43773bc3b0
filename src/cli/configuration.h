#pragma once
// Where the user's own settings are kept.

#include <filesystem>

namespace kerfpacket::cli {

/// kerfpacket's folder in the user's configuration folder, whether it is there or not; empty when the system does not
/// tell. Source: XDG Base Directory Specification, which lets no relative folder count.
std::filesystem::path configuration_folder();

}  // namespace kerfpacket::cli
