#include <algorithm>

#include "job/same_size.h"
#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey stock_lengths{"lengths", 1_in, longest, R"(["8 ft", "12 ft"])"};
const LengthKey sheet{"sheet", 1_in, longest, R"(["49 in", "97 in"])"};
const LengthKey end_trim{"end_trim", finest, 12_in, R"("1/2 in")", true};
const LengthKey least_offcut{"least_offcut", 1_in, 120_in, R"("24 in")"};
const LengthKey thickness{"thickness", 1_mm, 4_in, R"("3/4 in")"};
const LengthKey width{"width", 0.5_in, 60_in, R"("7 1/4 in")"};
const LengthKey length{"length", 1_in, longest, R"("12 ft")"};
const NumberKey price{"price", 0.01, 100000, "from 0.01 to 100000, of one board", "18.40"};
constexpr int most_on_hand = 200;

bool same_section(const StockBoard& a, const StockBoard& b) {
    return a.material.value == b.material.value && same_size(a.thickness.value, b.thickness.value) &&
           same_size(a.width.value, b.width.value);
}

StockBoard read_board(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[[stock.boards]]");
    StockBoard board;
    board.at = reader.at();
    board.material = reader.words("material", 40, R"("mdf")").value_or(Sourced<std::string>{});
    board.thickness = reader.needed_length(thickness);
    board.width = reader.needed_length(width);
    board.length = reader.needed_length(length);
    if (const auto paid = reader.number(price)) board.cents = static_cast<int>(measure::nearest(*paid * 100));
    if (const auto count = reader.whole("on_hand", most_on_hand)) board.on_hand = count->value;
    reader.finish();
    return board;
}

/// The same board twice, of which only one could count.
void check_doubled(Context& context, const std::vector<StockBoard>& boards) {
    for (auto board = boards.begin(); board != boards.end(); ++board) {
        const auto same = [&](const StockBoard& other) {
            return same_section(*board, other) && same_size(board->length.value, other.length.value) &&
                   (board->for_sale() == other.for_sale() || (board->on_hand && other.on_hand));
        };
        if (std::any_of(boards.begin(), board, same))
            context.error(
                board->at, "this board stands in the stock twice",
                "write each length of a section once: what lies in the rack has on_hand, what is sold a price");
    }
}

/// Prices of some of what is sold in a section would make the others free.
void check_prices(Context& context, const std::vector<StockBoard>& boards) {
    for (const StockBoard& board : boards) {
        if (!board.for_sale() || board.cents) continue;
        const bool others = std::any_of(boards.begin(), boards.end(), [&](const StockBoard& other) {
            return same_section(board, other) && other.cents.has_value();
        });
        if (others)
            context.error(board.at, "this board has no price, though another of its section has",
                          "expected a price of each length that is sold, or of none; a board that only lies in the "
                          "rack has on_hand");
    }
}

}  // namespace

Stock read_stock(Context& context, const toml::table& table, const Stock& otherwise) {
    TableReader reader(context, table, "[stock]");
    Stock stock = otherwise;
    if (auto lengths = reader.lengths(stock_lengths, 0); !lengths.empty()) stock.lengths = std::move(lengths);
    if (const auto sides = reader.lengths(sheet, 2); sides.size() == 2)
        stock.sheet = std::array<Length, 2>{sides[0].value, sides[1].value};
    if (const auto trim = reader.length(end_trim, Need::optional)) stock.end_trim = trim->value;
    if (const auto kept = reader.length(least_offcut, Need::optional)) stock.least_offcut = kept->value;
    const std::size_t mistakes = context.mistakes();
    std::vector<StockBoard> boards;
    for (const auto* board : reader.tables("boards")) boards.push_back(read_board(context, *board));
    reader.finish();
    if (boards.empty()) return stock;
    stock.boards = std::move(boards);
    if (context.mistakes() > mistakes) return stock;
    check_doubled(context, stock.boards);
    check_prices(context, stock.boards);
    return stock;
}

}  // namespace kerfpacket::job
