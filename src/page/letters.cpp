#include "page/letters.h"

#include <algorithm>
#include <variant>

namespace kerfpacket::page {
namespace {

bool goes_on(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80; }

}  // namespace

void Letters::OfFace::take(std::string_view text) {
    while (!text.empty()) {
        const auto first = static_cast<unsigned char>(text.front());
        if (first < plain.size()) {
            if (!plain.test(first)) letters += text.front();
            plain.set(first);
            text.remove_prefix(1);
            continue;
        }
        const auto* const end = std::find_if_not(text.begin() + 1, text.end(), goes_on);
        const std::string_view letter = text.substr(0, static_cast<std::size_t>(end - text.begin()));
        if (letters.find(letter) == std::string::npos) letters += letter;
        text.remove_prefix(letter.size());
    }
}

void Letters::take(const Page& page) {
    for (const Item& item : page.items)
        if (const auto* text = std::get_if<TextItem>(&item))
            faces_.at(static_cast<std::size_t>(text->face)).take(text->text);
}

void Letters::take(const Letters& other) {
    for (std::size_t i = 0; i < faces_.size(); ++i) faces_.at(i).take(other.faces_.at(i).letters);
}

}  // namespace kerfpacket::page
