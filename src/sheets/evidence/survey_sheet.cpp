#include "sheets/evidence/survey_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sheets/evidence/survey_answers.h"
#include "sheets/evidence/survey_drawing.h"
#include "sheets/layout/flow.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length group_gap = 22_pt;
/// Where a blank to write on begins, of a roomy table's width.
constexpr double written_from = 0.82;
/// Of the table's width: the figures of a curve may be many, the last column is narrow.
constexpr double figures_share = 0.495;

Length close_row(const fonts::Style& style) { return style.small * 1.39; }
/// Of a table that leaves room: a hand writes beside each point what it measured again.
Length roomy_row(const fonts::Style& style) { return style.text * 1.7; }
/// Of the table of stations: its words and a rule.
Length head_height(const fonts::Style& style) { return style.small * 1.5 + 6_pt; }
/// Of a row of the table of answers: room for its words, and a rule.
Length answer_height(const fonts::Style& style) { return style.small * 1.55 + 5_pt; }
Length narrowest_group(const fonts::Style& style) { return style.small * 26; }

class Survey {
public:
    Survey(Flow& flow, const plan::Piece& piece, const Tape& tape)
        : flow_(flow), piece_(piece), survey_(*piece.survey), answers_(answers(survey_)), tape_(tape) {}

    void draw() {
        flow_.picture(240_pt, [&](Pen& pen, const Rect& room) { return draw_survey(pen, room, piece_, tape_); });
        answer_table();
        why();
        stations();
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return flow_.kit().words(key, values);
    }
    const Kit& kit() const { return flow_.kit(); }
    const fonts::Style& style() const { return flow_.style(); }
    Type small(bool strong = false) const { return {strong ? Face::bold : Face::regular, style().small}; }

    struct Column {
        const char* key;
        double at;
        Align align;
    };
    static constexpr std::array<Column, 6> answer_columns{{{"survey.column_curve", 0, Align::left},
                                                           {"survey.column_figures", 0.135, Align::left},
                                                           {"survey.column_worst", 0.71, Align::right},
                                                           {"survey.column_at", 0.805, Align::right},
                                                           {"survey.column_rms", 0.87, Align::right},
                                                           {"", 0.88, Align::left}}};

    void cells(const std::array<std::string, 6>& texts, bool strong, Tag tag = Tag::cell) {
        const Rect row = flow_.take(answer_height(style()));
        const Length base = row.low.y + 5_pt;
        Pen pen = flow_.pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        for (std::size_t i = 0; i < texts.size(); ++i) {
            const Column& column = answer_columns.at(i);
            const Scope cell = pen.within(i == 0 && tag == Tag::cell ? Tag::row_header : tag);
            Type type = small(strong);
            type.align = column.align;
            const Length x = row.low.x + row.width() * column.at;
            const double before =
                i == 2 ? answer_columns[1].at + figures_share : answer_columns.at(i == 0 ? 0 : i - 1).at;
            const Length room = i == 0   ? row.width() * answer_columns[1].at - 6_pt
                                : i == 1 ? row.width() * figures_share
                                : i == 5 ? row.high.x - x
                                         : row.width() * (column.at - before) - 4_pt;
            pen.text(Role::text, {x, base}, texts.at(i), pen.fitting(texts.at(i), type, room));
        }
        pen.line(Role::box, row.low, {row.high.x, row.low.y}, tag == Tag::cell ? style().hair : style().line);
    }

    void answer_table() {
        flow_.heading(words("survey.answers"),
                      words(tape_.unit() == Unit::inch ? "survey.misses_inch" : "survey.misses_mm"));
        std::array<std::string, 6> heads;
        for (std::size_t i = 0; i + 1 < heads.size(); ++i) heads.at(i) = words(answer_columns.at(i).key);
        cells(heads, false, Tag::header_cell);
        for (const Answer& answer : answers_) {
            const bool used = answer.fit == survey_.used;
            const bool recommended = answer.fit == survey_.recommended;
            const std::string marks = used && recommended ? words("survey.used_recommended")
                                      : used              ? words("survey.used")
                                      : recommended       ? words("survey.only_recommended")
                                                          : std::string();
            const std::size_t worst = answer.misses->worst_point();
            cells({fit_name(answer.fit, kit()), figures_of(answer.fit, used),
                   miss_text(answer.misses->at.at(worst), tape_), tape_.exact_plain(reading(piece_, worst).station),
                   rms_text(answer, tape_), marks},
                  used);
        }
        for (const job::Fit fit : unanswered(survey_))
            cells({fit_name(fit, kit()), words("survey.none"), "", "", "", ""}, false);
    }

