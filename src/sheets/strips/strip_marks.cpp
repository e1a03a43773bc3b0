#include "sheets/strips/strip_marks.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "sheets/strips/strip_ends.h"
#include "sheets/words/numeral.h"

namespace kerfpacket::sheets {
namespace {

/// What is kept free around a text and beside a line.
constexpr Length around = Length::points(1.5);

Type running_type(const fonts::Style& style) { return {Face::condensed, style.small, Align::centre}; }

/// The distance from zero that stands by a kerf; empty where none does.
std::string running_text(const StripContext& context, const Strip& strip, const plan::Kerf& kerf) {
    const bool one_row = strip.numbering == Numbering::one_row_large || strip.numbering == Numbering::one_row;
    // Where ten kerfs take less than a distance in figures, every fifty.
    const bool close = context.piece.cut.least_spacing * 10 < 66_pt;
    if (kerf.n % (one_row ? 5 : close ? 50 : 10) != 0) return {};
    return kerf.n % 10 == 0 ? context.tape.with_unit(kerf.mark) : context.tape.plain(kerf.mark);
}

class Marks {
public:
    Marks(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame)
        : pen_(pen),
          context_(context),
          piece_(context.piece),
          lanes_(context.lanes),
          strip_(strip),
          frame_(frame),
          row_(number_step() == 1 && !two_rows() ? one_row() : std::vector<Length>()) {}

    /// Where a kerf's mark stands, and within `beside` of its tick.
    void add_areas(const plan::Kerf& kerf, Length beside, std::vector<Rect>& areas) const {
        const auto upright = [&](Length low, Length high, Length half) {
            const Point foot = frame_.at(kerf.mark, low);
            areas.push_back({{foot.x - half, foot.y}, {foot.x + half, frame_.base() + high}});
        };
        upright(lanes_.mark, lanes_.mark + lanes_.tick_top, beside);
        // Beside a tick at the blade's left or right the foot reaches further to one side.
        const Length foot = piece_.on_edge(piece_.cut.kerf) / 2 + 2_pt;
        const Point under = frame_.at(kerf.at, lanes_.mark);
        areas.push_back({{under.x - foot, under.y}, {under.x + foot, under.y + foot_height + 1_pt}});
        const auto text = [&](const std::optional<SetText>& set) {
            if (!set) return;
            // Upright words on marks that stand askew reach beyond them.
            const double lean = lanes_.edge ? 0 : std::abs(piece_.blank().lean / piece_.width);
            const Point half{pen_.width(set->text, set->type) / 2 + around + set->type.size * (0.4 * lean), {}};
            areas.push_back({set->where - half - Point{{}, set->type.size * 0.1 + around},
                             set->where + half + Point{{}, set->type.size * 0.75 + around}});
        };
        const std::optional<SetText> number = numeral(kerf);
        text(number);
        text(running(kerf));
        if (!lanes_.edge)
            return upright(lanes_.tick_top, (number ? numeral_base(kerf) : lanes_.numeral) - 2_pt, around);
        upright(number ? numeral_base(kerf) : lanes_.cut, lanes_.cut, around);
        const Length half = piece_.on_edge(piece_.cut.kerf) / 2 + 1_pt;
        const Point middle = frame_.at(kerf.at, {});
        areas.push_back({{middle.x - half, middle.y + lanes_.cut - 1_pt}, {middle.x + half, middle.y + lanes_.mark}});
    }

    void draw(const plan::Kerf& kerf) {
        const Length half = piece_.on_edge(piece_.cut.kerf) / 2;
        const Point foot = frame_.at(kerf.at, lanes_.mark);
        pen_.fill(Role::foot, Path::rectangle({{foot.x - half, foot.y}, {foot.x + half, foot.y + foot_height}}));
        pen_.line(Role::tick, frame_.at(kerf.mark, lanes_.mark), frame_.at(kerf.mark, lanes_.mark + lanes_.tick_top),
                  style().fine);
        if (lanes_.edge) slot(kerf);
        else shaft(kerf, lanes_.tick_top);
        for (const auto& [role, set] :
             {std::pair{Role::numeral, numeral(kerf)}, std::pair{Role::running, running(kerf)}})
            if (set) pen_.text(role, set->where, set->text, set->type);
    }

private:
    /// A line of text and the middle of its baseline.
    struct SetText {
        Point where;
        std::string text;
        Type type;
    };

