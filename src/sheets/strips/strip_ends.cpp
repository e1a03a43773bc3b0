#include "sheets/strips/strip_ends.h"

#include <algorithm>

#include "sheets/layout/furniture.h"
#include "sheets/strips/strip_marks.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length zone_inset = Length::points(8);

bool has_mitre(const plan::Piece& piece, std::size_t end) { return piece.blank().ends.at(end).mitre.radians() != 0; }

/// Part of a strip for words: narrower beside running distances, which reach beyond their kerfs.
struct Zone {
    Rect whole;
    Rect beside_running;
    Length running;  ///< their baseline

    const Rect& at(Length up) const { return measure::abs(up - running) < 9_pt ? beside_running : whole; }
};

struct Line {
    Length up;
    std::string text;
    Type type;
    std::string shorter = {};  ///< instead, where the text is too long
};

/// Sets the lines that fit into a zone, from its outer end, condensed or shortened where need be; a line that is still
/// too long is left out, never clipped. Whether all were set.
bool lines_in_zone(Pen& pen, const Zone& words, bool from_left, std::vector<Line> lines) {
    bool all = true;
    for (Line& line : lines) {
        const Rect& zone = words.at(line.up);
        const auto too_long = [&] { return pen.width(line.text, line.type) + zone_inset * 2 > zone.width(); };
        if (too_long()) line.type.face = line.type.face == Face::bold ? Face::condensed_bold : Face::condensed;
        if (too_long()) line.text = line.shorter;
        if (line.text.empty() || too_long()) {
            all = false;
            continue;
        }
        const Point anchor{from_left ? zone.low.x + zone_inset : zone.high.x - zone_inset, zone.low.y + line.up};
        pen.text_on_white(Role::limit, anchor, line.text, from_left ? line.type : line.type.at_right());
    }
    return all;
}

/// What is said of the wood that goes away, and the same in short. Over the edge the cut is drawn as it slopes: there
/// its angle stands with the trim.
std::pair<std::string, std::string> trim_words(const StripContext& context, std::size_t end, const Kit& kit) {
    const std::string trim = context.tape.exact(context.piece.blank().trims.at(end));
    if (!context.lanes.edge || !has_mitre(context.piece, end))
        return {kit.words("strip.trim", {{"trim", trim}}), kit.words("strip.trim_short", {{"trim", trim}})};
    const fonts::Words::Values both{{"trim", trim},
                                    {"angle", degrees_text(context.piece.blank().ends.at(end).mitre, kit)}};
    return {kit.words("strip.trim_mitre", both), kit.words("strip.trim_mitre_short", both)};
}

/// What is said at the zero end itself.
void zero_words(Pen& pen, const StripContext& context, const Zone& words_zone, bool outer_is_left) {
    const Rect& zone = words_zone.whole;
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const EndLanes& lanes = context.lanes.ends;
    const Type regular{Face::regular, style.small};
    const Length zero_width = pen.width("0", {Face::bold, style.huge});
    const Point zero{outer_is_left ? zone.low.x + zone_inset : zone.high.x - zone_inset - zero_width,
                     zone.low.y + lanes.zero};
    if (zero_width + zone_inset * 2 <= zone.width())
        pen.text_on_white(Role::limit, zero, "0", {Face::bold, style.huge});
    Zone beside = words_zone;
    for (Rect* part : {&beside.whole, &beside.beside_running})
        (outer_is_left ? part->low.x : part->high.x) += (zero_width + 4_pt) * (outer_is_left ? 1.0 : -1.0);
    lines_in_zone(pen, beside, outer_is_left,
                  {{lanes.zero_words, words("strip.zero_end"), {Face::bold, style.text}},
                   {lanes.hook, words("strip.hook"), regular}});
    if (!context.lanes.edge)
        lines_in_zone(
            pen, words_zone, outer_is_left,
            {{4_pt, words(with_moulded_edge("strip.front_edge", context.piece)), regular, words("strip.front_edge")}});
}

/// `whole`: the strip goes on to the end of the blank, so that there is a zero, or an end, to name.
WasteWords trim_zone(Pen& pen, const StripContext& context, const Zone& words_zone, bool zero_end, bool whole,
                     bool outer_is_left) {
    const Rect& zone = words_zone.whole;
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const EndLanes& lanes = context.lanes.ends;
    const bool edge = context.lanes.edge;
    pen.hatch(zone, 9_pt);
    const Type bold{Face::bold, style.small};
    const std::size_t end = zero_end ? 0 : 1;
    const bool mitred = has_mitre(context.piece, end);
    WasteWords said;
    const auto trim = [&](Length up) {
        const auto [long_words, short_words] = trim_words(context, end, pen.kit());
        said.trim = lines_in_zone(pen, words_zone, outer_is_left, {{up, long_words, bold, short_words}});
        if (edge) said.mitre = said.trim && mitred;
    };
    const Type regular{Face::regular, style.small};
    const auto mitre = [&](Length up) {
        if (!edge && mitred)
            said.mitre =
                lines_in_zone(pen, words_zone, outer_is_left, {{up, mitre_words(context.piece, end, pen.kit()), bold}});
    };
    if (zero_end) {
        trim(lanes.trim);
        if (whole) zero_words(pen, context, words_zone, outer_is_left);
        mitre(lanes.zero_mitre);  // last: its own white ground is the one that may cover
        return said;
    }
    mitre(4_pt);
    trim(lanes.far_trim);
    if (!whole) return said;
    lines_in_zone(
        pen, words_zone, outer_is_left,
        {{lanes.far_words, words("strip.far_end"), {Face::bold, style.text}},
         {lanes.from_zero, words("strip.from_zero", {{"at", context.tape.with_unit(context.piece.blank().length)}}),
          regular}});
    return said;
}

