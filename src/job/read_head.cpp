#include "job/tables.h"

#include <algorithm>
#include <charconv>
#include <chrono>

#include "job/text.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

constexpr std::string_view date_example = "2026-04-02";

const LengthKey tape{"tape", 0.1_mm, 0.25_in, R"("1/16 in")"};

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

void read_languages(Context& context, TableReader& reader, Header& header) {
    std::vector<std::pair<std::string_view, std::string_view>> words;
    for (const std::string_view language : languages) words.emplace_back(language, language);
    if (const auto language = reader.choice("language", words)) header.language = std::string(language->value);
    const auto second = reader.choice("also_in", words);
    if (!second) return;
    header.also_in = std::string(second->value);
    if (header.also_in == header.language)
        context.error(second->at, "also_in names the language of the job itself",
                      "expected a second language, or nothing");
}

}  // namespace

std::string read_date(Context& context, TableReader& reader) {
    const auto* node = reader.find("date", Need::required, date_example, {Takes::Kind::day});
    if (node == nullptr) return {};
    if (const auto* day = node->as_date()) return date_text(day->get());
    if (const auto* words = node->as_string(); words != nullptr && is_date(words->get())) return words->get();
    context.error(position(*node), "date must be a day of the calendar",
                  "expected year-month-day, for example " + std::string(date_example));
    return {};
}

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

Length read_tape(TableReader& reader) {
    const auto given = reader.length(tape, Need::optional);
    return given ? given->value : Length();
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
    read_languages(context, reader, header);
    header.tape = read_tape(reader);
    reader.finish();
    return header;
}

}  // namespace kerfpacket::job
