#include "sheets/evidence/strain_sheet.h"

#include <algorithm>
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
constexpr Length least_drawing = 150_pt;

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
          tape_(plan.header.units, kit_.words) {
        if (!errors_on_setup_card(plan, piece, kit_)) errors_ = small_errors(piece, kit_, tape_);
    }

    void draw() {
        chance();
        const std::vector<std::string> sentences = strain_reading(piece_, kit_, tape_);
        const Length each = drawing_height(sentences);
        flow_.heading(kit_.words("strain.plot"));
        // What stands round its frame takes more of the plot's height than of the chart's.
        const Length more = each < 190_pt ? 16_pt : 0_pt;
        draw_chart(flow_.take(each + more), draw_strain_plot);
        flow_.heading(
            kit_.words("strain.chart"),
            kit_.words("strain.chart_aside", {{"board", board_text(piece_, kit_, tape_)},
                                              {"kerf", tape_.exact(piece_.cut.kerf)},
                                              {"side", kit_.words(outside() ? "strain.outside" : "strain.inside")}}));
        draw_chart(flow_.take(each - more), draw_limit_chart);
        if (errors_) pour(flow_, *errors_);
        flow_.heading(kit_.words("strain.reading"));
        for (const std::string& sentence : sentences) flow_.paragraph(Role::text, sentence, text());
    }

private:
    Type text() const { return {Face::regular, kit_.style.text}; }

    void draw_chart(const Rect& room, void (*chart)(Pen&, const Rect&, const plan::Piece&, const Tape&)) {
        const Kit kit{kit_.faces, kit_.words, chart_style_, kit_.second_words};
        Pen pen(drafts_.back().page, kit);
        chart(pen, room, piece_, tape_);
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
        const Length beside = pen.width(sentence, title) + pen.width(state, text()) + title.size * 2.4;
        if (beside <= box.width())
            pen.text(Role::caution, {box.high.x - title.size * 0.8, first_base(box, title.size) - title.size * 0.4},
                     state, text().at_right());
        else flow_.paragraph(Role::caution, state, text());
        flow_.paragraph(Role::text, counted_sentence(piece_, kit_), text());
    }

    /// The two drawings share what the table and the words leave.
    Length drawing_height(const std::vector<std::string>& sentences) {
        const Length all = flow_.room();
        const Length heading = kit_.style.strong * 0.7 + kit_.style.strong + 10_pt;
        Length words = heading;
        if (errors_) words += height_of(*errors_, kit_.style) + kit_.style.strong * 1.7 + kit_.style.text * 0.4;
        for (const std::string& sentence : sentences)
            words += flow_.pen().paragraph_height(sentence, text(), flow_.width(), leading(text().size)) +
                     leading(text().size) + text().size * 0.5;
        const Length beside_words = (all - heading * 2 - words) / 2;
        return beside_words >= least_drawing ? beside_words : (all - heading * 2) / 2;
    }

    Flow& flow_;
    Drafts& drafts_;
    const plan::Piece& piece_;
    const Kit& kit_;
    fonts::Style chart_style_;
    Tape tape_;
    std::optional<FigureTable> errors_;  ///< what small errors do, where the set-up card has no room for it
};

Draft strain_draft(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, bool first) {
    Draft draft = new_draft(plan, "strain", Orientation::portrait);
    const Tape tape(plan.header.units, kit.words);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.title = kit.words("strain.title");
    draft.subtitle = kit.words("strain.subtitle", {{"what", piece_name(piece, kit)},
                                                   {"kerfs", std::to_string(piece.blank().kerfs.size())},
                                                   {"depth", tape.exact(piece.cut.depth)}});
    draft.outline = first ? kit.words("strain.outline", {{"piece", piece.id}}) : std::string();
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
