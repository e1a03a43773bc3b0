#include "plan/stock_boards.h"

#include <algorithm>
#include <cmath>

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

/// The narrowest that is wide enough.
std::optional<Length> narrowest(const std::string& material, Length thickness, Length width, const job::Stock& stock,
                                bool for_sale) {
    std::optional<Length> best;
    for (const job::StockBoard& board : stock.boards) {
        const Length wide = board.width.value;
        if (!is_of(board, material, thickness) || board.for_sale() != for_sale) continue;
        if (wide < width && !job::same_size(wide, width)) continue;
        if (!best || wide < *best) best = wide;
    }
    return best;
}

void add_for_all(std::vector<StockLength>& lengths, const job::Stock& stock, Unit unit, bool& usual) {
    usual = stock.lengths.empty();
    for (const auto& length : stock.lengths) lengths.push_back({length.value, {}, {}, length.at});
    if (!usual) return;
    for (const Length length : usual_stock_lengths(unit)) lengths.push_back({length});
}

/// How long strips of its sheets are.
std::vector<StockLength> strips_of(const SectionKey& key, bool grain, const job::Stock& stock) {
    std::vector<StockLength> strips;
    for (const job::StockBoard& sheet : stock.sheets)
        if (is_of(sheet, key.material, key.thickness))
            strips.push_back({grain ? sheet.length.value : std::max(sheet.length.value, sheet.width.value),
                              sheet.cents,
                              {},
                              sheet.at});
    return strips;
}

}  // namespace

std::vector<Length> usual_stock_lengths(Unit unit) {
    if (unit == Unit::inch) return {96_in, 144_in, 192_in};
    return {2400_mm, 3600_mm, 4800_mm};
}

Length end_trim(const job::Stock& stock, Unit unit) {
    return stock.end_trim.value_or(unit == Unit::inch ? 0.5_in : 12_mm);
}

Length least_offcut(const job::Stock& stock, Unit unit) {
    return stock.least_offcut.value_or(unit == Unit::inch ? 24_in : 600_mm);
}

SectionKey section_of(const std::string& material, Length thickness, Length width, const job::Stock& stock) {
    const auto sold = narrowest(material, thickness, width, stock, true);
    const auto any = sold ? sold : narrowest(material, thickness, width, stock, false);
    return {material, thickness, any.value_or(width)};
}

SectionKey section_of(const Piece& piece, const job::Stock& stock) {
    SectionKey key = section_of(piece.material, piece.cut.thickness, piece.stock_width(), stock);
    for (const bend::ProfilePoint& point : piece.cut.profile)
        for (const Length one : {point.height, point.thickness}) key.profile.push_back(std::lround(one.mm() * 100));
    return key;
}

SectionKey key_of(const StockSection& section) {
    return {section.material, section.thickness, section.width, section.profile};
}

void tell_what_is_listed(StockSection& section, const job::Stock& stock) {
    const auto nearer = [&](Length a, Length b) {
        return measure::abs(a - section.thickness) < measure::abs(b - section.thickness);
    };
    std::optional<Length> widest;
    std::optional<Length> thickness;
    for (const job::StockBoard& board : stock.boards) {
        if (board.material.value != section.material) continue;
        if (!job::same_size(board.thickness.value, section.thickness)) {
            if (!thickness || nearer(board.thickness.value, *thickness)) thickness = board.thickness.value;
            continue;
        }
        const Length wide = board.width.value;
        const bool does = wide >= section.width || job::same_size(wide, section.width);
        if (does && board.for_sale()) return;
        if (!does && (!widest || wide > *widest)) widest = wide;
    }
    section.too_narrow = widest;
    if (!widest) section.other_thickness = thickness;
}

std::vector<StockLength> lengths_of(const SectionKey& key, const job::Stock& stock, Unit unit, bool& usual) {
    std::vector<StockLength> lengths;
    bool sold = false;
    for (const job::StockBoard& board : stock.boards) {
        if (!is_of(board, key.material, key.thickness) || !job::same_size(board.width.value, key.width)) continue;
        if (board.on_hand) lengths.push_back({board.length.value, {}, board.on_hand, board.at});
        if (!board.for_sale()) continue;
        lengths.push_back({board.length.value, board.cents, {}, board.at});
        sold = true;
    }
    usual = false;
    if (!sold) add_for_all(lengths, stock, unit, usual);
    return lengths;
}

bool from_sheets(const std::string& material, Length thickness, Length width, const job::Stock& stock) {
    return !narrowest(material, thickness, width, stock, true) &&
           std::any_of(stock.sheets.begin(), stock.sheets.end(),
                       [&](const job::StockBoard& sheet) { return is_of(sheet, material, thickness); });
}

LongestBlank longest_blank(const SectionKey& key, bool grain, const job::Stock& stock, Unit unit) {
    LongestBlank longest;
    for (const StockLength& one : from_sheets(key.material, key.thickness, key.width, stock)
                                      ? strips_of(key, grain, stock)
                                      : lengths_of(key, stock, unit, longest.usual)) {
        const Length room = one.length - end_trim(stock, unit) * 2;
        longest.rooms.push_back(room);
        if (one.length <= longest.stock) continue;
        longest.stock = one.length;
        longest.most = room;
        longest.at = one.at;
    }
    std::sort(longest.rooms.begin(), longest.rooms.end());
    return longest;
}

}  // namespace kerfpacket::plan
