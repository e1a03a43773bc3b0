#include "cli/stock_json.h"

#include "sheets/stock/sheet_words.h"
#include "sheets/stock/stock_words.h"

namespace kerfpacket::cli {
namespace {

const char* part_word(plan::StockBlank::Of part) {
    switch (part) {
        case plan::StockBlank::Of::piece: return "blank";
        case plan::StockBlank::Of::left_leg: return "left leg";
        case plan::StockBlank::Of::right_leg: return "right leg";
        case plan::StockBlank::Of::segment: return "casing segment";
    }
    return "";
}

Json blank_json(const plan::StockBlank& blank) {
    Json told{{"piece", blank.id},          {"part", part_word(blank.part)}, {"copy", blank.copy},
              {"copies", blank.copies},     {"length_mm", mm(blank.length)}, {"width_mm", mm(blank.width)},
              {"do_not_cut", blank.stopped}};
    if (blank.part == plan::StockBlank::Of::segment) told["segment"] = blank.segment;
    return told;
}

Json or_null(const std::optional<measure::Length>& length) { return length ? Json(mm(*length)) : Json(); }

Json lengths_mm(const std::vector<measure::Length>& lengths) {
    Json all = Json::array();
    for (const measure::Length length : lengths) all.push_back(mm(length));
    return all;
}

Json crosscuts_json(const plan::StockPlan& plan, const plan::CutStick& stick) {
    Json blanks = Json::array();
    const std::vector<measure::Length> ends = sheets::running_ends(plan, stick);
    for (std::size_t i = 0; i < ends.size(); ++i) {
        blanks.push_back(blank_json(stick.blanks[i]));
        blanks.back()["ends_at_mm"] = mm(ends[i]);
    }
    return blanks;
}

Json stick_json(const plan::StockPlan& plan, const plan::CutStick& stick, int n) {
    return {{"board", n},
            {"length_mm", mm(stick.length)},
            {"in_rack", stick.in_rack},
            {"blanks", crosscuts_json(plan, stick)},
            {"offcut_mm", mm(stick.offcut)},
            {"keep", stick.kept}};
}

Json sheet_json(const plan::StockPlan& plan, const plan::CutSheet& sheet, int n) {
    Json strips = Json::array();
    for (const plan::CutStrip& strip : sheet.strips)
        strips.push_back({{"width_mm", mm(strip.width)},
                          {"ends_at_mm", mm(sheets::strip_end(plan, strip))},
                          {"blanks", crosscuts_json(plan, strip.cut)},
                          {"offcut_mm", mm(strip.cut.offcut)},
                          {"keep", strip.cut.kept}});
    return {{"sheet", n},
            {"length_mm", mm(sheet.length)},
            {"width_mm", mm(sheet.width)},
            {"in_rack", sheet.in_rack},
            {"strips", strips},
            {"left_over_mm", mm(sheet.offcut)},
            {"keep", sheet.kept}};
}

Json sheet_section_json(const plan::StockPlan& plan, const plan::SheetSection& section, int& n) {
    Json buy = Json::array();
    for (const plan::BoughtSheets& bought : section.to_buy)
        buy.push_back({{"length_mm", mm(bought.length)},
                       {"width_mm", mm(bought.width)},
                       {"count", bought.count},
                       {"price", bought.cents ? Json(*bought.cents / 100.0) : Json()}});
    Json cut = Json::array();
    for (const plan::CutSheet& sheet : section.sheets) cut.push_back(sheet_json(plan, sheet, ++n));
    Json no_room = Json::array();
    for (const plan::StockBlank& blank : section.no_room) no_room.push_back(blank_json(blank));
    const auto price = [&](std::int64_t cents) {
        return section.priced ? Json(static_cast<double>(cents) / 100) : Json();
    };
    return {{"material", section.material},
            {"thickness_mm", mm(section.thickness)},
            {"with_grain", section.grain},
            {"buy", buy},
            {"price", price(section.cost)},
            {"proved", section.proved()},
            {"saves_at_most", price(section.at_most)},
            {"sheets", cut},
            {"no_room", no_room}};
}

Json section_json(const plan::StockPlan& plan, const plan::StockSection& section, int& n) {
    Json buy = Json::array();
    for (const plan::Bought& bought : section.to_buy)
        buy.push_back({{"length_mm", mm(bought.length)},
                       {"count", bought.count},
                       {"price", bought.cents ? Json(*bought.cents / 100.0) : Json()}});
    Json sticks = Json::array();
    for (const plan::CutStick& stick : section.sticks) sticks.push_back(stick_json(plan, stick, ++n));
    Json no_room = Json::array();
    for (const plan::StockBlank& blank : section.no_room) no_room.push_back(blank_json(blank));
    Json cheaper = Json::array();
    for (const plan::CheaperJoints& one : section.cheaper)
        cheaper.push_back({{"piece", one.id},
                           {"joints_mm", lengths_mm(one.joints)},
                           {"instead_mm", lengths_mm(one.instead)},
                           {"in_bend", one.in_bend},
                           {"saves", section.priced ? Json(static_cast<double>(one.cents) / 100) : Json()},
                           {"saves_mm", section.priced ? Json() : Json(mm(one.length))}});
    const auto cents_at_most = static_cast<double>(section.cents_at_most);
    return {{"casing", section.casing},
            {"material", section.casing ? Json() : Json(section.material)},
            {"thickness_mm", section.casing ? Json() : Json(mm(section.thickness))},
            {"width_mm", mm(section.width)},
            {"molded", !section.profile.empty()},
            {"usual_lengths", section.usual_lengths},
            {"too_narrow_mm", or_null(section.too_narrow)},
            {"other_thickness_mm", or_null(section.other_thickness)},
            {"buy", buy},
            {"bought_mm", mm(section.bought)},
            {"price", section.priced ? Json(static_cast<double>(section.cents) / 100) : Json()},
            {"proved", section.proved},
            {"saves_at_most", section.priced ? Json(cents_at_most / 100) : Json()},
            {"saves_at_most_mm", section.priced ? Json() : Json(mm(section.length_at_most))},
            {"cheaper_joints", cheaper},
            {"boards", sticks},
            {"no_room", no_room}};
}

}  // namespace

Json stock_values(const plan::StockPlan& plan) {
    Json sections = Json::array();
    int n = 0;
    for (const plan::StockSection& section : plan.sections) sections.push_back(section_json(plan, section, n));
    Json sheets = Json::array();
    n = 0;
    for (const plan::SheetSection& section : plan.sheets) sheets.push_back(sheet_section_json(plan, section, n));
    return {{"schema", 1},
            {"kerf_mm", mm(plan.kerf)},
            {"end_trim_mm", mm(plan.end_trim)},
            {"least_offcut_mm", mm(plan.least_offcut)},
            {"do_not_cut", plan.stopped},
            {"not_in_plan", plan.not_made},
            {"sections", sections},
            {"sheets", sheets}};
}

}  // namespace kerfpacket::cli
