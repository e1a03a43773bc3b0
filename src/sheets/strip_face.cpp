#include "sheets/strip_face.h"

#include <algorithm>

#include "sheets/furniture.h"
#include "sheets/lane.h"
#include "sheets/strip_ends.h"
#include "sheets/wording.h"

namespace kerfpacket::sheets {
namespace {

// Heights above the front edge of the board, from the layout system.
constexpr Length foot_height = 3_pt;
constexpr Length hairline_top = 12_pt;
constexpr Length shaft_top = 22_pt;
constexpr Length numeral_base = 25_pt;
constexpr Length odd_base = 19_pt;
constexpr Length even_base = 32_pt;
constexpr Length running_base = 43_pt;
constexpr Length running_base_two_rows = 45.5_pt;

class FaceStrip {
public:
    FaceStrip(Pen& pen, const StripContext& context, const Strip& strip, Point start)
        : pen_(pen), context_(context), piece_(context.piece), strip_(strip), frame_{start, strip, context.piece},
          lane_(frame_.left(), frame_.right()) {}

    void draw() {
        draw_strip_ends(pen_, context_, strip_, frame_);
        outline();
        keep_off({}, piece_.trim);  // the trim at the zero end has words of its own in the lane
        for (std::size_t i = strip_.first_kerf; i < strip_.end_kerf; ++i) kerf(piece_.kerfs[i]);
        joints();
        limits();
        tape_marks();
        keep_off(piece_.blank_length - piece_.trim, piece_.blank_length);
        identity();
        caption();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(const char* key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Point at(Length from_zero, Length up) const { return frame_.at(from_zero, up); }
    bool two_rows() const { return strip_.numbering == Numbering::two_rows; }

    void outline() {
        const Length top = style().strip_height;
        pen_.stroke(Role::outline,
                    Path::rectangle({{frame_.left(), frame_.base()}, {frame_.right(), frame_.base() + top}}),
                    style().line);
    }

    /// Keeps further words of the lane off a part of the blank.
    void keep_off(Length from, Length to) {
        if (to <= strip_.from || from >= strip_.to) return;
        const Length clear = 2_pt;
        const Rect zone = frame_.zone(std::max(from, strip_.from), std::min(to, strip_.to), style().strip_height);
        lane_.force(zone.low.x + clear, zone.high.x - clear);
    }

    void kerf(const plan::Kerf& kerf) {
        const Length half = piece_.kerf / 2;
        const Point foot = at(kerf.at, {});
        pen_.fill(Role::foot, Path::rectangle({{foot.x - half, foot.y}, {foot.x + half, foot.y + foot_height}}));
        pen_.line(Role::tick, at(kerf.mark, {}), at(kerf.mark, hairline_top), style().hair);
        const bool ten = kerf.n % 10 == 0;
        pen_.line(Role::outline, at(kerf.mark, hairline_top), at(kerf.mark, shaft_top_of(kerf)),
                  ten ? style().heavy : style().line);
        numeral(kerf);
        running(kerf);
    }

    bool numbered(const plan::Kerf& kerf) const {
        return strip_.numbering != Numbering::every_fifth || kerf.n % 5 == 0;
    }

    Length numeral_base_of(const plan::Kerf& kerf) const {
        if (!two_rows()) return numeral_base;
        return kerf.n % 2 == 0 ? even_base : odd_base;
    }

    Length shaft_top_of(const plan::Kerf& kerf) const {
        return two_rows() ? numeral_base_of(kerf) - 2.5_pt : shaft_top;
    }

    void numeral(const plan::Kerf& kerf) {
        if (!numbered(kerf)) return;
        const Type type{kerf.n % 10 == 0 ? Face::condensed_bold : Face::condensed,
                        strip_.numbering == Numbering::one_row_large ? style().title : style().strong, Align::centre};
        inside(Role::numeral, kerf.mark, numeral_base_of(kerf), std::to_string(kerf.n), type);
    }

    void running(const plan::Kerf& kerf) {
        if (kerf.n % (two_rows() ? 10 : 5) != 0) return;
        const bool ten = kerf.n % 10 == 0;
        const Type type{Face::condensed, style().small, Align::centre};
        inside(Role::running, kerf.mark, two_rows() ? running_base_two_rows : running_base,
               ten ? context_.tape.with_unit(kerf.mark) : context_.tape.plain(kerf.mark), type);
    }

    /// Text centred on a mark, nudged so that it stays inside the strip.
    void inside(Role role, Length mark, Length up, const std::string& text, const Type& type) {
        const Length half = pen_.width(text, type) / 2;
        Point where = at(mark, up);
        where.x = std::clamp(where.x, frame_.left() + half + 1.5_pt, frame_.right() - half - 1.5_pt);
        pen_.text(role, where, text, type);
    }

    /// The half diamond at an end and the numbers of the two strips that meet there.
    void joint(bool at_start) {
        const int before = at_start ? strip_.number - 1 : strip_.number;
        const std::string name =
            words("strip.joint", {{"before", std::to_string(before)}, {"after", std::to_string(before + 1)}});
        const bool on_left = at_start == frame_.runs_right();
        const Direction inward{on_left ? 1.0 : -1.0, 0};
        const Point edge{on_left ? frame_.left() : frame_.right(), frame_.base() + lane_middle};
        pen_.arrow_head(Role::joint, edge + inward * 6_pt, inward, 6_pt, 11_pt);
        Type type{Face::bold, style().text, on_left ? Align::left : Align::right};
        const Point anchor{edge.x + 9_pt * inward.x, frame_.base() + lane_base};
        const Length width = pen_.text(Role::joint, anchor, name, type);
        const Length reach = width * inward.x;
        lane_.force(std::min(edge.x, anchor.x + reach) - 4_pt, std::max(edge.x, anchor.x + reach) + 4_pt);
    }

    void joints() {
        if (strip_.number > 1) joint(true);
        if (strip_.number == context_.strips) return;
        joint(false);
        lap();
    }

    void lap() {
        const Length height = style().strip_height;
        const Length near = frame_.runs_right() ? frame_.right() : frame_.left() - context_.lap;
        const Rect area{{near, frame_.base()}, {near + context_.lap, frame_.base() + height}};
        pen_.box(Role::joint, area, style().hair, Dash::dashed);
        const Length middle = near + context_.lap / 2;
        pen_.text(Role::joint, {middle, frame_.base() + 41_pt}, words("strip.lap"), Type{Face::bold, style().small}.centred());
        pen_.text(Role::joint, {middle, frame_.base() + 29_pt}, words("strip.lap_1"), Type{Face::condensed, style().small}.centred());
        pen_.text(Role::joint, {middle, frame_.base() + 18_pt}, words("strip.lap_2"), Type{Face::condensed, style().small}.centred());
    }

    /// Words beside a mark: to its right where that is free, else to its left.
    void beside(Role role, Length mark_x, const std::string& text, const Type& type, Length gap) {
        const Length width = pen_.width(text, type);
        const Length base = frame_.base() + lane_base;
        if (lane_.take(mark_x - 1_pt, mark_x + gap + width + 3_pt)) {
            pen_.text_on_white(role, {mark_x + gap, base}, text, type);
            return;
        }
        if (lane_.take(mark_x - gap - width - 3_pt, mark_x + 1_pt)) {
            pen_.text_on_white(role, {mark_x - gap, base}, text, type.at_right());
            return;
        }
        // No room on either side: smaller, between the lane and the numerals, and inside the strip.
        const Type tiny{type.face, style().tiny};
        const bool on_left = mark_x - gap - pen_.width(text, tiny) > frame_.left() + 3_pt;
        pen_.text_on_white(role, {on_left ? mark_x - gap : mark_x + gap, base - 8_pt}, text, on_left ? tiny.at_right() : tiny);
    }

    void pointer(Length from_zero) {
        const Length top = style().strip_height;
        pen_.line(Role::tape_mark, at(from_zero, top - 13_pt), at(from_zero, top), style().hair);
        pen_.arrow_head(Role::tape_mark, at(from_zero, top - 6_pt), {0, -1}, 6_pt, 8_pt);
    }

    void tape_marks() {
        const Type bold{Face::bold, style().small};
        const auto& checks = strip_.tape_checks;
        // A tape check may serve as the strip's own mark.
        if (strip_.tape_mark && std::find(checks.begin(), checks.end(), *strip_.tape_mark) == checks.end()) {
            pointer(*strip_.tape_mark);
            beside(Role::tape_mark, at(*strip_.tape_mark, {}).x, context_.tape.with_unit(*strip_.tape_mark), bold, 7_pt);
        }
        for (const Length check : checks) {
            pointer(check);
            const std::string text = words("strip.tape_check", {{"at", context_.tape.with_unit(check)}});
            const Length x = at(check, {}).x;
            const Length box = 10_pt;
            const Length width = box + 4_pt + pen_.width(text, bold);
            const bool right = lane_.take(x - 5_pt, x + 8_pt + width + 3_pt);
            if (!right) lane_.force(x - 8_pt - width - 3_pt, x + 5_pt);
            const Length left = right ? x + 8_pt : x - 8_pt - width;
            tick_box(pen_, {left, frame_.base() + lane_base - 1.5_pt}, box);
            pen_.text(Role::tape_mark, {left + box + 4_pt, frame_.base() + lane_base}, text, bold);
        }
    }

    /// A line across the strip where no numeral is in its way, else in the words lane alone.
    void across(Role role, Length from_zero, Length width, Dash dash) {
        pen_.line(role, at(from_zero, kerf_near(piece_, from_zero) ? above_numerals : 0_pt), at(from_zero, style().strip_height),
                  width, dash);
    }

    void limit(Length from_zero, const char* key) {
        if (from_zero < strip_.from || from_zero > strip_.to) return;
        across(Role::limit, from_zero, style().heavy, Dash::solid);
        beside(Role::limit, at(from_zero, {}).x, words(key, {{"at", context_.tape.with_unit(from_zero)}}),
               {Face::bold, style().small}, 5_pt);
    }

    void limits() {
        limit(piece_.bend_start, "strip.bend_starts");
        limit(piece_.bend_end, "strip.bend_ends");
        const Length centre = piece_.centre();
        if (centre < strip_.from || centre > strip_.to) return;
        across(Role::centre, centre, style().hair, Dash::dash_dot);
        beside(Role::centre, at(centre, {}).x, words("strip.centre", {{"at", context_.tape.with_unit(centre)}}),
               {Face::bold, style().small}, 5_pt);
    }

    void identity() {
        const std::string text =
            words(piece_.zero == job::End::left ? "strip.identity" : "strip.identity_right",
                  {{"number", context_.plan.header.number}, {"revision", context_.plan.header.revision},
                   {"piece", piece_.id}});
        const Type type{Face::regular, style().tiny};
        const Length width = pen_.width(text, type);
        const auto left = lane_.widest_free(width + 16_pt);
        if (left) pen_.text(Role::text, {*left + 8_pt, frame_.base() + lane_base}, text, type);
    }

    void caption() {
        const Length base = frame_.base() + style().strip_height + 5_pt;
        const Length used = pen_.text(
            Role::text, {frame_.left(), base},
            words("strip.caption", {{"n", std::to_string(strip_.number)}, {"m", std::to_string(context_.strips)}}),
            {Face::bold, style().small});
        std::string how = words("strip.at_zero");
        if (strip_.tape_mark) how = words("strip.set_mark", {{"at", context_.tape.with_unit(*strip_.tape_mark)}});
        if (strip_.number == 1 && strip_.from > 0_mm)
            how = words("strip.starts_late", {{"from", context_.tape.with_unit(strip_.from)}}) + "; " + how;
        if (strip_.number == context_.strips && strip_.to < piece_.blank_length)
            how += "; " + words("strip.ends_early", {{"at", context_.tape.with_unit(piece_.blank_length)}});
        const Type type{Face::regular, style().small};
        const Length how_left = frame_.left() + used + 10_pt;
        const Length how_width = pen_.text(Role::text, {how_left, base}, how, type);
        if (strip_.empty()) return;
        const std::string kerfs =
            words("strip.kerfs", {{"first", std::to_string(piece_.kerfs[strip_.first_kerf].n)},
                                  {"last", std::to_string(piece_.kerfs[strip_.end_kerf - 1].n)}});
        // At the strip's right end; beyond it when a short strip leaves no room.
        const Length right = std::max(frame_.right(), how_left + how_width + 12_pt + pen_.width(kerfs, type));
        pen_.text(Role::text, {right, base}, kerfs, type.at_right());
    }

    Pen& pen_;
    const StripContext& context_;
    const plan::Piece& piece_;
    const Strip& strip_;
    StripFrame frame_;
    Lane lane_;
};

}  // namespace

void draw_face_strip(Pen& pen, const StripContext& context, const Strip& strip, Point start) {
    FaceStrip(pen, context, strip, start).draw();
}

}  // namespace kerfpacket::sheets
