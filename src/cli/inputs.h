#pragma once
// What a packet is made from, as texts, wherever they were kept: on the disk or in a packet.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "cli/part.h"
#include "fonts/word_file.h"
#include "job/diagnostics.h"

namespace kerfpacket::cli {

/// What the command line puts in place of the job's own.
struct PrintChoice {
    std::string media;     ///< replaces the job's paper; empty: the job's own
    bool half = false;     ///< half templates wherever the two halves are alike
    std::string language;  ///< of the sheets; empty: the job's own
};

/// Which job, and how it is printed.
struct JobChoice {
    std::filesystem::path file;
    PrintChoice print{};
    std::filesystem::path shop{};  ///< the shop file; empty: where one usually lies
    bool strict = false;           ///< one piece that cannot be made is an error of the whole job

    /// The job comes by the standard input: it has no name that a packet could be filed under.
    bool from_input() const { return file == "-"; }
};

/// The file of a printer that the job or the shop names, or why there is none.
struct ProfileText {
    std::string name;
    tl::expected<job::Source, job::Diagnostic> source;
};

/// All that decides what stands on the sheets, but for the program's own words and faces. From here on a job of the
/// disk and one of a packet go the same street.
struct Inputs {
    job::Source job;
    std::optional<job::Source> shop;
    std::vector<ProfileText> profiles;   ///< in order of name, each once
    std::vector<fonts::WordFile> words;  ///< the shop's own
    PrintChoice print;
};

/// What a packet carries so that it can be made again.
struct Record {
    Inputs inputs;
    PartChoice part;
    std::optional<Inputs> previous;  ///< of the revision before, where there was one
};

}  // namespace kerfpacket::cli
