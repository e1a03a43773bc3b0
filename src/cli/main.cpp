#include <unistd.h>

#include <iostream>

#include "cli/resources.h"
#include "cli/run.h"
#include "disk/process.h"

int main(int argc, char** argv) {
    kerfpacket::disk::settle_process();
    kerfpacket::cli::Console console(std::cout, std::cerr, isatty(STDERR_FILENO) != 0);
    return kerfpacket::cli::run({argv + (argc > 0 ? 1 : 0), argv + argc}, console,
                                kerfpacket::cli::home_of(kerfpacket::cli::program_folder()));
}
