#pragma once
// The characters that pages set: which a file of them needs of its faces.

#include <array>
#include <bitset>
#include <string>
#include <string_view>

#include "page/document.h"

namespace kerfpacket::page {

/// Every character set in a face, once, in the order they came.
class Letters {
public:
    /// Those of the words on a page.
    void take(const Page& page);
    /// Those that another has, behind what is there.
    void take(const Letters& other);
    /// UTF-8, as far as the words were.
    const std::string& of(Face face) const { return faces_.at(static_cast<std::size_t>(face)).letters; }

private:
    struct OfFace {
        std::string letters;
        std::bitset<0x80> plain;  ///< the ASCII characters among them
        void take(std::string_view text);
    };
    std::array<OfFace, all_faces.size()> faces_;
};

}  // namespace kerfpacket::page
