#include "sheets/evidence/survey_sheet.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sheets/evidence/survey_answers.h"
#include "sheets/evidence/survey_drawing.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/pen.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length lowest = 46_pt;
constexpr Length row_height = 12.5_pt;
constexpr Length head_height = 28_pt;  ///< of the table: its words and a rule
constexpr Length group_gap = 22_pt;
constexpr Length narrowest_group = 240_pt;

class Survey {
public:
    Survey(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit)
        : drafts_(drafts),
          plan_(plan),
          piece_(piece),
          survey_(*piece.survey),
          answers_(answers(survey_)),
          kit_(kit),
          tape_(plan.header.units, kit.words) {}

    void draw() {
        start_page();
        drafts_.back().outline = words("survey.outline", {{"piece", measured_id(piece_)}});
        {
            Pen pen = this->pen();
            y_ = draw_survey(pen, {{side_margin, y_ - 190_pt}, {right(), y_}}, piece_, tape_);
        }
        answer_table();
        why();
        stations();
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit_.words(key, values);
    }
    Pen pen() { return {drafts_.back().page, kit_}; }
    Length right() { return drafts_.back().page.width - side_margin; }
    const fonts::Style& style() const { return kit_.style; }
    Type small(bool strong = false) const { return {strong ? Face::bold : Face::regular, style().small}; }

    void start_page() {
        Draft draft = new_draft(plan_, "survey", Orientation::portrait);
        draft.page.piece = piece_.id;
        draft.tag = measured_id(piece_);
        draft.title = words("survey.title");
        const bool wall = piece_.measured_to == job::Surface::wall;
        draft.subtitle = words(wall ? "survey.subtitle_wall" : "survey.subtitle_finish",
                               {{"count", std::to_string(survey_.points.size())}});
        drafts_.push_back(std::move(draft));
        y_ = drafts_.back().page.height - 70_pt;
    }

    struct Column {
        const char* key;
        double at;
        Align align;
    };
    static constexpr std::array<Column, 6> answer_columns{{{"survey.column_curve", 0, Align::left},
                                                           {"survey.column_figures", 0.12, Align::left},
                                                           {"survey.column_worst", 0.71, Align::right},
                                                           {"survey.column_at", 0.815, Align::right},
                                                           {"survey.column_rms", 0.885, Align::right},
                                                           {"", 0.9, Align::left}}};

    void cells(const std::array<std::string, 6>& texts, bool strong, Tag tag = Tag::cell) {
        Pen pen = this->pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        for (std::size_t i = 0; i < texts.size(); ++i) {
            const Column& column = answer_columns.at(i);
            const Scope cell = pen.within(i == 0 && tag == Tag::cell ? Tag::row_header : tag);
            Type type = small(strong);
            type.align = column.align;
            const Length x = side_margin + (right() - side_margin) * column.at;
            // The figures of a curve may be many, the last column is narrow.
            const Length width = right() - side_margin;
            constexpr double figures = 0.48;  // of the width
            const double before = i == 2 ? answer_columns[1].at + figures : answer_columns.at(i == 0 ? 0 : i - 1).at;
            const Length room = i == 0   ? width * answer_columns[1].at - 6_pt
                                : i == 1 ? width * figures
                                : i == 5 ? right() - x
                                         : width * (column.at - before) - 4_pt;
            pen.text(Role::text, {x, y_}, texts.at(i), pen.fitting(texts.at(i), type, room));
        }
    }

    void rule(Length width) {
        Pen pen = this->pen();
        pen.line(Role::box, {side_margin, y_}, {right(), y_}, width);
    }

    void answer_table() {
        {
            Pen pen = this->pen();
            y_ -= 16_pt;
            section(pen, side_margin, right(), y_, words("survey.answers"),
                    words(tape_.unit() == Unit::inch ? "survey.misses_inch" : "survey.misses_mm"));
        }
        y_ -= 20_pt;
        std::array<std::string, 6> heads;
        for (std::size_t i = 0; i + 1 < heads.size(); ++i) heads.at(i) = words(answer_columns.at(i).key);
        cells(heads, false, Tag::header_cell);
        y_ -= 5_pt;
        rule(style().line);
        for (const Answer& answer : answers_) {
            y_ -= 14_pt;
            const bool used = answer.fit == survey_.used;
            const bool recommended = answer.fit == survey_.recommended;
            const std::string marks = used && recommended ? words("survey.used_recommended")
                                      : used              ? words("survey.used")
                                      : recommended       ? words("survey.only_recommended")
                                                          : std::string();
            const std::size_t worst = answer.misses->worst_point();
            cells({fit_name(answer.fit, kit_), answer_text(piece_, answer.fit, kit_, tape_),
                   miss_text(answer.misses->at.at(worst), tape_), tape_.exact_plain(reading(piece_, worst).station),
                   rms_text(answer, tape_), marks},
                  used);
            y_ -= 5_pt;
            rule(style().hair);
        }
        for (const job::Fit fit : unanswered(survey_)) {
            y_ -= 14_pt;
            cells({fit_name(fit, kit_), words("survey.none"), "", "", "", ""}, false);
            y_ -= 5_pt;
            rule(style().hair);
        }
    }

