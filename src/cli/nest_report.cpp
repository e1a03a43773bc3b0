#include "cli/nest_report.h"

#include <fmt/format.h>

#include "cli/stock_report.h"
#include "sheets/stock/nest_pages.h"

namespace kerfpacket::cli {
namespace {

const char* counted(const plan::NestPlan& plan) { return plan.of == plan::Nested::ribs ? "ribs" : "segments"; }

Json size_json(const plan::NestPlan& plan, std::size_t i) {
    const plan::NestedSize& size = plan.sizes[i];
    return {{"piece", size.id},           {counted(plan), size.all()},
            {"laid", plan.laid(i)},       {"nested", size.sector.has_value()},
            {"width_mm", mm(size.width)}, {"height_mm", mm(size.height)},
            {"pitch_mm", mm(size.pitch)}};
}

Json strip_json(const plan::NestPlan& plan, const plan::NestStrip& strip) {
    const plan::NestedSize& size = plan.sizes[strip.size];
    Json laid = Json::array();
    for (int i = 0; i < strip.count; ++i) {
        const auto [copy, n] = plan.copy_and_number(strip.size, strip.first + i);
        const int column = i / strip.rows;
        const measure::Length left = plan.trim + (size.width + plan.cut) * column;
        laid.push_back({{"n", n},
                        {"copy", copy},
                        {"left_mm", mm(left)},
                        {"top_mm", mm(strip.from + size.pitch * (i % strip.rows))}});
    }
    return {{"piece", size.id}, {"rows", strip.rows}, {"from_mm", mm(strip.from)}, {counted(plan), laid}};
}

}  // namespace

std::string nest_report(const plan::NestPlan& plan, const sheets::Kit& kit) {
    if (plan.empty()) return {};
    std::string text = sheets::nest_heading(plan, kit) + "\n";
    for (const std::string& line : sheets::nest_lines(plan, kit, sheets::Tape(plan.unit))) text += "   " + line + "\n";
    return text + "\n";
}

Json nest_values(const plan::NestPlan& plan) {
    Json sizes = Json::array();
    for (std::size_t i = 0; i < plan.sizes.size(); ++i) sizes.push_back(size_json(plan, i));
    Json sheets = Json::array();
    for (const plan::NestSheet& sheet : plan.sheets) {
        Json strips = Json::array();
        for (const plan::NestStrip& strip : sheet.strips) strips.push_back(strip_json(plan, strip));
        sheets.push_back({{"strips", strips}, {"left_over_mm", mm(sheet.offcut)}});
    }
    return {{"length_mm", mm(plan.length)},
            {"width_mm", mm(plan.width)},
            {"cut_mm", mm(plan.cut)},
            {"trim_mm", mm(plan.trim)},
            {"sizes", sizes},
            {"sheets", sheets}};
}

std::string nest_rows(const plan::NestPlan& plan, const sheets::Kit& kit) {
    const bool ribs = plan.of == plan::Nested::ribs;
    std::string text;
    for (std::size_t n = 0; n < plan.sheets.size(); ++n)
        for (std::size_t s = 0; s < plan.sheets[n].strips.size(); ++s) {
            const plan::NestStrip& strip = plan.sheets[n].strips[s];
            for (int i = 0; i < strip.count; ++i)
                text +=
                    fmt::format("{}{},,,{},{},,{},{},{},{},\n", ribs ? "F" : "C", n + 1, csv_millimetres(plan.width),
                                csv_millimetres(plan.length), s + 1, ribs ? "rib" : "segment",
                                csv_field(sheets::segment_name(plan, strip.size, strip.first + i, kit)),
                                csv_millimetres(plan.sizes[strip.size].width));
        }
    return text;
}

}  // namespace kerfpacket::cli
