#pragma once
// The program run on a file that may hurt, and what it took.

#include <gtest/gtest.h>

#include "support/ending.h"

namespace kerfpacket::tests {

/// What the program took at most: of memory for itself or a child of its, and of the processor for all.
inline constexpr double most_megabytes = 700;
inline constexpr double most_seconds = 15;

/// The program on a file in a folder of its own, where nothing may be left.
inline Ending run_on(const std::string& bytes, std::vector<std::string> command = {"verify"}) {
    const Folder folder;
    const std::string file = (folder / "file.pdf").string();
    spill(file, bytes);
    command.push_back(file);
    Ending run = ending_of(std::move(command));
    EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()), 1);
    EXPECT_TRUE(slurp(file) == bytes);
    return run;
}

}  // namespace kerfpacket::tests
