#include "sheets/cards/setup.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>
#include <utility>

#include "bend/limit.h"
#include "bend/saw.h"
#include "sheets/cards/setup_askew.h"
#include "sheets/cards/setup_blocks.h"
#include "sheets/cards/setup_drawing.h"
#include "sheets/cards/setup_errors.h"
#include "sheets/cards/setup_section.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/large_figures.h"
#include "sheets/layout/one_page.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

class Card {
public:
    Card(Flow& flow, const plan::Plan& plan, const plan::Piece& piece, const Tape& tape, bool errors)
        : flow_(flow), plan_(plan), piece_(piece), tape_(tape), errors_(errors) {}

    void draw() {
        figures();
        if (piece_.rake) askew_views();
        if (piece_.splay) blocks_view();
        if (piece_.cut.moulded()) moulded_views();
        else if (!piece_.rake && !piece_.splay) flat_views();
        steps();
        if (!piece_.saw.rear_limit) trial_table();
        if (errors_) pour(flow_, small_errors(piece_, flow_.kit(), tape_));
        too_deep();
        shop_rules();
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return flow_.kit().words(key, values);
    }
    const fonts::Style& style() const { return flow_.style(); }

    std::string spacer_text() const {
        if (!piece_.saw.spacer) return words("setup.by_trial");
        return *piece_.saw.spacer > Length() ? tape_.exact(*piece_.saw.spacer) : words("setup.none");
    }

    /// A drawing of this height, from the upper edge of its room down.
    template <class Draw>
    void view(Length height, const Draw& draw) {
        const Rect room = flow_.take(height);
        Pen pen = flow_.pen();
        draw(pen, room.high.y);
    }

    void flat_views() {
        flow_.heading(words("setup.end_view"), words("setup.hold_against"));
        view(end_view_height(piece_, style()),
             [&](Pen& pen, Length top) { draw_end_view(pen, plan_, piece_, tape_, top); });
        flow_.heading(words("setup.edge_view"), words("setup.must_match"));
        view(edge_view_height(piece_, style()), [&](Pen& pen, Length top) { draw_edge_view(pen, piece_, tape_, top); });
    }

    /// The board at the fence with the blade askew, which way its handle swings; and along the cut.
    void askew_views() {
        flow_.heading(words("setup.from_above"), words("setup.from_above_aside"));
        view(askew_plan_height(piece_, style()),
             [&](Pen& pen, Length top) { draw_askew_plan(pen, plan_, piece_, top); });
        flow_.heading(words("setup.along_cut", {{"angle", degrees_text(piece_.rake->kerf(), flow_.kit())}}),
                      words("setup.along_cut_aside"));
        view(along_cut_height(piece_, style()), [&](Pen& pen, Length top) { draw_along_cut(pen, piece_, tape_, top); });
    }

    /// The flat blank of a splayed liner at the fence, and which kerfs bear on both blocks.
    void blocks_view() {
        flow_.heading(words("setup.round_edge"), words("setup.round_edge_aside"));
        view(blocks_plan_height(piece_, style()),
             [&](Pen& pen, Length top) { draw_blocks_plan(pen, piece_, tape_, top); });
        flow_.paragraph(Role::text, bearing_text(piece_, flow_.kit()), {Face::regular, style().small});
        flow_.heading(words("setup.edge_view"), words("setup.must_match"));
        view(edge_view_height(piece_, style()), [&](Pen& pen, Length top) { draw_edge_view(pen, piece_, tape_, top); });
    }

    /// What is set and proven besides, where kerfs stand askew.
    void askew_steps() {
        const plan::Rake& rake = *piece_.rake;
        const fonts::Words::Values angle{{"angle", degrees_text(rake.kerf(), flow_.kit())},
                                         {"side", words(rake.to_the_right ? "setup.right" : "setup.left")}};
        step(words("setup.askew_locked", angle), false);
        const bool inch = tape_.unit() == measure::Unit::inch;
        const Length along = inch ? 12_in : 300_mm;
        step(words("setup.askew_proved",
                   {{"along", tape_.exact(along)}, {"sideways", tape_.plain(along * std::sin(rake.kerf().radians()))}}),
             true);
        remark(words("setup.askew_pivot"), false);
    }

