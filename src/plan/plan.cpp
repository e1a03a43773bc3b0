#include "plan/plan.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "job/read.h"
#include "job/shapes.h"
#include "plan/casing.h"
#include "plan/cautions.h"
#include "plan/checks.h"
#include "plan/lines.h"
#include "plan/make_piece.h"
#include "plan/wood.h"

namespace kerfpacket::plan {
namespace {

using Result = tl::expected<std::vector<Piece>, job::Diagnostics>;

void append(job::Diagnostics& all, const job::Diagnostics& more) { all.insert(all.end(), more.begin(), more.end()); }

/// Both faces of a board along every run of what was measured.
struct FaceExtents {
    std::vector<curve::Extent> wall;
    std::vector<curve::Extent> finish;
};

/// Or which face of the board folds; `what` is "liner" or "board".
tl::expected<FaceExtents, job::Diagnostics> face_extents(const curve::Outline& outline, const job::Board& board,
                                                         job::Surface measured_to, const std::string& what,
                                                         const job::Job& job) {
    const auto& thickness = board.thickness;
    const Faces face = faces(measured_to, thickness.value);
    const auto wall = outline.extents(face.wall);
    if (!wall) return tl::unexpected(job::Diagnostics{folded(wall.error(), thickness.at, "back of the " + what, job)});
    const auto finish = outline.extents(face.finish);
    if (!finish)
        return tl::unexpected(job::Diagnostics{folded(finish.error(), thickness.at, "face of the " + what, job)});
    return FaceExtents{*wall, *finish};
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
        const std::string id = boards == 1 ? opening.id.value : opening.id.value + "/" + std::to_string(board);
        all.push_back({id,
                       Kind::arch_liner,
                       board,
                       boards,
                       opening.quantity,
                       &opening.liner,
                       runs[i],
                       {curve_end(head, extents, i, false, opening), curve_end(head, extents, i, true, opening)},
                       {tail(head, i - 1, opening, 0), tail(head, i, opening, 1)},
                       opening.measured_to,
                       job::Side::concave,
                       opening.shape.value,
                       head.span,
                       head.rise});
    }
    return all;
}

Result pieces_of(const job::Opening& opening, const job::Job& job) {
    job::Diagnostics wrong = check_board(opening.liner, job);
    const auto head = curve::head(opening, job.header.units);
    if (!head) append(wrong, head.error());
    if (head) append(wrong, check_span(opening, head->span, job));
    if (!wrong.empty()) return tl::unexpected(wrong);
    const auto both = face_extents(head->outline, opening.liner, opening.measured_to, "liner", job);
    if (!both) return tl::unexpected(both.error());
    ArchLines lines = arch_lines(*head, opening);
    // Asked for all openings at once, half templates are made where they can be.
    if (opening.wish.half && !lines.symmetric && opening.wish.half_at.line > 0)
        wrong.push_back({job::Severity::error, opening.wish.half_at,
                         "half a template is flipped about the centre line, but the two sides of this head differ",
                         "leave out half: the whole template is printed, marked DO NOT FLIP"});
    if (opening.casing) append(wrong, add_casing(lines, *head, opening, job));
    add_leg_lines(lines);
    const std::vector<Request> wanted = requests(*head, *both, opening);
    std::vector<Piece> pieces;
    for (const Request& board : wanted) {
        auto piece = make_piece(board, job);
        if (!piece) {
            append(wrong, slips(head->survey, opening.ordinates, job));
            append(wrong, piece.error());
            break;  // the boards of one head have the same mistakes
        }
        if (opening.form) {
            piece->form = form_rib(*piece, board, *opening.form, job.header.units);
            if (wrong.empty()) append(wrong, check_freed(*piece, *opening.form));
            if (wrong.empty()) append(wrong, check_stations(*piece->form, *opening.form, job));
        }
        add_kerf_ticks(lines, *piece, board);
        pieces.push_back(std::move(*piece));
    }
    if (!wrong.empty()) return tl::unexpected(wrong);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        Piece& piece = pieces[i];
        piece.lines = lines;
        piece.casing = opening.casing;
        piece.template_wish = opening.wish;
        piece.template_wish.half = opening.wish.half && lines.symmetric;
        if (i == 0) piece.leg_boards = leg_boards(*head, opening);
        if (i == 0) piece.survey = head->survey;
        piece.cautions = find_cautions(piece, job);
        if (i == 0) add_head_cautions(piece, *head, opening);
    }
    return pieces;
}

