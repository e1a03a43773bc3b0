#pragma once
// What a section's boards can be cut from, inside this room only.

#include <vector>

#include "job/same_size.h"
#include "plan/piece.h"
#include "plan/stock_plan.h"

namespace kerfpacket::plan {

/// Material, thickness, the width of what it is cut from, and its profile: blanks of one section share boards.
struct SectionKey {
    std::string material;
    Length thickness;
    Length width;
    StockProfile profile{};
    auto operator<=>(const SectionKey&) const = default;  // NOLINT(modernize-use-nullptr): clang-tidy 14 errs on <=>
};

/// The section that a blank is cut from: the narrowest width of the stock that it can be ripped from, what is sold
/// before what only lies in the rack; its own width where the stock has none.
SectionKey section_of(const std::string& material, Length thickness, Length width, const job::Stock& stock);
/// That of a board's blanks, and the one that a section was made of.
SectionKey section_of(const Piece& piece, const job::Stock& stock);
SectionKey key_of(const StockSection& section);

/// Whether they differ by their profiles alone: what lies in the rack is for the first of such, the flat one.
inline bool same_size(const SectionKey& a, const SectionKey& b) {
    return a.material == b.material && a.thickness == b.thickness && a.width == b.width;
}

/// Whether a blank is ripped from a sheet: the stock has sheets of it, and no board for sale that is wide enough.
bool from_sheets(const std::string& material, Length thickness, Length width, const job::Stock& stock);
/// Whether a row of the stock's boards or sheets is of that material and thickness.
inline bool is_of(const job::StockBoard& row, const std::string& material, Length thickness) {
    return row.material.value == material && job::same_size(row.thickness.value, thickness);
}

/// What is sawn off each end of a board, and the shortest offcut that is kept: as the job says, or what is usual
/// (common practice, no source).
Length end_trim(const job::Stock& stock, Unit unit);
Length least_offcut(const job::Stock& stock, Unit unit);

/// One length of board.
struct StockLength {
    Length length;
    std::optional<int> cents{};
    std::optional<int> on_hand{};  ///< how many; none: for sale
    job::Position at{};            ///< where the job says so
};

/// What a section can be cut from: the job's boards of it; where none of them is for sale, the lengths that the job
/// names for all boards; where it names none, the usual ones (then `usual` is set).
std::vector<StockLength> lengths_of(const SectionKey& key, const job::Stock& stock, Unit unit, bool& usual);

/// Why nothing that is sold will do for a section, into it: too narrow, or of another thickness.
void tell_what_is_listed(StockSection& section, const job::Stock& stock);

/// What blanks of a section find room in.
struct LongestBlank {
    Length most;                ///< the longest blank, both ends of its board sawn off
    std::vector<Length> rooms;  ///< the same of every length, the shortest first
    Length stock;               ///< the board that holds the longest
    bool usual = false;         ///< the job does not say what is sold
    job::Position at{};         ///< where it says so
};
/// `grain`: the blank runs along that of a sheet; else along its longer side.
LongestBlank longest_blank(const SectionKey& key, bool grain, const job::Stock& stock, Unit unit);

}  // namespace kerfpacket::plan
