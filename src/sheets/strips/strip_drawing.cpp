#include "sheets/strips/strip_drawing.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "sheets/layout/furniture.h"
#include "sheets/layout/lane.h"
#include "sheets/strips/strip_ends.h"
#include "sheets/strips/strip_lean.h"
#include "sheets/strips/strip_marks.h"
#include "sheets/strips/strip_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

class StripDrawing {
public:
    StripDrawing(Pen& pen, const StripContext& context, const Strip& strip, Point start)
        : pen_(pen),
          context_(context),
          piece_(context.piece),
          strip_(strip),
          frame_{start, strip, context.piece},
          lane_(frame_.left(), frame_.right()) {}

    void draw() {
        const std::size_t first = pen_.items();
        draw_square();
        const StripLean lean(context_, frame_);
        if (!lean.none()) {
            pen_.move_since(first, lean);
            draw_other_cuts(pen_, context_, strip_, frame_, lean, first);
        }
        if (context_.caption) caption();
    }

private:
    /// As if all of it stood square on the board.
    void draw_square() {
        if (lanes().edge) draw_edge_lines(pen_, context_, strip_, frame_);
        std::array<EndWords, 2> said = draw_strip_ends(pen_, context_, strip_, frame_);
        outline();
        keep_off_words(said[0], {}, waste_until(piece_));
        draw_marks(pen_, context_, strip_, frame_);
        joints();
        limits();
        reverses();
        if (strip_.from <= 0_mm) zero_end(said[0]);
        for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) cut(end, said.at(end));
        tape_marks();
        keep_off_words(said[1], waste_from(piece_), piece_.blank().length);
        set_mark_words(pen_, frame_.base(), lanes(), beside_,
                       other_cuts_across(context_, strip_, frame_, lanes().words, style().small), lane_);
        keep_name_off(waste_from(piece_), piece_.blank().length);
        identity();
    }

    const fonts::Style& style() const { return pen_.kit().style; }
    const Lanes& lanes() const { return context_.lanes; }
    std::string words(const char* key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Point at(Length from_zero, Length up) const { return frame_.at(from_zero, up); }

    void outline() {
        const Length top = lanes().height;
        pen_.stroke(Role::outline,
                    Path::rectangle({{frame_.left(), frame_.base()}, {frame_.right(), frame_.base() + top}}),
                    style().line);
    }

    /// Keeps further words of the lane off a part of the blank.
    void keep_off(Length from, Length to) {
        if (to <= strip_.from || from >= strip_.to) return;
        const Length clear = 2_pt;
        const Rect zone = frame_.zone(std::max(from, strip_.from), std::min(to, strip_.to), lanes().height);
        lane_.force(zone.low.x + clear, zone.high.x - clear);
    }

    /// The same of the board's name, which leans with the kerfs and so comes closer to what stands square in a waste.
    void keep_name_off(Length from, Length to) {
        keep_off(from, to);
        const StripLean lean(context_, frame_);
        if (lean.none() || to <= strip_.from || from >= strip_.to) return;
        const Rect zone = frame_.zone(std::max(from, strip_.from), std::min(to, strip_.to), lanes().height);
        const Length up = frame_.base() + lanes().words + style().small;
        const Length low = lean.closing_on({zone.low.x, up});
        const Length high = lean.closing_on({zone.high.x, up});
        lane_.force(zone.low.x - std::max({Length(), low, high}), zone.high.x + std::max({Length(), -low, -high}));
    }

    /// And off the words of an end that stand in the lane, with all that goes away there.
    void keep_off_words(const EndWords& said, Length from, Length to) {
        if (said.in_lane.empty()) return;
        keep_off(from, to);
        const StripLean lean(context_, frame_);
        for (const Rect& words : said.in_lane) {
            // From the side where they lean more, words come closer.
            const Length of_left = lean.closing_on(words.low);
            const Length of_right = lean.closing_on({words.high.x, words.low.y});
            const Length from_left = std::max({Length(), of_left, of_right});
            const Length from_right = std::max({Length(), -of_left, -of_right});
            lane_.force(words.low.x - 4_pt - from_left, words.high.x + 4_pt + from_right);
        }
    }

    /// The half diamond at an end and the numbers of the two strips that meet there.
    void joint(bool at_start) {
        const JointName name = joint_name(pen_, context_, strip_, frame_, at_start);
        const bool on_left = at_start == frame_.runs_right();
        const Direction inward{on_left ? 1.0 : -1.0, 0};
        const Point edge{on_left ? frame_.left() : frame_.right(), frame_.base() + lanes().words_middle()};
        pen_.arrow_head(Role::joint, edge + inward * 6_pt, inward, 6_pt, 11_pt);
        pen_.text(Role::joint, name.anchor, name.text, name.type);
        lane_.force(name.taken.low.x, name.taken.high.x);
    }

    void joints() {
        if (strip_.joined_before) joint(true);
        if (!strip_.joined_after) return;
        joint(false);
        lap();
    }

    void lap() {
        const Length height = lanes().height;
        const Length near = frame_.runs_right() ? frame_.right() : frame_.left() - context_.lap;
        const Rect area{{near, frame_.base()}, {near + context_.lap, frame_.base() + height}};
        pen_.box(Role::joint, area, style().fine, Dash::dashed);
        const Length middle = near + context_.lap / 2;
        const Length half = frame_.base() + height / 2;
        pen_.text(Role::joint, {middle, half + 5_pt}, words("strip.lap"), Type{Face::bold, style().small}.centred());
        pen_.text(Role::joint, {middle, half - 7_pt}, words("strip.lap_1"),
                  Type{Face::condensed, style().small}.centred());
        pen_.text(Role::joint, {middle, half - 18_pt}, words("strip.lap_2"),
                  Type{Face::condensed, style().small}.centred());
    }

    MarkWords& words_beside(Role role, Length from_zero, Length gap, std::string text, Worth worth) {
        return beside_.emplace_back(MarkWords{role, at(from_zero, {}).x, gap, std::move(text), worth});
    }
    MarkWords& place_beside(Role role, Length from_zero, Length gap, const char* key, Worth worth) {
        return words_beside(role, from_zero, gap, words(key, {{"at", context_.tape.with_unit(from_zero)}}), worth);
    }

    void pointer(Length from_zero) {
        const Length top = lanes().height;
        // Where the marks stand askew, the tape is read at the front edge: a line leads down to it.
        if (piece_.rake && !lanes().edge)
            draw_across(pen_, context_, strip_, frame_, Role::tape_mark, from_zero, style().fine, Dash::dotted);
        pen_.line(Role::tape_mark, at(from_zero, top - lanes().pointer), at(from_zero, top), style().fine);
        pen_.arrow_head(Role::tape_mark, at(from_zero, top - 6_pt), {0, -1}, 6_pt, 8_pt);
    }

    /// The mark that sets this strip; a tape check may serve as one.
    void tape_marks() {
        const auto& checks = strip_.tape_checks;
        for (const Length check : checks) {
            MarkWords& beside = place_beside(Role::tape_mark, check, 8_pt, "strip.tape_check", Worth::tape);
            // The mark that sets the strip is named above it; nobody knows another without its figure.
            if (check == strip_.tape_mark) pointer(check);
            else beside.draw_mark = [this, check] { pointer(check); };
            beside.box = true;
            beside.shorter = {words("strip.tape_mark", {{"at", context_.tape.with_unit(check)}}),
                              context_.tape.plain(check)};
        }
        if (!strip_.tape_mark || std::find(checks.begin(), checks.end(), *strip_.tape_mark) != checks.end()) return;
        pointer(*strip_.tape_mark);
        place_beside(Role::tape_mark, *strip_.tape_mark, 7_pt, "strip.tape_mark", Worth::tape).shorter = {
            context_.tape.plain(*strip_.tape_mark)};
    }

    void limit(Length from_zero, const char* key) {
        if (from_zero < strip_.from || from_zero > strip_.to) return;
        draw_across(pen_, context_, strip_, frame_, Role::limit, from_zero, style().heavy);
        place_beside(Role::limit, from_zero, 5_pt, key, Worth::bend);
    }

    void limits() {
        for (const std::size_t end : {std::size_t{0}, std::size_t{1}})
            if (!context_.coupon && !bends_past(piece_, end))
                limit(bend_line(piece_, end), end == 0 ? "strip.bend_starts" : "strip.bend_ends");
        const Length centre = piece_.blank().centre();
        // The middle of a part is the middle of nothing on the wall.
        if (centre < strip_.from || centre > strip_.to || piece_.blank().is_part()) return;
        draw_across(pen_, context_, strip_, frame_, Role::centre, centre, style().fine, Dash::dash_dot);
        place_beside(Role::centre, centre, 5_pt, "strip.centre", Worth::centre);
    }

    /// Where the bend changes sides.
    void reverses() {
        for (std::size_t i = 1; i < piece_.blank().runs.size(); ++i) {
            const Length at = piece_.blank().runs[i].from;
            if (at < strip_.from || at > strip_.to) continue;
            draw_across(pen_, context_, strip_, frame_, Role::limit, at, style().heavy, Dash::dashed);
            const bool open = opens(piece_.blank().runs[i]);
            place_beside(Role::limit, at, 5_pt, open ? "strip.reverse_open" : "strip.reverse_close", Worth::reverse)
                .shorter = {words(open ? "strip.reverse_open_short" : "strip.reverse_close_short")};
        }
    }

    /// What the end of the blank has no room for stands in the words lane, and nothing goes before it: one line, with
    /// the trim that is cut off so near. Two would leave no way for the words of the bend that starts there.
    void zero_end(EndWords& said) {
        const auto say = [&](const std::string& text) -> MarkWords& {
            MarkWords& beside = words_beside(Role::limit, {}, 5_pt, text, Worth::cut);
            beside.side = frame_.runs_right() ? MarkWords::Side::right : MarkWords::Side::left;
            beside.over_marks = true;
            return beside;
        };
        std::vector<std::string> missing;
        if (!said.zero) missing.push_back(words("strip.zero_end"));
        if (!said.hook) missing.push_back(words("strip.hook"));
        if (missing.empty()) return;
        std::string all = missing.front();
        if (missing.size() > 1) all += ", " + missing.back();
        const Length sawn = piece_.blank().trims[0];
        // Where the lane is taken there, the trim is said from beyond its line.
        if (sawn <= 0_mm || said.trim || !said.in_lane.empty()) {
            say(all);
            return;
        }
        const std::string trim = ", " + sawn_words(piece_, 0, context_.tape, pen_.kit()).second;
        said.trim = true;
        MarkWords& beside = say(all + trim);
        // On a flap the hatch and its line must tell the trim, where there is no room for all.
        if (lanes().edge) beside.shorter = {all};
        else beside.shorter = {missing.front() + trim, all};
    }

    /// What the cut of an end is, where the waste has no room for its words.
    void cut(std::size_t i, const EndWords& said) {
        const plan::BoardEnd& end = piece_.blank().ends.at(i);
        const auto on_strip = [&](Length at) { return at >= strip_.from && at <= strip_.to; };
        const Length waste = i == 0 ? waste_until(piece_) : waste_from(piece_);
        const Length sawn = piece_.blank().trims.at(i);
        if (sawn > 0_mm && !said.trim && on_strip(waste)) {
            const auto [all, in_short] = sawn_words(piece_, i, context_.tape, pen_.kit());
            MarkWords& beside = words_beside(Role::limit, waste, 5_pt, all, Worth::cut);
            beside.shorter = {in_short};
            beside.side = (i == 0) == frame_.runs_right() ? MarkWords::Side::left : MarkWords::Side::right;
        }
        if (end.mitre.radians() == 0) return;
        // Over the edge the cut is drawn as it slopes, without a line for the plain face.
        if (!lanes().edge && on_strip(end.plain_face))
            words_beside(Role::limit, end.plain_face, 4_pt, words("strip.plain_face"), Worth::plain_face);
        if (said.mitre || !on_strip(end.kerf_face)) return;
        words_beside(Role::limit, end.kerf_face, 5_pt, mitre_words(piece_, i, pen_.kit()), Worth::cut).shorter = {
            mitre_words_short(piece_, i, pen_.kit())};
    }

    std::string identity_words() const {
        const bool left = piece_.blank().zero == job::End::left;
        const char* key = lanes().edge ? (left ? "strip.identity_edge" : "strip.identity_edge_right")
                                       : (left ? "strip.identity" : "strip.identity_right");
        const job::Header& header = context_.plan.header;
        std::string text = words(key, {{"number", header.number}, {"revision", header.revision}, {"piece", piece_.id}});
        if (context_.roll)
            text += words("strip.identity_roll", {{"title", header.title}, {"fingerprint", context_.plan.fingerprint}});
        return text;
    }

    /// Beside the waste at zero, however small; on its hatch only where nothing else of the lane is free.
    void identity() {
        const Lane with_waste = lane_;
        keep_name_off({}, waste_until(piece_));
        if (identity_in_lane()) return;
        lane_ = with_waste;
        if (!identity_in_lane() && !lanes().edge)
            identity_among_distances(bare_identity(), {Face::condensed, style().tiny});
    }

    std::string bare_identity() const {
        const job::Header& header = context_.plan.header;
        return piece_.id + "  " + header.number + " " + header.revision;
    }

    /// Where there is most room, condensed and smaller where need be, then in fewer words; on a roll again wherever the
    /// lane has been free for long. Returns whether it found room.
    bool identity_in_lane() {
        const job::Header& header = context_.plan.header;
        const std::string least = words(
            "strip.identity_least", {{"number", header.number}, {"revision", header.revision}, {"piece", piece_.id}});
        const Type condensed{Face::condensed, style().small};
        const Type tiny{Face::condensed, style().tiny};
        for (const auto& [text, type] :
             {std::pair(identity_words(), Type{Face::regular, style().small}), std::pair(identity_words(), condensed),
              std::pair(identity_words(), tiny), std::pair(least, condensed), std::pair(least, tiny),
              std::pair(bare_identity(), tiny)})
            if (set_identity(text, type)) return true;
        return false;
    }

    /// Where the words lane is full: within the bend, in the row of the distances, where no line crosses it.
    void identity_among_distances(const std::string& text, const Type& type) {
        const Length up = strip_.numbering == Numbering::two_rows ? lanes().running_two_rows : lanes().running;
        const plan::Blank& blank = piece_.blank();
        const Length from = std::max({strip_.from, blank.bend_start, waste_until(piece_)});
        const Length to = std::min({strip_.to, blank.bend_end, waste_from(piece_)});
        if (to <= from) return;
        const Rect bend = frame_.zone(from, to, lanes().height);
        Lane row(bend.low.x + 4_pt, bend.high.x - 4_pt);
        for (const Rect& area : mark_areas(pen_, context_, strip_, frame_, 2_pt))
            if (area.high.y > frame_.base() + up + 1_pt && area.low.y < frame_.base() + up + type.size)
                row.force(area.low.x - 6_pt, area.high.x + 6_pt);
        std::vector<Length> lines = blank.reverses();
        lines.push_back(blank.centre());
        for (const plan::BoardEnd& end : blank.ends) lines.insert(lines.end(), {end.kerf_face, end.plain_face});
        for (const Length line : lines)
            if (from < line && line < to) row.force(at(line, {}).x - 4_pt, at(line, {}).x + 4_pt);
        for (const Length x : other_cuts_across(context_, strip_, frame_, up, type.size)) row.force(x - 4_pt, x + 4_pt);
        const Length width = pen_.width(text, type);
        if (const auto left = row.widest_free(width)) pen_.text(Role::text, {*left, frame_.base() + up}, text, type);
    }

    bool set_identity(const std::string& text, const Type& type) {
        const Length width = pen_.width(text, type);
        bool set = false;
        while (const auto left = lane_.widest_free(width + 16_pt)) {
            pen_.text(Role::text, {*left + 8_pt, frame_.base() + lanes().words}, text, type);
            if (!context_.roll) return true;
            lane_.force(*left, *left + width + 16_in);
            set = true;
        }
        return set;
    }

    /// As wide as the strip, or as it must be when the strip is short, in type that its room asks for. On a roll all of
    /// it stands at the strip's left end.
    void caption() {
        const CaptionRoom& room = *context_.caption;
        const auto [name, how, kerfs] = caption_of(context_, strip_, pen_.kit());
        const Type bold{Face::bold, style().small};
        Type type;
        Length least;
        for (const Type& way : {Type{Face::regular, style().small}, Type{Face::condensed, style().small},
                                Type{Face::condensed, style().tiny}}) {
            type = way;
            least = caption_width(context_, strip_, pen_.kit(), type);
            if (least <= room.to - room.from) break;
        }
        const Length left = std::min(frame_.left(), room.to - least);
        const Length base = frame_.base() + lanes().height + 4_pt;
        const Length how_from = pen_.width(name, bold) + 10_pt;
        pen_.text(Role::text, {left, base}, name, bold);
        pen_.text(Role::text, {left + how_from, base}, how, type);
        pen_.text(Role::text, {context_.roll ? left + least : std::max(frame_.right(), left + least), base}, kerfs,
                  type.at_right());
    }

    Pen& pen_;
    const StripContext& context_;
    const plan::Piece& piece_;
    const Strip& strip_;
    StripFrame frame_;
    Lane lane_;
    std::vector<MarkWords> beside_;
};

