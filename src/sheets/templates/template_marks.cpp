#include "sheets/templates/template_marks.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "measure/fraction.h"
#include "sheets/drawings/small_drawing.h"
#include "sheets/layout/furniture.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length widest_note = Length::points(330);
/// Over a curve that rises there is room for neither the wide one nor the high one.
constexpr Length middling_note = Length::points(250);
/// What a cross's name keeps from the edge of the overlap round the cell, beyond which header and check bar begin.
constexpr Length from_overlap_edge = Length::points(9);

}  // namespace

void TemplateMarks::neighbours() {
    const auto& tiling = context_.tiling;
    neighbour(tiling.printed_at(tile_.column - 1, tile_.row), {-1, 0});
    neighbour(tiling.printed_at(tile_.column + 1, tile_.row), {1, 0});
    neighbour(tiling.printed_at(tile_.column, tile_.row - 1), {0, 1});
    neighbour(tiling.printed_at(tile_.column, tile_.row + 1), {0, -1});
}

void TemplateMarks::neighbour(const Tile* tile, Direction toward) {
    if (tile == nullptr) return;
    const Block name(pen_, {{tile->name(), {Face::bold, style().title}}});
    const Length arrow_length = 16_pt;
    const bool sideways = toward.x != 0;
    const Length half_x = sideways ? std::max(name.width(), arrow_length) / 2 : (name.width() + 14_pt) / 2;
    const Length half_y = sideways ? (name.height() + 10_pt) / 2 : std::max(name.height(), arrow_length) / 2;
    const Point mid = geom::middle(cell_.low, cell_.high);
    for (const Length inset : {6_pt, 24_pt, 42_pt, 60_pt}) {
        const Point edge{mid.x + (cell_.width() / 2 - half_x - inset) * toward.x,
                         mid.y + (cell_.height() / 2 - half_y - inset) * toward.y};
        const Length side = sideways ? cell_.height() : cell_.width();
        for (int step = 10; step < 64; ++step) {
            const Length along = side / 130.0 * (step % 2 == 0 ? step : -step);
            const Point at = sideways ? Point{edge.x, edge.y + along} : Point{edge.x + along, edge.y};
            const TurnedBox box{at, {1, 0}, half_x + 2_pt, half_y + 2_pt};
            if (!labels_.taken().is_free(box)) continue;
            labels_.taken().take(box);
            const Point right{at.x + half_x - name.width() / 2, at.y};
            const Point above{at.x, at.y + half_y - name.height() / 2};
            name.draw(pen_, Role::registration, sideways ? above : right);
            arrow(sideways ? Point{at.x, at.y - half_y + 3_pt} : Point{at.x - half_x + 5_pt, at.y}, toward,
                  arrow_length);
            return;
        }
    }
}

void TemplateMarks::cross_names() {
    const auto& joints = context_.tiling.joints();
    const Length off = ring_radius + 4_pt;
    for (const int left : {tile_.column - 1, tile_.column}) {
        if (left < 0 || left >= static_cast<int>(joints.size())) continue;
        const Joint& joint = joints[static_cast<std::size_t>(left)];
        const fonts::Words::Values values{{"left", std::to_string(left + 1)}, {"right", std::to_string(left + 2)}};
        for (const auto& [key, at] :
             {std::pair{"template.cross_inner", joint.inner}, std::pair{"template.cross_outer", joint.outer}}) {
            const Point on = geom::turned(at, -tile_.turn) + shift_;
            const Block name(pen_, {{context_.kit.words(key, values), {Face::regular, style().small}}});
            const Length x = name.width() / 2 + off + 12_pt;
            const Length y = name.height() / 2 + off;
            const std::array near{Point{x, y},     Point{-x, y},     Point{x, -y},     Point{-x, -y},
                                  Point{x, y * 2}, Point{-x, y * 2}, Point{x, -y * 2}, Point{-x, -y * 2}};
            if (std::any_of(near.begin(), near.end(),
                            [&](Point aside) { return labels_.place(Role::registration, name, on + aside); }))
                continue;
            // Further off with a leader from the ring, which says whose name it is.
            if (labels_.with_leader(Role::registration, name, Path::circle(on, ring_radius), Beside::right)) continue;
            name_with_line(name, on);
        }
    }
}

