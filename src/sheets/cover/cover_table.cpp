#include <algorithm>
#include <array>
#include <utility>

#include "plan/stopped.h"
#include "sheets/cards/refused.h"
#include "sheets/cover/cover_parts.h"
#include "sheets/evidence/strain_words.h"
#include "sheets/words/chance_words.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr std::size_t board_column = 2;
constexpr std::size_t verdict_column = 8;

struct Column {
    const char* key;
    double at;  ///< of the live width
    Align align;
};
using Columns = std::array<Column, 9>;

constexpr Columns even_columns{{{"cover.column_piece", 0, Align::left},
                                {"cover.column_what", 0.085, Align::left},
                                {"cover.column_board", 0.365, Align::right},
                                {"cover.column_kerfs", 0.44, Align::right},
                                {"cover.column_depth", 0.515, Align::right},
                                {"cover.column_spacing", 0.605, Align::right},
                                {"cover.column_blank", 0.715, Align::right},
                                {"cover.column_u", 0.78, Align::right},
                                {"cover.column_verdict", 0.8, Align::left}}};

/// Where a spacing is a range, its column is wider.
constexpr Columns wide_spacing{{{"cover.column_piece", 0, Align::left},
                                {"cover.column_what", 0.085, Align::left},
                                {"cover.column_board", 0.345, Align::right},
                                {"cover.column_kerfs", 0.41, Align::right},
                                {"cover.column_depth", 0.475, Align::right},
                                {"cover.column_spacing", 0.6, Align::right},
                                {"cover.column_blank", 0.72, Align::right},
                                {"cover.column_u", 0.785, Align::right},
                                {"cover.column_verdict", 0.8, Align::left}}};

/// Where the board is weakest as it is now; of a kerf that is cut through there is no figure.
std::string strain_now(const plan::Piece& piece, const Tape& tape) {
    const plan::DeepKerf* deep = piece.worst_deep();
    if (deep != nullptr && deep->through()) return "-";
    return tape.number(deep != nullptr ? deep->answer.alone : piece.bend.utilisation, 2);
}

class Table {
public:
    explicit Table(Cover& cover) : cover_(cover), flow_(cover.flow) {
        const auto& pieces = cover.plan.pieces;
        columns_ = std::any_of(pieces.begin(), pieces.end(), varied_spacing) ? wide_spacing : even_columns;
    }

    void draw() {
        const auto& pieces = cover_.plan.pieces;
        head(std::min<std::size_t>(3, pieces.size()));
        for (const plan::Piece& piece : pieces) {
            next_row();
            row(piece);
        }
        for (const plan::Refused& refused : cover_.plan.refused) {
            next_row();
            refused_row(refused);
        }
    }

private:
    const fonts::Style& style() const { return cover_.style(); }
    Length row_height() const { return style().text * 1.82 + material_height(); }
    /// Its material stands under what a piece is.
    Length material_height() const { return style().small * 1.15; }
    Length head_height() const { return style().small * 1.11 + 5_pt; }

