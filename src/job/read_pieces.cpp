#include "job/tables.h"

#include <algorithm>

#include "job/text.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey span{"span", 1_in, longest, R"("6 ft")"};
const LengthKey rise{"rise", finest, longest, R"("11-1/2 in")"};
const LengthKey legs{"legs", Length(), 480_in, R"("61-1/4 in")", true};
const LengthKey jamb_depth{"depth", 0.25_in, 48_in, R"("7-1/8 in")"};
const LengthKey casing_width{"width", 0.25_in, 24_in, R"("3-1/2 in")"};
const LengthKey reveal{"reveal", Length(), 12_in, R"("3/16 in")", true};
const LengthKey chord{"chord", 1_in, longest, R"("14 ft")"};
const LengthKey radius{"radius", finest, longest, R"("20 ft")"};
const LengthKey tails{"tails", Length(), longest, R"(["14 in", "9 in"])", true};

constexpr int most_pieces = 1000;
constexpr int most_segments = 100;

Casing read_casing(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[opening.casing]");
    Casing casing;
    casing.width = reader.needed_length(casing_width);
    casing.reveal = reader.length_or(reveal, Length());
    casing.segments = reader.whole("segments", most_segments, casing.segments);
    reader.finish();
    return casing;
}

/// A wall's curve takes one of two pairs of figures.
void read_curve(Context& context, TableReader& reader, Wall& wall) {
    wall.chord = reader.length(chord, Need::optional);
    wall.rise = reader.length(rise, Need::optional);
    wall.radius = reader.length(radius, Need::optional);
    if (const auto* node = reader.find("angle", Need::optional, "90")) wall.angle = context.angle(*node, "angle");

    const bool by_chord = reader.has("chord") || reader.has("rise");
    const bool by_radius = reader.has("radius") || reader.has("angle");
    const auto need = [&](std::string_view key, std::string_view partner) {
        if (reader.has(key)) return;
        reader.missing(key, std::string(key) + " is missing from [[wall]]",
                       std::string(partner) + " alone does not fix the curve");
    };
    if (by_chord && by_radius) {
        context.error(reader.at(reader.has("radius") ? "radius" : "angle"), "the wall's curve is given in two ways",
                      "expected chord and rise, or radius and angle, not parts of both");
    } else if (by_chord) {
        need("chord", "rise");
        need("rise", "chord");
    } else if (by_radius) {
        need("radius", "angle");
        need("angle", "radius");
    } else {
        reader.missing("chord", "the wall's curve is not given", "expected chord and rise, or radius and angle");
    }
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
    return surface ? surface->value : Surface::wall;
}

Opening read_opening(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[[opening]]");
    Opening opening;
    opening.at = reader.at();
    opening.id = read_id(context, reader);
    const auto shape = reader.choice<Shape>(
        "shape", {{"segmental", Shape::segmental}, {"semicircular", Shape::semicircular}}, Need::required);
    opening.shape = shape.value_or(Sourced<Shape>{});
    opening.span = reader.needed_length(span);
    const bool rise_follows = shape && shape->value == Shape::semicircular;
    opening.rise = reader.length(rise, rise_follows ? Need::optional : Need::required).value_or(Sourced<Length>{});
    opening.measured_to = read_measured_to(reader);
    opening.legs = reader.length(legs, Need::optional);
    opening.quantity = reader.whole("quantity", most_pieces, opening.quantity);
    const auto depth = reader.needed_length(jamb_depth);
    if (const auto* liner = reader.table("liner", Need::required, "[opening.liner]"))
        opening.liner = read_liner(context, *liner, depth);
    if (const auto* casing = reader.table("casing", Need::optional, "[opening.casing]"))
        opening.casing = read_casing(context, *casing);
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
    wall.quantity = reader.whole("quantity", most_pieces, wall.quantity);
    if (const auto* board = reader.table("board", Need::required, "[wall.board]"))
        wall.board = read_wall_board(context, *board);
    reader.finish();
    return wall;
}

}  // namespace kerfpacket::job
