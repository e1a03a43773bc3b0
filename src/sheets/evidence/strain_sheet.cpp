#include "sheets/evidence/strain_sheet.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "sheets/cards/coupon_words.h"
#include "sheets/cards/setup.h"
#include "sheets/cards/setup_errors.h"
#include "sheets/evidence/chance_charts.h"
#include "sheets/evidence/limit_chart.h"
#include "sheets/evidence/strain_plot.h"
#include "sheets/evidence/strain_words.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/furniture.h"
#include "sheets/words/chance_words.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// A drawing that is lower tells nothing; where the words leave less, they go on to a further page.
constexpr Length least_drawing = 160_pt;
/// The chart's part of the width, where what is to be read stands beside it, and how low it may be there.
constexpr double part_of_chart = 0.57;
constexpr Length least_beside = 200_pt;
/// Words that take more of a page than that stand below the chart.
constexpr double most_beside = 0.42;
constexpr Length between_columns = 18_pt;

/// The words of a chart stand in its frame and beside it: there they find room up to these sizes.
fonts::Style in_charts(fonts::Style style) {
    style.small = std::min(style.small, 9.5_pt);
    style.text = std::min(style.text, 12_pt);
    style.strong = std::min(style.strong, 14.5_pt);
    return style;
}

class StrainSheet {
public:
    StrainSheet(Flow& flow, Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece)
        : flow_(flow),
          drafts_(drafts),
          piece_(piece),
          kit_(flow.kit()),
          chart_style_(in_charts(kit_.style)),
          tape_(plan.header.units, kit_.words),
          sentences_(strain_reading(piece, kit_, tape_)) {
        if (!errors_on_setup_card(plan, piece, kit_)) errors_ = small_errors(piece, kit_, tape_);
    }

    void draw() {
        chance();
        const Length beside = words_height((1 - part_of_chart) * flow_.width() - between_columns);
        const Length lower = std::max(beside, least_beside);
        if (lower > flow_.page_room() * most_beside) return stacked();
        Length rest = flow_.room() - heading_room() * 2 - lower;
        if (errors_) rest -= errors_room();
        plot(rest >= least_drawing ? rest : std::max(least_drawing, rest + errors_room()));
        chart_and_words(lower);
        if (errors_) pour(flow_, *errors_);
    }

private:
    Type text() const { return {Face::regular, kit_.style.text}; }

    Length heading_room() const { return kit_.style.strong * 1.7 + 10_pt; }
    Length errors_room() const {
        return errors_ ? height_of(*errors_, kit_.style) + heading_room() + kit_.style.text * 0.4 : Length();
    }
    Length words_height(Length width) {
        Length height;
        for (const std::string& sentence : sentences_)
            height += flow_.pen().paragraph_height(sentence, text(), width, leading(text().size)) +
                      leading(text().size) + text().size * 0.5;
        return height;
    }

    void plot(Length height) {
        flow_.heading(kit_.words("strain.plot"));
        draw_chart(flow_.take(height), draw_strain_plot);
    }

    void draw_chart(const Rect& room, void (*chart)(Pen&, const Rect&, const plan::Piece&, const Tape&)) {
        const Kit kit{kit_.faces, kit_.words, chart_style_, kit_.second_words};
        Pen pen(drafts_.back().page, kit);
        chart(pen, room, piece_, tape_);
    }

    std::string board() const {
        return kit_.words("strain.chart_aside", {{"board", board_text(piece_, kit_, tape_)},
                                                 {"kerf", tape_.exact(piece_.cut.kerf)},
                                                 {"side", kit_.words(outside() ? "strain.outside" : "strain.inside")}});
    }

    std::string chart_reading() const {
        const auto drawn = [](const plan::LimitCurve& curve) { return !curve.points.empty(); };
        const auto& curves = piece_.limit_curves;
        if (std::none_of(curves.begin(), curves.end(), drawn)) return {};
        const bool thin = std::any_of(curves.begin(), curves.end(), [&](const plan::LimitCurve& curve) {
            return drawn(curve) && leaves_thin_web(piece_, curve);
        });
        return kit_.words("strain.chart_reading") + (thin ? " " + kit_.words("strain.thin_note") : "");
    }

    /// The chart at the left, what is to be read at the right.
    void chart_and_words(Length height) {
        flow_.skip(kit_.style.strong * 0.7);
        const Length head = kit_.style.strong + 10_pt;
        const Rect room = flow_.take(height + head);
        const Length split = room.low.x + room.width() * part_of_chart;
        const Length base = room.high.y - head + 9_pt;
        Pen pen = flow_.pen();
        section(pen, room.low.x, split, base, kit_.words("strain.chart"), {});
        const Type small{Face::regular, kit_.style.small};
        Length below = room.high.y - head - kit_.style.small;
        pen.text(Role::text, {room.low.x, below}, board(), pen.fitting(board(), small, split - room.low.x));
        const Length step = kit_.style.small * 1.25;
        below = pen.paragraph(Role::text, {room.low.x, below - step}, chart_reading(), small, split - room.low.x, step);
        draw_chart({room.low, {split, below - 3_pt}}, draw_limit_chart);
        const Length left = split + between_columns;
        section(pen, left, room.high.x, base, kit_.words("strain.reading"), {});
        Length at = room.high.y - head - text().size * 0.95;
        for (const std::string& sentence : sentences_)
            at = pen.paragraph(Role::text, {left, at}, sentence, text(), room.high.x - left, leading(text().size)) -
                 leading(text().size) - text().size * 0.5;
    }

