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
const LengthKey sheet_width{"width", 1_in, 120_in, R"("49 in")"};
const LengthKey sheet_length{"length", 1_in, 240_in, R"("97 in")"};
const NumberKey price{"price", 0.01, 100000, "from 0.01 to 100000, of one", "18.40"};
constexpr int most_on_hand = 200;

/// Boards and sheets are read alike; what is said of them differs.
struct Rows {
    std::string_view key;
    std::string_view header;
    const LengthKey& width;
    const LengthKey& length;
    bool by_width;  ///< widths are bought apart
    // In messages.
    std::string_view one;
    std::string_view each;     ///< to be written once
    std::string_view group;    ///< that has prices all or none
    std::string_view measure;  ///< of which each is priced
};
const Rows board_rows{"boards", "[[stock.boards]]",    width,     length,  true,
                      "board",  "length of a section", "section", "length"};
const Rows sheet_rows{"sheets", "[[stock.sheets]]", sheet_width, sheet_length, false, "sheet",
                      "size",   "thickness",        "size"};

bool same_section(const StockBoard& a, const StockBoard& b, bool by_width) {
    return a.material.value == b.material.value && same_size(a.thickness.value, b.thickness.value) &&
           (!by_width || same_size(a.width.value, b.width.value));
}

StockBoard read_row(Context& context, const toml::table& table, const Rows& rows) {
    TableReader reader(context, table, std::string(rows.header));
    StockBoard board;
    board.at = reader.at();
    board.material = reader.words("material", 40, R"("mdf")").value_or(Sourced<std::string>{});
    board.thickness = reader.needed_length(thickness);
    board.width = reader.needed_length(rows.width);
    board.length = reader.needed_length(rows.length);
    if (const auto paid = reader.number(price)) board.cents = static_cast<int>(measure::nearest(*paid * 100));
    if (const auto count = reader.whole("on_hand", most_on_hand)) board.on_hand = count->value;
    reader.finish();
    return board;
}

/// The same one twice, of which only one could count.
void check_doubled(Context& context, const std::vector<StockBoard>& all, const Rows& rows) {
    for (auto row = all.begin(); row != all.end(); ++row) {
        const auto same = [&](const StockBoard& other) {
            return same_section(*row, other, true) && same_size(row->length.value, other.length.value) &&
                   (row->for_sale() == other.for_sale() || (row->on_hand && other.on_hand));
        };
        if (std::any_of(all.begin(), row, same))
            context.error(row->at, "this " + std::string(rows.one) + " stands in the stock twice",
                          "write each " + std::string(rows.each) +
                              " once: what lies in the rack has on_hand, what is sold a price");
    }
}

/// Prices of some of what is sold in a section would make the others free.
void check_prices(Context& context, const std::vector<StockBoard>& all, const Rows& rows) {
    for (const StockBoard& row : all) {
        if (!row.for_sale() || row.cents) continue;
        const bool others = std::any_of(all.begin(), all.end(), [&](const StockBoard& other) {
            return same_section(row, other, rows.by_width) && other.cents.has_value();
        });
        const std::string one(rows.one);
        if (others)
            context.error(row.at,
                          "this " + one + " has no price, though another of its " + std::string(rows.group) + " has",
                          "expected a price of each " + std::string(rows.measure) + " that is sold, or of none; a " +
                              one + " that only lies in the rack has on_hand");
    }
}

/// The rows of the file, in place of the shop's; none where it has none.
void read_rows(Context& context, TableReader& reader, const Rows& rows, std::vector<StockBoard>& into) {
    const std::size_t mistakes = context.mistakes();
    std::vector<StockBoard> read;
    for (const auto* row : reader.tables(rows.key)) read.push_back(read_row(context, *row, rows));
    if (read.empty()) return;
    into = std::move(read);
    if (context.mistakes() > mistakes) return;
    check_doubled(context, into, rows);
    check_prices(context, into, rows);
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
    read_rows(context, reader, board_rows, stock.boards);
    read_rows(context, reader, sheet_rows, stock.sheets);
    reader.finish();
    return stock;
}

}  // namespace kerfpacket::job
