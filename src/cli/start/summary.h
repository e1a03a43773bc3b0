#pragma once
// What a piece would come to, in a few lines.

#include <string>

#include "job/shop.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::cli {

/// Kerfs, blank and verdict of the piece of this id, from the plan of that job, with its cautions.
std::string piece_summary(const std::string& job_text, const std::string& id, const job::Shop& shop,
                          const sheets::Kit& kit);

}  // namespace kerfpacket::cli
