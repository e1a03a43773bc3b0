#pragma once
// The program run on a file that may hurt, and what it took.

#include <gtest/gtest.h>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <iostream>
#include <stdexcept>

#include "support/program.h"

namespace kerfpacket::tests {

/// What the program took at most: of memory for itself or a child of its, and of the processor for all.
inline constexpr double most_megabytes = 700;
inline constexpr double most_seconds = 15;

struct Ending {
    int status = -1;
    std::string out, err;
    double megabytes = 0;
    double seconds = 0;
};

/// The program itself with these words.
inline Ending ending_of(std::vector<std::string> words) {
    const Folder said;
    const std::string out = (said / "out").string(), err = (said / "err").string();
    std::cout.flush();  // or the child would say it again
    const pid_t child = fork();
    if (child == 0) {
        if (freopen(out.c_str(), "w", stdout) == nullptr || freopen(err.c_str(), "w", stderr) == nullptr) _exit(9);
        words.insert(words.begin(), "kerfpacket");
        std::vector<char*> arguments;
        for (std::string& word : words) arguments.push_back(word.data());
        arguments.push_back(nullptr);
        execv(KERFPACKET_PROGRAM, arguments.data());
        _exit(9);
    }
    int status = 0;
    rusage used{};
    if (wait4(child, &status, 0, &used) != child) throw std::runtime_error("the program could not be waited for");
    const auto seconds = [](const timeval& time) {
        return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
    };
    Ending run;
    run.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    run.out = slurp(out);
    run.err = slurp(err);
    run.megabytes = static_cast<double>(used.ru_maxrss) / 1024;  // Linux counts kilobytes
    run.seconds = seconds(used.ru_utime) + seconds(used.ru_stime);
    return run;
}

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