void TemplateMarks::name_with_line(const Block& name, Point cross) {
    constexpr int ways = 24;
    const Rect room = cell_.grown(context_.tiling.overlap() - from_overlap_edge);
    for (int ring = 1; ring <= 40; ++ring) {
        for (int way = 0; way < ways; ++way) {
            const Direction out = Direction::at(Angle::degrees(360.0 * way / ways));
            const Length half = std::min(name.width() / 2 / std::max(std::abs(out.x), 0.01),
                                         name.height() / 2 / std::max(std::abs(out.y), 0.01));
            const Length from = ring_radius + 6_pt * ring;
            const Point centre = cross + out * (from + half);
            const TurnedBox box = name.box(centre, {1, 0}, 1_pt);
            const Rect bounds = box.bounds();
            if (!room.contains(bounds.low) || !room.contains(bounds.high) || !labels_.taken().is_free(box)) continue;
            name.draw(pen_, Role::registration, centre);
            labels_.taken().take(box);
            pen_.line(Role::registration, cross + out * ring_radius, cross + out * (from - 2_pt), style().fine);
            return;
        }
    }
}

void TemplateMarks::arrow(Point middle, Direction toward, Length length) {
    const Point tip = middle + toward * (length / 2);
    pen_.line(Role::registration, middle - toward * (length / 2), tip - toward * 4_pt, style().line);
    pen_.arrow_head(Role::registration, tip, toward, 6_pt, 7_pt);
}

void TemplateMarks::coordinate() {
    if (context_.tiling.printed() == 1) return;
    const Block::Row name{tile_.name(), {Face::bold, style().huge}};
    const auto set = [&](const std::vector<Block::Row>& rows) {
        const Block block(pen_, rows);
        const std::vector<Point> corners = labels_.corners(block, 24_pt);
        return labels_.anywhere(Role::registration, block, corners) ||
               labels_.anywhere(Role::registration, block, corners, 2.5_pt);
    };
    if (tile_.in_grid) {
        set({name});
        return;
    }
    const char* way = tile_.turn < Angle() ? "template.turned_right" : "template.turned_left";
    const std::string angle = degrees_text(tile_.turn, context_.kit);
    const Block::Row turned{context_.kit.words(way, {{"angle", angle}}), {Face::regular, style().small}};
    if (!set({name, turned}) && set({name})) set({turned});
}

bool TemplateMarks::is_first() const {
    const auto& tiles = context_.tiling.tiles();
    return &tile_ == &*std::find_if(tiles.begin(), tiles.end(), [](const Tile& tile) { return !tile.blank; });
}

bool TemplateMarks::tells_joining() const {
    const auto& rows = context_.drawing.note;
    return is_first() && std::any_of(rows.begin(), rows.end(), [](const NoteRow& row) { return row.first_only; });
}

void TemplateMarks::note() {
    if (context_.drawing.note.empty()) return;
    const auto choices = note_choices();
    const auto alike = [](const std::vector<Block::Row>& a, const std::vector<Block::Row>& b) {
        return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                          [](const Block::Row& one, const Block::Row& other) { return one.text == other.text; });
    };
    for (auto rows = choices.begin(); rows != choices.end(); ++rows) {
        const bool tried = std::any_of(choices.begin(), rows, [&](const auto& other) { return alike(other, *rows); });
        if (!tried && note(*rows, 7_pt)) return;
    }
    // Which side is up, and whether to flip it, is said wherever two words find room.
    const Block::Row& first = choices.back().front();
    for (const Length width : {widest_note, 160_pt, 90_pt}) {
        std::vector<Block::Row> rows;
        for (const std::string& line : broken(pen_, first.text, first.type, width)) rows.push_back({line, first.type});
        if (note(rows, 2.5_pt)) return;
    }
}

