#include "sheets/layout/flow.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "sheets/layout/furniture.h"

namespace kerfpacket::sheets {
namespace {

/// Of a type's size: what stays white below a block of lines, and below a line of a list without squares.
constexpr double item_gap = 0.5;
constexpr double list_gap = 0.15;
constexpr Length beside_gap = 6_pt;
constexpr Length column_gap = 6_pt;

Length above_heading(const fonts::Style& style) { return style.strong * 0.7; }
Length heading_height(const fonts::Style& style) { return style.strong + 10_pt; }
Length item_indent(const Type& type) { return type.size * 1.8; }

}  // namespace

Flow::Flow(Drafts& drafts, const Kit& kit, NewPage new_page, Region region)
    : drafts_(drafts), kit_(kit), new_page_(std::move(new_page)), region_(region) {
    start_page(true);
}

Length Flow::left() const { return side_margin; }
Length Flow::right() const { return drafts_.back().page.width - side_margin; }

void Flow::start_page(bool first) {
    drafts_.push_back(new_page_(first));
    y_ = drafts_.back().page.height - region_.below_top;
    fresh_ = true;
}

void Flow::next_page() {
    if (fresh_) return;
    start_page(false);
    if (!waiting_ && !lasting_.empty()) heading(lasting_);
}

void Flow::skip(Length gap) {
    if (!fresh_) y_ -= gap * region_.white;
}

Length Flow::waiting_height() const {
    if (!waiting_) return {};
    return (fresh_ ? Length() : above_heading(style()) * region_.white) + heading_height(style());
}

void Flow::draw_waiting() {
    if (!waiting_) return;
    const Waiting heading = *std::exchange(waiting_, std::nullopt);
    skip(above_heading(style()));
    y_ -= heading_height(style());
    fresh_ = false;
    Pen pen = this->pen();
    section(pen, left(), right(), y_ + 9_pt, heading.text, heading.aside);
}

Rect Flow::take(Length height) {
    // A part that was reckoned to fill the page does fit, whatever computing adds.
    constexpr Length rounding = 0.001_pt;
    if (height > room() + rounding) next_page();
    if (height > room() + rounding)
        throw DoesNotFit("the sheet \"" + drafts_.back().page.sheet +
                         "\" has a part that is higher than a page at the type sizes of layout.toml");
    draw_waiting();
    y_ -= height;
    fresh_ = false;
    return {{left(), y_}, {right(), y_ + height}};
}

Rect Flow::take_foot(Length height) {
    const Rect top = take(height);
    y_ = region_.lowest;
    return {{top.low.x, y_}, {top.high.x, y_ + height}};
}

void Flow::picture(Length most, const std::function<Length(Pen&, const Rect&)>& draw) {
    const Rect room = take(most);
    Pen pen = this->pen();
    y_ = draw(pen, room);
}

void Flow::heading(std::string text, std::string aside) { waiting_ = Waiting{std::move(text), std::move(aside)}; }

void Flow::under_heading(const std::string& text, const std::function<void()>& pour) {
    heading(text);
    lasting_ = text;
    pour();
    lasting_.clear();
}

void Flow::paragraph(Role role, const std::string& text, const Type& type) {
    const Length step = leading(type.size);
    const Rect room = take(pen().paragraph_height(text, type, width(), step) + step);
    pen().paragraph(role, {room.low.x, first_base(room, type.size)}, text, type, room.width(), step);
    skip(type.size * item_gap);
}

Rect Flow::boxed(Role role, const std::string& text, const Type& type, Length line) {
    const Length step = leading(type.size);
    const Length white = type.size * 0.8;
    const Length inside = width() - white * 2;
    skip(white / 2);
    const Rect room = take(pen().paragraph_height(text, type, inside, step) + step + white);
    Pen pen = this->pen();
    pen.paragraph(role, {room.low.x + white, first_base(room, type.size) - white / 2}, text, type, inside, step);
    pen.box(role, room, line);
    skip(white / 2);
    return room;
}

void Flow::listed(Role role, const Lead& lead, const std::string& text, const Type& type,
                  const std::optional<Blank>& beside) {
    const Length step = leading(type.size);
    const Type small{Face::regular, style().small};
    Length width = this->width() - lead.indent;
    Length words, behind;
    if (beside) {
        words = pen().width(beside->words, type) + (beside->words.empty() ? Length() : beside_gap);
        behind = pen().width(beside->behind, small) + (beside->behind.empty() ? Length() : beside_gap);
        width -= words + beside->least + behind + beside_gap;
    }
    const Rect room = take(pen().paragraph_height(text, type, width, step) + step);
    Pen pen = this->pen();
    const Scope list = pen.going_on(Tag::list);
    const Scope item = pen.within(Tag::list_item);
    const Point base{room.low.x, first_base(room, type.size)};
    if (lead.box) tick_box(pen, {base.x, base.y - type.size * 0.18}, type.size);
    pen.text(role, base, lead.words, {Face::bold, type.size});
    const Length last = pen.paragraph(role, {base.x + lead.indent, base.y}, text, type, width, step);
    if (beside) {
        const Length from = room.high.x - behind - beside->least;
        pen.text(Role::text, {from - words, last}, beside->words, type);
        pen.line(Role::box, {from, last - 2_pt}, {from + beside->least, last - 2_pt}, style().line);
        pen.text(Role::box, {room.high.x, last}, beside->behind, small.at_right());
    }
    skip(type.size * (lead.box ? item_gap : list_gap));
}

void Flow::item(Role role, const std::string& text, const Type& type, const std::optional<Blank>& beside) {
    listed(role, {.box = true, .words = {}, .indent = item_indent(type)}, text, type, beside);
}

std::vector<std::vector<Blank>> Flow::in_lines(const std::vector<Blank>& blanks, Length width) {
    const Type type{Face::regular, style().text};
    Pen pen = this->pen();
    std::vector<std::vector<Blank>> lines(1);
    Length used;
    for (const Blank& blank : blanks) {
        const Length wide = pen.width(blank.words, type) + blank.least + pen.width(blank.behind, type) + 18_pt;
        if (!lines.back().empty() && used + wide > width) {
            lines.emplace_back();
            used = {};
        }
        lines.back().push_back(blank);
        used += wide;
    }
    return lines;
}

void Flow::blank_lines(const std::vector<Blank>& blanks, Length indent, const Rect& room) {
    const Type type{Face::regular, style().text};
    Pen pen = this->pen();
    Length base = first_base(room, type.size);
    for (const std::vector<Blank>& line : in_lines(blanks, room.width() - indent)) {
        // What room the words leave is shared by the blanks as their least lengths are.
        Length words, least;
        for (const Blank& blank : line) {
            words += pen.width(blank.words, type) + pen.width(blank.behind, type) + 18_pt;
            least += blank.least;
        }
        const double stretch = std::max(1.0, (room.width() - indent - words + 12_pt) / least);
        Length x = room.low.x + indent;
        for (const Blank& blank : line) {
            x += pen.text(Role::text, {x, base}, blank.words, type) + 6_pt;
            const Length end = x + blank.least * stretch;
            pen.line(Role::box, {x, base - 2_pt}, {end, base - 2_pt}, style().line);
            x = end;
            if (!blank.behind.empty()) x += 4_pt + pen.text(Role::text, {x + 4_pt, base}, blank.behind, type);
            x += 8_pt;
        }
        base -= blank_leading();
    }
}

void Flow::blank_item(const std::vector<Blank>& blanks) {
    const Type type{Face::regular, style().text};
    const Length indent = item_indent(type);
    const auto lines = static_cast<double>(in_lines(blanks, width() - indent).size());
    const Rect room = take(blank_leading() * lines);
    Pen pen = this->pen();
    const Scope list = pen.going_on(Tag::list);
    const Scope item = pen.within(Tag::list_item);
    tick_box(pen, {room.low.x, first_base(room, type.size) - type.size * 0.18}, type.size);
    blank_lines(blanks, indent, room);
    skip(type.size * item_gap);
}

FlowTable::FlowTable(Flow& flow, std::vector<Column> columns) : flow_(flow), columns_(std::move(columns)) {
    for (const Column& column : columns_) heads_.push_back(column.head);
    has_heads_ = std::any_of(heads_.begin(), heads_.end(), [](const std::string& head) { return !head.empty(); });
}

Type FlowTable::of_cell(const Column& column, Type type, bool heads) {
    if (column.bold && !heads) type.face = Face::bold;
    return type;
}

Length FlowTable::height_of(const std::vector<std::string>& cells, const Type& type, bool heads) {
    Length height;
    for (std::size_t i = 0; i < cells.size(); ++i)
        height = std::max(height, flow_.pen().paragraph_height(cells[i], of_cell(columns_.at(i), type, heads),
                                                               column_width(i), leading(type.size)));
    return height + leading(type.size) + type.size * item_gap;
}

Length FlowTable::column_width(std::size_t i) { return flow_.width() * columns_.at(i).share - column_gap; }

void FlowTable::draw(const Rect& room, const std::vector<std::string>& cells, const Type& type, bool heads) {
    Pen pen = flow_.pen();
    const Scope table = pen.going_on(Tag::table);
    const Scope line = pen.within(Tag::row);
    Point base{room.low.x, first_base(room, type.size)};
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const Scope cell = pen.within(heads ? Tag::header_cell : i == 0 ? Tag::row_header : Tag::cell);
        const Type own = of_cell(columns_[i], type, heads);
        if (columns_[i].at_right && pen.width(cells[i], own) <= column_width(i))
            pen.text(Role::text, {base.x + column_width(i), base.y}, cells[i], own.at_right());
        else pen.paragraph(Role::text, base, cells[i], own, column_width(i), leading(type.size));
        base.x += room.width() * columns_.at(i).share;
    }
}

Rect FlowTable::row(const std::vector<std::string>& cells, Face face) {
    const Type type{face, flow_.style().text};
    const Type small{Face::regular, flow_.style().small};
    const Length height = height_of(cells, type);
    const Length with_heads = has_heads_ ? height + height_of(heads_, small, true) : height;
    if (begun_ && height > flow_.room()) {
        flow_.next_page();
        begun_ = false;
    }
    if (!begun_ && has_heads_) {
        // The heads stay with the first row below them.
        if (with_heads > flow_.room()) flow_.next_page();
        draw(flow_.take(height_of(heads_, small, true)), heads_, small, true);
    }
    begun_ = true;
    const Rect room = flow_.take(height);
    draw(room, cells, type, false);
    return room;
}

}  // namespace kerfpacket::sheets
