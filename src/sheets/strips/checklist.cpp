#include "sheets/strips/checklist.h"

#include <algorithm>
#include <cmath>

#include "sheets/layout/furniture.h"
#include "sheets/layout/sign_off.h"
#include "sheets/one_sheet.h"
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
constexpr Length columns_note = 10_pt;

constexpr Length line_of_board = 15_pt;

std::size_t parts(std::size_t whole, std::size_t part) { return (whole + part - 1) / part; }

/// How the blocks stand on a page.
struct Grid {
    std::size_t columns = 1;
    std::size_t blocks = 1;  ///< in a column
    Length column_width;
    Length top;  ///< of the first block, from the page's top
    BlockHeights heights{};

    std::size_t kerfs() const { return columns * blocks * block_size; }
    /// Pages that so many kerfs take.
    std::size_t pages(std::size_t kerfs_in_all) const { return parts(kerfs_in_all, kerfs()); }
    /// From a block to the one below it.
    Length step() const { return heights.block() + block_gap; }
};

bool bilingual(const Kit& kit) { return kit.second_words != nullptr; }

/// Of a list for so many boards, in columns no narrower than that.
Grid grid_on(const Paper& paper, std::size_t boards, Length narrowest, const Kit& kit) {
    const std::size_t rules = kit.words.list("shop.checklist_rules").size();
    Grid grid;
    grid.top = first_block_top;
    if (bilingual(kit)) grid.top += second_statement + second_note;
    grid.heights = block_heights(boards, kit);
    if (boards > 1) grid.top += columns_note * (bilingual(kit) ? 2 : 1);
    if (rules > 0) grid.top += rule_leading * static_cast<double>(rules + 1) + 3_pt;
    const Length signed_off = line_of_board * static_cast<double>(boards - 1);
    const Length room = paper.height - grid.top - last_block_bottom - signed_off + block_gap;
    const Length least = BlockHeights{grid.heights.head, lowest_row, grid.heights.foot}.block() + block_gap;
    grid.blocks = std::max<std::size_t>(boards == 1 ? 1 : 0, static_cast<std::size_t>(std::max(0.0, room / least)));
    const Length row = (room / static_cast<double>(grid.blocks) - block_gap - grid.heights.head - grid.heights.foot) /
                       static_cast<double>(block_size);
    grid.heights.row = std::clamp(row, lowest_row, grid.heights.row);
    const Length live = paper.width - side_margin * 2;
    grid.columns = static_cast<std::size_t>(std::floor((live + column_gap) / (narrowest + column_gap)));
    const auto columns = static_cast<double>(grid.columns);
    grid.column_width = (live - column_gap * (columns - 1)) / columns;
    return grid;
}

/// What to do, and how the figures are meant; in a second language below.
void head(Pen& pen, const std::string& range, const char* said_key, const Tape& tape, const ForBoards& boards) {
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
    const auto columns = [&](const fonts::Words& words) {
        const std::string text =
            words("checklist.columns", {{"n", std::to_string(boards.n)}, {"last", std::to_string(boards.last)}});
        pen.text(Role::text, {side_margin, base -= columns_note}, text,
                 pen.fitting(text, {Face::bold, kit.style.tiny}, right - side_margin));
    };
    if (boards.count() > 1) columns(kit.words);
    if (boards.count() > 1 && bilingual(kit)) columns(*kit.second_words);
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

Draft checklist_page(const plan::Plan& plan, const plan::Piece& piece, const ForBoards& boards, const Kit& kit,
                     std::size_t first, std::size_t end) {
    const Tape tape(plan.header.units, kit.words);
    Draft draft = new_draft(plan, "checklist", Orientation::portrait);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.boards = boards;
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
         tape, boards);
    return draft;
}

/// Kerfs a page, in whole blocks, on as few pages as hold them all: pages alike, no handful alone on the last.
std::size_t kerfs_a_page(std::size_t kerfs, const Grid& grid) {
    return parts(parts(kerfs, block_size), grid.pages(kerfs)) * block_size;
}

/// Below the blocks: how the board lies, and who signs. Drawn after them, as it is read and signed.
void below_blocks(Pen& pen, const plan::Piece& piece, const ForBoards& boards) {
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
    Length base = (one_line ? sign_base : sign_base + 5_pt) + line_of_board * boards.count();
    for (int n = boards.n; n <= boards.last; ++n) {
        base -= line_of_board;
        Length from = side_margin;
        if (boards.count() > 1)
            from += pen.text(Role::text, {from, base}, kit.words("checklist.column", {{"n", std::to_string(n)}}),
                             {Face::condensed_bold, kit.style.small}) +
                    6_pt;
        sign_off(pen, from, right, base, {in_both(kit, "page.cut_by"), in_both(kit, "page.checked_by")},
                 in_both(kit, "page.date"));
    }
}

