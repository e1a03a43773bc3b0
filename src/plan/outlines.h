#pragma once
// What a machine cuts or draws along: the flat blank, casing segments, the form's rib, the lines of the template.

#include <vector>

#include "geom/layer.h"
#include "plan/piece.h"

namespace kerfpacket::plan {

/// All layers of the pieces, y up, one piece below the other. A layer holds lines of one kind: closed where they go
/// round a part, open where they mark something on it. Its name says whose and what it is: "A_BLANK", "N-1_KERFS" of
/// the piece N/1, "A_CASING_2". Each part stands apart from the others: nothing is drawn on anything else but what
/// belongs on it (kerfs and trim on the blank, the lines of one template on each other). A blank lies kerf face up, its
/// front edge down, that of a splayed jamb its narrow edge; heads are seen from the room, walls from above.
std::vector<geom::Layer> outlines(const std::vector<const Piece*>& pieces);

}  // namespace kerfpacket::plan
