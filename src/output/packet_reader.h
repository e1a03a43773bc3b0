#pragma once
// A packet read back: who wrote it, and the files that travel in it. It may be anything, from anywhere.

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

namespace kerfpacket::output {

/// No packet comes near this.
inline constexpr std::size_t most_packet_bytes = 64U << 20U;
/// As `job::load` has it for a file on the disk.
inline constexpr std::size_t most_embedded_bytes = 1'000'000;
inline constexpr std::size_t most_embedded_files = 256;

struct EmbeddedFile {
    std::string name;  ///< as it stands there: it may say anything
    std::string text;
};

struct PacketContents {
    bool ours = false;                ///< its producer is this program
    std::vector<EmbeddedFile> files;  ///< those associated with the document, in their order
};

/// The bytes of a file. Throws std::runtime_error in plain words when it is no file, cannot be read or is larger than
/// any packet.
std::string load_packet(const std::filesystem::path& file);

/// Reads a PDF in this process. Throws std::runtime_error, "is ...", in plain words: no PDF, damaged, encrypted, a file
/// in it larger than a job file can be.
PacketContents parse_packet(const std::string& bytes);

/// The same in a process of its own, so that what was made to take all memory, or to crash the reader, is refused.
PacketContents read_packet(const std::string& bytes);

}  // namespace kerfpacket::output
