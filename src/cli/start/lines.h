#pragma once
// Where the answers come from.

#include <functional>
#include <optional>
#include <string>

#include "cli/console.h"

namespace kerfpacket::cli {

/// Asks for a line behind a prompt; none at the end of what there is.
using NextLine = std::function<std::optional<std::string>(const std::string& prompt)>;

/// The standard input, each answer told again behind its question: for scripts. Each of at most 4000 characters.
NextLine plain_lines(Console& console);

/// A person at a terminal, with line editing and history; a signal gives the terminal back as it was.
NextLine terminal_lines();

/// Whether standard input and output are a person's.
bool at_terminal();

}  // namespace kerfpacket::cli
