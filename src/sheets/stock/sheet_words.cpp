#include "sheets/stock/sheet_words.h"

#include <cmath>

#include "sheets/stock/stock_words.h"

namespace kerfpacket::sheets {
namespace {

/// What the blanks are of the sheets, both faces up: whole percents, never rounded up.
std::string used_text(const plan::SheetSection& section, const Kit& kit) {
    double used = 0;
    double all = 0;
    for (const plan::CutSheet& sheet : section.sheets) {
        all += sheet.length.mm() * sheet.width.mm();
        for (const plan::CutStrip& strip : sheet.strips)
            for (const plan::StockBlank& blank : strip.cut.blanks) used += blank.length.mm() * blank.width.mm();
    }
    return number(std::floor(used / all * 100), 0, kit.words);
}

/// Square feet of square inches, or square metres of square centimetres.
std::string area_text(std::int64_t area, Unit unit, const Kit& kit) {
    const bool inch = unit == Unit::inch;
    return kit.words(inch ? "stock.square_feet" : "stock.square_metres",
                     {{"n", number(static_cast<double>(area) / (inch ? 144 : 10000), 1, kit.words)}});
}

}  // namespace

std::string sheet_board(const plan::SheetSection& section, const Kit& kit, const Tape& tape) {
    return kit.words(
        "stock.sheet_board",
        {{"thickness", tape.exact(section.thickness)},
         {"material", section.own_material ? section.material : kit.words("materials." + section.material)}});
}

std::string sheet_size(Length width, Length length, const Kit& kit, const Tape& tape) {
    return kit.words("stock.sheet_size", {{"width", tape.exact_plain(width)}, {"length", tape.exact(length)}});
}

std::string sheet_text(const plan::SheetSection& section, const plan::CutSheet& sheet, int n, const Kit& kit,
                       const Tape& tape) {
    return kit.words(sheet.in_rack ? "stock.sheet_rack" : "stock.sheet",
                     {{"n", std::to_string(n)},
                      {"board", sheet_board(section, kit, tape)},
                      {"size", sheet_size(sheet.width, sheet.length, kit, tape)},
                      {"length", tape.exact(sheet.length)}});
}

std::string sheets_total(const plan::SheetSection& section, const Kit& kit, const Tape& tape) {
    if (section.to_buy.empty()) return {};
    int count = 0;
    for (const plan::BoughtSheets& bought : section.to_buy) count += bought.count;
    return kit.words(section.priced ? "stock.sheets_total_price" : "stock.sheets_total",
                     {{"material", sheet_board(section, kit, tape)},
                      {"n", std::to_string(count)},
                      {"price", price_text(section.cost, kit)},
                      {"used", used_text(section, kit)}});
}

std::string sheets_proof(const plan::StockPlan& plan, const plan::SheetSection& section, const Kit& kit) {
    const std::string key = section.proved() ? "stock.sheets_proved_" : "stock.sheets_bound_";
    return kit.words(key + (section.priced ? "price" : "area"),
                     {{"unit", kit.words(plan.unit == Unit::inch ? "stock.inch_unit" : "stock.millimetre_unit")},
                      {"price", price_text(section.at_most, kit)},
                      {"area", area_text(section.at_most, plan.unit, kit)}});
}

std::vector<std::string> sheets_notes(const plan::SheetSection& section, const Kit& kit, const Tape& tape) {
    std::vector<std::string> notes;
    if (!section.no_room.empty())
        notes.push_back(kit.words("stock.no_sheet", {{"blanks", blank_names(section.no_room, kit)}}));
    if (section.grain && !section.sheets.empty())
        notes.push_back(kit.words("stock.with_grain", {{"board", sheet_board(section, kit, tape)}}));
    return notes;
}

std::string how_to_rip(const plan::StockPlan& plan, const Kit& kit, const Tape& tape) {
    return kit.words(plan.end_trim > Length() ? "stock.how_sheet" : "stock.how_sheet_untrimmed",
                     {{"trim", tape.exact(plan.end_trim)}, {"kerf", tape.exact(plan.kerf)}});
}

std::string strip_text(const plan::CutStrip& strip, std::size_t i, const Kit& kit, const Tape& tape) {
    return kit.words("stock.strip", {{"n", std::to_string(i + 1)}, {"width", tape.exact(strip.width)}});
}

Length strip_end(const plan::StockPlan& plan, const plan::CutStrip& strip) {
    return strip.from + strip.width - plan.end_trim;
}

std::string left_over_text(const plan::CutSheet& sheet, const Kit& kit, const Tape& tape) {
    return kit.words(sheet.kept ? "stock.left_over_keep" : "stock.left_over",
                     {{"width", tape.plain(sheet.offcut)}, {"length", tape.with_unit(sheet.length)}});
}

}  // namespace kerfpacket::sheets
