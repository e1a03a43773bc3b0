#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "sheets/cover/cover_flow.h"
#include "sheets/layout/sign_off.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length index_row = 14.5_pt;
constexpr Length long_index_row = 13_pt;
constexpr Length totals_height = 140_pt;
constexpr Length column_gap = 24_pt;

void index_line(CoverFlow& flow, const IndexEntry& entry, Length left, Length right, Length base) {
    Pen pen = flow.pen();
    const Scope list = pen.going_on(Tag::list);
    const Scope item = pen.within(Tag::list_item);
    const std::string pages = entry.first == entry.last
                                  ? std::to_string(entry.first + 1)
                                  : std::to_string(entry.first + 1) + "-" + std::to_string(entry.last + 1);
    const Type type = CoverFlow::regular(flow.style().small);
    pen.text(Role::text, {left, base}, entry.title, type);
    pen.text(Role::text, {right, base}, pages, type.at_right());
    pen.link({{left, base - 4_pt}, {right, base + 10_pt}}, entry.first);
}

void totals(CoverFlow& flow, Length left, Length top, std::size_t pages) {
    Pen pen = flow.pen();
    const fonts::Style& style = flow.style();
    const Length right = flow.right();
    const auto regular = CoverFlow::regular(style.small);
    section(pen, left, right, top, flow.words("cover.totals"));
    Length x = left;
    const std::array<std::pair<const char*, std::size_t>, 3> figures{
        {{"cover.blanks", static_cast<std::size_t>(flow.plan().blanks())},
         {"cover.cuts", static_cast<std::size_t>(flow.plan().cuts())},
         {"cover.page_count", pages}}};
    for (const auto& [key, value] : figures) {
        const Scope pair = pen.within(Tag::paragraph);
        x += pen.text(Role::text, {x, top - 23_pt}, flow.words(key), regular) + 6_pt;
        x += pen.text(Role::text, {x, top - 23_pt}, std::to_string(value), CoverFlow::bold(style.strong)) + 18_pt;
    }
    const Length revision = top - 50_pt;
    section(pen, left, right, revision, flow.words("cover.revision"));
    {
        const Scope line = pen.within(Tag::paragraph);
        pen.text(Role::text, {left, revision - 20_pt}, flow.plan().header.revision, CoverFlow::bold(style.text));
        pen.text(Role::text, {left + 40_pt, revision - 20_pt}, date_text(flow.plan().header.date, flow.kit().words),
                 regular);
        pen.text(Role::text, {right, revision - 20_pt},
                 flow.words("page.fingerprint", {{"fingerprint", flow.plan().fingerprint}}), regular.at_right());
    }
    Length sign = revision - 24_pt;
    for (const char* who : {"page.cut_by", "page.checked_by"})
        sign_off(pen, left, right, sign -= 22_pt, {flow.words(who)}, flow.words("page.date"));
}

/// Index and totals side by side.
void short_index(CoverFlow& flow, const std::vector<IndexEntry>& index, std::size_t pages) {
    flow.need(std::max(index_row * static_cast<double>(index.size()), totals_height) + 30_pt);
    flow.y -= 20_pt;
    const Length split = (flow.right() + side_margin) / 2;
    Pen pen = flow.pen();
    section(pen, side_margin, split - 12_pt, flow.y, flow.words("cover.pages"));
    Length base = flow.y - 20_pt;
    for (const IndexEntry& entry : index) {
        index_line(flow, entry, side_margin, split - 12_pt, base);
        base -= index_row;
    }
    totals(flow, split + 6_pt, flow.y, pages);
}

/// An index of many pieces runs down two columns, over as many pages as it takes; the totals stand below it.
void long_index(CoverFlow& flow, const std::vector<IndexEntry>& index, std::size_t pages) {
    constexpr std::size_t columns = 2;
    for (std::size_t first = 0; first < index.size();) {
        flow.heading("cover.pages", long_index_row * 6);
        const auto fits = static_cast<std::size_t>(std::floor((flow.y - CoverFlow::lowest) / long_index_row));
        const std::size_t left = (index.size() - first + columns - 1) / columns;
        const std::size_t rows = std::min(fits, left);
        const Length width = (flow.width() - column_gap) / static_cast<double>(columns);
        for (std::size_t i = 0; i < rows * columns && first + i < index.size(); ++i) {
            const std::size_t column = i / rows;
            const Length x = side_margin + (width + column_gap) * static_cast<double>(column);
            index_line(flow, index[first + i], x, x + width,
                       flow.y - 12_pt - long_index_row * static_cast<double>(i % rows));
        }
        first += rows * columns;
        flow.y -= long_index_row * static_cast<double>(rows);
        if (first < index.size()) flow.start_page(false);
    }
    flow.need(totals_height + 20_pt);
    flow.y -= 24_pt;
    totals(flow, side_margin, flow.y, pages);
}

}  // namespace

void cover_index(CoverFlow& flow, const std::vector<IndexEntry>& index, std::size_t pages) {
    const bool fits_a_page = index_row * static_cast<double>(index.size()) + 30_pt <= flow.page_room();
    if (fits_a_page) short_index(flow, index, pages);
    else long_index(flow, index, pages);
}

}  // namespace kerfpacket::sheets
