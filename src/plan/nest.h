#pragma once
// Casing segments and ribs of forms on sheets. Segments of one size are slid along their axis, one into the hollow of
// the other; ribs are rectangles.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "plan/plan.h"

namespace kerfpacket::plan {

/// A part of a ring with radial ends.
struct Sector {
    Length inner;
    Length outer;
    Angle half;  ///< from its axis to either end, at most a quarter turn

    Length width() const;   ///< across its axis
    Length height() const;  ///< along it
};

/// From one sector of a stack to the next along their axis, a cut between them all the way: the corners of the inner
/// arc stand a cut from the next outer arc, and nowhere is less left than on the axis.
Length nest_pitch(const Sector& sector, Length cut);

enum class Nested { segments, ribs };

/// Segments of one size, or ribs.
struct NestedSize {
    std::string id;                  ///< of the opening or the piece; with several jobs, the job's number before it
    std::vector<int> n{};            ///< numbers of its segments, from the left, or of its ribs
    int copies = 1;                  ///< of the opening
    std::optional<Sector> sector{};  ///< that holds each of them; none where their edges are no arcs
    Length width;                    ///< along the grain
    Length height;
    Length pitch;  ///< from one to the next in a stack

    int all() const { return static_cast<int>(n.size()) * copies; }
    Length stack(int rows) const { return height + pitch * (rows - 1); }
};

/// Stacks beside each other, in columns along the sheet.
struct NestStrip {
    std::size_t size = 0;  ///< in NestPlan::sizes
    Length from;           ///< from the edge of the sheet as it was bought
    int rows = 1;          ///< of a full column
    int first = 0;         ///< of its segments, counted through the copies
    int count = 0;         ///< of segments; the last columns may hold fewer
};

struct NestSheet {
    std::vector<NestStrip> strips;  ///< the widest first
    Length offcut;                  ///< what is left beside them
};

/// What casings that come from sheets, or ribs, are sawn from. Which material that is, no job says.
struct NestPlan {
    Nested of = Nested::segments;
    Unit unit = Unit::inch;
    Length length;  ///< of a sheet; the grain, where it has one, runs along it
    Length width;
    Length cut;  ///< of the saw between strips, columns and segments
    Length trim;
    std::vector<NestedSize> sizes;
    std::vector<NestSheet> sheets;

    bool empty() const { return sizes.empty(); }
    /// How many columns of a size go along a trimmed sheet, and how many into a column.
    std::array<int, 2> grid(const NestedSize& size) const;
    /// Segments of a size that are laid on sheets.
    int laid(std::size_t size) const;
    /// Of one of them, counted through the copies, which opening of several alike it is for, and its number there.
    std::array<int, 2> copy_and_number(std::size_t size, int i) const;
};

/// Of all jobs together; the sheet is that of the first that names one. What fits no trimmed sheet is not laid.
NestPlan nest_plan(const std::vector<const Plan*>& jobs, Nested of);

/// How many columns of a size go along that sheet, and how many segments into a column.
std::array<int, 2> nest_grid(const NestedSize& size, Length length, Length width, Length cut);

}  // namespace kerfpacket::plan
