#pragma once
// A packet read back: who wrote it, and the files that travel in it. It may be anything, from anywhere.

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

#include "output/foreign_pdf.h"

namespace kerfpacket::output {

/// The largest packet: a larger one is neither written nor read.
inline constexpr std::size_t most_packet_bytes = 64U << 20U;
/// As `job::load` has it for a file on the disk.
inline constexpr std::size_t most_embedded_bytes = 1'000'000;
inline constexpr std::size_t most_embedded_files = 256;

/// The keyword of a document of ours that can be filled in (ISO 32000-1, table 317).
inline constexpr const char* form_keyword = "form";

struct EmbeddedFile {
    std::string name;  ///< as it stands there: it may say anything
    std::string text;
};

struct PacketContents {
    bool ours = false;                ///< its producer is this program
    bool worked_on = false;           ///< its form holds a value, or something was added behind its end
    std::vector<EmbeddedFile> files;  ///< those associated with the document, in their order
};

/// The bytes of a file. Throws TooLarge, and disk::Failure when it is no file or cannot be read.
std::string load_packet(const std::filesystem::path& file);

/// Reads a PDF in this process. Throws Refusal in plain words: no PDF, damaged, encrypted, a file in it larger than a
/// job file can be.
PacketContents parse_packet(const std::string& bytes);

/// The same in a process of its own, so that what was made to take all memory, or to crash the reader, is refused. That
/// is a disk::Failure, as where no process can be had: `file` may be anything. It is only for the words.
PacketContents read_packet(const std::string& bytes, const std::filesystem::path& file);

}  // namespace kerfpacket::output
