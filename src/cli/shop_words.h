#pragma once
// A shop's own words, as text: what stands in the folder that the shop file names.

#include <string>
#include <vector>

#include "fonts/word_file.h"
#include "job/job.h"

namespace kerfpacket::cli {

/// The files of the languages that the job is printed in, from the folder that stands beside the shop file. Throws
/// std::runtime_error when the folder or a file cannot be read, or holds what is no language.
std::vector<fonts::WordFile> read_shop_words(const job::Source& shop, const std::string& folder,
                                             const job::Header& header);

}  // namespace kerfpacket::cli
