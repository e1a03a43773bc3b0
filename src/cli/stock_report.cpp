#include "cli/stock_report.h"

#include <fmt/format.h>

#include "sheets/stock/sheet_words.h"
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

std::string sheet_section_lines(const plan::StockPlan& plan, const plan::SheetSection& section, const sheets::Kit& kit,
                                const Tape& tape) {
    std::string text = sheets::sheet_board(section, kit, tape) + "\n";
    for (const plan::BoughtSheets& bought : section.to_buy) {
        text += fmt::format("   buy          {} of {}", bought.count,
                            sheets::sheet_size(bought.width, bought.length, kit, tape));
        if (bought.cents) text += fmt::format(" at {}", sheets::price_text(*bought.cents, kit));
        text += "\n";
    }
    if (section.to_buy.empty() && !section.sheets.empty())
        text += fmt::format("   buy          {}\n", kit.words("stock.nothing"));
    if (const std::string total = sheets::sheets_total(section, kit, tape); !total.empty())
        text +=
            fmt::format("   in all       {}\n   proof        {}\n", total, sheets::sheets_proof(plan, section, kit));
    for (const std::string& note : sheets::sheets_notes(section, kit, tape))
        text += fmt::format("   note         {}\n", note);
    return text + "\n";
}

/// What is crosscut, one after the other, and what is left.
std::string crosscut_lines(const plan::StockPlan& plan, const plan::CutStick& stick, const sheets::Kit& kit,
                           const Tape& tape) {
    std::string text;
    const std::vector<measure::Length> ends = sheets::running_ends(plan, stick);
    for (std::size_t i = 0; i < ends.size(); ++i)
        text += fmt::format("   {:<22} stop at {:<14} ends at {}\n", sheets::blank_name(stick.blanks[i], kit),
                            tape.with_unit(stick.blanks[i].length), tape.with_unit(ends[i]));
    return text + fmt::format("   {}\n", sheets::offcut_text(stick, kit, tape));
}

std::string sheet_lines(const plan::StockPlan& plan, const plan::SheetSection& section, const plan::CutSheet& sheet,
                        int n, const sheets::Kit& kit, const Tape& tape) {
    std::string text = sheets::sheet_text(section, sheet, n, kit, tape) + "\n";
    for (std::size_t i = 0; i < sheet.strips.size(); ++i) {
        const plan::CutStrip& strip = sheet.strips[i];
        text += fmt::format("  {}, ends at {}\n", sheets::strip_text(strip, i, kit, tape),
                            tape.with_unit(sheets::strip_end(plan, strip)));
        text += crosscut_lines(plan, strip.cut, kit, tape);
    }
    return text + fmt::format("  {}\n", sheets::left_over_text(sheet, kit, tape));
}

/// The same of a table; `board` begins each row.
std::string crosscut_rows(const plan::StockPlan& plan, const plan::CutStick& stick, const std::string& board,
                          const sheets::Kit& kit) {
    std::string text;
    const std::vector<measure::Length> ends = sheets::running_ends(plan, stick);
    for (std::size_t i = 0; i < ends.size(); ++i)
        text += fmt::format("{},{},{},{},{},{}\n", board, i + 1, stick.blanks[i].stopped ? "do not cut" : "blank",
                            csv_field(sheets::blank_name(stick.blanks[i], kit)),
                            csv_millimetres(stick.blanks[i].length), csv_millimetres(ends[i]));
    return text +
           fmt::format("{},,{},,{},\n", board, stick.kept ? "offcut to keep" : "offcut", csv_millimetres(stick.offcut));
}

