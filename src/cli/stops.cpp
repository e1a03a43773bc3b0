#include "cli/stops.h"

#include <algorithm>

#include <fmt/format.h>

#include "cli/pieces_to_cut.h"
#include "cli/report.h"
#include "cli/street.h"
#include "measure/fraction.h"
#include "measure/require.h"

namespace kerfpacket::cli {
namespace {

using measure::Length;
using measure::Unit;

BladeSide side_of(const std::string& word) {
    const auto& words = blade_sides();
    const auto found = std::find(words.begin(), words.end(), word);
    measure::require(found != words.end(), "a side of the blade without a name");
    return static_cast<BladeSide>(found - words.begin());
}

Length stop_at(const plan::Kerf& kerf, Length width, BladeSide side) {
    switch (side) {
        case BladeSide::as_ticks: return kerf.mark;
        case BladeSide::middle: return kerf.at;
        case BladeSide::near: return kerf.at - width / 2;
        case BladeSide::far: return kerf.at + width / 2;
    }
    throw measure::Bug("a side of the blade without a place");
}

/// Finer than any stop is set: thousandths of an inch, hundredths of a millimetre.
std::string figure(Length length, Unit unit) {
    return unit == Unit::inch ? measure::fixed(length.inches(), 3) : measure::fixed(length.mm(), 2);
}

/// Degrees from square, of the handle to the right positive.
double handle_angle(const plan::Piece& piece) {
    if (!piece.rake) return 0;
    return piece.rake->kerf().degrees() * (piece.rake->to_the_right ? 1 : -1);
}

std::string rows(const plan::Piece& piece, BladeSide side, Unit unit) {
    std::string rows;
    for (std::size_t i = 0; i < piece.blanks.size(); ++i) {
        const plan::Blank& blank = piece.blanks.at(i);
        for (const plan::Kerf& kerf : blank.kerfs)
            rows +=
                fmt::format("{},{},{},{},{},{},{},{}\n", piece.id, piece.quantity, i + 1, figure(blank.length, unit),
                            kerf.n, figure(stop_at(kerf, piece.on_edge(piece.cut.kerf), side), unit),
                            figure(piece.cut.depth, unit), measure::fixed(handle_angle(piece), 2));
    }
    return rows;
}

/// Those that a stop along the fence can place; the others are told.
std::vector<const plan::Piece*> straight_ones(std::vector<const plan::Piece*> pieces, Console& console) {
    std::erase_if(pieces, [&](const plan::Piece* piece) {
        if (!piece->splay) return false;
        console.message(
            fmt::format("kerfpacket: piece {}: no stop on the fence holds the kerfs of a splayed blank, which has no "
                        "straight edge: they stand on its full-size template, and in \"kerfpacket outlines\"\n",
                        piece->id));
        return true;
    });
    return pieces;
}

}  // namespace

const std::vector<std::string>& blade_sides() {
    static const std::vector<std::string> words{"as-ticks", "middle", "near", "far"};
    return words;
}

Status stops(const StopsChoice& choice, Console& console) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    const Unit unit = job->plan.header.units;
    const std::string in = unit == Unit::inch ? "in" : "mm";
    std::string table = fmt::format("piece,boards,blank,length_{0},cut,from_zero_{0},depth_{0},angle_deg\n", in);
    const auto pieces = straight_ones(pieces_to_cut(job->plan, choice.piece, console), console);
    if (pieces.empty()) return Status::errors;
    for (const plan::Piece* piece : pieces) table += rows(*piece, side_of(choice.blade), unit);
    console.result(table);
    console.message(verdict_line(job->plan));
    return job->status;
}

}  // namespace kerfpacket::cli
