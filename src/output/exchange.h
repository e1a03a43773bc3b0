#pragma once
// Lines for other machines: DXF R12 and SVG, true size in millimetres, arcs as arcs.

#include <string>
#include <vector>

#include "geom/layer.h"

namespace kerfpacket::output {

/// Layers have names of capitals, digits, "_" and "-", at most 31 (what DXF R12 takes), and a path among them.
///
/// AutoCAD's drawing exchange format of release 12 (AC1009), in text: a polyline a path, an arc as the bulge of its
/// vertex, the tangent of a quarter of its turn. R12 has no word for units: a comment ahead says millimetres.
std::string dxf(const std::vector<geom::Layer>& layers, const std::string& title);

/// SVG 1.1 whose user unit is a millimetre, a group a layer, its y turned downward.
std::string svg(const std::vector<geom::Layer>& layers, const std::string& title);

}  // namespace kerfpacket::output