    /// Chart and words one below the other: large type asks for it.
    void stacked() {
        const Length words = words_height(flow_.width()) + heading_room() + (errors_ ? errors_room() : Length());
        const Length all = flow_.room() - heading_room() * 2 - kit_.style.small * 3;
        const Length beside_words = (all - words) / 2;
        const Length each = beside_words >= least_drawing ? beside_words : all / 2;
        plot(each);
        flow_.heading(kit_.words("strain.chart"), board());
        flow_.paragraph(Role::text, chart_reading(), {Face::regular, kit_.style.small});
        draw_chart(flow_.take(each), draw_limit_chart);
        if (errors_) pour(flow_, *errors_);
        flow_.heading(kit_.words("strain.reading"));
        for (const std::string& sentence : sentences_) flow_.paragraph(Role::text, sentence, text());
    }

    /// The side that governs, where the board bends both ways.
    bool outside() const {
        return (piece_.blank().bends_both_ways() ? governing_kerf(piece_).on : piece_.kerfs_on) ==
               bend::KerfsOn::outside;
    }

    /// The sentence first, in a box, with what it rests on; under it what was counted.
    void chance() {
        const Type title{Face::bold, kit_.style.title};
        const std::string sentence = chance_sentence(piece_, kit_);
        const std::string state = coupon_state(piece_, kit_);
        const Rect box = flow_.boxed(Role::caution, sentence, title, kit_.style.heavy);
        Pen pen = flow_.pen();
        // Behind the last line of the sentence, which holds what the lines before it leave: they are four fifths full.
        const Length white = title.size * 0.8;
        const Length inside = box.width() - white * 2;
        const auto before = static_cast<double>(std::lround((box.height() - white) / leading(title.size)) - 1);
        const Length room = inside * (1 + before * 0.8) - pen.width(sentence, title) - white;
        const Type type = pen.fitting(state, text(), room);
        const Length base = first_base(box, title.size) - white / 2 - leading(title.size) * before;
        if (pen.width(state, type) <= room) pen.text(Role::caution, {box.high.x - white, base}, state, type.at_right());
        else flow_.paragraph(Role::caution, state, text());
        flow_.paragraph(Role::text, counted_sentence(piece_, kit_), text());
    }

    Flow& flow_;
    Drafts& drafts_;
    const plan::Piece& piece_;
    const Kit& kit_;
    fonts::Style chart_style_;
    Tape tape_;
    std::vector<std::string> sentences_;
    std::optional<FigureTable> errors_;  ///< what small errors do, where the set-up card has no room for it
};

Draft strain_draft(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, bool first) {
    const Tape tape(plan.header.units, kit.words);
    Draft draft = piece_page(plan, kit, piece.id, "strain", "strain", first);
    draft.subtitle = kit.words("strain.subtitle", {{"what", piece_name(piece, kit)},
                                                   {"kerfs", std::to_string(piece.blank().kerfs.size())},
                                                   {"depth", tape.exact(piece.cut.depth)}});
    return draft;
}

constexpr Length charts_height = 270_pt;

/// Every coupon and trial, on a page of its own: what it measured and what it says against the table; below, what each
/// told, and what the next would.
void add_counted(Flow& flow, Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece) {
    const Kit& kit = flow.kit();
    flow.next_page();
    const Tape tape(plan.header.units, kit.words);
    const auto head = [&](const char* key) { return kit.words(key, {{"unit", tape.unit_name()}}); };
    flow.heading(kit.words("chance.table"), kit.words("chance.table_aside"));
    FlowTable table(flow, {{kit.words("chance.column_what"), 0.2},
                           {kit.words("chance.column_date"), 0.17},
                           {kit.words("chance.column_held"), 0.09},
                           {head("chance.column_chord"), 0.11},
                           {head("chance.column_rise"), 0.11},
                           {head("chance.column_radius"), 0.09},
                           {kit.words("chance.column_strain"), 0.13},
                           {kit.words("chance.column_part"), 0.1}});
    for (const plan::CouponResult& coupon : piece.tried) {
        if (coupon.coupon.held == bend::Held::one_kerf) {
            table.row({kit.words("chance.one_kerf"), coupon.by, held_word(coupon.coupon.held, kit),
                       tape.exact_plain(coupon.coupon.chord), tape.exact_plain(coupon.coupon.rise), "",
                       kit.words("chance.hinge", {{"hinge", tape.exact(coupon.hinge.value_or(Length()))}}), ""});
            continue;
        }
        table.row({kit.words(coupon.trial ? "chance.shop_trial" : "chance.coupon"),
                   coupon.trial ? coupon.date : coupon.by, held_word(coupon.coupon.held, kit),
                   tape.exact_plain(coupon.coupon.chord), tape.exact_plain(coupon.coupon.rise),
                   tape.plain(bend::circle_radius(coupon.coupon)),
                   kit.words(coupon.counts ? "chance.strain" : "chance.not_counted",
                             {{"strain", strain_percent(coupon.strain, kit)}}),
                   number(coupon.times_table, 2, kit.words)});
    }
    flow.paragraph(Role::text, counted_sentence(piece, kit) + " " + chance_sentence(piece, kit),
                   {Face::bold, kit.style.text});
    flow.paragraph(Role::text, kit.words("chance.words_mean"), {Face::regular, kit.style.text});
    if (!piece.chance.told.empty()) {
        const Rect room = flow.take(charts_height);
        const Kit in_chart{kit.faces, kit.words, in_charts(kit.style), kit.second_words};
        Pen pen(drafts.back().page, in_chart);
        draw_chance_charts(pen, room, piece);
    }
}

}  // namespace

void add_strain_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Flow flow(drafts, kit, [&](bool first) { return strain_draft(plan, piece, kit, first); }, {68_pt, 50_pt});
    StrainSheet(flow, drafts, plan, piece).draw();
    if (!piece.tried.empty()) add_counted(flow, drafts, plan, piece);
}

}  // namespace kerfpacket::sheets
