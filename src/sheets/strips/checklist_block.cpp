#include "sheets/strips/checklist_block.h"

#include <algorithm>
#include <cmath>

#include "sheets/layout/furniture.h"
#include "sheets/words/numeral.h"

namespace kerfpacket::sheets {
namespace {

/// To write the web or initials on, at least.
constexpr Length least_blank = 26_pt;

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
    if (kit.second_words != nullptr) return to_tick_in_both(y - 24.5_pt, done);
    to_tick(y - 24.5_pt, done);
    depth_to_tick(y - 37_pt);
}

fonts::Words::Values ChecklistBlock::tape_value(std::size_t done) const {
    return {{"at", tape_.plain(piece_.blank().kerfs[done - 1].mark)}};
}

fonts::Words::Values ChecklistBlock::depth_value() const { return {{"depth", tape_.exact_plain(piece_.cut.depth)}}; }

std::string_view ChecklistBlock::web_key() const {
    return piece_.cut.moulded() ? "checklist.web_thinnest" : "checklist.web";
}

void ChecklistBlock::to_tick(Length base, std::size_t done) {
    const auto& words = pen_.kit().words;
    const Length x = top_left_.x;
    const Type small{Face::condensed, style().small};
    tick_box(pen_, {x + 4_pt, base - 1.8_pt}, 11_pt);
    pen_.text(Role::text, {x + 18_pt, base}, words("checklist.tape", tape_value(done)), small);
    tick_box(pen_, {x + 83_pt, base - 1.8_pt}, 11_pt);
    const Length rest = pen_.text(Role::text, {x + 97_pt, base}, words("checklist.rest"), small);
    const Length sign = x + std::max(119_pt, 100_pt + rest);
    const Length initials = pen_.text(Role::text, {sign, base}, words("checklist.initials"), small);
    pen_.line(Role::box, {sign + 2_pt + initials, base - 2_pt}, {x + width_ - 4_pt, base - 2_pt}, style().hair);
}

/// The same in two languages: each on a line of its own.
void ChecklistBlock::to_tick_in_both(Length base, std::size_t done) {
    const Kit& kit = pen_.kit();
    const Length end = top_left_.x + width_ - 4_pt;
    const Length words_from = top_left_.x + 18_pt;
    const auto line = [&](std::string_view key, const fonts::Words::Values& values, Length blank) {
        tick_box(pen_, {top_left_.x + 4_pt, base - 1.8_pt}, 11_pt);
        return words_from + set(in_both(kit, key, values), {words_from, base}, end - blank - words_from);
    };
    const auto to_write_on = [&](Length from) {
        pen_.line(Role::box, {from + 2_pt, base - 2_pt}, {end, base - 2_pt}, style().hair);
    };
    line("checklist.tape", tape_value(done), {});
    base -= line_in_both;
    const std::string initials = in_both(kit, "checklist.initials");
    const Length sign = line("checklist.rest", {}, (end - words_from) / 2 + least_blank / 2) + 8_pt;
    to_write_on(sign + set(initials, {sign, base}, end - least_blank - sign));
    base -= line_in_both;
    line("checklist.depth", depth_value(), {});
    base -= line_in_both;
    to_write_on(line(web_key(), {}, least_blank));
}

/// Words in type that their room asks for; returns their width.
Length ChecklistBlock::set(const std::string& words, Point base, Length room) {
    return pen_.text(Role::text, base, words, pen_.fitting(words, {Face::condensed, style().small}, room));
}

/// The depth in the kerf that was cut last, and the web under it: a stop that slips is found within ten cuts.
void ChecklistBlock::depth_to_tick(Length base) {
    const Length x = top_left_.x;
    const Type small{Face::condensed, style().small};
    tick_box(pen_, {x + 4_pt, base - 1.8_pt}, 11_pt);
    const std::string depth = pen_.kit().words("checklist.depth", depth_value());
    const Length web_at = x + 18_pt + pen_.text(Role::text, {x + 18_pt, base}, depth, small) + 8_pt;
    const Length wide = set(pen_.kit().words(web_key()), {web_at, base}, x + width_ - 4_pt - least_blank - web_at);
    pen_.line(Role::box, {web_at + 2_pt + wide, base - 2_pt}, {x + width_ - 4_pt, base - 2_pt}, style().hair);
}

}  // namespace kerfpacket::sheets
