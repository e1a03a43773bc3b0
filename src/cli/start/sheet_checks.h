#pragma once
// What was measured on site to check the figures by.

#include <string>
#include <vector>

#include "cli/start/sheet_fields.h"
#include "fonts/words.h"

namespace kerfpacket::cli {

/// Where they do not fit: the diagonals with span and legs (Pythagoras); the rises of both halves with each other, and
/// with the head that was ticked or the arc of chord and rise; the depths of a jamb with that at its crown; a radius
/// with chord and rise. What is not written, or not read, is not judged.
std::vector<std::string> sheet_doubts(const SheetPage& page, const fonts::Words& words);

}  // namespace kerfpacket::cli
