#include "sheets/stock/nest_pages.h"

#include <algorithm>
#include <cmath>

#include "sheets/stock/sheet_words.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length between = 10_pt;
constexpr Length below_title = 4_pt;

/// Words of stock.toml for casing segments, or for ribs.
std::string nest_key(const plan::NestPlan& plan, const std::string& name) {
    return (plan.of == plan::Nested::ribs ? "stock.ribs_" : "stock.nest_") + name;
}

/// How many of a size a sheet takes; nothing is said of one that no sheet takes.
std::string holds_line(int columns, int rows, const Kit& kit) {
    if (columns == 0) return {};
    const char* key = columns > 1 && rows > 1 ? "stock.nest_holds"
                      : columns > 1           ? "stock.nest_holds_row"
                      : rows > 1              ? "stock.nest_holds_stack"
                                              : "stock.nest_holds_one";
    return " " + kit.words(key, {{"columns", std::to_string(columns)}, {"rows", std::to_string(rows)}});
}

std::string size_line(const plan::NestPlan& plan, std::size_t i, const Kit& kit, const Tape& tape) {
    const plan::NestedSize& size = plan.sizes[i];
    const auto [columns, rows] = plan.grid(size);
    const char* name = size.all() == 1 ? "size_one" : size.sector ? "size" : "rectangles";
    return kit.words(nest_key(plan, name), {{"piece", size.id},
                                            {"all", std::to_string(size.all())},
                                            {"pitch", tape.with_unit(size.pitch)},
                                            {"width", tape.plain(size.width)},
                                            {"height", tape.with_unit(size.height)}}) +
           holds_line(columns, rows, kit);
}

/// One sheet from its upper left corner, its sawn edge up.
class Drawing {
public:
    Drawing(Pen& pen, const Rect& room, const plan::NestPlan& plan, const plan::NestSheet& sheet, const Tape& tape)
        : pen_(pen),
          corner_{room.low.x, room.high.y},
          plan_(plan),
          sheet_(sheet),
          scale_(std::min(room.width() / plan.length, room.height() / plan.width)),
          tape_(tape) {}

    void draw() {
        for (const plan::NestStrip& strip : sheet_.strips) draw(strip);
        const Point low = at(Length(), plan_.width);
        const Point high = at(plan_.length, Length());
        if (sheet_.offcut > Length()) {
            pen_.hatch({low, at(plan_.length, plan_.width - sheet_.offcut)}, 4_pt);
            name(tape_.with_unit(sheet_.offcut), at(plan_.length / 2, plan_.width - sheet_.offcut / 2), plan_.length,
                 sheet_.offcut);
        }
        pen_.box(Role::outline, {low, high}, style().line);
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    /// Along the sheet, and down from its sawn edge.
    Point at(Length along, Length down) const { return {corner_.x + along * scale_, corner_.y - down * scale_}; }

    void draw(const plan::NestStrip& strip) {
        const plan::NestedSize& size = plan_.sizes[strip.size];
        const Length lower = strip.from + size.stack(strip.rows);
        pen_.line(Role::outline, at(Length(), lower), at(plan_.length, lower), style().hair);
        for (int i = 0; i < strip.count; ++i) {
            const int column = i / strip.rows;
            const Length left = plan_.trim + (size.width + plan_.cut) * column;
            const Length top = strip.from + size.pitch * (i % strip.rows);
            outline(size, left, top);
            label(strip, strip.first + i, left, top);
        }
    }

    void outline(const plan::NestedSize& size, Length left, Length top) {
        if (!size.sector) {
            pen_.box(Role::outline, {at(left, top + size.height), at(left + size.width, top)}, style().line);
            return;
        }
        const plan::Sector& ring = *size.sector;
        const Length middle = left + size.width / 2;
        const double sine = std::sin(ring.half.radians()), cosine = std::cos(ring.half.radians());
        const auto corner = [&](Length radius, double side) {
            return at(middle + radius * (side * sine), top + ring.outer - radius * cosine);
        };
        const Angle turn = ring.half * 2;
        const Path over = Path::arc(corner(ring.outer, -1), corner(ring.outer, 1), -turn);
        const Path under = Path::arc(corner(ring.inner, 1), corner(ring.inner, -1), turn);
        pen_.stroke(Role::outline, over, style().line);
        pen_.line(Role::outline, over.end(), under.start(), style().line);
        pen_.stroke(Role::outline, under, style().line);
        pen_.line(Role::outline, under.end(), over.start(), style().line);
    }

    void label(const plan::NestStrip& strip, int i, Length left, Length top) {
        const plan::NestedSize& size = plan_.sizes[strip.size];
        const Length band = size.sector ? size.sector->outer - size.sector->inner : size.height;
        name(segment_name(plan_, strip.size, i, pen_.kit()), at(left + size.width / 2, top + band / 2),
             size.width * 0.65, band);
    }

    /// Left out where it has no room.
    void name(const std::string& text, Point middle, Length width, Length height) {
        const Type type = pen_.fitting(text, Type{Face::regular, style().small}.centred(), width * scale_);
        if (height * scale_ < type.size * 1.1 || pen_.width(text, type) > width * scale_) return;
        pen_.text_on_white(Role::text, {middle.x, middle.y - type.size * 0.35}, text, type);
    }

    Pen& pen_;
    Point corner_;
    const plan::NestPlan& plan_;
    const plan::NestSheet& sheet_;
    double scale_;
    const Tape& tape_;
};

}  // namespace

