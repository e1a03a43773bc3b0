#include "sheets/templates/form_table.h"

#include <algorithm>
#include <cmath>

#include "sheets/drawings/small_drawing.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/furniture.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// "N/2" for "N/1".
std::string other_board(const plan::Piece& piece) { return piece.id.substr(0, piece.id.size() - 1) + "2"; }

constexpr Length column_gap = Length::points(24);
constexpr int columns = 2;

/// The rib made small, with chord, rise and stations.
class RibDrawing {
public:
    RibDrawing(Pen& pen, const plan::FormRib& rib, const Tape& tape, const Rect& space)
        : pen_(pen),
          rib_(rib),
          rise_(pen.kit().words("form.rise_length", {{"length", tape.with_unit(rib_rise(rib))}})),
          hollow_(rib_hollow(rib) > 1_mm
                      ? pen.kit().words("form.hollow_length", {{"length", tape.with_unit(rib_hollow(rib))}})
                      : std::string()),
          chord_(pen.kit().words("form.chord_length", {{"length", tape.with_unit(rib.curve.end().x)}})),
          bounds_(united(rib.curve.bounds(), {{}, {rib.curve.end().x, {}}})),
          small_(fitted(space)) {}

    /// Returns the height below which the page is free.
    Length draw() {
        stations();
        const auto& style = pen_.kit().style;
        pen_.stroke(Role::outline, small_.at(rib_.curve), style.heavy);
        pen_.line(Role::dimension, small_.at(Point{}), small_.at(rib_.curve.end()), style.line);
        runs();
        return dimensions();
    }

private:
    Type figures() const { return {Face::bold, pen_.kit().style.text}; }

    /// As large as the space allows, the rise's figure at the right.
    SmallDrawing fitted(const Rect& space) const {
        const Length beside = 24_pt + std::max(pen_.width(rise_, figures()), pen_.width(hollow_, figures()));
        const double scale = std::min((space.width() - beside) / bounds_.width(),
                                      (space.height() - 40_pt) / std::max(bounds_.height(), 1_mm));
        const Length left = space.low.x + (space.width() - beside - bounds_.width() * scale) / 2;
        return {bounds_.low, {left, space.high.y - 8_pt - bounds_.height() * scale}, scale};
    }

    void stations() {
        for (const Point top : rib_.ordinates)
            if (top.y != Length())
                pen_.line(Role::dimension, small_.at(Point{top.x, {}}), small_.at(top), pen_.kit().style.hair,
                          Dash::dashed);
    }

    /// What the kerfs do along each run of a board that bends both ways, on the rib's hollow side and its humps. The
    /// longest runs come first; one whose words would meet theirs is told by its side of the chord alone.
    void runs() {
        if (rib_.runs.size() < 2) return;
        std::vector<plan::BendRun> longest_first = rib_.runs;
        std::stable_sort(longest_first.begin(), longest_first.end(),
                         [](const auto& a, const auto& b) { return a.to - a.from > b.to - b.from; });
        const Type type{Face::bold, pen_.kit().style.small};
        std::vector<Rect> taken;
        for (const plan::BendRun& run : longest_first) {
            const auto [point, along] = run_path(rib_, run).at((run.to - run.from) / 2);
            const std::string words = run_words(run, pen_.kit());
            const Length half = pen_.width(words, type) / 2 + 4_pt;
            // Above the edge there is the board, below it the rib.
            Point at = small_.at(point) + Point{{}, opens(run) ? -13_pt : 6_pt};
            at.x = std::clamp(at.x, side_margin + half, pen_.page_width() - side_margin - half);
            const Rect room{at - Point{half, 4_pt}, at + Point{half, type.size}};
            const bool met = std::any_of(taken.begin(), taken.end(), [&](const Rect& other) {
                return room.low.x < other.high.x && other.low.x < room.high.x && room.low.y < other.high.y &&
                       other.low.y < room.high.y;
            });
            if (met) continue;
            taken.push_back(room);
            pen_.text_on_white(Role::text, at, words, type.centred());
        }
    }

