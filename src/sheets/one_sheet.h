#pragma once
// The pages of one kind of sheet.

#include <string>

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// Pages that follow each other.
struct Pages {
    Drafts::const_iterator first;
    Drafts::const_iterator last;  ///< one past the last
};
/// Whether they read the same but for what a header says besides the sheet's own name.
bool look_alike(const Pages& a, const Pages& b);

/// Whether a sheet is of the whole job; else each piece has its own.
bool of_job(const std::string& sheet);
/// Adds it; all but the cover and the change pages, which tell where the others are.
void add_job_sheet(Drafts& drafts, const std::string& sheet, const plan::Plan& plan, const Kit& kit);

/// Adds a sheet of a piece. A work order still lacks the page numbers. One that reads the same for several boards of an
/// opening but for their names stands once, with the first of them, and names them all: "N/1+2". Whether it does is
/// found by drawing it for each under one name. Throws std::runtime_error where there is no such sheet, and where there
/// are too many pages.
void add_piece_sheet(Drafts& drafts, const std::string& sheet, const plan::Plan& plan, const plan::Piece& piece,
                     const Kit& kit);

}  // namespace kerfpacket::sheets
