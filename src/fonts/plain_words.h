#pragma once
// Files of words as nearly all are: read in a tenth of the time that a TOML parser takes, at every start.

#include <optional>
#include <vector>

#include "fonts/word_file.h"

namespace kerfpacket::fonts {

/// What `entries_of` finds in a file that holds nothing but tables with plain keys, and texts and lists of texts in
/// double quotes; in the order of the file. Nothing where anything else stands there, or anything that might be a
/// mistake: `entries_of` then says what.
std::optional<std::vector<WordEntry>> plain_entries(const WordFile& file);

}  // namespace kerfpacket::fonts
