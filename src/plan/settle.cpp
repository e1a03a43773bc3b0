#include "plan/settle.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "bend/section.h"
#include "plan/remedies.h"
#include "plan/search.h"

namespace kerfpacket::plan {
namespace {

using bend::Concern;
using Laid = tl::expected<Piece, job::Diagnostics>;

/// Kerfs this far apart are wanted first: a third closer than common practice before the web gets thinner. Judgement.
constexpr Length wanted_spacing = Length::inches(0.375);

/// Rounding between units must not lose a depth that just fits.
constexpr Length slack = Length::mm(0.001);

class Settling {
public:
    Settling(const Request& wanted, const Wood& wood, const job::Job& job)
        : wanted_(wanted), board_(*wanted.wanted), job_(job), bent_{board_.thickness.value,
                                                                    job.saw.kerf.value,
                                                                    job.saw.blade_diameter.value,
                                                                    wood,
                                                                    tight_spots(wanted),
                                                                    wanted.measured_to,
                                                                    plies_of(board_)} {
        if (board_.kerf_depth.given) depth_ = board_.kerf_depth.given;
        else if (board_.kerf_depth.half) depth_ = usual_depth(board_);
        if (!board_.kerfs.empty()) kerfs_ = Cut::Kerfs::by_hand;
        else if (board_.spacing.given) kerfs_ = Cut::Kerfs::even;
    }

    /// Only what it comes to: refusals say nothing, and no neighbours are looked at.
    std::optional<Choice> attempt() {
        quiet_ = true;
        const Laid piece = choose();
        return piece ? std::optional(choice(*piece)) : std::nullopt;
    }

