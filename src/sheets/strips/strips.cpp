#include "sheets/strips/strips.h"

#include <cmath>
#include <functional>
#include <optional>
#include <utility>

#include "plan/strip_room.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/furniture.h"
#include "sheets/strips/strip_drawing.h"
#include "sheets/strips/strip_ends.h"
#include "sheets/strips/strip_lean.h"
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
/// Between the coupon's last strip and what is said beside it.
constexpr Length beside_strip = 16_pt;
/// A shop that asks for strips higher than that gets them, whatever paper it takes.
constexpr Length usual_height = 72_pt;
/// A sheet is turned upright only where its strips stay this long: shorter ones are mostly joints.
constexpr Length shortest_upright = 9_in;

/// Whose strips stand on the sheets, and how many sets of them: boards alike have one each.
struct Part {
    const plan::Piece* board;
    std::size_t sets = 1;
    bool coupon = false;
};

/// How strips stand on the sheets of a piece.
struct SheetLayout {
    Lanes lanes;
    Orientation orientation = Orientation::landscape;
    Length page_width;
    Length page_height;
    Length top;                              ///< of the first strip, from the page's top
    int rows = 1;                            ///< strips on a page
    Length pitch;                            ///< the distance between them
    std::vector<std::vector<Strip>> strips;  ///< of each part
    std::size_t in_all = 0;

    std::size_t pages() const { return (in_all + static_cast<std::size_t>(rows) - 1) / static_cast<std::size_t>(rows); }
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

/// The strips of a piece on cut sheets: of one board, of all that are alike, of its coupon, or of coupon and boards one
/// after the other; `new_page` begins a page of them.
class StripSheets {
public:
    using NewPage = std::function<Draft(Orientation orientation, bool first)>;

    /// `piece`: what a page says of its strips holds for all of the parts.
    StripSheets(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, Use use, std::vector<Part> parts)
        : plan_(plan),
          piece_(piece),
          kit_(kit),
          use_(use),
          parts_(std::move(parts)),
          tape_(plan.header.units, kit.words),
          layout_(best_layout()) {}

    std::size_t pages() const { return layout_.pages(); }
    /// Whether strips of several boards, or of board and coupon, follow each other on them.
    bool shared() const { return parts_.size() > 1 || parts_.front().sets > 1; }

    void add(Drafts& drafts, const NewPage& new_page) const {
        int place = 0;
        for (std::size_t part = 0; part < parts_.size(); ++part)
            for (std::size_t board = 1; board <= parts_[part].sets; ++board)
                for (const Strip& strip : layout_.strips[part]) {
                    if (place % layout_.rows == 0) {
                        drafts.push_back(new_page(layout_.orientation, place == 0));
                        Pen pen(drafts.back().page, kit_);
                        draw_statement(pen, plan_, piece_, use_);
                    }
                    add_strip(drafts.back(), parts_[part], board, strip, place % layout_.rows);
                    ++place;
                }
    }

    /// Words below the last strip of a coupon; returns how far down the page is filled.
    Length add_words(Drafts& drafts, const std::string& text) const {
        Pen pen(drafts.back().page, kit_);
        const Type type{Face::regular, kit_.style.text};
        const int last = (static_cast<int>(layout_.in_all) - 1) % layout_.rows;
        const Length end = pen.paragraph(Role::text, {strips_left, base_of(last) - 20_pt}, text, type,
                                         layout_.page_width - side_margin - strips_left, leading(type.size));
        return layout_.page_height - end + type.size;
    }

    /// Where there is room for words beside the last strip of the coupon that comes first.
    Rect beside_coupon() const {
        const std::vector<Strip>& strips = layout_.strips.front();
        const Length used = strips.back().to - strips.back().from + beside_strip;
        const bool from_left = piece_.blank().zero == job::End::left;
        const Length base = base_of(last_of_coupon() % layout_.rows);
        return {{strips_left + (from_left ? used : 0_pt), base},
                {layout_.page_width - side_margin - (from_left ? 0_pt : used), base + layout_.lanes.height}};
    }
    /// Of the pages, the one on which that is.
    std::size_t page_beside_coupon() const { return static_cast<std::size_t>(last_of_coupon() / layout_.rows); }

private:
    int last_of_coupon() const { return static_cast<int>(layout_.strips.front().size()) - 1; }

    Length base_of(int row) const {
        return layout_.page_height - layout_.top - layout_.lanes.height - layout_.pitch * row;
    }

    /// The fewest pages, then the fewest strips. Where that is the same strips are as high as they should be, sheets
    /// lie, and strips are at most a whole number of inches long.
    SheetLayout best_layout() const {
        const auto cost = [](const SheetLayout& layout) { return std::pair(layout.pages(), layout.in_all); };
        const Length below = shared() || !parts_.front().coupon ? 0_pt : coupon_words;
        const auto above = [&](Length width) { return statement_overflow(width, plan_, piece_, kit_, use_); };
        const Paper paper = paper_for(plan_, use_);
        std::optional<SheetLayout> best;
        for (const Lanes& lanes : heights(piece_, kit_))
            for (const Orientation orientation : {Orientation::landscape, Orientation::portrait}) {
                SheetLayout layout = laid_out(paper, orientation, lanes, below, above);
                const Length room = room_for_strips(layout.page_width, kit_) - StripLean::overhang(piece_, lanes);
                if (orientation == Orientation::portrait && room < shortest_upright) continue;
                for (const Length longest : {Length::inches(std::floor(room.inches() + 1e-9)), room}) {
                    cut(layout, longest);
                    if (!best || cost(layout) < cost(*best)) best = layout;
                }
            }
        return *best;
    }

