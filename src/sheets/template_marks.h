#pragma once
// What a template tile says about itself: its name, its neighbours, which way it lies.

#include "sheets/template_tile.h"

namespace kerfpacket::sheets {

class TemplateMarks {
public:
    TemplateMarks(const TemplateContext& context, const Tile& tile, Pen& pen, Labels& labels, const Rect& cell)
        : context_(context), tile_(tile), pen_(pen), labels_(labels), cell_(cell) {}

    /// Names and arrows at the sides that have a printed neighbour, as near the middle of the side as is free.
    void neighbours();
    /// The tile's own name, large, in a corner if one is free.
    void coordinate();
    /// Which way up, which side, where the kerfs are, what ordinates are. A crowded tile says less, in a narrower
    /// block.
    void note();
    /// All tiles in the page's header, this one black, those that are not printed struck through.
    void small_map();

private:
    void neighbour(const Tile* tile, Direction toward);
    void arrow(Point middle, Direction toward, Length length);
    const fonts::Style& style() const { return context_.kit.style; }

    const TemplateContext& context_;
    const Tile& tile_;
    Pen& pen_;
    Labels& labels_;
    Rect cell_;
};

}  // namespace kerfpacket::sheets
