#include "sheets/template_names.h"

#include <algorithm>

namespace kerfpacket::sheets {
namespace {

/// A line that shows less than this gets no leader.
constexpr Length worth_a_leader = Length::inches(0.75);

}  // namespace

TemplateNames::TemplateNames(const TemplateContext& context, Pen& pen, Labels& labels, const Rect& cell, Point shift)
    : context_(context),
      arch_(std::get<plan::ArchLines>(context.piece.lines)),
      pen_(pen),
      labels_(labels),
      cell_(cell),
      shift_(shift) {}

void TemplateNames::draw() {
    ordinates();
    crosswise();
    arcs();
    casing_segments();
    set_out();
}

std::string TemplateNames::words(std::string_view key, const fonts::Words::Values& values) const {
    return context_.kit.words(key, values);
}

Path TemplateNames::run(const Path& path) const {
    Path longest;
    for (Path& part : geom::clip(path.moved(shift_), cell_))
        if (longest.empty() || part.length() > longest.length()) longest = std::move(part);
    return longest;
}

void TemplateNames::name_line(const Path& path, const Block& block, const std::vector<Stand>& stands) {
    const Path part = run(path);
    if (part.empty()) return;
    for (const Stand& stand : stands)
        if (labels_.along(Role::text, block, part, stand.side, stand.gap)) return;
    if (part.length() > worth_a_leader) labels_.with_leader(Role::text, block, part, stands.front().side);
}

void TemplateNames::ordinates() {
    const auto label = [&](const std::string& where, Length height) {
        return Block(pen_, {{where, small()},
                            {words("template.ordinate", {{"height", context_.tape.with_unit(height)}}), small_bold()}});
    };
    const Point crown{Length(), ordinate_line(arch_).bounds().high.y};
    // What stands on the line between two cells belongs to both.
    const Rect cell = cell_.grown(0.01_pt);
    if (cell.contains(crown + shift_)) ordinate(label(words("template.at_centre"), crown.y), crown + shift_);
    for (const Ordinate& o : context_.drawing.ordinates) {
        const Point top = Point{o.from_centre, o.height} + shift_;
        if (!cell.contains(top)) continue;
        const std::string where =
            words("template.from_centre", {{"distance", context_.tape.with_unit(measure::abs(o.from_centre))}});
        ordinate(label(where, o.height), top);
    }
}

bool TemplateNames::ordinate(const Block& block, Point top) {
    const Length half_x = block.width() / 2 + 5_pt;
    const Length half_y = block.height() / 2;
    std::vector<Point> places;
    for (const Length up : {12_pt, 20_pt, 30_pt}) places.push_back({top.x, top.y + up + half_y});
    for (const double side : {-1.0, 1.0}) places.push_back({top.x + half_x * side, top.y + half_y + 6_pt});
    for (int step = 1; step < 32; ++step)
        for (const double side : {-1.0, 1.0}) places.push_back({top.x + half_x * side, top.y - half_y - 5_pt * step});
    return std::any_of(places.begin(), places.end(), [&](Point p) { return labels_.place(Role::dimension, block, p); });
}

void TemplateNames::crosswise() {
    const std::vector<Stand> stands{{Beside::left, 3_pt}, {Beside::right, 3_pt}};
    for (const Path& mitre : arch_.mitres)
        name_line(mitre, Block(pen_, {{words("template.mitre"), small_bold()}}), stands);
    for (const Path& joint : arch_.segment_joints)
        name_line(joint, Block(pen_, {{words("template.joint"), small_bold()}}), stands);
}

void TemplateNames::arcs() {
    const auto& piece = context_.piece;
    const auto& tape = context_.tape;
    const auto radius = [&](const Path& arc) { return tape.with_unit(arc.segments().front().radius()); };
    const auto block = [&](const char* key, const fonts::Words::Values& values, const Type& type) {
        return Block(pen_, {{words(key, values), type}});
    };
    // Above the wall line the kerf numbers come first.
    name_line(arch_.wall, block("template.wall_line", {{"radius", radius(arch_.wall)}}, small()),
              {{Beside::left, 4_pt}, {Beside::left, 21_pt}, {Beside::left, 34_pt}});
    name_line(arch_.finish, block("template.finished_line", {{"radius", radius(arch_.finish)}}, small_bold()),
              {{Beside::right, 4_pt}, {Beside::right, 16_pt}});
    if (arch_.casing_inside) {
        name_casing_inside(radius(*arch_.casing_inside));
        name_line(*arch_.casing_outside,
                  block("template.casing_outside", {{"radius", radius(*arch_.casing_outside)}}, small()),
                  {{Beside::right, 4_pt}, {Beside::left, 4_pt}, {Beside::right, 16_pt}});
    }
    name_line(arch_.wall,
              block("template.liner_kerfs",
                    {{"thickness", tape.exact(piece.thickness)}, {"depth", tape.exact(piece.kerf_depth)}}, small()),
              {{Beside::left, 21_pt}, {Beside::left, 34_pt}, {Beside::left, 47_pt}});
}

/// The reveal is too narrow for a name: it stands under the finished line and says where its own line is, or a leader
/// takes it there.
void TemplateNames::name_casing_inside(const std::string& radius) {
    const std::string reveal = context_.tape.exact(context_.piece.casing->reveal.value);
    const Block under(pen_, {{words("template.casing_reveal", {{"radius", radius}, {"reveal", reveal}}), small()}});
    const Path shown = run(arch_.finish);
    if (!shown.empty() && (labels_.along(Role::text, under, shown, Beside::right, 16_pt) ||
                           labels_.along(Role::text, under, shown, Beside::right, 4_pt)))
        return;
    name_line(*arch_.casing_inside, Block(pen_, {{words("template.casing_inside", {{"radius", radius}}), small()}}),
              {{Beside::right, 1.5_pt}});
}

void TemplateNames::casing_segments() {
    if (!arch_.casing_outside) return;
    const int count = context_.piece.casing->segments;
    const std::string width = context_.tape.exact(context_.piece.casing->width.value);
    const geom::Segment outside = arch_.casing_outside->segments().front();
    const Length room = outside.radius() - arch_.wall.segments().front().radius();
    for (int i = 0; i < count; ++i) {
        const Path part({outside.part(static_cast<double>(i) / count, static_cast<double>(i + 1) / count)});
        const Path shown = run(part);
        if (shown.empty()) continue;
        std::vector<Block::Row> rows{
            {words("template.segment", {{"n", std::to_string(i + 1)}, {"m", std::to_string(count)}}),
             {Face::bold, context_.kit.style.strong}},
            {words("template.casing_width", {{"width", width}}), small()}};
        if (count == 1) rows.erase(rows.begin());
        const Block block(pen_, std::move(rows));
        for (const double depth : {0.5, 0.4, 0.6, 0.3, 0.7})
            if (labels_.along(Role::text, block, shown, Beside::right, room * depth - block.height() / 2)) break;
    }
}

void TemplateNames::set_out() {
    const std::vector<Stand> stands{{Beside::left, 5_pt}, {Beside::right, 5_pt}};
    name_line(context_.drawing.spring_line, Block(pen_, {{words("template.spring_line"), small_bold()}}), stands);
    for (const Path& piece : context_.drawing.centre_line)
        name_line(piece, Block(pen_, {{words("template.centre_line"), small_bold()}}), stands);
}

}  // namespace kerfpacket::sheets
