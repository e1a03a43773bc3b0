#pragma once
// What a shop may say in its own words, and what it may not: cautions stay, names in braces stay, layouts hold.

#include <string>
#include <vector>

#include "fonts/word_file.h"

namespace kerfpacket::fonts {

/// At most so many lines of a shop's name on the cover, and of rules on each card.
inline constexpr std::size_t most_name_lines = 3;
inline constexpr std::size_t most_rules = 4;
/// Characters of a line of either: so many fit at the smallest type whatever they are.
inline constexpr std::size_t longest_line = 72;

/// A shop's words of a language. Throws one std::runtime_error that tells every mistake, a line each: "FILE:LINE: KEY
/// what is wrong".
std::vector<WordEntry> shop_entries(const std::vector<WordFile>& shop, const std::string& language,
                                    const WordEntries& program);

}  // namespace kerfpacket::fonts
