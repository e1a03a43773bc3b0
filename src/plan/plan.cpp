#include "plan/plan.h"

#include <algorithm>

#include "plan/cautions.h"
#include "plan/lines.h"
#include "plan/piece.h"

namespace kerfpacket::plan {
namespace {

using Result = tl::expected<Piece, job::Diagnostics>;

Result piece_of(const job::Opening& opening, const job::Job& job) {
    const Request wanted = request(opening);
    return make_piece(wanted, job).map([&](Piece piece) {
        piece.shape = opening.shape.value;
        piece.casing = opening.casing;
        piece.lines = arch_lines(piece, wanted.measured, opening);
        piece.cautions = find_cautions(piece, opening.liner, job);
        return piece;
    });
}

Result piece_of(const job::Wall& wall, const job::Job& job) {
    const Request wanted = request(wall);
    return make_piece(wanted, job).map([&](Piece piece) {
        piece.lines = wall_lines(piece, wanted.measured, wanted.tails);
        piece.cautions = find_cautions(piece, wall.board, job);
        return piece;
    });
}

}  // namespace

bool Plan::cautions() const {
    return std::any_of(pieces.begin(), pieces.end(), [](const Piece& piece) {
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

tl::expected<Plan, job::Diagnostics> make_plan(const job::Job& job) {
    Plan plan{job.header, job.saw, job.printer, job.fingerprint, {}};
    job::Diagnostics wrong;
    const auto take = [&](Result piece) {
        if (piece) plan.pieces.push_back(std::move(*piece));
        else wrong.insert(wrong.end(), piece.error().begin(), piece.error().end());
    };
    for (const job::Opening& opening : job.openings) take(piece_of(opening, job));
    for (const job::Wall& wall : job.walls) take(piece_of(wall, job));
    if (!wrong.empty()) return tl::unexpected(std::move(wrong));
    return plan;
}

}  // namespace kerfpacket::plan
