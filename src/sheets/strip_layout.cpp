#include "sheets/strip_layout.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "measure/require.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

constexpr Length check_clearance = Length::inches(9.0 / 16);
/// A straight end up to this long is drawn; a longer one is only told in words.
constexpr Length drawn_end = Length::inches(4);
/// What is kept of a longer one beyond the bend.
constexpr Length kept_end = Length::inches(0.5);
/// Space at a strip's start for the joint's number.
constexpr Length joint_words = Length::inches(0.9);

Length whole_step_down(Length value, Length step) { return step * std::floor(value / step + 1e-9); }
Length whole_step_up(Length value, Length step) { return step * std::ceil(value / step - 1e-9); }

/// What the last strip holds of the bend, at least: its tape mark and the words at the bend's end want the room.
constexpr Length last_of_bend = Length::inches(3);

/// Whether a joint would crowd a tape check, the centre line or an end of the bend, which have words beside them.
bool crowds_a_mark(Length at, const plan::Piece& piece, const Tape& tape) {
    const Length check = tape.check_step() * std::round(at / tape.check_step());
    const auto near = [&](Length mark) { return measure::abs(at - mark) < check_clearance; };
    return (check > 0_mm && near(check)) || near(piece.centre()) || near(piece.bend_start) ||
           at > piece.bend_end - last_of_bend;
}

/// Index of the first kerf of the next strip: the joint stands in the land before it.
std::size_t next_first(const plan::Piece& piece, const Strip& strip, Length longest, const Tape& tape) {
    const auto& kerfs = piece.kerfs;
    const auto joint_before = [&](std::size_t i) { return (kerfs[i - 1].at + kerfs[i].at) / 2; };
    std::size_t best = strip.first_kerf;
    std::size_t best_clear = strip.first_kerf;
    for (std::size_t i = strip.first_kerf + 1; i < kerfs.size(); ++i) {
        if (joint_before(i) > strip.from + longest) break;
        best = i;
        if (!crowds_a_mark(joint_before(i), piece, tape)) best_clear = i;
    }
    measure::require(best > strip.first_kerf, "a strip holds at least one kerf");
    return best_clear > strip.first_kerf ? best_clear : best;
}

/// The first whole step after the joint's number that keeps clear of the other words of the lane, by less where a strip
/// is short; failing that a tape check of the strip, or the first step of all.
Length choose_tape_mark(const plan::Piece& piece, const Strip& strip, const Tape& tape) {
    const auto free = [&](Length at, double part) {
        const auto clear_of = [&](Length other, Length clear) { return measure::abs(other - at) >= clear; };
        const Length words = 1.6_in * part;
        return std::all_of(strip.tape_checks.begin(), strip.tape_checks.end(),
                           [&](Length check) { return clear_of(check, 2.4_in); }) &&
               clear_of(piece.bend_start, words) && clear_of(piece.bend_end, words) && clear_of(piece.centre(), words);
    };
    const Length first = whole_step_up(strip.from + joint_words, tape.mark_step());
    for (const double part : {1.0, 0.6})
        for (Length at = first; at < std::min(strip.to, piece.bend_end) - 0.9_in; at += tape.mark_step())
            if (free(at, part)) return at;
    if (!strip.tape_checks.empty()) return strip.tape_checks.front();
    return std::min(first, whole_step_down(strip.to, tape.mark_step()));
}

NumeralWidths numeral_widths(const plan::Piece& piece, const Strip& strip, const Kit& kit) {
    NumeralWidths widths;
    for (std::size_t i = strip.first_kerf; i < strip.end_kerf; ++i) {
        const std::string n = std::to_string(piece.kerfs[i].n);
        const auto face = piece.kerfs[i].n % 10 == 0 ? page::Face::condensed_bold : page::Face::condensed;
        widths.at_17 = std::max(widths.at_17, kit.faces.width(face, n, kit.style.title));
        widths.at_13 = std::max(widths.at_13, kit.faces.width(face, n, kit.style.strong));
        widths.at_13_bold =
            std::max(widths.at_13_bold, kit.faces.width(page::Face::condensed_bold, n, kit.style.strong));
    }
    return widths;
}

Length smallest_gap(const plan::Piece& piece, const Strip& strip) {
    Length gap = 1000_in;
    for (std::size_t i = strip.first_kerf + 1; i < strip.end_kerf; ++i)
        gap = std::min(gap, piece.kerfs[i].at - piece.kerfs[i - 1].at);
    return gap;
}

void complete(Strip& strip, const plan::Piece& piece, const Tape& tape, const Kit& kit) {
    for (Length at = tape.check_step(); at < strip.to; at += tape.check_step())
        if (at > strip.from) strip.tape_checks.push_back(at);
    if (strip.from > 0_mm) strip.tape_mark = choose_tape_mark(piece, strip, tape);
    strip.numbering = numbering_for(numeral_widths(piece, strip, kit), smallest_gap(piece, strip), piece.kerf);
}

}  // namespace

Numbering numbering_for(const NumeralWidths& widths, Length smallest_gap, Length kerf) {
    if (widths.at_17 + 5_pt <= smallest_gap) return Numbering::one_row_large;
    if (widths.at_13 + 5_pt <= smallest_gap) return Numbering::one_row;
    if (widths.at_13_bold + kerf + 1.5_pt <= smallest_gap * 2) return Numbering::two_rows;
    return Numbering::every_fifth;
}

std::vector<Strip> cut_strips(const plan::Piece& piece, Length longest, const Tape& tape, const Kit& kit) {
    measure::require(!piece.kerfs.empty(), "a piece that gets strips has kerfs");
    const Length step = tape.mark_step();
    const Length begin =
        piece.bend_start <= drawn_end ? 0_mm : whole_step_down(piece.bend_start - kept_end, step);
    const Length end = piece.blank_length - piece.bend_end <= drawn_end
                           ? piece.blank_length
                           : whole_step_up(piece.bend_end + kept_end, step);
    std::vector<Strip> strips;
    Strip strip;
    strip.from = begin;
    while (true) {
        strip.number = static_cast<int>(strips.size()) + 1;
        const bool last = end - strip.from <= longest;
        std::size_t next = last ? piece.kerfs.size() : next_first(piece, strip, longest, tape);
        strip.end_kerf = next;
        strip.to = last ? end : (piece.kerfs[next - 1].at + piece.kerfs[next].at) / 2;
        complete(strip, piece, tape, kit);
        strips.push_back(strip);
        if (last) return strips;
        Strip following;
        following.from = strip.to;
        following.first_kerf = next;
        strip = following;
    }
}

}  // namespace kerfpacket::sheets
