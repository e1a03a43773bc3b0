#pragma once
// What stands on the sheets of strips before the board's own.

#include <string>
#include <variant>

#include "page/document.h"

namespace kerfpacket::tests {

/// How many kerfs the captions tell of a coupon whose strips stand before those of the board: "Strip 2 of 2, coupon",
/// how it is set, "kerfs 13 to 22".
inline std::size_t kerfs_of_coupon(const page::Document& packet) {
    std::size_t last = 0;
    for (const page::Page& page : packet.pages) {
        if (page.sheet != "strips") continue;
        int texts_on = 0;
        for (const page::Item& item : page.items) {
            const auto* text = std::get_if<page::TextItem>(&item);
            if (text == nullptr) continue;
            if (text->text.ends_with(", coupon") || text->text.ends_with(", probeta")) texts_on = 3;
            if (--texts_on == 0) last = std::stoul(text->text.substr(text->text.rfind(' ')));
        }
    }
    return last;
}

}  // namespace kerfpacket::tests