Result pieces_of(const job::Wall& wall, const job::Job& job) {
    job::Diagnostics wrong = check_board(wall.board, job);
    const auto course = curve::course(wall, job.header.units);
    if (!course) append(wrong, course.error());
    if (!wrong.empty()) return tl::unexpected(wrong);
    const auto both = face_extents(curve::Outline({course->curve}), wall.board, wall.measured_to, "board", job);
    if (!both) return tl::unexpected(both.error());
    const Length end = course->curve.length();
    const Request wanted{wall.id.value,
                         Kind::wall_board,
                         1,
                         1,
                         wall.quantity,
                         &wall.board,
                         course->curve,
                         {CurveEnd{}, CurveEnd{BoardEnd::Meets::nothing, {}, end, end}},
                         {wall.tails[0].value, wall.tails[1].value},
                         wall.measured_to,
                         wall.side.value,
                         job::Shape::segmental,
                         course->chord,
                         course->rise};
    auto piece = make_piece(wanted, job);
    if (!piece) {
        append(wrong, slips(course->survey, wall.ordinates, job));
        append(wrong, piece.error());
        return tl::unexpected(wrong);
    }
    piece->lines = wall_lines(wanted);
    if (wall.form) {
        piece->form = form_rib(*piece, wanted, *wall.form, job.header.units);
        append(wrong, check_freed(*piece, *wall.form));
        if (wrong.empty()) append(wrong, check_stations(*piece->form, *wall.form, job));
        if (!wrong.empty()) return tl::unexpected(wrong);
    }
    piece->survey = course->survey;
    piece->cautions = find_cautions(*piece, job);
    add_survey_cautions(*piece);
    return std::vector<Piece>{std::move(*piece)};
}

/// How far apart two curves through measured points lie at most, at those points.
Length apart(const curve::Survey& survey, const curve::Survey& other) {
    const std::vector<Length>& a = survey.used_misses().at;
    const std::vector<Length>& b = other.used_misses().at;
    Length most;
    for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i) most = std::max(most, measure::abs(a[i] - b[i]));
    return most;
}

/// The same place with its points joined by the curve that is recommended: what its boards come to.
template <class Place, class BoardOf>
void judge_recommended(std::vector<Piece>& pieces, Place place, BoardOf board_of, const job::Job& job) {
    const std::optional<curve::Survey>& survey = pieces.front().survey;
    if (!survey || survey->used == survey->recommended) return;
    place.ordinates->fit = job::Sourced<job::Fit>{survey->recommended, {}};
    // Kerfs that were cut too deep or placed by hand belong to the curve that is drawn.
    board_of(place).too_deep.clear();
    const Result others = pieces_of(place, job);
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        OtherFit fit{survey->recommended, bend::Verdict::break_likely, 0, {}};
        if (others && i < others->size()) {
            fit.verdict = (*others)[i].bend.verdict;
            fit.utilisation = (*others)[i].bend.utilisation;
            if (others->front().survey) fit.gap = apart(*survey, *others->front().survey);
        }
        pieces[i].other_fit = fit;
        if (fit.verdict > pieces[i].bend.verdict)
            pieces[i].cautions.push_back(
                {fit.utilisation > 0 ? "recommended_fit_is_worse" : "recommended_fit_is_refused",
                 {{"fit", std::string(job::word(fit.fit))}, {"u", fit.utilisation}}});
    }
}

}  // namespace

bool Plan::cautions() const {
    return !refused.empty() || std::any_of(pieces.begin(), pieces.end(), [](const Piece& piece) {
        return !piece.cautions.empty() || piece.bend.verdict != bend::Verdict::ok;
    });
}

