#include "job/tables.h"

#include <algorithm>

#include "job/text.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey thickness{"thickness", 0.125_in, 3_in, R"("3/4 in")"};
const LengthKey board_width{"width", 0.25_in, 48_in, R"("7-1/4 in")"};
const LengthKey kerf_depth{"kerf_depth", finest, 3_in, R"("3/8 in")"};
const LengthKey spacing{"spacing", 0.0625_in, 3_in, R"("1/2 in")"};
const LengthKey trim{"trim", Length(), 120_in, R"("3 in")", true};
const LengthKey scarf{"scarf", Length(), 48_in, R"("3 in")", true};
const LengthKey keep_out{"no_splice", Length(), longest, R"("88 in")", true};
const LengthKey joints{"joints", Length(), longest, R"(["8 ft 2 in"])", true};
const LengthKey max_blank{"max_blank", 48_in, longest, R"("14 ft")"};
const PairsKey no_splice{"no_splice", keep_out, keep_out, "pairs: from and to", R"([["88 in", "92 in"]])", 5000};

/// A depth or a spacing: a length or one of a few words.
Setting read_setting(Context& context, TableReader& reader, const LengthKey& key,
                     const std::vector<std::string_view>& words) {
    Setting setting;
    const auto* node = reader.find(key.name, Need::optional, key.example, {Takes::Kind::length_or_word, 0, 0, words});
    if (node == nullptr) return setting;
    const auto word = node->value<std::string_view>().value_or("");
    const bool meant_as_word = word == "half" || !near_miss(word, words).empty();
    if (std::find(words.begin(), words.end(), word) != words.end()) {
        setting.half = word == "half";
        setting.solve = word == "solve";
        setting.at = position(*node);
    } else if (meant_as_word) {
        context.error(position(*node), "unknown " + std::string(key.name) + " " + in_quotes(word),
                      expected_one_of(word, words) + " or a length, for example " + std::string(key.example));
    } else if (const auto given = context.length(*node, key)) {
        setting.given = given->value;
        setting.at = given->at;
    }
    return setting;
}

/// What a liner and a wall board have in common.
Board read_common(Context& context, TableReader& reader, std::string_view title) {
    Board board;
    board.at = reader.at();
    board.material = reader.words("material", 40, R"("mdf")").value_or(Sourced<std::string>{});
    board.thickness = reader.needed_length(thickness);
    board.plies = read_plies(context, reader, board.thickness);
    board.kerf_depth = read_setting(context, reader, kerf_depth, {"half", "solve"});
    board.spacing = read_setting(context, reader, spacing, {"solve"});
    board.kerfs = read_kerfs(context, reader);
    board.too_deep = read_too_deep(context, reader);
    board.coupons = read_coupons(context, reader, title, board);
    board.trim = reader.length_or(trim, context.unit == Unit::millimetre ? 75_mm : 3_in);
    reader.usual("trim", board.trim.value);
    if (const auto end = reader.choice<End>("zero", {{"left", End::left}, {"right", End::right}}))
        board.zero = end->value;
    reader.usual("zero", Words{"left"});
    if (const auto tick =
            reader.choice<Tick>("tick", {{"centre", Tick::centre}, {"left", Tick::left}, {"right", Tick::right}}))
        board.tick = tick->value;
    if (const auto strip = reader.choice<StripOn>("strip", {{"face", StripOn::face}, {"edge", StripOn::edge}}))
        board.strip = *strip;
    return board;
}

}  // namespace

Board read_liner(Context& context, const toml::table& table, const Sourced<Length>& depth) {
    TableReader reader(context, table, "[opening.liner]");
    Board board = read_common(context, reader, "opening.liner");
    board.width = depth;
    refuse_moulding(reader);
    reader.finish();
    return board;
}

Board read_wall_board(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[wall.board]");
    Board board = read_common(context, reader, "wall.board");
    board.width = reader.needed_length(board_width);
    read_moulding(context, reader, board);
    board.scarf = reader.length_or(scarf, Length());
    board.no_splice = reader.pairs(no_splice).value_or(LengthPairs{});
    board.joints = reader.lengths(joints, 0);
    board.max_blank = reader.length(max_blank, Need::optional);
    reader.finish();
    return board;
}

}  // namespace kerfpacket::job
