#include "sheets/strips/strip_ends.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "sheets/strips/strip_end_zone.h"
#include "sheets/strips/strip_lean.h"
#include "sheets/strips/strip_marks.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

bool has_mitre(const plan::Piece& piece, std::size_t end) { return piece.blank().ends.at(end).mitre.radians() != 0; }

/// Over the edge the cut of an end is drawn as it slopes: there its angle stands with the trim. A board that climbs has
/// two things to tell of its cut besides, how it leans and where.
bool told_with_trim(const StripContext& context, std::size_t end) {
    return context.lanes.edge && has_mitre(context.piece, end) && !context.piece.rake;
}

/// What is said of the wood that goes away, and the same in short.
std::pair<std::string, std::string> trim_words(const StripContext& context, std::size_t end, const Kit& kit) {
    if (!told_with_trim(context, end)) return sawn_words(context.piece, end, context.tape, kit);
    const std::string trim = context.tape.exact(context.piece.blank().trims.at(end));
    const fonts::Words::Values both{{"trim", trim},
                                    {"angle", degrees_text(context.piece.blank().ends.at(end).mitre, kit)}};
    return {kit.words("strip.trim_mitre", both), kit.words("strip.trim_mitre_short", both)};
}

/// Draws the parts of one strip outside its bend.
class StripEnds {
public:
    StripEnds(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame)
        : pen_(pen),
          context_(context),
          piece_(context.piece),
          blank_(context.piece.blank()),
          lanes_(context.lanes.ends),
          strip_(strip),
          frame_(frame),
          taken_(mark_areas(pen, context, strip, frame, measured_beside(context.piece))) {
        if (strip.joined_before) taken_.push_back(joint_name(pen, context, strip, frame, true).taken);
        if (strip.joined_after) taken_.push_back(joint_name(pen, context, strip, frame, false).taken);
    }