std::vector<std::vector<Block::Row>> TemplateMarks::note_choices() const {
    std::vector<Block::Row> wide;
    std::vector<Block::Row> narrow;
    std::vector<Block::Row> less_wide;
    std::vector<Block::Row> less;
    std::vector<Block::Row> less_middling;
    std::vector<Block::Row> least;  // what is set like the first sentence
    const Type first_type = context_.drawing.note.front().type;
    for (const NoteRow& row : context_.drawing.note) {
        if (row.first_only && !is_first()) continue;
        std::string joined;
        for (const std::string& part : row.parts) {
            narrow.push_back({part, row.type});
            if (!row.lesser) less.push_back({part, row.type});
            joined += (joined.empty() ? "" : " ") + part;
        }
        if (!row.lesser)
            for (const std::string& line : broken(pen_, joined, row.type, middling_note))
                less_middling.push_back({line, row.type});
        for (const std::string& line : broken(pen_, joined, row.type, widest_note)) {
            wide.push_back({line, row.type});
            if (!row.lesser) less_wide.push_back({line, row.type});
            if (row.type.face == first_type.face && row.type.size == first_type.size) least.push_back({line, row.type});
        }
    }
    return {wide, narrow, less, less_wide, less_middling, least, {wide.front()}};
}

bool TemplateMarks::note(const std::vector<Block::Row>& rows, Length clearance) {
    const Block block(pen_, rows, Align::left);
    std::vector<Point> first = labels_.corners(block, 24_pt);
    std::swap(first[0], first[1]);
    return labels_.anywhere(Role::text, block, first, clearance);
}

void TemplateMarks::grain() {
    if (!context_.drawing.grain) return;
    for (const Path& part : geom::clip(context_.drawing.grain->moved(shift_), cell_))
        for (const Length reach : {64_pt, 44_pt})
            for (const double along : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8})
                if (grain_at(part.at(part.length() * along).point, reach)) return;
}

bool TemplateMarks::grain_at(Point middle, Length reach) {
    // Level in the drawing: on a sheet that is turned the grain is turned back.
    const Direction along = Direction::at(-tile_.turn);
    const TurnedBox box{middle, along, reach + 4_pt, 9_pt};
    const Rect bounds = box.bounds();
    if (!cell_.contains(bounds.low) || !cell_.contains(bounds.high) || !labels_.taken().is_free(box)) return false;
    labels_.taken().take(box);
    const Block word(pen_, {{context_.kit.words("template.grain"), {Face::bold, style().small}}});
    const Length gap = word.width() / 2 + 4_pt;
    for (const Direction toward : {-along, along}) arrow(middle + toward * ((reach + gap) / 2), toward, reach - gap);
    word.draw(pen_, Role::text, middle, along);
    return true;
}

void TemplateMarks::small_map(Length from) {
    const auto& tiling = context_.tiling;
    if (tiling.printed() == 1) return;
    const Length width_of_number =
        pen_.width(context_.kit.words("page.number", {{"n", "888"}, {"m", "888"}}), {Face::bold, style().strong});
    const Length right = sheet_code_left(pen_.page_width()) - sheet_code_gap - width_of_number - 10_pt;
    const Length most_wide = std::min(120_pt, right - from);
    if (most_wide < 18_pt) return;
    const Length most_high = 28_pt;
    const Rect bounds = tiling.bounds();
    const double scale = std::min(most_wide / bounds.width(), most_high / bounds.height());
    const Length low = pen_.from_top(28_pt) - (most_high + bounds.height() * scale) / 2;
    const SmallDrawing small(bounds.low, {right - bounds.width() * scale, low}, scale);
    for (const Tile& tile : tiling.tiles()) {
        const Path box = small.at(tile.outline());
        if (&tile == &tile_) pen_.fill(Role::furniture, box);
        if (tile.blank) pen_.line(Role::hatch, box.bounds().low, box.bounds().high, style().fine);
        pen_.stroke(Role::furniture, box, style().fine);
    }
}

}  // namespace kerfpacket::sheets
