#include "sheets/layout/furniture.h"

#include <algorithm>
#include <array>

#include "plan/stopped.h"
#include "sheets/layout/page_index.h"
#include "sheets/layout/roll_furniture.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// A letter or two are 24 pt; the names of several pieces that share a sheet are smaller.
Type tag_type(const Pen& pen, const std::string& tag) {
    constexpr Length widest = 84_pt;
    const fonts::Style& style = pen.kit().style;
    Type type{Face::bold, style.huge, Align::centre, {}, Ink::white};
    for (const Length size : {style.title, style.strong})
        if (pen.width(tag, type) > widest) type.size = size;
    return type;
}

/// The black square with the piece's letter; returns where the title may start.
Length piece_tag(Pen& pen, const std::string& tag) {
    if (tag.empty()) return side_margin;
    const Length top = pen.from_top(29_pt);
    const Type type = tag_type(pen, tag);
    const Length side = tag_width(pen, tag);
    pen.fill(Role::furniture, Path::rectangle({{side_margin, top - 27_pt}, {side_margin + side, top}}));
    pen.text(Role::furniture, {side_margin + side / 2, top - 13.5_pt - type.size * 0.367}, tag, type);
    return side_margin + side + 9_pt;
}

void header(Pen& pen, const Draft& draft, std::size_t number, std::size_t count) {
    const auto& style = pen.kit().style;
    const Length right = sheet_code_left(pen.page_width()) - sheet_code_gap;
    const Length base = pen.from_top(48_pt);
    const Scope heading = pen.title();
    const Length left = piece_tag(pen, draft.tag);
    const std::string page =
        pen.kit().words("page.number", {{"n", std::to_string(number)}, {"m", std::to_string(count)}});
    const Type page_type = Type{Face::bold, style.strong}.at_right();
    const Length room = right - pen.width(page, page_type) - 8_pt - left;
    const std::string words = title_words(draft, pen.kit());
    const Length title =
        pen.text(Role::furniture, {left, base}, words, pen.fitting(words, {Face::bold, style.title}, room));
    // Words that the page's number leaves no room for in any of these are not said: the sheet itself says them.
    const Length from = left + title + 12_pt;
    for (const Type type : {Type{Face::regular, style.text}, Type{Face::condensed, style.text},
                            Type{Face::condensed, style.small}, Type{Face::condensed, style.tiny}}) {
        if (from + pen.width(draft.subtitle, type) + 8_pt > right - pen.width(page, page_type)) continue;
        pen.text(Role::furniture, {from, base}, draft.subtitle, type);
        break;
    }
    {
        const Scope artifact = pen.within(Tag::artifact);
        pen.text(Role::furniture, {right, base}, page, page_type);
    }
    const Scope frame = pen.within(Tag::frame);
    pen.line(Role::furniture, {side_margin, pen.from_top(62_pt)}, {right, pen.from_top(62_pt)}, style.line);
}

/// White on black over the title, as wide as the header.
void band(Pen& pen, const std::string& words) {
    const Rect room{{side_margin, pen.from_top(28.5_pt)},
                    {sheet_code_left(pen.page_width()) - sheet_code_gap, pen.from_top(18_pt)}};
    const Type type = pen.fitting(words, Type{Face::bold, 9_pt}.white(), room.width() - 8_pt);
    pen.fill(Role::caution, Path::rectangle(room));
    pen.text(Role::caution, {room.low.x + 4_pt, room.low.y + 2.2_pt}, words, type);
}

/// Over the title: the page was printed again.
void reprint_stamp(Pen& pen, const std::string& words) {
    const Kit& kit = pen.kit();
    const Type type{Face::bold, kit.style.small, Align::centre};
    // Left of a template's small map.
    const Point anchor{pen.page_width() / 2, pen.from_top(29_pt)};
    const Length half = pen.width(words, type) / 2 + 4_pt;
    pen.text(Role::furniture, anchor, words, type);
    pen.box(Role::furniture, {anchor - Point{half, 3.5_pt}, anchor + Point{half, 8.5_pt}}, kit.style.line);
}

