#pragma once
// Which question the fields of a field sheet answer: the table by which a filled sheet is read.

#include <string>
#include <string_view>
#include <vector>

#include "measure/fraction.h"
#include "output/form_reader.h"

namespace kerfpacket::cli {

/// The answer of a filled sheet to a question of "start".
struct SheetAnswer {
    std::string question;
    std::string value;  ///< as it would be typed there, figures with their unit
    std::string typed;  ///< as it stands on the sheet
};

/// One blank of a page, as it was filled in.
struct SheetBlank {
    std::string field;  ///< its name without the page: "opening-span"
    std::string told;   ///< what belongs there
    std::string typed;  ///< what stands there, on one line; empty: nothing
};

/// One page of a field sheet.
struct SheetPage {
    std::vector<SheetBlank> blanks;

    std::string_view typed(std::string_view field) const;
    /// Something of a piece was measured: a page that nobody touched tells of none.
    bool measured() const;
    /// What its figures without a unit are in.
    measure::Unit unit() const;
    /// The tag of its piece; empty where none was given.
    std::string_view tag() const;
};

/// The pages of a form, by the numbers in the names of its fields. Throws output::Refusal in plain words where it is no
/// field sheet, or nothing can be read from it.
std::vector<SheetPage> sheet_pages(const output::FilledForm& form);

/// What the page answers of the job, and what of its piece.
std::vector<SheetAnswer> head_answers(const SheetPage& page);
std::vector<SheetAnswer> piece_answers(const SheetPage& page);

/// Of a measured page: blanks that a job needs and that are empty, but for what is in the `head` of the job already;
/// and what is written and no question asks for.
std::vector<SheetBlank> left_empty(const SheetPage& page, const std::vector<SheetAnswer>& head);
std::vector<SheetBlank> not_asked(const SheetPage& page);

/// A length in the characters of a keyboard with its unit; as it was typed, where that would be read otherwise.
std::string plain_length(std::string_view typed, measure::Unit unit);

}  // namespace kerfpacket::cli
