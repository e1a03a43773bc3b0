#include "sheets/templates/template_map.h"

#include <algorithm>

#include "sheets/layout/furniture.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length step_height = Length::points(22);
constexpr Length row_height = Length::points(24);
constexpr Length heading_height = Length::points(34);
constexpr Length lowest = Length::points(66);

class MapPage {
public:
    MapPage(const TemplateContext& context, const TemplateMap& map, Draft& draft)
        : context_(context), map_(map), pen_(draft.page, context.kit), right_(draft.page.width - side_margin) {}

    void draw() {
        statement();
        grid();
        join();
        if (map_.table) y_ = draw_table(pen_, side_margin, right_, y_ - heading_height, *map_.table);
        check();
    }

private:
    const fonts::Style& style() const { return context_.kit.style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return context_.kit.words(key, values);
    }
    static Type regular(Length size) { return {Face::regular, size}; }
    static Type bold(Length size) { return {Face::bold, size}; }

    void statement() {
        const auto& tiling = context_.tiling;
        const auto& tape = context_.tape;
        const bool in_grid = tiling.way() == job::Sheets::grid;
        const auto figure = [&](Length length) {
            return tape.unit() == measure::Unit::inch ? tape.exact_plain(length) : tape.plain(length);
        };
        y_ = pen_.from_top(statement_line) - 4_pt;
        const Length used = pen_.text(Role::text, {side_margin, y_},
                                      words(tiling.printed() == 1 ? "template.one_sheet"
                                            : in_grid             ? "template.tiles"
                                                                  : "template.sheets",
                                            {{"count", std::to_string(tiling.printed())},
                                             {"width", figure(tiling.cell().width)},
                                             {"height", figure(tiling.cell().height) + " " + tape.unit_name()},
                                             {"overlap", figure(tiling.overlap() * 2) + " " + tape.unit_name()}}),
                                      regular(style().text));
        const Type aside = bold(style().small).at_right();
        if (side_margin + used + 10_pt > right_ - pen_.width(map_.aside, aside)) y_ -= 14_pt;
        pen_.text(Role::text, {right_, y_}, map_.aside, aside);
        if (!map_.ways.empty())
            y_ = pen_.paragraph(Role::text, {side_margin, y_ - 14_pt}, map_.ways, regular(style().small),
                                right_ - side_margin, 12_pt);
        y_ -= 24_pt;
    }

    /// Height of what follows the map.
    Length below() const {
        const auto rows = [](const auto& list, Length height) { return height * static_cast<double>(list.size()); };
        const Length table = map_.table ? heading_height + height_of(*map_.table, pen_.kit().style) : Length();
        return heading_height * 2 + rows(map_.steps, step_height) + table + rows(map_.checks, row_height) + lowest;
    }

    void grid() {
        const Length room = std::min(y_ - below(), pen_.page_height() * 0.4);
        const Scope figure = pen_.figure(words("figure.map"));
        y_ = draw_template_grid(pen_, context_, map_.span, {{side_margin, y_ - room}, {right_, y_}});
    }

    void join() {
        y_ -= heading_height;
        section(pen_, side_margin, right_, y_,
                words(context_.tiling.printed() == 1 ? "template.before_use" : "template.join"));
        y_ -= 4_pt;
        int n = 0;
        for (const std::string& step : map_.steps) {
            const Scope list = pen_.going_on(Tag::list);
            const Scope item = pen_.within(Tag::list_item);
            y_ -= step_height;
            tick_box(pen_, {side_margin, y_ - 1.5_pt}, 11_pt);
            pen_.text(Role::text, {side_margin + 20_pt, y_}, std::to_string(++n), bold(style().text));
            const Length x = side_margin + 36_pt;
            pen_.text(Role::text, {x, y_}, step, pen_.fitting(step, regular(style().text), right_ - x));
        }
    }

    void check() {
        y_ -= heading_height;
        section(pen_, side_margin, right_, y_, words("template.check"), words("template.measured"));
        y_ -= 10_pt;
        for (const MapCheck& row : map_.checks) {
            const Scope list = pen_.going_on(Tag::list);
            const Scope item = pen_.within(Tag::list_item);
            y_ -= row_height;
            const Length base = y_ + 8_pt;
            const Length blank = right_ - 106_pt;
            const Length room = blank - 20_pt - side_margin - pen_.width(row.length, bold(style().text));
            pen_.text(Role::text, {side_margin, base}, row.what, pen_.fitting(row.what, regular(style().text), room));
            pen_.text(Role::dimension, {blank - 12_pt, base}, row.length, bold(style().text).at_right());
            pen_.line(Role::box, {blank, base - 2_pt}, {right_, base - 2_pt}, style().line);
        }
    }

    const TemplateContext& context_;
    const TemplateMap& map_;
    Pen pen_;
    Length right_;
    Length y_;
};

}  // namespace

Draft template_map(const TemplateContext& context, const TemplateMap& map) {
    Draft draft = new_draft(context.plan, context.titles.sheet, Orientation::portrait);
    draft.page.piece = context.titles.piece;
    draft.tag = context.titles.piece;
    draft.title = map.title;
    draft.subtitle = context.titles.map_subtitle;
    draft.outline = map.outline;
    MapPage(context, map, draft).draw();
    return draft;
}

std::vector<std::string> joining_steps(const TemplateContext& context, const std::string& keep_clear, bool half) {
    const bool inch = context.tape.unit() == measure::Unit::inch;
    // By how much a bar that a person measures may be off.
    const std::string off = context.tape.exact(inch ? Length::inches(1.0 / 32) : 1_mm);
    const bool in_grid = context.tiling.way() == job::Sheets::grid;
    if (context.tiling.printed() == 1)
        return {context.kit.words("template.step_1", {{"off", off}}), context.kit.words("template.step_6")};
    const fonts::Words::Values values{{"first", first_tile(context.tiling)}, {"off", off}};
    std::vector<std::string> steps;
    for (int i = 1; i <= 6; ++i) {
        const char* step = in_grid || i == 1 || (half && i == 6) ? "template.step_" : "template.along_step_";
        steps.push_back(i == 5 ? keep_clear : context.kit.words(step + std::to_string(i), values));
    }
    return steps;
}

std::string ways_text(const TemplateContext& context, const TemplateWays& ways) {
    const bool inch = context.tape.unit() == measure::Unit::inch;
    const auto exact = [inch, &context](Length length) {
        return context.tape.number(inch ? length.inches() : length.mm(), inch ? 2 : 1) + " " + context.tape.unit_name();
    };
    // Nothing to join, nothing to compare.
    if (context.tiling.printed() == 1) return {};
    const auto way = [&](const std::string& key, const Way& w) {
        if (w.tiling.printed() == 1) return context.kit.words(key + "_one");
        return context.kit.words(key, {{"count", std::to_string(w.tiling.printed())},
                                       {"usual", exact(w.off.usual.crown)},
                                       {"worst", exact(w.off.worst.crown)}});
    };
    return way("template.way_grid", ways.grid) + " " + way("template.way_along", ways.along) + " " +
           context.kit.words("template.way_off", {{"off", inch ? context.tape.exact(joint_off) : exact(joint_off)}});
}

}  // namespace kerfpacket::sheets
