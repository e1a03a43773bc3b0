#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "curve/shape.h"
#include "plan/casing.h"
#include "plan/cautions.h"
#include "plan/checks.h"
#include "plan/make_lines.h"
#include "plan/make_piece.h"
#include "plan/place_cautions.h"
#include "plan/places.h"

namespace kerfpacket::plan {
namespace {

/// The parallels of a splayed head must not fold anywhere between its edges.
LegCut leg_cut(const curve::Head& head, bool right, const job::Opening& opening) {
    LegCut cut;
    for (const Faces& there : faces_across(opening)) {
        const auto at = [&](Length left) {
            const curve::Extent run = head.outline.extents(left).value()[1];
            return right ? run.to : run.from;
        };
        cut.seen.push_back(at(there.finish));
        cut.kerf.push_back(at(there.wall));
    }
    return cut;
}

/// Of all places of a cut the one that lies furthest out.
Length furthest(const LegCut& cut, bool right) {
    Length most = cut.seen.front();
    for (const std::vector<Length>* face : {&cut.seen, &cut.kerf})
        for (const Length at : *face) most = right ? std::max(most, at) : std::min(most, at);
    return most;
}

/// How the board of run i ends at the corner before it or after it.
CurveEnd curve_end(const curve::Head& head, const FaceExtents& extents, std::size_t i, bool right,
                   const job::Opening& opening) {
    const auto& runs = head.outline.runs();
    const std::size_t corner = right ? i : i - 1;
    const bool at_leg = right ? i + 2 == runs.size() : i == 1;
    const bool square = !head.outline.has_corner(corner) || (at_leg && !opening.legs);
    CurveEnd end;
    const bool through = at_leg && opening.through_legs && !head.outline.has_corner(corner);
    end.meets = through || (at_leg && !opening.legs) ? BoardEnd::Meets::nothing
                : at_leg                             ? BoardEnd::Meets::leg
                                                     : BoardEnd::Meets::board;
    if (square) {
        end.wall = end.finish = right ? runs[i].length() : Length();
        return end;
    }
    if (opening.splay) {
        // Its mitre leans from place to place.
        end.leg_cut = leg_cut(head, right, opening);
        end.wall = end.finish = furthest(*end.leg_cut, right);
        return end;
    }
    end.mitre = Angle::radians(std::abs(head.outline.corner(corner).radians()) / 2);
    end.wall = right ? extents.wall[i].to : extents.wall[i].from;
    end.finish = right ? extents.finish[i].to : extents.finish[i].from;
    return end;
}

/// Length of leg that the board of run i takes along at an end.
Length tail(const curve::Head& head, std::size_t corner, const job::Opening& opening, std::size_t side) {
    const bool at_leg = corner == 0 || corner + 2 == head.outline.runs().size();
    if (!at_leg || !opening.through_legs || !opening.legs || head.outline.has_corner(corner)) return {};
    return (*opening.legs)[side].value;
}

std::vector<Request> requests(const curve::Head& head, const FaceExtents& extents, const job::Opening& opening) {
    const auto& runs = head.outline.runs();
    const int boards = static_cast<int>(runs.size()) - 2;
    std::vector<Request> all;
    for (std::size_t i = 1; i + 1 < runs.size(); ++i) {
        const int board = static_cast<int>(i);
        all.push_back(with_bend({
            .id = boards == 1 ? opening.id.value : opening.id.value + "/" + std::to_string(board),
            .kind = Kind::arch_liner,
            .board = board,
            .boards = boards,
            .quantity = opening.quantity,
            .wanted = &opening.liner,
            .curve = runs[i],
            .ends = {curve_end(head, extents, i, false, opening), curve_end(head, extents, i, true, opening)},
            .tails = {tail(head, i - 1, opening, 0), tail(head, i, opening, 1)},
            .measured_to = opening.measured_to,
            .shape = opening.shape.value,
            .span = head.span,
            .rise = head.rise,
            .tape = opening.ordinates ? opening.ordinates->tape : Length(),
            .splay = opened(opening),
        }));
    }
    return all;
}

/// Lines of the head with its casing, without the ticks of kerfs.
tl::expected<ArchLines, job::Diagnostics> lines_of(const curve::Head& head, const job::Opening& opening,
                                                   const job::Job& job) {
    ArchLines lines = arch_lines(head, opening);
    job::Diagnostics wrong;
    // Asked for all openings at once, half templates are made where they can be.
    if (opening.wish.half && !lines.symmetric && opening.wish.half_at.line > 0)
        wrong.push_back(
            {job::Severity::error, opening.wish.half_at,
             job::say("half_differs",
                      "half a template is flipped about the centre line, but the two sides "
                      "of this head differ"),
             job::say("half_differs_do", "leave out half: the whole template is printed, marked DO NOT FLIP")});
    if (opening.casing) job::append(wrong, add_casing(lines, head, opening, job));
    if (!wrong.empty()) return tl::unexpected(std::move(wrong));
    add_leg_lines(lines);
    return lines;
}

/// The boards bent, each with its form.
Pieces bent_boards(const std::vector<Request>& wanted, const curve::Head& head, const job::Opening& opening,
                   const job::Job& job) {
    std::vector<Piece> pieces;
    for (const Request& board : wanted) {
        auto piece = make_piece(board, job);
        if (!piece) {  // the boards of one head have the same mistakes
            job::Diagnostics wrong = slips(head.survey, opening.ordinates, job);
            job::append(wrong, piece.error());
            return tl::unexpected(std::move(wrong));
        }
        if (opening.form) {
            auto rib = checked_rib(*piece, board, *opening.form, job);
            if (!rib) return tl::unexpected(rib.error());
            piece->form = std::move(*rib);
        }
        pieces.push_back(std::move(*piece));
    }
    return pieces;
}

/// That an edge of a splayed jamb, so far out from the narrow one, cannot follow the head.
std::optional<job::Diagnostic> edge_folds(const curve::Head& head, const job::Opening& opening, Length out,
                                          const job::Told& edge, const job::Job& job) {
    const Faces there = faces_out(opening, out);
    for (const Length left : {there.wall, there.finish}) {
        const auto extents = head.outline.extents(left);
        if (extents) continue;
        const job::Position at = std::visit([](const auto& by) { return by.at; }, opening.splay->by);
        job::Diagnostic fold = folded(extents.error(), at, edge, job);
        fold.hint =
            extents.error().radius.mm() <= 0
                ? job::say("splay_used_up_do", "would do: less splay, or legs that go down that far below the springs")
                : job::say("splay_fold_do",
                           "it lies {distance} from the measured curve: less splay would do, or a head that bends less "
                           "sharply there",
                           {{"distance", job::shown(extents.error().distance, job.header.units)}});
        return fold;
    }
    return std::nullopt;
}

/// What no splayed jamb can be.
job::Diagnostics check_splay(const curve::Head& head, const job::Opening& opening, const job::Job& job) {
    if (!opening.splay) return {};
    if (head.outline.runs().size() > 3)
        return {{job::Severity::error, opening.shape.at,
                 job::say("splay_point", "opening {piece} has a head with a point, and splays",
                          {{"piece", opening.id.value}}),
                 job::say("splay_point_do",
                          "would do: a head without a point, which bends along one curve, or a jamb square to the "
                          "wall")}};
    if (auto fold = edge_folds(head, opening, {}, job::say("narrow_edge", "narrow edge of the splayed liner"), job))
        return {std::move(*fold)};
    if (auto fold = edge_folds(head, opening, sawn_width(opening),
                               job::say("wide_edge", "wide edge of the splayed liner"), job))
        return {std::move(*fold)};
    return {};
}

}  // namespace

Pieces pieces_of(const job::Opening& opening, const job::Job& job) {
    job::Diagnostics wrong = check_board(opening.liner, job);
    const auto head = curve::head(opening, job.header.units);
    if (!head) job::append(wrong, head.error());
    if (head) job::append(wrong, check_span(opening, head->span, job));
    if (head) job::append(wrong, check_splay(*head, opening, job));
    if (!wrong.empty()) return tl::unexpected(wrong);
    const auto both = face_extents(head->outline, narrow_faces(opening), opening.liner, Kind::arch_liner, job);
    if (!both) return tl::unexpected(both.error());
    auto lines = lines_of(*head, opening, job);
    if (!lines) job::append(wrong, lines.error());
    const std::vector<Request> wanted = requests(*head, *both, opening);
    auto pieces = bent_boards(wanted, *head, opening, job);
    if (!pieces) job::append(wrong, pieces.error());
    if (!wrong.empty()) return tl::unexpected(wrong);
    for (std::size_t i = 0; i < pieces->size(); ++i) add_kerf_ticks(*lines, (*pieces)[i], wanted[i]);
    for (Piece& piece : *pieces) {
        const bool first = &piece == &pieces->front();
        piece.lines = *lines;
        piece.casing = opening.casing;
        piece.template_wish = opening.wish;
        piece.template_wish.half = opening.wish.half && lines->symmetric;
        if (first) piece.leg_boards = leg_boards(*head, opening);
        if (first) piece.survey = head->survey;
        piece.cautions = all_cautions(piece, first ? head_cautions(*head, opening) : std::vector<Caution>{}, job);
    }
    return pieces;
}

}  // namespace kerfpacket::plan
