#include "sheets/strips/checklist_row.h"

#include <algorithm>
#include <cmath>

#include "sheets/words/numeral.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

constexpr Length residue_gap = 2_pt;
constexpr Length edge_gap = 4_pt;
/// Between figures that are not told by a column's line.
constexpr Length least_gap = 5_pt;

/// The widest figures of each column.
struct Widest {
    Length numeral, mark, residue, other;

    Length all() const { return numeral + mark + residue_gap + residue + other; }
};

Widest widest_of(const plan::Piece& piece, const Tape& tape, const Kit& kit) {
    const fonts::Style& style = kit.style;
    Widest widest{};
    const auto take = [&](Length& width, page::Face face, const std::string& text, Length size) {
        width = std::max(width, kit.faces.width(face, text, size));
    };
    for (const plan::Kerf& kerf : piece.blank().kerfs) {
        take(widest.numeral, numeral_face_of(kerf.n), std::to_string(kerf.n), style.strong);
        take(widest.mark, page::Face::condensed, tape.plain(kerf.mark), style.text);
        take(widest.residue, page::Face::condensed, residue_text(kerf.mark - tape.rounded(kerf.mark), tape),
             style.tiny);
        take(widest.other, page::Face::condensed, tape.other(kerf.mark), style.small);
    }
    return widest;
}

/// The figures of one board stand where they always do, but for those of a very long one: its last are the longest.
bool has_usual_room(const plan::Piece& piece, const RowPlaces& places, const Tape& tape, const Kit& kit) {
    const Length other =
        kit.faces.width(page::Face::condensed, tape.other(piece.blank().kerfs.back().mark), kit.style.small);
    const char* rounded = tape.unit() == measure::Unit::inch ? "+.000" : "+.00";
    const Length residue = kit.faces.width(page::Face::condensed, rounded, kit.style.tiny);
    return places.residue + residue + 3_pt + other <= places.other;
}

}  // namespace

std::string residue_text(Length residue, const Tape& tape) {
    const bool inch = tape.unit() == measure::Unit::inch;
    const std::string digits = tape.number(std::abs(inch ? residue.inches() : residue.mm()), inch ? 3 : 2);
    if (digits.find_first_of("123456789") == std::string::npos) return {};
    return (residue < 0_mm ? "-" : "+") + digits.substr(1);
}

Length box_at(std::size_t n, Length row) { return 3_pt + (row - 1_pt) * static_cast<double>(n); }

Length least_row_width(const plan::Piece& piece, std::size_t boards, Length row, const Tape& tape, const Kit& kit) {
    return box_at(boards, row) + widest_of(piece, tape, kit).all() + least_gap * 3 + edge_gap;
}

RowPlaces row_places(const plan::Piece& piece, std::size_t boards, Length width, Length row, const Tape& tape,
                     const Kit& kit) {
    RowPlaces places;
    places.other = width - edge_gap;
    if (boards == 1 && has_usual_room(piece, places, tape, kit)) return places;
    const Widest widest = widest_of(piece, tape, kit);
    const Length from = box_at(boards, row);
    const Length gap = (places.other - from - widest.all()) / 3;
    places.numeral = from + gap + widest.numeral;
    places.mark = places.numeral + gap + widest.mark;
    places.residue = places.mark + residue_gap;
    return places;
}

}  // namespace kerfpacket::sheets
