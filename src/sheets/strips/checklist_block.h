#pragma once
// Ten kerfs of a checklist, a row each, and the foot that counts them.

#include <string>

#include "plan/piece.h"
#include "sheets/layout/draft.h"
#include "sheets/layout/pen.h"
#include "sheets/strips/checklist_row.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

inline constexpr std::size_t block_size = 10;
/// From one line of a foot in two languages to the next.
inline constexpr Length line_in_both = 12.5_pt;

/// How high the parts of a block are.
struct BlockHeights {
    Length head = 0_pt;  ///< names of the boards, where there are several
    Length row = 18_pt;
    Length foot = 41_pt;

    Length block() const { return head + row * static_cast<double>(block_size) + foot; }
};
/// For so many boards.
BlockHeights block_heights(std::size_t boards, const Kit& kit);

/// Words of the checklist, in a second language behind them where there is one: "10 done / hechas". The values stand
/// in the first alone.
std::string in_both(const Kit& kit, std::string_view key, const fonts::Words::Values& values = {});

class ChecklistBlock {
public:
    ChecklistBlock(Pen& pen, const plan::Piece& piece, const Tape& tape, const BlockHeights& heights,
                   const RowPlaces& places, const ForBoards& boards)
        : pen_(pen), piece_(piece), tape_(tape), heights_(heights), places_(places), boards_(boards) {}

    /// The kerfs from `first` up to `end`, counted from 0.
    void draw(Point top_left, Length width, std::size_t first, std::size_t end);

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    bool for_several() const { return boards_.count() > 1; }
    std::string board_name(int n) const;
    void names();
    void row(const plan::Kerf& kerf, Length down);
    void foot(std::size_t done, Length rows);
    void for_each_board(Length base, std::size_t done);
    void heads_of_boards(Length base, const fonts::Words& words);
    void line_of_board(Length base, int n);
    void to_tick(Length base, std::size_t done);
    void to_tick_in_both(Length base, std::size_t done);
    void depth_to_tick(Length base);
    Length set(const std::string& words, Point base, Length room);
    fonts::Words::Values tape_value(std::size_t done) const;
    fonts::Words::Values depth_value() const;
    std::string_view web_key() const;

    Pen& pen_;
    const plan::Piece& piece_;
    const Tape& tape_;
    BlockHeights heights_;
    RowPlaces places_;
    ForBoards boards_;
    Point top_left_{};
    Length width_;
};

}  // namespace kerfpacket::sheets
