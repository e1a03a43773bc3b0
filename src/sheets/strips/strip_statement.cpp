#include "sheets/strips/strip_statement.h"

#include <algorithm>
#include <utility>

#include "measure/require.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/furniture.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length between = 16_pt;
// Where there are two lines, the first is higher up.
constexpr Length raised = 3_pt;
constexpr Length line_leading = 11.5_pt;
/// Of the words beside a coupon's strip.
constexpr Length least_use_width = 200_pt;

std::string where_it_goes(bool adhesive, const plan::Piece& piece, const Kit& kit) {
    const bool edge = piece.strip == job::StripOn::edge;
    if (adhesive) return kit.words(edge ? "strip.peel_edge" : "strip.peel");
    return kit.words(edge ? "strip.stick_edge" : "strip.stick");
}

/// With a tick at a side of the blade: where the middle of the kerf is.
std::string tick_with_half(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    std::string meaning = tick_meaning(piece, kit);
    if (piece.tick == job::Tick::centre) return meaning;
    return kit.words(piece.tick == job::Tick::left ? "strip.half_left" : "strip.half_right",
                     {{"meaning", meaning}, {"half", Tape(plan.header.units, kit.words).exact(piece.cut.kerf / 2)}});
}

/// A kerf from above: its foot, the tick where this job has it, and what that shows.
class Foot {
public:
    Foot(const Pen& pen, const plan::Piece& piece) : piece_(piece), words_(pen.kit().words("strip.blade_covers")) {}

    Length width(const Pen& pen, Length size) const {
        return piece_.cut.kerf + 6_pt + pen.width(words_, {Face::condensed, size});
    }

