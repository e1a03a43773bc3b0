#pragma once
// Which boards to buy, and what to cut from each.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "job/job.h"

namespace kerfpacket::plan {

using measure::Length;
using measure::Unit;

/// A board to be cut to its length: a blank, a straight board down a leg, or what a casing segment is sawn from.
struct StockBlank {
    enum class Of { piece, left_leg, right_leg, segment };

    std::string id;  ///< of its piece; with several jobs, the job's number before it
    Of part = Of::piece;
    int copy = 1;  ///< of several alike
    int copies = 1;
    Length length;  ///< as the work order tells to cut it: rounded for the tape, trim at both ends included
    Length width;
    int segment = 0;       ///< its number from the left, of a casing segment
    bool stopped = false;  ///< its board is not to be cut, though it is bought for: see plan/stopped.h
};

/// A board of stock and what is cut from it, from its trimmed end on.
struct CutStick {
    Length length;
    bool in_rack = false;
    std::vector<StockBlank> blanks;  ///< the longest first
    Length offcut;                   ///< what is left, its far end as it was bought
    bool kept = false;               ///< the offcut is long enough to keep
};

/// Like boards to buy.
struct Bought {
    Length length;
    int count = 0;
    std::optional<int> cents{};  ///< of one
};

/// Other joints of a board with which less is bought than with the straightest.
struct CheaperJoints {
    std::string id;               ///< of the board
    std::vector<Length> instead;  ///< its joints in this plan: middles, from zero
    std::vector<Length> joints;
    bool in_bend = false;    ///< one of these lies in the bend
    std::int64_t cents = 0;  ///< saved, where there are prices; with those before it in the list
    Length length;           ///< the same of the length that is bought
};

/// Heights and thicknesses of a molded board, in hundredths of a millimeter; none for a flat one.
using StockProfile = std::vector<long>;

/// The boards of one material, thickness, width and profile.
struct StockSection {
    std::string material;
    bool own_material = false;  ///< the user's: printed under the name that it is given
    bool casing = false;        ///< of casing segments: no job says their material and thickness
    Length thickness;
    Length width;                ///< of the stock; narrower blanks are ripped from it
    StockProfile profile{};      ///< molded boards share no stick with flat ones
    bool usual_lengths = false;  ///< the job does not say what is sold, or nothing of it will do
    /// Where nothing that is sold will do: the widest that is listed of this thickness, or the nearest thickness.
    std::optional<Length> too_narrow{};
    std::optional<Length> other_thickness{};
    std::vector<CutStick> sticks;     ///< longest first, like ones together
    std::vector<StockBlank> no_room;  ///< for which no board of the stock is long enough, or which are too many
    std::vector<Bought> to_buy;       ///< longest first
    bool priced = false;
    std::int64_t cents = 0;        ///< of all that is bought, where there are prices
    Length bought;                 ///< length of all that is bought
    bool proved = false;           ///< no plan costs less, or where there are no prices, buys less length
    std::int64_t cents_at_most{};  ///< that another plan could save; 0 where proved
    Length length_at_most;         ///< the same where there are no prices
    std::vector<CheaperJoints> cheaper{};
};

/// A strip as long as its sheet, and what is crosscut from it.
struct CutStrip {
    Length width;
    Length from;   ///< its nearer edge, from the edge of the sheet as it was bought
    CutStick cut;  ///< as of a board that is so wide
};

/// A sheet and the strips that are ripped from it, from its trimmed edge on.
struct CutSheet {
    Length length;  ///< along the strips
    Length width;
    bool in_rack = false;
    std::vector<CutStrip> strips;  ///< the widest first
    Length offcut;                 ///< width of what is left beside the strips, its far edge as it was bought
    bool kept = false;             ///< the offcut would make another strip
};

/// Like sheets to buy.
struct BoughtSheets {
    Length length;  ///< as the job gives it
    Length width;
    int count = 0;
    std::optional<int> cents{};  ///< of one
};

/// The sheets of one material and thickness.
struct SheetSection {
    std::string material;
    bool own_material = false;
    Length thickness;
    bool grain = false;               ///< strips run along it
    std::vector<CutSheet> sheets;     ///< like ones together
    std::vector<StockBlank> no_room;  ///< that no sheet holds, or for which none is left
    std::vector<BoughtSheets> to_buy;
    bool priced = false;
    std::int64_t cost = 0;     ///< of all that is bought: cents, where there are prices, else square inches or cm
    std::int64_t at_most = 0;  ///< what another plan with one width to a strip could save of it; 0 where none can
    bool proved() const { return at_most == 0; }
};

struct StockPlan {
    Unit unit = Unit::inch;
    Length kerf;          ///< of every crosscut
    Length end_trim;      ///< sawn off the end that all is measured from, kerf included; spared at the other
    Length least_offcut;  ///< the shortest that is kept
    std::vector<StockSection> sections;
    std::vector<SheetSection> sheets{};
    job::Diagnostics refused{};           ///< blanks that no stock holds, and what would do
    std::vector<std::string> stopped{};   ///< boards in it that are not to be cut
    std::vector<std::string> not_made{};  ///< openings and walls that are not in it: they cannot be made as asked
};

/// Lengths that boards are usually sold in, where the job does not say. Common practice, no source.
std::vector<Length> usual_stock_lengths(Unit unit);

}  // namespace kerfpacket::plan
