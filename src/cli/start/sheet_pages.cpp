// From the fields of a form to the pages of a field sheet, and what else a file may be.

#include <algorithm>
#include <charconv>
#include <map>
#include <optional>
#include <utility>

#include "cli/start/sheet_fields.h"
#include "sheets/blanks/field_sheet.h"

namespace kerfpacket::cli {
namespace {

std::string on_one_line(std::string text) {
    std::replace_if(
        text.begin(), text.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
    const std::size_t from = text.find_first_not_of(' ');
    return from == std::string::npos ? "" : text.substr(from, text.find_last_not_of(' ') - from + 1);
}

/// "opening-2-span": page 2, "opening-span". None where it is no name of ours.
std::optional<std::pair<int, std::string>> name_of(std::string_view name) {
    for (const std::string_view group : {"job-", "opening-", "wall-", "points-"}) {
        if (!name.starts_with(group)) continue;
        int page = 0;
        const char* const end = name.data() + name.size();
        const auto [at, wrong] = std::from_chars(name.data() + group.size(), end, page);
        if (wrong != std::errc{} || at == end || *at != '-' || page < 1 || page > 99) return {};
        return std::pair(page, std::string(group) + std::string(at + 1, end));
    }
    return {};
}

/// A copy of a field under another name: "name+1", "2.name".
bool of_a_merger(std::string_view name) {
    const std::size_t dot = name.find('.');
    const bool numbered = dot != std::string_view::npos && dot > 0 &&
                          name.substr(0, dot).find_first_not_of("0123456789") == std::string_view::npos;
    const std::string_view rest = numbered ? name.substr(dot + 1) : name.substr(0, name.find('+'));
    return rest.size() != name.size() && (rest == sheets::form_marker || name_of(rest).has_value());
}

void require_field_sheet(const output::FilledForm& form) {
    using output::Refusal;
    constexpr const char* ink = "was written over by hand: ink on it cannot be read; type the figures into its blanks";
    if (form.fields.empty())
        throw Refusal(form.drawn_over
                          ? ink
                          : "has no blanks to read: a field sheet that was printed or flattened has ink in their "
                            "place; send the file that the viewer saved, or type the figures: \"kerfpacket start\"");
    std::vector<std::string> markers;
    bool ours = false, merged = false, filled = false;
    for (const output::FilledField& field : form.fields) {
        if (field.name == sheets::form_marker) markers.push_back(field.value);
        const auto name = name_of(field.name);
        ours = ours || name.has_value();
        merged = merged || of_a_merger(field.name);
        filled = filled || (name && name->second != "job-units" && !field.value.empty());
    }
    if (merged || markers.size() > 1 || (ours && markers.empty()))
        throw Refusal("holds several sheets that were merged into one file: give them one by one");
    if (markers.empty() || !markers.front().starts_with("field-sheet "))
        throw Refusal("is a form, but no field sheet of kerfpacket");
    if (!markers.front().starts_with(sheets::form_kind))
        throw Refusal("is a field sheet of a later kerfpacket, which reads it");
    if (!filled) throw Refusal(form.drawn_over ? ink : "is empty: nothing was typed into it");
}

}  // namespace

std::vector<SheetPage> sheet_pages(const output::FilledForm& form) {
    require_field_sheet(form);
    std::map<int, SheetPage> pages;
    for (const output::FilledField& field : form.fields)
        if (auto name = name_of(field.name))
            pages[name->first].blanks.push_back(
                {name->second, on_one_line(field.tip.empty() ? name->second : field.tip), on_one_line(field.value)});
    std::vector<SheetPage> all;
    all.reserve(pages.size());
    for (auto& [number, page] : pages) all.push_back(std::move(page));
    return all;
}

}  // namespace kerfpacket::cli
