#pragma once
// What each line of a template tile is called, written at the line where there is room.

#include "sheets/templates/template_tile.h"

namespace kerfpacket::sheets {

class TemplateNames {
public:
    /// `shift` takes the drawing to the page; names stand inside `cell`.
    TemplateNames(const TemplateDrawing& drawing, Labels& labels, const Rect& cell, Point shift)
        : drawing_(drawing), labels_(labels), cell_(cell), shift_(shift) {}

    void draw();

private:
    bool ordinate(const Block& block, Point top);
    void name(const Name& name);
    /// At the first stand that has room on this part of a line.
    bool along(const Name::Choice& choice, const Path& part);
    /// The longest part of a line inside the cell; empty when the line is not in it.
    Path run(const Path& path) const;

    const TemplateDrawing& drawing_;
    Labels& labels_;
    Rect cell_;
    Point shift_;
};

}  // namespace kerfpacket::sheets