    std::array<EndWords, 2> draw() {
        std::array<EndWords, 2> said;
        said[0] = zero_end();
        said[1] = far_end();
        tails();
        return said;
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    Type bold() const { return {Face::bold, style().small}; }
    Type regular() const { return {Face::regular, style().small}; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    EndZone zone(Length from, Length to, bool from_left) {
        // Words that lean more the nearer they are to the bend come closer to each other.
        const double lean = context_.lanes.edge ? 0 : std::abs(blank_.lean / piece_.width);
        const Length apart = 4_pt + 12_pt * lean;
        return {pen_,  frame_.zone(from, std::max(from, to), context_.lanes.height), from_left, context_.lanes, apart,
                taken_};
    }
    /// Wood that goes away, hatched up to its cut; only the kerfs that stand in it keep their ground.
    void hatch(std::size_t end) {
        const auto cut = other_cut(context_, end);
        // A slanted cut takes more or less wood than the line along the kerfs that begins at its foot.
        const double wider = cut ? std::abs(cut->slope) + std::abs(blank_.lean / piece_.width) : 0;
        const Length more = context_.lanes.height * wider;
        const Length from = std::max(strip_.from, end == 0 ? 0_mm : waste_from(piece_) - more);
        const Length to = std::min(strip_.to, end == 0 ? waste_until(piece_) + more : blank_.length);
        if (from >= to) return;
        const Rect area = frame_.zone(from, to, context_.lanes.height);
        if (!cut) {
            pen_.hatch_around(area, 9_pt, style().fine, taken_);
            return;
        }
        const StripLean lean(context_, frame_);
        const auto is_gone = [&](Point drawn) {
            const Point there = lean(drawn);
            const Length kept = frame_.from_zero(there.x) - cut->at(there.y - frame_.base());
            return end == 0 ? kept < 0_mm : kept > 0_mm;
        };
        pen_.hatch_around(area, 9_pt, style().fine, taken_, is_gone);
        keep_off(*cut, lean);
    }

    /// Words stand clear of a slanted cut, at whatever height they are.
    void keep_off(const OtherCut& cut, const StripLean& lean) {
        constexpr int steps = 24;
        const auto place = [&](int step) {
            const Length up = context_.lanes.height * (static_cast<double>(step) / steps);
            return frame_.at(crossing(cut, up, frame_, lean), up);
        };
        for (int i = 0; i < steps; ++i)
            taken_.push_back(geom::united({place(i), place(i)}, {place(i + 1), place(i + 1)}));
    }

    EndWords zero_end() {
        const Length waste = waste_until(piece_);
        const bool at_zero = strip_.from <= 0_mm;
        EndWords said;
        hatch(0);
        if (strip_.from < waste) {
            const Length to = std::min(waste, strip_.to);
            EndZone words = zone(std::max(0_mm, strip_.from), to, frame_.runs_right());
            if (at_zero) zero_words(words, said);
            trim(words, 0, lanes_.trim, said);
            mitre(words, 0, lanes_.zero_mitre, said);
            said.take_lane_of(words.in_lane());
        } else if (at_zero) {
            // Over the edge a scarf slopes through all of it.
            const bool scarf = is_scarf(piece_, 0);
            const Length to = scarf ? (context_.lanes.edge ? 0_mm : blank_.ends[0].kerf_face) : blank_.bend_start;
            EndZone words = zone({}, std::min(to, strip_.to), frame_.runs_right());
            zero_words(words, said);
            said.take_lane_of(words.in_lane());
        }
        return said;
    }

    EndWords far_end() {
        const Length waste = waste_from(piece_);
        EndWords said;
        hatch(1);
        if (strip_.to <= waste) return said;
        const Length from = std::max(waste, strip_.from);
        const Length to = std::min(blank_.length, strip_.to);
        EndZone zone = this->zone(from, to, !frame_.runs_right());
        if (strip_.to >= blank_.length) far_words(zone, marked_beyond(waste));
        // Over the edge it is told with the trim, where there is room for both.
        if (!context_.lanes.edge) mitre(zone, 1, 4_pt, said);
        trim(zone, 1, lanes_.far_trim, said);
        mitre(zone, 1, 4_pt, said);
        said.take_lane_of(zone.in_lane());
        return said;
    }

    /// Whether what stands in the words lane has its marks in the far waste: of a board that climbs kerfs may stand
    /// there.
    bool marked_beyond(Length waste) const {
        const Length beside = waste + 0.5_in;
        return (strip_.tape_mark && *strip_.tape_mark > beside) || blank_.bend_end > beside ||
               std::any_of(strip_.tape_checks.begin(), strip_.tape_checks.end(),
                           [&](Length check) { return check > beside; });
    }

    /// That it is the far end, and where: out of the words lane, where that has marks to tell of in the waste.
    void far_words(EndZone& zone, bool marked) {
        const EndZone::Line end{lanes_.far_words, words("strip.far_end"), {Face::bold, style().text}};
        const EndZone::Line at{lanes_.from_zero,
                               words("strip.from_zero", {{"at", context_.tape.with_unit(blank_.length)}}), regular()};
        for (const EndZone::Line& line : {end, at}) {
            if (marked) zone.set_below_lane(line);
            else zone.set_anywhere(line);
        }
    }

    /// What is said at the zero end itself: the tape is hooked there, whatever room there is.
    void zero_words(EndZone& zone, EndWords& said) {
        zone.set({lanes_.zero, "0", {Face::bold, style().huge}});
        said.zero = zone.set_anywhere({lanes_.zero_words, words("strip.zero_end"), {Face::bold, style().text}}) ||
                    zone.set_in_rows({lanes_.zero_words, words("strip.zero_end"), bold()});
        const EndZone::Line hook{lanes_.hook, words("strip.hook"), regular()};
        said.hook = zone.set_anywhere(hook) || zone.set_in_rows(hook);
        if (!strip_.has_kerfs()) zero_words_beyond(said);
        if (!context_.lanes.edge)
            zone.set(
                {4_pt, words(with_moulded_edge("strip.front_edge", piece_)), regular(), words("strip.front_edge")});
    }

    /// On a short strip without kerfs: beyond the cut, with an arrow to the end of the blank.
    void zero_words_beyond(EndWords& said) {
        EndZone beyond = zone(waste_until(piece_), strip_.to, frame_.runs_right());
        const auto set = [&](bool& is_said, const EndZone::Line& line) {
            if (is_said) return;
            is_said = beyond.set_anywhere(line);
            if (!is_said) return;
            const Rect& box = taken_.back();
            const double way = frame_.runs_right() ? 1 : -1;
            const Point tip{frame_.at({}, {}).x + 2_pt * way, (box.low.y + box.high.y) / 2};
            pen_.line(Role::limit, {(frame_.runs_right() ? box.low.x : box.high.x) - 2_pt * way, tip.y}, tip,
                      style().line);
            pen_.arrow_head(Role::limit, tip, {-way, 0}, 5_pt, 4_pt);
        };
        set(said.zero, {lanes_.zero_words, words("strip.zero_end"), bold()});
        set(said.hook, {lanes_.hook, words("strip.hook"), regular()});
        said.take_lane_of(beyond.in_lane());
    }

    void trim(EndZone& zone, std::size_t end, Length up, EndWords& said) {
        const bool complete = end == 1 || strip_.from > 0_mm || (said.zero && said.hook);
        const auto [long_words, short_words] = trim_words(context_, end, pen_.kit());
        const EndZone::Line line{up, long_words, bold(), short_words};
        // What finds no room here stands beside its line in the words lane, which must then be free.
        said.trim = (complete && zone.set(line)) || zone.set_below_lane(line);
        if (told_with_trim(context_, end)) said.mitre = said.trim;
    }

    void mitre(EndZone& zone, std::size_t end, Length up, EndWords& said) {
        if (said.mitre || !has_mitre(piece_, end)) return;
        const EndZone::Line line{up, mitre_words(piece_, end, pen_.kit()), bold(),
                                 mitre_words_short(piece_, end, pen_.kit())};
        // What finds no room on the face stands in the words lane, with which face is the shorter.
        said.mitre = context_.lanes.edge ? zone.set_below_lane(line) : zone.set({up, line.text, bold()});
    }

    void tails() {
        // Words keep off the slope of a scarf.
        const Length from = is_scarf(piece_, 0) ? blank_.ends[0].kerf_face : waste_until(piece_);
        const Length to = is_scarf(piece_, 1) ? blank_.ends[1].plain_face : waste_from(piece_);
        tail(std::max(strip_.from, from), std::min(strip_.to, blank_.bend_start), straight(0));
        tail(std::max(strip_.from, blank_.bend_end), std::min(strip_.to, to), straight(1));
    }

    /// Of a board that climbs as a tape finds it on the front edge, from the cut that stays.
    Length straight(std::size_t end) const {
        if (!piece_.rake || is_scarf(piece_, end)) return blank_.tails.at(end);
        return end == 0 ? blank_.bend_start - blank_.cut_at(0) : blank_.cut_at(1) - blank_.bend_end;
    }

    void tail(Length from, Length to, Length length) {
        if (to - from < 1_mm || length <= 0_mm) return;
        zone(from, to, frame_.runs_right())
            .set({lanes_.tail,
                  words("strip.tail",
                        {{"tail", piece_.rake ? context_.tape.with_unit(length) : context_.tape.exact(length)}}),
                  bold()});
    }

    Pen& pen_;
    const StripContext& context_;
    const plan::Piece& piece_;
    const plan::Blank& blank_;
    const EndLanes& lanes_;
    const Strip& strip_;
    const StripFrame& frame_;
    std::vector<Rect> taken_;  ///< by the kerfs' marks, and by words that are set
};

/// Where the trim is cut off square: a line as high as the strip, open at numerals and beside a tick, for which it
/// could be taken.
void saw_lines(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame) {
    const plan::Piece& piece = context.piece;
    const Length width = pen.kit().style.heavy;
    const std::vector<Rect> marks =
        mark_areas(pen, context, strip, frame, std::max(piece.cut.kerf / 2 + width / 2 + 2_pt, measured_beside(piece)));
    const std::array<Length, 2> cuts{waste_until(piece), waste_from(piece)};
    for (std::size_t i = 0; i < cuts.size(); ++i) {
        const Length at = cuts.at(i);
        if (piece.blank().trims.at(i) <= 0_mm || has_mitre(piece, i) || at < strip.from || at > strip.to) continue;
        // Off the kerfs' slope it is drawn at its own, once these lean.
        if (other_cut(context, i)) continue;
        pen.line_around(Role::limit, frame.at(at, {}), frame.at(at, context.lanes.height), width, Dash::solid, marks);
    }
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
            draw_across(pen, context, strip, frame, Role::limit, end.plain_face, style.line, Dash::dashed);
        if (on_strip(end.kerf_face)) draw_across(pen, context, strip, frame, Role::limit, end.kerf_face, style.heavy);
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

std::pair<std::string, std::string> sawn_words(const plan::Piece& piece, std::size_t end, const Tape& tape,
                                               const Kit& kit) {
    const Length sawn = piece.blank().trims.at(end);
    if (!piece.rake) {
        const fonts::Words::Values trim{{"trim", tape.exact(sawn)}};
        return {kit.words("strip.trim", trim), kit.words("strip.trim_short", trim)};
    }
    const bool left = (end == 0) == (piece.blank().zero == job::End::left);
    const fonts::Words::Values cut{{"cut", end_cut_text(piece.rake->ends.at(left ? 0 : 1), kit)},
                                   {"trim", tape.with_unit(sawn)}};
    return {kit.words("strip.end_cut", cut), kit.words("strip.end_cut_short", cut)};
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

void draw_across(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame, Role role,
                 Length from_zero, Length width, Dash dash) {
    pen.line_around(role, frame.at(from_zero, {}), frame.at(from_zero, context.lanes.height), width, dash,
                    mark_areas(pen, context, strip, frame, measured_beside(context.piece)));
}

JointName joint_name(const Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame,
                     bool at_start) {
    const int before = at_start ? strip.number - 1 : strip.number;
    const bool on_left = at_start == frame.runs_right();
    JointName name{
        pen.kit().words("strip.joint", {{"before", std::to_string(before)}, {"after", std::to_string(before + 1)}})};
    // On the shortest of strips the names of both ends must find room.
    const Length size = pen.kit().style.text;
    name.type = pen.fitting(name.text, {Face::bold, size}, (frame.right() - frame.left()) / 2 - 11_pt);
    name.type.align = on_left ? Align::left : Align::right;
    const Length wide = 13_pt + pen.width(name.text, name.type);
    const Length left = on_left ? frame.left() : frame.right() - wide;
    const Length base = frame.base() + context.lanes.words;
    name.anchor = {on_left ? left + 9_pt : left + wide - 9_pt, base};
    name.taken = {{left, base - 2_pt}, {left + wide, base + size * 0.75}};
    return name;
}

std::array<EndWords, 2> draw_strip_ends(Pen& pen, const StripContext& context, const Strip& strip,
                                        const StripFrame& frame) {
    std::array<EndWords, 2> said = StripEnds(pen, context, strip, frame).draw();
    saw_lines(pen, context, strip, frame);
    mitre_lines(pen, context, strip, frame);
    for (const Length end : {0_mm, context.piece.blank().length})
        if (strip.from <= end && end <= strip.to)
            pen.line(Role::limit, frame.at(end, {}), frame.at(end, context.lanes.height), pen.kit().style.end);
    return said;
}

}  // namespace kerfpacket::sheets
