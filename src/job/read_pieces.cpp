#include "job/tables.h"

#include <algorithm>

#include "job/text.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey legs{"legs", Length(), 480_in, R"("61-1/4 in")", true};
const LengthKey jamb_depth{"depth", 0.25_in, 48_in, R"("7-1/8 in")"};
const LengthKey tails{"tails", Length(), longest, R"(["14 in", "9 in"])", true};

constexpr int most_pieces = 1000;

int read_quantity(TableReader& reader) {
    return reader.whole("quantity", most_pieces).value_or(Sourced<int>{1, {}}).value;
}

void read_through_legs(Context& context, TableReader& reader, Opening& opening) {
    opening.through_legs = reader.flag("through_legs", false);
    if (!opening.through_legs) return;
    const bool none = opening.legs && opening.legs->at(0).value + opening.legs->at(1).value == Length();
    if (none || !reader.has("legs"))
        context.error(reader.at("through_legs"), "there are no legs for the liner to run through",
                      "expected their length as well, " + for_example("legs", legs.example));
}

}  // namespace

Sourced<std::string> read_id(Context& context, TableReader& reader) {
    const auto id = reader.words("id", 40, R"("A")");
    if (!id) return {};
    const auto is_letter_or_digit = [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    };
    if (id->value.size() <= 3 && std::all_of(id->value.begin(), id->value.end(), is_letter_or_digit)) return *id;
    context.error(id->at, "id " + in_quotes(id->value) + " does not fit the piece's tag",
                  R"(expected 1 to 3 letters or digits, for example "A" or "W2")");
    return {};
}

Surface read_measured_to(TableReader& reader) {
    const auto surface = reader.choice<Surface>("measured_to", {{"wall", Surface::wall}, {"finish", Surface::finish}});
    reader.usual("measured_to", Words{"wall"});
    return surface ? surface->value : Surface::wall;
}

Opening read_opening(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[[opening]]");
    Opening opening;
    opening.at = reader.at();
    opening.id = read_id(context, reader);
    read_shape(context, reader, opening);
    opening.measured_to = read_measured_to(reader);
    opening.legs = reader.one_or_two(legs);
    read_through_legs(context, reader, opening);
    opening.quantity = read_quantity(reader);
    const auto depth = reader.needed_length(jamb_depth);
    if (const auto* liner = reader.table("liner", Need::required, "[opening.liner]"))
        opening.liner = read_liner(context, *liner, depth);
    if (const auto* splay = reader.table("splay", Need::optional, "[opening.splay]"))
        opening.splay = read_splay(context, *splay);
    if (const auto* casing = reader.table("casing", Need::optional, "[opening.casing]"))
        opening.casing = read_casing(context, *casing, opening.splay.has_value());
    if (const auto* form = reader.table("form", Need::optional, "[opening.form]"))
        opening.form = read_form(context, *form, "[opening.form]");
    opening.wish.half = true;
    if (const auto* wish = reader.table("template", Need::optional, "[opening.template]"))
        opening.wish = read_template(context, *wish);
    reader.finish();
    return opening;
}

Wall read_wall(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[[wall]]");
    Wall wall;
    wall.at = reader.at();
    wall.id = read_id(context, reader);
    read_curve(context, reader, wall);
    wall.measured_to = read_measured_to(reader);
    const auto side =
        reader.choice<Side>("side", {{"concave", Side::concave}, {"convex", Side::convex}}, Need::required);
    wall.side = side.value_or(Sourced<Side>{});
    if (const auto runs = reader.lengths(tails, 2); runs.size() == 2) wall.tails = {runs[0], runs[1]};
    reader.usual("tails", Length());
    wall.quantity = read_quantity(reader);
    wall.rake = read_rake(context, reader);
    if (const auto* board = reader.table("board", Need::required, "[wall.board]"))
        wall.board = read_wall_board(context, *board);
    if (const auto* form = reader.table("form", Need::optional, "[wall.form]"))
        wall.form = read_form(context, *form, "[wall.form]");
    reader.finish();
    return wall;
}

}  // namespace kerfpacket::job