int Plan::blanks() const {
    int total = 0;
    for (const Piece& piece : pieces) total += piece.quantity;
    return total;
}

int Plan::cuts() const {
    int total = 0;
    for (const Piece& piece : pieces) total += piece.quantity * static_cast<int>(piece.kerfs.size());
    return total;
}

namespace {

/// The board and the kind of what is lined or covered.
const job::Board& board_of(const job::Opening& opening) { return opening.liner; }
const job::Board& board_of(const job::Wall& wall) { return wall.board; }
Kind kind_of(const job::Opening& /*opening*/) { return Kind::arch_liner; }
Kind kind_of(const job::Wall& /*wall*/) { return Kind::wall_board; }

job::Diagnostics unknown_materials_of(const job::Job& job) {
    std::vector<job::Sourced<std::string>> used;
    for (const job::Opening& opening : job.openings) used.push_back(opening.liner.material);
    for (const job::Wall& wall : job.walls) used.push_back(wall.board.material);
    std::vector<std::string> names;
    for (const job::Material& material : job.materials) names.push_back(material.name.value);
    return unknown_materials(used, names);
}

/// Each kerf takes its marks, its line and its tick: a house has a tenth of these.
constexpr std::size_t most_kerfs_in_all = 30'000;

job::Diagnostics too_many_kerfs(const Plan& plan, const job::Job& job) {
    std::size_t kerfs = 0;
    for (const Piece& piece : plan.pieces) {
        kerfs += piece.kerfs.size();
        if (kerfs <= most_kerfs_in_all) continue;
        job::Position at;
        for (const job::Opening& opening : job.openings)
            if (piece.id == opening.id.value || piece.id.starts_with(opening.id.value + "/")) at = opening.at;
        for (const job::Wall& wall : job.walls)
            if (piece.id == wall.id.value) at = wall.at;
        return {{job::Severity::error, at,
                 "up to this piece the job has more than " + std::to_string(most_kerfs_in_all) + " kerfs",
                 "split the house into several jobs"}};
    }
    return {};
}

/// What the job file says of the refused ones.
void add_what_was_asked(std::vector<Refused>& refused, const job::Job& job) {
    const std::vector<job::Value> values = job::canonical(job).values;
    for (Refused& one : refused)
        std::copy_if(values.begin(), values.end(), std::back_inserter(one.asked),
                     [&](const job::Value& value) { return value.piece == one.id && value.table != "material"; });
}

}  // namespace

tl::expected<Plan, job::Diagnostics> make_plan(const job::Job& job) {
    Plan plan{job.header, job.saw, job.printer, job.fingerprint, {}, {}};
    job::Diagnostics wrong = unknown_materials_of(job);
    const auto take = [&](const auto& one, auto board_to_change) {
        if (!material_of(board_of(one), job)) {  // told already, but not what else is wrong with that board
            append(wrong, check_board(board_of(one), job));
            return;
        }
        Result pieces = pieces_of(one, job);
        if (pieces) judge_recommended(*pieces, one, board_to_change, job);
        if (pieces) std::move(pieces->begin(), pieces->end(), std::back_inserter(plan.pieces));
        else plan.refused.push_back({one.id.value, kind_of(one), {}, std::move(pieces.error())});
    };
    for (const job::Opening& opening : job.openings)
        take(opening, [](job::Opening& copy) -> job::Board& { return copy.liner; });
    for (const job::Wall& wall : job.walls) take(wall, [](job::Wall& copy) -> job::Board& { return copy.board; });
    if (!wrong.empty() || (plan.pieces.empty() && !plan.refused.empty())) {
        for (const Refused& one : plan.refused) append(wrong, one.reasons);
        return tl::unexpected(std::move(wrong));
    }
    if (auto many = too_many_kerfs(plan, job); !many.empty()) return tl::unexpected(std::move(many));
    for (Refused& one : plan.refused)
        for (job::Diagnostic& reason : one.reasons) reason.severity = job::Severity::refused;
    if (!plan.refused.empty()) add_what_was_asked(plan.refused, job);
    return plan;
}

}  // namespace kerfpacket::plan
