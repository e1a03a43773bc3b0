#pragma once
// What was measured on site to check the figures by.

#include <string>
#include <vector>

#include "cli/start/sheet_fields.h"
#include "fonts/words.h"

namespace kerfpacket::cli {

/// Where they do not fit: the diagonals with span and legs (Pythagoras), and the rises of both halves with each other.
/// What is not written, or not read, is not judged.
std::vector<std::string> sheet_doubts(const SheetPage& page, const fonts::Words& words);

}  // namespace kerfpacket::cli