    void cut(SheetLayout& layout, Length longest) const {
        layout.strips.clear();
        layout.in_all = 0;
        for (const Part& part : parts_) {
            layout.strips.push_back(cut_strips(*part.board, longest, tape_, kit_));
            layout.in_all += layout.strips.back().size() * part.sets;
        }
    }

    void add_strip(Draft& draft, const Part& part, std::size_t board, const Strip& strip, int row) const {
        if (!part.coupon) count_strip(draft, piece_, strip);
        else if (shared()) draft.also = "coupon";
        const StripContext context{
            .plan = plan_,
            .piece = *part.board,
            .tape = tape_,
            .strips = static_cast<int>(layout_.strips[static_cast<std::size_t>(&part - parts_.data())].size()),
            .lap = kit_.style.strip_lap,
            .lanes = layout_.lanes,
            .coupon = part.coupon,
            .whose = whose(part, board),
            .caption = CaptionRoom{captions_left, layout_.page_width - side_margin}};
        Pen pen(draft.page, kit_);
        const bool from_left = piece_.blank().zero == job::End::left;
        const Length overhang = StripLean::overhang(piece_, layout_.lanes);
        const bool to_the_left = StripLean::to_the_left(piece_);
        draw_strip(pen, context, strip,
                   {from_left ? strips_left + (to_the_left ? overhang : 0_pt)
                              : layout_.page_width - side_margin - (to_the_left ? 0_pt : overhang),
                    base_of(row)});
    }

    /// What its caption says of a strip beside others: the coupon's, or for which board.
    std::string whose(const Part& part, std::size_t board) const {
        if (!shared()) return {};
        if (part.coupon) return kit_.words("strip.whose_coupon");
        return part.sets == 1 ? std::string() : kit_.words("strip.whose_board", {{"n", std::to_string(board)}});
    }

    const plan::Plan& plan_;
    const plan::Piece& piece_;
    const Kit& kit_;
    Use use_;
    std::vector<Part> parts_;
    Tape tape_;
    SheetLayout layout_;
};

std::size_t sets_of(const plan::Plan& plan, const plan::Piece& piece) {
    return plan.packet.one_set ? 1 : static_cast<std::size_t>(piece.quantity);
}

/// Those of boards alike one after the other, where that takes fewer sheets than a set of sheets for each.
StripSheets sheets_of_boards(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    StripSheets one(plan, piece, kit, Use::strips, {{&piece}});
    const std::size_t sets = sets_of(plan, piece);
    if (sets == 1) return one;
    StripSheets all(plan, piece, kit, Use::strips, {{&piece, sets}});
    return all.pages() < one.pages() * sets ? all : one;
}

}  // namespace

bool coupon_with_strips(const plan::Plan& plan, const plan::Piece& piece, const plan::Piece& coupon, const Kit& kit) {
    if (piece.splay) return false;
    // What is said of the strips must hold for both, and what is printed for each board must not be printed of it.
    if (strip_statements(plan, piece, kit) != strip_statements(plan, coupon, kit)) return false;
    if (plan.packet.one_set && piece.quantity > 1) return false;
    if (paper_for(plan, Use::strips).roll) return roll_holds_coupon(plan, piece, coupon, kit);
    const std::size_t sets = sets_of(plan, piece);
    const StripSheets together(plan, piece, kit, Use::strips, {{&coupon, 1, true}, {&piece, sets}});
    const StripSheets own(plan, coupon, kit, Use::strips, {{&coupon, 1, true}});
    const StripSheets boards = sheets_of_boards(plan, piece, kit);
    const std::size_t apart = own.pages() + boards.pages() * (boards.shared() ? 1 : sets);
    if (together.pages() >= apart) return false;
    page::Page scratch;
    return coupon_use_type(Pen(scratch, kit), coupon_use(plan, coupon, kit), together.beside_coupon()).has_value();
}

void add_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit,
                const plan::Piece* coupon) {
    if (piece.splay) return;  // a round edge takes no strip: its marks are a template
    if (paper_for(plan, Use::strips).roll) return add_roll_strips(drafts, plan, piece, kit, coupon);
    const StripSheets sheets = coupon == nullptr ? sheets_of_boards(plan, piece, kit)
                                                 : StripSheets(plan, piece, kit, Use::strips,
                                                               {{coupon, 1, true}, {&piece, sets_of(plan, piece)}});
    sheets.add(drafts, [&](Orientation orientation, bool first) {
        Draft draft = new_draft(plan, "strips", orientation, Use::strips);
        name_strip_page(draft, plan, piece, kit);
        if (sheets.shared() && piece.quantity > 1) draft.boards = {1, piece.quantity, piece.quantity, 1};
        if (first) draft.outline = kit.words("strip.outline", {{"piece", piece.id}});
        return draft;
    });
    if (coupon == nullptr) return;
    Pen pen(drafts.at(drafts.size() - sheets.pages() + sheets.page_beside_coupon()).page, kit);
    draw_coupon_use(pen, coupon_use(plan, *coupon, kit), sheets.beside_coupon());
}

Length add_coupon_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const plan::Piece& coupon,
                         const Kit& kit) {
    const Use use = paper_for(plan, Use::strips).roll ? Use::cards : Use::strips;
    const Tape tape(plan.header.units, kit.words);
    const StripSheets sheets(plan, coupon, kit, use, {{&coupon, 1, true}});
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
    return sheets.add_words(drafts, coupon_use(plan, coupon, kit));
}

}  // namespace kerfpacket::sheets
