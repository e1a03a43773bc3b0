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
/// A field ends above the line that a hand writes on: viewers set some letters lower than others.
constexpr Length over_line = 1.5_pt;
constexpr Length field_height = 15_pt;

/// On a line from `from`, as long as `width`.
Rect over(Point from, Length width, Length height = field_height) {
    return {{from.x, from.y + over_line}, {from.x + width, from.y + over_line + height}};
}

}  // namespace

FieldForm::FieldForm(page::Page& page, page::Form& filled, const Kit& kit, Unit unit, const std::string& name,
                     const std::string& group, std::size_t number)
    : page_(page),
      filled_(filled),
      pen_(page, kit),
      unit_(Tape(unit, kit.words).unit_name()),
      number_(number),
      y_(page.height - 48_pt) {
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
    blanks(
        {{words("job"), "job-number", "[job] number", false}, {words("place"), "job-title", "[job] title", false, 60}});
    blanks({{words("measured_by"), "job-measured-by", "", false, 60},
            {words("tape"), "job-tape", "", false, 60},
            {words("date"), "job-date", "[job] date", false}});
    choices(words("units"), "job-units", "", {{words("inches"), "in"}, {words("millimetres"), "mm"}},
            Tape(unit).unit_name());
    blank({words("tag"), group + "-id", "id", false}, this->right() - 112_pt, this->right(),
          {Face::regular, style().text});
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
    fill_in(blank, over({start, y_ - 2_pt}, line_end - start));
}

/// Where a key is longer than its blank it ends with the form.
void FieldForm::key_under(Point base, const std::string& key) {
    const Type type{Face::condensed, style().tiny};
    base.x = std::min(base.x, right() - pen_.width(key, type));
    pen_.text(Role::text, base, key, type);
}

page::FormField& FieldForm::add(const std::string& field, std::string tip, page::FieldKind kind) {
    const std::size_t hyphen = field.find('-');
    page::FormField& made = filled_.fields.emplace_back();
    made.name = field.substr(0, hyphen + 1) + std::to_string(number_) + field.substr(hyphen);
    made.tip = std::move(tip);
    made.kind = kind;
    made.page = number_ - 1;
    made.node = page_.open;
    return made;
}

void FieldForm::fill_in(const FieldBlank& blank, const Rect& area) {
    page::FormField& field = add(blank.field, tip(blank.field), page::FieldKind::line);
    field.most = blank.most;
    field.places.push_back({area});
}

std::string FieldForm::tip(const std::string& field) const {
    std::string key = "tip_" + field;
    std::replace(key.begin(), key.end(), '-', '_');
    return words(key);
}

void FieldForm::cell(const Rect& area, const std::string& field, int row) {
    pen_.empty_cells(1);
    const std::string number = std::to_string(row);
    page::FormField& one = add(field + "-" + number, tip(field) + " " + number, page::FieldKind::line);
    one.node = page_.structure.size() - 1;
    one.places.push_back({{area.low + Point{2_pt, over_line}, area.high - Point{2_pt, over_line}}});
}

void FieldForm::blanks(const std::vector<FieldBlank>& row) {
    y_ -= blank_row;
    const auto count = static_cast<double>(row.size());
    const Length width = (right() - side_margin - column_gap * (count - 1)) / count;
    // All names of a row alike; a third of the room at least is for the hand.
    Type type{Face::regular, style().text};
    for (const FieldBlank& one : row) type = pen_.fitting(one.name, type, line_end(one, width) * 0.66);
    Length x = side_margin;
    for (const FieldBlank& one : row) {
        blank(one, x, x + width, type);
        x += width + column_gap;
    }
    y_ -= 3_pt;
}

void FieldForm::choices(const std::string& name, const std::string& field, const std::string& key,
                        const std::vector<FieldChoice>& all, const std::string& ticked) {
    y_ -= choice_row + 3_pt;
    const Type text{Face::regular, style().text};
    const Type tiny{Face::condensed, style().tiny};
    const Scope part = pen_.within(Tag::paragraph);
    Length x = side_margin + pen_.text(Role::text, {side_margin, y_}, name, text) + 5_pt;
    x += pen_.text(Role::text, {x, y_}, key == name ? std::string() : key, tiny) + 12_pt;
    const Length indent = side_margin + 14_pt;
    page::FormField& boxes = add(field, tip(field), page::FieldKind::one_of);
    boxes.value = ticked;
    for (const FieldChoice& choice : all) {
        // The job file's own word is said where the language has another.
        const std::string word = choice.word == choice.name ? std::string() : choice.word;
        const Length width = box + 4_pt + pen_.width(choice.name, text) + 4_pt + pen_.width(word, tiny);
        if (x + width > right()) {
            x = indent;
            y_ -= choice_row;
        }
        const Point corner{x, y_ - 1.5_pt};
        tick_box(pen_, corner, box);
        boxes.places.push_back({{corner, corner + Point{box, box}},
                                choice.value.empty() ? choice.word : choice.value,
                                boxes.tip + ": " + choice.name});
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
    page::FormField& field = add("job-notes", tip("job-notes"), page::FieldKind::notes);
    field.most = 2000;
    field.places.push_back({{{side_margin, lowest}, {right(), y_}}});
    while (y_ - note_row > lowest) {
        y_ -= note_row;
        pen_.line(Role::box, {side_margin, y_}, {right(), y_}, style().hair);
    }
}

void FieldForm::dimension(Point a, Point b, const FieldBlank& blank) {
    const Type type{Face::regular, style().text};
    const std::string line = "____________";
    const std::string unit = blank.length ? " " + unit_ : std::string();
    const std::string figure = blank.name + " " + line + unit;
    pen_.dimension(a, b, figure, type);
    const Length end = geom::middle(a, b).x + pen_.width(figure, type) / 2 - pen_.width(unit, type);
    const Length wide = pen_.width(line, type);
    // Underscores stand a quarter of the type's size below the middle of the dimension line, and more.
    fill_in(blank, over({end - wide, a.y - type.size * 0.5}, wide));
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
    fill_in(blank, over({x, base - 10_pt}, line, 14_pt));
}

}  // namespace kerfpacket::sheets
