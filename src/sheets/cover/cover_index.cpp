#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "sheets/cover/cover_parts.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/sign_off.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length column_gap = 24_pt;

Length index_row(const fonts::Style& style) { return style.small * 1.61; }
Length first_index_line(const fonts::Style& style) { return style.strong + style.small * 2.2; }
/// From over its heading down.
Length list_height(const fonts::Style& style, std::size_t lines) {
    return first_index_line(style) + index_row(style) * static_cast<double>(lines);
}
Length long_index_row(const fonts::Style& style) { return style.small * 1.44; }

void index_line(Cover& cover, const IndexEntry& entry, Length left, Length right, Length base) {
    Pen pen = cover.flow.pen();
    const Scope list = pen.going_on(Tag::list);
    const Scope item = pen.within(Tag::list_item);
    const std::string pages = page_numbers(entry);
    const Type type = Cover::regular(cover.style().small);
    const Length room = right - left - pen.width(pages, type) - 8_pt;
    const std::string title =
        entry.sets == 1 ? entry.title
                        : cover.words("cover.sets", {{"title", entry.title}, {"n", std::to_string(entry.sets)}});
    pen.text(Role::text, {left, base}, title, pen.fitting(title, type, room));
    pen.text(Role::text, {right, base}, pages, type.at_right());
    pen.link({{left, base - type.size * 0.44}, {right, base + type.size * 1.1}}, entry.first);
}

/// From its first line down: a section is a heading and what stands under it.
Length totals_height(const fonts::Style& style) { return style.strong * 3.1 + style.small * 10.2 + 6_pt; }

void counts(Cover& cover, Length left, Length right, Length base, std::size_t pages) {
    Pen pen = cover.flow.pen();
    const fonts::Style& style = cover.style();
    const std::array<std::pair<std::string, std::string>, 3> figures{
        {{cover.words("cover.blanks"), std::to_string(cover.plan.blanks())},
         {cover.words("cover.cuts"), std::to_string(cover.plan.cuts())},
         {cover.words("cover.page_count"), std::to_string(pages)}}};
    std::string all;
    Length room = right - left - 54_pt;  // less the white between them
    for (const auto& [name, value] : figures) {
        all += name;
        room -= pen.width(value, Cover::bold(style.strong));
    }
    const Type type = pen.fitting(all, Cover::regular(style.small), room);
    Length x = left;
    for (const auto& [name, value] : figures) {
        const Scope pair = pen.within(Tag::paragraph);
        x += pen.text(Role::text, {x, base}, name, type) + 6_pt;
        x += pen.text(Role::text, {x, base}, value, Cover::bold(style.strong)) + 18_pt;
    }
}

void revision(Cover& cover, Length left, Length right, Length base) {
    Pen pen = cover.flow.pen();
    const fonts::Style& style = cover.style();
    const Scope line = pen.within(Tag::paragraph);
    const Length letter =
        std::max(40_pt, pen.text(Role::text, {left, base}, cover.plan.header.revision, Cover::bold(style.text)) + 8_pt);
    const std::string date = date_text(cover.plan.header.date, cover.kit().words);
    const std::string fingerprint = cover.words("page.fingerprint", {{"fingerprint", cover.plan.fingerprint}});
    const Type type = pen.fitting(date + fingerprint, Cover::regular(style.small), right - left - letter - 8_pt);
    pen.text(Role::text, {left + letter, base}, date, type);
    pen.text(Role::text, {right, base}, fingerprint, type.at_right());
}

/// Counts and revision, and who answers for the job; `top` is over the first heading.
void totals(Cover& cover, Length left, Length right, Length top, std::size_t pages) {
    Pen pen = cover.flow.pen();
    const fonts::Style& style = cover.style();
    Length y = top - style.strong;
    section(pen, left, right, y, cover.words("cover.totals"));
    y -= style.small * 2.55;
    counts(cover, left, right, y, pages);
    y -= style.strong * 2.1;
    section(pen, left, right, y, cover.words("cover.revision"));
    y -= style.small * 2.2;
    revision(cover, left, right, y);
    for (const char* who : {"page.cut_by", "page.checked_by"})
        sign_off(pen, left, right, y -= style.small * 2.6, {cover.words(who)}, cover.words("page.date"));
}

