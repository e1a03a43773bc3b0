#include <algorithm>
#include <array>
#include <utility>

#include "sheets/cards/refused.h"
#include "sheets/cover/cover_flow.h"
#include "sheets/words/chance_words.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length table_row = 20_pt;
constexpr Length note_leading = 11.5_pt;
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
                                {"cover.column_u", 0.775, Align::right},
                                {"cover.column_verdict", 0.8, Align::left}}};

/// Where a spacing is a range, its column is wider.
constexpr Columns wide_spacing{{{"cover.column_piece", 0, Align::left},
                                {"cover.column_what", 0.085, Align::left},
                                {"cover.column_board", 0.345, Align::right},
                                {"cover.column_kerfs", 0.41, Align::right},
                                {"cover.column_depth", 0.475, Align::right},
                                {"cover.column_spacing", 0.6, Align::right},
                                {"cover.column_blank", 0.72, Align::right},
                                {"cover.column_u", 0.78, Align::right},
                                {"cover.column_verdict", 0.8, Align::left}}};

class Table {
public:
    explicit Table(CoverFlow& flow) : flow_(flow) {
        const auto& pieces = flow.plan().pieces;
        columns_ = std::any_of(pieces.begin(), pieces.end(), varied_spacing) ? wide_spacing : even_columns;
    }

    void draw() {
        const auto& pieces = flow_.plan().pieces;
        flow_.need(table_row * std::min(3.0, static_cast<double>(pieces.size())) + 60_pt);
        head();
        for (const plan::Piece& piece : pieces) {
            if (flow_.y - table_row < CoverFlow::lowest) {
                flow_.start_page(false);
                head();
            }
            row(piece);
        }
        for (const plan::Refused& refused : flow_.plan().refused) {
            if (flow_.y - table_row < CoverFlow::lowest) {
                flow_.start_page(false);
                head();
            }
            refused_row(refused);
        }
    }

private:
    const fonts::Style& style() const { return flow_.style(); }

    void rule(Length width) {
        Pen pen = flow_.pen();
        pen.line(Role::box, {side_margin, flow_.y}, {flow_.right(), flow_.y}, width);
    }

    void head() {
        Pen pen = flow_.pen();
        flow_.y -= 20_pt;
        section(pen, side_margin, flow_.right(), flow_.y, flow_.words("cover.pieces"));
        flow_.y -= 20_pt;
        {
            const Scope table = pen.going_on(Tag::table);
            const Scope line = pen.within(Tag::row);
            for (const Column& column : columns_)
                cell(Tag::header_cell, column, flow_.words(column.key), CoverFlow::regular(style().small));
        }
        flow_.y -= 5_pt;
        rule(style().line);
    }

    void cell(Tag tag, const Column& column, const std::string& text, Type type) {
        type.align = column.align;
        Pen pen = flow_.pen();
        const Scope part = pen.within(tag);
        pen.text(Role::text, {side_margin + flow_.width() * column.at, flow_.y}, text, type);
    }

    void row(const plan::Piece& piece) {
        Pen pen = flow_.pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        flow_.y -= table_row - 6_pt;
        const Tape& tape = flow_.tape;
        const std::array<std::string, 9> texts{
            piece.quantity > 1 ? piece.id + " x" + std::to_string(piece.quantity) : piece.id,
            piece_name(piece, flow_.kit()),
            tape.exact_plain(piece.thickness) + " x " + tape.exact_plain(piece.width),
            std::to_string(piece.kerfs.size()),
            tape.exact_plain(piece.kerf_depth),
            spacing_plain(piece, flow_.kit(), tape),
            tape.plain(piece.blank_length),
            tape.number(piece.bend.utilisation, 2),
            verdict_word(piece.bend.verdict, flow_.kit())};
        for (std::size_t i = 0; i < texts.size(); ++i)
            cell(i == 0 ? Tag::row_header : Tag::cell, columns_.at(i), texts.at(i), type_of(piece, i, texts.at(i)));
        flow_.y -= 6_pt;
        rule(style().hair);
    }

    /// One that cannot be made has no figures to show.
    void refused_row(const plan::Refused& refused) {
        Pen pen = flow_.pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        flow_.y -= table_row - 6_pt;
        const fonts::Style& style = flow_.style();
        cell(Tag::row_header, columns_[0], refused.id, CoverFlow::bold(style.text));
        cell(Tag::cell, columns_[1], refused_name(refused, flow_.kit()), CoverFlow::regular(style.text));
        pen.empty_cells(static_cast<int>(verdict_column) - 3);
        // Right of its middle the row has no figures: the words end where the last column begins.
        const Column wide{"", columns_.at(verdict_column).at - 0.02, Align::right};
        cell(Tag::cell, wide, flow_.words("cover.refused_row"), CoverFlow::regular(style.small));
        cell(Tag::cell, columns_.at(verdict_column), flow_.words("cover.refused_verdict"),
             {Face::condensed_bold, style.text});
        flow_.y -= 6_pt;
        rule(style.hair);
    }

