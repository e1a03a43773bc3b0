#include "plan/settle.h"

#include <algorithm>
#include <cmath>

namespace kerfpacket::plan {
namespace {

using bend::Concern;
using Result = tl::expected<Settled, job::Diagnostics>;

/// Kerfs this far apart are wanted first: a third closer than common practice before the web gets thinner. Judgement.
constexpr Length wanted_spacing = Length::inches(0.375);

bend::Limit limit(const Laid& laid, const Wood& wood) {
    const Kerf& kerf = laid.governing_kerf();
    return bend::tightest(laid.cut.cell(kerf.spacing), wood.material, kerf.on).limit;
}

Choice choice(const Laid& laid, const Wood& wood) {
    return {laid.cut.depth,        laid.cut.spacing,  laid.cut.least_spacing, static_cast<int>(laid.blank.kerfs.size()),
            laid.bend.utilisation, laid.bend.verdict, limit(laid, wood)};
}

class Settling {
public:
    Settling(const Request& wanted, const Wood& wood, const job::Job& job)
        : wanted_(wanted),
          board_(*wanted.wanted),
          job_(job),
          bent_(bent_of(wanted, wood, job)),
          depth_(given_depth(board_)) {
        if (!board_.kerfs.empty()) kerfs_ = Cut::Kerfs::by_hand;
        else if (board_.spacing.given) kerfs_ = Cut::Kerfs::even;
    }

    Result run() const {
        Result settled = choose();
        if (settled) settled->settings.limit = what_limits(*settled);
        return settled;
    }

    /// The kerfs that were chosen by what was known of the wood then, where they are ok in this one.
    std::optional<Settled> keep(const Settled& before, const Wood& then) const {
        if (before.settings.rule == Rule::given) return std::nullopt;
        auto laid = lay_out_again(wanted_, before.laid.asked, then, bent_.wood, job_);
        if (!laid || !acceptable(*laid)) return std::nullopt;
        const bool common = before.settings.rule == Rule::common_practice;
        Settled kept{*std::move(laid), {common ? Rule::common_practice : Rule::kept}};
        kept.settings.limit = what_limits(kept);
        return kept;
    }

    /// With the depth that is looked at first and the closest kerfs.
    std::optional<Choice> closest_choice() const {
        const auto laid = lay(cut(depth_.value_or(first_depth(board_, unit())), closest()));
        return laid ? std::optional(choice(*laid, bent_.wood)) : std::nullopt;
    }

private:
    bool solved() const { return kerfs_ == Cut::Kerfs::solved; }
    measure::Unit unit() const { return job_.header.units; }
    Length closest() const { return std::min(closest_spacing(bent_.kerf), usual_spacing); }

    /// The spacing that is given, the mean of kerfs given one by one, or the largest that is looked for.
    Length most() const {
        if (board_.spacing.given) return *board_.spacing.given;
        if (board_.kerfs.size() < 2) return usual_spacing;
        return (board_.kerfs.back().value - board_.kerfs.front().value) / static_cast<double>(board_.kerfs.size() - 1);
    }

    Cut cut(Length depth, Length least) const { return {depth, kerfs_, most(), std::min(least, most()), 0}; }

    /// A cut, and where a kerf of a solved spacing may fail by a hair, the same for a bend that is a little tighter.
    std::vector<Cut> tries(Cut cut) const {
        std::vector<Cut> all{cut};
        if (!solved() || !bent_.is_ok(bent_.cell(cut.depth, cut.least))) return all;
        for (const double tighter : {0.005, 0.02, 0.05}) {
            cut.tighter = tighter;
            all.push_back(cut);
        }
        return all;
    }

    /// The first try that is acceptable.
    tl::expected<std::optional<Laid>, job::Diagnostics> first_acceptable(const Cut& cut, OrElse otherwise) const {
        return lay_out_first(
            wanted_, tries(cut), bent_.wood, job_, [&](Concern concern) { return may_stand(concern); }, otherwise);
    }

    /// Laid out as the first try that is acceptable, or else as the last.
    tl::expected<Laid, job::Diagnostics> lay(const Cut& cut) const {
        auto laid = first_acceptable(cut, OrElse::the_last);
        if (!laid) return tl::unexpected(std::move(laid).error());
        return **std::move(laid);
    }

    /// What no setting can change, or what is asked for.
    bool may_stand(Concern concern) const {
        switch (concern) {
            case Concern::grain_may_split:
            case Concern::kerf_out_of_range:
            case Concern::spacing_out_of_range:
            case Concern::land_out_of_range: return true;
            case Concern::web_thin:
            case Concern::depth_out_of_range: return depth_.has_value();
            default: return false;
        }
    }

    /// Whether all is ok that a setting can change.
    bool acceptable(const Laid& laid) const {
        return std::all_of(laid.bend.concerns.begin(), laid.bend.concerns.end(),
                           [&](Concern concern) { return may_stand(concern); });
    }

