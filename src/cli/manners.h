#pragma once
// What all commands have in common on the command line: how much is told and how, examples, slips of options.

#include <string>
#include <vector>

#include "cli/console.h"

namespace CLI {
class App;
}

namespace kerfpacket::cli {

struct MannersChoice {
    bool quiet = false;
    std::string colour = "auto";  ///< or "always", "never"
};

/// Adds those options to every command, and examples to the end of its help. Call it when all commands stand.
void add_manners(CLI::App& app, MannersChoice& choice);

/// "auto" colours what a person reads on a terminal that can, unless NO_COLOR is set to anything (no-color.org).
Manners manners(const MannersChoice& choice, bool watched);

/// "did you mean --shop?" for the first option that the command does not have; empty where none is near.
std::string near_option(const CLI::App& app, const std::vector<std::string>& arguments);

}  // namespace kerfpacket::cli