std::string segment_name(const plan::NestPlan& plan, std::size_t size, int i, const Kit& kit) {
    const auto [copy, n] = plan.copy_and_number(size, i);
    std::string name = plan.sizes[size].id + " " + std::to_string(n);
    const int copies = plan.sizes[size].copies;
    if (copies == 1) return name;
    return kit.words("stock.copy", {{"blank", name}, {"n", std::to_string(copy)}, {"m", std::to_string(copies)}});
}

std::string nest_heading(const plan::NestPlan& plan, const Kit& kit) { return kit.words(nest_key(plan, "heading")); }

std::vector<std::string> nest_lines(const plan::NestPlan& plan, const Kit& kit, const Tape& tape) {
    std::vector<std::string> lines{kit.words(
        nest_key(plan, "sheets"),
        {{"n", std::to_string(plan.sheets.size())}, {"size", sheet_size(plan.width, plan.length, kit, tape)}})};
    for (std::size_t i = 0; i < plan.sizes.size(); ++i) lines.push_back(size_line(plan, i, kit, tape));
    for (std::size_t i = 0; i < plan.sizes.size(); ++i)
        if (const int left = plan.sizes[i].all() - plan.laid(i); left > 0)
            lines.push_back(kit.words(nest_key(plan, left == 1 ? "left_out_one" : "left_out"),
                                      {{"n", std::to_string(left)}, {"piece", plan.sizes[i].id}}));
    return lines;
}

void add_nest_pages(Flow& flow, const plan::NestPlan& plan, const Tape& tape) {
    if (plan.empty()) return;
    const Kit& kit = flow.kit();
    const Type text{Face::regular, flow.style().text};
    flow.heading(nest_heading(plan, kit));
    for (const std::string& line : nest_lines(plan, kit, tape)) flow.paragraph(Role::text, line, text);
    flow.paragraph(Role::text,
                   kit.words(nest_key(plan, plan.trim > Length() ? "how" : "how_untrimmed"),
                             {{"trim", tape.exact(plan.trim)}, {"cut", tape.exact(plan.cut)}}),
                   text);
    int n = 0;
    for (const plan::NestSheet& sheet : plan.sheets) {
        const Length height = std::min<Length>(300_pt, flow.width() * (plan.width / plan.length));
        flow.skip(between);
        const Rect block = flow.take(leading(text.size) + height + below_title);
        Pen pen = flow.pen();
        const fonts::Words::Values values{{"n", std::to_string(++n)},
                                          {"size", sheet_size(plan.width, plan.length, kit, tape)}};
        const std::string title = kit.words(nest_key(plan, "sheet"), values);
        pen.text(Role::text, {block.low.x, first_base(block, text.size)}, title,
                 pen.fitting(title, {Face::bold, text.size}, block.width()));
        const Scope figure = pen.figure(kit.words(nest_key(plan, "figure"), values));
        Drawing(pen, {block.low, {block.high.x, block.low.y + height}}, plan, sheet, tape).draw();
    }
}

}  // namespace kerfpacket::sheets
