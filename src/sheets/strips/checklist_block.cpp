#include "sheets/strips/checklist_block.h"

#include <algorithm>
#include <array>

#include "sheets/layout/furniture.h"
#include "sheets/words/numeral.h"

namespace kerfpacket::sheets {
namespace {

/// To write the web or initials on, at least.
constexpr Length least_blank = 26_pt;

/// Of a foot for several boards: its words, the figures to look for, and a line for each board, which a hand writes on.
constexpr Length line_of_words = 11_pt;
constexpr Length line_of_board_height = 15_pt;
/// In it, from the block's left edge: the middles of the boxes, and where the blanks begin.
constexpr std::array<Length, 3> boxes_at{26_pt, 48_pt, 70_pt};
constexpr Length blanks_from = 83_pt;
constexpr Length small_box = 11_pt;

/// Without the spaces that a name left empty leaves at the ends.
std::string trimmed(const std::string& text) {
    const std::size_t first = text.find_first_not_of(' ');
    return first == std::string::npos ? std::string() : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

}  // namespace

BlockHeights block_heights(std::size_t boards, const Kit& kit) {
    const bool both = kit.second_words != nullptr;
    if (boards == 1) return {0_pt, 18_pt, both ? 66.5_pt : 41_pt};
    return {10_pt, 18_pt, 18_pt + line_of_words * (both ? 3 : 2) + line_of_board_height * static_cast<double>(boards)};
}

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
    if (for_several()) names();
    {
        const Scope list = pen_.within(Tag::list);
        for (std::size_t i = first; i < end; ++i)
            row(piece_.blank().kerfs[i], heights_.head + heights_.row * static_cast<double>(i - first + 1));
    }
    const Length rows = heights_.head + heights_.row * static_cast<double>(end - first);
    foot(end, rows);
    const Rect outline{{top_left_.x, top_left_.y - rows - heights_.foot}, {top_left_.x + width_, top_left_.y}};
    pen_.box(Role::box, outline, style().line);
}

void ChecklistBlock::row(const plan::Kerf& kerf, Length down) {
    const Length x = top_left_.x;
    const Length bottom = top_left_.y - down;
    const Length base = bottom + heights_.row / 2 - 4_pt;
    for (int n = 0; n < boards_.count(); ++n)
        tick_box(pen_, {x + box_at(static_cast<std::size_t>(n), heights_.row), bottom + 1.5_pt}, heights_.row - 3_pt);
    // A part a kerf, not a part a figure: the packet's bytes and the time to finish it hang on the number of parts.
    const Scope item = pen_.within(Tag::list_item);
    pen_.text(Role::numeral, {x + places_.numeral, base}, std::to_string(kerf.n),
              Type{numeral_face_of(kerf.n), style().strong}.at_right());
    pen_.text(Role::running, {x + places_.mark, base}, tape_.plain(kerf.mark),
              Type{Face::condensed, style().text}.at_right());
    pen_.text(Role::running, {x + places_.residue, base}, residue_text(kerf.mark - tape_.rounded(kerf.mark), tape_),
              {Face::condensed, style().tiny});
    pen_.text(Role::running, {x + places_.other, base}, tape_.other(kerf.mark),
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
    if (for_several()) return for_each_board(y - 11.5_pt - line_of_words, done);
    if (kit.second_words != nullptr) return to_tick_in_both(y - 24.5_pt, done);
    to_tick(y - 24.5_pt, done);
    depth_to_tick(y - 37_pt);
}

std::string ChecklistBlock::board_name(int n) const {
    return pen_.kit().words("checklist.column", {{"n", std::to_string(n)}});
}

/// Over the boxes, which board each column is for.
void ChecklistBlock::names() {
    const Length base = top_left_.y - heights_.head + 2_pt;
    for (int n = boards_.n; n <= boards_.last; ++n) {
        const Length middle = box_at(static_cast<std::size_t>(n - boards_.n), heights_.row) + (heights_.row - 3_pt) / 2;
        pen_.text(Role::text, {top_left_.x + middle, base}, board_name(n),
                  Type{Face::condensed_bold, style().tiny}.centred());
    }
}

/// What to look for, the same for all of them, and a line for each to tick and to write on.
void ChecklistBlock::for_each_board(Length base, std::size_t done) {
    const Kit& kit = pen_.kit();
    const std::string figures =
        in_both(kit, "checklist.tape", tape_value(done)) + "   " + in_both(kit, "checklist.depth", depth_value());
    set(figures, {top_left_.x + 4_pt, base}, width_ - 8_pt);
    heads_of_boards(base -= line_of_words, kit.words);
    if (kit.second_words != nullptr) heads_of_boards(base -= line_of_words, *kit.second_words);
    for (int n = boards_.n; n <= boards_.last; ++n) line_of_board(base -= line_of_board_height, n);
}

void ChecklistBlock::heads_of_boards(Length base, const fonts::Words& words) {
    const Type type = Type{Face::condensed, style().tiny}.centred();
    const auto head = [&](Length middle, const std::string& text, Length room) {
        pen_.text(Role::text, {top_left_.x + middle, base}, text, pen_.fitting(text, type, room));
    };
    const std::array<std::string, 3> ticked{trimmed(words("checklist.tape", {{"at", ""}})), words("checklist.rest"),
                                            trimmed(words("checklist.depth", {{"depth", ""}}))};
    for (std::size_t i = 0; i < ticked.size(); ++i) head(boxes_at.at(i), ticked.at(i), 21_pt);
    const Length half = (width_ - blanks_from) / 2;
    head(blanks_from + half / 2, words(piece_.cut.moulded() ? "checklist.web_thinnest" : "checklist.web_column"), half);
    head(blanks_from + half * 1.5, words("checklist.initials"), half);
}

void ChecklistBlock::line_of_board(Length base, int n) {
    const Length x = top_left_.x;
    pen_.text(Role::text, {x + 3_pt, base}, board_name(n), Type{Face::condensed_bold, style().tiny});
    for (const Length middle : boxes_at) tick_box(pen_, {x + middle - small_box / 2, base - 1.8_pt}, small_box);
    const Length half = (width_ - blanks_from) / 2;
    for (const double part : {0.0, 1.0}) {
        const Length from = x + blanks_from + half * part;
        pen_.line(Role::box, {from, base - 2_pt}, {from + half - 5_pt, base - 2_pt}, style().hair);
    }
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
