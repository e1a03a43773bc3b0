#pragma once
// TOML text to a toml++ tree, with as many syntax mistakes as can be told in one run.

#include <set>
#include <string_view>

#include "job/diagnostics.h"
#include "text/toml.h"

namespace kerfpacket::job {

/// A tree and what could not be parsed. The values of `broken_lines` were given but could not be read: they are in
/// the tree as placeholders, and nobody should complain about them again.
struct Parsed {
    toml::table root;
    std::set<int> broken_lines;
    Diagnostics diagnostics;
    bool usable = false;  ///< false when a mistake hides the structure of the rest
};

Parsed parse(std::string_view text);
}  // namespace kerfpacket::job
