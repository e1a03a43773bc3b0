#pragma once
// A form that somebody filled in, read back. It comes from any viewer, and may be anything.

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

#include "output/foreign_pdf.h"

namespace kerfpacket::output {

/// The largest form: photos are stuck on some.
inline constexpr std::size_t most_form_bytes = 32U << 20U;

struct FilledField {
    std::string name;   ///< whole, its parts joined by full stops
    std::string tip;    ///< what belongs there, as the form tells it; may be empty
    std::string value;  ///< text, or the word of the box that is ticked; empty where nothing was filled in
};

struct FilledForm {
    std::vector<FilledField> fields;  ///< in the order of the form
    bool drawn_over = false;          ///< somebody drew or wrote on its pages instead
};

/// The bytes of a file. Throws disk::Failure when it is no file or cannot be read, TooLarge.
std::string load_form(const std::filesystem::path& file);

/// Reads the fields of a PDF in this process, without any order of the viewer's: no script is run, nothing drawn is
/// looked at. Throws Refusal in plain words: no PDF, damaged, locked, more fields than any form has.
FilledForm parse_form(const std::string& bytes);

/// The same in a process of its own, with limits, as `read_packet` has it.
FilledForm read_form(const std::string& bytes, const std::filesystem::path& file);

}  // namespace kerfpacket::output
