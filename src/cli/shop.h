#pragma once
// The shop file: which one counts, and what it says.

#include "cli/build.h"
#include "job/shop.h"

namespace kerfpacket::cli {

/// A shop file that was read, or what was wrong with it; nothing at all where there is none.
struct ShopFile {
    job::Source source;
    job::ShopReading reading;
};

/// Reads the shop file that the choice names; else shop.toml beside the job file; else kerfpacket/shop.toml in the
/// user's configuration folder. Only a file that was named must be there.
ShopFile read_shop_file(const JobChoice& choice);

}  // namespace kerfpacket::cli
