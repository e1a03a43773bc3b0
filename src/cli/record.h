#pragma once
// What a packet is made from, as the files that travel in it, and back.

#include <cstddef>
#include <string>
#include <vector>

#include "cli/inputs.h"
#include "output/packet_reader.h"
#include "output/pdf.h"
#include "plan/plan.h"

namespace kerfpacket::cli {

/// What a packet says of itself.
struct Statement {
    std::string version;  ///< of the program that wrote it
    std::string number;
    std::string title;
    std::string revision;
    std::string fingerprint;
    std::size_t pages = 0;
};

/// What this program says of a packet that it writes.
Statement statement_of(const plan::Plan& plan, std::size_t pages);

/// The job file is the source of the packet, the others are data. Files of the revision before have "previous." in
/// front of their names.
std::vector<output::Attachment> attachments_of(const Record& record, const Statement& statement);

/// A packet read back.
struct Filed {
    Record record;
    Statement statement;
};

/// Throws output::Refusal, "is ...", in plain words, where these are not the files of a packet: one is missing, one is
/// none of a packet's, one cannot be read; std::runtime_error of a packet that a later version wrote. `packet` is its
/// name, and stands before theirs in messages.
Filed filed(const std::vector<output::EmbeddedFile>& files, const std::string& packet);

}  // namespace kerfpacket::cli
