#include "sheets/layout/pen.h"

#include <algorithm>
#include <array>
#include <utility>

#include "geom/outside.h"

namespace kerfpacket::sheets {
namespace {

/// Whether words may stand in such a part themselves.
bool holds_words(Tag tag) {
    switch (tag) {
        case Tag::section:
        case Tag::list:
        case Tag::table:
        case Tag::row: return false;
        default: return true;
    }
}

/// The lines of a hatch. They rise to the right; each starts where it would meet the left or lower side.
std::vector<Path> hatching(const Rect& rect, Length gap, bool crossed) {
    std::vector<Path> lines;
    const Length reach = rect.width() + rect.height();
    for (Length at = gap; at < reach; at += gap) {
        const Point from{rect.low.x + at - rect.height(), rect.low.y};
        const Point to{rect.low.x + at, rect.high.y};
        for (Path& piece : geom::clip(Path::line(from, to), rect)) lines.push_back(std::move(piece));
        if (!crossed) continue;
        for (Path& piece : geom::clip(Path::line({from.x, rect.high.y}, {to.x, rect.low.y}), rect))
            lines.push_back(std::move(piece));
    }
    return lines;
}

/// Whether a text begins with the unit of the figure before it: "in" of "1/64 in.", "%" of "94 %".
bool begins_with_unit(std::string_view text) {
    constexpr std::array<std::string_view, 6> units{"in", "mm", "pulg", "ft", "pies", "%"};
    const std::string_view word = text.substr(0, std::min(text.find_first_of(" .,;:)"), text.size()));
    return std::find(units.begin(), units.end(), word) != units.end();
}

/// Where the first word ends; a figure is one word with its unit.
std::size_t end_of_word(std::string_view text) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (end == 0 || end == text.size() || text[end - 1] < '0' || text[end - 1] > '9') return end;
    return begins_with_unit(text.substr(end + 1)) ? std::min(text.find(' ', end + 1), text.size()) : end;
}

}  // namespace

std::size_t Pen::add(Tag tag, std::string alternative) {
    page_.structure.push_back({tag, page_.open, std::move(alternative)});
    return page_.structure.size() - 1;
}

Scope Pen::going_on(Tag tag) {
    const auto& parts = page_.structure;
    for (std::size_t i = parts.size() - 1; i > page_.open; --i) {
        if (parts[i].parent != page_.open || page::is_artifact(parts[i].tag)) continue;
        if (parts[i].tag != tag) break;
        return {page_, i};
    }
    return within(tag);
}

void Pen::empty_cells(int count) {
    for (int i = 0; i < count; ++i) add(Tag::cell, {});
}

Scope Pen::title() {
    const auto& parts = page_.structure;
    const auto is_title = [](const page::Node& node) { return node.tag == Tag::title; };
    const auto found = std::find_if(parts.begin(), parts.end(), is_title);
    if (found == parts.end()) return within(Tag::title);
    return {page_, static_cast<std::size_t>(found - parts.begin())};
}

void Pen::stroke(Role role, Path path, Length width, Dash dash, Ink ink) {
    if (path.empty()) return;
    page_.items.emplace_back(page::PathItem{role, std::move(path), width, dash, false, ink, page_.open});
}

void Pen::line(Role role, Point a, Point b, Length width, Dash dash) { stroke(role, Path::line(a, b), width, dash); }

void Pen::box(Role role, const Rect& rect, Length width, Dash dash) {
    stroke(role, Path::rectangle(rect), width, dash);
}

void Pen::fill(Role role, Path path, Ink ink) {
    page_.items.emplace_back(page::PathItem{role, std::move(path), {}, Dash::solid, true, ink, page_.open});
}

