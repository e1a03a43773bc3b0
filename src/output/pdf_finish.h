#pragma once
// What libharu cannot say or says wrongly, put right by libqpdf.

#include <string>
#include <vector>

#include "output/haru.h"
#include "output/pdf.h"
#include "page/document.h"
#include "page/form.h"

namespace kerfpacket::output {

/// A document as libharu wrote it.
struct Drawn {
    std::string bytes;
    std::vector<EmbeddedFont> fonts;
    std::vector<std::vector<std::size_t>> marks;  ///< of each page: the part that each marked run belongs to
};
Drawn draw_pdf(const page::Document& document, const fonts::Faces& faces);

/// What goes into the file besides the pages.
struct Extras {
    std::string colour_profile;  ///< an ICC profile of sRGB
    const std::vector<Attachment>& attachments;
    const page::Form* form = nullptr;  ///< what can be filled in, in the face below
    std::string form_face = {};        ///< a TrueType file
};

/// Takes libharu's file and gives the one that ships: viewer preferences (never scale), page labels, language, title,
/// dates from the job, fonts whose text can be copied out, structure, what PDF/A asks for. Throws std::runtime_error in
/// plain words.
std::string finish_pdf(const Drawn& drawn, const page::Document& document, const Extras& extras);

}  // namespace kerfpacket::output
