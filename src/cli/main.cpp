#include <unistd.h>

#include <iostream>
#include <string>

#include "cli/resources.h"
#include "cli/run.h"
#include "disk/calls.h"
#include "disk/process.h"

int main(int argc, char** argv) {
    using namespace kerfpacket;
    disk::settle_process();
    cli::Console console(std::cout, std::cerr, isatty(STDERR_FILENO) != 0);
    try {
        return cli::run({argv + (argc > 0 ? 1 : 0), argv + argc}, console, cli::home_of(cli::program_folder()));
    } catch (const disk::Failure& failure) {
        // Only of the folder: run throws nothing.
        console.message("kerfpacket: " + std::string(failure.what()) + "\n");
        return static_cast<int>(cli::Status::errors);
    }
}
