#include "sheets/strip_statement.h"

#include <algorithm>

#include "sheets/furniture.h"
#include "sheets/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length between = 16_pt;
// Where there are two lines, the first is higher up.
constexpr Length raised = 3_pt;
constexpr Length leading = 11.5_pt;

std::string where_it_goes(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const bool edge = piece.strip == job::StripOn::edge;
    if (plan.printer.adhesive) return kit.words(edge ? "strip.peel_edge" : "strip.peel");
    return kit.words(edge ? "strip.stick_edge" : "strip.stick");
}

/// With a tick at a side of the blade: where the middle of the kerf is.
std::string tick_with_half(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    std::string meaning = tick_meaning(piece, kit);
    if (piece.tick == job::Tick::centre) return meaning;
    return kit.words(piece.tick == job::Tick::left ? "strip.half_left" : "strip.half_right",
                     {{"meaning", meaning}, {"half", Tape(plan.header.units, kit.words).exact(piece.kerf / 2)}});
}

/// A kerf from above: its foot, the tick where this job has it, and what that shows.
class Foot {
public:
    Foot(const Pen& pen, const plan::Piece& piece) : piece_(piece), words_(pen.kit().words("strip.blade_covers")) {}

    Length width(const Pen& pen, Length size) const {
        return piece_.kerf + 6_pt + pen.width(words_, {Face::condensed, size});
    }

    void draw(Pen& pen, Point left, Length size) const {
        const Length half = piece_.kerf / 2;
        const Length middle = left.x + half;
        const Length mark = piece_.tick == job::Tick::centre ? middle
                            : piece_.tick == job::Tick::left ? middle - half
                                                             : middle + half;
        pen.fill(Role::furniture, Path::rectangle({{middle - half, left.y - 2_pt}, {middle + half, left.y + 1_pt}}));
        pen.line(Role::furniture, {mark, left.y + 1_pt}, {mark, left.y + 10_pt}, pen.kit().style.line);
        const Length x = middle + half + 6_pt;
        Type type{Face::regular, size};
        if (x + pen.width(words_, type) > pen.page_width() - side_margin) type.face = Face::condensed;
        pen.text(Role::text, {x, left.y}, words_, type);
    }

private:
    const plan::Piece& piece_;
    std::string words_;
};

}  // namespace

std::vector<std::string> strip_statements(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    std::vector<std::string> texts{where_it_goes(plan, piece, kit), kerf_side(piece, kit)};
    if (piece.strip == job::StripOn::edge)
        texts.push_back(
            kit.words("strip.slot", {{"depth", Tape(plan.header.units, kit.words).exact(piece.kerf_depth)}}));
    if (plan.printer.adhesive) texts.push_back(kit.words("strip.low_tack"));
    texts.push_back(tick_with_half(plan, piece, kit));
    return texts;
}

void draw_statement(Pen& pen, const plan::Plan& plan, const plan::Piece& piece) {
    const auto& style = pen.kit().style;
    const Foot foot(pen, piece);
    const std::vector<std::string> texts = strip_statements(plan, piece, pen.kit());
    const Length right = pen.page_width() - side_margin;
    Type bold{Face::bold, style.text};
    const auto too_wide = [&] {
        Length used = foot.width(pen, bold.size);
        for (const std::string& text : texts) used += pen.width(text, bold) + between;
        return used > right - side_margin;
    };
    if (too_wide()) bold.face = Face::condensed_bold;
    if (too_wide()) bold.size = style.small;
    Point at{side_margin, pen.from_top(statement_line) + (too_wide() ? raised : 0_pt)};
    const auto make_room = [&](Length width) {
        if (at.x + width > right + 0.01_pt && at.x > side_margin) at = {side_margin, at.y - leading};
    };
    for (const std::string& text : texts) {
        // What a tick means stands beside the drawn one.
        const Length more = &text == &texts.back() ? between + foot.width(pen, bold.size) : 0_pt;
        make_room(pen.width(text, bold) + more);
        at.x += pen.text(Role::caution, at, text, bold) + between;
    }
    foot.draw(pen, at, bold.size);
}

void name_strip_page(Draft& draft, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units, kit.words);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.title = kit.words(piece.strip == job::StripOn::edge ? "strip.title_edge" : "strip.title");
    draft.subtitle = kit.words("strip.subtitle", {{"what", piece_name(piece, kit)},
                                                  {"spacing", spacing_text(piece, kit, tape)},
                                                  {"count", std::to_string(piece.kerfs.size())},
                                                  {"depth", tape.exact(piece.kerf_depth)}});
    draft.scale = Scale::full;
}

void count_strip(Draft& draft, const plan::Piece& piece, const Strip& strip) {
    draft.strips.take(strip.number);
    for (std::size_t i = strip.first_kerf; i < strip.end_kerf; ++i) draft.kerfs.take(piece.kerfs[i].n);
}

}  // namespace kerfpacket::sheets
