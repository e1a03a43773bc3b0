#include "sheets/strips/checklist_block.h"

#include <algorithm>
#include <cmath>

#include "sheets/layout/furniture.h"
#include "sheets/words/numeral.h"

namespace kerfpacket::sheets {
namespace {

/// What was rounded away, true mark minus printed figure: thousandths of an inch or hundredths of a millimetre.
std::string residue_text(Length residue, const Tape& tape) {
    const bool inch = tape.unit() == measure::Unit::inch;
    const std::string digits = tape.number(std::abs(inch ? residue.inches() : residue.mm()), inch ? 3 : 2);
    if (digits.find_first_of("123456789") == std::string::npos) return {};
    return (residue < 0_mm ? "-" : "+") + digits.substr(1);
}

/// Without the spaces that a name left empty leaves at the ends.
std::string trimmed(const std::string& text) {
    const std::size_t first = text.find_first_not_of(' ');
    return first == std::string::npos ? std::string() : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

}  // namespace

std::string in_both(const Kit& kit, std::string_view key, const fonts::Words::Values& values) {
    std::string text = kit.words(key, values);
    if (kit.second_words == nullptr) return text;
    fonts::Words::Values unsaid = values;
    for (auto& [name, value] : unsaid) value.clear();
    return text.append(" / ").append(trimmed((*kit.second_words)(key, unsaid)));
}

void ChecklistBlock::draw(Point top_left, Length width, std::size_t first, std::size_t end) {
    top_left_ = top_left;
    width_ = width;
    {
        const Scope list = pen_.within(Tag::list);
        for (std::size_t i = first; i < end; ++i)
            row(piece_.blank().kerfs[i], heights_.row * static_cast<double>(i - first + 1));
    }
    const Length rows = heights_.row * static_cast<double>(end - first);
    foot(end, rows);
    const Rect outline{{top_left_.x, top_left_.y - rows - heights_.foot}, {top_left_.x + width_, top_left_.y}};
    pen_.box(Role::box, outline, style().line);
}

void ChecklistBlock::row(const plan::Kerf& kerf, Length down) {
    const Length x = top_left_.x;
    const Length bottom = top_left_.y - down;
    const Length base = bottom + heights_.row / 2 - 4_pt;
    tick_box(pen_, {x + 3_pt, bottom + 1.5_pt}, heights_.row - 3_pt);
    // A part a kerf, not a part a figure: the packet's bytes and the time to finish it hang on the number of parts.
    const Scope item = pen_.within(Tag::list_item);
    pen_.text(Role::numeral, {x + 45_pt, base}, std::to_string(kerf.n),
              Type{numeral_face_of(kerf.n), style().strong}.at_right());
    pen_.text(Role::running, {x + 105_pt, base}, tape_.plain(kerf.mark),
              Type{Face::condensed, style().text}.at_right());
    pen_.text(Role::running, {x + 107_pt, base}, residue_text(kerf.mark - tape_.rounded(kerf.mark), tape_),
              {Face::condensed, style().tiny});
    pen_.text(Role::running, {x + width_ - 4_pt, base}, tape_.other(kerf.mark),
              Type{Face::condensed, style().small}.at_right());
    pen_.line(Role::box, {x, bottom}, {x + width_, bottom}, style().hair);
}

void ChecklistBlock::foot(std::size_t done, Length rows) {
    const Kit& kit = pen_.kit();
    const Length x = top_left_.x;
    const Length y = top_left_.y - rows;
    pen_.line(Role::box, {x, y}, {x + width_, y}, style().heavy);
    const std::string words = in_both(kit, "checklist.done", {{"n", std::to_string(done)}});
    const std::string rest =
        in_both(kit, "checklist.to_go", {{"n", std::to_string(piece_.blank().kerfs.size() - done)}});
    const Type rest_type = pen_.fitting(rest, {Face::regular, style().small}, width_ * 0.47).at_right();
    pen_.text(Role::text, {x + 4_pt, y - 11.5_pt}, words,
              pen_.fitting(words, {Face::bold, style().text}, width_ - 14_pt - pen_.width(rest, rest_type)));
    pen_.text(Role::text, {x + width_ - 4_pt, y - 11.5_pt}, rest, rest_type);
    const bool both = kit.second_words != nullptr;
    if (both) to_tick_in_both(y - 24.5_pt, done);
    else to_tick(y - 24.5_pt, done);
    depth_to_tick(y - (both ? 49.5_pt : 37_pt));
}

std::string ChecklistBlock::tape_words(std::size_t done) const {
    return in_both(pen_.kit(), "checklist.tape", {{"at", tape_.plain(piece_.blank().kerfs[done - 1].mark)}});
}

void ChecklistBlock::to_tick(Length base, std::size_t done) {
    const auto& words = pen_.kit().words;
    const Length x = top_left_.x;
    const Type small{Face::condensed, style().small};
    tick_box(pen_, {x + 4_pt, base - 1.8_pt}, 11_pt);
    pen_.text(Role::text, {x + 18_pt, base}, tape_words(done), small);
    tick_box(pen_, {x + 83_pt, base - 1.8_pt}, 11_pt);
    const Length rest = pen_.text(Role::text, {x + 97_pt, base}, words("checklist.rest"), small);
    const Length sign = x + std::max(119_pt, 100_pt + rest);
    const Length initials = pen_.text(Role::text, {sign, base}, words("checklist.initials"), small);
    pen_.line(Role::box, {sign + 2_pt + initials, base - 2_pt}, {x + width_ - 4_pt, base - 2_pt}, style().hair);
}

/// The same on two lines.
void ChecklistBlock::to_tick_in_both(Length base, std::size_t done) {
    const Kit& kit = pen_.kit();
    const Length x = top_left_.x;
    const Length lower = base - 12.5_pt;
    const Type small{Face::condensed, style().small};
    tick_box(pen_, {x + 4_pt, base - 1.8_pt}, 11_pt);
    pen_.text(Role::text, {x + 18_pt, base}, tape_words(done), small);
    tick_box(pen_, {x + 4_pt, lower - 1.8_pt}, 11_pt);
    const Length rest = pen_.text(Role::text, {x + 18_pt, lower}, in_both(kit, "checklist.rest"), small);
    const Length sign = x + 18_pt + rest + 8_pt;
    const Length initials = pen_.text(Role::text, {sign, lower}, in_both(kit, "checklist.initials"), small);
    pen_.line(Role::box, {sign + 2_pt + initials, lower - 2_pt}, {x + width_ - 4_pt, lower - 2_pt}, style().hair);
}

/// The depth in the kerf that was cut last, and the web under it: a stop that slips is found within ten cuts.
void ChecklistBlock::depth_to_tick(Length base) {
    const Length x = top_left_.x;
    const Type small{Face::condensed, style().small};
    constexpr Length least_blank = 26_pt;
    tick_box(pen_, {x + 4_pt, base - 1.8_pt}, 11_pt);
    const std::string depth = in_both(pen_.kit(), "checklist.depth", {{"depth", tape_.exact_plain(piece_.cut.depth)}});
    const Length web_at = x + 18_pt + pen_.text(Role::text, {x + 18_pt, base}, depth, small) + 8_pt;
    const std::string web = in_both(pen_.kit(), piece_.cut.moulded() ? "checklist.web_thinnest" : "checklist.web");
    const Length room = x + width_ - 4_pt - least_blank - web_at;
    const Length wide = pen_.text(Role::text, {web_at, base}, web, pen_.fitting(web, small, room));
    pen_.line(Role::box, {web_at + 2_pt + wide, base - 2_pt}, {x + width_ - 4_pt, base - 2_pt}, style().hair);
}

}  // namespace kerfpacket::sheets