    void draw(Pen& pen, Point left, Length size) const {
        const Length half = piece_.cut.kerf / 2;
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

std::vector<std::string> strip_statements(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, Use use) {
    const bool adhesive = plan.printer.adhesive && use == Use::strips;
    std::vector<std::string> texts{where_it_goes(adhesive, piece, kit), kerf_side(piece, kit)};
    if (piece.strip == job::StripOn::edge)
        texts.push_back(
            kit.words("strip.slot", {{"depth", Tape(plan.header.units, kit.words).exact(piece.cut.depth)}}));
    if (adhesive) texts.push_back(kit.words("strip.low_tack"));
    if (piece.rake)
        texts.push_back(kit.words(piece.rake->to_the_right ? "strip.handle_right" : "strip.handle_left",
                                  {{"angle", degrees_text(piece.rake->kerf(), kit)}}));
    texts.push_back(tick_with_half(plan, piece, kit));
    return texts;
}

namespace {

/// The statements in a type, one after the other, on as many lines as they take.
class Statement {
public:
    Statement(const Pen& pen, std::vector<std::string> texts, const Foot& foot, Type type)
        : texts_(std::move(texts)), type_(type) {
        set(pen, foot, pen.page_width() - side_margin);
        // The first of two lines is raised, beside the code.
        if (lines() > 1) set(pen, foot, sheet_code_left(pen.page_width()) - sheet_code_gap);
    }

    std::size_t lines() const { return lines_; }

    void draw(Pen& pen, const Foot& foot) const {
        const Length first = pen.from_top(statement_line) + (lines_ > 1 ? raised : 0_pt);
        const auto on_page = [&](const Place& place) {
            return Point{place.x, first - line_leading * static_cast<double>(place.line)};
        };
        for (std::size_t i = 0; i < texts_.size(); ++i) pen.text(Role::caution, on_page(places_[i]), texts_[i], type_);
        foot.draw(pen, on_page(places_.back()), type_.size);
    }

private:
    struct Place {
        Length x;
        std::size_t line = 0;
    };

    /// `first_end`: where the first line must end.
    void set(const Pen& pen, const Foot& foot, Length first_end) {
        places_.clear();
        Place at{side_margin};
        for (const std::string& text : texts_) {
            const Length width = pen.width(text, type_);
            // What a tick means stands beside the drawn one.
            const Length more = &text == &texts_.back() ? between + foot.width(pen, type_.size) : 0_pt;
            const Length end = at.line == 0 ? first_end : pen.page_width() - side_margin;
            if (at.x + width + more > end + 0.01_pt && at.x > side_margin) at = {side_margin, at.line + 1};
            places_.push_back(at);
            at.x += width + between;
        }
        places_.push_back(at);
        lines_ = at.line + 1;
    }

    std::vector<std::string> texts_;
    Type type_;
    std::vector<Place> places_;  ///< of each text, then of the drawn tick
    std::size_t lines_ = 1;
};

/// On one line, though not in the smallest type; else on two, in the largest type that does; else on as many as it
/// takes.
Statement fitting_statement(const Pen& pen, const plan::Plan& plan, const plan::Piece& piece, const Foot& foot,
                            Use use) {
    const auto& style = pen.kit().style;
    const std::vector<std::string> texts = strip_statements(plan, piece, pen.kit(), use);
    std::vector<Statement> ways;
    for (const Type type : {Type{Face::bold, style.text}, Type{Face::condensed_bold, style.text},
                            Type{Face::condensed_bold, style.small}, Type{Face::condensed_bold, style.tiny}})
        ways.emplace_back(pen, texts, foot, type);
    for (const std::size_t lines : {1U, 2U})
        for (const Statement& way : ways)
            if (way.lines() == lines && (lines > 1 || &way != &ways.back())) return way;
    return ways.back();
}

}  // namespace

void draw_statement(Pen& pen, const plan::Plan& plan, const plan::Piece& piece, Use use) {
    const Foot foot(pen, piece);
    fitting_statement(pen, plan, piece, foot, use).draw(pen, foot);
}

Length statement_overflow(Length page_width, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit,
                          Use use) {
    page::Page page;
    page.width = page_width;
    const Pen pen(page, kit);
    const std::size_t lines = fitting_statement(pen, plan, piece, Foot(pen, piece), use).lines();
    return line_leading * static_cast<double>(std::max<std::size_t>(lines, 2) - 2);
}

std::string coupon_use(const plan::Plan& plan, const plan::Piece& coupon, const Kit& kit) {
    return kit.words("coupon.strip_use", {{"length", Tape(plan.header.units, kit.words).exact(coupon.blank().length)}});
}

std::optional<Type> coupon_use_type(const Pen& pen, const std::string& use, const Rect& room) {
    if (room.width() < least_use_width) return std::nullopt;
    for (const Length size : {pen.kit().style.text, pen.kit().style.small}) {
        const Type type{Face::regular, size};
        const Length step = leading(size);
        if (pen.paragraph_height(use, type, room.width(), step) + step <= room.height()) return type;
    }
    return std::nullopt;
}

void draw_coupon_use(Pen& pen, const std::string& use, const Rect& room) {
    const std::optional<Type> type = coupon_use_type(pen, use, room);
    measure::require(type.has_value(), "words beside a coupon's strip find their room");
    const Length step = leading(type->size);
    const Length height = pen.paragraph_height(use, *type, room.width(), step) + step;
    const Length top = (room.low.y + room.high.y + height) / 2;
    pen.paragraph(Role::text, {room.low.x, top - type->size * 0.95}, use, *type, room.width(), step);
}

void name_strip_page(Draft& draft, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units, kit.words);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.boards = for_board(plan, piece, 1);
    draft.title = kit.words(piece.strip == job::StripOn::edge ? "strip.title_edge" : "strip.title");
    draft.subtitle = kit.words("strip.subtitle", {{"what", piece_name(piece, kit)},
                                                  {"spacing", spacing_text(piece, kit, tape)},
                                                  {"count", std::to_string(piece.blank().kerfs.size())},
                                                  {"depth", tape.exact(piece.cut.depth)}});
    draft.scale = Scale::full;
}

void count_strip(Draft& draft, const plan::Piece& piece, const Strip& strip) {
    draft.strips.take(strip.number);
    for (std::size_t i = strip.first_kerf; i < strip.end_kerf; ++i) draft.kerfs.take(piece.blank().kerfs[i].n);
}

}  // namespace kerfpacket::sheets