    /// The section of a moulded board, as far as the job file tells it, and which part of it bears the bend.
    void moulded_views() {
        if (piece_.cut.profile_told) {
            flow_.heading(words("setup.section"), words("setup.section_aside"));
            view(section_height(piece_, style()), [&](Pen& pen, Length top) { draw_section(pen, piece_, tape_, top); });
            pour(flow_, across_table(piece_, flow_.kit(), tape_));
        }
        flow_.heading(words("setup.bears"),
                      words("setup.bears_aside", {{"spacing", spacing_text(piece_, flow_.kit(), tape_)}}));
        view(bears_height(piece_, style()), [&](Pen& pen, Length top) { draw_bears(pen, piece_, tape_, top); });
        const Type small{Face::regular, style().small};
        flow_.paragraph(Role::text,
                        words(thinnest_governs(piece_) ? "setup.bears_thin_note" : "setup.bears_thick_note"), small);
        if (!piece_.cut.profile_told) flow_.paragraph(Role::caution, words("setup.profile_untold"), small);
    }

    /// What the saw is set to, side by side.
    void figures() {
        const std::pair spacer{words("setup.spacer"), spacer_text()};
        const std::pair depth{words("setup.depth"), tape_.exact(piece_.cut.depth)};
        const LargeFigures flat{{depth,
                                 {words("setup.web"), tape_.exact(piece_.cut.web())},
                                 {words("setup.kerf"), tape_.exact(piece_.cut.kerf)},
                                 spacer}};
        const LargeFigures moulded{{depth,
                                    {words("setup.figure_thinnest"), tape_.exact(piece_.cut.thinnest_web())},
                                    {words("setup.figure_thickest"), tape_.exact(piece_.cut.web())},
                                    spacer}};
        pour(flow_, piece_.cut.moulded() ? moulded : flat);
        sides();
        verdict();
    }

    /// On which side the kerfs are, what a tick marks, which blade.
    void sides() {
        const std::string blade =
            words(piece_.cut.moulded() ? "setup.blade_kerf" : "setup.blade",
                  {{"diameter", tape_.exact(plan_.saw.blade_diameter.value)}, {"kerf", tape_.exact(piece_.cut.kerf)}});
        const std::array texts{kerf_side(piece_, flow_.kit()), tick_meaning(piece_, flow_.kit()), blade};
        flow_.skip(style().small * 0.7);
        const Rect room = flow_.take(leading(style().text));
        Pen pen = flow_.pen();
        const std::string all = texts[0] + texts[1] + texts[2];
        // A board that bends both ways has more to say of its kerfs.
        const Type usual{piece_.blank().bends_both_ways() ? Face::condensed_bold : Face::bold, style().text};
        const Type type = pen.fitting(all, usual, room.width() - 16_pt * 2);
        const Length gap = std::clamp((room.width() - pen.width(all, type)) / 2, 4_pt, 16_pt);
        Length x = room.low.x;
        for (const std::string& text : texts)
            x += pen.text(Role::caution, {x, first_base(room, style().text)}, text, type) + gap;
    }

    /// Where zero is, and what the bend is judged to be; beside each other where they fit.
    void verdict() {
        const std::string verdict = bend_verdict(piece_, flow_.kit());
        const std::string zero = zero_end(piece_, flow_.kit());
        const Type small{Face::regular, style().small};
        const Type bold{Face::bold, style().small};
        const Length width = flow_.pen().width(verdict, bold) + 8_pt;
        const Type narrow = flow_.pen().fitting(zero, small, flow_.width() - width);
        const bool beside = flow_.pen().width(zero, narrow) <= flow_.width() - width;
        const Rect room = flow_.take(leading(style().small) * (beside ? 1 : 2));
        Pen pen = flow_.pen();
        const Length base = first_base(room, style().small);
        const Type alone = pen.fitting(zero, small, room.width());
        pen.text(Role::text, {room.low.x, base}, zero, beside ? narrow : alone);
        pen.text(Role::caution, {room.high.x, beside ? base : base - leading(style().small)}, verdict, bold.at_right());
    }

    /// One thing to do, with a blank to write what was measured where one is wanted.
    void step(const std::string& text, bool blank) {
        std::optional<Blank> beside;
        if (blank) beside = Blank{"", 64_pt, tape_.unit_name()};
        flow_.item(Role::text, text, {Face::regular, style().text}, beside);
    }

