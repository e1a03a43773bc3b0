#include "sheets/strips/strips.h"

#include <cmath>
#include <functional>
#include <optional>

#include "plan/strip_room.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/furniture.h"
#include "sheets/strips/strip_drawing.h"
#include "sheets/strips/strip_ends.h"
#include "sheets/strips/strip_layout.h"
#include "sheets/strips/strip_roll.h"
#include "sheets/strips/strip_statement.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// Room left of the strips for the upright check bar.
constexpr Length strips_left = 54_pt;
/// Where a long caption may begin: the bar ends there.
constexpr Length captions_left = 34_pt;
/// From the top edge to the top of the first strip, and the height at which the last may end.
constexpr Length first_strip_top = 103_pt;
constexpr Length last_strip_bottom = 66_pt;
/// What is said below a coupon's strips.
constexpr Length coupon_words = 48_pt;
/// A strip with its caption, at least.
constexpr Length caption_room = 13.5_pt;
/// A shop that asks for strips higher than that gets them, whatever paper it takes.
constexpr Length usual_height = 72_pt;
/// A sheet is turned upright only where its strips stay this long: shorter ones are mostly joints.
constexpr Length shortest_upright = 9_in;

/// How strips stand on the sheets of a piece.
struct SheetLayout {
    Lanes lanes;
    Orientation orientation = Orientation::landscape;
    Length page_width;
    Length page_height;
    Length top;    ///< of the first strip, from the page's top
    int rows = 1;  ///< strips on a page
    Length pitch;  ///< the distance between them
    std::vector<Strip> strips;

    std::size_t pages() const {
        return (strips.size() + static_cast<std::size_t>(rows) - 1) / static_cast<std::size_t>(rows);
    }
};

/// How long a strip may be on a page this wide.
Length room_for_strips(Length page_width, const Kit& kit) {
    return page_width - strips_left - kit.style.strip_lap - side_margin;
}

/// `below`: kept free under the strips; `above`: tells how much further down they begin on a page that wide.
SheetLayout laid_out(const Paper& paper, Orientation orientation, const Lanes& lanes, Length below,
                     const std::function<Length(Length)>& above) {
    SheetLayout layout;
    const Length height = lanes.height;
    layout.lanes = lanes;
    layout.orientation = orientation;
    const bool upright = orientation == Orientation::portrait;
    layout.page_width = upright ? paper.width : paper.height;
    layout.page_height = upright ? paper.height : paper.width;
    layout.top = first_strip_top + above(layout.page_width);
    const Length space = layout.page_height - layout.top - last_strip_bottom - below - height;
    const int gaps = std::max(0, static_cast<int>(std::floor(space / (height + caption_room))));
    layout.rows = gaps + 1;
    if (gaps > 0) layout.pitch = std::min(space / gaps, height + 20.5_pt);
    return layout;
}

/// As high as they should be, then drawn together.
std::vector<Lanes> heights(const plan::Piece& piece, const Kit& kit) {
    if (piece.strip == job::StripOn::edge) return {edge_lanes(piece)};
    if (kit.style.strip_height > usual_height) return {face_lanes(kit.style.strip_height)};
    return {face_lanes(kit.style.strip_height), face_lanes(std::min(kit.style.strip_height, plan::least_face_strip))};
}

/// The fewest pages, then the fewest strips. Where that is the same strips are as high as they should be, sheets lie,
/// and strips are at most a whole number of inches long.
SheetLayout best_layout(const plan::Piece& piece, const Paper& paper, Length below,
                        const std::function<Length(Length)>& above, const Tape& tape, const Kit& kit) {
    const auto cost = [](const SheetLayout& layout) { return std::pair(layout.pages(), layout.strips.size()); };
    std::optional<SheetLayout> best;
    for (const Lanes& lanes : heights(piece, kit))
        for (const Orientation orientation : {Orientation::landscape, Orientation::portrait}) {
            SheetLayout layout = laid_out(paper, orientation, lanes, below, above);
            const Length room = room_for_strips(layout.page_width, kit) - StripLean::overhang(piece, lanes);
            if (orientation == Orientation::portrait && room < shortest_upright) continue;
            for (const Length longest : {Length::inches(std::floor(room.inches() + 1e-9)), room}) {
                layout.strips = cut_strips(piece, longest, tape, kit);
                if (!best || cost(layout) < cost(*best)) best = layout;
            }
        }
    return *best;
}

