#pragma once
// The street from texts to a packet, the same for a job of the disk and for one that a packet carries.

#include <optional>
#include <string>
#include <vector>

#include "cli/console.h"
#include "cli/inputs.h"
#include "cli/resources.h"
#include "job/beside.h"
#include "job/values.h"
#include "page/folded.h"
#include "plan/plan.h"

namespace kerfpacket::cli {

/// A job that can be printed, and the texts it came from.
struct Planned {
    Inputs inputs;
    job::Canonical canonical;  ///< what the job and the shop file come to
    plan::Plan plan;
    job::Beside beside{};          ///< labels and rates
    Status status = Status::done;  ///< done, or cautions
};

/// Read, plan. Everything wrong with the job file and the shop file is told in one run; then there is no plan. Where it
/// is `strict`, neither is there one when a piece cannot be made.
std::optional<Planned> planned(const Inputs& inputs, Console& console, bool strict = false);
/// The same of what stands on the disk.
std::optional<Planned> planned(const JobChoice& choice, Console& console);

/// The sheets of a planned job. A character that no face can print is told, with its place in the job file; then
/// there is no packet. A change page is in it where it takes the place of a revision `before`.
std::optional<page::Document> laid_out(const Planned& planned, const sheets::Kit& kit, const sheets::Part& part,
                                       Console& console, const Planned* before = nullptr);

/// The plan of texts that a packet carries, with nothing told; none where this version of the program cannot make one.
std::optional<Planned> planned_quietly(const Inputs& inputs);

/// What changed from one to the other, a sentence for each opening and wall, in English. Throws as Resources does.
std::vector<std::string> differences(const Planned& before, const Planned& now, const std::filesystem::path& home);

/// A packet in memory.
struct Packet {
    std::string bytes;  ///< the PDF, its record in it
    std::size_t pages = 0;
    std::string sheets{};  ///< where it was asked for: a digest of all that stands on them
};

/// What a record says to print, of the plan of its inputs. Throws std::runtime_error, in words about the options, where
/// that is no page; nothing when a character cannot be printed, which is told.
std::optional<Packet> make_packet(const Record& record, const Planned& planned, Console& console,
                                  const std::filesystem::path& home, bool digest_sheets = false);

}  // namespace kerfpacket::cli
