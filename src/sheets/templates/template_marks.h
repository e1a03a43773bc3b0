#pragma once
// What a template tile says about itself: its name, its neighbours, which way it lies.

#include "sheets/templates/template_tile.h"

namespace kerfpacket::sheets {

class TemplateMarks {
public:
    /// `shift` takes the drawing to the page.
    TemplateMarks(const TemplateContext& context, const Tile& tile, Pen& pen, Labels& labels, const Rect& cell,
                  Point shift)
        : context_(context), tile_(tile), pen_(pen), labels_(labels), cell_(cell), shift_(shift) {}

    /// Names and arrows at the sides that have a printed neighbour, as near the middle of the side as is free.
    void neighbours();
    /// Beside each cross of a sheet along a curve, which two sheets it joins and which of the pair it is.
    void cross_names();
    /// In the nearest free place round a cross, with a line to it across whatever lies between; also beyond the cell,
    /// for the cross may stand at its edge.
    void name_with_line(const Block& name, Point cross);
    /// An arrow along the grain with the word, where the piece is wide enough for it.
    void grain();
    /// The tile's own name, large, and how it is turned, in a corner if one is free; nothing where it is the only one.
    void coordinate();
    /// Whether this tile is the first and its note says there what it says on no other.
    bool tells_joining() const;
    /// The drawing's note. A crowded tile says less, in a narrower block.
    void note();
    /// All tiles in the page's header, this one black, those that are not printed struck through; nothing where it is
    /// the only one, or where the header has no room for it right of `from`.
    void small_map(Length from);

private:
    void neighbour(const Tile* tile, Direction toward);
    bool is_first() const;
    /// The note from all that it says to its first sentence alone.
    std::vector<std::vector<Block::Row>> note_choices() const;
    bool note(const std::vector<Block::Row>& rows, Length clearance);
    bool grain_at(Point middle, Length reach);
    void arrow(Point middle, Direction toward, Length length);
    const fonts::Style& style() const { return context_.kit.style; }

    const TemplateContext& context_;
    const Tile& tile_;
    Pen& pen_;
    Labels& labels_;
    Rect cell_;
    Point shift_;
};

}  // namespace kerfpacket::sheets
