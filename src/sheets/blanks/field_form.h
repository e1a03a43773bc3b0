#pragma once
// A blank form to fill in where the work is: what all field sheets are made of. Under each blank stands the key of the
// job file that the figure goes to, as the program reads it in every language.

#include <string>
#include <string_view>
#include <vector>

#include "sheets/layout/furniture.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// Something to write, and where the job file wants it; no key where it stays on the paper.
struct FieldBlank {
    std::string name;
    std::string key{};
    bool length = true;  ///< with the unit at its end
};

/// Words to tick, and the job file's word for them.
struct FieldChoice {
    std::string name;
    std::string word{};
};

class FieldForm {
public:
    /// `name`: "arch", "wall" or "ordinates". Draws the title, who measured what, and what the small words mean.
    FieldForm(page::Page& page, const Kit& kit, Unit unit, const std::string& name);

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
    /// Boxes to tick, on as many lines as they take. `key` stands after the name.
    void choices(const std::string& name, const std::string& key, const std::vector<FieldChoice>& all);
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

private:
    /// Where the line of a blank ends that has the room up to `right`: before its unit.
    Length line_end(const FieldBlank& blank, Length right) const;
    void blank(const FieldBlank& blank, Length left, Length right, const Type& type);
    void key_under(Point base, const std::string& key);

    Pen pen_;
    std::string unit_;
    Length y_;
};

}  // namespace kerfpacket::sheets
