#include "sheets/strips/strips.h"

#include <cmath>
#include <optional>

#include "sheets/layout/furniture.h"
#include "sheets/strips/strip_drawing.h"
#include "sheets/strips/strip_layout.h"
#include "sheets/strips/strip_roll.h"
#include "sheets/strips/strip_statement.h"

namespace kerfpacket::sheets {
namespace {

/// Room left of the strips for the upright check bar.
constexpr Length strips_left = 54_pt;
/// Where a long caption may begin: the bar ends there.
constexpr Length captions_left = 34_pt;
/// From the top edge to the top of the first strip, and the height at which the last may end.
constexpr Length first_strip_top = 103_pt;
constexpr Length last_strip_bottom = 66_pt;
/// A strip with its caption, at least.
constexpr Length caption_room = 15_pt;
/// A sheet is turned upright only where its strips stay this long: shorter ones are mostly joints.
constexpr Length shortest_upright = 9_in;

/// How strips stand on the sheets of a piece.
struct SheetLayout {
    Orientation orientation = Orientation::landscape;
    Length page_width;
    Length page_height;
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

SheetLayout laid_out(const Paper& paper, Orientation orientation, Length height) {
    SheetLayout layout;
    layout.orientation = orientation;
    const bool upright = orientation == Orientation::portrait;
    layout.page_width = upright ? paper.width : paper.height;
    layout.page_height = upright ? paper.height : paper.width;
    const Length space = layout.page_height - first_strip_top - last_strip_bottom - height;
    const int gaps = std::max(0, static_cast<int>(std::floor(space / (height + caption_room))));
    layout.rows = gaps + 1;
    if (gaps > 0) layout.pitch = std::min(space / gaps, height + 20.5_pt);
    return layout;
}

/// The fewest pages, then the fewest strips. Where that is the same sheets lie, and strips are at most a whole number
/// of inches long.
SheetLayout best_layout(const plan::Piece& piece, const Paper& paper, Length height, const Tape& tape, const Kit& kit) {
    const auto cost = [](const SheetLayout& layout) { return std::pair(layout.pages(), layout.strips.size()); };
    std::optional<SheetLayout> best;
    for (const Orientation orientation : {Orientation::landscape, Orientation::portrait}) {
        SheetLayout layout = laid_out(paper, orientation, height);
        const Length room = room_for_strips(layout.page_width, kit);
        if (orientation == Orientation::portrait && room < shortest_upright) continue;
        for (const Length longest : {Length::inches(std::floor(room.inches() + 1e-9)), room}) {
            layout.strips = cut_strips(piece, longest, tape, kit);
            if (!best || cost(layout) < cost(*best)) best = layout;
        }
    }
    return *best;
}

}  // namespace

void add_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Paper paper = paper_for(plan, Use::strips);
    if (paper.roll) return add_roll_strips(drafts, plan, piece, kit);
    const Tape tape(plan.header.units, kit.words);
    const Lanes lanes = piece.strip == job::StripOn::edge ? edge_lanes(piece) : face_lanes(kit.style.strip_height);
    const SheetLayout layout = best_layout(piece, paper, lanes.height, tape, kit);
    const Length right = layout.page_width - side_margin;
    const StripContext context{.plan = plan,
                               .piece = piece,
                               .tape = tape,
                               .strips = static_cast<int>(layout.strips.size()),
                               .lap = kit.style.strip_lap,
                               .lanes = lanes,
                               .caption = CaptionRoom{captions_left, right}};
    for (std::size_t i = 0; i < layout.strips.size(); ++i) {
        const int row = static_cast<int>(i) % layout.rows;
        if (row == 0) {
            drafts.push_back(new_draft(plan, "strips", layout.orientation, Use::strips));
            name_strip_page(drafts.back(), plan, piece, kit);
            Pen pen(drafts.back().page, kit);
            draw_statement(pen, plan, piece);
            if (i == 0) drafts.back().outline = kit.words("strip.outline", {{"piece", piece.id}});
        }
        count_strip(drafts.back(), piece, layout.strips[i]);
        Pen pen(drafts.back().page, kit);
        const Length base = layout.page_height - first_strip_top - lanes.height - layout.pitch * row;
        draw_strip(pen, context, layout.strips[i], {piece.blank().zero == job::End::left ? strips_left : right, base});
    }
}

}  // namespace kerfpacket::sheets
