#pragma once
// A form to fill in where the work is, on paper or in a viewer of PDFs: what all field sheets are made of. Under each
// blank stands the key of the job file that the figure goes to, as the program reads it in every language.

#include <string>
#include <string_view>
#include <vector>

#include "page/form.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// Something to write, and where the job file wants it; no key where it stays on the sheet.
struct FieldBlank {
    std::string name;
    std::string field;  ///< "opening-span": by this, and its page, a filled sheet is read; "tip_" of it is told
    std::string key{};
    bool length = true;  ///< with the unit at its end
    int most = 24;       ///< characters
};

/// Words to tick, and the job file's word for them.
struct FieldChoice {
    std::string name;
    std::string word{};   ///< shown where it is another
    std::string value{};  ///< of the filled form; empty: the word
};

class FieldForm {
public:
    /// `name`: "arch", "wall" or "ordinates". Draws the title, who measured what, and what the small words mean;
    /// `group` begins the names of the piece's fields, `number` is that of the page. What can be filled in goes into
    /// `filled`.
    FieldForm(page::Page& page, page::Form& filled, const Kit& kit, Unit unit, const std::string& name,
              const std::string& group, std::size_t number);

    Pen& pen() { return pen_; }
    const fonts::Style& style() const { return pen_.kit().style; }
    const std::string& words(const std::string& key) const { return pen_.kit().words("field." + key); }
    Length right() const { return pen_.page_width() - side_margin; }

    /// A heading; at its right the table of the job file that the keys below it go to.
    void heading(const std::string& key, const std::string& table = {});
    /// The next `height` of the page, to draw in.
    Rect drawing(Length height);
    /// Blanks side by side.
    void blanks(const std::vector<FieldBlank>& row);
    /// Boxes to tick, on as many lines as they take. `key` stands after the name. One may be ticked beforehand.
    void choices(const std::string& name, const std::string& field, const std::string& key,
                 const std::vector<FieldChoice>& all, const std::string& ticked = {});
    /// A sentence over the width of the page.
    void say(const std::string& key);
    /// Lines to write on down to the foot of the page.
    void notes();
    /// How many rows of this height are left above the foot and `below`.
    int rows_left(Length row, Length below) const;
    void skip(Length height) { y_ -= height; }
    Length y() const { return y_; }

    /// A level dimension line with a blank in it, its key below.
    void dimension(Point a, Point b, const FieldBlank& blank);
    /// Any other, with its name, a blank and its key level beside its middle, on the side of `beside`.
    void dimension_beside(Point a, Point b, const FieldBlank& blank, Align beside);
    /// A cell of a table, empty, in that row.
    void cell(const Rect& area, const std::string& field, int row);

private:
    /// Where the line of a blank ends that has the room up to `right`: before its unit.
    Length line_end(const FieldBlank& blank, Length right) const;
    void blank(const FieldBlank& blank, Length left, Length right, const Type& type);
    void key_under(Point base, const std::string& key);
    /// A field whose label belongs to the part that is open.
    page::FormField& add(const std::string& field, std::string tip, page::FieldKind kind);
    void fill_in(const FieldBlank& blank, const Rect& area);
    std::string tip(const std::string& field) const;

    page::Page& page_;
    page::Form& filled_;
    Pen pen_;
    std::string unit_;
    std::size_t number_;
    Length y_;
};

}  // namespace kerfpacket::sheets
