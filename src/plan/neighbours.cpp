#include "plan/neighbours.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "bend/section.h"
#include "plan/proven_radius.h"
#include "plan/strip_room.h"

namespace kerfpacket::plan {
namespace {

/// Rounding between units must not lose a depth that just fits.
constexpr Length slack = Length::mm(0.001);

class Neighbours {
public:
    Neighbours(const Settled& settled, const Request& wanted, const Wood& wood, const job::Job& job)
        : settled_(settled), cut_(settled.laid.cut), wanted_(wanted), wood_(wood), job_(job) {}

    Settings find() const {
        Settings settings = settled_.settings;
        settings.cross_ply = cross_ply();
        settings.ok_from = ok_from(settings.ok_from_all);
        if (settings.rule == Rule::given) return settings;
        if (!given_depth(*wanted_.wanted)) {
            const std::vector<Length> all = all_depths();
            const auto first_over = [&](Length depth) {
                return std::find_if(all.begin(), all.end(), [&](Length d) { return d > depth; });
            };
            const auto deeper = first_over(cut_.depth + slack);
            const auto here = first_over(cut_.depth - slack);
            if (deeper != all.end()) settings.deeper = with(*deeper, std::nullopt);
            if (here != all.begin()) settings.shallower = with(*std::prev(here), std::nullopt);
        }
        if (!cut_.spacing_given && cut_.least_spacing > closest_as_written() * 1.01)
            settings.closer = with(cut_.depth, closest_as_written());
        return settings;
    }

private:
    std::vector<Length> all_depths() const {
        return depths(bent_of(wanted_, wood_, job_), bend::least_web, job_.header.units);
    }

    /// As a tape and a job file say it: to the next 1/32 in or half millimetre.
    Length closest_as_written() const {
        const Length closest = std::min(closest_spacing(cut_.kerf), usual_spacing);
        const Length step = depth_step(job_.header.units) / 2;
        return step * std::ceil(closest / step - 1e-6);
    }

    /// A depth that ends in a ply along the board cuts what carries the bend in part: the nearest that does not.
    std::optional<Choice> cross_ply() const {
        const std::optional<Length> depth = given_depth(*wanted_.wanted);
        if (!depth || bend::ends_well(cut_.cell(cut_.spacing))) return std::nullopt;
        const std::vector<Length> all = all_depths();
        const auto nearest = std::min_element(all.begin(), all.end(), [&](Length a, Length b) {
            return measure::abs(a - *depth) < measure::abs(b - *depth);
        });
        return nearest == all.end() ? std::nullopt : with(*nearest, std::nullopt);
    }

    /// Where nothing is ok, the radius from which the board as it stands in the job is; none of kerfs set by hand,
    /// which are those of one bend.
    std::optional<Length> ok_from(bool& nothing_against) const {
        const job::Board& board = *wanted_.wanted;
        if (settled_.settings.rule != Rule::least_strain || given_depth(board) || !board.kerfs.empty())
            return std::nullopt;
        const auto radius = proven_radius(wanted_, board, bent_of(wanted_, wood_, job_), job_, bend::Verdict::ok,
                                          [&](const Settled& found) {
                                              if (found.settings.rule == Rule::least_strain) return false;
                                              if (found.laid.bend.verdict != bend::Verdict::ok) nothing_against = false;
                                              return true;
                                          });
        return radius ? std::optional(in_plane(wanted_, *radius)) : std::nullopt;
    }

    /// What the job would come to with this depth or spacing written into it; none where its strips would have no room.
    std::optional<Choice> with(std::optional<Length> depth, std::optional<Length> spacing) const {
        job::Board board = *wanted_.wanted;
        if (depth) {
            board.kerf_depth = {};
            board.kerf_depth.given = depth;
        }
        if (spacing) {
            board.spacing = {};
            board.spacing.given = spacing;
        }
        if (!web_has_strip_room(board.strip.value, cut_.thickness - depth.value_or(cut_.depth))) return std::nullopt;
        const Request wanted = wanted_.with(board);
        return attempt_or_break(wanted, wood_, job_);
    }

    const Settled& settled_;
    const Cutting& cut_;
    const Request& wanted_;
    const Wood& wood_;
    const job::Job& job_;
};

}  // namespace

Settings with_neighbours(const Settled& settled, const Request& wanted, const Wood& wood, const job::Job& job) {
    return Neighbours(settled, wanted, wood, job).find();
}

}  // namespace kerfpacket::plan