    /// Heading and heads, on a page with room for so many rows.
    void head(std::size_t rows) {
        flow_.heading(cover_.words("cover.pieces"));
        if (flow_.room() < head_height() + row_height() * static_cast<double>(rows)) flow_.next_page();
        room_ = flow_.take(head_height());
        base_ = room_.low.y + 5_pt;
        Pen pen = flow_.pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const std::string text = cover_.words(columns_.at(i).key);
            cell(Tag::header_cell, columns_.at(i), text, pen.fitting(text, Cover::regular(style().small), room_of(i)));
        }
        pen.line(Role::box, room_.low, {room_.high.x, room_.low.y}, style().line);
    }

    /// The room of a further row, with heads over it where it begins a page.
    void next_row() {
        if (flow_.room() < row_height()) {
            flow_.next_page();
            head(1);
        }
        room_ = flow_.take(row_height());
        base_ = room_.low.y + style().text * 0.55 + material_height();
        Pen pen = flow_.pen();
        pen.line(Role::box, room_.low, {room_.high.x, room_.low.y}, style().hair);
    }

    /// From a column's edge to the next one's; the board's figures stand at the end of what the piece is.
    Length room_of(std::size_t column) const {
        const std::size_t before = column == 0 ? 0 : columns_.at(column).align == Align::left ? column : column - 1;
        if (column == verdict_column) return room_.width() * (1 - columns_.at(column).at);
        const std::size_t after = columns_.at(column).align == Align::left ? column + 1 : column;
        return room_.width() * (columns_.at(after).at - columns_.at(before).at) - 6_pt;
    }

    /// `below`: a second line, as wide as all up to the board's figures.
    void cell(Tag tag, const Column& column, const std::string& text, Type type, const std::string& below = {}) {
        type.align = column.align;
        Pen pen = flow_.pen();
        const Scope part = pen.within(tag);
        pen.text(Role::text, {room_.low.x + room_.width() * column.at, base_}, text, type);
        if (below.empty()) return;
        const Length wide = room_.width() * (columns_[board_column].at - column.at);
        pen.text(Role::text, {room_.low.x + room_.width() * column.at, base_ - style().small * 1.2}, below,
                 pen.fitting(below, Cover::regular(style().small), wide));
    }

    void row(const plan::Piece& piece) {
        Pen pen = flow_.pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        const Tape& tape = cover_.tape;
        const std::array<std::string, 9> texts{
            piece.quantity > 1 ? piece.id + " x" + std::to_string(piece.quantity) : piece.id,
            piece_name(piece, cover_.kit()),
            tape.exact_plain(piece.cut.thickness) + " x " + tape.exact_plain(piece.width),
            std::to_string(piece.blank().kerfs.size()),
            tape.exact_plain(piece.cut.depth),
            spacing_plain(piece, cover_.kit(), tape),
            tape.plain(plan::Piece::stock_length(piece.blank())),
            strain_now(piece, tape),
            plan::stopped(piece) == plan::Stopped::weak_link ? cover_.words("cover.refused_verdict")
                                                             : verdict_word(piece.bend.verdict, cover_.kit())};
        for (std::size_t i = 0; i < texts.size(); ++i)
            cell(i == 0 ? Tag::row_header : Tag::cell, columns_.at(i), texts.at(i), type_of(piece, i, texts),
                 i == 1 ? material_name(piece, cover_.kit()) : std::string());
    }

    /// One that cannot be made has no figures to show.
    void refused_row(const plan::Refused& refused) {
        Pen pen = flow_.pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        const fonts::Style& style = cover_.style();
        const std::string name = refused_name(refused, cover_.kit());
        const std::string cannot = cover_.words("cover.refused_row");
        const std::string verdict = cover_.words("cover.refused_verdict");
        // Right of its middle the row has no figures: the words end where the last column begins.
        const Column wide{"", columns_.at(verdict_column).at - 0.02, Align::right};
        const Length both = room_.width() * (wide.at - columns_[1].at) - 12_pt;
        const Type name_type = pen.fitting(name, Cover::regular(style.text), both / 2);
        cell(Tag::row_header, columns_[0], refused.id, pen.fitting(refused.id, Cover::bold(style.text), room_of(0)));
        cell(Tag::cell, columns_[1], name, name_type);
        pen.empty_cells(static_cast<int>(verdict_column) - 3);
        cell(Tag::cell, wide, cannot,
             pen.fitting(cannot, Cover::regular(style.small), both - pen.width(name, name_type)));
        cell(Tag::cell, columns_.at(verdict_column), verdict,
             pen.fitting(verdict, {Face::condensed_bold, style.text}, room_of(verdict_column)));
    }

    Type type_of(const plan::Piece& piece, std::size_t column, const std::array<std::string, 9>& texts) {
        const bool strong = column == 0 || (column == verdict_column && piece.bend.verdict != bend::Verdict::ok);
        const Type type{strong ? Face::bold : Face::regular, style().text};
        Pen pen = flow_.pen();
        const auto fitted = [&](std::size_t i, Length room) { return pen.fitting(texts.at(i), type, room); };
        // What the piece is and its board share their room: the board's figures are narrowed first.
        const Length shared = room_.width() * (columns_[board_column].at - columns_[1].at) - 6_pt;
        const Length board = std::max(shared - pen.width(texts[1], type), shared * 0.4);
        if (column == board_column) return fitted(column, board);
        if (column + 1 == board_column)
            return fitted(column, shared - pen.width(texts[board_column], fitted(board_column, board)));
        return fitted(column, room_of(column));
    }

    Cover& cover_;
    Flow& flow_;
    Columns columns_{};
    Rect room_;    ///< of the row that is drawn
    Length base_;  ///< its baseline
};

