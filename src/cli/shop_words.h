#pragma once
// A shop's own words, as text: what stands in the folder that the shop file names.

#include <vector>

#include "cli/shop.h"
#include "fonts/word_file.h"
#include "job/job.h"

namespace kerfpacket::cli {

/// The files of the languages that the job is printed in; none where the shop file names no folder. Throws
/// std::runtime_error when the folder or a file cannot be read, or holds what is no language.
std::vector<fonts::WordFile> read_shop_words(const ShopFile& shop, const job::Header& header);

}  // namespace kerfpacket::cli
