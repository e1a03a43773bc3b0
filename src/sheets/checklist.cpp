#include "sheets/checklist.h"

#include <algorithm>
#include <cmath>

#include "measure/fraction.h"
#include "sheets/furniture.h"
#include "sheets/pen.h"
#include "sheets/tape.h"
#include "sheets/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr std::size_t block_size = 10;
constexpr Length row_height = 18_pt;
constexpr Length foot_height = 29_pt;
constexpr Length block_gap = 6_pt;
constexpr Length column_gap = 12_pt;
constexpr Length narrowest_column = 165_pt;
constexpr Length first_block_top = 99_pt;
constexpr Length last_block_bottom = 50_pt;

/// How the blocks stand on a page.
struct Grid {
    std::size_t columns = 1;
    std::size_t blocks = 1;  ///< in a column
    Length column_width;

    std::size_t kerfs() const { return columns * blocks * block_size; }
};

Grid grid_on(Length width, Length height) {
    const Length live = width - side_margin * 2;
    const Length block = row_height * static_cast<double>(block_size) + foot_height + block_gap;
    Grid grid;
    grid.columns = static_cast<std::size_t>(std::floor((live + column_gap) / (narrowest_column + column_gap)));
    grid.blocks =
        static_cast<std::size_t>(std::floor((height - first_block_top - last_block_bottom + block_gap) / block));
    const auto columns = static_cast<double>(grid.columns);
    grid.column_width = (live - column_gap * (columns - 1)) / columns;
    return grid;
}

/// What was rounded away, true mark minus printed figure: thousandths of an inch or hundredths of a millimetre.
std::string residue_text(Length residue, const Tape& tape) {
    const bool inch = tape.unit() == measure::Unit::inch;
    const std::string digits = tape.number(std::abs(inch ? residue.inches() : residue.mm()), inch ? 3 : 2);
    if (digits.find_first_of("123456789") == std::string::npos) return {};
    return (residue < 0_mm ? "-" : "+") + digits.substr(1);
}

class Block {
public:
    Block(Pen& pen, const plan::Piece& piece, const Tape& tape, Point top_left, Length width)
        : pen_(pen), piece_(piece), tape_(tape), top_left_(top_left), width_(width) {}

    void draw(std::size_t first, std::size_t end) {
        for (std::size_t i = first; i < end; ++i) row(piece_.kerfs[i], row_height * static_cast<double>(i - first + 1));
        const Length rows = row_height * static_cast<double>(end - first);
        foot(end, rows);
        const Rect outline{{top_left_.x, top_left_.y - rows - foot_height}, {top_left_.x + width_, top_left_.y}};
        pen_.box(Role::box, outline, style().line);
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }

    void row(const plan::Kerf& kerf, Length down) {
        const Length x = top_left_.x;
        const Length bottom = top_left_.y - down;
        const Length base = bottom + 5_pt;
        tick_box(pen_, {x + 3_pt, bottom + 1.5_pt}, 15_pt);
        const bool ten = kerf.n % 10 == 0;
        pen_.text(Role::numeral, {x + 45_pt, base}, std::to_string(kerf.n),
                  Type{ten ? Face::condensed_bold : Face::condensed, style().strong}.at_right());
        pen_.text(Role::running, {x + 105_pt, base}, tape_.plain(kerf.mark),
                  Type{Face::condensed, style().text}.at_right());
        pen_.text(Role::running, {x + 107_pt, base}, residue_text(kerf.mark - tape_.rounded(kerf.mark), tape_),
                  {Face::condensed, style().tiny});
        pen_.text(Role::running, {x + width_ - 4_pt, base}, tape_.other(kerf.mark),
                  Type{Face::condensed, style().small}.at_right());
        pen_.line(Role::box, {x, bottom}, {x + width_, bottom}, style().hair);
    }

