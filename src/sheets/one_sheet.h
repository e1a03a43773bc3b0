#pragma once
// The pages of one kind of sheet.

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// Pages that follow each other.
struct Pages {
    Drafts::const_iterator first;
    Drafts::const_iterator last;  ///< one past the last
};
/// Whether they read the same but for what a header says besides the sheet's own name.
bool look_alike(const Pages& a, const Pages& b);

/// Throws std::runtime_error where a packet, at this kind of sheet, has more pages than one may have.
void require_room(std::size_t pages, const std::string& sheet);

/// Whether a sheet is of the whole job; else each piece has its own.
bool of_job(const std::string& sheet);
/// Adds it; all but the cover and the change pages, which tell where the others are.
void add_job_sheet(Drafts& drafts, const std::string& sheet, const plan::Plan& plan, const Kit& kit);

/// Whether it is stuck on a board or counted on it.
bool of_board(const std::string& sheet);
/// Whether it is drawn for one board and there once for each of several; a checklist sees to all of them itself.
bool one_for_each_board(const std::string& sheet);

/// Whether each blank of a spliced board has its own; one that is not kerfed has no strips and no checklist.
bool of_blank(const std::string& sheet);

/// Sheets of pieces, and which of them stand once for several. Whether one reads the same for two pieces but for their
/// names is found by drawing it for both under one name.
class PieceSheets {
public:
    /// Of these kinds of sheets.
    PieceSheets(const plan::Plan& plan, const Kit& kit, const std::vector<std::string>& sheets);

    /// Adds a sheet of the piece at this place in the plan. A work order still lacks the page numbers. One that several
    /// share stands with the first of them and names them all: "A, B" for two openings, "N/1+2" for two boards of one.
    /// Throws std::runtime_error where there is no such sheet, and where there are too many pages.
    void add(Drafts& drafts, const std::string& sheet, std::size_t piece) const;

    /// The pieces with which one of these sheets stands, of those that can be shared: as many as the packet has of it.
    std::vector<std::size_t> firsts(const std::string& sheet) const;

private:
    using Group = std::vector<std::size_t>;
    std::vector<Group> groups_of(const std::string& sheet) const;
    plan::Piece named(const std::string& sheet, const Group& group) const;
    std::optional<plan::Piece> find_coupon_on_strips(std::size_t piece, const std::vector<Group>& records) const;
    void add_one(Drafts& drafts, const std::string& sheet, std::size_t piece, const plan::Piece& named) const;

    const plan::Plan& plan_;
    const Kit& kit_;
    std::map<std::string, std::vector<Group>> groups_;  ///< of each sheet that can be shared
    std::map<std::size_t, plan::Piece> coupons_;        ///< whose strips stand before the own ones of that piece
};

}  // namespace kerfpacket::sheets