Type Pen::fitting(std::string_view text, Type type, Length room) const {
    const auto too_wide = [&] { return width(text, type) > room; };
    if (!too_wide()) return type;
    if (type.face == Face::regular) type.face = Face::condensed;
    if (type.face == Face::bold) type.face = Face::condensed_bold;
    const fonts::Style& style = kit_.style;
    for (const Length size : {style.title, style.strong, style.text, style.small, style.tiny})
        if (size < type.size && too_wide()) type.size = size;
    return type;
}

Length Pen::text(Role role, Point anchor, std::string text, const Type& type) {
    if (text.empty()) return {};
    const Length advance = width(text, type);
    const bool held = holds_words(page_.structure.at(page_.open).tag);
    const std::size_t node = held ? page_.open : add(Tag::paragraph, {});
    page_.items.emplace_back(page::TextItem{role, std::move(text), type.face, type.size, anchor, type.align, type.angle,
                                            advance, type.ink, node});
    return advance;
}

Length Pen::text_on_white(Role role, Point anchor, const std::string& text, const Type& type) {
    const Length advance = width(text, type);
    Length left = anchor.x;
    if (type.align == Align::centre) left -= advance / 2;
    if (type.align == Align::right) left -= advance;
    const Length descent = type.size * 0.26;
    const Length ascent = type.size * 0.86;
    fill(role, Path::rectangle({{left - 2_pt, anchor.y - descent}, {left + advance + 2_pt, anchor.y + ascent}}),
         Ink::white);
    return this->text(role, anchor, text, type);
}

