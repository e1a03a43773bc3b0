#pragma once
// The file that a mistyped name was meant for.

#include <string>
#include <string_view>

#include "disk/calls.h"

namespace kerfpacket::disk {

/// Where no `file` is: the path of one beside that place whose name is near, or is `file` with `ending` (".toml"); only
/// files of that ending count. Empty where none is near, or the folder cannot be read: it is a guess, no answer.
std::string near_name(const fs::path& file, std::string_view ending);

}  // namespace kerfpacket::disk
