#pragma once
// The two ways to spread a template over sheets, and which of them it takes.

#include <optional>

#include "plan/plan.h"
#include "sheets/layout/kit.h"
#include "sheets/templates/template_drawing.h"
#include "sheets/templates/template_joining.h"

namespace kerfpacket::sheets {

/// How far off a joint is taken to be, and how much of that at the crown is too much.
inline constexpr Length joint_off = Length::inches(1.0 / 32);
inline constexpr Length most_at_crown = Length::inches(1.0 / 16);

/// Sheets along a curve are laid, though the job wishes it, only where they are at most so many times those of a grid.
inline constexpr std::size_t most_along = 3;

/// What is spread over sheets.
struct TemplateShape {
    std::vector<DrawnLine> lines;
    Path guide;  ///< from left to right
    Landmarks places;
    bool half = false;  ///< ends at the upright through the origin, about which it is flipped
    /// Of a band that every sheet along it shows from edge to edge, on cells as high as the paper has room for.
    std::optional<Length> band{};
    bool stepped = false;  ///< in one row its sheets may stand each at its own height
};

struct Way {
    Tiling tiling;
    Joining off;  ///< for joints that are `joint_off` off
};

struct TemplateWays {
    Way grid;
    Way along;
    job::Sheets taken = job::Sheets::grid;
    const Way& way() const { return taken == job::Sheets::grid ? grid : along; }
    const Tiling& tiling() const { return way().tiling; }
};

/// Both ways (a grid may be a stepped row, where that is fewer sheets), each over pages upright or on their side,
/// whichever takes fewer. Taken is what the job wishes, where that can be; else the way that takes fewer sheets (the
/// grid where both take as many), unless its crown is usually off by more than 1/16 in while the other's is not, or is
/// less than half as far off.
TemplateWays template_ways(const plan::Plan& plan, const Kit& kit, const TemplateShape& shape,
                           const std::optional<job::Sheets>& wish);

/// Which of the two, when the job wishes neither.
job::Sheets better_way(const Way& grid, const Way& along);

}  // namespace kerfpacket::sheets
