#include "fonts/shop_words.h"

#include <algorithm>
#include <array>
#include <set>
#include <stdexcept>

#include <fmt/format.h>

#include "fonts/utf8.h"
#include "measure/near_miss.h"

namespace kerfpacket::fonts {
namespace {

/// Beginnings of the keys that stand as they are. What else warns is named "caution..." in its own file.
constexpr std::array<std::string_view, 24> cautions{"safety.",
                                                    "bid.not_made",
                                                    "bid.stopped",
                                                    "cautions.",
                                                    "checklist.statement",
                                                    "coupon.make_hold",
                                                    "install.before_lines",
                                                    "install.fastening_lines",
                                                    "install.log_note",
                                                    "install.statement",
                                                    "cover.banner_",
                                                    "piece.coupon_first",
                                                    "piece.verdict_",
                                                    "settings.least_strain",
                                                    "setup.kerf_scrapped",
                                                    "setup.kerf_through",
                                                    "setup.manual",
                                                    "setup.unplugged",
                                                    "chance.",
                                                    "stock.not_made",
                                                    "stock.stopped",
                                                    "strain.in_break",
                                                    "strain.one_in_break",
                                                    "strip.low_tack"};

std::string stem_of(std::string_view key) { return std::string(key.substr(0, key.find('.'))); }

bool warns(std::string_view key) {
    if (key.find(".caution") != std::string_view::npos) return true;
    return std::any_of(cautions.begin(), cautions.end(), [&](std::string_view c) { return key.starts_with(c); });
}

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

bool is_one_line(std::string_view text) {
    return std::none_of(text.begin(), text.end(),
                        [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}

bool is_blank(std::string_view text) { return text.find_first_not_of(' ') == std::string_view::npos; }

/// ", did you mean cover.title?", or nothing.
std::string meant(std::string_view key, const std::set<std::string>& known) {
    const std::string near = measure::near_miss(key, {known.begin(), known.end()});
    return near.empty() ? "" : fmt::format("; did you mean {}?", near);
}

std::string braces(const std::set<std::string>& names) {
    if (names.empty()) return "no name in braces";
    std::string text;
    for (const std::string& name : names) text += (text.empty() ? "{" : ", {") + name + "}";
    return text;
}

/// The shop's name and its rules: lines of its own, in place of none.
std::string line_mistake(const WordEntry& entry) {
    const std::size_t most = entry.key == "shop.name" ? most_name_lines : most_rules;
    if (entry.texts.size() > most)
        return fmt::format("has {} lines; the sheet has room for {}", entry.texts.size(), most);
    for (const std::string& line : entry.texts)
        if (characters(line) > longest_line)
            return fmt::format("has a line of {} characters; the sheet has room for {}", characters(line),
                               longest_line);
    return "";
}

/// Words in place of the program's: as many, with the same names, and not much longer.
std::string replacement_mistake(const WordEntry& ours, const WordEntry& theirs) {
    if (ours.texts.size() != theirs.texts.size())
        return fmt::format("has {} lines; the sheet has room for just {}", theirs.texts.size(), ours.texts.size());
    for (std::size_t i = 0; i < ours.texts.size(); ++i) {
        const std::string& before = ours.texts[i];
        const std::string& after = theirs.texts[i];
        if (names_in(before) != names_in(after))
            return fmt::format("must hold {}, as the program's own words do", braces(names_in(before)));
        const std::size_t most = characters(before) + std::max<std::size_t>(12, characters(before) / 2);
        if (characters(after) > most)
            return fmt::format("is {} characters long; the sheet has room for {}", characters(after), most);
    }
    return "";
}

std::string mistake_in(const WordEntry& theirs, const WordEntries& program) {
    const auto ours = program.find(theirs.key);
    if (ours == program.end()) {
        std::set<std::string> known;
        for (const auto& [key, entry] : program)
            if (stem_of(key) == stem_of(theirs.key)) known.insert(key);
        return "is no key of the words" + meant(theirs.key, known);
    }
    if (warns(theirs.key))
        return "stands as it is: cautions are only added to, with safety_rules, checklist_rules and setup_rules in "
               "shop.toml";
    if (theirs.key == "page.language") return "stands as it is: it tells a reader the language of the words";
    if (ours->second.list != theirs.list)
        return ours->second.list ? "must be a list of text in quotes" : "must be text";
    for (const std::string& text : theirs.texts) {
        if (is_blank(text)) return "is empty";
        if (!is_one_line(text)) return "must be one line, without control characters";
    }
    if (theirs.key == "numbers.decimal" && theirs.texts.front() != "." && theirs.texts.front() != ",")
        return R"(must be "." or ",")";
    const bool lines_of_its_own = ours->second.list && stem_of(theirs.key) == "shop";
    return lines_of_its_own ? line_mistake(theirs) : replacement_mistake(ours->second, theirs);
}

}  // namespace

std::vector<WordEntry> shop_entries(const std::vector<WordFile>& shop, const std::string& language,
                                    const WordEntries& program) {
    if (shop.empty()) return {};
    std::set<std::string> stems;
    for (const auto& [key, entry] : program) stems.insert(stem_of(key));
    std::vector<WordEntry> entries;
    std::vector<std::string> mistakes;
    for (const WordFile& file : shop) {
        if (file.language() != language) continue;
        if (!stems.contains(file.stem())) {
            mistakes.push_back(file.path + ": is no file of the words" + meant(file.stem(), stems));
            continue;
        }
        try {
            for (WordEntry& entry : entries_of(file)) {
                const std::string mistake = mistake_in(entry, program);
                if (!mistake.empty()) mistakes.push_back(fmt::format("{}: {} {}", entry.place(), entry.key, mistake));
                entries.push_back(std::move(entry));
            }
        } catch (const std::runtime_error& broken) { mistakes.emplace_back(broken.what()); }
    }
    if (!mistakes.empty()) throw std::runtime_error(all_lines(mistakes));
    return entries;
}

}  // namespace kerfpacket::fonts