    /// Where large figures leave a center no room, in the type that they are set in, without it.
    std::string figures_of(job::Fit fit, bool strong) {
        const Length room = flow_.width() * figures_share;
        const Pen pen = flow_.pen();
        std::string text = answer_text(piece_, fit, kit(), tape_);
        const bool fits = pen.width(text, pen.fitting(text, small(strong), room)) <= room;
        return fits ? text : brief_answer_text(piece_, fit, kit(), tape_);
    }

    void why() {
        flow_.skip(4_pt);
        flow_.paragraph(Role::text, recommendation(piece_, kit(), tape_) + " " + left_out_text(piece_, kit(), tape_),
                        {Face::regular, style().text});
        const std::string suspect = suspect_text(piece_, kit(), tape_);
        if (!suspect.empty()) flow_.boxed(Role::caution, suspect, {Face::bold, style().text}, style().heavy);
    }

    /// Groups of columns side by side; the table runs down one, then the next, then on to the next page.
    void stations() {
        const std::size_t points = survey_.points.size();
        roomy_ = flow_.room() - style().strong * 1.7 - 10_pt >=
                 head_height(style()) + roomy_row(style()) * static_cast<double>(points);
        const auto side_by_side =
            static_cast<std::size_t>(std::floor((flow_.width() + group_gap) / (narrowest_group(style()) + group_gap)));
        const std::size_t groups = roomy_ ? 1 : std::max<std::size_t>(1, side_by_side);
        const auto count = static_cast<double>(groups);
        const Length width = (flow_.width() - group_gap * (count - 1)) / count;
        for (std::size_t first = 0; first < points;) {
            if (first > 0) flow_.next_page();
            flow_.heading(words("survey.stations"),
                          words(piece_.kind == plan::Kind::arch_liner ? "survey.signs_arch" : "survey.signs_wall"));
            if (flow_.room() < head_height(style()) + row_height() * 4) flow_.next_page();
            const auto fits =
                static_cast<std::size_t>(std::floor((flow_.room() - head_height(style())) / row_height()));
            const std::size_t rows = std::min(fits, (points - first + groups - 1) / groups);
            const Rect block = flow_.take(head_height(style()) + row_height() * static_cast<double>(rows));
            for (std::size_t group = 0; group < groups && first < points; ++group) {
                const std::size_t end = std::min(first + rows, points);
                const Length left = block.low.x + (width + group_gap) * static_cast<double>(group);
                rows_of(first, end, {left, block.high.y}, width);
                first = end;
            }
        }
    }

    Length row_height() const { return roomy_ ? roomy_row(style()) : close_row(style()); }
    Type figure(bool strong) const {
        return {strong ? Face::bold : Face::regular, roomy_ ? style().text : style().small};
    }

    /// Right edges of the columns: number, station, height, misses, and the fair curve's without the point.
    using Edges = std::array<Length, 7>;
    Edges edges(Length left, Length width) const {
        const std::array<double, 7> close{0.06, 0.24, 0.42, 0.57, 0.715, 0.86, 1};
        const std::array<double, 7> roomy{0.04, 0.16, 0.29, 0.41, 0.53, 0.65, 0.77};
        const auto& parts = roomy_ ? roomy : close;
        Edges at;
        for (std::size_t i = 0; i < parts.size(); ++i) at.at(i) = left + width * parts.at(i);
        return at;
    }

    void rows_of(std::size_t first, std::size_t end, Point top, Length width) {
        const Length left = top.x;
        Pen pen = flow_.pen();
        const Edges edge = edges(left, width);
        Length base = top.y - head_height(style()) + 4.5_pt;
        const Type head = Type{Face::condensed, style().small}.at_right();
        const Scope table = pen.within(Tag::table);
        {
            const Scope line = pen.within(Tag::row);
            pen.empty_cells(1);  // over the numbers
            const auto named = [&](Length at, const std::string& name) {
                const Scope cell = pen.within(Tag::header_cell);
                pen.text(Role::text, {at, base}, name, pen.fitting(name, head, width * 0.145));
            };
            named(edge[1], words("survey.station"));
            named(edge[2], words("survey.height"));
            for (std::size_t i = 0; i < answers_.size(); ++i) named(edge.at(i + 3), head_of(answers_[i].fit));
            named(edge.at(answers_.size() + 3), words("survey.head_left_out"));
            if (roomy_) named(left + width, words("survey.again"));
        }
        pen.line(Role::box, {left, base - 4.5_pt}, {left + width, base - 4.5_pt}, style().line);
        base -= 1.3_pt;
        for (std::size_t i = first; i < end; ++i) {
            base -= row_height();
            row(pen, i, base, left, width);
        }
    }

