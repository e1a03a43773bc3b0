#pragma once
// Which part of a packet is printed again, as the command line says it.

#include <optional>
#include <string>
#include <vector>

#include "sheets/packet.h"

namespace kerfpacket::cli {

struct PartChoice {
    std::vector<std::string> only;  ///< kinds of sheets
    std::string pages;              ///< "7,9-12"; empty: all
    std::optional<int> from_cut;
    std::optional<int> strip;

    bool whole() const { return only.empty() && pages.empty() && !from_cut && !strip; }
};

/// Throws std::runtime_error, in words about the option, when a sheet is unknown or the pages cannot be read.
sheets::Part part_of(const PartChoice& choice, const std::vector<std::string>& kinds);

/// What to say when nothing of the packet is in the part: which option asks for what is not there.
std::string nothing_left(const PartChoice& choice);

}  // namespace kerfpacket::cli
