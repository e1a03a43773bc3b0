#include <cmath>

#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey side{"side", finest, 48_in, R"("2-1/2 in")"};

constexpr std::string_view takes_splay = R"(for example side = "2-1/2 in" or angle = 20)";

}  // namespace

Angle Splay::angle(Length depth) const {
    if (const auto* angle = std::get_if<Sourced<Angle>>(&by)) return angle->value;
    return Angle::radians(std::atan(std::get<Sourced<Length>>(by).value / depth));
}

std::optional<Splay> read_splay(Context& context, const toml::table& table) {
    TableReader reader(context, table, "[opening.splay]");
    const auto wider = reader.length(side, Need::optional);
    std::optional<Sourced<Angle>> angle;
    if (const auto* node = reader.find("angle", Need::optional, "20", {Takes::Kind::angle}))
        angle = context.angle(*node, "angle");
    const auto measured = reader.choice<Edge>("measured", {{"narrow", Edge::narrow}, {"wide", Edge::wide}},
                                              Need::required);
    const auto toward = reader.choice<Toward>("toward", {{"room", Toward::room}, {"away", Toward::away}},
                                              Need::required);
    if (reader.has("side") && reader.has("angle"))
        context.error(reader.at("angle"), "the splay is given in two ways", "expected side or angle, not both");
    else if (!reader.has("side") && !reader.has("angle"))
        reader.missing({"side", "angle"}, "how far this jamb splays is not said",
                       "expected how much wider it is at each side, or its angle from square to the wall, " +
                           std::string(takes_splay));
    reader.finish();
    if ((!wider && !angle) || (wider && angle) || !measured || !toward) return std::nullopt;
    Splay splay{{}, measured->value, toward->value, reader.at()};
    if (wider) splay.by = *wider;
    else splay.by = *angle;
    return splay;
}

}  // namespace kerfpacket::job
