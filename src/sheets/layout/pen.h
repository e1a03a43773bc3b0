#pragma once
// Puts items on one page: lines, areas, text measured by the packet's own faces.

#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "geom/path.h"
#include "page/document.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

using geom::Direction;
using geom::Path;
using geom::Point;
using geom::Rect;
using measure::Angle;
using measure::Length;
using page::Align;
using page::Dash;
using page::Face;
using page::Ink;
using page::Role;
using page::Tag;
using namespace measure::literals;

/// How a line of text is set.
struct Type {
    Face face = Face::regular;
    Length size{};
    Align align = Align::left;
    Angle angle{};
    Ink ink = Ink::black;

    Type centred() const {
        Type t = *this;
        t.align = Align::centre;
        return t;
    }
    Type at_right() const {
        Type t = *this;
        t.align = Align::right;
        return t;
    }
    Type turned(Angle by) const {
        Type t = *this;
        t.angle = by;
        return t;
    }
    Type white() const {
        Type t = *this;
        t.ink = Ink::white;
        return t;
    }
};

/// While it lives, what is drawn on its page belongs to one part of it; then to the part around that again. It must not
/// outlive the page, nor see it move.
class Scope {
public:
    Scope(page::Page& page, std::size_t node) : page_(page), before_(std::exchange(page.open, node)) {}
    Scope(const Scope&) = delete;
    Scope& operator=(const Scope&) = delete;
    ~Scope() { page_.open = before_; }

private:
    page::Page& page_;
    std::size_t before_;
};

class Pen {
public:
    Pen(page::Page& page, const Kit& kit) : page_(page), kit_(kit) {}

    const Kit& kit() const { return kit_; }
    Length page_width() const { return page_.width; }
    Length page_height() const { return page_.height; }
    /// A height given from the top edge of the page.
    Length from_top(Length down) const { return page_.height - down; }

    /// Opens a new part inside the one that is open.
    Scope within(Tag tag) { return {page_, add(tag, {})}; }
    /// A drawing; all that is drawn in it is one figure to a reader, said in these words.
    Scope figure(std::string alternative) { return {page_, add(Tag::figure, std::move(alternative))}; }
    /// Opens the last part again if it is one of these, or else a new one: a table goes on row after row.
    Scope going_on(Tag tag);
    /// Cells of a row with nothing in them, or for a hand to fill in.
    void empty_cells(int count);
    /// The page's own heading, which is read first whenever it is drawn.
    Scope title();

    void stroke(Role role, Path path, Length width, Dash dash = Dash::solid, Ink ink = Ink::black);
    void line(Role role, Point a, Point b, Length width, Dash dash = Dash::solid);
    void box(Role role, const Rect& rect, Length width, Dash dash = Dash::solid);
    void fill(Role role, Path path, Ink ink = Ink::black);

    Length width(std::string_view text, const Type& type) const { return kit_.faces.width(type.face, text, type.size); }
    /// The type itself, or else condensed, or else smaller, as need be for a text no wider than `room`; the smallest
    /// there is, where none will do. Some languages take more room than others.
    Type fitting(std::string_view text, Type type, Length room) const;
    /// Sets one line of text on its baseline; returns its width. Outside of what holds words, such as a cell, the line
    /// is a paragraph of its own.
    Length text(Role role, Point anchor, std::string text, const Type& type);
    /// The same on a white ground, for text over a hatch or a line. Level text only.
    Length text_on_white(Role role, Point anchor, const std::string& text, const Type& type);

    /// Sets text in lines no wider than `width`, broken between words, from its first baseline down; returns the
    /// baseline of the last line. A word that is wider than that alone makes the whole text smaller.
    Length paragraph(Role role, Point first_base, std::string_view text, const Type& wanted, Length width,
                     Length leading);
    /// Its height from the first to the last baseline, without drawing it.
    Length paragraph_height(std::string_view text, const Type& type, Length width, Length leading) const;

    /// An area of this page that leads to another page.
    void link(const Rect& area, std::size_t to_page);

    /// 45-degree hatch inside a rectangle, both ways when crossed.
    void hatch(const Rect& rect, Length gap, bool crossed = false);
    /// The same of lines that wide, outside of some areas.
    void hatch_around(const Rect& rect, Length gap, Length width, const std::vector<Rect>& spared,
                      const std::function<bool(Point)>& where = {});
    /// The parts of a line outside of some areas.
    void line_around(Role role, Point a, Point b, Length width, Dash dash, const std::vector<Rect>& spared);

    /// A dimension line between two points with slanted end strokes and its figure set into the line.
    void dimension(Point a, Point b, const std::string& figure, const Type& type);

    /// How many items stand on the page.
    std::size_t items() const { return page_.items.size(); }
    /// The room of all level words that were put on the page since it had so many items, and around them.
    std::vector<Rect> words_since(std::size_t first, Length around) const;
    /// Moves what was put on the page since it had so many items, place by place. Lines between places stay straight;
    /// words and boxes to tick stay upright, about their middle.
    void move_since(std::size_t first, const std::function<Point(Point)>& move);

    /// A triangle with its tip at `tip`, pointing along `toward`.
    void arrow_head(Role role, Point tip, Direction toward, Length length, Length width);

private:
    std::size_t add(Tag tag, std::string alternative);
    struct Word {
        std::string_view text;
        Length width;
    };
    /// A figure is one word with its unit.
    std::vector<Word> words_of(std::string_view text, const Type& type) const;

    struct Lines {
        Type type;  ///< as wanted, or so small that the widest word finds room
        std::vector<std::string> texts;
    };
    Lines lines_of(std::string_view text, const Type& wanted, Length width) const;

    page::Page& page_;
    const Kit& kit_;
};

}  // namespace kerfpacket::sheets