    Result choose() const {
        auto common = lay(cut(depth_.value_or(first_depth(board_, unit())), solved() ? usual_spacing : closest()));
        if (!common) return tl::unexpected(std::move(common.error()));
        const bool all_given = depth_ && !solved();
        if (acceptable(*common)) return Settled{*common, {all_given ? Rule::given : Rule::common_practice}};
        if (all_given) {
            Settled settled{*common, {Rule::given}};
            settled.settings.solved = free_choice();
            return settled;
        }
        Result found = search();
        if (found) found->settings.common = choice(*common, bent_.wood);
        return found;
    }

    Result search() const {
        // A depth that is given leaves the spacing alone to be found: the widest that is ok, place by place.
        if (!depth_ || !solved())
            if (auto found = thickest_web(solved() ? wanted_spacing : closest(), Rule::thickest_web)) return *found;
        if (solved())
            if (auto found = thickest_web(closest(), Rule::closer)) return *found;
        // Half a step, down to the least web, only where no whole one does.
        if (auto found = thickest_web(closest(), solved() ? Rule::closer : Rule::thickest_web, true)) return *found;
        return least_strain();
    }

    std::vector<Length> depths_down_to(Length web) const {
        return depth_ ? std::vector{*depth_} : depths(bent_, web, unit());
    }

    bool whole_step(Length depth) const {
        const double steps = depth / depth_step(unit());
        return std::abs(steps - std::round(steps)) < 1e-6;
    }

    std::optional<Settled> thickest_web(Length least, Rule rule, bool half_steps = false) const {
        for (const Length depth : depths_down_to(bend::thin_web)) {
            if (!half_steps && !depth_ && bent_.plies.empty() && !whole_step(depth)) continue;
            if (kerfs_ != Cut::Kerfs::by_hand && !bent_.is_ok(bent_.cell(depth, solved() ? least : most()))) continue;
            auto laid = first_acceptable(cut(depth, least), OrElse::nothing);
            if (laid && *laid) return Settled{**std::move(laid), {rule}};
        }
        return std::nullopt;
    }

    /// Nothing is ok: the best there is, when it is no worse than a caution.
    Result least_strain() const {
        const auto best = least_strained(bent_, solved() ? closest() : most(), depths_down_to(bend::least_web));
        if (!best) return tl::unexpected(job::Diagnostics{});
        auto laid = lay(cut(best->depth, closest()));
        if (!laid) return tl::unexpected(std::move(laid.error()));
        if (laid->bend.verdict == bend::Verdict::break_likely) return tl::unexpected(job::Diagnostics{});
        // A whole number of kerfs can come closer than what was asked for, and so be ok after all.
        const Rule rule = acceptable(*laid) ? Rule::closer : Rule::least_strain;
        return Settled{*std::move(laid), {rule}};
    }

    /// What "solve" would take if everything were left to it.
    std::optional<Choice> free_choice() const {
        const job::Board free = all_left_to_solve(board_);
        const Request wanted = wanted_.with(free);
        return attempt(wanted, bent_.wood, job_);
    }

    /// Where nothing is ok, it is the web that keeps the cut from going deeper.
    bend::Limit what_limits(const Settled& settled) const {
        const bool web = settled.settings.rule == Rule::least_strain && !depth_ &&
                         settled.laid.cut.thinnest_web() - depth_step(unit()) < bend::thin_web;
        return web ? bend::Limit::web : limit(settled.laid, bent_.wood);
    }

    const Request& wanted_;
    const job::Board& board_;
    const job::Job& job_;
    Bent bent_;
    std::optional<Length> depth_;  ///< where the job gives it
    Cut::Kerfs kerfs_ = Cut::Kerfs::solved;
};

}  // namespace

tl::expected<Settled, job::Diagnostics> settle(const Request& wanted, const Wood& wood, const job::Job& job) {
    return Settling(wanted, wood, job).run();
}

tl::expected<Settled, job::Diagnostics> settle(const Request& wanted, std::span<const Wood> woods,
                                               const job::Job& job) {
    Result settled = settle(wanted, woods.front(), job);
    const Wood* then = &woods.front();
    for (const Wood& now : woods.subspan(1)) {
        auto kept = settled ? Settling(wanted, now, job).keep(*settled, *then) : std::nullopt;
        if (kept) {
            settled = *std::move(kept);
            continue;
        }
        settled = settle(wanted, now, job);
        then = &now;
    }
    return settled;
}

std::optional<Choice> attempt(const Request& wanted, const Wood& wood, const job::Job& job) {
    const Result settled = settle(wanted, wood, job);
    return settled ? std::optional(choice(settled->laid, wood)) : std::nullopt;
}

std::optional<Choice> attempt_or_break(const Request& wanted, const Wood& wood, const job::Job& job) {
    if (auto found = attempt(wanted, wood, job)) return found;
    auto found = Settling(wanted, wood, job).closest_choice();
    if (found) found->verdict = bend::Verdict::break_likely;
    return found;
}

job::Board all_left_to_solve(const job::Board& board) {
    job::Board free = board;
    free.kerf_depth = {};
    free.spacing = {};
    free.kerfs.clear();
    return free;
}

}  // namespace kerfpacket::plan
