#include "bench/raw_haru.h"

#include <array>
#include <stdexcept>
#include <variant>

#include <hpdf.h>

namespace kerfpacket::bench {
namespace {

HPDF_REAL points(page::Length value) { return static_cast<HPDF_REAL>(value.points()); }

void trace(HPDF_Page page, const geom::Path& path) {
    HPDF_Page_MoveTo(page, points(path.start().x), points(path.start().y));
    for (const geom::Segment& segment : path.segments())
        if (segment.is_line()) HPDF_Page_LineTo(page, points(segment.to.x), points(segment.to.y));
        else
            for (const auto& [a, b, c] : geom::cubic_pieces(segment))
                HPDF_Page_CurveTo(page, points(a.x), points(a.y), points(b.x), points(b.y), points(c.x), points(c.y));
    if (path.closed()) HPDF_Page_ClosePath(page);
}

void draw(HPDF_Page page, const page::PathItem& item) {
    const HPDF_REAL grey = item.ink == page::Ink::white ? 1.0F : 0.0F;
    const std::array<HPDF_UINT16, 2> dashes{4, 3};
    HPDF_Page_SetLineWidth(page, points(item.width));
    HPDF_Page_SetDash(page, dashes.data(), item.dash == page::Dash::solid ? 0 : 2, 0);
    HPDF_Page_SetGrayStroke(page, grey);
    HPDF_Page_SetGrayFill(page, grey);
    trace(page, item.path);
    if (item.filled && item.width > page::Length{}) HPDF_Page_FillStroke(page);
    else if (item.filled) HPDF_Page_Fill(page);
    else HPDF_Page_Stroke(page);
}

void draw(HPDF_Page page, const page::TextItem& item, HPDF_Font font) {
    const double back = item.align == page::Align::left ? 0 : item.align == page::Align::centre ? 0.5 : 1;
    const geom::Direction d = geom::Direction::at(item.angle);
    const geom::Point at = item.anchor - d * (item.advance * back);
    const auto c = static_cast<HPDF_REAL>(d.x);
    const auto s = static_cast<HPDF_REAL>(d.y);
    HPDF_Page_SetGrayFill(page, item.ink == page::Ink::white ? 1.0F : 0.0F);
    HPDF_Page_BeginText(page);
    HPDF_Page_SetFontAndSize(page, font, points(item.size));
    HPDF_Page_SetTextMatrix(page, c, s, -s, c, points(at.x), points(at.y));
    HPDF_Page_ShowText(page, item.text.c_str());
    HPDF_Page_EndText(page);
}

}  // namespace

std::string raw_haru(const page::Document& document) {
    HPDF_Doc pdf = HPDF_New(nullptr, nullptr);
    HPDF_SetCompressionMode(pdf, HPDF_COMP_ALL);
    HPDF_UseUTFEncodings(pdf);
    std::array<HPDF_Font, 4> fonts{};
    constexpr std::array files{"DejaVuSans.ttf", "DejaVuSans-Bold.ttf", "DejaVuSansCondensed.ttf",
                               "DejaVuSansCondensed-Bold.ttf"};
    const auto font = [&](page::Face face) {
        const auto i = static_cast<std::size_t>(face);
        if (fonts.at(i) == nullptr) {
            const std::string file = std::string(KERFPACKET_WHOLE_FACES "/") + files.at(i);
            fonts.at(i) = HPDF_GetFont(pdf, HPDF_LoadTTFontFromFile(pdf, file.c_str(), HPDF_TRUE), "UTF-8");
        }
        return fonts.at(i);
    };
    for (const page::Page& content : document.pages) {
        HPDF_Page page = HPDF_AddPage(pdf);
        HPDF_Page_SetWidth(page, points(content.width));
        HPDF_Page_SetHeight(page, points(content.height));
        for (const page::Item& item : content.items) {
            if (const auto* path = std::get_if<page::PathItem>(&item)) draw(page, *path);
            else if (const auto* text = std::get_if<page::TextItem>(&item)) draw(page, *text, font(text->face));
        }
    }
    HPDF_SaveToStream(pdf);
    std::string bytes(HPDF_GetStreamSize(pdf), '\0');
    HPDF_ResetStream(pdf);
    auto size = static_cast<HPDF_UINT32>(bytes.size());
    HPDF_ReadFromStream(pdf, reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);
    const bool failed = HPDF_GetError(pdf) != HPDF_OK;
    HPDF_Free(pdf);
    if (failed) throw std::runtime_error("libharu failed");
    return bytes;
}

}  // namespace kerfpacket::bench