/// The strips of one board, or of a coupon, on cut sheets; `new_page` begins a page of them.
class StripSheets {
public:
    using NewPage = std::function<Draft(Orientation orientation, bool first)>;

    StripSheets(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, Use use, bool coupon)
        : plan_(plan),
          piece_(piece),
          kit_(kit),
          use_(use),
          tape_(plan.header.units, kit.words),
          layout_(best_layout(
              piece, paper_for(plan, use), coupon ? coupon_words : 0_pt,
              [&](Length width) { return statement_overflow(width, plan, piece, kit, use); }, tape_, kit)),
          context_{.plan = plan,
                   .piece = piece,
                   .tape = tape_,
                   .strips = static_cast<int>(layout_.strips.size()),
                   .lap = kit.style.strip_lap,
                   .lanes = layout_.lanes,
                   .coupon = coupon,
                   .caption = CaptionRoom{captions_left, layout_.page_width - side_margin}} {}

    void add(Drafts& drafts, const NewPage& new_page) {
        for (std::size_t i = 0; i < layout_.strips.size(); ++i) {
            const int row = static_cast<int>(i) % layout_.rows;
            if (row == 0) {
                drafts.push_back(new_page(layout_.orientation, i == 0));
                Pen pen(drafts.back().page, kit_);
                draw_statement(pen, plan_, piece_, use_);
            }
            if (!context_.coupon) count_strip(drafts.back(), piece_, layout_.strips[i]);
            Pen pen(drafts.back().page, kit_);
            const bool from_left = piece_.blank().zero == job::End::left;
            const Length overhang = StripLean::overhang(piece_, layout_.lanes);
            const bool to_the_left = StripLean::to_the_left(piece_);
            draw_strip(pen, context_, layout_.strips[i],
                       {from_left ? strips_left + (to_the_left ? overhang : 0_pt)
                                  : layout_.page_width - side_margin - (to_the_left ? 0_pt : overhang),
                        base_of(row)});
        }
    }

    /// Words below the last strip; returns how far down the page is filled.
    Length add_words(Drafts& drafts, const std::string& text) const {
        Pen pen(drafts.back().page, kit_);
        const Type type{Face::regular, kit_.style.text};
        const int last = (static_cast<int>(layout_.strips.size()) - 1) % layout_.rows;
        const Length end = pen.paragraph(Role::text, {strips_left, base_of(last) - 20_pt}, text, type,
                                         layout_.page_width - side_margin - strips_left, leading(type.size));
        return layout_.page_height - end + type.size;
    }

private:
    Length base_of(int row) const {
        return layout_.page_height - layout_.top - layout_.lanes.height - layout_.pitch * row;
    }

    const plan::Plan& plan_;
    const plan::Piece& piece_;
    const Kit& kit_;
    Use use_;
    Tape tape_;
    SheetLayout layout_;
    StripContext context_;
};

}  // namespace

void add_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (piece.splay) return;  // a round edge takes no strip: its marks are a template
    if (paper_for(plan, Use::strips).roll) return add_roll_strips(drafts, plan, piece, kit);
    StripSheets(plan, piece, kit, Use::strips, false).add(drafts, [&](Orientation orientation, bool first) {
        Draft draft = new_draft(plan, "strips", orientation, Use::strips);
        name_strip_page(draft, plan, piece, kit);
        if (first) draft.outline = kit.words("strip.outline", {{"piece", piece.id}});
        return draft;
    });
}

Length add_coupon_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const plan::Piece& coupon,
                         const Kit& kit) {
    const Use use = paper_for(plan, Use::strips).roll ? Use::cards : Use::strips;
    const Tape tape(plan.header.units, kit.words);
    StripSheets sheets(plan, coupon, kit, use, true);
    sheets.add(drafts, [&](Orientation orientation, bool /*first*/) {
        Draft draft = new_draft(plan, "coupon", orientation, use);
        draft.page.piece = piece.id;
        draft.tag = piece.id;
        draft.title = kit.words("coupon.strip_title");
        draft.subtitle = kit.words("coupon.strip_subtitle", {{"what", piece_name(piece, kit)},
                                                             {"spacing", tape.exact(coupon.cut.spacing)},
                                                             {"count", std::to_string(coupon.blank().kerfs.size())},
                                                             {"depth", tape.exact(coupon.cut.depth)}});
        draft.scale = Scale::full;
        return draft;
    });
    return sheets.add_words(drafts, kit.words("coupon.strip_use", {{"length", tape.exact(coupon.blank().length)}}));
}

}  // namespace kerfpacket::sheets
