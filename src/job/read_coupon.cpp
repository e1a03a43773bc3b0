#include "job/shapes.h"
#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey chord{"chord", 1_in, 120_in, R"("12 in")"};
const LengthKey rise{"rise", Length(), 120_in, R"("1-3/8 in")"};
const LengthKey kerf_depth{"kerf_depth", finest, 3_in, R"("3/8 in")"};
const LengthKey spacing{"spacing", 0.0625_in, 3_in, R"("1/2 in")"};

/// True when the board leaves a setting to the program, so that only the coupon can say how it was cut.
bool left_open(const TableReader& board, const LengthKey& key, const Setting& setting) {
    return !board.has(key.name) || setting.solve;
}

}  // namespace

std::optional<Coupon> read_coupon(Context& context, TableReader& board_reader, std::string_view board_title,
                                  const Board& board) {
    const std::string title = "[" + std::string(board_title) + ".coupon]";
    const auto* table = board_reader.table("coupon", Need::optional, title);
    if (table == nullptr) return std::nullopt;
    TableReader reader(context, *table, title);
    Coupon coupon;
    coupon.at = reader.at();
    coupon.chord = reader.needed_length(chord);
    coupon.rise = reader.needed_length(rise);
    coupon.held = reader.choice<Held>("held", held_words(), Need::required).value_or(Sourced<Held>{});
    coupon.outcome = reader.choice<Outcome>("result", outcome_words(), Need::required).value_or(Sourced<Outcome>{});
    coupon.by = reader.words("by", 40, R"("Ann Ferrier")").value_or(Sourced<std::string>{}).value;
    coupon.kerf_depth = reader.length(kerf_depth, Need::optional);
    coupon.spacing = reader.length(spacing, Need::optional);
    coupon.believed = reader.flag("believed", false);
    if (left_open(board_reader, kerf_depth, board.kerf_depth) && !reader.has(kerf_depth.name))
        reader.missing({kerf_depth.name}, "kerf_depth is missing from " + title,
                       "the board leaves its depth to the program: say at which depth the coupon was cut, " +
                           for_example(kerf_depth.name, kerf_depth.example));
    if (left_open(board_reader, spacing, board.spacing) && !reader.has(spacing.name))
        reader.missing({spacing.name}, "spacing is missing from " + title,
                       std::string(board_reader.has("kerfs") ? "the board gives its kerfs one by one"
                                                             : "the board leaves its spacing to the program") +
                           ": say at which spacing the coupon was cut, " + for_example(spacing.name, spacing.example));
    reader.finish();
    return coupon;
}

}  // namespace kerfpacket::job