    Laid run() {
        Laid piece = choose();
        if (!piece) return piece;
        set_limit(*piece);
        add_neighbours(*piece);
        return piece;
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

    /// Laid out; where a kerf of a solved spacing fails by a hair, once more for a bend that is a little tighter.
    Laid lay(Cut cut) const {
        Laid piece = lay_out(wanted_, cut, bent_.wood, job_);
        for (const double tighter : {0.005, 0.02, 0.05}) {
            if (!solved() || !piece || acceptable(*piece) || !bent_.is_ok(bent_.cell(cut.depth, cut.least))) break;
            cut.tighter = tighter;
            piece = lay_out(wanted_, cut, bent_.wood, job_);
        }
        return piece;
    }

    /// Whether all is ok that a setting can change.
    bool acceptable(const Piece& piece) const {
        return std::all_of(piece.bend.concerns.begin(), piece.bend.concerns.end(), [&](Concern concern) {
            switch (concern) {
                case Concern::grain_may_split:
                case Concern::kerf_out_of_range:
                case Concern::spacing_out_of_range:
                case Concern::land_out_of_range: return true;
                case Concern::web_thin:
                case Concern::depth_out_of_range: return depth_.has_value();
                default: return false;
            }
        });
    }

    Laid choose() {
        const Length first = depth_.value_or(first_depth(board_, unit()));
        Laid common = lay(cut(first, solved() ? usual_spacing : closest()));
        if (!common) return common;
        const bool all_given = depth_ && !solved();
        if (acceptable(*common) || all_given) {
            common->settings.rule = all_given ? Rule::given : Rule::common_practice;
            if (!acceptable(*common)) common->settings.solved = free_choice();
            return common;
        }
        Laid piece = search();
        if (piece) piece->settings.common = choice(*common);
        return piece;
    }

    Laid search() {
        // A depth that is given leaves the spacing alone to be found: the widest that is ok, place by place.
        if (!depth_ || !solved())
            if (auto piece = thickest_web(solved() ? wanted_spacing : closest(), Rule::thickest_web)) return *piece;
        if (solved())
            if (auto piece = thickest_web(closest(), Rule::closer)) return *piece;
        // Half a step, down to the least web, only where no whole one does.
        if (auto piece = thickest_web(closest(), solved() ? Rule::closer : Rule::thickest_web, true)) return *piece;
        return least_strain();
    }

    std::vector<Length> depths_down_to(Length web) const {
        return depth_ ? std::vector{*depth_} : depths(bent_, web, unit());
    }

    bool whole_step(Length depth) const {
        const double steps = depth / depth_step(unit());
        return std::abs(steps - std::round(steps)) < 1e-6;
    }

    std::optional<Piece> thickest_web(Length least, Rule rule, bool half_steps = false) const {
        for (const Length depth : depths_down_to(bend::thin_web)) {
            if (!half_steps && !depth_ && bent_.plies.empty() && !whole_step(depth)) continue;
            if (kerfs_ != Cut::Kerfs::by_hand && !bent_.is_ok(bent_.cell(depth, solved() ? least : most()))) continue;
            Laid piece = lay(cut(depth, least));
            if (!piece || !acceptable(*piece)) continue;
            piece->settings.rule = rule;
            return *piece;
        }
        return std::nullopt;
    }

    /// Nothing is ok: the best there is, when it is no worse than a caution.
    Laid least_strain() const {
        const auto best = least_strained(bent_, solved() ? closest() : most(), depths_down_to(bend::least_web));
        if (!best) return refused();
        Laid piece = lay(cut(best->depth, closest()));
        if (!piece) return piece;
        if (piece->bend.verdict == bend::Verdict::break_likely) return refused();
        // A whole number of kerfs can come closer than what was asked for, and so be ok after all.
        piece->settings.rule = acceptable(*piece) ? Rule::closer : Rule::least_strain;
        piece->settings.ok_from = least_radius(bent_, unit(), bend::Verdict::ok);
        return piece;
    }

    Laid refused() const {
        return tl::unexpected(quiet_ ? job::Diagnostics{} : nothing_works(wanted_, bent_, depth_, job_));
    }

    /// What "solve" would take if everything were left to it.
    std::optional<Choice> free_choice() const {
        const job::Board free = all_left_to_solve(board_);
        Request wanted = wanted_;
        wanted.wanted = &free;
        return Settling(wanted, bent_.wood, job_).attempt();
    }

    /// What the job would come to with this depth or spacing written into it; where it would be refused, what the
    /// refusal speaks of.
    std::optional<Choice> with(std::optional<Length> depth, std::optional<Length> spacing) const {
        job::Board board = board_;
        if (depth) {
            board.kerf_depth = {};
            board.kerf_depth.given = depth;
        }
        if (spacing) {
            board.spacing = {};
            board.spacing.given = spacing;
        }
        Request wanted = wanted_;
        wanted.wanted = &board;
        Settling run(wanted, bent_.wood, job_);
        if (auto found = run.attempt()) return found;
        const Laid laid = run.lay(run.cut(depth.value_or(depth_.value_or(first_depth(board_, unit()))), run.closest()));
        if (!laid) return std::nullopt;
        Choice found = run.choice(*laid);
        found.verdict = bend::Verdict::break_likely;
        return found;
    }

    Choice choice(const Piece& piece) const {
        return {piece.kerf_depth,       piece.spacing,      piece.least_spacing, static_cast<int>(piece.kerfs.size()),
                piece.bend.utilisation, piece.bend.verdict, limit(piece)};
    }

    bend::Limit limit(const Piece& piece) const {
        const auto index = static_cast<std::size_t>(piece.governing - 1);
        const Kerf& kerf = piece.kerfs.at(index);
        return bend::tightest(piece.cell(kerf.spacing), bent_.wood.material, kerf.on).limit;
    }

    /// Where nothing is ok, it is the web that keeps the cut from going deeper.
    void set_limit(Piece& piece) const {
        const bool web =
            piece.settings.rule == Rule::least_strain && !depth_ && piece.web() - depth_step(unit()) < bend::thin_web;
        piece.settings.limit = web ? bend::Limit::web : limit(piece);
    }

    /// As a tape and a job file say it: to the next 1/32 in or half millimetre.
    Length closest_as_written() const {
        const Length step = depth_step(unit()) / 2;
        return step * std::ceil(closest() / step - 1e-6);
    }

    /// A depth that ends in a ply along the board cuts what carries the bend in part: the nearest that does not.
    void add_cross_ply(Piece& piece) const {
        if (!depth_ || bend::ends_well(piece.cell(piece.spacing))) return;
        const std::vector<Length> all = depths(bent_, bend::least_web, unit());
        const auto nearest = std::min_element(all.begin(), all.end(), [&](Length a, Length b) {
            return measure::abs(a - *depth_) < measure::abs(b - *depth_);
        });
        if (nearest != all.end()) piece.settings.cross_ply = with(*nearest, std::nullopt);
    }

    /// What the next depths and the closest kerfs would come to: runs of the job with these written into it.
    void add_neighbours(Piece& piece) const {
        add_cross_ply(piece);
        if (piece.settings.rule == Rule::given) return;
        if (!depth_) {
            const std::vector<Length> all = depths(bent_, bend::least_web, unit());
            const auto deeper =
                std::find_if(all.begin(), all.end(), [&](Length d) { return d > piece.kerf_depth + slack; });
            const auto here = std::find_if(all.begin(), deeper, [&](Length d) { return d > piece.kerf_depth - slack; });
            if (deeper != all.end()) piece.settings.deeper = with(*deeper, std::nullopt);
            if (here != all.begin()) piece.settings.shallower = with(*std::prev(here), std::nullopt);
        }
        if (solved() && piece.least_spacing > closest_as_written() * 1.01)
            piece.settings.closer = with(piece.kerf_depth, closest_as_written());
    }

    const Request& wanted_;
    const job::Board& board_;
    const job::Job& job_;
    Bent bent_;
    std::optional<Length> depth_;  ///< where the job gives it
    Cut::Kerfs kerfs_ = Cut::Kerfs::solved;
    bool quiet_ = false;
};

}  // namespace

tl::expected<Piece, job::Diagnostics> settle(const Request& wanted, const Wood& wood, const job::Job& job) {
    return Settling(wanted, wood, job).run();
}

std::optional<Choice> attempt(const Request& wanted, const Wood& wood, const job::Job& job) {
    return Settling(wanted, wood, job).attempt();
}

}  // namespace kerfpacket::plan
