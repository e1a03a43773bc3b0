#include "sheets/strips/checklist.h"

#include <algorithm>
#include <cmath>

#include "sheets/layout/furniture.h"
#include "sheets/layout/sign_off.h"
#include "sheets/strips/checklist_block.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length block_gap = 6_pt;
constexpr Length column_gap = 12_pt;
constexpr Length narrowest_column = 165_pt;
constexpr Length first_block_top = 99_pt;
constexpr Length last_block_bottom = 68_pt;
constexpr Length sign_base = 54_pt;
/// Rows give way down to this, so that a page takes one block more: the numbers find room, and a hand the boxes.
constexpr Length lowest_row = 16_pt;
constexpr Length rule_leading = 10.5_pt;
constexpr Length second_statement = 13_pt;
constexpr Length second_note = 9_pt;

/// How the blocks stand on a page.
struct Grid {
    std::size_t columns = 1;
    std::size_t blocks = 1;  ///< in a column
    Length column_width;
    Length top;  ///< of the first block, from the page's top
    BlockHeights heights{};

    std::size_t kerfs() const { return columns * blocks * block_size; }
    /// From a block to the one below it.
    Length step() const { return heights.block() + block_gap; }
};

bool bilingual(const Kit& kit) { return kit.second_words != nullptr; }

Grid grid_on(Length width, Length height, const Kit& kit) {
    const std::size_t rules = kit.words.list("shop.checklist_rules").size();
    Grid grid;
    grid.top = first_block_top;
    if (bilingual(kit)) grid.top += second_statement + second_note;
    if (bilingual(kit)) grid.heights.foot = BlockHeights::foot_in_both;
    if (rules > 0) grid.top += rule_leading * static_cast<double>(rules + 1) + 3_pt;
    const Length room = height - grid.top - last_block_bottom + block_gap;
    const Length least = BlockHeights{lowest_row, grid.heights.foot}.block() + block_gap;
    grid.blocks = std::max<std::size_t>(1, static_cast<std::size_t>(std::floor(room / least)));
    const Length row =
        (room / static_cast<double>(grid.blocks) - block_gap - grid.heights.foot) / static_cast<double>(block_size);
    grid.heights.row = std::clamp(row, lowest_row, grid.heights.row);
    const Length live = width - side_margin * 2;
    grid.columns = static_cast<std::size_t>(std::floor((live + column_gap) / (narrowest_column + column_gap)));
    const auto columns = static_cast<double>(grid.columns);
    grid.column_width = (live - column_gap * (columns - 1)) / columns;
    return grid;
}

/// What to do, and how the figures are meant; in a second language below.
void head(Pen& pen, const std::string& range, const char* said_key, const Tape& tape) {
    const Kit& kit = pen.kit();
    const Length right = pen.page_width() - side_margin;
    Length base = pen.from_top(statement_line);
    const std::string& said = kit.words(said_key);
    const Length least = pen.width(said, {Face::condensed_bold, kit.style.tiny}) + 10_pt;
    const Type range_type = pen.fitting(range, Type{Face::bold, kit.style.text},
                                        std::min((right - side_margin) * 0.42, right - side_margin - least))
                                .at_right();
    const auto statement = [&](const fonts::Words& words) {
        const std::string& text = words(said_key);
        pen.text(Role::caution, {side_margin, base}, text,
                 pen.fitting(text, {Face::bold, kit.style.text},
                             right - side_margin - pen.width(range, range_type) - 10_pt));
    };
    const auto note = [&](const fonts::Words& words) {
        const bool inch = tape.unit() == measure::Unit::inch;
        const std::string& text = words(inch ? "checklist.note_inch" : "checklist.note_mm");
        pen.text(Role::text, {side_margin, base}, text,
                 pen.fitting(text, {Face::regular, kit.style.tiny}, right - side_margin));
    };
    statement(kit.words);
    pen.text(Role::text, {right, base}, range, range_type);
    if (bilingual(kit)) {
        base -= second_statement;
        statement(*kit.second_words);
    }
    base -= 13_pt;
    note(kit.words);
    if (bilingual(kit)) {
        base -= second_note;
        note(*kit.second_words);
    }
    const std::vector<std::string>& rules = kit.words.list("shop.checklist_rules");
    if (rules.empty()) return;
    base -= 12_pt;
    pen.text(Role::text, {side_margin, base}, kit.words("shop.heading"), {Face::bold, kit.style.small});
    for (const std::string& rule : rules) {
        const Scope list = pen.going_on(Tag::list);
        const Scope item = pen.within(Tag::list_item);
        base -= rule_leading;
        pen.text(Role::caution, {side_margin, base}, rule,
                 pen.fitting(rule, {Face::regular, kit.style.small}, right - side_margin));
    }
}