    std::string head_of(job::Fit fit) const {
        return fit == job::Fit::fair ? words("survey.head_fair") : fit_name(fit, kit());
    }

    void row(Pen& pen, std::size_t i, Length base, Length left, Length width) {
        const Edges edge = edges(left, width);
        const bool suspect = survey_.suspect && survey_.suspect->point == i;
        const Type type = figure(suspect).at_right();
        const Reading read = reading(piece_, i);
        const Scope line = pen.within(Tag::row);
        {
            const Scope cell = pen.within(Tag::row_header);
            pen.text(Role::text, {edge[0], base}, std::to_string(i + 1),
                     Type{Face::condensed, style().tiny}.at_right());
        }
        const std::array<std::string, 2> texts{tape_.exact_plain(read.station), tape_.exact_plain(read.height)};
        for (std::size_t k = 0; k < texts.size(); ++k) {
            const Scope cell = pen.within(Tag::cell);
            pen.text(Role::running, {edge.at(k + 1), base}, texts.at(k),
                     pen.fitting(texts.at(k), type, edge.at(k + 1) - edge.at(k) - 4_pt));
        }
        for (std::size_t a = 0; a < answers_.size(); ++a) {
            const Scope cell = pen.within(Tag::cell);
            const bool worst = answers_[a].misses->worst_point() == i;
            const std::string text = miss_text(answers_[a].misses->at.at(i), tape_);
            const Type miss =
                pen.fitting(text, figure(worst || suspect).at_right(), edge.at(a + 3) - edge.at(a + 2) - 5_pt);
            pen.text(Role::running, {edge.at(a + 3), base}, text, miss);
            if (!worst || text == "0") continue;
            const Length from = edge.at(a + 3) - pen.width(text, miss) - 1.5_pt;
            pen.box(Role::box, {{from, base - 2_pt}, {edge.at(a + 3) + 1.5_pt, base + style().small * 0.92}},
                    style().line);
        }
        {
            const Scope cell = pen.within(Tag::cell);
            const bool end = i == 0 || i + 1 == survey_.points.size();
            const std::string text = end ? std::string() : miss_text(survey_.fair.left_out.at.at(i), tape_);
            const std::size_t column = answers_.size() + 3;
            pen.text(Role::running, {edge.at(column), base}, text,
                     pen.fitting(text, figure(suspect).at_right(), edge.at(column) - edge.at(column - 1) - 5_pt));
        }
        const Length rule = base - (roomy_ ? 5_pt : 3.2_pt);
        if (roomy_) pen.empty_cells(1);  // to write in
        if (roomy_) pen.line(Role::box, {left + width * written_from, rule}, {left + width, rule}, style().line);
        if (suspect)
            pen.box(Role::caution, {{left, rule}, {left + width + 3_pt, base + type.size * 1.02}}, style().heavy);
        else pen.line(Role::box, {left, rule}, {left + width, rule}, style().hair);
    }

    Flow& flow_;
    const plan::Piece& piece_;
    const curve::Survey& survey_;
    std::vector<Answer> answers_;
    const Tape& tape_;
    bool roomy_ = false;  ///< all points find room in rows to write in
};

}  // namespace

void add_survey(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (!piece.survey || piece.board != 1) return;
    const Tape tape(plan.header.units, kit.words);
    const auto new_page = [&](bool first) {
        Draft draft = new_draft(plan, "survey", Orientation::portrait);
        draft.page.piece = piece.id;
        draft.tag = measured_id(piece);
        draft.title = kit.words("survey.title");
        const bool wall = piece.measured_to == job::Surface::wall;
        draft.subtitle = kit.words(wall ? "survey.subtitle_wall" : "survey.subtitle_finish",
                                   {{"count", std::to_string(piece.survey->points.size())}});
        draft.outline = first ? kit.words("survey.outline", {{"piece", measured_id(piece)}}) : std::string();
        return draft;
    };
    Flow flow(drafts, kit, new_page, {70_pt, 46_pt});
    Survey(flow, piece, tape).draw();
}

}  // namespace kerfpacket::sheets
