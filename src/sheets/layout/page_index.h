#pragma once
// Where in a packet each sheet stands: what cover, change page and work orders tell of it.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace kerfpacket::sheets {

/// A line of the page index: pages from 0.
struct IndexEntry {
    std::string title;
    std::size_t first = 0;
    std::size_t last = 0;
    std::string sheet{};                ///< kind of the sheet
    std::string piece{};                ///< whose it is, as `is_of` reads it; empty for the whole job's
    int strips = 0;                     ///< how many mark strips stand on the pages of a set
    int sets = 1;                       ///< how often the sheet stands there, once for each board
    std::optional<std::size_t> also{};  ///< a page of another sheet on which a part of it stands

    /// The last page of its first set.
    std::size_t last_of_set() const { return first + (last - first + 1) / static_cast<std::size_t>(sets) - 1; }
};

/// "7", "9-12", "7, 11".
inline std::string page_numbers(const IndexEntry& entry) {
    std::string pages = std::to_string(entry.first + 1);
    if (entry.first != entry.last) pages += "-" + std::to_string(entry.last + 1);
    if (entry.also) pages += ", " + std::to_string(*entry.also + 1);
    return pages;
}

/// Whether a sheet that is named for "A, N/1+2" is the piece's "A", or "N/2".
inline bool is_of(const std::string& name, const std::string& piece) {
    const std::string between = ", ";
    if (const std::size_t comma = name.find(between); comma != std::string::npos)
        return is_of(name.substr(0, comma), piece) || is_of(name.substr(comma + between.size()), piece);
    if (name == piece) return true;
    const std::size_t boards = piece.rfind('/') + 1;  // 0 where the piece is alone
    if (boards == 0 || name.compare(0, boards, piece, 0, boards) != 0) return false;
    return ("+" + name.substr(boards) + "+").find("+" + piece.substr(boards) + "+") != std::string::npos;
}

}  // namespace kerfpacket::sheets