/// The same sentence about several pieces is said once: "A, B: Kerfs OUTSIDE ...".
void notes(Cover& cover) {
    const auto& pieces = cover.plan.pieces;
    const Type type = Cover::regular(cover.style().small);
    cover.flow.skip(2_pt);
    cover.flow.listed(Role::text, {}, cover.words("cover.table_note"), type);
    std::string chances;
    for (const plan::Piece& piece : pieces)
        chances += (chances.empty() ? "" : "; ") + chance_on_cover(piece, cover.kit());
    if (!chances.empty())
        cover.flow.listed(Role::text, {}, cover.words("chance.on_cover", {{"pieces", chances}}), type);
    std::string moves;
    for (const plan::Piece& piece : pieces)
        if (piece.moisture_move > 0_mm)
            moves += (moves.empty() ? "" : "; ") +
                     cover.words("cover.moisture_piece",
                                 {{"piece", piece.id}, {"move", cover.tape.with_unit(piece.moisture_move)}});
    if (!moves.empty()) cover.flow.listed(Role::text, {}, cover.words("cover.moisture", {{"pieces", moves}}), type);
    std::vector<std::pair<std::string, std::string>> said;  // pieces, sentence
    for (const plan::Piece& piece : pieces) {
        const std::string sentence = kerf_side(piece, cover.kit()) + ". " + zero_end(piece, cover.kit()) + ".";
        const auto same = std::find_if(said.begin(), said.end(), [&](const auto& s) { return s.second == sentence; });
        if (same == said.end()) said.emplace_back(piece.id, sentence);
        else same->first.append(", ").append(piece.id);
    }
    for (const auto& [ids, sentence] : said)
        cover.flow.listed(Role::text, {}, std::string(ids).append(": ").append(sentence), type);
    cover_taken(cover);
}

/// A short list under a heading; nothing when it is empty.
void list(Cover& cover, const char* heading, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    cover.flow.heading(cover.words(heading));
    for (const std::string& line : lines) cover.flow.listed(Role::text, {}, line, Cover::regular(cover.style().small));
}

/// What was left to the program; pieces that came out alike are said once.
std::vector<std::string> settings(const Cover& cover) {
    std::vector<std::pair<std::string, std::string>> said;  // pieces, sentences
    for (const plan::Piece& piece : cover.plan.pieces) {
        std::string text;
        for (const std::string& sentence : settings_sentences(piece, cover.kit(), cover.tape)) text += " " + sentence;
        if (text.empty()) continue;
        const auto same = std::find_if(said.begin(), said.end(), [&](const auto& s) { return s.second == text; });
        if (same == said.end()) said.emplace_back(piece.id, text);
        else same->first.append(", ").append(piece.id);
    }
    std::vector<std::string> lines;
    lines.reserve(said.size());
    for (const auto& [ids, text] : said) lines.push_back(std::string(ids).append(":").append(text));
    return lines;
}

std::vector<std::string> mitres(const Cover& cover) {
    std::vector<std::string> lines;
    for (const plan::Piece& piece : cover.plan.pieces)
        if (const std::vector<std::string> texts = mitre_texts(piece, cover.kit()); !texts.empty())
            lines.push_back(piece.id + ": " + texts.front() + (texts.size() > 1 ? "; " + texts.back() : ""));
    return lines;
}

/// The blanks of spliced boards, from zero on, and where their joints lie.
std::vector<std::string> splices(const Cover& cover) {
    std::vector<std::string> lines;
    for (const plan::Piece& piece : cover.plan.pieces) {
        if (!piece.spliced()) continue;
        std::string blanks;
        for (std::size_t i = 0; i < piece.blanks.size(); ++i)
            blanks +=
                (i == 0 ? "" : ", ") + cover.words(piece.blanks[i].kerfs.empty() ? "piece.blank_plain" : "piece.blank",
                                                   {{"blank", piece.blank_id(i)},
                                                    {"length", cover.tape.with_unit(piece.blanks[i].length)},
                                                    {"n", std::to_string(piece.blanks[i].kerfs.size())}});
        lines.push_back(cover.words("cover.spliced", {{"piece", piece.id}, {"blanks", blanks}}));
        for (std::size_t i = 0; i < piece.joints.size(); ++i)
            lines.push_back(joint_text(piece, i, cover.kit(), cover.tape));
    }
    return lines;
}

/// Each leg of an opening once, whichever of its boards has it.
std::vector<std::string> leg_boards(const Cover& cover) {
    std::vector<std::string> lines;
    for (const plan::Piece& piece : cover.plan.pieces)
        for (const plan::LegBoard& board : piece.leg_boards) {
            std::string line = measured_id(piece) + ", " + leg_board_text(piece, board, cover.kit(), cover.tape);
            if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(std::move(line));
        }
    return lines;
}

}  // namespace

void cover_table(Cover& cover) {
    Table(cover).draw();
    notes(cover);
    list(cover, "cover.settings", settings(cover));
    list(cover, "cover.mitres", mitres(cover));
    list(cover, "cover.splices", splices(cover));
    list(cover, "cover.leg_boards", leg_boards(cover));
}

}  // namespace kerfpacket::sheets
