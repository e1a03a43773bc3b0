#include "sheets/templates/casing_drawing.h"

#include <algorithm>
#include <utility>

#include "sheets/templates/template_tile.h"
#include "sheets/words/wall_side.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length longest_mark = 1.3_in;  // of the centre for a spline, into the segment
constexpr Length name_off_joint = 22_pt;
constexpr double name_across = 0.78;  // of the joint, from the inside edge
constexpr double lower_name_across = 0.60;
constexpr Length note_width = 190_pt;

class SegmentDrawing {
public:
    SegmentDrawing(const Pen& pen, const AlikeSegments& alike, const SegmentFacts& facts, const Tape& tape)
        : pen_(pen), alike_(alike), segment_(*alike.drawn), facts_(facts), tape_(tape), by_(levelling(segment_)) {}

    TemplateDrawing all() {
        drawing_.lines = segment_lines(segment_, pen_.kit().style);
        if (segment_.left_joint) joint(segment_.left.turned(by_), names(true), true);
        if (segment_.right_joint) joint(segment_.right.turned(by_), names(false), false);
        mitres();
        piece();
        note();
        return std::move(drawing_);
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    const fonts::Style& style() const { return pen_.kit().style; }
    Type small() const { return {Face::regular, style().small}; }
    static Type bold(Length size) { return {Face::bold, size}; }

    /// Halfway from the inside edge to the outside one: for an arrow to stand on, so no parallel is needed, and there
    /// is none where a measured edge turns sharper than the casing is wide.
    Path middle_line() const {
        const Path inside = segment_.inside.turned(by_);
        const Path outside = segment_.outside.turned(by_);
        constexpr int steps = 48;
        std::vector<Point> line;
        for (int i = 0; i <= steps; ++i) {
            const double part = static_cast<double>(i) / steps;
            line.push_back(
                geom::middle(inside.at(inside.length() * part).point, outside.at(outside.length() * part).point));
        }
        return Path::polyline(line);
    }

    /// The names of the joint at an end of the template, in the order of the segments that it serves; once where two
    /// of them meet at it.
    std::string names(bool at_left) const {
        const auto name = [&](const plan::CasingSegment& segment, bool left) {
            return joint_name(left ? segment.n - 1 : segment.n, pen_.kit());
        };
        const std::string first = name(segment_, at_left);
        std::string all = first;
        bool same = true;
        for (const AlikeSegments::Other& other : alike_.others) {
            const std::string next = name(*other.segment, at_left != other.turned);
            same = same && next == first;
            all += ", " + next;
        }
        return same ? first : all;
    }

    /// A short line square to the joint at its middle, and the joint's name beside it.
    void joint(const Path& line, const std::string& name, bool at_left) {
        const Direction up = geom::direction(line.start(), line.end());
        const Direction into = at_left ? -up.left() : up.left();
        const Length room = segment_.inside.length() / 3;
        const Point middle = geom::middle(line.start(), line.end());
        const Path mark = Path::line(middle, middle + into * std::min(longest_mark, room));
        drawing_.lines.push_back({mark, Role::joint, style().line, Dash::solid, {}});
        const Block centre_for(pen_, {{words("casing.centre_for"), small()}, {words("casing.spline"), small()}});
        const Beside below = at_left ? Beside::right : Beside::left;
        drawing_.names.push_back({{{mark, centre_for, {{below, 3_pt}}}}, Length()});
        const auto [block, off] = name_block(name);
        // Where the segment is too short for the names of both joints side by side one stands under the other.
        const double across = !at_left && crowded() ? lower_name_across : name_across;
        const Point beside = line.start() + (line.end() - line.start()) * across;
        drawing_.figures.push_back({block, beside + into * off, {1, 0}, Role::joint});
    }

    Length half_between_joints() const {
        const auto at = [](const Path& end) { return end.start() + (end.end() - end.start()) * name_across; };
        return geom::distance(at(segment_.left), at(segment_.right)) / 2;
    }

    /// Whether the name of either joint is wider than its half of the segment.
    bool crowded() const {
        const auto too_wide = [&](bool left) {
            return name_block(names(left)).first.width() + 4_pt >= half_between_joints();
        };
        return (segment_.left_joint && too_wide(true)) || (segment_.right_joint && too_wide(false));
    }

    /// A joint's name under its word; in a segment so short that both joints' do not find room, alone and nearer.
    /// Returns how far off the joint its middle stands, too.
    std::pair<Block, Length> name_block(const std::string& name) const {
        const Length half = half_between_joints();
        const Block whole(pen_, {{words("casing.joint"), bold(style().small)}, {name, bold(style().huge)}});
        const Length off = std::max(name_off_joint, whole.width() / 2 + 8_pt);
        if (off + whole.width() / 2 < half) return {whole, off};
        for (const Length size : {style().huge, style().strong, style().text}) {
            const Block alone(pen_, {{name, bold(size)}});
            if (alone.width() + 4_pt < half) return {alone, half / 2};
        }
        const Block least(pen_, {{name, {Face::condensed_bold, style().small}}});
        return {least, least.width() / 2 + 3_pt};
    }

    void mitres() {
        const Block name(pen_, {{words("template.mitre"), bold(style().small)}});
        if (!segment_.left_joint)
            drawing_.names.push_back({{{segment_.left.turned(by_), name, {{Beside::right, 3_pt}}}}});
        if (!segment_.right_joint)
            drawing_.names.push_back({{{segment_.right.turned(by_), name, {{Beside::left, 3_pt}}}}});
    }

    void piece() {
        const Path outside = segment_.outside.turned(by_);
        std::vector<Block::Row> rows{{title(), bold(style().strong)}};
        if (const std::string side = side_of(segment_); !side.empty()) rows.push_back({side, bold(style().text)});
        for (const AlikeSegments::Other& other : alike_.others)
            rows.push_back(
                {words(other.turned ? "casing.also_turned" : "casing.also", {{"segment", also(*other.segment)}}),
                 bold(style().small)});
        rows.push_back({words("template.casing_width", {{"width", tape_.exact(width())}}), small()});
        const Block name(pen_, std::move(rows));
        std::vector<Stand> stands;
        for (const double depth : {0.3, 0.4, 0.25, 0.5, 0.6, 0.7})
            stands.push_back({Beside::right, width() * depth - name.height() / 2});
        drawing_.names.push_back({{{outside, name, stands}}, std::nullopt});
        const Block inside(pen_, {{words("casing.inside"), small()}});
        const Block out(pen_, {{words("casing.outside"), small()}});
        drawing_.names.push_back(
            {{{segment_.inside.turned(by_), inside, {{Beside::right, 4_pt}, {Beside::left, 4_pt}}}}});
        drawing_.names.push_back({{{outside, out, {{Beside::left, 4_pt}, {Beside::right, 4_pt}}}}});
        drawing_.grain = middle_line();
    }

    std::string named(const plan::CasingSegment& segment) const {
        return words("template.segment", {{"n", std::to_string(segment.n)}, {"m", std::to_string(facts_.count)}});
    }
    std::string title() const { return named(segment_); }
    std::string side_of(const plan::CasingSegment& segment) const {
        return wall_side_text(facts_.opening, segment, pen_.kit());
    }
    std::string with_side(const plan::CasingSegment& segment) const {
        const std::string side = side_of(segment);
        return side.empty() ? named(segment) : named(segment) + ", " + side;
    }
    /// One that the template serves too: its side where that is another.
    std::string also(const plan::CasingSegment& other) const {
        return other.side == segment_.side ? named(other) : with_side(other);
    }
    /// ", FAR SIDE of the wall" where all that the template serves are of one side; a small one has no room but here.
    std::string common_side() const {
        const auto elsewhere = [&](const AlikeSegments::Other& other) { return other.segment->side != segment_.side; };
        const std::string side = side_of(segment_);
        return side.empty() || std::any_of(alike_.others.begin(), alike_.others.end(), elsewhere) ? "" : ", " + side;
    }
    Length width() const { return facts_.opening.casing->width.value; }

    void note() {
        const auto sentence = [&](const std::string& text, const Type& type) {
            drawing_.note.push_back({broken(pen_, text, type, note_width), type});
        };
        const int quantity = facts_.opening.quantity;
        const fonts::Words::Values values{{"piece", facts_.piece},
                                          {"segment", with_side(segment_)},
                                          {"segments", segment_numbers(alike_.numbers())},
                                          {"m", std::to_string(facts_.count)},
                                          {"side", common_side()},
                                          {"count", std::to_string(quantity)}};
        const char* how_many = !alike_.others.empty() ? "casing.cut_each"
                               : quantity == 1        ? "casing.cut_one"
                                                      : "casing.cut";
        std::string cut = words(how_many, values);
        if (const std::vector<int> turned = alike_.turned(); !turned.empty())
            cut += " " + words("casing.turned", {{"segments", segment_numbers(turned)}});
        sentence(cut, bold(style().text));
        if (!alike_.others.empty() && (segment_.left_joint || segment_.right_joint)) {
            sentence(words("casing.joints_in_order"), small());
            drawing_.note.back().lesser = true;
        }
        // A board may not be smaller than told.
        sentence(words("casing.board", {{"length", tape_.with_unit(segment_.length_to_saw(tape_.unit()))},
                                        {"width", tape_.with_unit(segment_.width_to_saw(tape_.unit()))}}),
                 bold(style().small));
        const std::size_t tiles = facts_.tiling.printed();
        if (tiles > 1) {
            const bool in_grid = facts_.tiling.way() == job::Sheets::grid;
            sentence(words(in_grid ? "casing.tiles" : "casing.sheets", {{"count", std::to_string(tiles)}}) + " " +
                         words(in_grid ? "template.step_2" : "template.along_step_2") + " " +
                         words(in_grid ? "template.step_3" : "template.along_step_3",
                               {{"first", first_tile(facts_.tiling)}}),
                     small());
            drawing_.note.back().first_only = true;
        }
        const bool at_room = segment_.side == job::Toward::room;
        sentence(words(at_room ? "casing.print_side" : "casing.print_side_away"), small());
        drawing_.note.back().lesser = true;
    }

    const Pen& pen_;
    const AlikeSegments& alike_;
    const plan::CasingSegment& segment_;
    const SegmentFacts& facts_;
    const Tape& tape_;
    geom::Angle by_;
    TemplateDrawing drawing_;
};

}  // namespace