    /// The chord under the rib, the rise at its right.
    Length dimensions() {
        const auto& kit = pen_.kit();
        const Type type = figures();
        const Rect drawn{small_.at(bounds_.low), small_.at(bounds_.high)};
        const Length level = drawn.low.y - 16_pt;
        const Point left{small_.at(Point{}).x, level};
        const Point right{small_.at(rib_.curve.end()).x, level};
        for (const Point p : {left, right})
            pen_.line(Role::dimension, {p.x, level - 5_pt}, {p.x, small_.at(Point{}).y - 3_pt}, kit.style.hair);
        const bool fits = pen_.width(chord_, type) + 20_pt < right.x - left.x;
        pen_.dimension(left, right, fits ? chord_ : std::string(), type);
        if (!fits) pen_.text(Role::dimension, {(left.x + right.x) / 2, level - 16_pt}, chord_, type.centred());
        rise(drawn);
        return fits ? level - 8_pt : level - 20_pt;
    }

    void rise(const Rect& drawn) {
        const Length x = drawn.high.x + 14_pt;
        const Length foot = small_.at(Point{}).y;
        if (rib_rise(rib_) > 1_mm) {
            pen_.dimension({x, foot}, {x, drawn.high.y}, {}, figures());
            pen_.text(Role::dimension, {x + 8_pt, (foot + drawn.high.y) / 2 - 4_pt}, rise_, figures());
        }
        if (hollow_.empty()) return;
        pen_.dimension({x, drawn.low.y}, {x, foot}, {}, figures());
        pen_.text(Role::dimension, {x + 8_pt, (foot + drawn.low.y) / 2 - 4_pt}, hollow_, figures());
    }

    Pen& pen_;
    const plan::FormRib& rib_;
    std::string rise_;
    std::string hollow_;  ///< empty where the rib is nowhere below its chord
    std::string chord_;
    Rect bounds_;
    SmallDrawing small_;
};

Length row_height(const fonts::Style& style) { return style.text * 1.36; }
Length head_height(const fonts::Style& style) { return style.small * 1.4; }

class FormTable {
public:
    FormTable(Flow& flow, const plan::Piece& piece, const Tape& tape)
        : flow_(flow), piece_(piece), rib_(*piece.form), tape_(tape) {}

