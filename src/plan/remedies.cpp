#include "plan/remedies.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "plan/laminate.h"
#include "plan/proven_radius.h"
#include "plan/settle.h"
#include "plan/strip_room.h"

namespace kerfpacket::plan {
namespace {

using job::say;
using job::Told;

/// Boards as they are sold. Common practice, no source.
constexpr std::array inch_boards{0.75, 0.625, 0.5, 0.375, 0.25};
constexpr std::array metric_boards{18.0, 16.0, 15.0, 12.0, 9.0, 6.0};

std::vector<Length> boards(measure::Unit unit) {
    std::vector<Length> all;
    if (unit == measure::Unit::inch)
        for (const double thickness : inch_boards) all.push_back(Length::inches(thickness));
    else
        for (const double thickness : metric_boards) all.push_back(Length::mm(thickness));
    return all;
}

class Refusal {
public:
    Refusal(const Request& wanted, const Wood& wood, const job::Job& job)
        : wanted_(wanted),
          board_(*wanted.wanted),
          bent_(bent_of(wanted, wood, job)),
          depth_(given_depth(board_)),
          job_(job) {}

    job::Diagnostics tell() const { return {{job::Severity::error, place(), message(), hint()}}; }

private:
    measure::Unit unit() const { return job_.header.units; }
    Told text(Length length) const { return job::shown(length, unit()); }
    Told rounded(Length length) const {
        const Length step = depth_step(unit());
        return text(step * std::round(length / step));
    }
    Length closest() const { return closest_spacing(bent_.kerf); }
    Length spacing() const { return board_.spacing.given.value_or(closest()); }
    static Told two_places(double value) { return job::figure(measure::fixed(value, 2)); }
    /// What is only near enough says so.
    static Told careful(Told way, bend::Verdict verdict, double utilisation) {
        if (verdict == bend::Verdict::ok) return way;
        return say("careful", "{way} (near the limit: {u} of break strain)",
                   {{"way", std::move(way)}, {"u", two_places(utilisation)}});
    }

    /// What is given where it stands, else the board.
    job::Position place() const {
        if (depth_ && board_.kerf_depth.at.line > 0) return board_.kerf_depth.at;
        if (board_.moulded() && !deepest()) return board_.thinnest_at();
        if (board_.spacing.given) return board_.spacing.at;
        return board_.thickness.at;
    }

    /// The deepest cut that may be looked at, or the one that is given.
    std::optional<Length> deepest() const {
        if (depth_) return depth_;
        const std::vector<Length> all = depths(bent_, bend::least_web, unit());
        return all.empty() ? std::nullopt : std::optional(all.back());
    }

    Told message() const {
        const std::optional<Length> depth = deepest();
        if (!depth) return no_depth();
        const bend::Cell cell = bent_.cell(*depth, spacing());
        const bend::Assessment a = bent_.assess(cell);
        const TightSpot& spot = bent_.worst(cell);
        const Told cut = kerfs(*depth, cell.spacing);
        const Told where =
            say("where", "the bend's tightest radius, {radius} on the seen face",
                {{"radius", rounded(in_plane(wanted_, spot.plain_radius(bent_.measured_to, bent_.thickness)))}});
        if (a.closes)
            return say("closes", "piece {piece}: {cut} close before {where} is reached",
                       {{"piece", wanted_.id}, {"cut", cut}, {"where", where}});
        if (a.utilisation > bend::caution_up_to)
            return say("likely_break",
                       "piece {piece} will likely break: {cut} are strained to {u} of break strain at {where}",
                       {{"piece", wanted_.id}, {"cut", cut}, {"u", two_places(a.utilisation)}, {"where", where}});
        if (bent_.wood.known.counted() > 0)
            return say("by_coupons",
                       "piece {piece} will likely break: by the coupons and trials that count, more than 1 in 10 "
                       "boards like this would",
                       {{"piece", wanted_.id}});
        return say("as_given",
                   "piece {piece} will likely break: between kerfs as given the bend is more than the board takes",
                   {{"piece", wanted_.id}});
    }

    /// Kerfs as they are given, or as they are tried one like the other.
    Told kerfs(Length depth, Length spacing) const {
        if (!board_.kerfs.empty())
            return depth_ ? say("deep", "kerfs {depth} deep", {{"depth", text(depth)}})
                          : say("even", "even kerfs {depth} deep", {{"depth", text(depth)}});
        return depth_ ? say("every", "kerfs {depth} deep every {spacing}",
                            {{"depth", text(depth)}, {"spacing", text(spacing)}})
                      : say("even_every", "even kerfs {depth} deep every {spacing}",
                            {{"depth", text(depth)}, {"spacing", text(spacing)}});
    }

