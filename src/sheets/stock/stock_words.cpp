#include "sheets/stock/stock_words.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "sheets/words/job_length.h"

namespace kerfpacket::sheets {

using namespace measure::literals;

namespace {

/// Whether the job says of nothing in the plan what is sold: it is told once then, and needs no name.
bool all_usual(const plan::StockPlan& plan) {
    return !plan.sections.empty() && plan.sheets.empty() &&
           std::all_of(plan.sections.begin(), plan.sections.end(), [](const plan::StockSection& section) {
               return section.usual_lengths && !section.too_narrow && !section.other_thickness;
           });
}

bool is_ripped(const plan::StockSection& section, const plan::StockBlank& blank) {
    return section.width - blank.width > 0.2_mm;
}

std::string counted_text(const Kit& kit, const Tape& tape) {
    std::string lengths;
    for (const Length length : plan::usual_stock_lengths(tape.unit()))
        lengths += (lengths.empty() ? "" : ", ") + stock_length(length, kit, tape);
    return kit.words("stock.counted_usual", {{"lengths", lengths}});
}

/// What the job says of the stock of a section that falls back on lengths of no board of it; empty where it need not.
std::string listed_text(const plan::StockSection& section, const Kit& kit, const Tape& tape) {
    const std::string board = section_text(section, kit, tape);
    if (section.too_narrow)
        return kit.words("stock.too_narrow", {{"board", board},
                                              {"less", tape.exact(section.width - *section.too_narrow)},
                                              {"width", tape.exact(*section.too_narrow)}});
    if (!section.usual_lengths) return {};
    if (!section.other_thickness) return kit.words("stock.usual_of", {{"board", board}});
    const Length less = section.thickness - *section.other_thickness;
    return kit.words(less > Length() ? "stock.other_thickness_thin" : "stock.other_thickness_thick",
                     {{"board", board},
                      {"less", tape.exact(measure::abs(less))},
                      {"thickness", tape.exact(*section.other_thickness)}});
}

std::string lengths_text(const std::vector<Length>& lengths, const Tape& tape) {
    std::string text;
    for (const Length length : lengths) text += (text.empty() ? "" : ", ") + tape.with_unit(length);
    return text;
}

std::string cheaper_text(const plan::CheaperJoints& cheaper, bool priced, const Kit& kit, const Tape& tape) {
    std::string key;  // as the job file writes it
    for (const Length at : cheaper.joints) key += (key.empty() ? "\"" : ", \"") + job_length(at, tape.unit()) + "\"";
    return kit.words("stock.cheaper",
                     {{"piece", cheaper.id},
                      {"joints", lengths_text(cheaper.joints, tape)},
                      {"instead", lengths_text(cheaper.instead, tape)},
                      {"saved", priced ? price_text(cheaper.cents, kit) : stock_length(cheaper.length, kit, tape)},
                      {"where", cheaper.in_bend ? kit.words("stock.cheaper_in_bend") : ""},
                      {"key", key}});
}

}  // namespace

std::string blank_name(const plan::StockBlank& blank, const Kit& kit) {
    std::string name = blank.id;
    if (blank.part == plan::StockBlank::Of::left_leg) name = kit.words("stock.left_leg", {{"piece", name}});
    if (blank.part == plan::StockBlank::Of::right_leg) name = kit.words("stock.right_leg", {{"piece", name}});
    if (blank.part == plan::StockBlank::Of::segment)
        name = kit.words("stock.segment", {{"piece", name}, {"n", std::to_string(blank.segment)}});
    if (blank.copies > 1)
        name = kit.words("stock.copy",
                         {{"blank", name}, {"n", std::to_string(blank.copy)}, {"m", std::to_string(blank.copies)}});
    return blank.stopped ? kit.words("stock.stopped_blank", {{"blank", name}}) : name;
}

std::string blank_to_cut(const plan::StockSection& section, const plan::StockBlank& blank, const Kit& kit,
                         const Tape& tape) {
    if (!is_ripped(section, blank)) return blank_name(blank, kit);
    return kit.words("stock.rip_to", {{"blank", blank_name(blank, kit)}, {"width", tape.exact(blank.width)}});
}

std::string blank_names(const std::vector<plan::StockBlank>& blanks, const Kit& kit) {
    std::string names;
    for (const plan::StockBlank& blank : blanks) names += (names.empty() ? "" : "; ") + blank_name(blank, kit);
    return names;
}

std::string names_text(const std::vector<std::string>& names) { return fmt::format("{}", fmt::join(names, ", ")); }

std::string section_text(const plan::StockSection& section, const Kit& kit, const Tape& tape) {
    if (section.casing) return kit.words("stock.casing_board", {{"width", tape.exact(section.width)}});
    return kit.words(
        section.profile.empty() ? "piece.board" : "piece.board_moulded",
        {{"thickness", tape.exact_plain(section.thickness)},
         {"width", tape.exact(section.width)},
         {"material", section.own_material ? section.material : kit.words("materials." + section.material)}});
}

std::string stock_length(Length length, const Kit& kit, const Tape& tape) {
    const double feet = length.inches() / 12;
    if (tape.unit() == Unit::millimetre || std::abs(feet - std::round(feet)) > 1e-6) return tape.exact(length);
    return kit.words("stock.feet", {{"n", number(feet, 0, kit.words)}}) + " (" + tape.exact(length) + ")";
}

std::string price_text(std::int64_t cents, const Kit& kit) {
    return number(static_cast<double>(cents) / 100, 2, kit.words);
}

std::string used_text(const plan::StockSection& section, const Kit& kit) {
    Length cut;
    Length all;
    for (const plan::CutStick& stick : section.sticks) {
        all = all + stick.length;
        for (const plan::StockBlank& blank : stick.blanks) cut = cut + blank.length;
    }
    return number(std::floor(cut / all * 100), 0, kit.words);
}

std::string total_text(const plan::StockSection& section, const Kit& kit, const Tape& tape) {
    if (section.to_buy.empty()) return {};
    return kit.words(section.priced ? "stock.total_price" : "stock.total",
                     {{"material", section_text(section, kit, tape)},
                      {"price", price_text(section.cents, kit)},
                      {"length", stock_length(section.bought, kit, tape)},
                      {"used", used_text(section, kit)}});
}

std::string proof_text(const plan::StockSection& section, const Kit& kit, const Tape& tape) {
    const std::string of = section.priced ? "price" : "length";
    return kit.words((section.proved ? "stock.proved_" : "stock.bound_") + of,
                     {{"unit", kit.words(tape.unit() == Unit::inch ? "stock.inch_unit" : "stock.millimetre_unit")},
                      {"price", price_text(section.cents_at_most, kit)},
                      {"length", tape.exact(section.length_at_most)}});
}

std::vector<std::string> stop_notes(const plan::StockPlan& plan, const Kit& kit) {
    std::vector<std::string> notes;
    if (!plan.stopped.empty()) notes.push_back(kit.words("stock.stopped", {{"boards", names_text(plan.stopped)}}));
    if (!plan.not_made.empty()) notes.push_back(kit.words("stock.not_made", {{"pieces", names_text(plan.not_made)}}));
    return notes;
}

std::vector<std::string> section_notes(const plan::StockPlan& plan, const plan::StockSection& section, const Kit& kit,
                                       const Tape& tape) {
    std::vector<std::string> notes;
    if (!section.no_room.empty())
        notes.push_back(kit.words("stock.no_room", {{"blanks", blank_names(section.no_room, kit)}}));
    if (const std::string listed = listed_text(section, kit, tape); !listed.empty() && !all_usual(plan))
        notes.push_back(listed + " " +
                        (section.usual_lengths ? counted_text(kit, tape) : kit.words("stock.counted_lengths")));
    if (section.casing) notes.push_back(kit.words("stock.casing_material"));
    for (const plan::CheaperJoints& cheaper : section.cheaper)
        notes.push_back(cheaper_text(cheaper, section.priced, kit, tape));
    const bool narrower = std::any_of(section.sticks.begin(), section.sticks.end(), [&](const plan::CutStick& stick) {
        return std::any_of(stick.blanks.begin(), stick.blanks.end(),
                           [&](const plan::StockBlank& blank) { return is_ripped(section, blank); });
    });
    if (narrower) notes.push_back(kit.words("stock.ripped", {{"width", tape.exact(section.width)}}));
    return notes;
}

std::vector<std::string> plan_notes(const plan::StockPlan& plan, const Kit& kit, const Tape& tape) {
    std::vector<std::string> notes;
    if (all_usual(plan)) notes.push_back(kit.words("stock.usual") + " " + counted_text(kit, tape));
    notes.push_back(kit.words("stock.not_counted"));
    return notes;
}

std::string offcut_text(const plan::CutStick& stick, const Kit& kit, const Tape& tape) {
    return kit.words(stick.kept ? "stock.offcut_keep" : "stock.offcut_short",
                     {{"length", tape.with_unit(stick.offcut)}});
}

std::string how_to_cut(const plan::StockPlan& plan, const Kit& kit, const Tape& tape) {
    return kit.words(plan.end_trim > Length() ? "stock.how" : "stock.how_untrimmed",
                     {{"trim", tape.exact(plan.end_trim)}, {"kerf", tape.exact(plan.kerf)}});
}

std::string stick_text(const plan::StockSection& section, const plan::CutStick& stick, int n, const Kit& kit,
                       const Tape& tape) {
    return kit.words(stick.in_rack ? "stock.stick_rack" : "stock.stick",
                     {{"n", std::to_string(n)},
                      {"board", section_text(section, kit, tape)},
                      {"length", stock_length(stick.length, kit, tape)}});
}

std::vector<Length> running_ends(const plan::StockPlan& plan, const plan::CutStick& stick) {
    std::vector<Length> ends;
    Length at;
    for (const plan::StockBlank& blank : stick.blanks) {
        ends.push_back(at + blank.length);
        at = ends.back() + plan.kerf;
    }
    return ends;
}

}  // namespace kerfpacket::sheets