/// Whether a kerf's mark or numeral stands where a line across the whole strip would go: then the line keeps to the
/// words lane, for nothing but the tick may be seen where the carpenter measures.
bool kerf_near(const plan::Piece& piece, Length from_zero) {
    return std::any_of(piece.blank().kerfs.begin(), piece.blank().kerfs.end(), [&](const plan::Kerf& kerf) {
        // A numeral keeps inside the blank.
        const Length numeral = std::max(std::min(kerf.mark, piece.blank().length - beside_kerf), beside_kerf);
        return measure::abs(kerf.mark - from_zero) < beside_kerf || measure::abs(numeral - from_zero) < beside_kerf;
    });
}

/// A cut that is not square. On the face: its line there, dashed where it comes out at the plain face. Over the edge:
/// the cut itself, as it slopes through the board, and its line on the flap.
void mitre_lines(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame) {
    const plan::Piece& piece = context.piece;
    const Lanes& lanes = context.lanes;
    const auto& style = pen.kit().style;
    const auto on_strip = [&](Length at) { return at >= strip.from && at <= strip.to; };
    for (std::size_t i = 0; i < piece.blank().ends.size(); ++i) {
        const plan::BoardEnd& end = piece.blank().ends.at(i);
        if (!has_mitre(piece, i)) continue;
        if (lanes.edge) {
            if (!on_strip(end.kerf_face) || !on_strip(end.plain_face)) continue;
            const Point fold = frame.at(end.kerf_face, lanes.mark);
            pen.line(Role::limit, frame.at(end.plain_face, {}), fold, style.heavy);
            pen.line(Role::limit, fold, frame.at(end.kerf_face, lanes.height), style.heavy);
            continue;
        }
        if (on_strip(end.plain_face))
            draw_across(pen, context, frame, Role::limit, end.plain_face, style.line, Dash::dashed);
        if (on_strip(end.kerf_face)) draw_across(pen, context, frame, Role::limit, end.kerf_face, style.heavy);
    }
}

}  // namespace

Length waste_until(const plan::Piece& piece) {
    return has_mitre(piece, 0) ? std::min(piece.blank().ends[0].kerf_face, piece.blank().ends[0].plain_face)
                               : piece.blank().trims[0];
}

Length waste_from(const plan::Piece& piece) {
    return has_mitre(piece, 1) ? std::max(piece.blank().ends[1].kerf_face, piece.blank().ends[1].plain_face)
                               : piece.blank().length - piece.blank().trims[1];
}

bool plain_face_shorter(const plan::Piece& piece, std::size_t end) {
    const plan::BoardEnd& cut = piece.blank().ends.at(end);
    return (cut.plain_face > cut.kerf_face) == (end == 0);
}

std::string mitre_words(const plan::Piece& piece, std::size_t end, const Kit& kit) {
    const std::string cut = is_scarf(piece, end) ? "strip.scarf" : "strip.mitre";
    return kit.words(cut + (plain_face_shorter(piece, end) ? "_plain_shorter" : "_plain_longer"),
                     {{"angle", degrees_text(piece.blank().ends.at(end).mitre, kit)}});
}

std::string mitre_words_short(const plan::Piece& piece, std::size_t end, const Kit& kit) {
    return kit.words(is_scarf(piece, end) ? "strip.scarf_short" : "strip.mitre_short",
                     {{"angle", degrees_text(piece.blank().ends.at(end).mitre, kit)}});
}

bool is_scarf(const plan::Piece& piece, std::size_t end) {
    return piece.blank().ends.at(end).meets == plan::BoardEnd::Meets::blank;
}

bool bends_past(const plan::Piece& piece, std::size_t end) {
    const plan::Blank& blank = piece.blank();
    if (!is_scarf(piece, end)) return false;
    return end == 0 ? blank.bend_start < blank.ends[0].kerf_face : blank.bend_end > blank.ends[1].plain_face;
}

