#include "sheets/cards/setup_section.h"

#include <algorithm>
#include <array>
#include <optional>

#include "sheets/layout/furniture.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length dimensions_above = 26_pt;

Length labels_below(const fonts::Style& style) { return style.text * 1.5 + style.small * 1.6 + 6_pt; }

/// A stretch of the board's height: all at its full thickness, or all that is less.
struct Run {
    Length from;
    Length to;
    bool full = false;
};

std::vector<Run> runs_of(const plan::Cutting& cut) {
    std::vector<Run> runs;
    for (std::size_t i = 1; i < cut.profile.size(); ++i) {
        const auto& a = cut.profile[i - 1];
        const auto& b = cut.profile[i];
        if (b.height <= a.height) continue;
        const bool full = a.thickness >= cut.thickness && b.thickness >= cut.thickness;
        if (!runs.empty() && runs.back().full == full) runs.back().to = b.height;
        else runs.push_back({a.height, b.height, full});
    }
    return runs;
}

/// Draws the section; a board that is wider than the page is drawn short by a part of its longest flat run.
class SectionDrawing {
public:
    SectionDrawing(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top)
        : pen_(pen),
          cut_(piece.cut),
          tape_(tape),
          left_(side_margin + 6_pt),
          back_(top - dimensions_above),
          groove_(back_ - cut_.depth),
          lowest_(back_ - cut_.thickness) {
        leave_out();
    }

