#pragma once
// Small helpers for telling what is wrong, and with how many.

#include <cstddef>
#include <string>

#include "cli/inputs.h"
#include "fonts/faces.h"
#include "job/read.h"

namespace kerfpacket::cli {

bool has_error(const job::Diagnostics& diagnostics);

/// Where in the job file characters stand that no face can print, all of them; without a place where `missing` came
/// from elsewhere.
job::Diagnostics unprintable(const fonts::MissingCharacter& missing, const fonts::Faces& faces,
                             const job::Source& source);

/// Prints the job on other paper than it says: all of it on a sheet; on a roll the strips and, where it is wide enough,
/// the templates. Throws std::runtime_error for paper that is not known.
void use_media(job::Job& job, const std::string& name);
/// The paper that --media names; throws as `use_media`.
job::Media known_media(const std::string& name);
/// The units that --units names, or those of the paper's own name where it names none.
measure::Unit units_of(const std::string& units, const job::Media& media);
/// The job with what the command line puts in place of its own; the fingerprint follows. Throws as `use_media`.
job::Reading read_as_printed(const job::Source& source, const job::Shop& shop, const PrintChoice& print);

/// A word as a shell takes it: in single quotes where it needs them.
std::string as_typed(const std::string& word);

/// "1 page", "12 pages".
std::string counted(std::size_t number, const std::string& noun);

}  // namespace kerfpacket::cli
