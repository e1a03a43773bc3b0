#include "sheets/templates/arch_names.h"
#include "sheets/words/wall_side.h"
#include "sheets/words/wording.h"

#include <algorithm>

#include "measure/require.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length same_place = 1e-3_mm;
constexpr Length narrow = 130_pt;  // a name's rows where one does not fit

/// Whether a path is one arc, perhaps in several stretches.
bool is_one_arc(const Path& path) {
    const geom::Segment first = path.segments().front();
    return std::all_of(path.segments().begin(), path.segments().end(), [&](const geom::Segment& s) {
        return !s.is_line() && measure::abs(s.radius() - first.radius()) < same_place &&
               geom::distance(s.centre(), first.centre()) < same_place;
    });
}

bool touches_end(const Path& path, Point p) {
    return geom::distance(path.start(), p) < same_place || geom::distance(path.end(), p) < same_place;
}

class ArchNames {
public:
    ArchNames(const Pen& pen, const ArchOpening& arch, const Tape& tape, const TemplateDrawing& drawing)
        : pen_(pen), opening_(arch), arch_(arch.lines()), piece_(arch.piece()), tape_(tape), drawing_(drawing) {}

    std::vector<Name> all() {
        crosswise();
        curves();
        liners();
        liner_mitres();
        casing_segments();
        set_out();
        return std::move(names_);
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Block block(std::string text, bool bold = false) const {
        return {pen_, {{std::move(text), {bold ? Face::bold : Face::regular, pen_.kit().style.small}}}};
    }
    void add(const Path& path, const Block& name, std::vector<Stand> stands) {
        names_.push_back({{{path, name, std::move(stands)}}});
    }

    void crosswise() {
        const std::vector<Stand> stands{{Beside::left, 3_pt}, {Beside::right, 3_pt}};
        for (const Path& mitre : arch_.mitres) {
            const bool at_leg = arch_.casing_inside && touches_end(*arch_.casing_inside, mitre.start());
            add(mitre, block(words(at_leg ? "template.mitre" : "template.mitre_at_point"), true), stands);
        }
        for (const Path& joint : arch_.segment_joints) add(joint, block(words("template.joint"), true), stands);
    }

    /// What a line is and, where it is one arc, its radius.
    std::string curve_name(const std::string& name, const Path& curve) const {
        if (!piece_.circular || !is_one_arc(curve)) return name;
        const Length radius = curve.segments().front().radius();
        return name + words("template.radius", {{"radius", tape_.with_unit(radius)}});
    }

    void curves() {
        // Above the wall line the kerf numbers come first.
        add(arch_.wall, block(curve_name(words("template.wall_line"), arch_.wall)),
            {{Beside::left, 4_pt}, {Beside::left, 21_pt}, {Beside::left, 34_pt}});
        add(arch_.finish, block(curve_name(words("template.finished_line"), arch_.finish), true),
            {{Beside::right, 4_pt}, {Beside::right, 16_pt}});
        if (!arch_.casing_inside) return;
        casing_inside();
        add(*arch_.casing_outside, block(curve_name(words("template.casing_outside"), *arch_.casing_outside)),
            {{Beside::right, 4_pt}, {Beside::left, 4_pt}, {Beside::right, 16_pt}});
    }

    /// The reveal is too narrow for a name: it stands under the finished line and says where its own line is, or a
    /// leader takes it there.
    void casing_inside() {
        const std::string reveal = tape_.exact(piece_.casing->reveal.value);
        const Path& inside = *arch_.casing_inside;
        const std::string far = curve_name(words("template.casing_reveal", {{"reveal", reveal}}), inside);
        const std::string near = curve_name(words("template.casing_inside"), inside);
        names_.push_back({{{arch_.finish, block(far), {{Beside::right, 16_pt}, {Beside::right, 4_pt}}},
                           {inside, block(near), {{Beside::right, 1.5_pt}}}}});
    }

    /// What the liner is; of two boards each, for the numbers start again on each.
    void liners() {
        const Length under = piece_.cut.thickness + 18_pt;  // beyond the finished line and its name
        const std::vector<Stand> stands{{Beside::left, 21_pt}, {Beside::left, 34_pt},  {Beside::left, 47_pt},
                                        {Beside::left, 60_pt}, {Beside::right, under}, {Beside::right, under + 13_pt}};
        for (const plan::Piece* board : opening_.boards) {
            const fonts::Words::Values values{{"board", board->id},
                                              {"thickness", tape_.exact(board->cut.thickness)},
                                              {"depth", tape_.exact(board->cut.depth)}};
            const bool alone = board->boards == 1;
            const std::string text = words(alone ? "template.liner_kerfs" : "template.board_kerfs", values);
            const Path line = alone ? arch_.wall : back_of(*board);
            // In one row, else in several between two ordinates.
            const Type type{alone ? Face::regular : Face::bold, pen_.kit().style.small};
            std::vector<Block::Row> rows;
            for (const std::string& row : broken(pen_, text, type, narrow)) rows.push_back({row, type});
            names_.push_back({{{line, block(text, !alone), stands}, {line, Block(pen_, std::move(rows)), stands}}});
        }
    }

    /// The back of a board, along the outer ends of its kerf ticks.
    Path back_of(const plan::Piece& board) const {
        std::vector<Point> points;
        for (const plan::KerfTick& tick : arch_.kerf_ticks)
            if (tick.board == board.board) points.push_back(tick.line.start());
        measure::require(points.size() > 1, "a board that bends has kerfs");
        if (points.front().x > points.back().x) std::reverse(points.begin(), points.end());
        return Path::polyline(points);
    }

    void liner_mitres() {
        for (const Path& mitre : arch_.liner_mitres) {
            const std::string angle = tape_.number(mitre_angle(mitre).degrees(), 1);
            const std::vector<Stand> stands{{Beside::left, 3_pt}, {Beside::right, 3_pt}};
            const Block name = block(words("template.liner_mitre", {{"angle", angle}}), true);
            // Short, and often in a ring: led on into the room, the line has space beside it.
            const Path led_on =
                Path::line(mitre.end(), mitre.end() + geom::direction(mitre.start(), mitre.end()) * 4_in);
            std::vector<Stand> further = stands;
            for (const Length gap : {14_pt, 26_pt, 40_pt})
                for (const Beside side : {Beside::left, Beside::right}) further.push_back({side, gap});
            names_.push_back({{{mitre, name, stands}}, Length(), Name::Choice{led_on, name, further}});
        }
    }

    measure::Angle mitre_angle(const Path& mitre) const {
        if (geom::distance(mitre.start(), arch_.wall.start()) < same_place)
            return piece_.blank().end(job::End::left).mitre;
        if (geom::distance(mitre.start(), arch_.wall.end()) < same_place)
            return opening_.boards.back()->blank().end(job::End::right).mitre;
        return piece_.blank().end(job::End::right).mitre;
    }

    void casing_segments() {
        if (!piece_.casing) return;
        const std::string width = tape_.exact(piece_.casing->width.value);
        const std::size_t count = arch_.segments.size();
        const Length room = piece_.casing->reveal.value + piece_.casing->width.value - piece_.cut.thickness;
        for (const plan::CasingSegment& segment : arch_.segments) {
            if (segment.side != job::Toward::room) continue;
            std::vector<Block::Row> rows{
                {words("template.segment", {{"n", std::to_string(segment.n)}, {"m", std::to_string(count)}}),
                 {Face::bold, pen_.kit().style.strong}},
                {words("template.casing_width", {{"width", width}}), {Face::regular, pen_.kit().style.small}}};
            if (count == 1) rows.erase(rows.begin());
            if (const std::string side = wall_side_text(piece_, segment, pen_.kit()); !side.empty())
                rows.push_back({side, {Face::bold, pen_.kit().style.small}});
            const Block name(pen_, std::move(rows));
            std::vector<Stand> stands;
            for (const double depth : {0.5, 0.4, 0.6, 0.3, 0.7})
                stands.push_back({Beside::right, room * depth - name.height() / 2});
            add(segment.outside, name, std::move(stands));
            names_.back().leader_from.reset();
        }
    }

    void set_out() {
        const std::vector<Stand> stands{{Beside::left, 5_pt}, {Beside::right, 5_pt}};
        const auto springs = measured_springs(arch_);
        const Length higher = springs[0].y - springs[1].y;
        const bool left = higher > Length();
        const char* low = left ? "template.spring_line_right" : "template.spring_line_left";
        add(drawing_.base_lines.front(), block(words(arch_.springs_level() ? "template.spring_line" : low), true),
            stands);
        if (drawing_.base_lines.size() > 1) {
            const std::string difference = tape_.with_unit(measure::abs(higher));
            add(drawing_.base_lines.back(),
                block(words(left ? "template.left_higher" : "template.right_higher", {{"difference", difference}})),
                stands);
            names_.back().leader_from = Length();
        }
        for (const Path& part : drawing_.centre_line) add(part, block(words("template.centre_line"), true), stands);
    }

    const Pen& pen_;
    const ArchOpening& opening_;
    const plan::ArchLines& arch_;
    const plan::Piece& piece_;
    const Tape& tape_;
    const TemplateDrawing& drawing_;
    std::vector<Name> names_;
};

const char* kerfs_key(const plan::Piece& piece) {
    if (piece.blank().bends_both_ways()) return "template.kerfs_both";
    return opens(piece.blank().runs.front()) ? "template.kerfs_outside" : "template.kerfs_inside";
}

}  // namespace

