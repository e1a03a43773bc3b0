#include "job/media.h"

#include <algorithm>

namespace kerfpacket::job {

using namespace measure::literals;

// Names and sizes: PWG 5101.1, Media Standardized Names; A4 and A3 also ISO 216.
const std::vector<Media>& all_media() {
    static const std::vector<Media> sheets = {
        {"na_letter_8.5x11in", "Letter 8-1/2 x 11 in", 8.5_in, 11_in},
        {"na_legal_8.5x14in", "Legal 8-1/2 x 14 in", 8.5_in, 14_in},
        {"na_ledger_11x17in", "Ledger 11 x 17 in", 11_in, 17_in},
        {"iso_a4_210x297mm", "A4 210 x 297 mm", 210_mm, 297_mm},
        {"iso_a3_297x420mm", "A3 297 x 420 mm", 297_mm, 420_mm},
    };
    return sheets;
}

std::optional<Media> find_media(std::string_view name) {
    const auto& sheets = all_media();
    const auto found = std::find_if(sheets.begin(), sheets.end(), [&](const Media& m) { return m.name == name; });
    if (found == sheets.end()) return std::nullopt;
    return *found;
}

}  // namespace kerfpacket::job