/// Index and totals side by side; what would be higher than the totals runs down two columns.
void short_index(Cover& cover, const std::vector<IndexEntry>& index, std::size_t pages) {
    const fonts::Style& style = cover.style();
    // In two columns a name and its pages have less than a quarter of the width.
    const bool narrow = std::all_of(index.begin(), index.end(), [&](const IndexEntry& entry) {
        const Type type{Face::condensed, style.small};
        return cover.flow.pen().width(entry.title + page_numbers(entry), type) + style.small <
               cover.flow.width() * 0.225;
    });
    const bool high = narrow && list_height(style, index.size()) > totals_height(style) + style.strong * 2;
    const std::size_t columns = high ? 2 : 1;
    const std::size_t rows = (index.size() + columns - 1) / columns;
    cover.flow.skip(style.strong * 0.7);
    const Rect block = cover.flow.take(std::max(list_height(style, rows), totals_height(style)));
    const Length split = block.low.x + block.width() * (high ? 0.54 : 0.5);
    const Length width = (split - 12_pt - block.low.x + column_gap) / static_cast<double>(columns) - column_gap;
    Pen pen = cover.flow.pen();
    section(pen, block.low.x, split - 12_pt, block.high.y - style.strong, cover.words("cover.pages"));
    for (std::size_t i = 0; i < index.size(); ++i) {
        const Length left = block.low.x + (width + column_gap) * static_cast<double>(i / rows);
        const Length down = first_index_line(style) + index_row(style) * static_cast<double>(i % rows);
        index_line(cover, index[i], left, left + width, block.high.y - down);
    }
    totals(cover, split + 6_pt, block.high.x, block.high.y, pages);
}

/// An index of many pieces runs down two columns, over as many pages as it takes; the totals stand below it.
void long_index(Cover& cover, const std::vector<IndexEntry>& index, std::size_t pages) {
    constexpr std::size_t columns = 2;
    const Length row = long_index_row(cover.style());
    for (std::size_t first = 0; first < index.size();) {
        cover.flow.heading(cover.words("cover.pages"));
        if (cover.flow.room() < row * 6) cover.flow.next_page();
        const auto fits = static_cast<std::size_t>(std::floor(cover.flow.room() / row));
        const std::size_t left = (index.size() - first + columns - 1) / columns;
        const std::size_t rows = std::min(fits, left);
        const Rect block = cover.flow.take(row * static_cast<double>(rows));
        const Length width = (block.width() - column_gap) / static_cast<double>(columns);
        for (std::size_t i = 0; i < rows * columns && first + i < index.size(); ++i) {
            const Length x = block.low.x + (width + column_gap) * static_cast<double>(i / rows);
            const Length base = block.high.y - row * (0.92 + static_cast<double>(i % rows));
            index_line(cover, index[first + i], x, x + width, base);
        }
        first += rows * columns;
        if (first < index.size()) cover.flow.next_page();
    }
    cover.flow.skip(cover.style().strong);
    const Rect block = cover.flow.take(totals_height(cover.style()));
    totals(cover, block.low.x, block.high.x, block.high.y, pages);
}

/// A kind of sheets as the index names it: "Arch template".
std::string kind_name(const Cover& cover, std::string_view kind) {
    std::string key(kind);
    std::replace(key.begin(), key.end(), '-', '_');
    std::string name = cover.words(key + ".outline", {{"piece", ""}});
    return name.erase(0, name.find_first_not_of(' '));
}

}  // namespace

void cover_index(Cover& cover, const std::vector<IndexEntry>& index, std::size_t pages) {
    if (list_height(cover.style(), index.size()) <= cover.flow.page_room()) short_index(cover, index, pages);
    else long_index(cover, index, pages);
    std::vector<std::string> left_out;
    for (const std::string_view kind : cover.plan.packet.leave_out) left_out.push_back(kind_name(cover, kind));
    if (left_out.empty()) return;
    cover.flow.listed(Role::text, {},
                      cover.words("cover.left_out", {{"kinds", fmt::format("{}", fmt::join(left_out, ", "))}}),
                      Cover::regular(cover.style().small));
}

}  // namespace kerfpacket::sheets