    /// Said of the step above it.
    void remark(const std::string& text, bool strong) {
        flow_.listed(strong ? Role::caution : Role::text, {.box = false, .words = {}, .indent = style().text * 1.8},
                     text, {strong ? Face::bold : Face::regular, style().small});
    }

    /// What a shorter spacer costs; nothing where none is needed.
    std::string shorter_spacer() const {
        if (!piece_.saw.spacer || *piece_.saw.spacer <= 0_mm || !piece_.saw.spacer_shorter) return {};
        const bool inch = tape_.unit() == measure::Unit::inch;
        if (*piece_.saw.spacer_shorter <= 0_mm) return words(inch ? "setup.no_spacer_inch" : "setup.no_spacer_mm");
        return words(inch ? "setup.spacer_shorter_inch" : "setup.spacer_shorter_mm",
                     {{"spacer", tape_.with_unit(*piece_.saw.spacer_shorter)}});
    }

    void steps() {
        const std::string shorter = shorter_spacer();
        const bool short_travel = piece_.saw.width_reached && *piece_.saw.width_reached < piece_.width;
        flow_.heading(words("setup.order"), words("setup.tick_or_write"));
        const std::string depth = tape_.exact(piece_.cut.depth);
        flow_.item(Role::text, words("setup.manual"), {Face::regular, style().text}, Blank{words("setup.date"), 64_pt});
        step(piece_.saw.spacer && *piece_.saw.spacer > Length()
                 ? words("setup.unplugged_spacer", {{"depth", depth}, {"spacer", spacer_text()}})
                 : words("setup.unplugged", {{"depth", depth}}),
             false);
        if (!shorter.empty()) remark(shorter, false);
        if (piece_.rake) askew_steps();
        if (piece_.cut.moulded()) carried_level();
        const Length travel = piece_.saw.travel_needed.value_or(piece_.width);
        const std::string needed = piece_.rake || piece_.splay ? tape_.with_unit(travel) : tape_.exact(travel);
        step(plan_.saw.travel
                 ? words("setup.travel", {{"needed", needed}, {"travel", tape_.exact(plan_.saw.travel->value)}})
                 : words("setup.travel_unknown", {{"needed", needed}}),
             !plan_.saw.travel);
        if (short_travel)
            remark(words("setup.reached", {{"reached", tape_.with_unit(*piece_.saw.width_reached)},
                                           {"width", tape_.exact(piece_.width)}}),
                   true);
        step(piece_.rake ? words("setup.test_back_askew", {{"angle", degrees_text(piece_.rake->kerf(), flow_.kit())},
                                                           {"cut", tape_.with_unit(piece_.rake->cut())}})
                         : words(piece_.splay ? "setup.test_back_round" : "setup.test_back"),
             true);
        if (piece_.splay) step(words("setup.square_to_line", {{"width", tape_.exact(piece_.width)}}), true);
        step(words(tape_.unit() == measure::Unit::inch ? "setup.test_front_inch" : "setup.test_front_mm"), true);
        if (piece_.cut.moulded()) moulded_webs();
        else step(words("setup.web_thinnest"), true);
        step(words("setup.kerf_measured", {{"kerf", tape_.exact(piece_.cut.kerf)}}), true);
        flow_.item(Role::caution, words("setup.coupon", {{"sheet", words("coupon.title")}}),
                   {Face::regular, style().text}, Blank{words("setup.set_by"), 110_pt});
    }

    /// A moulded edge hangs over the table unless something carries it.
    void carried_level() {
        const plan::MouldedEdge edge = plan::moulded_edge(piece_.cut);
        const auto strip = [&](const bend::ProfilePoint& at) {
            return tape_.exact(piece_.cut.thickness - at.thickness);
        };
        const std::string bottom = strip(piece_.cut.profile.front());
        const std::string top = strip(piece_.cut.profile.back());
        switch (edge) {
            case plan::MouldedEdge::top: return step(words("setup.carried_top", {{"strip", top}}), false);
            case plan::MouldedEdge::bottom: return step(words("setup.carried_bottom", {{"strip", bottom}}), false);
            case plan::MouldedEdge::both:
                return step(words("setup.carried_both", {{"bottom", bottom}, {"top", top}}), false);
            case plan::MouldedEdge::untold: return step(words("setup.carried_untold"), false);
            case plan::MouldedEdge::none: break;
        }
    }

