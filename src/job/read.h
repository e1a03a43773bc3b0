#pragma once
// Job file text in, Job out, with every mistake that can be told from the text.

#include <filesystem>
#include <string>

#include <tl/expected.hpp>

#include "job/job.h"

namespace kerfpacket::job {

/// What was read. `job` holds the pieces of which every value was read, be there keys beside them that nobody knows, so
/// that later stages can look for further mistakes in the same run; it is fit to print only when `diagnostics` holds no
/// error. `complete` is false when the head of the job (job, saw, printer) could not be read, so that nothing after it
/// can be judged.
struct Reading {
    Job job;
    Diagnostics diagnostics;
    bool complete = false;
};

/// Reads a file into memory: refuses a missing file, a directory, more than 1 MB, text that is not UTF-8, a zero
/// byte, each with a plain message. A UTF-8 byte order mark is dropped.
tl::expected<Source, Diagnostic> load(const std::filesystem::path& file);

Reading read_job(const Source& source);

/// The job as canonical text: fixed key order, lengths in millimetres, defaults written out, no comments, no
/// positions. Two files with the same meaning have the same text.
std::string normalised(const Job& job);

/// First 8 hex digits of the SHA-256 of `normalised`.
std::string fingerprint(const Job& job);

}  // namespace kerfpacket::job
