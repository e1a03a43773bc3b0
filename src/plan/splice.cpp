#include "plan/splice.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "plan/divide.h"
#include "plan/parts.h"
#include "plan/settle.h"
#include "plan/splice_places.h"
#include "plan/splice_search.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;
using job::say;

job::Told text(Length length, const job::Job& job) {
    return job::shown(measure::round_to_tape(length, job.header.units), job.header.units);
}

/// To whole feet, or tenths of a metre: as boards are sold.
job::Told sold_text(Length at_least, const job::Job& job) {
    const Length step = job.header.units == measure::Unit::inch ? 12_in : 100_mm;
    return job::shown(step * std::ceil(at_least / step - 1e-6), job.header.units);
}

job::Told why(Bar bar, const job::Job& job) {
    switch (bar) {
        case Bar::short_blank:
            return say("bar_short", "it would leave a blank shorter than {least}", {{"least", text(least_blank, job)}});
        case Bar::kept_out: return say("bar_kept_out", "it is in no_splice");
        case Bar::by_hand: return say("bar_by_hand", "a kerf that is given by hand stands in the scarf");
        case Bar::flat:
            return say("bar_flat", "without the kerfs of the scarf the board would be seen to be flat there");
        case Bar::strain: return say("bar_strain", "the kerfs beside the scarf would bear more than they hold");
        case Bar::none: break;
    }
    return {};
}

job::Diagnostics wrong(job::Position at, job::Told message, job::Told hint) {
    return {{job::Severity::error, at, std::move(message), std::move(hint)}};
}

job::Told no_joint(Length at, Bar bar, const job::Job& job) {
    return say("no_joint", "there can be no joint at {at}: {why}", {{"at", text(at, job)}, {"why", why(bar, job)}});
}

/// Joints that the job wishes for.
tl::expected<std::vector<Place>, job::Diagnostics> wished(const Splicing& splicing, const Request& wanted,
                                                          const std::vector<Place>& places, const job::Job& job) {
    std::vector<Place> joints;
    job::Diagnostics all;
    for (const auto& joint : wanted.wanted->joints) {
        joints.push_back(splicing.place(splicing.from_front(joint.value)));
        if (joints.back().bar == Bar::none) continue;
        const auto nearer = [&](const Place& a, const Place& b) {
            return measure::abs(splicing.front(a.at) - joint.value) < measure::abs(splicing.front(b.at) - joint.value);
        };
        const auto nearest = std::min_element(places.begin(), places.end(), nearer);
        job::append(
            all, wrong(joint.at, no_joint(joint.value, joints.back().bar, job),
                       nearest == places.end() ? say("no_joint_at_all", "there is no place for a joint in this board")
                                               : say("nearest_joint", "the nearest place is {at}",
                                                     {{"at", text(splicing.front(nearest->at), job)}})));
    }
    for (std::size_t i = 1; i < joints.size(); ++i) {
        const auto& [before, here] = std::tie(wanted.wanted->joints[i - 1], wanted.wanted->joints[i]);
        if (here.value <= before.value)
            job::append(all, wrong(here.at,
                                   say("joints_fall", "the joint at {at} comes after the one at {before}",
                                       {{"at", text(here.value, job)}, {"before", text(before.value, job)}}),
                                   say("joints_fall_do", "expected joints in rising order, from zero on")));
    }
    if (!all.empty()) return tl::unexpected(std::move(all));
    for (std::size_t i = 0; i <= joints.size(); ++i) {
        const Length length =
            splicing.between(i == 0 ? nullptr : &joints[i - 1], i == joints.size() ? nullptr : &joints[i]);
        const job::Position at = wanted.wanted->joints[std::min(i, joints.size() - 1)].at;
        if (length < least_blank - hair)
            job::append(all, wrong(at,
                                   say("blank_short", "blank {n} from zero would be {length} long",
                                       {{"n", static_cast<int>(i) + 1}, {"length", text(length, job)}}),
                                   say("blank_short_do", "expected joints that leave blanks of {least} or more",
                                       {{"least", text(least_blank, job)}})));
        if (length > splicing.most() + hair)
            job::append(
                all, wrong(at,
                           say("blank_long",
                               "blank {n} from zero would be {length} long, and the longest that can be had is {most}",
                               {{"n", static_cast<int>(i) + 1},
                                {"length", text(length, job)},
                                {"most", text(splicing.most(), job)}}),
                           say("blank_long_do", "expected another joint in it, or longer stock")));
    }
    if (!all.empty()) return tl::unexpected(std::move(all));
    return joints;
}

