#pragma once
// What libharu cannot say or says wrongly, put right by libqpdf.

#include <string>
#include <vector>

#include "output/haru.h"
#include "page/document.h"

namespace kerfpacket::output {

/// Takes libharu's file and gives the one that ships: viewer preferences (never scale), page labels, language, title,
/// dates from the job, fonts whose text can be copied out. Throws std::runtime_error in plain words.
std::string finish_pdf(const std::string& raw, const page::Document& document, const std::vector<EmbeddedFont>& fonts);

}  // namespace kerfpacket::output