/// Rips first, each with the width of its strip; then each strip as a board: sheet 2's first is "S2/1".
std::string sheet_rows(const plan::StockPlan& plan, const plan::SheetSection& section, const plan::CutSheet& sheet,
                       int n, const sheets::Kit& kit) {
    const auto begin = [&](const std::string& name, measure::Length width) {
        return fmt::format("{},{},{},{},{},{}", name, csv_field(section.material), csv_millimetres(section.thickness),
                           csv_millimetres(width), csv_millimetres(sheet.length), sheet.in_rack ? "rack" : "buy");
    };
    const std::string name = fmt::format("S{}", n);
    const std::string own = begin(name, sheet.width);
    std::string rips;
    std::string crosscuts;
    for (std::size_t i = 0; i < sheet.strips.size(); ++i) {
        const plan::CutStrip& strip = sheet.strips[i];
        const std::string strip_name = fmt::format("{}/{}", name, i + 1);
        rips += fmt::format("{},{},strip,{},{},{}\n", own, i + 1, strip_name, csv_millimetres(strip.width),
                            csv_millimetres(sheets::strip_end(plan, strip)));
        crosscuts += crosscut_rows(plan, strip.cut, begin(strip_name, strip.width), kit);
    }
    return rips +
           fmt::format("{},,{},,{},\n", own, sheet.kept ? "left over to keep" : "left over",
                       csv_millimetres(sheet.offcut)) +
           crosscuts;
}

}  // namespace

std::string csv_field(std::string text) {
    if (text.find_first_of("=+-@\t") == 0) text.insert(text.begin(), '\'');
    if (text.find_first_of(",\"\n") == std::string::npos) return text;
    for (std::size_t at = 0; (at = text.find('"', at)) != std::string::npos; at += 2) text.insert(at, 1, '"');
    return '"' + text + '"';
}

std::string csv_millimetres(measure::Length length) { return measure::mm_text(length, 2); }

std::string stock_report(const plan::StockPlan& plan, const sheets::Kit& kit) {
    const Tape tape(plan.unit);
    std::string text;
    for (const std::string& note : sheets::stop_notes(plan, kit)) text += note + "\n\n";
    for (const plan::StockSection& section : plan.sections) text += section_lines(plan, section, kit, tape);
    for (const plan::SheetSection& section : plan.sheets) text += sheet_section_lines(plan, section, kit, tape);
    int n = 0;
    if (!plan.sections.empty()) text += sheets::how_to_cut(plan, kit, tape) + "\n\n";
    for (const plan::StockSection& section : plan.sections)
        for (const plan::CutStick& stick : section.sticks)
            text += sheets::stick_text(section, stick, ++n, kit, tape) + "\n" + crosscut_lines(plan, stick, kit, tape);
    text += "\n";
    if (!plan.sheets.empty()) text += sheets::how_to_rip(plan, kit, tape) + "\n\n";
    n = 0;
    for (const plan::SheetSection& section : plan.sheets)
        for (const plan::CutSheet& sheet : section.sheets) text += sheet_lines(plan, section, sheet, ++n, kit, tape);
    if (!plan.sheets.empty()) text += "\n";
    for (const std::string& note : sheets::plan_notes(plan, kit, tape)) text += note + "\n";
    return text;
}

std::string stock_csv(const plan::StockPlan& plan, const sheets::Kit& kit) {
    std::string text =
        "board,material,thickness_mm,width_mm,board_length_mm,from,cut,what,blank,length_mm,ends_at_mm\n";
    for (const std::string& piece : plan.not_made) text += fmt::format(",,,,,,,not in plan,{},,\n", csv_field(piece));
    int n = 0;
    for (const plan::StockSection& section : plan.sections)
        for (const plan::CutStick& stick : section.sticks) {
            const std::string board =
                fmt::format("{},{},{},{},{},{}", ++n, section.casing ? "casing" : csv_field(section.material),
                            section.casing ? "" : csv_millimetres(section.thickness), csv_millimetres(section.width),
                            csv_millimetres(stick.length), stick.in_rack ? "rack" : "buy");
            text += crosscut_rows(plan, stick, board, kit);
        }
    n = 0;
    for (const plan::SheetSection& section : plan.sheets)
        for (const plan::CutSheet& sheet : section.sheets) text += sheet_rows(plan, section, sheet, ++n, kit);
    return text;
}

}  // namespace kerfpacket::cli