    Type type_of(const plan::Piece& piece, std::size_t column, const std::string& text) {
        const bool strong = column == 0 || (column == verdict_column && piece.bend.verdict != bend::Verdict::ok);
        if (column == verdict_column && piece.bend.verdict == bend::Verdict::break_likely)
            return {Face::condensed_bold, style().small};
        Type type{strong ? Face::bold : Face::regular, style().text};
        if (column > 0 && columns_.at(column).align == Align::left) return type;
        const std::size_t before = column == 0 ? 0 : column - 1;
        const std::size_t after = column == 0 ? 1 : column;
        Length room = flow_.width() * (columns_.at(after).at - columns_.at(before).at) - 6_pt;
        if (column == board_column)
            room -= flow_.pen().width(piece_name(piece, flow_.kit()), CoverFlow::regular(style().text));
        const auto too_wide = [&] { return flow_.pen().width(text, type) > room; };
        if (too_wide()) type.face = strong ? Face::condensed_bold : Face::condensed;
        if (too_wide()) type.size = style().small;
        return type;
    }

    CoverFlow& flow_;
    Columns columns_{};
};

/// Small lines under the table, each whole on its page.
void note(CoverFlow& flow, const std::string& text, Length indent = {}) {
    const Type type = CoverFlow::regular(flow.style().small);
    const Length width = flow.width() - indent;
    flow.need(note_leading + flow.pen().paragraph_height(text, type, width, note_leading));
    Pen pen = flow.pen();
    const Scope list = pen.going_on(Tag::list);
    const Scope item = pen.within(Tag::list_item);
    flow.y = pen.paragraph(Role::text, {side_margin + indent, flow.y - note_leading}, text, type, width, note_leading);
}

/// The same sentence about several pieces is said once: "A, B: Kerfs OUTSIDE ...".
void notes(CoverFlow& flow) {
    const auto& pieces = flow.plan().pieces;
    flow.y -= 0.5_pt;
    note(flow, flow.words("cover.table_note"));
    std::string chances;
    for (const plan::Piece& piece : pieces)
        chances +=
            (chances.empty() ? "" : "; ") +
            flow.words("chance.on_cover_piece", {{"piece", piece.id}, {"chance", chance_text(piece, flow.kit())}});
    if (!chances.empty()) note(flow, flow.words("chance.on_cover", {{"pieces", chances}}));
    std::string moves;
    for (const plan::Piece& piece : pieces)
        if (piece.moisture_move > 0_mm)
            moves += (moves.empty() ? "" : "; ") +
                     flow.words("cover.moisture_piece",
                                {{"piece", piece.id}, {"move", flow.tape.with_unit(piece.moisture_move)}});
    if (!moves.empty()) note(flow, flow.words("cover.moisture", {{"pieces", moves}}));
    std::vector<std::pair<std::string, std::string>> said;  // pieces, sentence
    for (const plan::Piece& piece : pieces) {
        const std::string sentence = kerf_side(piece, flow.kit()) + ". " + zero_end(piece, flow.kit()) + ".";
        const auto same = std::find_if(said.begin(), said.end(), [&](const auto& s) { return s.second == sentence; });
        if (same == said.end()) said.emplace_back(piece.id, sentence);
        else same->first.append(", ").append(piece.id);
    }
    for (const auto& [ids, sentence] : said) note(flow, std::string(ids).append(": ").append(sentence));
    flow.y -= 4_pt;
}

/// A short list under a heading; nothing when it is empty.
void list(CoverFlow& flow, const char* heading, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    flow.heading(heading, note_leading * 2);
    for (const std::string& line : lines) note(flow, line);
    flow.y -= 2_pt;
}

/// What was left to the program; pieces that came out alike are said once.
std::vector<std::string> settings(const CoverFlow& flow) {
    std::vector<std::pair<std::string, std::string>> said;  // pieces, sentences
    for (const plan::Piece& piece : flow.plan().pieces) {
        std::string text;
        for (const std::string& sentence : settings_sentences(piece, flow.kit(), flow.tape)) text += " " + sentence;
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

std::vector<std::string> mitres(const CoverFlow& flow) {
    std::vector<std::string> lines;
    for (const plan::Piece& piece : flow.plan().pieces)
        if (const std::vector<std::string> texts = mitre_texts(piece, flow.kit()); !texts.empty())
            lines.push_back(piece.id + ": " + texts.front() + (texts.size() > 1 ? "; " + texts.back() : ""));
    return lines;
}

/// Each leg of an opening once, whichever of its boards has it.
std::vector<std::string> leg_boards(const CoverFlow& flow) {
    std::vector<std::string> lines;
    for (const plan::Piece& piece : flow.plan().pieces)
        for (const plan::LegBoard& board : piece.leg_boards) {
            std::string line = measured_id(piece) + ", " + leg_board_text(board, flow.kit(), flow.tape);
            if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(std::move(line));
        }
    return lines;
}

}  // namespace

void cover_table(CoverFlow& flow) {
    Table(flow).draw();
    notes(flow);
    list(flow, "cover.settings", settings(flow));
    list(flow, "cover.mitres", mitres(flow));
    list(flow, "cover.leg_boards", leg_boards(flow));
}

}  // namespace kerfpacket::sheets
