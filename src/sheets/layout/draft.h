#pragma once
// A page on its way: its content and what its header will say once the number of pages is known.

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "page/document.h"
#include "plan/plan.h"
#include "sheets/layout/kit.h"
#include "sheets/layout/paper.h"

namespace kerfpacket::sheets {

/// Whether a page is to scale: then check bars stand on both axes.
enum class Scale { none, full };
enum class Orientation { portrait, landscape };

/// Whole numbers from `first` to `last`; none at all when `last` is 0.
struct Range {
    int first = 0;
    int last = 0;
    bool holds(int n) const { return first <= n && n <= last; }
    /// Makes room for one more.
    void take(int n) {
        first = last == 0 ? n : std::min(first, n);
        last = std::max(last, n);
    }
};

/// Numbers of the strips on a page: from 8 to 9 and from 1 to 3 where the strips of boards alike follow each other.
struct StripNumbers {
    std::vector<Range> runs;

    int last() const { return runs.empty() ? 0 : std::max(runs.front().last, runs.back().last); }
    bool holds(int n) const {
        return std::any_of(runs.begin(), runs.end(), [&](const Range& run) { return run.holds(n); });
    }
    void take(int n) {
        if (runs.empty() || n != runs.back().last + 1) runs.push_back({n, n});
        else runs.back().last = n;
    }
};

/// Of several boards alike those that a page is for, from the nth to the `last`; n is 0 where a hand writes it in.
struct ForBoards {
    int n = 1;
    int last = 1;
    int of = 1;
    int set = 1;  ///< which it is of the sets of pages that look alike

    int count() const { return last - n + 1; }
};

/// How a page of a roll is divided. It has no header: what it is called stands at both of its ends.
struct RollPage {
    Length edge;                     ///< kept free along both edges of the roll
    Length bar_row;                  ///< where a row under the content holds the check bar, its top; 0: at the far end
    std::vector<std::string> notes;  ///< what the first end says besides, for there is no statement line either
    // Along the feed, up to where content may stand; see measure_roll_ends.
    Length head;
    Length tail;
};

struct Draft {
    page::Page page;
    std::string tag;  ///< piece id in the black square; empty for none
    std::string title;
    std::string subtitle;
    std::string outline;  ///< bookmark of the page; empty for a page that follows its first
    Scale scale = Scale::none;
    Use use = Use::cards;
    Range kerfs{};  ///< numbers of the kerfs that the page marks or counts
    StripNumbers strips{};
    std::string also{};  ///< a kind of sheet, part of which stands on this page of another kind; empty for none
    ForBoards boards{};
    std::size_t setting = 0;  ///< how closely it is set, where it is drawn again for the numbers of pages
    std::optional<RollPage> roll{};
    bool reprint = false;
    bool second_language = false;  ///< the page is in the second language, its header and footer too
};

using Drafts = std::vector<Draft>;

/// An empty page of the paper for this use. On a roll `along` is how long the page is; on sheets it does not count.
inline Draft new_draft(const plan::Plan& plan, std::string sheet, Orientation orientation, Use use = Use::cards,
                       Length along = {}) {
    Draft draft;
    const Paper paper = paper_for(plan, use);
    draft.use = use;
    draft.page.sheet = std::move(sheet);
    const bool upright = orientation == Orientation::portrait;
    draft.page.width = paper.roll ? along : upright ? paper.width : paper.height;
    draft.page.height = paper.roll || !upright ? paper.width : paper.height;
    draft.page.structure.push_back({page::Tag::title, 0, {}});  // the header is drawn last and read first
    return draft;
}

/// A page of cards of the piece `id`, titled by `words` (its .title); the first of its sheet is in the outline of the
/// PDF.
inline Draft piece_page(const plan::Plan& plan, const Kit& kit, const std::string& id, std::string sheet,
                        const std::string& words, bool first) {
    Draft draft = new_draft(plan, std::move(sheet), Orientation::portrait);
    draft.page.piece = id;
    draft.tag = id;
    draft.title = kit.words(words + ".title");
    if (first) draft.outline = kit.words(words + ".outline", {{"piece", id}});
    return draft;
}

/// A page for one board of the piece: the nth, unless one set is printed for all.
inline ForBoards for_board(const plan::Plan& plan, const plan::Piece& piece, int n) {
    const int board = plan.packet.one_set && piece.quantity > 1 ? 0 : n;
    return {board, board, piece.quantity, n};
}

}  // namespace kerfpacket::sheets
