#include "sheets/template_map.h"

#include <algorithm>

#include "measure/require.h"
#include "sheets/furniture.h"
#include "sheets/template_grid.h"
#include "sheets/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr int steps = 6;
constexpr Length step_height = Length::points(22);
constexpr Length row_height = Length::points(24);
constexpr Length heading_height = Length::points(34);
constexpr Length lowest = Length::points(52);

struct Check {
    std::string what;
    std::string length;
};

class MapPage {
public:
    MapPage(const TemplateContext& context, Draft& draft)
        : context_(context),
          arch_(std::get<plan::ArchLines>(context.piece.lines)),
          pen_(draft.page, context.kit),
          right_(draft.page.width - side_margin) {}

    void draw() {
        statement();
        map();
        join();
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
        y_ = pen_.from_top(statement_line) - 4_pt;
        pen_.text(Role::text, {side_margin, y_},
                  words("template.tiles", {{"count", std::to_string(tiling.printed())},
                                           {"width", tape.exact_plain(tiling.cell().width)},
                                           {"height", tape.exact(tiling.cell().height)},
                                           {"overlap", tape.exact(tiling.overlap() * 2)}}),
                  regular(style().text));
        const std::string side = kerf_side(context_.piece, context_.kit);
        pen_.text(Role::text, {right_, y_}, side, bold(style().small).at_right());
        y_ -= 24_pt;
    }

    /// Height of what follows the map.
    Length below() const {
        return heading_height * 2 + step_height * steps + row_height * static_cast<double>(checks().size()) + lowest;
    }

    void map() {
        const Length room = std::min(y_ - below(), pen_.page_height() * 0.4);
        y_ = draw_template_grid(pen_, context_, {{side_margin, y_ - room}, {right_, y_}});
    }

    /// The printed tile nearest to the middle of the top row that prints anything.
    std::string first_tile() const {
        const auto& tiles = context_.tiling.tiles();
        const Tile* best = nullptr;
        const auto off = [&](const Tile& t) { return measure::abs(t.cell.low.x + t.cell.high.x); };
        for (const Tile& tile : tiles) {
            if (tile.blank || (best != nullptr && tile.row != best->row)) continue;
            if (best == nullptr || off(tile) < off(*best) - 1_mm) best = &tile;
        }
        measure::require(best != nullptr, "a template prints at least one tile");
        return best->name();
    }

    void join() {
        y_ -= heading_height;
        section(pen_, side_margin, right_, y_, words("template.join"));
        const bool inch = context_.tape.unit() == measure::Unit::inch;
        const fonts::Words::Values values{{"first", first_tile()}, {"off", inch ? "1/32 in" : "1 mm"}};
        y_ -= 4_pt;
        for (int i = 1; i <= steps; ++i) {
            y_ -= step_height;
            const std::string n = std::to_string(i);
            tick_box(pen_, {side_margin, y_ - 1.5_pt}, 11_pt);
            pen_.text(Role::text, {side_margin + 20_pt, y_}, n, bold(style().text));
            const std::string text = words("template.step_" + n, values);
            const Length x = side_margin + 36_pt;
            Type type = regular(style().text);
            if (pen_.width(text, type) > right_ - x) type.face = Face::condensed;
            pen_.text(Role::text, {x, y_}, text, type);
        }
    }

    std::vector<Check> checks() const {
        const auto& tape = context_.tape;
        const Length half = arch_.wall_half_span;
        const Length crown = arch_.wall.bounds().high.y;
        std::vector<Check> rows{
            {words("template.check_span"), tape.with_unit(half * 2)},
            {words("template.check_half"), words("template.each", {{"length", tape.with_unit(half)}})},
            {words("template.check_rise"), tape.with_unit(crown)}};
        if (arch_.casing_outside)
            rows.push_back({words("template.check_casing"), tape.with_unit(arch_.leg_lines.back().start().x * 2)});
        rows.push_back({words("template.check_diagonal"), tape.with_unit(measure::hypot(half, crown))});
        return rows;
    }

    void check() {
        y_ -= heading_height;
        section(pen_, side_margin, right_, y_, words("template.check"), words("template.measured"));
        y_ -= 10_pt;
        for (const Check& row : checks()) {
            y_ -= row_height;
            const Length base = y_ + 8_pt;
            const Length blank = right_ - 106_pt;
            pen_.text(Role::text, {side_margin, base}, row.what, regular(style().text));
            pen_.text(Role::dimension, {blank - 12_pt, base}, row.length, bold(style().text).at_right());
            pen_.line(Role::box, {blank, base - 2_pt}, {right_, base - 2_pt}, style().line);
        }
    }

    const TemplateContext& context_;
    const plan::ArchLines& arch_;
    Pen pen_;
    Length right_;
    Length y_;
};

}  // namespace

Draft template_map(const TemplateContext& context) {
    Draft draft = new_draft(context.plan, "template", Orientation::portrait);
    draft.page.piece = context.piece.id;
    draft.tag = context.piece.id;
    draft.title = context.kit.words("template.title_map");
    draft.subtitle = template_content(context.piece, context.kit);
    draft.outline = context.kit.words("template.outline", {{"piece", context.piece.id}});
    MapPage(context, draft).draw();
    return draft;
}

}  // namespace kerfpacket::sheets
