#include "cli/start/sheet_fields.h"

#include <algorithm>
#include <array>

#include "cli/start/with_unit.h"
#include "measure/glyphs.h"

namespace kerfpacket::cli {
namespace {

/// A field and the question that it answers; one of two sides is asked for as a pair.
struct Row {
    std::string_view field;
    std::string_view question;
    bool length = true;
    bool needed = true;  ///< told where it is empty
};

constexpr std::array<Row, 4> head_rows{{{"job-number", "number", false},
                                        {"job-title", "title", false},
                                        {"job-date", "date", false},
                                        {"job-units", "units", false}}};

constexpr std::array<Row, 29> piece_rows{{
    {"opening-id", "id", false},
    {"opening-shape", "shape", false},
    {"opening-span", "span"},
    {"opening-rise", "rise"},
    {"opening-measured-to", "measured_to", false},
    {"opening-depth", "depth"},
    {"opening-splay-side", "splay_side", true, false},
    {"opening-splay-measured", "splay_measured", false, false},
    {"opening-splay-toward", "splay_toward", false, false},
    {"opening-quantity", "quantity", false, false},
    {"wall-id", "id", false},
    {"wall-chord", "chord"},
    {"wall-rise", "bulge"},
    {"wall-radius", "radius", true, false},
    {"wall-angle", "angle", false, false},
    {"wall-measured-to", "measured_to", false},
    {"wall-side", "side", false},
    {"wall-climbs", "climbs", false, false},
    {"wall-quantity", "quantity", false, false},
    {"wall-width", "width"},
    {"points-id", "id", false},
    {"points-base", "kind", false},
    {"points-measured-to", "measured_to", false},
    // Of an opening it is the one, of a wall the other: only one of them is asked.
    {"points-depth", "depth"},
    {"points-depth", "width"},
    {"points-splay-side", "splay_side", true, false},
    {"points-splay-measured", "splay_measured", false, false},
    {"points-splay-toward", "splay_toward", false, false},
    {"points-station-1", "points", true, true},
}};

/// Left and right, or rise and run, which one question asks for.
struct Pair {
    std::string_view left;
    std::string_view right;
    std::string_view question;
};
constexpr std::array<Pair, 3> pairs{{{"opening-leg-left", "opening-leg-right", "legs"},
                                     {"wall-tail-left", "wall-tail-right", "tails"},
                                     {"wall-step-rise", "wall-step-run", "step"}}};

constexpr std::string_view station = "points-station-", height = "points-height-";

bool is_point(std::string_view field) { return field.starts_with(station) || field.starts_with(height); }

std::string value_of(const Row& row, const SheetPage& page) {
    const std::string typed(page.typed(row.field));
    if (row.length) return plain_length(typed, page.unit());
    // An angle's own sign.
    constexpr std::string_view degrees = "\u00B0";
    return typed.ends_with(degrees) ? typed.substr(0, typed.size() - degrees.size()) : typed;
}

void take(const Row& row, const SheetPage& page, std::vector<SheetAnswer>& answers) {
    const std::string typed(page.typed(row.field));
    if (typed.empty()) return;
    answers.push_back({std::string(row.question), value_of(row, page), row.length ? typed : ""});
}

void take(const Pair& pair, const SheetPage& page, std::vector<SheetAnswer>& answers) {
    const std::string left(page.typed(pair.left)), right(page.typed(pair.right));
    // Where one is missing nobody guesses it.
    if (left.empty() || right.empty()) return;
    const std::string a = plain_length(left, page.unit()), b = plain_length(right, page.unit());
    const auto one = measure::parse_length(left, page.unit()), other = measure::parse_length(right, page.unit());
    const bool alike = pair.question == "legs" && one && other && *one == *other;
    answers.push_back({std::string(pair.question), alike ? a : a + ", " + b, left + ", " + right});
}

void take_points(const SheetPage& page, std::vector<SheetAnswer>& answers) {
    const std::size_t before = answers.size();
    for (const SheetBlank& blank : page.blanks) {
        if (!blank.field.starts_with(station)) continue;
        const std::string other(page.typed(std::string(height) + blank.field.substr(station.size())));
        if (blank.typed.empty() && other.empty()) continue;
        answers.push_back({"points", plain_length(blank.typed, page.unit()) + ", " + plain_length(other, page.unit()),
                           blank.typed + ", " + other});
    }
    if (answers.size() > before) answers.push_back({"points", "", ""});
}

/// What a page is of, by the first blank of its piece.
std::string_view group_of(const SheetPage& page) {
    for (const SheetBlank& blank : page.blanks)
        for (const std::string_view group : {"opening", "wall", "points"})
            if (blank.field.starts_with(group)) return group;
    return {};
}

bool by_radius(const SheetPage& page) {
    return page.typed("wall-chord").empty() && page.typed("wall-rise").empty() && !page.typed("wall-radius").empty();
}

/// A wall whose board climbs has a step.
bool climbs(const SheetPage& page) {
    return !page.typed("wall-step-rise").empty() || !page.typed("wall-step-run").empty() ||
           !page.typed("wall-climbs").empty();
}

/// Whether its opening splays; none where the sheet leaves it open: one of an older form, or one half told.
std::string_view splays(const SheetPage& page, const std::string& group) {
    const std::string side = group + "-splay-side";
    if (!page.typed(side).empty()) return "side";
    const bool asks = std::any_of(page.blanks.begin(), page.blanks.end(),
                                  [&](const SheetBlank& blank) { return blank.field == side; });
    const bool told = !page.typed(group + "-splay-measured").empty() || !page.typed(group + "-splay-toward").empty();
    return asks && !told ? "no" : "";
}

bool both_ways(const SheetPage& page) {
    const bool chord = !page.typed("wall-chord").empty() || !page.typed("wall-rise").empty();
    return chord && !page.typed("wall-radius").empty();
}

}  // namespace

std::string_view SheetPage::typed(std::string_view field) const {
    const auto found =
        std::find_if(blanks.begin(), blanks.end(), [&](const SheetBlank& blank) { return blank.field == field; });
    return found == blanks.end() ? std::string_view() : std::string_view(found->typed);
}

bool SheetPage::measured() const {
    return std::any_of(blanks.begin(), blanks.end(), [](const SheetBlank& blank) {
        // A tag or a tick alone measures nothing.
        const bool aside = blank.field.starts_with("job-") || blank.field.ends_with("-id") ||
                           blank.field.ends_with("-measured-to") || blank.field.ends_with("-wall-is") ||
                           blank.field.ends_with("-splay-measured") || blank.field.ends_with("-splay-toward");
        return !blank.typed.empty() && !aside;
    });
}

std::string_view SheetPage::tag() const {
    for (const std::string_view field : {"opening-id", "wall-id", "points-id"})
        if (!typed(field).empty()) return typed(field);
    return {};
}

measure::Unit SheetPage::unit() const {
    return typed("job-units") == "mm" ? measure::Unit::millimetre : measure::Unit::inch;
}

std::vector<SheetAnswer> head_answers(const SheetPage& page) {
    std::vector<SheetAnswer> answers;
    for (Row row : head_rows) {
        row.length = false;
        take(row, page, answers);
    }
    return answers;
}

std::vector<SheetAnswer> piece_answers(const SheetPage& page) {
    std::vector<SheetAnswer> answers;
    const std::string_view group = group_of(page);
    if (group != "points") answers.push_back({"kind", climbs(page) ? "stair" : std::string(group), ""});
    if (const std::string_view how = splays(page, std::string(group)); !how.empty())
        answers.push_back({"splayed", std::string(how), ""});
    if (group == "points") answers.insert(answers.end(), {{"shape", "ordinates", ""}, {"way", "points", ""}});
    if (group == "wall" && !both_ways(page)) answers.push_back({"way", by_radius(page) ? "radius" : "chord", ""});
    for (const Row& row : piece_rows)
        if (row.question != "points") take(row, page, answers);
    for (const Pair& pair : pairs) take(pair, page, answers);
    take_points(page, answers);
    return answers;
}

std::vector<SheetBlank> left_empty(const SheetPage& page, const std::vector<SheetAnswer>& head) {
    std::vector<SheetBlank> empty;
    const auto look = [&](const Row& row) {
        if (!row.needed) return;
        if (by_radius(page) && (row.field == "wall-chord" || row.field == "wall-rise")) return;
        for (const SheetBlank& blank : page.blanks)
            if (blank.field == row.field && blank.typed.empty()) empty.push_back(blank);
    };
    for (const Row& row : head_rows)
        if (std::none_of(head.begin(), head.end(),
                         [&](const SheetAnswer& one) { return one.question == row.question; }))
            look(row);
    for (const Row& row : piece_rows)
        if (row.question != "width" || row.field != "points-depth") look(row);
    for (const Pair& pair : pairs)
        if (page.typed(pair.left).empty() != page.typed(pair.right).empty())
            look({page.typed(pair.left).empty() ? pair.left : pair.right, pair.question});
    return empty;
}

std::vector<SheetBlank> not_asked(const SheetPage& page) {
    std::vector<SheetBlank> all;
    for (const SheetBlank& blank : page.blanks) {
        const auto has = [&](const Row& row) { return row.field == blank.field; };
        const bool asked = std::any_of(head_rows.begin(), head_rows.end(), has) ||
                           std::any_of(piece_rows.begin(), piece_rows.end(), has) || is_point(blank.field) ||
                           std::any_of(pairs.begin(), pairs.end(), [&](const Pair& pair) {
                               return pair.left == blank.field || pair.right == blank.field;
                           });
        if (!asked && !blank.typed.empty()) all.push_back(blank);
    }
    return all;
}

std::string plain_length(std::string_view typed, measure::Unit unit) {
    std::string as_typed(typed);
    const measure::Plain plain = measure::plain_characters(typed);
    if (!plain.stranger.empty()) return as_typed;
    std::string text;
    for (const char c : plain.text) {
        if (c == ' ' && (text.empty() || text.back() == ' ')) continue;
        text += c == measure::minus_sign ? '-' : c;
    }
    while (text.ends_with(' ')) text.pop_back();
    std::string value = with_unit(text, unit == measure::Unit::inch ? "in" : "mm");
    const auto as_it_stands = measure::parse_length(typed, unit), rewritten = measure::parse_length(value, unit);
    if (as_it_stands && rewritten && *as_it_stands == *rewritten) return value;
    return as_typed;
}

}  // namespace kerfpacket::cli
