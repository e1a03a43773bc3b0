#include "sheets/strips.h"

#include <array>
#include <cmath>

#include "sheets/furniture.h"
#include "sheets/strip_face.h"
#include "sheets/strip_layout.h"
#include "sheets/wording.h"

namespace kerfpacket::sheets {
namespace {

/// Room left of the strips for the upright check bar.
constexpr Length strips_left = 54_pt;
/// From the top edge to the top of the first strip, and the height at which the last may end.
constexpr Length first_strip_top = 103_pt;
constexpr Length last_strip_bottom = 66_pt;
/// A strip with its caption, at least.
constexpr Length caption_room = 15_pt;

/// How many strips stand on a page, and the distance between them.
struct Rows {
    int count = 1;
    Length pitch;
};

Rows rows_on(Length page_height, const fonts::Style& style) {
    const Length space = page_height - first_strip_top - last_strip_bottom - style.strip_height;
    const int gaps = std::max(0, static_cast<int>(std::floor(space / (style.strip_height + caption_room))));
    return {gaps + 1, gaps > 0 ? std::min(space / gaps, style.strip_height + 20.5_pt) : 0_pt};
}

/// The statement under the header, with a drawn tick that shows what the blade covers.
void statement(Pen& pen, const plan::Piece& piece) {
    const auto& style = pen.kit().style;
    const Length base = pen.from_top(statement_line);
    const std::array<std::string, 3> texts{pen.kit().words("strip.stick"), kerf_side(piece, pen.kit()),
                                           tick_meaning(piece, pen.kit())};
    const std::string covers = pen.kit().words("strip.blade_covers");
    // A board that bends both ways has more to say of its kerfs.
    Type bold{Face::bold, style.text};
    const auto too_wide = [&] {
        Length used = pen.width(covers, {Face::condensed, bold.size}) + piece.kerf + 6_pt;
        for (const std::string& text : texts) used += pen.width(text, bold) + 16_pt;
        return used > pen.page_width() - side_margin * 2;
    };
    if (too_wide()) bold.face = Face::condensed_bold;
    if (too_wide()) bold.size = style.small;
    Length x = side_margin;
    for (const std::string& text : texts) x += pen.text(Role::caution, {x, base}, text, bold) + 16_pt;
    const Length half = piece.kerf / 2;
    const Length middle = x + half;
    const Length mark = piece.tick == job::Tick::centre ? middle
                        : piece.tick == job::Tick::left ? middle - half
                                                        : middle + half;
    pen.fill(Role::furniture, Path::rectangle({{middle - half, base - 2_pt}, {middle + half, base + 1_pt}}));
    pen.line(Role::furniture, {mark, base + 1_pt}, {mark, base + 10_pt}, style.line);
    x = middle + half + 6_pt;
    Type foot{Face::regular, bold.size};
    if (x + pen.width(covers, foot) > pen.page_width() - side_margin) foot.face = Face::condensed;
    pen.text(Role::text, {x, base}, covers, foot);
}

Draft strip_page(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units);
    Draft draft = new_draft(plan, "strips", Orientation::landscape, Use::strips);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.title = kit.words("strip.title");
    draft.subtitle = kit.words("strip.subtitle", {{"what", piece_name(piece, kit)},
                                                  {"spacing", spacing_text(piece, kit, tape)},
                                                  {"count", std::to_string(piece.kerfs.size())},
                                                  {"depth", tape.exact(piece.kerf_depth)}});
    draft.scale = Scale::full;
    Pen pen(draft.page, kit);
    statement(pen, piece);
    return draft;
}

}  // namespace

void add_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units);
    const Paper paper = paper_for(plan, Use::strips);
    const Length page_width = paper.height;
    const Length page_height = paper.width;
    const Length longest =
        Length::inches(std::floor((page_width - strips_left - kit.style.strip_lap - side_margin).inches() + 1e-9));
    const std::vector<Strip> strips = cut_strips(piece, longest, tape, kit);
    const StripContext context{plan, piece, tape, static_cast<int>(strips.size()), kit.style.strip_lap};
    const Rows rows = rows_on(page_height, kit.style);
    const Length start = piece.zero == job::End::left ? strips_left : page_width - side_margin;
    for (std::size_t i = 0; i < strips.size(); ++i) {
        const int row = static_cast<int>(i) % rows.count;
        if (row == 0) {
            drafts.push_back(strip_page(plan, piece, kit));
            if (i == 0) drafts.back().outline = kit.words("strip.outline", {{"piece", piece.id}});
        }
        Pen pen(drafts.back().page, kit);
        const Length base = page_height - first_strip_top - kit.style.strip_height - rows.pitch * row;
        draw_face_strip(pen, context, strips[i], {start, base});
    }
}

}  // namespace kerfpacket::sheets
