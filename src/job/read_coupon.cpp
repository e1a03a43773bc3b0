#include "job/choices.h"
#include "job/tables.h"
#include "job/text.h"
#include "job/validate.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey chord{"chord", 1_in, 120_in, R"("12 in")"};
const LengthKey rise{"rise", Length(), 120_in, R"("1-3/8 in")"};
const LengthKey kerf_depth{"kerf_depth", finest, 3_in, R"("3/8 in")"};
const LengthKey spacing{"spacing", 0.0625_in, 3_in, R"("1/2 in")"};
const LengthKey trial_thickness{"thickness", 0.125_in, 3_in, R"("3/4 in")"};
const LengthKey trial_kerf{"kerf", finest, 1_in, R"("0.118 in")"};

/// A shop that keeps its record for years; each row is a few lines.
constexpr std::size_t most_trials = 500;
/// The record asks for three.
constexpr std::size_t most_coupons = 20;

/// True when the board leaves a setting to the program, so that only the coupon can say how it was cut.
bool left_open(const TableReader& board, const LengthKey& key, const Setting& setting) {
    return !board.has(key.name) || setting.solve;
}

/// What a coupon and a trial have in common.
Coupon read_tried(TableReader& reader, Need by, Need cut) {
    Coupon coupon;
    coupon.at = reader.at();
    coupon.chord = reader.needed_length(chord);
    coupon.rise = reader.needed_length(rise);
    coupon.held = reader.choice<Held>("held", held_words(), Need::required).value_or(Sourced<Held>{});
    coupon.outcome = reader.choice<Outcome>("result", outcome_words(), Need::required).value_or(Sourced<Outcome>{});
    coupon.by = reader.words("by", 40, R"("Ann Ferrier")", by).value_or(Sourced<std::string>{}).value;
    coupon.kerf_depth = reader.length(kerf_depth, cut);
    coupon.spacing = reader.length(spacing, cut);
    coupon.believed = reader.flag("believed", false);
    return coupon;
}

Coupon read_coupon(Context& context, const toml::table& table, const std::string& title, TableReader& board_reader,
                   const Board& board) {
    TableReader reader(context, table, title);
    Coupon coupon = read_tried(reader, Need::required, Need::optional);
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

/// That the figures of a row can be of one piece of wood.
void check_trial(Context& context, const Trial& trial) {
    check_coupon(context, trial.tried);
    const auto& depth = trial.tried.kerf_depth;
    if (depth && known(trial.thickness) &&
        depth->value > trial.thickness.value - Length::inches(1.0 / 16) + Length::mm(0.001))
        context.error(depth->at,
                      "kerf_depth " + context.shown(depth->value) + " leaves next to no web in a board " +
                          context.shown(trial.thickness.value) + " thick",
                      "expected the depth that the trial was cut to, at least 1/16 in less than its thickness");
    const auto& gap = trial.tried.spacing;
    if (gap && trial.kerf.value >= gap->value)
        context.error(
            gap->at,
            "spacing " + context.shown(gap->value) + " is no wider than the kerf, " + context.shown(trial.kerf.value),
            "the cuts would run into each other: expected more, or the kerf of that trial as kerf");
    if (known(trial.tried.held) && trial.tried.held.value == Held::one_kerf)
        context.error(trial.tried.held.at, "one kerf that closed tells of one board and blade",
                      "it belongs to the coupons of that board");
    else if (known(trial.tried.outcome) && trial.tried.outcome.value == Outcome::closed && trial.kerfs_outside)
        context.error(trial.tried.outcome.at, "kerfs outside the bend open, they do not close",
                      R"(expected result = "cracked" or "held", or kerfs = "inside")");
}

Trial read_trial(Context& context, const toml::table& table, const Sourced<Length>& saw_kerf) {
    TableReader reader(context, table, "[[trial]]");
    Trial trial;
    trial.material = reader.words("material", 40, R"("mdf")").value_or(Sourced<std::string>{});
    trial.thickness = reader.needed_length(trial_thickness);
    const bool saw_says = given(saw_kerf);
    trial.kerf = reader.length(trial_kerf, saw_says ? Need::optional : Need::required).value_or(saw_kerf);
    if (const auto side = reader.choice<bool>("kerfs", {{"outside", true}, {"inside", false}}))
        trial.kerfs_outside = side->value;
    trial.date = read_date(context, reader);
    trial.tried = read_tried(reader, Need::optional, Need::required);
    reader.finish();
    check_trial(context, trial);
    return trial;
}

}  // namespace

std::vector<Coupon> read_coupons(Context& context, TableReader& board_reader, std::string_view board_title,
                                 const Board& board) {
    const std::string title = "[" + std::string(board_title) + ".coupon]";
    std::vector<Coupon> coupons;
    for (const auto* table : board_reader.one_or_more_tables("coupon", title)) {
        if (coupons.size() == most_coupons) {
            context.error(position(*table), "the board has more than " + std::to_string(most_coupons) + " coupons",
                          "the lowest few tell what there is to tell");
            break;
        }
        coupons.push_back(read_coupon(context, *table, title, board_reader, board));
    }
    return coupons;
}

std::vector<Trial> read_trials(Context& context, TableReader& top, const Sourced<Length>& saw_kerf) {
    std::vector<Trial> trials;
    for (const auto* table : top.tables("trial")) {
        if (trials.size() == most_trials) {
            context.error(position(*table), "there are more than " + std::to_string(most_trials) + " trials",
                          "expected the latest ones of each material");
            break;
        }
        const std::size_t before = context.mistakes();
        Trial trial = read_trial(context, *table, saw_kerf);
        if (context.mistakes() == before) trials.push_back(std::move(trial));
    }
    return trials;
}

}  // namespace kerfpacket::job
