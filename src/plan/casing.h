#pragma once
// Flat casing round a head, sawn in segments from boards or sheets.

#include "curve/shape.h"
#include "plan/lines.h"

namespace kerfpacket::plan {

/// Sheets are this size unless the job says otherwise.
inline constexpr std::array<Length, 2> usual_sheet = {Length::inches(49), Length::inches(97)};

/// Edges, mitres, joints and segments, added to the lines of the opening; or that no board or sheet is wide enough.
job::Diagnostics add_casing(ArchLines& lines, const curve::Head& head, const job::Opening& opening,
                            const job::Job& job);

}  // namespace kerfpacket::plan
