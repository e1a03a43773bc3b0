#include "geom/layer.h"

#include <optional>

#include "measure/require.h"

namespace kerfpacket::geom {

Rect bounds(const std::vector<Layer>& layers) {
    std::optional<Rect> all;
    for (const Layer& layer : layers)
        for (const Path& path : layer.paths) all = all ? united(*all, path.bounds()) : path.bounds();
    measure::require(all.has_value(), "layers to be drawn hold a path");
    return *all;
}

}  // namespace kerfpacket::geom
