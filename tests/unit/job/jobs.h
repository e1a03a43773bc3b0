#pragma once
// Job texts around one opening or one wall, for the tests of the reader. All invented.

#include <string>

#include <gtest/gtest.h>

#include "job/read.h"

namespace kerfpacket::job::tests {

inline std::string head() {
    return "[job]\nnumber = \"K-71\"\ntitle = \"Ferry Steps\"\nrevision = \"A\"\ndate = 2026-06-11\nunits = \"in\"\n"
           "[saw]\nblade_diameter = \"10 in\"\nkerf = 0.126\n";
}

/// `keys`: the lines of [[opening]] after its id; `tables`: what follows the liner.
inline std::string opening_text(std::string keys, std::string tables = "") {
    return head() + "[[opening]]\nid = \"A\"\n" + std::move(keys) +
           "\ndepth = \"5 in\"\n[opening.liner]\nmaterial = \"mdf\"\nthickness = \"5/8 in\"\n" + std::move(tables);
}

inline std::string wall_text(std::string keys, std::string tables = "") {
    return head() + "[[wall]]\nid = \"B\"\nside = \"concave\"\n" + std::move(keys) +
           "\n[wall.board]\nmaterial = \"mdf\"\nthickness = \"5/8 in\"\nwidth = \"5 in\"\n" + std::move(tables);
}

inline Job read_well(const std::string& text) {
    const Source source{"job.toml", text};
    const Reading reading = read_job(source);
    EXPECT_EQ(render(reading.diagnostics, source), "");
    return reading.job;
}

inline Opening read_opening(std::string keys, std::string tables = "") {
    const Job job = read_well(opening_text(std::move(keys), std::move(tables)));
    return job.openings.empty() ? Opening{} : job.openings.front();
}

inline Wall read_wall(std::string keys, std::string tables = "") {
    const Job job = read_well(wall_text(std::move(keys), std::move(tables)));
    return job.walls.empty() ? Wall{} : job.walls.front();
}

/// The one message of a job with one mistake.
inline std::string only_mistake(const std::string& text) {
    const auto found = read_job({"job.toml", text}).diagnostics;
    EXPECT_EQ(found.size(), 1U);
    return found.empty() ? std::string() : std::string(found.front().message);
}

}  // namespace kerfpacket::job::tests
