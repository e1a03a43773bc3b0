#pragma once
// What each line of a template tile is, written at the line where there is room.

#include "sheets/template_tile.h"

namespace kerfpacket::sheets {

class TemplateNames {
public:
    /// `shift` takes the drawing to the page; names stand inside `cell`.
    TemplateNames(const TemplateContext& context, Pen& pen, Labels& labels, const Rect& cell, Point shift);

    void draw();

private:
    /// A way to stand beside a line.
    struct Stand {
        Beside side = Beside::left;
        Length gap;
    };

    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const;
    Type small() const { return {Face::regular, context_.kit.style.small}; }
    Type small_bold() const { return {Face::bold, context_.kit.style.small}; }

    void ordinates();
    bool ordinate(const Block& block, Point top);
    void crosswise();
    void arcs();
    void name_casing_inside(const std::string& radius);
    void casing_segments();
    void set_out();

    /// The longest part of a line inside the cell; empty when the line is not in it.
    Path run(const Path& path) const;
    /// The first of these stands that is free; else, with a leader, on the side of the first.
    void name_line(const Path& path, const Block& block, const std::vector<Stand>& stands);

    const TemplateContext& context_;
    const plan::ArchLines& arch_;
    Pen& pen_;
    Labels& labels_;
    Rect cell_;
    Point shift_;
};

}  // namespace kerfpacket::sheets
