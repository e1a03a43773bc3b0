#pragma once
// One run of the command line in this process, with its folder.

#include <sstream>
#include <string>
#include <vector>

#include "cli/run.h"
#include "support/program.h"

namespace kerfpacket::tests {

/// A small job that is ok: nothing to caution about. All invented.
inline const std::string good_job = R"([job]
number = "K-7"
title = "Mill Lane arch"
revision = "B"
date = 2026-05-04
units = "in"

[saw]
blade_diameter = "12 in"
kerf = 0.118

[printer]
media = "na_letter_8.5x11in"

[[opening]]
id = "A"
shape = "segmental"
span = "72 in"
rise = "6 in"
depth = "5-1/4 in"
[opening.liner]
material = "mdf"
thickness = "3/4 in"
trim = "3 in"
)";

/// The same on stock that is too short for it: a caution.
inline const std::string short_stock_job = good_job + "[stock]\nlengths = [\"5 ft\"]\n";

inline Outcome run_in_process(const std::vector<std::string>& words, const fs::path& home = KERFPACKET_BUILD_DIR) {
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    const int status = cli::run(words, console, home);
    return {status, out.str(), err.str()};
}

}  // namespace kerfpacket::tests
