#include "sheets/blanks/field_form.h"

#include <algorithm>
#include <cmath>

namespace kerfpacket::sheets {
namespace {

constexpr Length lowest = 46_pt;
constexpr Length blank_row = 27_pt;
constexpr Length choice_row = 17_pt;
constexpr Length note_row = 22_pt;
constexpr Length column_gap = 18_pt;
constexpr Length box = 10_pt;

}  // namespace

FieldForm::FieldForm(page::Page& page, const Kit& kit, Unit unit, const std::string& name)
    : pen_(page, kit), unit_(Tape(unit, kit.words).unit_name()), y_(page.height - 48_pt) {
    {
        const Scope heading = pen_.title();
        const Length title =
            pen_.text(Role::furniture, {side_margin, y_}, words(name + "_title"), {Face::bold, style().title});
        const std::string& what = words(name + "_subtitle");
        const Length from = side_margin + title + 12_pt;
        pen_.text(Role::furniture, {from, y_}, what,
                  pen_.fitting(what, {Face::regular, style().text}, this->right() - from));
    }
    y_ -= 14_pt;
    pen_.line(Role::furniture, {side_margin, y_}, {this->right(), y_}, style().line);
    blanks({{words("job"), "[job] number", false}, {words("place"), "[job] title", false}});
    blanks({{words("measured_by"), "", false}, {words("tape"), "", false}, {words("date"), "[job] date", false}});
    pen_.line(Role::furniture, {side_margin, 36_pt}, {this->right(), 36_pt}, style().line);
    const Scope artifact = pen_.within(Tag::artifact);
    const std::string foot = pen_.kit().words(
        "field.foot", {{"example", unit == Unit::inch ? "58 3/4 in" : "1492 mm"}});  // as a job file writes them
    pen_.text(Role::furniture, {side_margin, 25_pt}, foot,
              pen_.fitting(foot, {Face::regular, style().small}, this->right() - side_margin));
}

void FieldForm::heading(const std::string& key, const std::string& table) {
    y_ -= 26_pt;
    section(pen_, side_margin, right(), y_, words(key), table);
    y_ -= 6.5_pt;
}

Rect FieldForm::drawing(Length height) {
    const Rect space{{side_margin, y_ - height}, {right(), y_}};
    y_ -= height;
    return space;
}

Length FieldForm::line_end(const FieldBlank& blank, Length right) const {
    return blank.length ? right - pen_.width(unit_, {Face::regular, style().small}) - 3_pt : right;
}

void FieldForm::blank(const FieldBlank& blank, Length left, Length right, const Type& type) {
    const Type small{Face::regular, style().small};
    const Length line_end = this->line_end(blank, right);
    const Scope part = pen_.within(Tag::paragraph);
    const Length start = left + pen_.text(Role::text, {left, y_}, blank.name, type) + 5_pt;
    pen_.line(Role::box, {start, y_ - 2_pt}, {line_end, y_ - 2_pt}, style().line);
    if (blank.length) pen_.text(Role::text, {right, y_}, unit_, small.at_right());
    key_under({start, y_ - 10_pt}, blank.key);
}

/// Where a key is longer than its blank it ends with the form.
void FieldForm::key_under(Point base, const std::string& key) {
    const Type type{Face::condensed, style().tiny};
    base.x = std::min(base.x, right() - pen_.width(key, type));
    pen_.text(Role::text, base, key, type);
}

void FieldForm::blanks(const std::vector<FieldBlank>& row) {
    y_ -= blank_row;
    const auto count = static_cast<double>(row.size());
    const Length width = (right() - side_margin - column_gap * (count - 1)) / count;
    // All names of a row alike; two fifths of the room at least are for the hand.
    Type type{Face::regular, style().text};
    for (const FieldBlank& one : row) type = pen_.fitting(one.name, type, line_end(one, width) * 0.6);
    Length x = side_margin;
    for (const FieldBlank& one : row) {
        blank(one, x, x + width, type);
        x += width + column_gap;
    }
    y_ -= 3_pt;
}

void FieldForm::choices(const std::string& name, const std::string& key, const std::vector<FieldChoice>& all) {
    y_ -= choice_row + 3_pt;
    const Type text{Face::regular, style().text};
    const Type tiny{Face::condensed, style().tiny};
    const Scope part = pen_.within(Tag::paragraph);
    Length x = side_margin + pen_.text(Role::text, {side_margin, y_}, name, text) + 5_pt;
    x += pen_.text(Role::text, {x, y_}, key == name ? std::string() : key, tiny) + 12_pt;
    const Length indent = side_margin + 14_pt;
    for (const FieldChoice& choice : all) {
        // The job file's own word is said where the language has another.
        const std::string word = choice.word == choice.name ? std::string() : choice.word;
        const Length width = box + 4_pt + pen_.width(choice.name, text) + 4_pt + pen_.width(word, tiny);
        if (x + width > right()) {
            x = indent;
            y_ -= choice_row;
        }
        tick_box(pen_, {x, y_ - 1.5_pt}, box);
        Length at = x + box + 4_pt;
        at += pen_.text(Role::text, {at, y_}, choice.name, text) + 4_pt;
        pen_.text(Role::text, {at, y_}, word, tiny);
        x += width + 12_pt;
    }
}

void FieldForm::say(const std::string& key) {
    y_ = pen_.paragraph(Role::text, {side_margin, y_ - 13_pt}, words(key), {Face::regular, style().small},
                        right() - side_margin, 11.5_pt);
}

int FieldForm::rows_left(Length row, Length below) const {
    return std::max(0, static_cast<int>(std::floor((y_ - lowest - below) / row)));
}

void FieldForm::notes() {
    heading("notes");
    while (y_ - note_row > lowest) {
        y_ -= note_row;
        pen_.line(Role::box, {side_margin, y_}, {right(), y_}, style().hair);
    }
}

void FieldForm::dimension(Point a, Point b, const FieldBlank& blank) {
    const Type type{Face::regular, style().text};
    pen_.dimension(a, b, blank.name + " ____________" + (blank.length ? " " + unit_ : std::string()), type);
    pen_.text(Role::text, geom::middle(a, b) - Point{{}, 12_pt}, blank.key,
              Type{Face::condensed, style().tiny}.centred());
}

void FieldForm::dimension_beside(Point a, Point b, const FieldBlank& blank, Align beside) {
    constexpr Length line = 58_pt;
    pen_.dimension(a, b, "", {Face::regular, style().text});
    const bool left = beside == Align::left;
    const Point middle = geom::middle(a, b);
    // Clear of a line that slants.
    const Length gap = 8_pt + 16_pt * std::abs(geom::direction(a, b).x);
    const Type small{Face::regular, style().small};
    const Length after = blank.length ? pen_.width(unit_, small) + 3_pt : Length();
    // Never beyond the form.
    const Length x = std::clamp(middle.x + (left ? -gap - line - after : gap), side_margin, right() - line - after);
    const Length base = middle.y + 2_pt;
    pen_.text(Role::text, {x, base + 8_pt}, blank.name, {Face::regular, style().text});
    pen_.line(Role::box, {x, base - 10_pt}, {x + line, base - 10_pt}, style().line);
    if (blank.length) pen_.text(Role::text, {x + line + 3_pt, base - 8_pt}, unit_, small);
    key_under({x, base - 18_pt}, blank.key);
}

}  // namespace kerfpacket::sheets
