#pragma once
// The page that shows how the tiles of a template lie, how to join them, and what to measure on the whole.

#include "sheets/layout/figure_table.h"
#include "sheets/templates/template_grid.h"
#include "sheets/templates/template_ways.h"

namespace kerfpacket::sheets {

/// Something to measure on the joined whole.
struct MapCheck {
    std::string what;
    std::string length;
};

struct TemplateMap {
    std::string title;
    std::string outline;
    std::string aside;  ///< beside the count of tiles
    std::string ways;   ///< how many sheets each way takes, and how far joints move the crown
    MapSpan span;
    std::vector<std::string> steps;    ///< of joining
    std::optional<FigureTable> table;  ///< of arcs that a trammel strikes
    std::vector<MapCheck> checks;
};

Draft template_map(const TemplateContext& context, const TemplateMap& map);

/// "A grid takes 24 tiles, sheets along the curve 11. ..."
std::string ways_text(const TemplateContext& context, const TemplateWays& ways);

/// The usual steps of joining tiles; `keep_clear` says what no tape may cover.
std::vector<std::string> joining_steps(const TemplateContext& context, const std::string& keep_clear,
                                       bool half = false);

}  // namespace kerfpacket::sheets