/// Of a round blank: its marks as a tape along the narrow edge reads them.
plan::Piece as_read(plan::Piece piece) {
    const plan::Blank blank = piece.blank();
    const plan::FlatBlank flat(*piece.splay, blank);
    for (plan::Kerf& kerf : piece.whole.kerfs) kerf.mark = flat.read(kerf.mark, piece.splay->narrow_edge());
    return piece;
}

Grid grid_for(const plan::Piece& piece, std::size_t boards, const Paper& paper, const Tape& tape, const Kit& kit) {
    if (boards == 1) return grid_on(paper, 1, narrowest_column, kit);
    const Length row = least_row_width(piece, boards, BlockHeights{}.row, tape, kit);
    return grid_on(paper, boards, std::max(narrowest_column, row), kit);
}

/// More boxes in a row than that, and a hand ticks the wrong one.
constexpr std::size_t most_boards = 6;

/// How many boards share a list, so that all lists take the fewest pages; where it saves none, each has its own.
std::size_t boards_a_list(const plan::Plan& plan, const plan::Piece& piece, const Paper& paper, const Tape& tape,
                          const Kit& kit) {
    const auto boards = static_cast<std::size_t>(plan.packet.one_set ? 1 : piece.quantity);
    const std::size_t kerfs = piece.blank().kerfs.size();
    std::size_t best = 1;
    std::size_t fewest = 0;
    for (std::size_t each = 1; each <= std::min(boards, most_boards); ++each) {
        const Grid grid = grid_for(piece, each, paper, tape, kit);
        if (grid.kerfs() == 0) continue;
        const std::size_t pages = parts(boards, each) * grid.pages(kerfs);
        if (each > 1 && pages >= fewest) continue;
        best = each;
        fewest = pages;
    }
    return parts(boards, parts(boards, best));
}

class List {
public:
    List(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit)
        : drafts_(drafts),
          plan_(plan),
          piece_(piece),
          kit_(kit),
          tape_(plan.header.units, kit.words),
          paper_(paper_for(plan, Use::cards)),
          each_(boards_a_list(plan, piece, paper_, tape_, kit)),
          grid_(grid_for(piece, each_, paper_, tape_, kit)),
          places_(row_places(piece, each_, grid_.column_width, grid_.heights.row, tape_, kit)) {}

    void draw() {
        if (plan_.packet.one_set) return pages(for_board(plan_, piece_, 1));
        int set = 0;
        const int each = static_cast<int>(each_);
        for (int n = 1; n <= piece_.quantity; n += each)
            pages({n, std::min(n + each - 1, piece_.quantity), piece_.quantity, ++set});
    }

private:
    /// A list for these boards.
    void pages(const ForBoards& boards) {
        const std::size_t kerfs = piece_.blank().kerfs.size();
        const std::size_t a_page = kerfs_a_page(kerfs, grid_);
        for (std::size_t first = 0; first < kerfs; first += a_page) {
            require_room(drafts_.size(), "checklist");
            drafts_.push_back(checklist_page(plan_, piece_, boards, kit_, first, std::min(first + a_page, kerfs)));
            if (first == 0 && boards.set == 1)
                drafts_.back().outline = kit_.words("checklist.outline", {{"piece", piece_.id}});
            blocks(boards, first, std::min(first + a_page, kerfs));
        }
    }

    void blocks(const ForBoards& boards, std::size_t first, std::size_t end) {
        drafts_.back().kerfs = {piece_.blank().kerfs[first].n, piece_.blank().kerfs[end - 1].n};
        Pen pen(drafts_.back().page, kit_);
        ChecklistBlock block(pen, piece_, tape_, grid_.heights, places_, boards);
        for (std::size_t n = 0; first + n * block_size < end; ++n) {
            const std::size_t column = n / grid_.blocks;
            const auto down = static_cast<double>(n % grid_.blocks);
            const Point top_left{side_margin + (grid_.column_width + column_gap) * static_cast<double>(column),
                                 pen.from_top(grid_.top) - grid_.step() * down};
            const std::size_t from = first + n * block_size;
            block.draw(top_left, grid_.column_width, from, std::min(from + block_size, end));
        }
        below_blocks(pen, piece_, boards);
    }

    Drafts& drafts_;
    const plan::Plan& plan_;
    const plan::Piece& piece_;
    const Kit& kit_;
    Tape tape_;
    Paper paper_;
    std::size_t each_;
    Grid grid_;
    RowPlaces places_;
};

}  // namespace

void add_checklist(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (piece.blank().kerfs.empty()) return;
    if (!piece.splay) return List(drafts, plan, piece, kit).draw();
    const plan::Piece read = as_read(piece);
    List(drafts, plan, read, kit).draw();
}

}  // namespace kerfpacket::sheets
