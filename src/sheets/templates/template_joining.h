#pragma once
// How far a template comes out wrong when its sheets are joined a little off.

#include "sheets/templates/tiling.h"

namespace kerfpacket::sheets {

/// Places of a drawing between which a joined template is judged.
struct Landmarks {
    Point first;  ///< first tick, or where the curve starts
    Point crown;
    Point last;  ///< last tick, or where the curve ends
};

/// How far places lie off, seen from the sheet that shows the first tick.
struct JoinError {
    Length crown;
    Length last_tick;
};

struct Joining {
    JoinError worst;  ///< every joint off by the whole error the same way: sums
    JoinError usual;  ///< every joint off as it happens: root of the sum of squares
};

/// Each joint between the first tick's sheet and a place shifts that place by `error`. Sheets along a curve can turn as
/// well, by error / d where two crosses are d apart, and move the place by its distance from the joint times that. In a
/// grid the straight edge along a row's crosses holds the sheets from turning. Of ways through a grid the shortest
/// counts.
Joining joining(const Tiling& tiling, const Landmarks& places, Length error);

}  // namespace kerfpacket::sheets