std::vector<DrawnLine> segment_lines(const plan::CasingSegment& segment, const fonts::Style& style) {
    const geom::Angle by = levelling(segment);
    std::vector<DrawnLine> lines;
    for (const Path* edge : {&segment.inside, &segment.outside})
        lines.push_back({edge->turned(by), Role::outline, style.heavy, Dash::solid, style.line});
    for (const Path* end : {&segment.left, &segment.right})
        lines.push_back({end->turned(by), Role::outline, style.heavy, Dash::solid, style.line});
    return lines;
}

TemplateShape segment_shape(const plan::CasingSegment& segment, const fonts::Style& style) {
    Path edge = segment.inside.turned(levelling(segment));
    if (edge.end().x < edge.start().x) edge = edge.reversed();
    const Landmarks places{edge.start(), edge.at(edge.length() / 2).point, edge.end()};
    return {segment_lines(segment, style), std::move(edge), places, false, {}, true};
}

TemplateDrawing casing_drawing(const Pen& pen, const AlikeSegments& alike, const SegmentFacts& facts,
                               const Tape& tape) {
    return SegmentDrawing(pen, alike, facts, tape).all();
}

std::string joint_name(int n, const Kit& kit) {
    return kit.words("casing.joint_name", {{"left", std::to_string(n)}, {"right", std::to_string(n + 1)}});
}

}  // namespace kerfpacket::sheets
