#include "plan/deep_kerfs.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "bend/limit.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;
using job::say;

/// As the kerf is now, before anything is done about it.
bend::Verdict verdict_now(const bend::Overcut& answer) {
    if (answer.mend >= bend::Mend::fill || answer.web < bend::least_web - 0.001_mm) return bend::Verdict::break_likely;
    return bend::strain_verdict(answer.alone);
}

/// The shallowest of the two kerfs on each side of one; as meant, unless all were deepened.
Length beside(int n, const std::vector<job::TooDeep>& deepened, int kerfs, Length meant) {
    std::optional<Length> shallowest;
    for (int other = std::max(1, n - 2); other <= std::min(kerfs, n + 2); ++other) {
        if (other == n) continue;
        const auto found = std::find_if(deepened.begin(), deepened.end(),
                                        [&](const job::TooDeep& one) { return one.n.value == other; });
        if (found == deepened.end()) return meant;
        shallowest = std::min(found->depth.value, shallowest.value_or(found->depth.value));
    }
    return shallowest.value_or(meant);
}

}  // namespace

tl::expected<std::vector<DeepKerf>, job::Diagnostics> deep_kerfs(const Laid& laid, const Request& wanted,
                                                                 const bend::Material& material, measure::Unit unit) {
    const auto wrong = [](job::Position at, job::Told message, job::Told hint) {
        return tl::unexpected(job::Diagnostics{{job::Severity::error, at, std::move(message), std::move(hint)}});
    };
    const std::vector<Kerf>& kerfs = laid.blank.kerfs;
    std::vector<DeepKerf> all;
    for (const job::TooDeep& deep : wanted.wanted->too_deep) {
        if (deep.n.value > static_cast<int>(kerfs.size()))
            return wrong(deep.n.at, say("no_such_kerf", "there is no kerf {n}", {{"n", deep.n.value}}),
                         say("no_such_kerf_do", "piece {piece} has kerfs 1 to {last}",
                             {{"piece", wanted.id}, {"last", static_cast<int>(kerfs.size())}}));
        if (deep.depth.value <= laid.cut.depth)
            return wrong(deep.depth.at,
                         say("not_too_deep", "kerf {n} is not too deep at {depth}",
                             {{"n", deep.n.value}, {"depth", job::shown(deep.depth.value, unit)}}),
                         say("not_too_deep_do", "piece {piece} is cut {depth} deep",
                             {{"piece", wanted.id}, {"depth", job::shown(laid.cut.depth, unit)}}));
        const Kerf& kerf = kerfs.at(static_cast<std::size_t>(deep.n.value - 1));
        const Length radius = kerf.radius.mm() > 0 ? kerf.radius : Length::mm(1e9);
        const bend::Overcut answer =
            bend::overcut(laid.cut.cell(kerf.spacing), material, kerf.on, radius, deep.depth.value,
                          beside(kerf.n, wanted.wanted->too_deep, static_cast<int>(kerfs.size()), laid.cut.depth));
        all.push_back({kerf.n, deep.depth.value, answer, verdict_now(answer)});
    }
    return all;
}

std::optional<std::size_t> governing_deep(const bend::Assessment& of_bend, const std::vector<DeepKerf>& deep) {
    const auto strain = [](const DeepKerf& kerf) { return kerf.through() ? HUGE_VAL : kerf.answer.alone; };
    std::optional<std::size_t> worst;
    for (std::size_t i = 0; i < deep.size(); ++i) {
        const auto how = [&](const DeepKerf& kerf) { return std::pair(kerf.now, strain(kerf)); };
        const bool worse = deep[i].now > of_bend.verdict || strain(deep[i]) > of_bend.utilisation;
        if (worse && (!worst || how(deep[i]) > how(deep[*worst]))) worst = i;
    }
    return worst;
}

/// The verdict on a piece is that of its worst kerf as it is now.

}  // namespace kerfpacket::plan
