#include "sheets/templates/kerf_numbers.h"
#include "sheets/words/numeral.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length numeral_gap = Length::points(4);

/// Where a tick's number may stand: beside and beyond the tick's outer end. A number steps aside only while its own
/// tick stays the nearest.
std::vector<Point> numeral_places(const std::vector<plan::KerfTick>& ticks, std::size_t i, Length width) {
    std::vector<Point> places{{{}, numeral_gap}, {{}, numeral_gap + 8_pt}};
    const Length aside = width / 2 + 3_pt;
    const auto nearer_than = [&](std::size_t other) {
        return aside < geom::distance(ticks[i].line.start(), ticks[other].line.start()) / 2;
    };
    if (i > 0 && nearer_than(i - 1) && (i + 1 == ticks.size() || nearer_than(i + 1)))
        for (const Length x : {aside, -aside}) places.push_back({x, numeral_gap});
    places.push_back({{}, numeral_gap + 16_pt});
    return places;
}

}  // namespace

NumberPlaces::NumberPlaces(const std::vector<DrawnLine>& lines, const Tiling& tiling) {
    for (const DrawnLine& line : lines) taken_.take(line.path);
    for (const Tile& tile : tiling.tiles()) {
        if (tile.blank) continue;
        for (const Point p : tiling.crosses(tile)) taken_.take(Path::circle(geom::turned(p, tile.turn), ring_radius));
        for (const Path& line : tiling.joint_lines(tile)) between_tiles_.take(line.turned(tile.turn));
    }
}

std::optional<Point> NumberPlaces::take(const Block& block, const std::vector<Point>& centres, Direction along) {
    for (const bool clear_of_joints : {true, false}) {
        for (const Point centre : centres) {
            const TurnedBox box = block.box(centre, along, 1_pt);
            if (!taken_.is_free(box) || (clear_of_joints && !between_tiles_.is_free(box))) continue;
            taken_.take(box);
            return centre;
        }
    }
    return std::nullopt;
}

std::vector<Figure> number_kerfs(const Pen& pen, const std::vector<plan::KerfTick>& ticks, NumberPlaces free) {
    std::vector<Figure> numerals;
    for (std::size_t i = 0; i < ticks.size(); ++i) {
        const int n = ticks[i].n;
        if (n % 5 != 0) continue;
        const Block block(pen, {{std::to_string(n), {numeral_face_of(n), pen.kit().style.strong}}});
        const Path& tick = ticks[i].line;
        const Direction out = geom::direction(tick.end(), tick.start());
        const Direction along{out.y, -out.x};
        std::vector<Point> centres = numeral_places(ticks, i, block.width());
        for (Point& p : centres) p = tick.start() + out * (p.y + block.height() / 2) + along * p.x;
        if (const auto centre = free.take(block, centres, along))
            numerals.push_back({block, *centre, along, Role::numeral});
    }
    return numerals;
}

}  // namespace kerfpacket::sheets