void footer(Pen& pen, const plan::Plan& plan, Use use) {
    const Scope frame = pen.within(Tag::frame);
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const Length right = pen.page_width() - side_margin;
    pen.line(Role::furniture, {side_margin, 36_pt}, {right, 36_pt}, style.line);
    const std::string identity =
        words("page.identity",
              {{"number", plan.header.number}, {"title", plan.header.title}, {"revision", plan.header.revision}});
    const std::string print = print_words(plan, use, pen.kit());
    const std::string mark = words("page.fingerprint", {{"fingerprint", plan.fingerprint}});
    const Type small{Face::regular, style.small};
    const Type tiny{Face::regular, style.tiny};
    const Length base = 25_pt;
    const Length mark_width = pen.text(Role::furniture, {right, base}, mark, small.at_right());
    const Length room = right - side_margin - mark_width - 24_pt;
    // A long job title gives way in size, then takes the line alone and sends the rest below; never in words.
    Type type{Face::bold, style.small};
    if (pen.width(identity, type) + pen.width(print, tiny) > room) type.size = style.tiny;
    const Length used = pen.width(identity, type);
    if (used + pen.width(print, tiny) > room) {
        // The lower line's descenders stay 1/4 in clear of the edge, the upper one's ascenders clear of the rule.
        pen.text(Role::furniture, {side_margin, base + 3_pt}, identity, type);
        pen.text(Role::furniture, {side_margin, base - 5_pt}, print, tiny);
        return;
    }
    pen.text(Role::furniture, {side_margin, base}, identity, type);
    const Type fitting = used + pen.width(print, small) > room ? tiny : small;
    pen.text(Role::furniture, {(side_margin + used + right - mark_width) / 2, base}, print, fitting.centred());
}

}  // namespace

Length tag_width(const Pen& pen, const std::string& tag) {
    return std::max(27_pt, pen.width(tag, tag_type(pen, tag)) + 8_pt);
}

std::string title_words(const Draft& draft, const Kit& kit) {
    const ForBoards& boards = draft.boards;
    if (boards.of == 1) return draft.title;
    const fonts::Words::Values values{
        {"n", std::to_string(boards.n)}, {"last", std::to_string(boards.last)}, {"m", std::to_string(boards.of)}};
    return draft.title + ", " +
           kit.words(boards.n == 0        ? "page.board_by_hand"
                     : boards.count() > 1 ? "page.boards"
                                          : "page.board",
                     values);
}

void draw_check_bar(Pen& pen, Point zero, Direction along, CheckBar bar, bool words_too) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const Direction inch_side = along.left();
    const Length inch_end = Length::inches(bar.inches);
    const Length mm_end = Length::mm(bar.millimetres);
    const Length end = std::max(inch_end, mm_end);
    const Type label{Face::regular, style.small, Align::centre, along.angle()};
    const std::string words_in_bar =
        words("page.check", {{"inches", std::to_string(bar.inches)}, {"mm", std::to_string(bar.millimetres)}});
    const Scope figure = pen.figure(words_in_bar);
    const Length gap = words_too ? (pen.width(words_in_bar, label) + 10_pt) / 2 : 0_pt;
    // In the middle, unless the shorter of the two ends there.
    const Length middle = words_too ? std::min(end / 2, std::min(inch_end, mm_end) - 40_pt - gap) : end / 2;
    pen.line(Role::check_bar, zero, zero + along * (middle - gap), style.fine);
    pen.line(Role::check_bar, zero + along * (middle + gap), zero + along * end, style.fine);
    if (words_too) pen.text(Role::check_bar, zero + along * middle - inch_side * 3_pt, words_in_bar, label);

    const auto mark = [&](Length at, Length up, Length down) {
        const Point on = zero + along * at;
        pen.line(Role::check_bar, on - inch_side * down, on + inch_side * up, style.fine);
    };
    mark(0_pt, 6_pt, 6_pt);
    for (int i = 1; i < bar.inches; ++i)
        if (measure::abs(Length::inches(i) - middle) >= gap) mark(Length::inches(i), 3_pt, 0_pt);
    for (int i = 50; i < bar.millimetres; i += 50)
        if (measure::abs(Length::mm(i) - middle) >= gap) mark(Length::mm(i), 0_pt, 3_pt);
    if (bar.inches > 0) mark(inch_end, 6_pt, 0_pt);
    if (bar.millimetres > 0) mark(mm_end, 0_pt, 7_pt);
    const Type tiny{Face::regular, style.tiny, Align::right, along.angle()};
    if (bar.inches > 0)
        pen.text(Role::check_bar, zero + along * (inch_end - 3_pt) + inch_side * 1.5_pt,
                 words("page.inches", {{"n", std::to_string(bar.inches)}}), tiny);
    if (bar.millimetres > 0)
        pen.text(Role::check_bar, zero + along * (mm_end - 3_pt) - inch_side * 7.8_pt,
                 words("page.millimetres", {{"n", std::to_string(bar.millimetres)}}), tiny);
    Type zero_type = tiny;
    zero_type.align = Align::left;
    pen.text(Role::check_bar, zero + along * 3_pt + inch_side * 1.5_pt, "0", zero_type);
}

