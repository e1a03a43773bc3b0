#pragma once
// One segment of a flat casing as a drawing: outline, joints, centres for splines, grain.

#include "plan/lines.h"
#include "sheets/templates/alike_segments.h"
#include "sheets/templates/template_drawing.h"

namespace kerfpacket::sheets {

/// Outlines of a segment, turned so that its grain is level and its left end is at the left.
std::vector<DrawnLine> segment_lines(const plan::CasingSegment& segment, const fonts::Style& style);

/// What the drawing says beside its lines.
struct SegmentFacts {
    int count = 1;      ///< segments of this casing
    int quantity = 1;   ///< openings alike
    Length width;       ///< of the casing
    std::string piece;  ///< id of the opening
    const Tiling& tiling;
    std::vector<AlikeSegments::Other> others{};  ///< that the same template serves
};

TemplateDrawing casing_drawing(const Pen& pen, const plan::CasingSegment& segment, const SegmentFacts& facts,
                               const Tape& tape);

/// "A" for the joint between segments 1 and 2, "B" for the next; "AA" after "Z".
std::string joint_letter(int n);

}  // namespace kerfpacket::sheets
