#include "sample.h"

#include <array>
#include <cstdio>

#include <gtest/gtest.h>
#include <sys/wait.h>

namespace kerfpacket::output {

using namespace measure::literals;
using geom::Angle;
using geom::Path;
using geom::Point;
using page::Face;
using page::Length;
using page::Role;

const fonts::Faces& test_faces() {
    static const fonts::Faces faces(KERFPACKET_BUILD_DIR "/fonts");
    return faces;
}

namespace {

page::TextItem set(Point at, const std::string& text, Face face, Length size) {
    return {Role::text, text, face, size, at, page::Align::left, {}, test_faces().width(face, text, size)};
}

page::Page full_page() {
    page::Page page{"strips", "A", 8.5_in, 11_in, {}};
    for (int i = 0; i < 20; ++i) {
        const Length x = 20_mm + 7.919_mm * i;
        page.items.emplace_back(page::PathItem{Role::tick, Path::line({x, 50_mm}, {x, 54_mm}), 0.25_pt});
        page.items.emplace_back(page::PathItem{
            Role::foot, Path::rectangle({{x - 1_mm, 49_mm}, {x + 1_mm, 50_mm}}), {}, page::Dash::solid, true});
    }
    page.items.emplace_back(page::PathItem{Role::outline,
                                           Path::arc({30_mm, 120_mm}, {150_mm, 120_mm}, -Angle::degrees(80)), 1.4_pt,
                                           page::Dash::dash_dot});
    page.items.emplace_back(page::PathItem{
        Role::furniture, Path::rectangle({{20_mm, 250_mm}, {30_mm, 260_mm}}), {}, page::Dash::solid, true});
    page::TextItem letter = set({25_mm, 252_mm}, "A", Face::bold, 24_pt);
    letter.align = page::Align::centre;
    letter.ink = page::Ink::white;
    page.items.emplace_back(letter);
    page.items.emplace_back(set({35_mm, 252_mm}, "Mark strip 5|6 × 12-3/4″ ±", Face::regular, 11_pt));
    page.items.emplace_back(set({35_mm, 240_mm}, "Señal ▲ ☐ ⚠ Řád", Face::condensed, 9_pt));
    page.items.emplace_back(set({35_mm, 230_mm}, "“Done” → 40", Face::condensed_bold, 13_pt));
    page::TextItem turned = set({12_mm, 150_mm}, "CHECK 6 in", Face::regular, 9_pt);
    turned.angle = Angle::degrees(90);
    page.items.emplace_back(turned);
    page.items.emplace_back(page::LinkItem{{{35_mm, 250_mm}, {90_mm, 258_mm}}, 1});
    return page;
}

}  // namespace

page::Document sample_document() {
    page::Document document{"Probe job ½″ señal", "An opening and a wall", "en-US", "2026-02-28", {}, {}};
    document.pages.push_back(full_page());
    document.pages.push_back({"cover", "", 11_in, 8.5_in, {}});
    document.outline = {{"Strips – señal", 0, 0}, {"Inside", 0, 1}, {"Empty", 1, 0}};
    return document;
}

page::Document one_item(page::Item item) {
    page::Document document{"One", "", "en-US", "2026-02-28", {}, {}};
    document.pages.push_back({"cover", "", 200_mm, 100_mm, {std::move(item)}});
    return document;
}

page::TextItem words(const std::string& text) {
    return {Role::text, text, Face::regular, 11_pt, {10_mm, 50_mm}, page::Align::left, {}, 20_mm};
}

std::unique_ptr<QPDF> open_pdf(const std::string& bytes) {
    auto pdf = std::make_unique<QPDF>();
    pdf->setSuppressWarnings(true);
    pdf->processMemoryFile("the PDF under test", bytes.data(), bytes.size());
    for (const auto& warning : pdf->getWarnings()) ADD_FAILURE() << warning.what();
    return pdf;
}

QPDFObjectHandle page_of(QPDF& pdf, std::size_t page) { return pdf.getAllPages().at(page); }

std::string content_of(QPDF& pdf, std::size_t page) {
    struct : QPDFObjectHandle::ParserCallbacks {
        void handleObject(QPDFObjectHandle object, std::size_t /*offset*/, std::size_t /*length*/) override {
            text += object.isOperator() ? object.getOperatorValue() + "\n" : object.unparse() + " ";
        }
        void handleEOF() override {}
        std::string text;
    } lines;
    QPDFObjectHandle::parseContentStream(page_of(pdf, page).getKey("/Contents"), &lines);
    return lines.text;
}

Ran run(const std::string& command) {
    FILE* pipe = ::popen((command + " 2>&1").c_str(), "r");
    if (pipe == nullptr) return {-1, "cannot run " + command};
    Ran ran;
    std::array<char, 4096> part{};
    for (std::size_t n = 0; (n = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
        ran.printed.append(part.data(), n);
    const int status = ::pclose(pipe);
    ran.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return ran;
}

}  // namespace kerfpacket::output