/// Laid out again without the kerfs that joints leave no room for: their neighbours are judged by what they bear now.
tl::expected<Laid, job::Diagnostics> without_kerfs(const Request& wanted, const Laid& laid,
                                                   const std::vector<Place>& joints, const Wood& wood,
                                                   const job::Job& job) {
    job::Board board = *wanted.wanted;
    board.kerfs.clear();
    board.spacing = {};
    const std::vector<Kerf>& kerfs = (laid.square ? *laid.square : laid.blank).kerfs;
    for (std::size_t i = 0; i < kerfs.size(); ++i)
        if (std::none_of(joints.begin(), joints.end(), [&](const Place& one) { return i >= one.first && i < one.end; }))
            board.kerfs.push_back({kerfs[i].at, wanted.wanted->at});
    const Cut cut{laid.cut.depth, Cut::Kerfs::by_hand, laid.cut.spacing, laid.cut.least_spacing, 0};
    auto again = lay_out(wanted.with(board), cut, wood, job);
    if (!again) return again;
    again->cut.spacing_given = laid.cut.spacing_given;
    again->cut.kerfs_given = laid.cut.kerfs_given;
    return again;
}

/// The blanks of a board that climbs, each as it lies askew; at a joint it is cut along its kerfs.
std::vector<Blank> askew_parts(const std::vector<Blank>& square, const Rake& rake) {
    std::vector<Blank> parts;
    for (std::size_t i = 0; i < square.size(); ++i)
        parts.push_back(askew(square[i], rake.of_part(i, square.size(), square[i].zero)));
    return parts;
}

Spliced with_joints(Laid laid, const std::vector<Place>& places, const Splicing& splicing) {
    const Length scarf = splicing.scarf();
    Spliced spliced{std::move(laid), {}, {}};
    const Angle angle = Angle::radians(std::atan(scarf / spliced.laid.cut.thickness));
    for (const Place& place : places)
        spliced.joints.push_back(
            {place.at, scarf, angle, place.curvature > 0, static_cast<int>(place.gone()), place.off});
    if (!spliced.laid.rake) {
        spliced.blanks = parts_of(spliced.laid.blank, spliced.joints);
        return spliced;
    }
    spliced.blanks = askew_parts(parts_of(*spliced.laid.square, spliced.joints), *spliced.laid.rake);
    for (Joint& joint : spliced.joints) {
        joint.at = splicing.front(joint.at);
        joint.scarf = splicing.along_edge(joint.scarf);
    }
    return spliced;
}

/// The board that joints in the bend leave would be called worse than the board without them.
job::Diagnostics weaker(const job::Board& board, const std::vector<Place>& joints, const job::Job& job) {
    job::Diagnostics all;
    for (std::size_t i = 0; i < joints.size(); ++i)
        if (joints[i].gone() > 0)
            job::append(all, wrong(board.joints[i].at, no_joint(joints[i].at, Bar::strain, job),
                                   say("weaker_do",
                                       "expected a joint in a straight end, or leave out joints to have them placed")));
    return all;
}

/// Which kerf of which blank is meant nobody can tell.
job::Diagnostics deep_spliced(const job::Board& board) {
    return wrong(board.too_deep.front().n.at,
                 say("deep_spliced",
                     "the board is spliced, and the kerfs of each of its blanks "
                     "are counted from 1"),
                 say("deep_spliced_do", "leave out too_deep, and judge that blank by a job of its own"));
}

/// As `splice`; where no joint can be where one must, without a word.
tl::expected<Spliced, job::Diagnostics> spliced(const Request& wanted, Laid laid, const Wood& wood,
                                                const job::Job& job) {
    if (wanted.splay) {
        auto parts = divided(wanted, std::move(laid), wood.material.may_split, job);
        if (parts && !parts->joints.empty() && !wanted.wanted->too_deep.empty())
            return tl::unexpected(deep_spliced(*wanted.wanted));
        return parts;
    }
    const Splicing splicing(wanted, laid, job);
    // A board of which a kerf is too deep is cut already: it is as it is.
    const bool can_be =
        wanted.kind == Kind::wall_board && (wanted.wanted->too_deep.empty() || !wanted.wanted->joints.empty());
    if (!can_be || !splicing.needed()) {
        Blank whole = laid.blank;
        return Spliced{std::move(laid), {}, {std::move(whole)}};
    }
    const job::Board& board = *wanted.wanted;
    if (!board.too_deep.empty()) return tl::unexpected(deep_spliced(board));
    const auto kerfs_go = [](const std::vector<Place>& all) {
        return std::any_of(all.begin(), all.end(), [](const Place& joint) { return joint.gone() > 0; });
    };
    std::vector<Place> places = splicing.places();
    std::vector<Place> joints;
    if (board.joints.empty()) {
        joints = chosen_joints(splicing, places);
        if (joints.empty()) return tl::unexpected(job::Diagnostics{});
    } else {
        auto found = wished(splicing, wanted, places, job);
        if (!found) return tl::unexpected(std::move(found.error()));
        joints = std::move(*found);
    }
    if (!kerfs_go(joints)) return with_joints(std::move(laid), joints, splicing);
    auto again = without_kerfs(wanted, laid, joints, wood, job);
    if (!again) return tl::unexpected(std::move(again.error()));
    // A place was judged by the strain beside it alone; the whole board also by what closes and what peels.
    if (again->bend.verdict <= laid.bend.verdict) return with_joints(std::move(*again), joints, splicing);
    if (!board.joints.empty()) return tl::unexpected(weaker(board, joints, job));
    places.erase(std::remove_if(places.begin(), places.end(), [](const Place& one) { return one.gone() > 0; }),
                 places.end());
    joints = chosen_joints(splicing, places);
    if (joints.empty()) return tl::unexpected(job::Diagnostics{});
    return with_joints(std::move(laid), joints, splicing);
}

