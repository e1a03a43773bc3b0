#pragma once
// What a machine cuts or draws along: the flat blank, casing segments, the form's rib, the lines of the template.

#include <string>
#include <vector>

#include "plan/plan.h"

namespace kerfpacket::plan {

/// Lines of one kind, to be drawn together: closed where they go round a part, open where they mark something on it.
struct OutlineLayer {
    std::string name;  ///< ours, in capitals: "A_BLANK", "A_CASING_2"; of an id "N/1" the stroke becomes "-"
    std::vector<Path> paths;
};

/// All layers of a piece, y up. Each part stands apart from the others: nothing is drawn on anything else but what
/// belongs on it (kerfs and trim on the blank, the lines of one template on each other). The blank lies with its zero
/// end at the left and its front edge down, kerf face up; heads are seen from the room, walls from above.
std::vector<OutlineLayer> outlines(const Piece& piece);

}  // namespace kerfpacket::plan
