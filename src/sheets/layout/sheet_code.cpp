#include "sheets/layout/sheet_code.h"

#include <qrencode.h>

#include <memory>
#include <stdexcept>

#include <fmt/format.h>

namespace kerfpacket::sheets {
namespace {

bool is_plain(char c) {
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == ' ' || c == '.' ||
           c == '-';
}

std::string written(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (is_plain(c)) out += c;
        else out += fmt::format("%{:02X}", static_cast<unsigned char>(c));
    }
    return out;
}

std::string capitals(std::string text) {
    for (char& c : text)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
}

using Code = std::unique_ptr<QRcode, decltype(&QRcode_free)>;

Code encoded(const std::string& text, QRecLevel correction) {
    // The smallest of all has no alignment pattern and reads badly from a slanted scan: from the second on.
    constexpr int least_version = 2;
    Code code(QRcode_encodeString(text.c_str(), least_version, correction, QR_MODE_8, 1), &QRcode_free);
    if (!code) throw std::runtime_error("the code library failed while making the code of a sheet");
    return code;
}

page::CodeItem code_of(std::string text, const geom::Rect& area) {
    // Large cells help a poor scan more than a second copy of what they say.
    Code code = encoded(text, QR_ECLEVEL_M);
    if (code->version > 2) code = encoded(text, QR_ECLEVEL_L);
    page::CodeItem item;
    item.area = area;
    item.text = std::move(text);
    item.side = static_cast<std::size_t>(code->width);
    item.dark.reserve(item.side * item.side);
    for (std::size_t i = 0; i < item.side * item.side; ++i) item.dark.push_back((code->data[i] & 1U) != 0);
    return item;
}

}  // namespace

std::string sheet_code_words(const plan::Plan& plan, std::size_t number, const std::string& sheet) {
    return fmt::format("{}/{}/{} {}/{}", written(plan.header.number), written(plan.header.revision), number,
                       capitals(sheet), capitals(plan.fingerprint));
}

void draw_sheet_code(page::Page& page, const plan::Plan& plan, std::size_t number, Point low_left) {
    page.items.emplace_back(code_of(sheet_code_words(plan, number, page.sheet),
                                    {low_left, low_left + Point{sheet_code_side, sheet_code_side}}));
}

}  // namespace kerfpacket::sheets
