#pragma once
// Blank measuring forms.

#include <filesystem>
#include <string>

#include "cli/console.h"

namespace kerfpacket::cli {

struct FieldSheetChoice {
    std::string shape;  ///< "arch", "wall" or "ordinates"; empty: all three
    std::string media = "na_letter_8.5x11in";
    std::string units;  ///< "in" or "mm"; empty: as the paper's own name has it
    std::string language = "en";
    std::filesystem::path out = "field-sheets.pdf";
    bool force = false;  ///< replace a file that is not ours
};

Status field_sheet(const FieldSheetChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
