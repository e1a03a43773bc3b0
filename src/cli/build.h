#pragma once
// The street from a job file to a packet, and the part of it that check and preview share.

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "cli/console.h"
#include "cli/part.h"
#include "job/diagnostics.h"
#include "plan/plan.h"
#include "sheets/packet.h"

namespace kerfpacket::cli {

/// Which job, and on what paper: `media` replaces the job's own when it is not empty.
struct JobChoice {
    std::filesystem::path file;
    std::string media;
    std::filesystem::path shop{};  ///< the shop file; empty: where one usually lies
    bool half = false;             ///< half templates wherever the two halves are alike
    std::string language{};        ///< of the sheets; empty: the job's own
};

/// A job that can be printed, and the texts it came from.
struct Planned {
    job::Source source;
    plan::Plan plan;
    std::vector<fonts::WordFile> shop_words;  ///< in place of the program's
    Status status = Status::done;             ///< done, or cautions
};

/// Load, read, plan. Everything wrong with the job file and the shop file is told in one run; then there is no plan.
std::optional<Planned> planned(const JobChoice& choice, Console& console);

/// The sheets of a planned job. A character that no face can print is told, with its place in the job file; then
/// there is no packet.
std::optional<page::Document> laid_out(const Planned& planned, const sheets::Kit& kit, const sheets::Part& part,
                                       Console& console);

struct BuildChoice {
    JobChoice job;
    PartChoice part;
    std::filesystem::path out;  ///< empty: the job file's name with ".pdf", "-part.pdf" for a part, beside the job file
    bool force = false;         ///< replace a file that is not a packet of ours; print weak links
};

Status build(const BuildChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
