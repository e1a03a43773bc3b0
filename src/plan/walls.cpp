#include <iterator>

#include "curve/shape.h"
#include "plan/cautions.h"
#include "plan/checks.h"
#include "plan/make_lines.h"
#include "plan/make_piece.h"
#include "plan/places.h"

namespace kerfpacket::plan {
namespace {

Request request(const job::Wall& wall, const curve::Course& course) {
    const Length end = course.curve.length();
    return with_bend({
        .id = wall.id.value,
        .kind = Kind::wall_board,
        .quantity = wall.quantity,
        .wanted = &wall.board,
        .curve = course.curve,
        .ends = {CurveEnd{}, CurveEnd{BoardEnd::Meets::nothing, {}, end, end}},
        .tails = {wall.tails[0].value, wall.tails[1].value},
        .measured_to = wall.measured_to,
        .side = wall.side.value,
        .span = course.chord,
        .rise = course.rise,
        .climbs = wall.rake ? &*wall.rake : nullptr,
        .tape = wall.ordinates ? wall.ordinates->tape : Length(),
    });
}

}  // namespace

Pieces pieces_of(const job::Wall& wall, const job::Job& job) {
    job::Diagnostics wrong = check_board(wall.board, job);
    const auto course = curve::course(wall, job.header.units);
    if (!course) job::append(wrong, course.error());
    if (!wrong.empty()) return tl::unexpected(wrong);
    const auto both = face_extents(curve::Outline({course->curve}), faces(wall.measured_to, wall.board.thickness.value),
                                   wall.board, Kind::wall_board, job);
    if (!both) return tl::unexpected(both.error());
    const Request wanted = request(wall, *course);
    auto piece = make_piece(wanted, job);
    if (!piece) {
        job::append(wrong, slips(course->survey, wall.ordinates, job));
        job::append(wrong, piece.error());
        return tl::unexpected(wrong);
    }
    piece->lines = wall_lines(wanted);
    piece->survey = course->survey;
    if (wall.form) {
        auto rib = checked_rib(*piece, wanted, *wall.form, job);
        if (!rib) return tl::unexpected(rib.error());
        piece->form = std::move(*rib);
    }
    piece->cautions = all_cautions(*piece, {}, job);
    return std::vector<Piece>{std::move(*piece)};
}

}  // namespace kerfpacket::plan