    void foot(std::size_t done, Length rows) {
        const auto& words = pen_.kit().words;
        const Length x = top_left_.x;
        const Length y = top_left_.y - rows;
        pen_.line(Role::box, {x, y}, {x + width_, y}, style().heavy);
        pen_.text(Role::text, {x + 4_pt, y - 11.5_pt}, words("checklist.done", {{"n", std::to_string(done)}}),
                  {Face::bold, style().text});
        pen_.text(Role::text, {x + width_ - 4_pt, y - 11.5_pt},
                  words("checklist.to_go", {{"n", std::to_string(piece_.kerfs.size() - done)}}),
                  Type{Face::regular, style().small}.at_right());
        const Type small{Face::condensed, style().small};
        const Length base = y - 24.5_pt;
        tick_box(pen_, {x + 4_pt, base - 1.8_pt}, 11_pt);
        pen_.text(Role::text, {x + 18_pt, base},
                  words("checklist.tape", {{"at", tape_.plain(piece_.kerfs[done - 1].mark)}}), small);
        tick_box(pen_, {x + 83_pt, base - 1.8_pt}, 11_pt);
        const Length rest = pen_.text(Role::text, {x + 97_pt, base}, words("checklist.rest"), small);
        const Length sign = x + std::max(119_pt, 100_pt + rest);
        const Length initials = pen_.text(Role::text, {sign, base}, words("checklist.initials"), small);
        pen_.line(Role::box, {sign + 2_pt + initials, base - 2_pt}, {x + width_ - 4_pt, base - 2_pt}, style().hair);
    }

    Pen& pen_;
    const plan::Piece& piece_;
    const Tape& tape_;
    Point top_left_;
    Length width_;
};

Draft checklist_page(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, std::size_t first,
                     std::size_t end) {
    const Tape tape(plan.header.units, kit.words);
    Draft draft = new_draft(plan, "checklist", Orientation::portrait);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.title = kit.words("checklist.title");
    draft.subtitle = kit.words("checklist.subtitle", {{"what", piece_name(piece, kit)},
                                                      {"count", std::to_string(piece.kerfs.size())},
                                                      {"depth", tape.exact(piece.kerf_depth)}});
    Pen pen(draft.page, kit);
    const Length base = pen.from_top(statement_line);
    pen.text(Role::caution, {side_margin, base}, kit.words("checklist.statement"), {Face::bold, kit.style.text});
    pen.text(Role::text, {pen.page_width() - side_margin, base},
             kit.words("checklist.range", {{"first", std::to_string(piece.kerfs[first].n)},
                                           {"last", std::to_string(piece.kerfs[end - 1].n)},
                                           {"count", std::to_string(piece.kerfs.size())}}),
             Type{Face::bold, kit.style.text}.at_right());
    const bool inch = tape.unit() == measure::Unit::inch;
    const std::string& note = kit.words(inch ? "checklist.note_inch" : "checklist.note_mm");
    pen.text(Role::text, {side_margin, base - 13_pt}, note,
             pen.fitting(note, {Face::regular, kit.style.tiny}, pen.page_width() - side_margin * 2));
    // Between the last blocks and the footer's rule.
    const std::string how_it_lies = kerf_side(piece, kit) + ".  " + zero_end(piece, kit) + ".";
    pen.text(Role::text, {side_margin, 40_pt}, how_it_lies,
             pen.fitting(how_it_lies, {Face::regular, kit.style.small}, pen.page_width() - side_margin * 2));
    return draft;
}

}  // namespace

void add_checklist(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units, kit.words);
    const Paper paper = paper_for(plan, Use::cards);
    const Grid grid = grid_on(paper.width, paper.height);
    for (std::size_t first = 0; first < piece.kerfs.size(); first += grid.kerfs()) {
        const std::size_t end = std::min(first + grid.kerfs(), piece.kerfs.size());
        drafts.push_back(checklist_page(plan, piece, kit, first, end));
        drafts.back().kerfs = {piece.kerfs[first].n, piece.kerfs[end - 1].n};
        if (first == 0) drafts.back().outline = kit.words("checklist.outline", {{"piece", piece.id}});
        Pen pen(drafts.back().page, kit);
        for (std::size_t block = 0; first + block * block_size < end; ++block) {
            const std::size_t column_number = block / grid.blocks;
            const auto column = static_cast<double>(column_number);
            const auto down = static_cast<double>(block % grid.blocks);
            const Length height = row_height * static_cast<double>(block_size) + foot_height + block_gap;
            const Point top_left{side_margin + (grid.column_width + column_gap) * column,
                                 pen.from_top(first_block_top) - height * down};
            const std::size_t from = first + block * block_size;
            Block(pen, piece, tape, top_left, grid.column_width).draw(from, std::min(from + block_size, end));
        }
    }
}

}  // namespace kerfpacket::sheets
