#pragma once
// Job file text in, Job out, with every mistake that can be told from the text.

#include <filesystem>
#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "job/job.h"
#include "job/shop.h"
#include "job/values.h"

namespace kerfpacket::job {

/// What was read. `job` holds the pieces of which every value was read, be there keys beside them that nobody knows, so
/// that later stages can look for further mistakes in the same run; it is fit to print only when `diagnostics` holds no
/// error. `complete` is false when the head of the job (job, saw, printer, materials) or something of the shop file
/// could not be read, so that nothing after it can be judged.
struct Reading {
    Job job;
    Beside beside;
    Diagnostics diagnostics;
    bool complete = false;
    std::vector<Sourced<std::string>> materials;  ///< that boards name, whatever else is wrong with their pieces
    std::vector<std::string> own_materials;       ///< names of the job's and the shop's, whatever else is wrong there
};

/// A kind of file that is read, for messages: its name and what it holds.
struct FileKind {
    std::string_view name;
    std::string_view holds;
};
inline constexpr FileKind job_file{"job file", "[job], [saw] and at least one [[opening]] or [[wall]]"};
inline constexpr FileKind shop_file{"shop file", "[saw], [printer], [stock], [rates], [[material]] or [[trial]]"};

/// Reads a file into memory: refuses a missing file, a directory, more than 1 MB, text that is not UTF-8, a zero
/// byte, each with a plain message. A UTF-8 byte order mark is dropped.
tl::expected<Source, Diagnostic> load(const std::filesystem::path& file, const FileKind& kind = job_file);

/// The same of a job that comes by the standard input; in messages it has that name.
tl::expected<Source, Diagnostic> load_input();

/// The same judgement of a text that is in memory already.
tl::expected<Source, Diagnostic> checked(std::string name, std::string text, const FileKind& kind);

/// What the job leaves out of [saw], [printer] and [stock] is the shop's, key by key; so is a material that it does not
/// name. A job that names another blade gives the kerf of that blade as well.
Reading read_job(const Source& source, const Shop& shop = {});

/// The job in canonical form: fixed key order, lengths in millimetres, defaults written out, no comments, no positions.
/// Two files with the same meaning have the same text and the same values.
Canonical canonical(const Job& job);
/// Its text alone.
std::string normalised(const Job& job);

/// First 8 hex digits of the SHA-256 of `normalised`.
std::string fingerprint(const Job& job);

}  // namespace kerfpacket::job
