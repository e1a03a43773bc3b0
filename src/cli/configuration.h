#pragma once
// Where the user's settings are kept.

#include <filesystem>

namespace kerfpacket::cli {

/// kerfpacket's folder among the user's settings; empty when the system does not tell.
std::filesystem::path configuration_folder();

}  // namespace kerfpacket::cli