    void why() {
        Pen pen = this->pen();
        y_ = pen.paragraph(Role::text, {side_margin, y_ - 16_pt},
                           recommendation(piece_, kit_, tape_) + " " + left_out_text(piece_, kit_, tape_),
                           {Face::regular, style().text}, right() - side_margin, 14_pt);
        const std::string suspect = suspect_text(piece_, kit_, tape_);
        if (suspect.empty()) return;
        const Length top = y_ - 8_pt;
        y_ = pen.paragraph(Role::caution, {side_margin + 10_pt, top - 15_pt}, suspect, {Face::bold, style().text},
                           right() - side_margin - 20_pt, 14_pt) -
             8_pt;
        pen.box(Role::caution, {{side_margin, y_}, {right(), top}}, style().heavy);
    }

    /// Groups of columns side by side; the table runs down one, then the next, then on to the next page.
    void stations() {
        const auto live = right() - side_margin;
        const auto groups = std::max<std::size_t>(
            1, static_cast<std::size_t>(std::floor((live + group_gap) / (narrowest_group + group_gap))));
        const auto count = static_cast<double>(groups);
        const Length width = (live - group_gap * (count - 1)) / count;
        const std::size_t points = survey_.points.size();
        for (std::size_t first = 0; first < points;) {
            if (first > 0 || y_ - 30_pt - head_height - row_height * 4 < lowest) start_page();
            table_heading();
            const auto fits = static_cast<std::size_t>(std::floor((y_ - head_height - lowest) / row_height));
            const std::size_t rows = std::min(fits, (points - first + groups - 1) / groups);
            for (std::size_t group = 0; group < groups && first < points; ++group) {
                const std::size_t end = std::min(first + rows, points);
                rows_of(first, end, side_margin + (width + group_gap) * static_cast<double>(group), width);
                first = end;
            }
        }
    }

    void table_heading() {
        Pen pen = this->pen();
        y_ -= 22_pt;
        section(pen, side_margin, right(), y_, words("survey.stations"),
                words(piece_.kind == plan::Kind::arch_liner ? "survey.signs_arch" : "survey.signs_wall"));
    }

    /// Right edges of the columns: number, station, height, misses, and the fair curve's without the point.
    using Edges = std::array<Length, 7>;
    static Edges edges(Length left, Length width) {
        const std::array<double, 7> parts{0.06, 0.24, 0.42, 0.57, 0.715, 0.86, 1};
        Edges at;
        for (std::size_t i = 0; i < parts.size(); ++i) at.at(i) = left + width * parts.at(i);
        return at;
    }

    void rows_of(std::size_t first, std::size_t end, Length left, Length width) {
        Pen pen = this->pen();
        const Edges edge = edges(left, width);
        Length base = y_ - 20_pt;
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
        }
        pen.line(Role::box, {left, base - 4.5_pt}, {left + width, base - 4.5_pt}, style().line);
        base -= 3.5_pt;
        for (std::size_t i = first; i < end; ++i) {
            base -= row_height;
            row(pen, i, base, left, width);
        }
    }

    std::string head_of(job::Fit fit) const {
        return fit == job::Fit::fair ? words("survey.head_fair") : fit_name(fit, kit_);
    }

    void row(Pen& pen, std::size_t i, Length base, Length left, Length width) {
        const Edges edge = edges(left, width);
        const bool suspect = survey_.suspect && survey_.suspect->point == i;
        const Type type = small(suspect).at_right();
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
                pen.fitting(text, small(worst || suspect).at_right(), edge.at(a + 3) - edge.at(a + 2) - 5_pt);
            pen.text(Role::running, {edge.at(a + 3), base}, text, miss);
            if (!worst) continue;
            const Length from = edge.at(a + 3) - pen.width(text, miss) - 1.5_pt;
            pen.box(Role::box, {{from, base - 2_pt}, {edge.at(a + 3) + 1.5_pt, base + 8.3_pt}}, style().line);
        }
        {
            const Scope cell = pen.within(Tag::cell);
            const bool end = i == 0 || i + 1 == survey_.points.size();
            const std::string text = end ? std::string() : miss_text(survey_.fair.left_out.at.at(i), tape_);
            const std::size_t column = answers_.size() + 3;
            pen.text(Role::running, {edge.at(column), base}, text,
                     pen.fitting(text, small(suspect).at_right(), edge.at(column) - edge.at(column - 1) - 5_pt));
        }
        if (suspect)
            pen.box(Role::caution, {{left, base - 3.2_pt}, {left + width + 3_pt, base + 9.2_pt}}, style().heavy);
        else pen.line(Role::box, {left, base - 3.2_pt}, {left + width, base - 3.2_pt}, style().hair);
    }

    Drafts& drafts_;
    const plan::Plan& plan_;
    const plan::Piece& piece_;
    const curve::Survey& survey_;
    std::vector<Answer> answers_;
    const Kit& kit_;
    Tape tape_;
    Length y_;  ///< how far the page is filled, from the bottom edge
};

}  // namespace

void add_survey(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (piece.survey && piece.board == 1) Survey(drafts, plan, piece, kit).draw();
}

}  // namespace kerfpacket::sheets
