#pragma once
// What each kerf turns, at what radius, and whether it holds.

#include <functional>
#include <optional>

#include "bend/assess.h"
#include "plan/unroll.h"

namespace kerfpacket::plan {

/// What of a bend is alike for all its kerfs.
struct Bending {
    bool circular = true;  ///< one radius holds all along
    Length line_radius;    ///< of the line that keeps its length, where the bend is sharpest
};

struct Judged {
    std::vector<Kerf> kerfs;
    int governing = 1;      ///< number of the kerf that the verdict hangs on
    Length line_radius;     ///< there
    bend::Assessment bend;  ///< of that kerf, with the concerns of all
};

/// Whether a concern may stand; empty where all may.
using MayStand = std::function<bool(bend::Concern)>;

/// Judges every kerf by its own radius and gaps. Places are middles of kerfs from zero, in order. Nothing as soon as
/// one has a concern that may not stand.
std::optional<Judged> judge(const std::vector<Length>& places, job::Tick tick, const Blank& blank,
                            const Unrolled& board, const Cutting& cut, const Bending& bending,
                            const bend::Material& material, const MayStand& may_stand);

}  // namespace kerfpacket::plan
