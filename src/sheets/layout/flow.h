#pragma once
// Words, tables and drawings poured down a page, and on to a further page where the room ends.

#include <functional>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "sheets/layout/draft.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

/// A block that needs more than a page at the type sizes of the shop's layout.toml; what() names the sheet.
struct DoesNotFit : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// From one baseline to the next in a paragraph of this type size.
inline Length leading(Length type_size) { return type_size * (14.0 / 11); }

/// Baseline of the first line of words in a block.
inline Length first_base(const Rect& block, Length type_size) { return block.high.y - type_size * 0.95; }

/// Some words and, behind them, a line to write on at least as long as `least`.
struct Blank {
    std::string words;
    Length least = 60_pt;
    std::string behind{};  ///< what stands after the line: a unit
};

/// What stands before a line of a list: a square to tick, or words in bold, or white.
struct Lead {
    bool box = false;
    std::string words{};
    Length indent{};  ///< of the line's text
};

/// Fills the pages of one sheet from the top. Blocks are never cut in two; a heading stays with the block after it.
class Flow {
public:
    /// Makes an empty page of the sheet; `first` for its first.
    using NewPage = std::function<Draft(bool first)>;

    /// Room of a page: from so far below its upper edge down to so far above its lower edge.
    struct Region {
        Length below_top = 68_pt;
        Length lowest = 44_pt;
        double white = 1;  ///< between blocks, of what is usual: less often saves a page
    };

    Flow(Drafts& drafts, const Kit& kit, NewPage new_page, Region region);
    Flow(Drafts& drafts, const Kit& kit, NewPage new_page) : Flow(drafts, kit, std::move(new_page), Region{}) {}

    const Kit& kit() const { return kit_; }
    const fonts::Style& style() const { return kit_.style; }
    /// Of the page that is being filled.
    Pen pen() { return {drafts_.back().page, kit_}; }
    Length left() const;
    Length right() const;
    Length width() const { return right() - left(); }
    /// How far the page is filled, from its lower edge.
    Length y() const { return y_; }
    /// Of an empty page.
    Length page_room() const { return drafts_.back().page.height - region_.below_top - region_.lowest; }
    /// What is left of the page under a heading that waits for its block.
    Length room() const { return y_ - waiting_height() - region_.lowest; }

    /// White before the next block; none at the head of a page.
    void skip(Length gap);
    /// Begins a further page, unless nothing stands on this one.
    void next_page();
    /// A strip of the page for a block of this height, on this page or the next. Throws DoesNotFit.
    Rect take(Length height);
    /// The lowest strip of this page, or of the next where this one has no room for it; closes the page.
    Rect take_foot(Length height);
    /// A picture at most so high; `draw` tells how far down it came.
    void picture(Length most, const std::function<Length(Pen&, const Rect&)>& draw);

    void heading(std::string text, std::string aside = {});
    /// The same over the blocks that `pour` takes, and again on every page that these go on to.
    void under_heading(const std::string& text, const std::function<void()>& pour);
    void paragraph(Role role, const std::string& text, const Type& type);
    /// Words in a box of this line; returns the box.
    Rect boxed(Role role, const std::string& text, const Type& type, Length line);
    /// One line of a list; `beside` stands at the right end of its last line.
    void listed(Role role, const Lead& lead, const std::string& text, const Type& type,
                const std::optional<Blank>& beside = std::nullopt);
    /// The same with a square to tick.
    void item(Role role, const std::string& text, const Type& type, const std::optional<Blank>& beside = std::nullopt);
    /// A square to tick and blanks to write in; goes on to further lines where they do not fit beside each other.
    void blank_item(const std::vector<Blank>& blanks);

private:
    struct Waiting {
        std::string text;
        std::string aside;
    };

    Length waiting_height() const;
    /// Lines to write on stand apart so that a hand finds room.
    Length blank_leading() const { return style().text * 1.6; }
    void start_page(bool first);
    void draw_waiting();
    std::vector<std::vector<Blank>> in_lines(const std::vector<Blank>& blanks, Length width);
    void blank_lines(const std::vector<Blank>& blanks, Length indent, const Rect& room);

    Drafts& drafts_;
    const Kit& kit_;
    NewPage new_page_;
    Region region_;
    std::optional<Waiting> waiting_;  ///< a heading whose block has not come yet
    std::string lasting_;             ///< one that further pages begin with; none is empty
    Length y_;
    bool fresh_ = true;  ///< nothing stands on the page
};

/// A table poured row by row into a flow; a page that it goes on to begins with its heads.
class FlowTable {
public:
    struct Column {
        std::string head;
        double share = 0;       ///< of the flow's width
        bool at_right = false;  ///< figures, one under the other; what takes several lines stands at the left
        bool bold = false;      ///< the figure that is acted on
    };

    /// No heads are drawn where all are empty.
    FlowTable(Flow& flow, std::vector<Column> columns);

    /// Each cell is broken into lines where its column asks for it; the first names the row. Returns its room.
    Rect row(const std::vector<std::string>& cells, Face face = Face::regular);

private:
    Length column_width(std::size_t column);
    static Type of_cell(const Column& column, Type type, bool heads);
    Length height_of(const std::vector<std::string>& cells, const Type& type, bool heads = false);
    void draw(const Rect& room, const std::vector<std::string>& cells, const Type& type, bool heads);

    Flow& flow_;
    std::vector<Column> columns_;
    std::vector<std::string> heads_;
    bool has_heads_ = false;
    bool begun_ = false;
};

}  // namespace kerfpacket::sheets
