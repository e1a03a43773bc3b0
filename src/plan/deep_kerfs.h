#pragma once
// Kerfs that were cut too deep by mistake: what each comes to, and which of them the verdict hangs on.

#include <optional>
#include <vector>

#include "plan/lay_out.h"
#include "plan/piece.h"

namespace kerfpacket::plan {

/// Each that the board has, as it is now, and what to do about it; or which the job cannot mean.
tl::expected<std::vector<DeepKerf>, job::Diagnostics> deep_kerfs(const Laid& laid, const Request& wanted,
                                                                 const bend::Material& material, measure::Unit unit);

/// Index of the one that is worse than the bend, by its verdict or its strain, the worst of them.
std::optional<std::size_t> governing_deep(const bend::Assessment& of_bend, const std::vector<DeepKerf>& deep);

}  // namespace kerfpacket::plan