Draft checklist_page(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, std::size_t first,
                     std::size_t end) {
    const Tape tape(plan.header.units, kit.words);
    Draft draft = new_draft(plan, "checklist", Orientation::portrait);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.board = last_board(plan, piece);
    draft.title = in_both(kit, "checklist.title");
    draft.subtitle = kit.words("checklist.subtitle", {{"what", piece_name(piece, kit)},
                                                      {"count", std::to_string(piece.blank().kerfs.size())},
                                                      {"depth", tape.exact(piece.cut.depth)}});
    Pen pen(draft.page, kit);
    head(pen,
         kit.words("checklist.range", {{"first", std::to_string(piece.blank().kerfs[first].n)},
                                       {"last", std::to_string(piece.blank().kerfs[end - 1].n)},
                                       {"count", std::to_string(piece.blank().kerfs.size())}}),
         piece.rake    ? "checklist.statement_askew"
         : piece.splay ? "checklist.statement_round"
                       : "checklist.statement",
         tape);
    return draft;
}

/// Kerfs a page, in whole blocks, on as few pages as hold them all: pages alike, no handful alone on the last.
std::size_t kerfs_a_page(std::size_t kerfs, const Grid& grid) {
    const auto parts = [](std::size_t whole, std::size_t part) { return (whole + part - 1) / part; };
    const std::size_t pages = parts(kerfs, grid.kerfs());
    return parts(parts(kerfs, block_size), pages) * block_size;
}

/// Below the blocks: how the board lies, and who signs. Drawn after them, as it is read and signed.
void below_blocks(Pen& pen, const plan::Piece& piece) {
    const Kit& kit = pen.kit();
    const Length right = pen.page_width() - side_margin;
    // Between the last blocks and the footer's rule: in one line, where one has room for it.
    const Type small{Face::regular, kit.style.small};
    const std::string side = kerf_side(piece, kit) + ".";
    const std::string lies = zero_end(piece, kit) + ".";
    const std::string both = side + "  " + lies;
    const Length room = right - side_margin;
    const bool one_line = pen.width(both, pen.fitting(both, small, room)) <= room;
    if (!one_line) pen.text(Role::text, {side_margin, 49.5_pt}, side, pen.fitting(side, small, room));
    const std::string& last = one_line ? both : lies;
    pen.text(Role::text, {side_margin, 40_pt}, last, pen.fitting(last, small, room));
    sign_off(pen, side_margin, right, one_line ? sign_base : sign_base + 5_pt,
             {in_both(kit, "page.cut_by"), in_both(kit, "page.checked_by")}, in_both(kit, "page.date"));
}

/// Of a round blank: its marks as a tape along the narrow edge reads them.
plan::Piece as_read(plan::Piece piece) {
    const plan::Blank blank = piece.blank();
    const plan::FlatBlank flat(*piece.splay, blank);
    for (plan::Kerf& kerf : piece.whole.kerfs) kerf.mark = flat.read(kerf.mark, piece.splay->narrow_edge());
    return piece;
}

void add_pages(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units, kit.words);
    const Paper paper = paper_for(plan, Use::cards);
    const Grid grid = grid_on(paper.width, paper.height, kit);
    const std::size_t kerfs = piece.blank().kerfs.size();
    if (kerfs == 0) return;
    const std::size_t a_page = kerfs_a_page(kerfs, grid);
    for (std::size_t first = 0; first < kerfs; first += a_page) {
        const std::size_t end = std::min(first + a_page, kerfs);
        drafts.push_back(checklist_page(plan, piece, kit, first, end));
        drafts.back().kerfs = {piece.blank().kerfs[first].n, piece.blank().kerfs[end - 1].n};
        if (first == 0) drafts.back().outline = kit.words("checklist.outline", {{"piece", piece.id}});
        Pen pen(drafts.back().page, kit);
        ChecklistBlock block(pen, piece, tape, grid.heights);
        for (std::size_t n = 0; first + n * block_size < end; ++n) {
            const std::size_t column = n / grid.blocks;
            const auto down = static_cast<double>(n % grid.blocks);
            const Point top_left{side_margin + (grid.column_width + column_gap) * static_cast<double>(column),
                                 pen.from_top(grid.top) - grid.step() * down};
            const std::size_t from = first + n * block_size;
            block.draw(top_left, grid.column_width, from, std::min(from + block_size, end));
        }
        below_blocks(pen, piece);
    }
}

}  // namespace

void add_checklist(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (piece.splay) add_pages(drafts, plan, as_read(piece), kit);
    else add_pages(drafts, plan, piece, kit);
}

}  // namespace kerfpacket::sheets
