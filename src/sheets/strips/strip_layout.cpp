#include "sheets/strips/strip_layout.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>

#include "measure/require.h"
#include "sheets/strips/strip_lanes.h"
#include "sheets/words/numeral.h"

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

constexpr Length check_clearance = Length::inches(9.0 / 16);
/// Each further figure makes the name of a joint, "9|10", so much wider than that of two strips of one figure.
constexpr Length further_figure = 8_pt;
/// A straight end up to this long is drawn; a longer one is only told in words.
constexpr Length drawn_end = Length::inches(4);
/// What is kept of a longer one beyond the bend, or beside a cut: room for the words there, at a mitre for more.
constexpr Length kept_end = Length::inches(1.6);
constexpr Length kept_at_mitre = Length::inches(3);
/// The least that is shown of the waste beside its cut.
constexpr Length words_of_waste = Length::inches(1.25);
/// What is shown on either side of a cut that has a strip of its own on a board that climbs: there the words say how it
/// is cut, in the waste or, where that is short, beside it.
constexpr Length words_of_end_cut = Length::inches(2.4);
/// What a strip has for kerfs beside a straight end, at least: they stand up to 3 in apart.
constexpr Length room_for_kerfs = Length::inches(5);
/// Space at a strip's ends for the names of the joints there; on a strip too short for that, what the names take.
constexpr Length joint_words = Length::inches(0.9);
constexpr Length least_joint_words = Length::inches(0.55);

Length whole_step_down(Length value, Length step) { return step * std::floor(value / step + 1e-9); }
Length whole_step_up(Length value, Length step) { return step * std::ceil(value / step - 1e-9); }

/// What the first and the last strip hold of the bend, at least: the words at its ends and a tape mark want the room.
constexpr Length first_of_bend = Length::inches(2.2);
constexpr Length last_of_bend = Length::inches(3);

/// A strip is seldom shorter: it has a name at either end, and is soon lost.
constexpr Length short_strip = Length::inches(2);

/// What the figures of the joint before a strip take more than two.
Length further_figures(int strip) {
    const std::size_t figures = std::to_string(strip - 1).size() + std::to_string(strip).size();
    return further_figure * static_cast<double>(figures - 2);
}

/// How much the joint to a strip would crowd a tape check, the centre line or an end of the bend, which have words
/// beside them. A tape check counts as much as all others.
int crowding(Length at, int next_strip, const plan::Piece& piece, const Tape& tape) {
    const Length check = tape.check_step() * std::round(at / tape.check_step());
    const Length clear = check_clearance + further_figures(next_strip);
    const auto near = [&](Length mark) { return measure::abs(at - mark) < clear; };
    const std::vector<Length> changes = piece.blank().reverses();
    const bool reverse = std::any_of(changes.begin(), changes.end(), near);
    return (check > 0_mm && near(check) ? 4 : 0) + (reverse ? 1 : 0) + (near(piece.blank().centre()) ? 1 : 0) +
           (at < piece.blank().bend_start + first_of_bend ? 1 : 0) +
           (at > piece.blank().bend_end - last_of_bend ? 2 : 0);
}

/// Index of the first kerf of the next strip: the joint stands in the land before it, as far on as crowds the least.
std::size_t next_first(const plan::Piece& piece, const Strip& strip, int next_strip, Length longest, const Tape& tape) {
    const auto& kerfs = piece.blank().kerfs;
    std::size_t best = strip.first_kerf;
    int least = 0;
    for (std::size_t i = strip.first_kerf + 1; i < kerfs.size(); ++i) {
        const Length joint = (kerfs[i - 1].at + kerfs[i].at) / 2;
        if (joint > strip.from + longest) break;
        const int crowd = crowding(joint, next_strip, piece, tape) + (joint < strip.from + short_strip ? 3 : 0);
        if (best > strip.first_kerf && crowd > least) continue;
        best = i;
        least = crowd;
    }
    measure::require(best > strip.first_kerf, "a strip holds at least one kerf");
    return best;
}

