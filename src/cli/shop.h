#pragma once
// Which shop file counts.

#include "cli/inputs.h"

namespace kerfpacket::cli {

/// The shop file that the choice names; else shop.toml beside the job file; else kerfpacket/shop.toml in the user's
/// configuration folder; empty where there is none. Only a file that was named must be there;
/// but what is there must be a file that can be read. Throws disk::Failure where the disk does not tell.
std::filesystem::path shop_path(const JobChoice& choice);

}  // namespace kerfpacket::cli