    void moulded_webs() {
        // The table across the board has a blank for each of its webs.
        if (piece_.cut.profile_told) step(words("setup.webs_measured"), false);
        else {
            step(words("setup.thin_web_measured", {{"web", tape_.exact(piece_.cut.thinnest_web())}}), true);
            step(words("setup.thick_web_measured", {{"web", tape_.exact(piece_.cut.web())}}), true);
        }
        // A web that is meant thinner is judged by what must stay of any.
        const Length least = piece_.cut.thinnest_web() < bend::thin_web ? bend::least_web : bend::thin_web;
        const Length read = read_on_rule();
        const Length told = std::min(read * std::ceil(least / read - 1e-9), piece_.cut.thinnest_web());
        remark(words("setup.light", {{"least", tape_.exact(told)}}), true);
    }

    /// What a rule reads: thirty-seconds, or half millimetres.
    Length read_on_rule() const { return tape_.unit() == measure::Unit::inch ? Length::inches(1.0 / 32) : 0.5_mm; }

    /// The spacer for each depth at which a trial groove may meet the fence.
    void trial_table() {
        constexpr int columns = 6;
        // As a rule reads them, but none twice.
        const Length read = read_on_rule();
        const Length apart = read * std::max(1.0, std::ceil(piece_.cut.depth / read / columns - 1e-9));
        FigureTable table;
        table.heading = words("setup.trial");
        table.aside = words(piece_.rake ? "setup.trial_aside_askew" : "setup.trial_aside");
        table.shares = {0.28};
        table.heads = {words("setup.trial_depth")};
        table.rows = {{words("setup.trial_spacer")}};
        for (int i = 0; i < columns && apart * i < piece_.cut.depth; ++i) {
            const Length at_fence = apart * i;
            const Length limit =
                bend::rear_limit_from_trial(plan_.saw.blade_diameter.value, piece_.cut.depth, at_fence);
            table.shares.push_back(0.72 / columns);
            table.heads.push_back(tape_.exact_plain(at_fence));
            table.rows.front().emplace_back(
                tape_.plain(bend::spacer(limit * (piece_.rake ? piece_.rake->cosine() : 1), tape_.unit())));
        }
        pour(flow_, table);
        flow_.paragraph(Role::text, words("setup.trial_enter"), {Face::regular, style().small});
    }

    void shop_rules() {
        flow_.heading(words("shop.heading"));
        for (const std::string& rule : flow_.kit().words.list("shop.setup_rules")) step(rule, false);
    }

    void too_deep() {
        pour(flow_, deep_kerf_table(piece_, flow_.kit(), tape_));
        flow_.skip(style().text * 0.4);
        for (const plan::DeepKerf& kerf : piece_.deep_kerfs)
            flow_.item(Role::caution, deep_kerf_text(kerf, flow_.kit(), tape_), {Face::bold, style().text});
    }

    Flow& flow_;
    const plan::Plan& plan_;
    const plan::Piece& piece_;
    const Tape& tape_;
    bool errors_;
};

Drafts made_card(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, bool errors) {
    const Tape tape(plan.header.units, kit.words);
    const auto new_page = [&](bool first) {
        Draft draft = piece_page(plan, kit, piece.id, "setup", "setup", first);
        draft.subtitle =
            kit.words("setup.subtitle", {{"what", piece_name(piece, kit)}, {"board", board_text(piece, kit, tape)}});
        draft.scale = Scale::full;
        return draft;
    };
    return on_one_page(kit, [&](Drafts& pages, const Kit& with, double white) {
        // The check bar stands at the foot.
        Flow flow(pages, with, new_page, {76_pt, 66_pt, white});
        Card(flow, plan, piece, tape, errors).draw();
    });
}

/// With what small errors do to the setting where that takes no page more.
struct Made {
    Drafts pages;
    bool errors;
};

Made made_card(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Drafts with = made_card(plan, piece, kit, true);
    if (with.size() == 1) return {std::move(with), true};
    Drafts without = made_card(plan, piece, kit, false);
    const bool errors = with.size() == without.size();
    return {std::move(errors ? with : without), errors};
}

}  // namespace

bool errors_on_setup_card(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    return made_card(plan, piece, kit).errors;
}

void add_setup_card(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Drafts made = made_card(plan, piece, kit).pages;
    std::move(made.begin(), made.end(), std::back_inserter(drafts));
}

}  // namespace kerfpacket::sheets
