#include "job/tables.h"

#include <algorithm>
#include <charconv>
#include <chrono>

#include "job/profile.h"
#include "job/text.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

constexpr std::string_view date_example = "2026-04-02";

const LengthKey margin{"margin", Length(), most_margin, R"("1/4 in")", true};
const LengthKey stock_lengths{"lengths", 1_in, longest, R"(["8 ft", "12 ft"])"};
const LengthKey sheet{"sheet", 1_in, longest, R"(["49 in", "97 in"])"};

std::string date_text(const toml::date& day) {
    const auto digits = [](unsigned value, std::size_t width) {
        const std::string text = std::to_string(value);
        return std::string(width - std::min(width, text.size()), '0') + text;
    };
    return digits(day.year, 4) + "-" + digits(day.month, 2) + "-" + digits(day.day, 2);
}

/// True for YYYY-MM-DD that stands in the calendar.
bool is_date(std::string_view text) {
    if (text.size() != date_example.size() || text[4] != '-' || text[7] != '-') return false;
    const auto part = [&](std::size_t from, std::size_t count) {
        unsigned value = 0;
        const auto [end, failed] = std::from_chars(text.data() + from, text.data() + from + count, value);
        return failed == std::errc{} && end == text.data() + from + count ? value : 0U;
    };
    const std::chrono::year year(static_cast<int>(part(0, 4)));
    return std::chrono::year_month_day(year, std::chrono::month(part(5, 2)), std::chrono::day(part(8, 2))).ok();
}

std::string read_date(Context& context, TableReader& reader) {
    const auto* node = reader.find("date", Need::required, date_example);
    if (node == nullptr) return {};
    if (const auto* day = node->as_date()) return date_text(day->get());
    if (const auto* words = node->as_string(); words != nullptr && is_date(words->get())) return words->get();
    context.error(position(*node), "date must be a day of the calendar",
                  "expected year-month-day, for example " + std::string(date_example));
    return {};
}

/// The paper that a key names; none where it is not given or unknown.
std::optional<Media> read_media(Context& context, TableReader& reader, std::string_view key) {
    const auto* node = reader.find(key, Need::optional, "");
    if (node == nullptr) return std::nullopt;
    const auto* name = node->as_string();
    if (const auto media = name == nullptr ? std::nullopt : find_media(name->get())) return media;
    if (name == nullptr) {
        context.error(position(*node), std::string(key) + " must be a name in quotes",
                      R"(for example "na_letter_8.5x11in"; "kerfpacket media" lists them)");
        return std::nullopt;
    }
    std::vector<std::string_view> names;
    for (const auto& known_media : all_media()) names.push_back(known_media.name);
    const std::string near = near_miss(name->get(), names);
    context.error(position(*node), "unknown " + std::string(key) + " " + in_quotes(name->get()),
                  near.empty() || name->get().starts_with("custom_")
                      ? R"("kerfpacket media" lists the sheets; )" + custom_media_hint()
                      : "did you mean " + in_quotes(near) + R"(? "kerfpacket media" lists them all)");
    return std::nullopt;
}

/// Cards and checklists need cut sheets.
std::optional<Media> read_sheet(Context& context, TableReader& reader) {
    const auto media = read_media(context, reader, "media");
    if (!media || !media->roll) return media;
    context.error(reader.at("media"), "media is a roll: cards and checklists need cut sheets",
                  "name the roll as strip_media or template_media");
    return std::nullopt;
}

/// Templates want a header, and room for a cell under it.
std::optional<Media> read_template_media(Context& context, TableReader& reader) {
    const auto media = read_media(context, reader, "template_media");
    if (!media || media->width >= least_template_roll || !media->roll) return media;
    context.error(reader.at("template_media"), "template_media is too narrow for templates",
                  "expected a roll at least 8-1/2 in wide");
    return std::nullopt;
}

std::optional<Sourced<std::string>> read_profile_name(Context& context, TableReader& reader, std::string_view key) {
    if (reader.find(key, Need::optional, "") == nullptr) return std::nullopt;
    auto name = reader.words(key, 40, R"("office")");
    if (!name || is_profile_name(name->value)) return name;
    context.error(name->at, std::string(key) + " cannot be called that: " + in_quotes(name->value),
                  R"(expected letters, digits, spaces, "-" and "_", for it is a file's name)");
    return std::nullopt;
}

}  // namespace

const std::vector<std::pair<std::string_view, Unit>>& unit_words() {
    static const std::vector<std::pair<std::string_view, Unit>> words = {{"in", Unit::inch}, {"mm", Unit::millimetre}};
    return words;
}

void read_units(Context& context, const toml::table& table) {
    // Mistakes are told when the whole table is read; here only a good value counts.
    const auto word = table["units"].value<std::string_view>();
    for (const auto& [name, unit] : unit_words())
        if (word == name) context.unit = unit;
}

Header read_header(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[job]");
    Header header;
    const auto text = [&](std::string_view key, std::size_t most, std::string_view example) {
        return reader.words(key, most, example).value_or(Sourced<std::string>{}).value;
    };
    header.number = text("number", 24, R"("K-7")");
    header.title = text("title", 60, R"("North hall arch")");
    header.revision = text("revision", 8, R"("A")");
    header.date = read_date(context, reader);
    if (const auto unit = reader.choice("units", unit_words(), Need::required)) header.units = unit->value;
    if (const auto language = reader.choice<std::string_view>("language", {{"en", "en"}}))
        header.language = std::string(language->value);
    reader.finish();
    return header;
}

Printer default_printer() {
    Printer printer;
    printer.media = all_media().front();
    printer.margin = 0.25_in;
    return printer;
}

Printer read_printer(Context& context, const toml::table& table, const Printer& otherwise) {
    TableReader reader(context, table, "[printer]");
    Printer printer = otherwise;
    if (const auto media = read_sheet(context, reader)) printer.media = *media;
    if (const auto media = read_media(context, reader, "strip_media")) printer.strips = media;
    if (const auto media = read_template_media(context, reader)) printer.templates = media;
    printer.adhesive = reader.flag("adhesive", printer.adhesive);
    printer.margin = reader.length_or(margin, printer.margin).value;
    if (!leaves_room(printer.media, printer.margin))
        context.error(reader.has("margin") ? reader.at("margin") : reader.at(),
                      "the margin leaves too little of this paper",
                      "cards need 7-3/4 in between the margins, where those are over 1/4 in: expected wider sheets");
    for (const auto& [key, profile] : {std::pair{"profile", &printer.profile},
                                       {"strip_profile", &printer.strip_profile},
                                       {"template_profile", &printer.template_profile}})
        if (const auto name = read_profile_name(context, reader, key)) *profile = NamedProfile{*name, std::nullopt};
    reader.finish();
    return printer;
}

Stock read_stock(Context& context, const toml::table& table, const Stock& otherwise) {
    TableReader reader(context, table, "[stock]");
    Stock stock = otherwise;
    if (auto lengths = reader.lengths(stock_lengths, 0); !lengths.empty()) stock.lengths = std::move(lengths);
    if (const auto sides = reader.lengths(sheet, 2); sides.size() == 2)
        stock.sheet = std::array<Length, 2>{sides[0].value, sides[1].value};
    reader.finish();
    return stock;
}

}  // namespace kerfpacket::job
