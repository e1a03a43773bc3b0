#include "cli/stock_report.h"

#include <fmt/format.h>

#include "sheets/stock/stock_words.h"

namespace kerfpacket::cli {
namespace {

using sheets::Tape;

std::string purchase_lines(const plan::StockSection& section, const sheets::Kit& kit, const Tape& tape) {
    std::string text;
    for (const plan::Bought& bought : section.to_buy) {
        text += fmt::format("   buy          {} of {}", bought.count, sheets::stock_length(bought.length, kit, tape));
        if (bought.cents) text += fmt::format(" at {}", sheets::price_text(*bought.cents, kit));
        text += "\n";
    }
    return text;
}

std::string section_lines(const plan::StockPlan& plan, const plan::StockSection& section, const sheets::Kit& kit,
                          const Tape& tape) {
    std::string text = sheets::section_text(section, kit, tape) + "\n" + purchase_lines(section, kit, tape);
    if (section.to_buy.empty() && !section.sticks.empty())
        text += fmt::format("   buy          {}\n", kit.words("stock.nothing"));
    if (const std::string total = sheets::total_text(section, kit, tape); !total.empty())
        text += fmt::format("   in all       {}\n   proof        {}\n", total, sheets::proof_text(section, kit, tape));
    for (const std::string& note : sheets::section_notes(plan, section, kit, tape))
        text += fmt::format("   note         {}\n", note);
    return text + "\n";
}

std::string stick_lines(const plan::StockPlan& plan, const plan::StockSection& section, const plan::CutStick& stick,
                        int n, const sheets::Kit& kit, const Tape& tape) {
    std::string text = sheets::stick_text(section, stick, n, kit, tape) + "\n";
    const std::vector<measure::Length> ends = sheets::running_ends(plan, stick);
    for (std::size_t i = 0; i < ends.size(); ++i)
        text += fmt::format("   {:<22} stop at {:<14} ends at {}\n", sheets::blank_name(stick.blanks[i], kit),
                            tape.with_unit(stick.blanks[i].length), tape.with_unit(ends[i]));
    return text + fmt::format("   {}\n", sheets::offcut_text(stick, kit, tape));
}

/// A field in quotes where it needs them; a formula would begin with one of these characters.
std::string field(std::string text) {
    if (text.find_first_of("=+-@\t") == 0) text.insert(text.begin(), '\'');
    if (text.find_first_of(",\"\n") == std::string::npos) return text;
    for (std::size_t at = 0; (at = text.find('"', at)) != std::string::npos; at += 2) text.insert(at, 1, '"');
    return '"' + text + '"';
}

std::string millimetres(measure::Length length) { return measure::mm_text(length, 2); }

}  // namespace

std::string stock_report(const plan::StockPlan& plan, const sheets::Kit& kit) {
    const Tape tape(plan.unit);
    std::string text;
    for (const plan::StockSection& section : plan.sections) text += section_lines(plan, section, kit, tape);
    text += sheets::how_to_cut(plan, kit, tape) + "\n\n";
    int n = 0;
    for (const plan::StockSection& section : plan.sections)
        for (const plan::CutStick& stick : section.sticks) text += stick_lines(plan, section, stick, ++n, kit, tape);
    text += "\n";
    for (const std::string& note : sheets::plan_notes(plan, kit, tape)) text += note + "\n";
    return text;
}

std::string stock_csv(const plan::StockPlan& plan, const sheets::Kit& kit) {
    std::string text =
        "board,material,thickness_mm,width_mm,board_length_mm,from,cut,what,blank,length_mm,ends_at_mm\n";
    int n = 0;
    for (const plan::StockSection& section : plan.sections)
        for (const plan::CutStick& stick : section.sticks) {
            const std::string board =
                fmt::format("{},{},{},{},{},{}", ++n, field(section.material), millimetres(section.thickness),
                            millimetres(section.width), millimetres(stick.length), stick.in_rack ? "rack" : "buy");
            const std::vector<measure::Length> ends = sheets::running_ends(plan, stick);
            for (std::size_t i = 0; i < ends.size(); ++i)
                text +=
                    fmt::format("{},{},blank,{},{},{}\n", board, i + 1, field(sheets::blank_name(stick.blanks[i], kit)),
                                millimetres(stick.blanks[i].length), millimetres(ends[i]));
            text += fmt::format("{},,{},,{},\n", board, stick.kept ? "offcut to keep" : "offcut",
                                millimetres(stick.offcut));
        }
    return text;
}

}  // namespace kerfpacket::cli