    const fonts::Style& style() const { return pen_.kit().style; }
    bool two_rows() const { return strip_.numbering == Numbering::two_rows; }

    /// What the blade takes, in true kerf and depth. In two rows a line leads down to a number of the lower.
    void slot(const plan::Kerf& kerf) {
        const Length half = piece_.on_edge(piece_.cut.kerf) / 2;
        const Point middle = frame_.at(kerf.at, {});
        pen_.box(Role::outline, {{middle.x - half, middle.y + lanes_.cut}, {middle.x + half, middle.y + lanes_.mark}},
                 style().fine);
        if (two_rows() && kerf.n % 2 == 0)
            pen_.line(Role::outline, frame_.at(kerf.mark, lanes_.cut), frame_.at(kerf.mark, lanes_.even + 11_pt),
                      style().fine);
    }

    void shaft(const plan::Kerf& kerf, Length from) {
        const Length to = two_rows() ? numeral_base(kerf) - 2.5_pt : lanes_.numeral - 3_pt;
        const Length width = kerf.n % 10 == 0 ? style().heavy : style().line;
        const auto line = [&](Length up, Length down) {
            pen_.line(Role::outline, frame_.at(kerf.mark, up), frame_.at(kerf.mark, down), width);
        };
        if (!beside_moved_number(kerf)) return line(from, to);
        // Open beside a number that has no room to keep off it.
        line(from, std::min(from, lanes_.odd + numeral_type(kerf).size * 0.73 + 1.5_pt));
        line(lanes_.odd - 2_pt, to);
    }

    /// Whether an odd number at an end of the strip, moved inside it, comes up to the shaft of this even one.
    bool beside_moved_number(const plan::Kerf& kerf) const {
        if (!two_rows() || kerf.n % 2 != 0) return false;
        const auto meets = [&](const plan::Kerf& end) {
            if (end.n != kerf.n - 1 && end.n != kerf.n + 1) return false;
            const std::string text = std::to_string(end.n);
            const Type type = numeral_type(end);
            const Length middle = inside(end.mark, lanes_.odd, text, type).x;
            return measure::abs(middle - frame_.at(kerf.mark, {}).x) < pen_.width(text, type) / 2 + 1_pt;
        };
        return meets(piece_.blank().kerfs[strip_.first_kerf]) || meets(piece_.blank().kerfs[strip_.end_kerf - 1]);
    }

    Length numeral_base(const plan::Kerf& kerf) const {
        if (!two_rows()) return lanes_.numeral;
        return kerf.n % 2 == 0 ? lanes_.even : lanes_.odd;
    }

    /// From one number to the next that stands in the same row.
    int number_step() const {
        if (strip_.numbering == Numbering::every_fifth) return 5;
        return strip_.numbering == Numbering::every_tenth ? 10 : 1;
    }

    Type numeral_type(const plan::Kerf& kerf) const {
        return {numeral_face_of(kerf.n), strip_.numbering == Numbering::one_row_large ? style().title : style().strong,
                Align::centre};
    }

    /// Where the numerals of one row stand across the page: each at its tick, but inside the strip, and a neighbour of
    /// one that was moved there out of its way.
    std::vector<Length> one_row() const {
        std::vector<Length> middles, halves;
        for (std::size_t i = strip_.first_kerf; i < strip_.end_kerf; ++i) {
            const plan::Kerf& kerf =
                piece_.blank().kerfs[frame_.runs_right() ? i : strip_.first_kerf + strip_.end_kerf - 1 - i];
            middles.push_back(frame_.at(kerf.mark, {}).x);
            halves.push_back(pen_.width(std::to_string(kerf.n), numeral_type(kerf)) / 2);
        }
        constexpr Length apart = 1.5_pt;
        Length least = frame_.left();
        for (std::size_t i = 0; i < middles.size(); ++i) {
            middles[i] = std::max(middles[i], least + apart + halves[i]);
            least = middles[i] + halves[i];
        }
        Length most = frame_.right();
        for (std::size_t i = middles.size(); i-- > 0;) {
            middles[i] = std::min(middles[i], most - apart - halves[i]);
            most = middles[i] - halves[i];
        }
        if (!frame_.runs_right()) std::reverse(middles.begin(), middles.end());
        return middles;
    }