/// The first whole step after the joint's number that keeps clear of the other words of the lane, by less where a strip
/// is short; failing that a tape check of the strip, or the first step of all.
Length choose_tape_mark(const plan::Piece& piece, const Strip& strip, const Tape& tape) {
    const std::vector<Length> changes = piece.blank().reverses();
    const auto free = [&](Length at, double part) {
        const auto clear_of = [&](Length other, Length clear) { return measure::abs(other - at) >= clear; };
        const Length words = 1.6_in * part;
        const Length reverse = 2.6_in * part;  // its words are longer
        return std::all_of(changes.begin(), changes.end(), [&](Length mark) { return clear_of(mark, reverse); }) &&
               std::all_of(strip.tape_checks.begin(), strip.tape_checks.end(),
                           [&](Length check) { return clear_of(check, 2.4_in); }) &&
               clear_of(piece.blank().bend_start, words) && clear_of(piece.blank().bend_end, words) &&
               clear_of(piece.blank().centre(), words);
    };
    const Length last = whole_step_down(strip.to - tape.mark_step() / 4, tape.mark_step());
    // Beside the cut of an end the words stand on the side of the board.
    const Length board = strip.end_kerf == 0 ? std::max(strip.from, piece.blank().trims[0]) : strip.from;
    if (!strip.has_kerfs()) return std::min(whole_step_up(board + kept_end / 5, tape.mark_step()), last);
    // Words of the waste have its part of the lane.
    const Length lane_from = strip.from > 0_mm ? std::max(strip.from, piece.blank().trims[0]) : strip.from;
    const auto first = [&](Length words) { return whole_step_up(lane_from + words, tape.mark_step()); };
    const Length end = std::min(strip.to, piece.blank().bend_end);
    struct Try {
        double part = 1;
        Length joint;  ///< kept for the names of the joints
    };
    const Length least_joint = least_joint_words + further_figures(strip.number);
    for (const Try& one : {Try{1.0, joint_words}, {0.6, joint_words}, {0.6, least_joint}})
        for (Length at = first(one.joint); at < end - one.joint; at += tape.mark_step())
            if (free(at, one.part)) return at;
    if (!strip.tape_checks.empty()) return strip.tape_checks.front();
    return std::min(first(joint_words), last);
}

/// Tens are bold and so wider, but their neighbours are not: the room between numerals stays.
NumeralWidths numeral_widths(const plan::Piece& piece, const Strip& strip, const Kit& kit) {
    NumeralWidths widths;
    for (std::size_t i = strip.first_kerf; i < strip.end_kerf; ++i) {
        const std::string n = std::to_string(piece.blank().kerfs[i].n);
        widths.at_17 = std::max(widths.at_17, kit.faces.width(numeral_face, n, kit.style.title));
        widths.at_13 = std::max(widths.at_13, kit.faces.width(numeral_face, n, kit.style.strong));
        widths.at_13_bold = std::max(widths.at_13_bold, kit.faces.width(numeral_face_of_tens, n, kit.style.strong));
    }
    return widths;
}

Length smallest_gap(const plan::Piece& piece, const Strip& strip) {
    Length gap = 1000_in;
    for (std::size_t i = strip.first_kerf + 1; i < strip.end_kerf; ++i)
        gap = std::min(gap, piece.blank().kerfs[i].at - piece.blank().kerfs[i - 1].at);
    return gap;
}

Numbering sparse(const NumeralWidths& widths, Length smallest_gap) {
    return widths.at_13_bold + 3_pt <= smallest_gap * 5 ? Numbering::every_fifth : Numbering::every_tenth;
}

void complete(Strip& strip, const plan::Piece& piece, const Tape& tape, const Kit& kit) {
    for (Length at = tape.check_step(); at < strip.to; at += tape.check_step())
        if (at > strip.from) strip.tape_checks.push_back(at);
    if (strip.from > 0_mm) strip.tape_mark = choose_tape_mark(piece, strip, tape);
    const NumeralWidths widths = numeral_widths(piece, strip, kit);
    const Length gap = smallest_gap(piece, strip);
    strip.numbering = numbering_for(widths, gap, piece.cut.kerf);
    if (piece.strip != job::StripOn::edge) return;
    if (strip.numbering == Numbering::one_row_large) strip.numbering = Numbering::one_row;
    if (strip.numbering == Numbering::two_rows && !edge_lanes(piece).two_rows) strip.numbering = sparse(widths, gap);
}

/// What of the blank is drawn: the part that bends, and the cut of an end that lies too far from it.
struct Part {
    Length from;
    Length to;
};
struct Parts {
    std::optional<Part> zero;
    Part marked;
    std::optional<Part> far;
};

/// The wood on both sides of a cut that stands this far from the end of the blank, so much of it as is `kept`, in
/// distances from that end.
Part beside_cut(Length trim, Length drawn, Length kept, Length step) {
    return {trim <= drawn ? 0_mm : whole_step_down(trim - kept, step), whole_step_up(trim + kept, step)};
}

/// How far from either end its cut stands: the trim, or where the slope of a scarf ends.
std::array<Length, 2> cuts_of(const plan::Blank& blank) {
    const auto scarf = [&](std::size_t end) { return blank.ends.at(end).meets == plan::BoardEnd::Meets::blank; };
    return {scarf(0) ? blank.ends[0].kerf_face : blank.trims[0],
            scarf(1) ? blank.length - blank.ends[1].plain_face : blank.trims[1]};
}