std::vector<Name> arch_names(const Pen& pen, const ArchOpening& arch, const Tape& tape,
                             const TemplateDrawing& drawing) {
    return ArchNames(pen, arch, tape, drawing).all();
}

std::vector<NoteRow> arch_note(const Kit& kit, const ArchOpening& arch) {
    const auto& words = kit.words;
    const Type small{Face::regular, kit.style.small};
    const Type small_bold{Face::bold, kit.style.small};
    const std::string casing = arch.lines().casing_outside ? "casing" : "wall";
    const std::string level = arch.lines().springs_level() ? "" : "_lower";
    const char* top = arch.half                ? "template.top_half"
                      : arch.lines().symmetric ? "template.top"
                                               : "template.top_no_flip";
    std::vector<NoteRow> note{{{words(top)}, {Face::bold, kit.style.text}},
                              {words.list("template.print_side"), small},
                              {words.list(kerfs_key(arch.piece())), small_bold},
                              {words.list("template.ordinates_" + casing + level), small, true}};
    // The kerfs are counted from one end: what the flipped half shows is not where they are.
    if (arch.half) note.insert(note.begin() + 1, {words.list("template.half_ticks"), small_bold});
    // Its lines are those at the room's side of the wall.
    if (arch.piece().splay)
        note.insert(note.begin() + 1,
                    {words.list(arch.piece().splay->wide_at_room ? "template.splayed_wide" : "template.splayed_narrow"),
                     small_bold});
    return note;
}

}  // namespace kerfpacket::sheets