    /// The depth that the thinnest place of a moulded board leaves is not looked for: it is shallow for the thickest.
    Told no_depth() const {
        if (!board_.moulded())
            return say("no_depth", "a board {thickness} thick leaves no depth to cut: the web must be at least {web}",
                       {{"thickness", text(bent_.thinnest())}, {"web", text(bend::least_web)}});
        return say("no_depth_moulded",
                   "a board {thickness} thick at its thinnest leaves no depth to cut: the web must be at least {web}, "
                   "and at least {part} of the {whole} where it is thickest is to be cut",
                   {{"thickness", text(bent_.thinnest())},
                    {"web", text(bend::least_web)},
                    {"part", job::figure(measure::fixed(least_depth_ratio, 1))},
                    {"whole", text(bent_.thickness)}});
    }

    /// Of a moulded board: the deepest cut that its thinnest place leaves, which is not looked for where it is shallow
    /// for the thickest.
    Told shallow_depth() const {
        if (!board_.moulded() || depth_) return {};
        const Length step = depth_step(unit()) / 2;
        const Length most = step * std::floor((bent_.thinnest() - bend::least_web) / step + 1e-6);
        if (most < step) return {};
        job::Board board = all_left_to_solve(board_);
        board.kerf_depth.given = most;
        const Request wanted = wanted_.with(board);
        const auto found = run(wanted, bent_.wood);
        if (!found) return {};
        return careful(
            say("kerf_depth", R"(kerf_depth = "{depth}", down to {spacing} apart)",
                {{"depth", std::string(std::string_view(text(most)))}, {"spacing", text(found->least_spacing)}}),
            found->verdict, found->utilisation);
    }

    Told hint() const {
        std::vector<Told> ways;
        const auto add = [&](Told way) {
            if (!way.empty()) ways.push_back(std::move(way));
        };
        add(free_settings());
        if (ways.empty()) {
            add(shallow_depth());
            add(larger_radius());
            // A moulded board is the one that is wanted, and plies of it are none.
            if (!board_.moulded()) {
                add(thinner_board());
                add(laminated());
            }
            add(other_material());
        }
        if (ways.empty()) return say("nothing", "nothing that this program knows of takes this bend");
        return say("ways", "what would do by calculation, coupon first: {ways}",
                   {{"ways", with_its_strip(job::in_a_row("or_way", "{first}; {rest}", std::move(ways)))}});
    }

    /// A deeper cut may leave an edge strip's numerals no room: then the way alone would only be refused again.
    Told with_its_strip(Told ways) const {
        if (board_.strip.value != job::StripOn::edge) return ways;
        return say("and_face", R"({ways}; and strip = "face" where the web is under {web})",
                   {{"ways", std::move(ways)}, {"web", text(least_edge_web)}});
    }

    Told apart(const Choice& choice) const {
        return careful(say("apart", "kerfs {depth} deep, down to {spacing} apart",
                           {{"depth", text(choice.depth)}, {"spacing", text(choice.least_spacing)}}),
                       choice.verdict, choice.utilisation);
    }
    /// None where it will likely break after all.
    std::optional<Choice> run(const Request& wanted, const Wood& wood) const {
        auto found = attempt(wanted, wood, job_);
        if (found && found->verdict == bend::Verdict::break_likely) return std::nullopt;
        return found;
    }

    /// What the job gives may be all that stands in the way.
    Told free_settings() const {
        if (!depth_ && !board_.spacing.given && board_.kerfs.empty()) return {};
        const job::Board free = all_left_to_solve(board_);
        const Request wanted = wanted_.with(free);
        const auto found = run(wanted, bent_.wood);
        return found ? say("free", R"(depth and spacing left to "solve": {apart})", {{"apart", apart(*found)}})
                     : Told();
    }

    std::optional<Length> proven(bend::Verdict no_worse) const {
        return proven_radius(wanted_, all_left_to_solve(board_), bent_, job_, no_worse,
                             [&](const Settled& found) { return found.laid.bend.verdict <= no_worse; });
    }

    Told larger_radius() const {
        const auto ok = proven(bend::Verdict::ok);
        const auto careful = proven(bend::Verdict::caution);
        if (!ok && !careful) return {};
        return left_to_solve(least_radius_told(ok, careful));
    }

