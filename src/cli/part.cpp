#include "cli/part.h"

#include <algorithm>
#include <charconv>
#include <stdexcept>
#include <string_view>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "job/diagnostics.h"

namespace kerfpacket::cli {
namespace {

using Pages = std::vector<std::pair<std::size_t, std::size_t>>;

std::optional<std::size_t> whole_number(std::string_view text) {
    std::size_t value = 0;
    const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (failed != std::errc{} || end != text.data() + text.size() || value == 0) return std::nullopt;
    return value;
}

/// "7" or "9-12".
std::optional<Pages::value_type> page_range(std::string_view text) {
    const std::size_t dash = text.find('-');
    const auto first = whole_number(text.substr(0, dash));
    const auto last = dash == std::string_view::npos ? first : whole_number(text.substr(dash + 1));
    if (!first || !last || *first > *last) return std::nullopt;
    return std::pair{*first, *last};
}

Pages pages_of(const std::string& text) {
    Pages pages;
    for (std::string_view rest = text; !rest.empty();) {
        const std::size_t comma = rest.find(',');
        const auto range = page_range(rest.substr(0, comma));
        if (!range)
            throw std::runtime_error(
                fmt::format("--pages {}: expected pages like 7,9-12, as the packet's cover lists them", text));
        pages.push_back(*range);
        if (comma == std::string_view::npos) return pages;
        rest.remove_prefix(comma + 1);
    }
    throw std::runtime_error(
        fmt::format("--pages {}: expected pages like 7,9-12, as the packet's cover lists them", text));
}

}  // namespace

sheets::Part part_of(const PartChoice& choice, const std::vector<std::string>& kinds) {
    for (const std::string& sheet : choice.only) {
        if (std::find(kinds.begin(), kinds.end(), sheet) != kinds.end()) continue;
        const std::string near = job::near_miss(sheet, {kinds.begin(), kinds.end()});
        throw std::runtime_error(fmt::format("--only {}: there is no such sheet; {}", sheet,
                                             near.empty() ? fmt::format("the sheets are {}", fmt::join(kinds, ", "))
                                                          : fmt::format("did you mean {}?", near)));
    }
    sheets::Part part{choice.only, {}, choice.from_cut, choice.strip};
    if (!choice.pages.empty()) part.pages = pages_of(choice.pages);
    return part;
}

std::string nothing_left(const PartChoice& choice) {
    std::vector<std::string> asked;
    if (!choice.only.empty()) asked.push_back(fmt::format("--only {}", fmt::join(choice.only, ",")));
    if (!choice.pages.empty()) asked.push_back("--pages " + choice.pages);
    if (choice.from_cut) asked.push_back(fmt::format("--from-cut {}", *choice.from_cut));
    if (choice.strip) asked.push_back(fmt::format("--strip {}", *choice.strip));
    return fmt::format(
        "{}: no page of this packet is that; its cover lists the pages (--pages 1 prints it), and "
        "\"kerfpacket check\" tells the cuts",
        fmt::join(asked, " "));
}

}  // namespace kerfpacket::cli