Parts parts_of(const plan::Piece& piece, Length longest, Length step) {
    // A strip of a small sheet that holds a straight end must hold a kerf too.
    const Length room = longest - room_for_kerfs;
    const Length drawn = std::clamp(room, 0_in, drawn_end);
    const auto kept = [&](std::size_t end) {
        const bool square = piece.blank().ends.at(end).mitre.radians() == 0;
        return square ? kept_end : std::clamp(room, kept_end, kept_at_mitre);
    };
    const Length blank = piece.blank().length;
    // A kerf may stand a little outside the bend.
    const Length first = std::min(piece.blank().bend_start, piece.blank().kerfs.front().mark);
    const Length last = std::max(piece.blank().bend_end, piece.blank().kerfs.back().mark);
    Parts parts;
    parts.marked.from = first <= drawn ? 0_mm : std::max(0_mm, whole_step_down(first - kept(0), step));
    parts.marked.to = blank - last <= drawn ? blank : std::min(blank, whole_step_up(last + kept(1), step));
    const auto [zero_trim, far_trim] = cuts_of(piece.blank());
    const Length far_cut = blank - far_trim;
    const Length beside = piece.rake ? std::clamp(room, kept_end, words_of_end_cut) : kept_end;
    const Part at_zero = beside_cut(zero_trim, drawn, beside, step);
    const Part at_far = beside_cut(far_trim, drawn, beside, step);
    const bool zero_sawn = zero_trim > 0_mm;
    const bool far_sawn = far_trim > 0_mm;
    if (zero_sawn && zero_trim < parts.marked.from) parts.zero = at_zero;
    if (far_sawn && far_cut > parts.marked.to)
        parts.far = Part{whole_step_down(blank - at_far.to, step), blank - at_far.from};
    // A cut that the marks' own strip just reaches has room there for what is said of the waste.
    if (zero_sawn && !parts.zero && parts.marked.from > zero_trim - words_of_waste)
        parts.marked.from =
            std::min(parts.marked.from, std::max(0_mm, whole_step_down(zero_trim - words_of_waste, step)));
    if (far_sawn && !parts.far && parts.marked.to < far_cut + words_of_waste)
        parts.marked.to = std::max(parts.marked.to, std::min(blank, whole_step_up(far_cut + words_of_waste, step)));
    // An end that all but reaches the marks is drawn with them, where a kerf still finds room beside it.
    const Length most = std::max(room, drawn);
    if (parts.zero && parts.zero->to >= parts.marked.from) {
        if (first - parts.zero->from <= most) {
            parts.marked.from = parts.zero->from;
            parts.zero.reset();
        } else {
            parts.zero->to = parts.marked.from;
        }
    }
    if (parts.far && parts.far->from <= parts.marked.to) {
        if (parts.far->to - last <= most) {
            parts.marked.to = parts.far->to;
            parts.far.reset();
        } else {
            parts.far->from = parts.marked.to;
        }
    }
    if (parts.zero) parts.zero->to = std::min(parts.zero->to, parts.zero->from + longest);
    if (parts.far) parts.far->from = std::max(parts.far->from, parts.far->to - longest);
    return parts;
}

}  // namespace

Numbering numbering_for(const NumeralWidths& widths, Length smallest_gap, Length kerf) {
    if (widths.at_17 + 5_pt <= smallest_gap) return Numbering::one_row_large;
    if (widths.at_13 + 5_pt <= smallest_gap) return Numbering::one_row;
    if (widths.at_13_bold + kerf + 1.5_pt <= smallest_gap * 2) return Numbering::two_rows;
    return sparse(widths, smallest_gap);
}

std::vector<Strip> cut_strips(const plan::Piece& piece, Length longest, const Tape& tape, const Kit& kit) {
    measure::require(!piece.blank().kerfs.empty(), "a piece that gets strips has kerfs");
    const auto [zero, marked, far] = parts_of(piece, longest, tape.mark_step());
    std::vector<Strip> strips;
    if (zero) strips.push_back({.from = zero->from, .to = zero->to});
    Strip strip{.from = marked.from};
    while (true) {
        const bool last = marked.to - strip.from <= longest;
        const int next_strip = static_cast<int>(strips.size()) + 2;
        const std::size_t next =
            last ? piece.blank().kerfs.size() : next_first(piece, strip, next_strip, longest, tape);
        strip.end_kerf = next;
        strip.to = last ? marked.to : (piece.blank().kerfs[next - 1].at + piece.blank().kerfs[next].at) / 2;
        strip.joined_after = !last;
        strips.push_back(strip);
        if (last) break;
        strip = {.from = strip.to, .first_kerf = next, .joined_before = true};
    }
    const std::size_t all = piece.blank().kerfs.size();
    if (far) strips.push_back({.from = far->from, .to = far->to, .first_kerf = all, .end_kerf = all});
    for (Strip& one : strips) {
        one.number = static_cast<int>(&one - strips.data()) + 1;
        complete(one, piece, tape, kit);
    }
    return strips;
}

}  // namespace kerfpacket::sheets