    std::optional<SetText> numeral(const plan::Kerf& kerf) const {
        const int step = number_step();
        if (kerf.n % step != 0) return std::nullopt;
        const std::string text = std::to_string(kerf.n);
        const Type type = numeral_type(kerf);
        Point where = inside(kerf.mark, numeral_base(kerf), text, type);
        if (!row_.empty()) where.x = row_[static_cast<std::size_t>(kerf.n - piece_.blank().kerfs[strip_.first_kerf].n)];
        // At the end of a strip a number may be nudged so far that the next has no room beside it: that one is enough.
        const Length nudge = measure::abs(where.x - frame_.at(kerf.mark, {}).x);
        if (step > 1 && nudge > 0_mm && nudge + pen_.width(text, type) + 1.5_pt > piece_.cut.least_spacing * step)
            return std::nullopt;
        return SetText{where, text, type};
    }

    std::optional<SetText> running(const plan::Kerf& kerf) const {
        const std::string text = running_text(context_, strip_, kerf);
        if (text.empty()) return std::nullopt;
        const Type type = running_type(style());
        return SetText{inside(kerf.mark, two_rows() ? lanes_.running_two_rows : lanes_.running, text, type), text,
                       type};
    }

    /// Where text centred on a mark stands, nudged so that it stays inside the strip; odd numbers of two rows only
    /// just, for there the next kerf's line is near.
    Point inside(Length mark, Length up, const std::string& text, const Type& type) const {
        const bool shafts_near = two_rows() && up == lanes_.odd;
        const Length room = pen_.width(text, type) / 2 + (shafts_near ? 0.25_pt : 1.5_pt);
        Point where = frame_.at(mark, up);
        where.x = std::clamp(where.x, frame_.left() + room, frame_.right() - room);
        return where;
    }

    Pen& pen_;
    const StripContext& context_;
    const plan::Piece& piece_;
    const Lanes& lanes_;
    const Strip& strip_;
    const StripFrame& frame_;
    std::vector<Length> row_;  ///< of numerals, kerf by kerf, where every kerf has its number in one row
};

}  // namespace

void draw_marks(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame) {
    Marks marks(pen, context, strip, frame);
    for (std::size_t i = strip.first_kerf; i < strip.end_kerf; ++i) marks.draw(context.piece.blank().kerfs[i]);
}

std::vector<Rect> mark_areas(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame,
                             Length beside_tick) {
    std::vector<Rect> areas;
    if (!strip.has_kerfs()) return areas;
    const Marks marks(pen, context, strip, frame);
    for (std::size_t i = strip.first_kerf; i < strip.end_kerf; ++i)
        marks.add_areas(context.piece.blank().kerfs[i], beside_tick, areas);
    return areas;
}

Length measured_beside(const plan::Piece& piece) {
    return std::min((piece.cut.least_spacing - piece.cut.kerf) / 2, 12_pt);
}

void draw_edge_lines(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame) {
    const auto& style = pen.kit().style;
    const Lanes& lanes = context.lanes;
    pen.line(Role::outline, frame.at(strip.from, lanes.mark), frame.at(strip.to, lanes.mark), style.line, Dash::dashed);
    const Length from = std::max(strip.from, waste_until(context.piece));
    const Length to = std::min(strip.to, waste_from(context.piece));
    if (from < to) pen.line(Role::outline, frame.at(from, lanes.cut), frame.at(to, lanes.cut), style.heavy);
}

}  // namespace kerfpacket::sheets