/// How a strip is set on the blank.
std::string how_set(const StripContext& context, const Strip& strip, const Kit& kit) {
    const plan::Piece& piece = context.piece;
    std::string how = kit.words(context.coupon ? "strip.at_zero_coupon" : "strip.at_zero");
    if (strip.tape_mark) how = kit.words("strip.set_mark", {{"at", context.tape.with_unit(*strip.tape_mark)}});
    if (strip.number == 1 && strip.from > 0_mm)
        how = kit.words("strip.starts_late", {{"from", context.tape.with_unit(strip.from)}}) + "; " + how;
    if (strip.number == context.strips && strip.to < piece.blank().length)
        how += "; " + kit.words("strip.ends_early", {{"at", context.tape.with_unit(piece.blank().length)}});
    if (context.lanes.edge) how = kit.words("strip.fold") + "; " + how;
    return how;
}

}  // namespace

Caption caption_of(const StripContext& context, const Strip& strip, const Kit& kit) {
    const auto& kerfs = context.piece.blank().kerfs;
    return {kit.words("strip.caption", {{"n", std::to_string(strip.number)}, {"m", std::to_string(context.strips)}}) +
                context.whose,
            how_set(context, strip, kit),
            strip.has_kerfs() ? kit.words("strip.kerfs", {{"first", std::to_string(kerfs[strip.first_kerf].n)},
                                                          {"last", std::to_string(kerfs[strip.end_kerf - 1].n)}})
                              : kit.words("strip.no_kerfs")};
}

Length caption_width(const StripContext& context, const Strip& strip, const Kit& kit, const Type& type) {
    const auto [name, how, kerfs] = caption_of(context, strip, kit);
    return kit.faces.width(Face::bold, name, kit.style.small) + 10_pt + kit.faces.width(type.face, how, type.size) +
           12_pt + kit.faces.width(type.face, kerfs, type.size);
}

void draw_strip(Pen& pen, const StripContext& context, const Strip& strip, Point start) {
    const auto [name, how, kerfs] = caption_of(context, strip, pen.kit());
    const Scope figure = pen.figure(
        pen.kit().words("figure.strip", {{"piece", context.piece.id}, {"name", name}, {"how", how}, {"kerfs", kerfs}}));
    StripDrawing(pen, context, strip, start).draw();
}

}  // namespace kerfpacket::sheets