    /// A way that was tried without the depth and the spacing that the job gives.
    Told left_to_solve(Told way) const {
        const bool given = depth_ || board_.spacing.given || !board_.kerfs.empty();
        if (!given) return way;
        return say("with_free", R"({way}, with the depth and spacing left to "solve")", {{"way", std::move(way)}});
    }

    Told least_radius_told(std::optional<Length> ok, std::optional<Length> careful) const {
        if (!ok)
            return say("radius_careful", "a radius of at least {careful} on the seen face (near the limit)",
                       {{"careful", text(in_plane(wanted_, *careful))}});
        if (!careful || *careful >= *ok)
            return say("radius", "a radius of at least {ok} on the seen face", {{"ok", text(in_plane(wanted_, *ok))}});
        return say("radius_two", "a radius of at least {ok} on the seen face, or {careful} (near the limit)",
                   {{"ok", text(in_plane(wanted_, *ok))}, {"careful", text(in_plane(wanted_, *careful))}});
    }

    Told thinner_board() const {
        for (const Length thickness : boards(unit())) {
            if (thickness > bent_.thickness - Length::mm(1)) continue;
            Bent thinner = bent_;
            thinner.thickness = thickness;
            thinner.plies.clear();
            if (!has_room(thinner)) continue;
            job::Board board = all_left_to_solve(board_);
            board.thickness.value = thickness;
            board.plies.clear();
            const Request wanted = wanted_.with(board);
            if (const auto found = run(wanted, bent_.wood))
                return say("thinner", "a board {thickness} thick, {apart}",
                           {{"thickness", text(thickness)}, {"apart", apart(*found)}});
        }
        return {};
    }

    /// The seen ply and the one at the wall, as boards of their own.
    bool plies_hold(const Plies& plies) const {
        job::Board board = all_left_to_solve(board_);
        board.thickness.value = plies.thickness;
        board.plies.clear();
        const Faces whole = faces(bent_.measured_to, bent_.thickness);
        const Faces ply = faces(bent_.measured_to, plies.thickness);
        const auto holds = [&](Length shift) {
            const auto found = attempt(along(wanted_, board, wanted_.bend->curve.parallel(shift)), bent_.wood, job_);
            return found && found->verdict <= plies.cut->verdict;
        };
        return holds(whole.finish - ply.finish) && holds(whole.wall - ply.wall);
    }

    Told laminated() const {
        if (wanted_.splay) return {};  // its plies would be rings of as many sizes
        const auto found = plies(wanted_, bent_, unit());
        if (!found || (found->cut && !plies_hold(*found))) return {};
        std::vector<Told> blanks;
        for (const Length blank : found->blanks) blanks.push_back(rounded(blank));
        Told cut = found->cut ? careful(say("kerfed", "kerfed {depth} deep every {spacing}",
                                            {{"depth", text(found->cut->depth)}, {"spacing", text(closest())}}),
                                        found->cut->verdict, found->cut->utilisation)
                              : careful(say("no_kerfs", "bent without kerfs"), bend::strain_verdict(found->utilisation),
                                        found->utilisation);
        return say(
            "laminated",
            "{n} plies {thickness} thick, {cut} and glued one on the other, blanks from the seen ply to the back one "
            "{blanks} long",
            {{"n", found->count},
             {"thickness", text(found->thickness)},
             {"cut", std::move(cut)},
             {"blanks", job::in_a_row("and_also", "{first}, {rest}", std::move(blanks))}});
    }

    Told other_material() const {
        job::Board free = all_left_to_solve(board_);
        free.plies.clear();
        const Request wanted = wanted_.with(free);
        std::vector<Told> names;
        for (const bend::Material& material : bend::materials()) {
            if (material.name == bent_.wood.material.name) continue;
            if (const auto found = run(wanted, untried(bend::bent_across(material, wanted.across_grain()))))
                names.push_back(careful(job::word("materials." + material.name, material.name), found->verdict,
                                        found->utilisation));
        }
        if (names.empty()) return {};
        return left_to_solve(say("other_material", "another material: {names}",
                                 {{"names", job::in_a_row("and_also", "{first}, {rest}", std::move(names))}}));
    }

    const Request& wanted_;
    const job::Board& board_;
    Bent bent_;
    std::optional<Length> depth_;
    const job::Job& job_;
};

}  // namespace

job::Diagnostics nothing_works(const Request& wanted, const Wood& wood, const job::Job& job) {
    return Refusal(wanted, wood, job).tell();
}

}  // namespace kerfpacket::plan
