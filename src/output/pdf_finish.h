#pragma once
// What libharu cannot say or says wrongly, put right by libqpdf.

#include <string>
#include <vector>

#include "output/haru.h"
#include "output/pdf.h"
#include "page/document.h"

namespace kerfpacket::output {

/// What goes into the file besides the pages.
struct Extras {
    const std::vector<EmbeddedFont>& fonts;
    std::string colour_profile;  ///< an ICC profile of sRGB
    const std::vector<Attachment>& attachments;
};

/// Takes libharu's file and gives the one that ships: viewer preferences (never scale), page labels, language, title,
/// dates from the job, fonts whose text can be copied out, what PDF/A asks for. Throws std::runtime_error in plain
/// words.
std::string finish_pdf(const std::string& raw, const page::Document& document, const Extras& extras);

}  // namespace kerfpacket::output
