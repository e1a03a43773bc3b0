#include <algorithm>
#include <cmath>

#include "sheets/climb/climb_drawing.h"
#include "sheets/cover/cover_parts.h"
#include "sheets/drawings/piece_drawing.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length least_height = 80_pt;
constexpr double leading = 1.45;

/// Height over a drawing for its name and what is told of it.
Length titles(const fonts::Style& style, Length more_lines) {
    return style.strong * 1.7 + style.small * leading + more_lines + 3_pt;
}

std::string title(const Cover& cover, const plan::Piece& piece) {
    if (piece.kind == plan::Kind::wall_board)
        return cover.words(piece.side == job::Side::concave ? "cover.wall_concave" : "cover.wall_convex");
    return cover.words("cover.opening", {{"shape", shape_name(piece, cover.kit())}});
}

std::string short_title(const Cover& cover, const plan::Piece& piece) {
    return piece.kind == plan::Kind::wall_board
               ? title(cover, piece)
               : cover.words("cover.opening_short", {{"shape", shape_name(piece, cover.kit())}});
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

std::string subtitle(const Cover& cover, const plan::Piece& piece, bool brief) {
    const bool wall = piece.measured_to == job::Surface::wall;
    const char* key = brief ? (wall ? "cover.brief_wall" : "cover.brief_finish")
                            : (wall ? "cover.measured_wall" : "cover.measured_finish");
    const std::string radius = cover.words(
        piece.circular ? "cover.radius" : "cover.least_radius",
        {{"radius", brief ? cover.tape.plain(piece.radii.measured) : cover.tape.with_unit(piece.radii.measured)}});
    const std::string measured = cover.words(
        key, {{"radius", radius}, {"angle", cover.tape.number(whole_turn(piece).degrees(), brief ? 0 : 1)}});
    if (piece.splay)
        return measured + cover.words(piece.splay->wide_at_room ? "cover.splays_room" : "cover.splays_far",
                                      {{"angle", degrees_text(piece.splay->alpha, cover.kit())}});
    if (!piece.rake) return measured;
    return measured + cover.words(piece.rake->to_the_right ? "cover.climbs_right" : "cover.climbs_left",
                                  {{"climb", cover.tape.with_unit(piece.rake->climb)},
                                   {"angle", degrees_text(piece.rake->kerf(), cover.kit())}});
}

struct Setting {
    std::string text;
    Type type;
};

/// The first that is no wider than the room, or else the last.
Setting first_that_fits(const Pen& pen, Length room, const std::vector<Setting>& settings) {
    return *std::find_if(settings.begin(), settings.end() - 1,
                         [&](const Setting& s) { return pen.width(s.text, s.type) <= room; });
}

/// What is told under the name of a drawing.
Setting told(Cover& cover, const plan::Piece& piece, Length width) {
    const Length size = cover.style().small;
    const std::string figures = subtitle(cover, piece, false);
    const std::string few = subtitle(cover, piece, true);
    return first_that_fits(cover.flow.pen(), width,
                           {{figures, {Face::regular, size}},
                            {figures, {Face::condensed, size}},
                            {few, {Face::regular, size}},
                            {few, {Face::condensed, size}}});
}

/// The lines after the first of the longest that is told: of all drawings alike, so that a row stands at one height.
Length more_lines(Cover& cover, const std::vector<const plan::Piece*>& shown, Length width) {
    Length most;
    for (const plan::Piece* piece : shown) {
        const Setting setting = told(cover, *piece, width);
        most = std::max(
            most, cover.flow.pen().paragraph_height(setting.text, setting.type, width, cover.style().small * leading));
    }
    return most;
}

/// One drawing takes the full width and more height; a few stand in two columns, more in three, lower, so that as many
/// as can are seen on the first page.
struct Grid {
    std::size_t columns = 1;
    Length gap;
    Length width;
    Length titles;  ///< over each
    Length height;
};

Grid grid_for(Cover& cover, const std::vector<const plan::Piece*>& shown) {
    const std::size_t drawings = shown.size();
    Grid grid;
    grid.columns = drawings == 1 ? 1 : drawings <= 4 ? 2 : 3;
    grid.gap = grid.columns == 3 ? 18_pt : 24_pt;
    const auto columns = static_cast<double>(grid.columns);
    grid.width = (cover.flow.width() - grid.gap * (columns - 1)) / columns;
    grid.titles = titles(cover.style(), more_lines(cover, shown, grid.width));
    grid.height = (drawings <= 2 ? 226_pt : 150_pt) * cover.drawn;
    if (grid.columns < 3) return grid;
    const double rows = std::ceil(static_cast<double>(drawings) / columns);
    const Length share = cover.flow.room() / rows - grid.titles - 0.01_pt;
    grid.height = std::clamp(share, least_height, std::max(least_height, 110_pt * cover.drawn));
    return grid;
}

void headings(Cover& cover, const plan::Piece& piece, Point top, Length width) {
    Pen pen = cover.flow.pen();
    const fonts::Style& style = cover.style();
    const std::string id = measured_id(piece) + "   ";
    const std::string full = id + title(cover, piece);
    const std::string brief = id + short_title(cover, piece);
    const Point first{top.x, top.y - style.strong * 1.7};
    const Setting name = first_that_fits(pen, width,
                                         {{full, {Face::bold, style.strong}},
                                          {brief, {Face::bold, style.strong}},
                                          {brief, {Face::bold, style.text}},
                                          {brief, {Face::condensed_bold, style.text}},
                                          {brief, {Face::condensed_bold, style.small}}});
    pen.text(Role::text, first, name.text, name.type);
    const Setting figures = told(cover, piece, width);
    const Length down = style.small * leading;
    pen.paragraph(Role::text, {top.x, first.y - down}, figures.text, figures.type, width, down);
}

}  // namespace

void cover_drawings(Cover& cover) {
    std::vector<const plan::Piece*> shown;
    for (const plan::Piece& piece : cover.plan.pieces)
        if (piece.board == 1) shown.push_back(&piece);
    const Grid grid = grid_for(cover, shown);
    for (std::size_t first = 0; first < shown.size(); first += grid.columns) {
        const Rect row = cover.flow.take(grid.height + grid.titles);
        for (std::size_t i = first; i < std::min(first + grid.columns, shown.size()); ++i) {
            const Length x = row.low.x + (grid.width + grid.gap) * static_cast<double>(i - first);
            headings(cover, *shown[i], {x, row.high.y}, grid.width);
            Pen pen = cover.flow.pen();
            Rect space{{x, row.low.y}, {x + grid.width, row.low.y + grid.height - 2_pt}};
            if (shown[i]->rake && grid.columns == 1) {
                const Length middle = x + grid.width * 0.56;
                draw_in_space(pen, {{middle + 8_pt, space.low.y}, space.high}, *shown[i]);
                space.high.x = middle - 8_pt;
            }
            draw_piece(pen, space, *shown[i], cover.tape);
        }
    }
}

}  // namespace kerfpacket::sheets
