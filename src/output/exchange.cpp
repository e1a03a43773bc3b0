#include "output/exchange.h"

#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "measure/fraction.h"
#include "output/xml_text.h"

namespace kerfpacket::output {
namespace {

using geom::Path;
using geom::Point;
using geom::Segment;

/// A millionth of a millimetre is noise of the arithmetic.
std::string figure(double value) { return measure::fixed(value, 6); }

std::string group(int code, const std::string& value) { return fmt::format("{:>3}\n{}\n", code, value); }
std::string group(int code, int value) { return group(code, std::to_string(value)); }

std::string place(int x_code, Point at) {
    return group(x_code, figure(at.x.mm())) + group(x_code + 10, figure(at.y.mm())) + group(x_code + 20, "0.0");
}

std::string vertex(const std::string& layer, Point at, double turn) {
    std::string text = group(0, "VERTEX") + group(8, layer) + place(10, at);
    if (turn != 0) text += group(42, figure(std::tan(turn / 4)));
    return text;
}

std::string polyline(const std::string& layer, const Path& path) {
    std::string text =
        group(0, "POLYLINE") + group(8, layer) + group(66, 1) + place(10, {}) + group(70, path.closed() ? 1 : 0);
    for (const Segment& segment : path.segments()) text += vertex(layer, segment.from, segment.turn.radians());
    // A closed one goes back to its first vertex by itself.
    if (!path.closed()) text += vertex(layer, path.end(), 0);
    return text + group(0, "SEQEND") + group(8, layer);
}

std::string layer_table(const std::vector<geom::Layer>& layers) {
    std::string text = group(0, "SECTION") + group(2, "TABLES");
    text += group(0, "TABLE") + group(2, "LTYPE") + group(70, 1) + group(0, "LTYPE") + group(2, "CONTINUOUS") +
            group(70, 64) + group(3, "Solid line") + group(72, 65) + group(73, 0) + group(40, "0.0") +
            group(0, "ENDTAB");
    text += group(0, "TABLE") + group(2, "LAYER") + group(70, static_cast<int>(layers.size()));
    for (const geom::Layer& layer : layers)
        text += group(0, "LAYER") + group(2, layer.name) + group(70, 64) + group(62, 7) + group(6, "CONTINUOUS");
    return text + group(0, "ENDTAB") + group(0, "ENDSEC");
}

std::string svg_place(Point at) { return figure(at.x.mm()) + " " + figure(-at.y.mm()); }

std::string svg_path(const Path& path) {
    std::string d = "M " + svg_place(path.start());
    for (const Segment& segment : path.segments()) {
        if (segment.is_line()) {
            d += " L " + svg_place(segment.to);
            continue;
        }
        const double turn = segment.turn.radians();
        const std::string radius = figure(segment.radius().mm());
        // Anticlockwise with y up is against the sense in which SVG, with y down, counts angles.
        d += fmt::format(" A {0} {0} 0 {1} {2} {3}", radius, std::abs(turn) > std::numbers::pi ? 1 : 0,
                         turn < 0 ? 1 : 0, svg_place(segment.to));
    }
    return fmt::format("<path d=\"{}{}\"/>\n", d, path.closed() ? " Z" : "");
}

}  // namespace

std::string dxf(const std::vector<geom::Layer>& layers, const std::string& title) {
    const geom::Rect box = bounds(layers);
    std::string text = group(999, title) + group(999, "true size, millimetres") + group(0, "SECTION") +
                       group(2, "HEADER") + group(9, "$ACADVER") + group(1, "AC1009") + group(9, "$EXTMIN") +
                       place(10, box.low) + group(9, "$EXTMAX") + place(10, box.high) + group(0, "ENDSEC") +
                       layer_table(layers) + group(0, "SECTION") + group(2, "ENTITIES");
    for (const geom::Layer& layer : layers)
        for (const Path& path : layer.paths) text += polyline(layer.name, path);
    return text + group(0, "ENDSEC") + group(0, "EOF");
}

std::string svg(const std::vector<geom::Layer>& layers, const std::string& title) {
    const geom::Rect box = bounds(layers).grown(measure::Length::mm(1));
    const std::string width = figure(box.width().mm());
    const std::string height = figure(box.height().mm());
    std::string text = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0}mm\" height=\"{1}mm\" "
        "viewBox=\"{2} {3} {0} {1}\">\n<title>{4}</title>\n",
        width, height, figure(box.low.x.mm()), figure(-box.high.y.mm()), xml_text(title));
    for (const geom::Layer& layer : layers) {
        text += fmt::format("<g id=\"{}\" fill=\"none\" stroke=\"black\" stroke-width=\"0.2\">\n", layer.name);
        for (const Path& path : layer.paths) text += svg_path(path);
        text += "</g>\n";
    }
    return text + "</svg>\n";
}

}  // namespace kerfpacket::output