    void draw() {
        hatch();
        outline();
        widths();
        names();
        webs();
        edges();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Length height() const { return cut_.profile.back().height; }
    bool broken() const { return gap_to_ > gap_from_; }

    /// What has no room on the page is left out of the longest run of full thickness, an inch from its ends; where none
    /// is so long, from the bottom edge.
    void leave_out() {
        const Length over = height() - (pen_.page_width() - side_margin - 6_pt - left_);
        if (over <= 0_mm) return;
        Run longest{};
        for (const Run& run : runs_of(cut_))
            if (run.full && run.to - run.from > longest.to - longest.from) longest = run;
        gap_from_ = longest.to - longest.from > over + 2_in ? (longest.from + longest.to - over) / 2 : 0_mm;
        gap_to_ = gap_from_ + over;
    }

    Length x(Length height) const { return left_ + height - (std::clamp(height, gap_from_, gap_to_) - gap_from_); }
    Point plain(const bend::ProfilePoint& point) const { return {x(point.height), back_ - point.thickness}; }

    void outline() {
        std::vector<Point> around{{x(0_mm), back_}};
        for (const bend::ProfilePoint& point : cut_.profile) around.push_back(plain(point));
        around.push_back({x(height()), back_});
        pen_.stroke(Role::outline, Path::polyline(around, true), style().heavy);
        pen_.line(Role::outline, {x(0_mm), groove_}, {x(height()), groove_}, style().heavy);
        if (!broken()) return;
        const Length at = x(gap_from_);
        pen_.fill(Role::outline,
                  Path::polyline({{at - 5_pt, lowest_ - 4_pt},
                                  {at + 3_pt, lowest_ - 4_pt},
                                  {at + 8_pt, back_ + 4_pt},
                                  {at, back_ + 4_pt}},
                                 true),
                  Ink::white);
        for (const Length shift : {-5_pt, 3_pt})
            pen_.line(Role::outline, {at + shift, lowest_ - 4_pt}, {at + shift + 5_pt, back_ + 4_pt}, style().line);
    }

    /// How deep the wood reaches at a place of the drawing.
    Length wood_at(Length along) const {
        for (std::size_t i = 1; i < cut_.profile.size(); ++i) {
            const Point a = plain(cut_.profile[i - 1]);
            const Point b = plain(cut_.profile[i]);
            if (along > b.x || b.x <= a.x) continue;
            return a.y + (b.y - a.y) * ((along - a.x) / (b.x - a.x));
        }
        return groove_;
    }

    /// Strokes rising to the right over the web, each as long as there is wood under it.
    void hatch() {
        constexpr Length gap = 9_pt;
        constexpr Length step = 0.2_mm;
        const Length deep = groove_ - lowest_;
        for (Length start = x(0_mm) - deep + gap; start < x(height()); start += gap) {
            std::optional<Point> from;
            for (Length up; up <= deep; up += step) {
                const Point here{start + up, lowest_ + up};
                const bool wood = here.x > x(0_mm) && here.x < x(height()) && here.y >= wood_at(here.x);
                if (wood && !from) from = here;
                if (from && (!wood || up + step > deep)) {
                    pen_.line(Role::hatch, *from, here, style().hair);
                    from.reset();
                }
            }
        }
    }

    /// Over the board: how much of its width is as thick as it is.
    void widths() {
        const Length y = back_ + 12_pt;
        const Type type{Face::regular, style().small};
        for (const Run& run : runs_of(cut_)) {
            const Length from = x(run.from);
            const Length to = x(run.to);
            for (const Length at : {from, to})
                pen_.line(Role::dimension, {at, back_ + 3_pt}, {at, y + 4_pt}, style().hair);
            const std::string figure = words(run.full ? "setup.section_flat" : "setup.section_moulded",
                                             {{"width", tape_.exact(run.to - run.from)}});
            const std::string shorter = tape_.exact_plain(run.to - run.from);
            const auto fits = [&](const std::string& text) { return pen_.width(text, type) + 16_pt < to - from; };
            pen_.dimension({from, y}, {to, y}, fits(figure) ? figure : fits(shorter) ? shorter : std::string(), type);
        }
    }

    void names() {
        const Length from = x(0_mm);
        const Length to = broken() && gap_from_ > 0_mm ? x(gap_from_) - 8_pt : x(height());
        const std::string kerf = words("setup.section_kerf", {{"depth", tape_.exact(cut_.depth)}});
        if (cut_.depth > style().small * 1.3)
            pen_.text(Role::text, {(from + to) / 2, (back_ + groove_) / 2 - style().small * 0.36}, kerf,
                      pen_.fitting(kerf, {Face::regular, style().small}, to - from - 12_pt).centred());
    }

    /// Within the first run of points that are this thick.
    Length place_of(Length thickness) const {
        const auto here = [&](const bend::ProfilePoint& point) { return point.thickness == thickness; };
        const auto first = std::find_if(cut_.profile.begin(), cut_.profile.end(), here);
        auto last = first;
        while (std::next(last) != cut_.profile.end() && here(*std::next(last))) ++last;
        // Off the middle, where a board that is drawn short is broken.
        const Length at = x(first->height) + (x(last->height) - x(first->height)) * 0.3;
        return std::clamp(at, x(0_mm) + 8_pt, x(height()) - 8_pt);
    }

    /// Dimensions of the web at its thickest and thinnest, their figures below the board, clear of each other.
    void webs() {
        const std::array thickness{cut_.thickness, cut_.thinnest()};
        const std::array at{place_of(thickness[0]), place_of(thickness[1])};
        const Type type{Face::bold, style().text};
        for (std::size_t i = 0; i < 2; ++i) {
            pen_.line(Role::dimension, {at.at(i), groove_}, {at.at(i), lowest_ - 6_pt}, style().hair);
            for (const Length y : {groove_, back_ - thickness.at(i)})
                pen_.line(Role::dimension, {at.at(i) - 3_pt, y - 3_pt}, {at.at(i) + 3_pt, y + 3_pt}, style().line);
            const std::string figure = words(i == 0 ? "setup.section_thickest" : "setup.section_thinnest",
                                             {{"web", tape_.exact(thickness.at(i) - cut_.depth)}});
            // The one further left keeps left of the middle between both.
            const Length between = (at[0] + at[1]) / 2;
            const bool on_left = at.at(i) < at.at(1 - i);
            const Length half = pen_.width(figure, type) / 2;
            const Length centre = on_left ? std::max(x(0_mm) + half, std::min(at.at(i), between - half - 4_pt))
                                          : std::min(x(height()) - half, std::max(at.at(i), between + half + 4_pt));
            pen_.text(Role::dimension, {centre, lowest_ - 6_pt - style().text}, figure, type.centred());
        }
    }

    /// Which edge is which: the board lies with its top edge toward the operator.
    void edges() {
        const plan::MouldedEdge moulded = plan::moulded_edge(cut_);
        const bool bottom = moulded == plan::MouldedEdge::bottom || moulded == plan::MouldedEdge::both;
        const bool top = moulded == plan::MouldedEdge::top || moulded == plan::MouldedEdge::both;
        const Length y = lowest_ - 6_pt - style().text - style().small * 1.7;
        const Length room = (x(height()) - x(0_mm)) / 2 - 4_pt;
        const auto say = [&](bool strong, const std::string& text, bool at_right) {
            const Type type =
                pen_.fitting(text, {strong ? Face::bold : Face::regular, style().small}, std::max(room, 120_pt));
            pen_.text(Role::text, {at_right ? x(height()) : x(0_mm), y}, text, at_right ? type.at_right() : type);
        };
        say(bottom, words(bottom ? "setup.section_fence_moulded" : "setup.section_fence"), false);
        say(top, words(top ? "setup.section_you_moulded" : "setup.section_you"), true);
    }

    Pen& pen_;
    const plan::Cutting& cut_;
    const Tape& tape_;
    Length left_;
    Length back_;
    Length groove_;
    Length lowest_;
    Length gap_from_{};  ///< what is left out of the drawing, as heights
    Length gap_to_{};
};

}  // namespace

Length section_height(const plan::Piece& piece, const fonts::Style& style) {
    return dimensions_above + piece.cut.thickness + labels_below(style);
}

void draw_section(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top) {
    const Scope figure =
        pen.figure(pen.kit().words("figure.section", {{"depth", tape.exact(piece.cut.depth)},
                                                      {"thinnest", tape.exact(piece.cut.thinnest_web())},
                                                      {"thickest", tape.exact(piece.cut.web())}}));
    SectionDrawing(pen, piece, tape, top).draw();
}

}  // namespace kerfpacket::sheets