/// No joint can be where one must: why, and what would do. Whatever is named was tried.
class NoPlace {
public:
    NoPlace(const Request& wanted, const Laid& laid, const Wood& wood, const job::Job& job)
        : wanted_(wanted), laid_(laid), wood_(wood), job_(job), splicing_(wanted, laid, job) {}

    job::Diagnostics tell() const {
        const LongestBlank& stock = splicing_.stock();
        return wrong(
            carried()           ? board().max_blank->at
            : stock.at.line > 0 ? stock.at
                                : board().at,
            say("no_place",
                "the board of {piece} is {length} long and must be spliced, for the longest blank that can be "
                "had is {most}, but no place is left for a joint",
                {{"piece", wanted_.id},
                 {"length", text(laid_.blank.length, job_)},
                 {"most", text(splicing_.most(), job_)}}),
            say("no_place_do", "would do: {ways}; or plies that are glued one on the other, their joints staggered",
                {{"ways", job::in_a_row("or_way", "{first}; {rest}", ways())}}));
    }

private:
    const job::Board& board() const { return *wanted_.wanted; }
    bool inches() const { return job_.header.units == measure::Unit::inch; }
    bool carried() const { return board().max_blank && board().max_blank->value <= splicing_.most(); }

    /// Whether a board that differs can be made, laid out as this one is.
    bool would_do(const job::Board& other) const {
        return spliced(wanted_.with(other), laid_, wood_, job_).has_value();
    }

    std::vector<job::Told> ways() const {
        std::vector<job::Told> ways = longer();
        if (job::Board free = board(); !free.no_splice.empty()) {
            free.no_splice.clear();
            if (would_do(free)) ways.push_back(say("less_no_splice", "less in no_splice"));
        }
        if (const auto scarf = shorter_scarf())
            ways.push_back(say("scarf_of", "a scarf of {scarf}", {{"scarf", text(*scarf, job_)}}));
        if (const auto spacing = larger_spacing())
            ways.push_back(say("kerfs_every", "kerfs every {spacing}", {{"spacing", text(*spacing, job_)}}));
        return ways;
    }

    /// One board, not spliced: longer stock, or what can be carried, or both.
    std::vector<job::Told> longer() const {
        job::Board other = board();
        other.max_blank.reset();
        const bool sold = !Splicing(wanted_.with(other), laid_, job_).needed();
        const Length whole = laid_.blank.length + end_trim(job_.stock, job_.header.units) * 2;
        std::vector<job::Told> ways;
        if (carried())
            ways.push_back(say("max_blank_of", "max_blank of {length}", {{"length", text(laid_.blank.length, job_)}}));
        if (sold) return ways;
        job::Told stock = say("stock_of", "stock of {length}", {{"length", sold_text(whole, job_)}});
        if (!carried()) return {std::move(stock)};
        return {
            say("and_stock", "{first} and {rest}", {{"first", std::move(ways.front())}, {"rest", std::move(stock)}})};
    }

    /// The longest in whole steps that leaves places, at least as long as the board is thick: a steeper one has less to
    /// hold by than a mitre. Judgement.
    std::optional<Length> shorter_scarf() const {
        const Length step = inches() ? 0.25_in : 5_mm;
        for (int n = static_cast<int>(std::ceil(splicing_.scarf() / step - 1e-6)) - 1; n > 0; --n) {
            job::Board other = board();
            other.scarf.value = step * n;
            if (other.scarf.value < board().thickness.value) break;
            if (would_do(other)) return other.scarf.value;
        }
        return std::nullopt;
    }

    /// The least that leaves places and does not break the board.
    std::optional<Length> larger_spacing() const {
        if (!board().kerfs.empty()) return std::nullopt;
        for (const double part : {0.5, 0.75, 1.0, 1.5, 2.0, 3.0}) {
            job::Board other = board();
            other.spacing = {};
            other.spacing.given = inches() ? Length::inches(part) : Length::mm(part * 25);
            if (*other.spacing.given <= laid_.cut.spacing + hair) continue;
            const Request wanted = wanted_.with(other);
            const auto settled = settle(wanted, wood_, job_);
            if (!settled || settled->laid.bend.verdict == bend::Verdict::break_likely) continue;
            if (spliced(wanted, settled->laid, wood_, job_)) return other.spacing.given;
        }
        return std::nullopt;
    }

    const Request& wanted_;
    const Laid& laid_;
    const Wood& wood_;
    const job::Job& job_;
    Splicing splicing_;
};

}  // namespace

tl::expected<Spliced, job::Diagnostics> splice(const Request& wanted, const Laid& laid, const Wood& wood,
                                               const job::Job& job) {
    auto found = spliced(wanted, laid, wood, job);
    if (!found && found.error().empty()) return tl::unexpected(NoPlace(wanted, laid, wood, job).tell());
    return found;
}

}  // namespace kerfpacket::plan
