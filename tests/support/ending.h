#pragma once
// The program run, and what it said and took.

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdio>
#include <iostream>
#include <stdexcept>

#include "support/program.h"

namespace kerfpacket::tests {

struct Ending {
    int status = -1;
    std::string out, err;
    double megabytes = 0;
    double seconds = 0;       ///< of the processor
    double wall_seconds = 0;  ///< of the clock
};

/// The program itself with these words.
inline Ending ending_of(std::vector<std::string> words) {
    const Folder said;
    const std::string out = (said / "out").string(), err = (said / "err").string();
    const auto start = std::chrono::steady_clock::now();
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
    const std::chrono::duration<double> wall = std::chrono::steady_clock::now() - start;
    const auto seconds = [](const timeval& time) {
        return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
    };
    Ending run;
    run.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    run.out = slurp(out);
    run.err = slurp(err);
    run.megabytes = static_cast<double>(used.ru_maxrss) / 1024;  // Linux counts kilobytes
    run.seconds = seconds(used.ru_utime) + seconds(used.ru_stime);
    run.wall_seconds = wall.count();
    return run;
}

}  // namespace kerfpacket::tests