    void draw() {
        for (const std::string& sentence : sentences())
            flow_.paragraph(Role::text, sentence, {Face::regular, style().text});
        flow_.paragraph(Role::caution, words("form.caution"), {Face::bold, style().text});
        flow_.picture(flow_.page_room() * 0.28, [&](Pen& pen, const Rect& room) {
            const Scope figure = pen.figure(words("figure.rib", {{"piece", piece_.id},
                                                                 {"chord", tape_.with_unit(rib_.curve.end().x)},
                                                                 {"rise", tape_.with_unit(rib_rise(rib_))}}));
            return RibDrawing(pen, rib_, tape_, room).draw();
        });
        trammels();
        ordinates();
    }

private:
    const fonts::Style& style() const { return flow_.style(); }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return flow_.kit().words(key, values);
    }

    std::vector<std::string> sentences() const {
        const bool both = piece_.blank().bends_both_ways();
        std::vector<std::string> all{both ? words("form.at_both", {{"side", kerf_side(piece_, flow_.kit())}})
                                          : words(rib_.at_kerf_face ? "form.at_kerf_face" : "form.at_seen_face")};
        all.push_back(words(piece_.blank().zero == job::End::left ? "form.zero_left" : "form.zero_right"));
        if (both) all.push_back(words("form.reverse"));
        if (rib_.springs_back > 0)
            all.push_back(words("form.caution_sprung", {{"lost", tape_.number(rib_.springs_back * 100, 0)}}));
        all.push_back(words("form.solid"));
        if (rib_.ribs > 0)
            all.push_back(words("form.sawn", {{"n", std::to_string(rib_.ribs)},
                                              {"length", tape_.plain(rib_.stock.x)},
                                              {"width", tape_.with_unit(rib_.stock.y)},
                                              {"below", tape_.with_unit(rib_.below)}}));
        if (piece_.one_of_twins()) all.push_back(words("form.turned_over", {{"other", other_board(piece_)}}));
        return all;
    }

    void trammels() {
        if (!rib_.trammels.empty()) return pour(flow_, form_trammels(rib_, flow_.kit(), tape_));
        flow_.heading(words("form.trammel"));
        flow_.paragraph(Role::text, words(rib_.arcs_alone ? "form.trammel_too_long" : "form.trammel_none"),
                        {Face::regular, style().text});
    }

    /// In columns down and across, over as many pages as it takes.
    void ordinates() {
        const Length width = (flow_.width() - column_gap * (columns - 1)) / columns;
        for (std::size_t next = 0; next < rib_.ordinates.size();) {
            flow_.heading(words(rib_hollow(rib_) > 0.1_mm ? "form.ordinates_hollow" : "form.ordinates"),
                          words(inch() ? "form.units_in" : "form.units_mm"));
            if (flow_.room() < head_height(style()) + row_height(style()) * 3) flow_.next_page();
            const auto fits =
                static_cast<std::size_t>(std::floor((flow_.room() - head_height(style())) / row_height(style())));
            // A short table stands in even columns.
            const std::size_t rows = std::min(fits, (rib_.ordinates.size() - next + columns - 1) / columns);
            const Rect block = flow_.take(head_height(style()) + row_height(style()) * static_cast<double>(rows));
            Pen pen = flow_.pen();
            for (int column = 0; column < columns && next < rib_.ordinates.size(); ++column) {
                const Length x = block.low.x + (width + column_gap) * static_cast<double>(column);
                Length base = block.high.y - style().small;
                const Scope part = pen.within(Tag::table);
                heads(pen, x, width, base);
                base = block.high.y - head_height(style()) + style().text * 0.36;
                for (std::size_t i = 0; i < rows && next < rib_.ordinates.size(); ++i, ++next) {
                    base -= row_height(style());
                    row(pen, x, width, base, rib_.ordinates[next]);
                }
            }
            if (next < rib_.ordinates.size()) flow_.next_page();
        }
    }

    bool inch() const { return tape_.unit() == measure::Unit::inch; }

    void heads(Pen& pen, Length x, Length width, Length base) {
        const Scope line = pen.within(Tag::row);
        const Type type = Type{Face::regular, style().small}.at_right();
        double from = 0;
        const auto head = [&](double at, const char* key) {
            const Scope cell = pen.within(Tag::header_cell);
            pen.text(Role::text, {x + width * at, base}, words(key),
                     pen.fitting(words(key), type, width * (at - from) - 4_pt));
            from = at;
        };
        head(station_at, "form.station");
        head(height_at, "form.height");
        head(exact_at, "form.exact");
        head(1, inch() ? "form.mm" : "form.in");
    }

    void row(Pen& pen, Length x, Length width, Length base, Point ordinate) {
        const std::string exact = inch() ? tape_.number(ordinate.y.inches(), 3) : tape_.number(ordinate.y.mm(), 1);
        const Scope line = pen.within(Tag::row);
        double from = 0;
        const auto cell = [&](Tag tag, double at, const std::string& text, const Type& type) {
            const Scope part = pen.within(tag);
            const Type fitted = pen.fitting(text, type, width * (at - from) - 4_pt);
            pen.text(Role::dimension, {x + width * at, base}, text, fitted.at_right());
            from = at;
        };
        cell(Tag::row_header, station_at, tape_.plain(ordinate.x), {Face::regular, style().text});
        cell(Tag::cell, height_at, tape_.plain(ordinate.y), {Face::bold, style().text});
        cell(Tag::cell, exact_at, exact, {Face::regular, style().small});
        cell(Tag::cell, 1, tape_.other(ordinate.y), {Face::regular, style().small});
        pen.line(Role::box, {x, base - 4_pt}, {x + width, base - 4_pt}, style().hair);
    }

    // Right edges of the table's figures, as parts of a column's width.
    static constexpr double station_at = 0.27;
    static constexpr double height_at = 0.56;
    static constexpr double exact_at = 0.79;

    Flow& flow_;
    const plan::Piece& piece_;
    const plan::FormRib& rib_;
    const Tape& tape_;
};

}  // namespace

void add_form_table(Drafts& drafts, const TemplateContext& context, const plan::Piece& piece) {
    const Kit& kit = context.kit;
    const auto new_page = [&](bool first) {
        Draft draft = piece_page(context.plan, kit, piece.id, context.titles.sheet, "form", first);
        draft.subtitle = board_text(piece, kit, context.tape);
        return draft;
    };
    Flow flow(drafts, kit, new_page, {72_pt, 50_pt});
    FormTable(flow, piece, context.tape).draw();
}

}  // namespace kerfpacket::sheets
