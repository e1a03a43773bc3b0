#include "output/pdf.h"

#include <filesystem>
#include <stdexcept>
#include <utility>
#include <variant>
#include <vector>

#include <fmt/format.h>

#include "disk/read.h"
#include "measure/require.h"
#include "output/draw_order.h"
#include "output/haru.h"
#include "output/haru_page.h"
#include "output/pdf_finish.h"

namespace kerfpacket::output {
namespace {

/// Pages of a libharu document and the ways that lead to them.
struct Pages {
    std::vector<HPDF_Page> pages;
    std::vector<HPDF_Destination> destinations;  ///< made when first asked for

    HPDF_Destination to(std::size_t page) {
        measure::require(page < pages.size(), "a link leads to a page of the document");
        HPDF_Destination& destination = destinations[page];
        if (destination == nullptr) {
            destination = HPDF_Page_CreateDestination(pages[page]);
            HPDF_Destination_SetFit(destination);
        }
        return destination;
    }
};

void check_size(const page::Page& page, std::size_t number) {
    // libharu's limits, which are also those of PDF 1.7 viewers without UserUnit (ISO 32000-1, annex C).
    const auto fits = [](Length side) { return haru_points(side) >= 3 && haru_points(side) <= 14400; };
    if (!fits(page.width) || !fits(page.height))
        throw std::runtime_error(
            fmt::format("page {} is too small or too large: a PDF page is 3 to 14400 points "
                        "(200 in) a side",
                        number));
}

Pages add_pages(const HaruDocument& haru, const page::Document& document) {
    Pages result;
    for (const page::Page& page : document.pages) {
        check_size(page, result.pages.size() + 1);
        HPDF_Page added = HPDF_AddPage(haru.get());
        haru.check("adding a page");
        HPDF_Page_SetWidth(added, haru_points(page.width));
        HPDF_Page_SetHeight(added, haru_points(page.height));
        haru.check("sizing a page");
        result.pages.push_back(added);
    }
    result.destinations.resize(result.pages.size());
    return result;
}

void add_link(const HaruDocument& haru, HPDF_Page page, const geom::Rect& area, HPDF_Destination to) {
    const HPDF_Rect place{haru_points(area.low.x), haru_points(area.low.y), haru_points(area.high.x),
                          haru_points(area.high.y)};
    HPDF_Annotation link = HPDF_Page_CreateLinkAnnot(page, place, to);
    haru.check("adding a link");
    HPDF_LinkAnnot_SetBorderStyle(link, 0, 0, 0);
    haru.check("adding a link");
}

/// Returns what each marked run of the page is read with.
std::vector<std::size_t> draw_page(const HaruDocument& haru, HaruFonts& fonts, Pages& pages, HPDF_Page page,
                                   const page::Page& content) {
    HaruPage canvas(haru, fonts, page, content);
    // Never an empty content stream: ghostscript stops at a compressed one. 1 is the width a page begins with.
    HPDF_Page_SetLineWidth(page, 1);
    for (const page::Item* item : draw_order(content)) {
        const HaruPage::Reader reader = page::read_with(content, *item);
        if (const auto* path = std::get_if<page::PathItem>(item)) canvas.draw(*path, reader);
        else if (const auto* text = std::get_if<page::TextItem>(item)) canvas.draw(*text, reader);
        else if (const auto* code = std::get_if<page::CodeItem>(item)) canvas.draw(*code, reader);
        else {
            const auto& link = std::get<page::LinkItem>(*item);
            const geom::Rect area{page::corrected(content, link.area.low), page::corrected(content, link.area.high)};
            add_link(haru, page, area, pages.to(link.page));
        }
    }
    canvas.finish();
    return canvas.marks();
}

constexpr std::size_t most_bytes = 1U << 20U;

std::string profile_of(const fonts::Faces& faces) {
    std::string bytes = disk::must_read(faces.colour_profile(), most_bytes);
    if (bytes.empty())
        throw disk::Failure(
            fmt::format("the colour profile {} is empty: build the program again", faces.colour_profile().string()));
    return bytes;
}

void add_outline(const HaruDocument& haru, const page::Document& document, Pages& pages) {
    if (document.outline.empty()) return;
    HPDF_Encoder encoder = HPDF_GetEncoder(haru.get(), "UTF-8");
    std::vector<HPDF_Outline> parents;  // the last entry of each level above the next one
    for (const page::OutlineEntry& entry : document.outline) {
        const auto level = static_cast<std::size_t>(entry.level);
        measure::require(entry.level >= 0 && level <= parents.size(), "an outline goes down one level at a time");
        parents.resize(level);
        HPDF_Outline added =
            HPDF_CreateOutline(haru.get(), parents.empty() ? nullptr : parents.back(), entry.title.c_str(), encoder);
        haru.check("adding a bookmark");
        HPDF_Outline_SetDestination(added, pages.to(entry.page));
        haru.check("adding a bookmark");
        parents.push_back(added);
    }
    HPDF_SetPageMode(haru.get(), HPDF_PAGE_MODE_USE_OUTLINE);
    haru.check("adding the bookmarks");
}

}  // namespace

namespace {

Drawn draw_with(const page::Document& document, const fonts::Faces& faces, std::size_t rare_characters) {
    const HaruDocument haru;
    HaruFonts fonts(haru, faces);
    Pages pages = add_pages(haru, document);
    std::vector<std::vector<std::size_t>> marks;
    marks.reserve(pages.pages.size());
    for (std::size_t i = 0; i < pages.pages.size(); ++i)
        marks.push_back(draw_page(haru, fonts, pages, pages.pages[i], document.pages[i]));
    add_outline(haru, document, pages);
    fonts.take_along(rare_characters);
    return {haru.bytes(), fonts.embedded(), std::move(marks)};
}

}  // namespace

Drawn draw_pdf(const page::Document& document, const fonts::Faces& faces) {
    measure::require(!document.pages.empty(), "a document has pages");
    // The same document needs the same number each time, so its bytes stay the same.
    constexpr std::size_t most = 12;
    for (std::size_t rare_characters = 0; rare_characters < most; ++rare_characters) try {
            return draw_with(document, faces, rare_characters);
        } catch (const FontOnABlockEnd&) { continue; }
    throw std::runtime_error("the PDF library cannot save the faces of this packet");
}

std::string pdf(const page::Document& document, const fonts::Faces& faces, const std::vector<Attachment>& attachments) {
    return finish_pdf(draw_pdf(document, faces), document, {profile_of(faces), attachments});
}

std::string form_pdf(const page::Document& document, const page::Form& form, const fonts::Faces& faces) {
    // Beside the faces: it is no face of the sheets, only of what is typed into them.
    std::filesystem::path face = faces.colour_profile();
    face.replace_filename("form.ttf");
    return finish_pdf(draw_pdf(document, faces), document,
                      {profile_of(faces), {}, &form, disk::must_read(face, most_bytes)});
}

}  // namespace kerfpacket::output
