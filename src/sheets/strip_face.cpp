#include "sheets/strip_face.h"

#include <algorithm>
#include <vector>

#include "sheets/furniture.h"
#include "sheets/lane.h"
#include "sheets/strip_ends.h"
#include "sheets/strip_words.h"
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
        : pen_(pen),
          context_(context),
          piece_(context.piece),
          strip_(strip),
          frame_{start, strip, context.piece},
          lane_(frame_.left(), frame_.right()) {}

    void draw() {
        draw_strip_ends(pen_, context_, strip_, frame_);
        outline();
        // The trim at the zero end has words of its own in the lane.
        if (strip_.from <= 0_mm) keep_off({}, waste_until(piece_));
        for (std::size_t i = strip_.first_kerf; i < strip_.end_kerf; ++i) kerf(piece_.kerfs[i]);
        joints();
        limits();
        reverses();
        tape_marks();
        set_mark_words(pen_, frame_.base(), beside_, lane_);
        keep_off(waste_from(piece_), piece_.blank_length);
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
    bool one_row() const {
        return strip_.numbering == Numbering::one_row_large || strip_.numbering == Numbering::one_row;
    }

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
        if (kerf.n % (one_row() ? 5 : 10) != 0) return;
        const bool ten = kerf.n % 10 == 0;
        const Type type{Face::condensed, style().small, Align::centre};
        inside(Role::running, kerf.mark, two_rows() ? running_base_two_rows : running_base,
               ten ? context_.tape.with_unit(kerf.mark) : context_.tape.plain(kerf.mark), type);
    }

    /// Text centred on a mark, nudged so that it stays inside the strip; in the lower of two rows only just, for there
    /// the next kerf's shaft is near.
    void inside(Role role, Length mark, Length up, const std::string& text, const Type& type) {
        const Length room = pen_.width(text, type) / 2 + (up == odd_base ? 0.25_pt : 1.5_pt);
        Point where = at(mark, up);
        where.x = std::clamp(where.x, frame_.left() + room, frame_.right() - room);
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
        pen_.text(Role::joint, {middle, frame_.base() + 41_pt}, words("strip.lap"),
                  Type{Face::bold, style().small}.centred());
        pen_.text(Role::joint, {middle, frame_.base() + 29_pt}, words("strip.lap_1"),
                  Type{Face::condensed, style().small}.centred());
        pen_.text(Role::joint, {middle, frame_.base() + 18_pt}, words("strip.lap_2"),
                  Type{Face::condensed, style().small}.centred());
    }

    void words_beside(Role role, Length from_zero, Length gap, const char* key, bool box = false) {
        const std::string distance = context_.tape.with_unit(from_zero);
        beside_.push_back({role, at(from_zero, {}).x, gap, words(key, {{"at", distance}}), box});
    }

    void pointer(Length from_zero) {
        const Length top = style().strip_height;
        pen_.line(Role::tape_mark, at(from_zero, top - 13_pt), at(from_zero, top), style().hair);
        pen_.arrow_head(Role::tape_mark, at(from_zero, top - 6_pt), {0, -1}, 6_pt, 8_pt);
    }

    /// The mark that sets this strip; a tape check may serve as one.
    void tape_marks() {
        const auto& checks = strip_.tape_checks;
        for (const Length check : checks) {
            pointer(check);
            words_beside(Role::tape_mark, check, 8_pt, "strip.tape_check", true);
        }
        if (!strip_.tape_mark || std::find(checks.begin(), checks.end(), *strip_.tape_mark) != checks.end()) return;
        pointer(*strip_.tape_mark);
        words_beside(Role::tape_mark, *strip_.tape_mark, 7_pt, "strip.tape_mark");
    }

    void limit(Length from_zero, const char* key) {
        if (from_zero < strip_.from || from_zero > strip_.to) return;
        draw_across(pen_, piece_, frame_, Role::limit, from_zero, style().heavy);
        words_beside(Role::limit, from_zero, 5_pt, key);
    }

    void limits() {
        limit(piece_.bend_start, "strip.bend_starts");
        limit(piece_.bend_end, "strip.bend_ends");
        const Length centre = piece_.centre();
        if (centre < strip_.from || centre > strip_.to) return;
        draw_across(pen_, piece_, frame_, Role::centre, centre, style().hair, Dash::dash_dot);
        words_beside(Role::centre, centre, 5_pt, "strip.centre");
    }

    /// Where the bend changes sides; and the cut of an end, where the waste has no room for its words.
    void reverses() {
        for (const Length at : piece_.reverses) {
            if (at < strip_.from || at > strip_.to) continue;
            draw_across(pen_, piece_, frame_, Role::limit, at, style().heavy, Dash::dashed);
            const bool open = kerfs_after(piece_, at) == bend::KerfsOn::outside;
            words_beside(Role::limit, at, 5_pt, open ? "strip.reverse_open" : "strip.reverse_close");
            beside_.back().shorter = words(open ? "strip.reverse_open_short" : "strip.reverse_close_short");
        }
        for (std::size_t i = 0; i < piece_.ends.size(); ++i) {
            const plan::BoardEnd& end = piece_.ends.at(i);
            if (end.mitre.radians() == 0 || mitre_words_in_waste(pen_, context_, i)) continue;
            if (end.kerf_face < strip_.from || end.kerf_face > strip_.to) continue;
            beside_.push_back({Role::limit, at(end.kerf_face, {}).x, 5_pt, mitre_words(piece_, i, pen_.kit())});
        }
    }

    void identity() {
        const std::string text = words(piece_.zero == job::End::left ? "strip.identity" : "strip.identity_right",
                                       {{"number", context_.plan.header.number},
                                        {"revision", context_.plan.header.revision},
                                        {"piece", piece_.id}});
        const Type type{Face::regular, style().tiny};
        const Length width = pen_.width(text, type);
        const auto left = lane_.widest_free(width + 16_pt);
        if (left) pen_.text(Role::text, {*left + 8_pt, frame_.base() + lane_base}, text, type);
    }

    /// How this strip is set on the blank.
    std::string how_set() const {
        std::string how = words("strip.at_zero");
        if (strip_.tape_mark) how = words("strip.set_mark", {{"at", context_.tape.with_unit(*strip_.tape_mark)}});
        if (strip_.number == 1 && strip_.from > 0_mm)
            how = words("strip.starts_late", {{"from", context_.tape.with_unit(strip_.from)}}) + "; " + how;
        if (strip_.number == context_.strips && strip_.to < piece_.blank_length)
            how += "; " + words("strip.ends_early", {{"at", context_.tape.with_unit(piece_.blank_length)}});
        return how;
    }

    std::string kerf_numbers() const {
        return words("strip.kerfs", {{"first", std::to_string(piece_.kerfs[strip_.first_kerf].n)},
                                     {"last", std::to_string(piece_.kerfs[strip_.end_kerf - 1].n)}});
    }

    /// As wide as the strip, or as it must be when the strip is short; never off the page.
    void caption() {
        const std::string name =
            words("strip.caption", {{"n", std::to_string(strip_.number)}, {"m", std::to_string(context_.strips)}});
        const Type bold{Face::bold, style().small};
        const std::string how = how_set();
        const std::string kerfs = kerf_numbers();
        Type type{Face::regular, style().small};
        const Length how_from = pen_.width(name, bold) + 10_pt;
        const auto wanted = [&] { return how_from + pen_.width(how, type) + 12_pt + pen_.width(kerfs, type); };
        if (wanted() > pen_.page_width() - side_margin * 2) type.face = Face::condensed;
        const Length least = wanted();
        const Length left = std::min(frame_.left(), pen_.page_width() - side_margin - least);
        const Length base = frame_.base() + style().strip_height + 5_pt;
        pen_.text(Role::text, {left, base}, name, bold);
        pen_.text(Role::text, {left + how_from, base}, how, type);
        pen_.text(Role::text, {std::max(frame_.right(), left + least), base}, kerfs, type.at_right());
    }

    Pen& pen_;
    const StripContext& context_;
    const plan::Piece& piece_;
    const Strip& strip_;
    StripFrame frame_;
    Lane lane_;
    std::vector<MarkWords> beside_;
};

}  // namespace

void draw_face_strip(Pen& pen, const StripContext& context, const Strip& strip, Point start) {
    FaceStrip(pen, context, strip, start).draw();
}

}  // namespace kerfpacket::sheets
