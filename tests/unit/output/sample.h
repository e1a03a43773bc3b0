#pragma once
// A small document with one of everything, and what the tests read a PDF with.

#include <memory>
#include <string>

#include "fonts/faces.h"
#include "output/qpdf.h"
#include "page/document.h"

namespace kerfpacket::output {

const fonts::Faces& test_faces();

/// Two pages: Letter upright with ticks, an arc, all faces, turned and white text, a link; Letter across, empty.
page::Document sample_document();

/// A document of one page, 200 x 100 mm, with one item.
page::Document one_item(page::Item item);
page::TextItem words(const std::string& text);

/// Opens a PDF in memory; libqpdf's warnings become test failures.
std::unique_ptr<QPDF> open_pdf(const std::string& bytes);
/// A page, from 0.
QPDFObjectHandle page_of(QPDF& pdf, std::size_t page);
/// What it draws, an operator a line.
std::string content_of(QPDF& pdf, std::size_t page);

/// The exit status of a shell command, and all it prints on both channels.
struct Ran {
    int status = 0;
    std::string printed;
};
Ran run(const std::string& command);

}  // namespace kerfpacket::output
