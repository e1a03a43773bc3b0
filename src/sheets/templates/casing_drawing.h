#pragma once
// One segment of a flat casing as a drawing: outline, joints, centres for splines, grain.

#include "plan/lines.h"
#include "sheets/templates/alike_segments.h"
#include "sheets/templates/template_drawing.h"
#include "sheets/templates/template_ways.h"

namespace kerfpacket::sheets {

/// Outlines of a segment, turned so that its grain is level and its left end is at the left.
std::vector<DrawnLine> segment_lines(const plan::CasingSegment& segment, const fonts::Style& style);
/// The same to be spread over sheets, in a grid or along the inside edge.
TemplateShape segment_shape(const plan::CasingSegment& segment, const fonts::Style& style);

/// What the drawing says beside its lines.
struct SegmentFacts {
    int count = 1;               ///< segments of this casing
    const plan::Piece& opening;  ///< the first of its boards
    std::string piece;           ///< id of the opening
    const Tiling& tiling;
};

TemplateDrawing casing_drawing(const Pen& pen, const AlikeSegments& alike, const SegmentFacts& facts, const Tape& tape);

/// "1|2" for the first joint, which is between segments 1 and 2.
std::string joint_name(int n, const Kit& kit);

}  // namespace kerfpacket::sheets
