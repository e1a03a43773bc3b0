#pragma once
// A packet on its way to a printer through the filters of CUPS, as PWG raster.

#include <filesystem>
#include <string>
#include <vector>

#include "print/raster.h"

namespace kerfpacket::tests {

/// Which of the filters draws the pages.
enum class CupsFilter { gstoraster, pdftoraster, mupdftoraster };
const char* name_of(CupsFilter filter);

/// All pages as the printer gets them, 600 dpi, grey, with print-scaling "none", on paper of this PWG 5101.1 name, or
/// of a size of its own, "Custom.WIDTHxHEIGHTmm". A page that lies across the paper comes turned, as it would be fed.
/// Throws with what a filter said when it fails.
std::vector<Raster> through_cups(CupsFilter filter, const std::filesystem::path& pdf, const std::string& media);

}  // namespace kerfpacket::tests
