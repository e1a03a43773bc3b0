#include <algorithm>
#include <cmath>

#include "sheets/cover/cover_flow.h"
#include "sheets/drawings/piece_drawing.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length titles = 38_pt;  ///< height over a drawing for its two lines
constexpr Length least_height = 80_pt;

/// One drawing takes the full width and more height; a few stand in two columns, more in three, lower, so that as many
/// as can are seen on the first page.
struct Grid {
    std::size_t columns = 1;
    Length gap;
    Length width;
    Length height;
};

Grid grid_for(CoverFlow& flow, std::size_t drawings) {
    Grid grid;
    grid.columns = drawings == 1 ? 1 : drawings <= 4 ? 2 : 3;
    grid.gap = grid.columns == 3 ? 18_pt : 24_pt;
    const auto columns = static_cast<double>(grid.columns);
    grid.width = (flow.width() - grid.gap * (columns - 1)) / columns;
    grid.height = drawings <= 2 ? 226_pt : 150_pt;
    if (grid.columns < 3) return grid;
    const double rows = std::ceil(static_cast<double>(drawings) / columns);
    grid.height = std::clamp((flow.y - CoverFlow::lowest) / rows - titles - 0.01_pt, least_height, 110_pt);
    return grid;
}

std::string title(const CoverFlow& flow, const plan::Piece& piece) {
    if (piece.kind == plan::Kind::wall_board)
        return flow.words(piece.side == job::Side::concave ? "cover.wall_concave" : "cover.wall_convex");
    return flow.words("cover.opening", {{"shape", shape_name(piece, flow.kit())}});
}

std::string short_title(const CoverFlow& flow, const plan::Piece& piece) {
    return piece.kind == plan::Kind::wall_board
               ? title(flow, piece)
               : flow.words("cover.opening_short", {{"shape", shape_name(piece, flow.kit())}});
}

/// How far the measured line turns, both ways added.
Angle whole_turn(const plan::Piece& piece) {
    const bool to_wall = piece.measured_to == job::Surface::wall;
    const Path& line =
        std::visit([&](const auto& lines) -> const Path& { return to_wall ? lines.wall : lines.finish; }, piece.lines);
    Angle turn;
    for (const geom::Segment& s : line.segments()) turn = turn + Angle::radians(std::abs(s.turn.radians()));
    return turn;
}

std::string subtitle(const CoverFlow& flow, const plan::Piece& piece, bool brief) {
    const bool wall = piece.measured_to == job::Surface::wall;
    const char* key = brief ? (wall ? "cover.brief_wall" : "cover.brief_finish")
                            : (wall ? "cover.measured_wall" : "cover.measured_finish");
    const std::string radius = flow.words(
        piece.circular ? "cover.radius" : "cover.least_radius",
        {{"radius", brief ? flow.tape.plain(piece.measured_radius) : flow.tape.with_unit(piece.measured_radius)}});
    return flow.words(key,
                      {{"radius", radius}, {"angle", flow.tape.number(whole_turn(piece).degrees(), brief ? 0 : 1)}});
}

struct Setting {
    std::string text;
    Type type;
};

/// The first that is no wider than the room, or else the last.
void first_that_fits(Pen& pen, Point at, Length room, const std::vector<Setting>& settings) {
    const auto fits = std::find_if(settings.begin(), settings.end() - 1,
                                   [&](const Setting& s) { return pen.width(s.text, s.type) <= room; });
    pen.text(Role::text, at, fits->text, fits->type);
}

void headings(CoverFlow& flow, const plan::Piece& piece, Length x, Length width) {
    Pen pen = flow.pen();
    const fonts::Style& style = flow.style();
    const std::string id = measured_id(piece) + "   ";
    const std::string full = id + title(flow, piece);
    const std::string brief = id + short_title(flow, piece);
    first_that_fits(pen, {x, flow.y - 22_pt}, width,
                    {{full, {Face::bold, style.strong}},
                     {brief, {Face::bold, style.strong}},
                     {brief, {Face::bold, style.text}},
                     {brief, {Face::condensed_bold, style.text}},
                     {brief, {Face::condensed_bold, style.small}}});
    const std::string figures = subtitle(flow, piece, false);
    const std::string few = subtitle(flow, piece, true);
    first_that_fits(pen, {x, flow.y - 35_pt}, width,
                    {{figures, {Face::regular, style.small}},
                     {figures, {Face::condensed, style.small}},
                     {few, {Face::regular, style.small}},
                     {few, {Face::condensed, style.small}},
                     {few, {Face::condensed, style.tiny}}});
}

}  // namespace

void cover_drawings(CoverFlow& flow) {
    std::vector<const plan::Piece*> shown;
    for (const plan::Piece& piece : flow.plan().pieces)
        if (piece.board == 1) shown.push_back(&piece);
    const Grid grid = grid_for(flow, shown.size());
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const std::size_t column = i % grid.columns;
        if (column == 0) flow.need(grid.height + titles);
        const Length x = side_margin + (grid.width + grid.gap) * static_cast<double>(column);
        headings(flow, *shown[i], x, grid.width);
        Pen pen = flow.pen();
        draw_piece(pen, {{x, flow.y - titles - grid.height}, {x + grid.width, flow.y - titles - 2_pt}}, *shown[i],
                   flow.tape);
        if (column + 1 == grid.columns || i + 1 == shown.size()) flow.y -= grid.height + titles;
    }
}

}  // namespace kerfpacket::sheets
