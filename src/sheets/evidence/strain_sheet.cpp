#include "sheets/evidence/strain_sheet.h"

#include "sheets/cards/coupon_words.h"
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

constexpr Length lowest = 50_pt;
constexpr Length heading_height = 31_pt;  ///< from what stands above a heading to its rule
constexpr Length leading = 14_pt;
constexpr Length between_sentences = 3_pt;

class StrainSheet {
public:
    StrainSheet(Draft& draft, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit)
        : pen_(draft.page, kit),
          piece_(piece),
          kit_(kit),
          tape_(plan.header.units, kit.words),
          sentences_(strain_reading(piece, kit, tape_)),
          right_(draft.page.width - side_margin),
          y_(draft.page.height - 68_pt) {}

    void draw() {
        chance();
        // The two drawings share what the words leave.
        const Length each = (y_ - lowest - reading_height() - heading_height * 2) / 2;
        heading("strain.plot");
        draw_strain_plot(pen_, take(each), piece_, tape_);
        heading("strain.chart", kit_.words("strain.chart_aside",
                                           {{"board", board_text(piece_, kit_, tape_)},
                                            {"kerf", tape_.exact(piece_.cut.kerf)},
                                            {"side", kit_.words(outside() ? "strain.outside" : "strain.inside")}}));
        draw_limit_chart(pen_, take(each), piece_, tape_);
        reading();
    }

private:
    Type text() const { return {Face::regular, kit_.style.text}; }
    Length width() const { return right_ - side_margin; }

    /// The side that governs, where the board bends both ways.
    bool outside() const {
        return (piece_.blank().bends_both_ways() ? governing_kerf(piece_).on : piece_.kerfs_on) ==
               bend::KerfsOn::outside;
    }

    void heading(const char* key, const std::string& aside = {}) {
        y_ -= heading_height;
        section(pen_, side_margin, right_, y_ + 6.5_pt, kit_.words(key), aside);
    }

    /// The sentence first, in a box, with what it rests on; under it what was counted.
    void chance() {
        const Rect frame{{side_margin, y_ - 34_pt}, {right_, y_}};
        pen_.box(Role::caution, frame, kit_.style.heavy);
        const std::string aside = coupon_state(piece_, kit_);
        pen_.text(Role::caution, {right_ - 10_pt, frame.low.y + 12_pt}, aside, text().at_right());
        const std::string sentence = chance_sentence(piece_, kit_);
        pen_.text(Role::caution, {side_margin + 12_pt, frame.low.y + 11_pt}, sentence,
                  pen_.fitting(sentence, {Face::bold, kit_.style.title}, width() - pen_.width(aside, text()) - 40_pt));
        y_ = frame.low.y - leading;
        const std::string counted = counted_sentence(piece_, kit_);
        pen_.text(Role::text, {side_margin, y_}, counted, pen_.fitting(counted, text(), width()));
    }

    Rect take(Length height) {
        y_ -= height;
        return {{side_margin, y_}, {right_, y_ + height}};
    }

    Length reading_height() const {
        Length height = heading_height;
        for (const std::string& sentence : sentences_)
            height += leading + between_sentences + pen_.paragraph_height(sentence, text(), width(), leading);
        return height;
    }

    void reading() {
        heading("strain.reading");
        for (const std::string& sentence : sentences_)
            y_ = pen_.paragraph(Role::text, {side_margin, y_ - leading}, sentence, text(), width(), leading) -
                 between_sentences;
    }

    Pen pen_;
    const plan::Piece& piece_;
    const Kit& kit_;
    Tape tape_;
    std::vector<std::string> sentences_;
    Length right_;
    Length y_;  ///< how far the page is filled, from the bottom edge
};

Draft strain_draft(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Draft draft = new_draft(plan, "strain", Orientation::portrait);
    const Tape tape(plan.header.units, kit.words);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.title = kit.words("strain.title");
    draft.subtitle = kit.words("strain.subtitle", {{"what", piece_name(piece, kit)},
                                                   {"kerfs", std::to_string(piece.blank().kerfs.size())},
                                                   {"depth", tape.exact(piece.cut.depth)}});
    return draft;
}

/// Every coupon and trial, on a page of its own: what it measured and what it says against the table.
void add_counted(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Flow flow(drafts, kit, [&](bool /*first*/) { return strain_draft(plan, piece, kit); });
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
            table.row({kit.words("chance.one_kerf"), coupon.by, held_word(coupon.coupon.held),
                       tape.exact_plain(coupon.coupon.chord), tape.exact_plain(coupon.coupon.rise), "",
                       kit.words("chance.hinge", {{"hinge", tape.exact(coupon.hinge.value_or(Length()))}}), ""});
            continue;
        }
        table.row({kit.words(coupon.trial ? "chance.shop_trial" : "chance.coupon"),
                   coupon.trial ? coupon.date : coupon.by, held_word(coupon.coupon.held),
                   tape.exact_plain(coupon.coupon.chord), tape.exact_plain(coupon.coupon.rise),
                   tape.plain(bend::circle_radius(coupon.coupon)),
                   kit.words(coupon.counts ? "chance.strain" : "chance.not_counted",
                             {{"strain", strain_percent(coupon.strain, kit)}}),
                   number(coupon.times_table, 2, kit.words)});
    }
    flow.paragraph(Role::text, counted_sentence(piece, kit) + " " + chance_sentence(piece, kit),
                   {Face::bold, kit.style.text});
    flow.paragraph(Role::text, kit.words("chance.words_mean"), {Face::regular, kit.style.text});
}

}  // namespace

void add_strain_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Draft draft = strain_draft(plan, piece, kit);
    draft.outline = kit.words("strain.outline", {{"piece", piece.id}});
    StrainSheet(draft, plan, piece, kit).draw();
    drafts.push_back(std::move(draft));
    if (!piece.tried.empty()) add_counted(drafts, plan, piece, kit);
}

}  // namespace kerfpacket::sheets
