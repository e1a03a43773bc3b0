#pragma once
// Pages that wait: what is drawn on them takes an eighth of its room.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "page/document.h"
#include "page/letters.h"

namespace kerfpacket::page {

/// The items and the structure of a page, folded together.
class Folded {
public:
    /// Of a page that is not folded.
    Folded() = default;
    /// Takes them out of the page; all else of it stays as it is.
    explicit Folded(Page& page);
    /// Puts them back as they were, to the last bit; a page that is not folded stays as it is.
    void put_back(Page& page) const;

    std::size_t bytes() const { return bytes_.size(); }

private:
    std::vector<char> bytes_;  // no string: assigned an empty one, that would keep its room
};

/// Of so many pages that were let go the memory is worth giving back.
inline constexpr std::size_t many_folded = 400;

/// A document of so many pages that most of them are folded.
struct FoldedDocument {
    Document document;
    std::vector<Folded> folded;  ///< of each page; empty of one that is open
    Letters letters;             ///< what all pages set, told here so that none is opened for it
};

/// A page of a document, in `room` if it is folded. `folded` is that of each page, or nothing where none is.
const Page& opened(const Document& document, std::span<const Folded> folded, std::size_t page,
                   std::optional<Page>& room);

}  // namespace kerfpacket::page