std::vector<Pen::Word> Pen::words_of(std::string_view text, const Type& type) const {
    std::vector<Word> words;
    while (!text.empty()) {
        const std::size_t end = end_of_word(text);
        const std::string_view word = text.substr(0, end);
        words.push_back({word, width(word, type)});
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return words;
}

Pen::Lines Pen::lines_of(std::string_view text, const Type& wanted, Length width) const {
    std::vector<Word> words = words_of(text, wanted);
    const auto widest =
        std::max_element(words.begin(), words.end(), [](const Word& a, const Word& b) { return a.width < b.width; });
    Lines lines{wanted, {""}};
    if (words.empty()) return lines;
    if (widest->width > width) {
        lines.type = fitting(widest->text, wanted, width);
        words = words_of(text, lines.type);
    }
    const Length space = this->width(" ", lines.type);
    Length used;
    for (const Word& word : words) {
        if (!lines.texts.back().empty() && used + space + word.width > width) lines.texts.emplace_back();
        std::string& line = lines.texts.back();
        used = line.empty() ? word.width : used + space + word.width;
        line.append(line.empty() ? "" : " ").append(word.text);
    }
    return lines;
}

Length Pen::paragraph(Role role, Point first_base, std::string_view text, const Type& wanted, Length width,
                      Length leading) {
    Lines lines = lines_of(text, wanted, width);
    const bool held = holds_words(page_.structure.at(page_.open).tag);
    const Scope part(page_, held || text.empty() ? page_.open : add(Tag::paragraph, {}));
    Length base = first_base.y;
    for (std::string& line : lines.texts) {
        if (&line != &lines.texts.front()) base -= leading;
        this->text(role, {first_base.x, base}, std::move(line), lines.type);
    }
    return base;
}

Length Pen::paragraph_height(std::string_view text, const Type& type, Length width, Length leading) const {
    const std::size_t lines = lines_of(text, type, width).texts.size();
    Length height;
    for (std::size_t i = 1; i < lines; ++i) height += leading;
    return height;
}

void Pen::link(const Rect& area, std::size_t to_page) {
    page_.items.emplace_back(page::LinkItem{area, to_page, page_.open});
}

void Pen::hatch(const Rect& rect, Length gap, bool crossed) {
    for (Path& piece : hatching(rect, gap, crossed)) stroke(Role::hatch, std::move(piece), kit_.style.hair);
}

void Pen::hatch_around(const Rect& rect, Length gap, Length width, const std::vector<Rect>& spared,
                       const std::function<bool(Point)>& where) {
    for (const Path& line : hatching(rect, gap, false))
        for (Path& piece : geom::outside(line.start(), line.end(), spared)) {
            if (!where) stroke(Role::hatch, std::move(piece), width);
            else if (auto part = geom::part_where(piece.start(), piece.end(), where))
                stroke(Role::hatch, std::move(*part), width);
        }
}

void Pen::line_around(Role role, Point a, Point b, Length width, Dash dash, const std::vector<Rect>& spared) {
    for (Path& piece : geom::outside(a, b, spared)) stroke(role, std::move(piece), width, dash);
}

void Pen::dimension(Point a, Point b, const std::string& figure, const Type& type) {
    const Direction along = geom::direction(a, b);
    const Length gap = figure.empty() ? Length() : width(figure, type) + 6_pt;
    const Point mid = geom::middle(a, b);
    const Length free = (geom::distance(a, b) - gap) / 2;
    if (free > 0_pt) {
        line(Role::dimension, a, a + along * free, kit_.style.fine);
        line(Role::dimension, b - along * free, b, kit_.style.fine);
    } else {
        line(Role::dimension, a, b, kit_.style.fine);
    }
    for (const Point end : {a, b}) {
        const Direction slant = along.turned(Angle::degrees(45));
        line(Role::dimension, end - slant * 3.5_pt, end + slant * 3.5_pt, kit_.style.line);
    }
    // The figure sits on the line's middle; where it does not fit between the ends it stands above the line.
    const Length lift = free > 0_pt ? -type.size * 0.36 : 4_pt;
    text(Role::dimension, mid + along.left() * lift, figure, type.centred().turned(along.angle()));
}

std::vector<Rect> Pen::words_since(std::size_t first, Length around) const {
    std::vector<Rect> areas;
    for (std::size_t i = first; i < page_.items.size(); ++i) {
        const auto* text = std::get_if<page::TextItem>(&page_.items[i]);
        if (text == nullptr || text->angle.radians() != 0) continue;
        const double before = text->align == Align::left ? 0 : text->align == Align::centre ? 0.5 : 1;
        const Point low{text->anchor.x - text->advance * before, text->anchor.y - text->size * 0.2};
        areas.push_back(Rect{low, low + Point{text->advance, text->size * 0.95}}.grown(around));
    }
    return areas;
}

void Pen::move_since(std::size_t first, const std::function<Point(Point)>& move) {
    const auto moved_text = [&](const page::TextItem& text) {
        const Point middle{{}, text.size * 0.36};
        return move(text.anchor + middle) - middle;
    };
    for (std::size_t i = first; i < page_.items.size(); ++i) {
        if (auto* drawn = std::get_if<page::PathItem>(&page_.items[i])) {
            if (drawn->role == Role::box) {
                const Point middle = geom::middle(drawn->path.bounds().low, drawn->path.bounds().high);
                drawn->path = drawn->path.moved(move(middle) - middle);
                continue;
            }
            // The ground of words goes with them.
            const bool ground = drawn->filled && drawn->ink == Ink::white && i + 1 < page_.items.size();
            if (const auto* on_it = ground ? std::get_if<page::TextItem>(&page_.items[i + 1]) : nullptr) {
                drawn->path = drawn->path.moved(moved_text(*on_it) - on_it->anchor);
                continue;
            }
            std::vector<geom::Segment> segments = drawn->path.segments();
            for (geom::Segment& segment : segments) segment = {move(segment.from), move(segment.to), segment.turn};
            drawn->path = Path(std::move(segments), drawn->path.closed());
        } else if (auto* text = std::get_if<page::TextItem>(&page_.items[i])) {
            text->anchor = moved_text(*text);
        }
    }
}

void Pen::arrow_head(Role role, Point tip, Direction toward, Length length, Length width) {
    const Point back = tip - toward * length;
    fill(role, Path::polyline({tip, back + toward.left() * (width / 2), back - toward.left() * (width / 2)}, true));
}

}  // namespace kerfpacket::sheets