namespace {

/// The longest of these lengths that fits; the last of them, where none does.
template <std::size_t N, class ToLength>
int longest(const std::array<int, N>& lengths, Length space, ToLength to_length) {
    const auto fits =
        std::find_if(lengths.begin(), lengths.end(), [&](int n) { return to_length(n) <= space + 0.001_mm; });
    return fits == lengths.end() ? lengths.back() : *fits;
}
Length inches(int n) { return Length::inches(n); }
Length millimetres(int n) { return Length::mm(n); }

}  // namespace

std::string forbidding(const Draft& draft, const plan::Plan& plan, const Kit& kit) {
    for (const plan::Piece& piece : plan.pieces) {
        const bool own =
            is_of(draft.page.piece, piece.id) || (piece.spliced() && draft.page.piece.starts_with(piece.id + "/"));
        const plan::Stopped why = plan::stopped(piece);
        if ((!own && draft.tag != piece.id && draft.tag != measured_id(piece)) || why == plan::Stopped::no) continue;
        const std::string named = own ? draft.page.piece : piece.id;
        if (why == plan::Stopped::weak_link) return kit.words("page.band_weak_link", {{"piece", named}});
        const bool scrap = std::any_of(piece.deep_kerfs.begin(), piece.deep_kerfs.end(),
                                       [](const auto& kerf) { return kerf.answer.mend == bend::Mend::scrap; });
        return kit.words(scrap ? "page.band_scrap" : "page.band_break", {{"piece", named}});
    }
    return {};
}

std::string profile_name(const plan::Plan& plan, Use use, const Kit& kit) {
    const job::Profile* profile = profile_for(plan, use);
    return profile != nullptr ? profile->name : kit.words("page.no_profile");
}

CheckBar check_bar_for(Length space) {
    return {longest(std::array{10, 8, 7, 6}, space, inches),
            longest(std::array{250, 200, 180, 150}, space, millimetres)};
}

CheckBar short_check_bar_for(Length space) {
    return {longest(std::array{10, 8, 7, 6, 5, 4, 3, 2, 1, 0}, space, inches),
            longest(std::array{250, 200, 180, 150, 120, 100, 80, 60, 50, 40, 30, 20, 0}, space, millimetres)};
}

std::string print_words(const plan::Plan& plan, Use use, const Kit& kit) {
    return kit.words("page.print",
                     {{"media", media_text(media_for(plan, use), kit)}, {"profile", profile_name(plan, use, kit)}});
}

void add_furniture(Draft& draft, const plan::Plan& plan, const Kit& kit, std::size_t number, std::size_t count) {
    if (draft.roll) return add_roll_furniture(draft, plan, kit, number, count);
    Pen pen(draft.page, kit);
    header(pen, draft, number, count);
    draw_sheet_code(draft.page, plan, number, sheet_code_place(pen.page_width(), pen.page_height()));
    footer(pen, plan, draft.use);
    if (draft.scale == Scale::full) {
        const Length bottom = 71_pt;
        draw_check_bar(pen, {side_margin, check_bar_height}, {1, 0}, check_bar_for(pen.page_width() - side_margin * 2));
        draw_check_bar(pen, {26_pt, bottom}, {0, 1}, check_bar_for(pen.page_height() - bottom - 103_pt));
    }
    const std::string reprint =
        draft.reprint ? kit.words("page.reprint", {{"n", std::to_string(number)}, {"revision", plan.header.revision}})
                      : std::string();
    if (const std::string stop = forbidding(draft, plan, kit); !stop.empty())
        band(pen, reprint.empty() ? stop : stop + "   " + reprint);
    else if (!reprint.empty()) reprint_stamp(pen, reprint);
}

void section(Pen& pen, Length left, Length right, Length baseline, const std::string& heading,
             const std::string& aside) {
    const auto& style = pen.kit().style;
    const Scope part = pen.within(Tag::heading);
    // Where both are long, the heading leaves the aside the least that it needs.
    const Length least = aside.empty() ? Length() : pen.width(aside, {Face::condensed, style.tiny}) + 10_pt;
    const Type head = pen.fitting(heading, {Face::bold, style.strong}, right - left - least);
    const Length used = pen.text(Role::furniture, {left, baseline}, heading, head);
    Type type = Type{Face::regular, style.small}.at_right();
    const Length room = right - left - used - 10_pt;
    if (!aside.empty() && pen.width(aside, type) > room) type.size = style.tiny;
    type = pen.fitting(aside, type, room);
    pen.text(Role::furniture, {right, baseline}, aside, type);
    pen.line(Role::furniture, {left, baseline - 6.5_pt}, {right, baseline - 6.5_pt}, style.line);
}

void tick_box(Pen& pen, Point low_left, Length side) {
    pen.box(Role::box, {low_left, {low_left.x + side, low_left.y + side}}, pen.kit().style.line);
}

}  // namespace kerfpacket::sheets