Length bend_line(const plan::Piece& piece, std::size_t end) {
    const plan::Blank& blank = piece.blank();
    if (has_mitre(piece, end) && !is_scarf(piece, end)) return blank.ends.at(end).kerf_face;
    return end == 0 ? blank.bend_start : blank.bend_end;
}

void draw_across(Pen& pen, const StripContext& context, const StripFrame& frame, Role role, Length from_zero,
                 Length width, Dash dash) {
    const Lanes& lanes = context.lanes;
    pen.line(role, frame.at(from_zero, kerf_near(context.piece, from_zero) ? lanes.above_numerals() : 0_pt),
             frame.at(from_zero, lanes.height), width, dash);
}

std::array<WasteWords, 2> draw_strip_ends(Pen& pen, const StripContext& context, const Strip& strip,
                                          const StripFrame& frame) {
    const plan::Piece& piece = context.piece;
    const auto& style = pen.kit().style;
    const Length height = context.lanes.height;
    const bool at_zero = strip.from <= 0_mm;
    const bool at_end = strip.to >= piece.blank().length;
    const Length trim_start = waste_until(piece);
    const Length trim_end = waste_from(piece);
    const auto edge = [&](Length at, Length width) {
        pen.line(Role::limit, frame.at(at, {}), frame.at(at, height), width);
    };
    const auto trim_edge = [&](Length at) { draw_across(pen, context, frame, Role::limit, at, style.heavy); };
    // Hatch and words keep clear of a kerf that stands on an end of the bend or a little beyond it.
    const Length before_kerfs = piece.blank().kerfs.front().mark - beside_kerf;
    const Length after_kerfs = piece.blank().kerfs.back().mark + beside_kerf;
    const Length hatch_end = std::min(trim_start, before_kerfs);
    const Length hatch_start = std::max(trim_end, after_kerfs);
    const Reach figures = strip.has_kerfs() ? running_reach(pen, context, strip) : Reach{};
    const auto zone = [&](Length from, Length to) {
        if (!strip.has_kerfs()) return Zone{frame.zone(from, to, height), frame.zone(from, to, height), {}};
        const bool before = to <= piece.blank().kerfs[strip.first_kerf].mark;
        const Length clear_from = before ? from : std::clamp(figures.to + 2_pt, from, to);
        const Length clear_to = before ? std::clamp(figures.from - 2_pt, from, to) : to;
        const bool two_rows = strip.numbering == Numbering::two_rows;
        return Zone{frame.zone(from, to, height), frame.zone(clear_from, clear_to, height),
                    two_rows ? context.lanes.running_two_rows : context.lanes.running};
    };
    const auto tail = [&](Length from, Length to, Length length) {
        if (to - from < 1_mm || length <= 0_mm) return;
        lines_in_zone(pen, zone(from, to), frame.runs_right(),
                      {{context.lanes.ends.tail,
                        pen.kit().words("strip.tail", {{"tail", context.tape.exact(length)}}),
                        {Face::bold, style.small}}});
    };
    // Words keep off the slope of a scarf.
    const Length tail_from = is_scarf(piece, 0) ? piece.blank().ends[0].kerf_face : trim_start;
    const Length tail_to = is_scarf(piece, 1) ? piece.blank().ends[1].plain_face : trim_end;
    if (strip.from < piece.blank().bend_start)
        tail(std::max(strip.from, tail_from), std::min({strip.to, piece.blank().bend_start, before_kerfs}),
             piece.blank().tails[0]);
    if (strip.to > piece.blank().bend_end)
        tail(std::max({strip.from, piece.blank().bend_end, after_kerfs}), std::min(strip.to, tail_to),
             piece.blank().tails[1]);
    const auto on_strip = [&](Length at) { return at >= strip.from && at <= strip.to; };
    std::array<WasteWords, 2> said;
    if (strip.from < hatch_end)
        said[0] = trim_zone(pen, context, zone(std::max(0_mm, strip.from), std::min(hatch_end, strip.to)), true,
                            at_zero, frame.runs_right());
    else if (at_zero && is_scarf(piece, 0) && !context.lanes.edge)
        zero_words(pen, context, zone({}, std::min(piece.blank().ends[0].kerf_face, before_kerfs)), frame.runs_right());
    if (strip.to > hatch_start)
        said[1] =
            trim_zone(pen, context, zone(std::max(hatch_start, strip.from), std::min(piece.blank().length, strip.to)),
                      false, at_end, !frame.runs_right());
    if (trim_start > 0_mm && !has_mitre(piece, 0) && on_strip(trim_start)) trim_edge(trim_start);
    if (trim_end < piece.blank().length && !has_mitre(piece, 1) && on_strip(trim_end)) trim_edge(trim_end);
    mitre_lines(pen, context, strip, frame);
    if (at_zero) edge(0_mm, style.end);
    if (at_end) edge(piece.blank().length, style.end);
    return said;
}

}  // namespace kerfpacket::sheets
