#include "output/haru.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string_view>

#include <fmt/format.h>

#include "disk/calls.h"
#include "measure/require.h"

namespace kerfpacket::output {
namespace {

/// What few sheets say, so that each is one more in most files.
constexpr std::string_view rare_characters = "~^\\`{}@&$#;_";

}  // namespace

double rounded_points(Length value) {
    measure::require(value.finite(), "a coordinate in a PDF is finite");
    const double points = std::round(value.points() * 1000) / 1000;
    measure::require(std::abs(points) < 32767, "a coordinate in a PDF is under 32767 points");
    return points;
}

HaruDocument::HaruDocument() : document_(HPDF_New(&HaruDocument::record, &trouble_)) {
    if (document_ == nullptr) throw std::runtime_error("cannot start the PDF: not enough memory");
    HPDF_SetCompressionMode(get(), HPDF_COMP_ALL);
    HPDF_UseUTFEncodings(get());
    check("starting the PDF");
}

void HaruDocument::record(HPDF_STATUS error, HPDF_STATUS detail, void* trouble) {
    auto* first = static_cast<Trouble*>(trouble);
    if (first->error == 0) *first = {error, detail};
}

void HaruDocument::check(const char* doing) const {
    if (trouble_.error == 0) return;
    throw std::runtime_error(fmt::format("the PDF library failed while {} (libharu error 0x{:04X}, {})", doing,
                                         trouble_.error, trouble_.detail));
}

std::string HaruDocument::bytes() const {
    HPDF_SaveToStream(get());
    if (trouble_.error == HPDF_INVALID_OBJECT) throw FontOnABlockEnd();
    check("saving the PDF");
    std::string bytes(HPDF_GetStreamSize(get()), '\0');
    HPDF_ResetStream(get());
    auto size = static_cast<HPDF_UINT32>(bytes.size());
    HPDF_ReadFromStream(get(), reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);  // NOLINT(*-reinterpret-cast)
    check("saving the PDF");
    measure::require(size == bytes.size(), "libharu hands over the whole file");
    return bytes;
}

void HaruFonts::take_along(std::size_t count) {
    for (const auto& codings : loaded_)
        if (HPDF_Font font = codings.at(static_cast<std::size_t>(Coding::win_ansi)); font != nullptr)
            HPDF_Font_TextWidth(font, reinterpret_cast<const HPDF_BYTE*>(rare_characters.data()),  // NOLINT(*-cast)
                                static_cast<HPDF_UINT>(std::min(count, rare_characters.size())));
}

const char* HaruFonts::name_of(Face face) {
    const char*& name = names_.at(static_cast<std::size_t>(face));
    if (name == nullptr) {
        name = HPDF_LoadTTFontFromFile(document_.get(), faces_.file(face).c_str(), HPDF_TRUE);
        if (name == nullptr)
            throw disk::Failure(fmt::format("cannot read the font file {}", faces_.file(face).string()));
        document_.check("reading a font file");
        embedded_.push_back({face, name, faces_.cap_height(face)});
    }
    return name;
}

HPDF_Font HaruFonts::get(Face face, Coding coding) {
    HPDF_Font& font = loaded_.at(static_cast<std::size_t>(face)).at(static_cast<std::size_t>(coding));
    if (font == nullptr) {
        const char* encoding = coding == Coding::win_ansi ? "WinAnsiEncoding" : "UTF-8";
        font = HPDF_GetFont(document_.get(), name_of(face), encoding);
        document_.check("embedding a font");
    }
    return font;
}

}  // namespace kerfpacket::output
