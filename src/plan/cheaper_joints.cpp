#include "plan/cheaper_joints.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <tuple>
#include <utility>

#include "plan/make_stock_plan.h"
#include "plan/places.h"
#include "plan/splice.h"
#include "plan/stock_boards.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

/// Places at which a joint is tried, and boards that are then laid out in earnest: what is cheaper is found among the
/// first of them or hardly at all.
constexpr double most_places = 80;
constexpr std::size_t most_earnest = 8;
/// Steps of the search for a packing while a place is only tried: a proof is sought for what is taken.
constexpr std::int64_t try_effort = 4000;
/// Where a section has more blanks than that a search for each place takes too long: they are packed as they come,
/// which buys a little more than need be, and few are laid out.
constexpr std::size_t many_blanks = 20;
constexpr std::size_t few_earnest = 2;
constexpr double as_they_come = 1.04;

std::vector<Length> places_of(const std::vector<Joint>& joints) {
    std::vector<Length> all;
    all.reserve(joints.size());
    for (const Joint& joint : joints) all.push_back(joint.at);
    return all;
}

/// What is bought: cents where there are prices, else 1/100 mm.
std::int64_t cost(const StockSection& section) {
    return section.priced ? section.cents : std::llround(section.bought.mm() * 100);
}

class Moving {
public:
    Moving(const Plan& plan, const Piece& piece, const job::Wall& wall, const job::Job& job)
        : plan_(plan), wall_(wall), job_(job), found_(piece) {
        const Length step = job.header.units == measure::Unit::inch ? 6_in : 150_mm;
        step_ = step * std::ceil(std::max(1.0, piece.blank().length / (step * most_places)));
    }

    /// The piece with joints that buy less than `now`, if any do.
    std::optional<Piece> run(const StockSection& now) {
        least_ = cost(now);
        std::size_t blanks = 0;
        for (const CutStick& stick : now.sticks) blanks += stick.blanks.size();
        many_ = blanks > many_blanks;
        for (std::size_t moved = 0; moved < found_.joints.size(); ++moved) move(moved);
        if (least_ == cost(now)) return std::nullopt;
        return std::move(found_);
    }

private:
    struct Try {
        std::int64_t cost = 0;
        Length away;
        std::vector<Length> joints{};
        bool operator<(const Try& other) const { return std::tie(cost, away) < std::tie(other.cost, other.away); }
    };

    void move(std::size_t moved) {
        std::vector<Try> tries;
        const Length from = found_.joints[moved].at;
        for (Length at = step_; at < found_.blank().length; at = at + step_) {
            std::vector<Length> joints = places_of(found_.joints);
            joints[moved] = at;
            const auto lengths = lengths_between(joints);
            if (lengths.empty()) continue;
            const auto buys = bought(lengths);
            const double enough = static_cast<double>(least_) * (many_ ? as_they_come : 1);
            if (buys && static_cast<double>(*buys) < enough)
                tries.push_back({*buys, measure::abs(at - from), std::move(joints)});
        }
        std::stable_sort(tries.begin(), tries.end());
        for (std::size_t i = 0; i < std::min(many_ ? few_earnest : most_earnest, tries.size()); ++i)
            if (in_earnest(tries[i])) return;
    }

    /// None where one would be too short to be worth it.
    std::vector<Length> lengths_between(const std::vector<Length>& joints) const {
        const Length half = found_.joints.front().scarf / 2;
        std::vector<Length> lengths;
        for (std::size_t i = 0; i <= joints.size(); ++i) {
            const Length low = i == 0 ? Length() : joints[i - 1] - half;
            const Length high = i == joints.size() ? found_.blank().length : joints[i] + half;
            if (high - low < least_blank) return {};
            // On a board that climbs each cut leans, away from zero or toward it.
            const Length lean = found_.blank().lean;
            const bool leans = lean < Length() ? i > 0 : i < joints.size();
            lengths.push_back(high - low + (leans ? measure::abs(lean) : Length()));
        }
        return lengths;
    }

    std::optional<std::int64_t> bought(const std::vector<Length>& lengths) {
        std::vector<double> key;
        key.reserve(lengths.size());
        for (const Length length : lengths) key.push_back(measure::round_to_tape(length, job_.header.units).mm());
        std::sort(key.begin(), key.end());
        const auto [known, is_new] = seen_.try_emplace(std::move(key));
        if (is_new) {
            const StockSection section =
                section_with(plan_, found_.id, lengths, many_ ? std::nullopt : std::optional(try_effort));
            if (section.no_room.empty()) known->second = cost(section);
        }
        return known->second;
    }

    bool in_earnest(const Try& one) {
        job::Wall wall = wall_;
        for (const Length at : one.joints) wall.board.joints.push_back({at, wall.at});
        auto pieces = pieces_of(wall, job_);
        if (!pieces || pieces->size() != 1 || pieces->front().bend.verdict > found_.bend.verdict) return false;
        std::vector<Length> lengths;
        for (const Blank& blank : pieces->front().blanks) lengths.push_back(blank.length);
        const StockSection section = section_with(plan_, found_.id, lengths);
        if (!section.no_room.empty() || cost(section) >= least_) return false;
        least_ = cost(section);
        found_ = std::move(pieces->front());
        return true;
    }

    const Plan& plan_;
    const job::Wall& wall_;
    const job::Job& job_;
    Piece found_;
    Length step_;
    std::int64_t least_ = 0;
    bool many_ = false;  ///< blanks are in the section
    std::map<std::vector<double>, std::optional<std::int64_t>> seen_{};
};

const job::Wall* wall_of(const Piece& piece, const job::Job& job) {
    const auto found = std::find_if(job.walls.begin(), job.walls.end(),
                                    [&](const job::Wall& wall) { return wall.id.value == piece.id; });
    return found == job.walls.end() ? nullptr : &*found;
}

}  // namespace

void add_cheaper_joints(Plan& plan, const job::Job& job) {
    // What was found for a board holds for those after it.
    std::optional<Plan> tried;
    std::map<SectionKey, StockSection> packed;
    for (std::size_t i = 0; i < plan.pieces.size(); ++i) {
        const Piece& piece = plan.pieces[i];
        const job::Wall* wall = piece.spliced() ? wall_of(piece, job) : nullptr;
        if (wall == nullptr || !wall->board.joints.empty()) continue;
        const SectionKey key = section_of(piece, job.stock);
        const auto section = std::find_if(plan.stock_plan->sections.begin(), plan.stock_plan->sections.end(),
                                          [&](const StockSection& one) { return key_of(one) == key; });
        if (section == plan.stock_plan->sections.end() || section->usual_lengths || !section->no_room.empty()) continue;
        if (!tried) tried = plan;
        if (!packed.contains(key)) packed.emplace(key, section_with(*tried, piece.id, {}));
        std::optional<Piece> moved = Moving(*tried, piece, *wall, job).run(packed.at(key));
        if (!moved) continue;
        tried->pieces[i] = std::move(*moved);
        const StockSection now = std::exchange(packed.at(key), section_with(*tried, piece.id, {}));
        const StockSection& then = packed.at(key);
        if (cost(then) >= cost(now)) continue;
        const std::vector<Joint>& joints = tried->pieces[i].joints;
        section->cheaper.push_back(
            {piece.id, places_of(piece.joints), places_of(joints),
             std::any_of(joints.begin(), joints.end(), [](const Joint& one) { return one.in_bend; }),
             now.cents - then.cents, now.bought - then.bought});
    }
}

}  // namespace kerfpacket::plan
