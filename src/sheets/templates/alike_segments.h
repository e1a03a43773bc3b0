#pragma once
// Segments of a casing that one template serves: as it is, or turned over.

#include <string>
#include <vector>

#include "plan/lines.h"

namespace kerfpacket::sheets {

struct AlikeSegments {
    struct Other {
        const plan::CasingSegment* segment = nullptr;
        bool turned = false;  ///< the mirror image: the template is laid print side down
    };
    const plan::CasingSegment* drawn;  ///< the first of them, from the left
    std::vector<Other> others;         ///< from left to right

    std::vector<int> numbers() const;  ///< of all that it serves
    std::vector<int> turned() const;   ///< of those for which it is laid print side down
};

/// All segments, each in one group. Alike are those whose edges lie within 0.01 mm of each other all along once their
/// grain is laid level, and whose ends are of one kind.
std::vector<AlikeSegments> alike_segments(const std::vector<plan::CasingSegment>& segments);

/// "1, 3", "2-23, 26": numbers in order; five or more that follow each other as a range.
std::string segment_numbers(const std::vector<int>& numbers);

/// By how much a segment is turned for its grain to be level, its left end at the left, its outside edge above.
geom::Angle levelling(const plan::CasingSegment& segment);

}  // namespace kerfpacket::sheets
