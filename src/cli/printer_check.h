#pragma once
// A printer measured: the page to print, and what was measured on it kept as a profile.

#include <filesystem>
#include <string>

#include "cli/console.h"
#include "job/media.h"
#include "job/printer.h"
#include "measure/fraction.h"

namespace kerfpacket::cli {

/// The page is written where no profile is named, else the profile is stored; the same of a label sheet (label_check).
struct PrinterCheckChoice {
    std::string media = "na_letter_8.5x11in";
    std::string units;  ///< "in" or "mm"; empty: as the paper's own name has it
    std::filesystem::path out = "printer-check.pdf";
    std::string profile;
    std::string first;                    ///< the edge that came out first: "top", "bottom", "left", "right"
    std::string level, upright;           ///< the bars as measured
    std::string diagonals;                ///< A to C and B to D, or empty
    std::string margins;                  ///< top, bottom, left, right, or empty: 1/4 in
    std::filesystem::path labels;         ///< a job or shop file whose label sheet is measured; then none of those
    std::string first_label, last_label;  ///< on it, a mark from the label's left edge and from its top edge
    std::string language = "en";
    bool force = false;
};

Status printer_check(const PrinterCheckChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
