#include "sheets/splay/flat_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "geom/guide.h"
#include "sheets/words/numeral.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length foot_height = Length::points(6);
constexpr Length hatch_gap = Length::points(13);
/// By which a sheet is higher than the blank is wide, at least: its edges bow.
constexpr Length band_leeway = Length::points(8);
/// Along a sheet: what words need.
constexpr Length least_written = Length::inches(2.2);
/// An edge that a trim shorter than that leaves no room to say anything on.
constexpr Length least_said = Length::points(26);

/// The parts of a straight line outside of a turned box.
std::vector<Path> outside(const Path& line, const TurnedBox& box) {
    const Angle by = -box.along.angle();
    const Rect level{{-box.half_length, -box.half_height}, {box.half_length, box.half_height}};
    std::vector<Path> parts = open_line(line.moved(box.centre * -1).turned(by), {level});
    for (Path& part : parts) part = part.turned(-by).moved(box.centre);
    return parts;
}

std::vector<Path> outside(std::vector<Path> lines, const std::vector<TurnedBox>& boxes) {
    for (const TurnedBox& box : boxes) {
        std::vector<Path> open;
        for (const Path& line : lines)
            for (Path& part : outside(line, box)) open.push_back(std::move(part));
        lines = std::move(open);
    }
    return lines;
}

class Drawing {
public:
    Drawing(const Pen& pen, const plan::Piece& piece, const Tape& tape, const Tiling& tiling)
        : pen_(pen), piece_(piece), splay_(*piece.splay), flat_(splay_, piece.blank()), tape_(tape), tiling_(tiling) {}

    TemplateDrawing made() {
        edges();
        words_of_sheets();
        joints();
        kerfs();
        for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) end_of_board(end);
        for (Figure& figure : numbers_) drawing_.figures.push_back(std::move(figure));
        return std::move(drawing_);
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }

    void line(Path path, Role role, Length width, Dash dash = Dash::solid, Length on_map = {}) {
        drawing_.lines.push_back({std::move(path), role, width, dash, on_map});
    }

    void edges() {
        line(flat_.narrow(), Role::outline, style().heavy, Dash::solid, style().line);
        line(flat_.wide(), Role::outline, style().heavy, Dash::solid, style().line);
        for (const Length end : {Length(), piece_.blank().length})
            line(flat_.kerf(end), Role::outline, style().heavy, Dash::solid, style().line);
    }

    /// What goes off an end, hatched, and where the board is cut.
    void end_of_board(std::size_t end) {
        const plan::Blank& blank = piece_.blank();
        const Length trim = blank.trims.at(end);
        const Length edge = end == 0 ? Length() : blank.length;
        const Length cut = end == 0 ? trim : blank.length - trim;
        const auto leg = flat_.leg_cut(end);
        if (leg) {
            cut_line(leg->seen, Dash::solid, style().hair);
            cut_line(leg->kerf, Dash::dashed, {});
            name_cut(leg->seen, "flat.cut_seen");
            name_cut(leg->kerf, "flat.cut_kerf");
        } else if (trim > Length()) {
            line(flat_.kerf(cut), Role::limit, style().line, Dash::solid, style().hair);
        }
        if (trim <= Length()) return;
        std::vector<TurnedBox> spared = spared_;
        if (end == 0 && trim >= least_said) spared.push_back(zero_here());
        if (trim >= least_said) {
            const Block block(pen_, {{words("flat.trim", {{"length", tape_.exact(trim)}}), {Face::bold, style().small}},
                                     {words(leg            ? "flat.trim_scribe"
                                            : trim > 40_pt ? "flat.trim_line"
                                                           : "flat.trim_short"),
                                      {Face::regular, style().small}}});
            const Length middle = (edge + cut) / 2;
            const Path across = flat_.kerf(middle);
            const Direction along = across.segments().front().start_direction();
            const Figure figure{block, across.at(across.length() / 2).point, along, Role::text};
            spared.push_back(block.box(figure.centre, along, 3_pt));
            drawing_.figures.push_back(figure);
        }
        hatch(edge, cut, spared);
    }

    /// Open where words and numbers stand.
    void cut_line(const Path& cut, Dash dash, Length on_map) {
        std::vector<TurnedBox> boxes = spared_;
        for (const Figure& number : numbers_) boxes.push_back(number.block.box(number.centre, number.along, 1_pt));
        for (const geom::Segment& s : cut.segments())
            for (Path& part : outside(std::vector<Path>{Path::line(s.from, s.to)}, boxes))
                line(std::move(part), Role::limit, style().line, dash, on_map);
    }

    /// At the end from which all is read.
    TurnedBox zero_here() {
        const Block block(pen_, {{words("flat.zero_here"), {Face::bold, style().small}}});
        const Path end = flat_.kerf({});
        const Direction along = end.segments().front().start_direction();
        const double inward = flat_.zero_at_left() ? -1 : 1;
        const Point centre = end.at(end.length() / 4).point + along.left() * ((block.height() / 2 + 5_pt) * inward);
        drawing_.figures.push_back({block, centre, along, Role::text});
        return block.box(centre, along, 3_pt);
    }

    void name_cut(const Path& cut, const char* key) {
        const Block block(pen_, {{words(key), {Face::bold, style().small}}});
        drawing_.names.push_back({{{cut, block, {{Beside::left, 4_pt}, {Beside::right, 4_pt}}}}});
    }

    void hatch(Length edge, Length cut, const std::vector<TurnedBox>& spared) {
        const Length slope = measure::abs(cut - edge);
        for (Length low = splay_.narrow_edge() - slope; low < splay_.wide_edge(); low += hatch_gap) {
            // Askew from the end to the cut, as far as both lie on the board.
            const double from = std::max(0.0, (splay_.narrow_edge() - low) / slope);
            const double to = std::min(1.0, (splay_.wide_edge() - low) / slope);
            if (from >= to) continue;
            const auto at = [&](double part) { return flat_.at(edge + (cut - edge) * part, low + slope * part); };
            for (Path& part : outside({Path::line(at(from), at(to))}, spared))
                line(std::move(part), Role::hatch, style().fine);
        }
    }

    /// On every sheet, in the middle of what it shows: which edge is which, and where the blade goes.
    void words_of_sheets() {
        const geom::Guide guide(flat_.along(middle()));
        const Length inside = std::min(words_inside(), splay_.sawn_width() * 0.38);
        for (const Length at : middles_of_sheets(guide)) {
            const auto say = [&](Length across, std::vector<Block::Row> rows) {
                const geom::Station on = guide.at(at);
                const Figure figure{Block(pen_, std::move(rows)), on.point + on.direction.left() * (across - middle()),
                                    on.direction, Role::text};
                spared_.push_back(figure.block.box(figure.centre, figure.along, 3_pt));
                drawing_.figures.push_back(figure);
            };
            say(splay_.wide_edge() - inside, {{edge_name(splay_, true, pen_.kit()), {Face::bold, style().text}},
                                              {words("flat.to_fence"), {Face::regular, style().small}}});
            say(splay_.narrow_edge() + inside, {{edge_name(splay_, false, pen_.kit()), {Face::bold, style().text}},
                                                {words("flat.toward_you"), {Face::regular, style().small}}});
            if (splay_.sawn_width() > inside * 2 + 60_pt)
                say(middle(), {{words("flat.lines"), {Face::regular, style().small}},
                               {words("flat.both_feet"), {Face::bold, style().small}}});
        }
    }

    /// From an edge to the words beside it: behind the numbers of the kerfs, of which the last is the widest.
    Length words_inside() const {
        const plan::Kerf& last = piece_.blank().kerfs.back();
        Length distance;
        for (const plan::Kerf& kerf : piece_.blank().kerfs)
            if (kerf.n % 5 == 0) distance = std::max(distance, reach_of(distance_text(kerf, splay_.wide_edge())));
        return foot_height + reach_of({std::to_string(last.n), {Face::bold, numeral_size()}}) + distance +
               style().text * 2.2;
    }

    /// How far toward the middle words beside a kerf reach.
    Length reach_of(const Block::Row& words) const {
        const Block block(pen_, {words});
        return (is_turned(block) ? block.width() : block.height()) + 4_pt;
    }
    Block::Row distance_text(const plan::Kerf& kerf, Length edge) const {
        return {tape_.with_unit(flat_.read(kerf.mark, edge)), {Face::regular, style().small}};
    }
    Length numeral_size() const { return std::min(Length::points(17), piece_.cut.least_spacing * 0.8); }
    /// Where the gap has no room for it, words run along the kerf.
    bool is_turned(const Block& block) const { return block.width() > piece_.cut.least_spacing - 5_pt; }

    /// Along the middle line: of what each sheet shows of the wood between the trims, where that is enough to write on.
    std::vector<Length> middles_of_sheets(const geom::Guide& guide) const {
        const plan::Blank& blank = piece_.blank();
        const std::array trims{guide.nearest(flat_.at(blank.trims[0], middle())),
                               guide.nearest(flat_.at(blank.length - blank.trims[1], middle()))};
        const Length first = std::min(trims[0], trims[1]), last = std::max(trims[0], trims[1]);
        std::vector<Length> places;
        const auto add = [&](Length from, Length to) {
            const Length low = std::max(from, first), high = std::min(to, last);
            const Length at = high - low > least_written ? (low + high) / 2 : (from + to) / 2;
            if (std::none_of(places.begin(), places.end(), [&](Length one) { return measure::abs(one - at) < 1_in; }))
                places.push_back(at);
        };
        if (tiling_.way() == job::Sheets::along) {
            Length from;
            for (const Joint& joint : tiling_.joints()) {
                const Length to = guide.nearest(geom::middle(joint.inner, joint.outer));
                add(from, to);
                from = to;
            }
            add(from, guide.length());
            return places;
        }
        for (const Tile& tile : tiling_.tiles())
            if (const Length at = guide.nearest(geom::middle(tile.cell.low, tile.cell.high)); !tile.blank) add(at, at);
        return places;
    }

    /// Beside each joint of two sheets, which two it is.
    void joints() {
        drawing_.joints_named = true;
        for (std::size_t i = 0; i < tiling_.joints().size(); ++i) {
            const Joint& joint = tiling_.joints()[i];
            const Direction along = geom::direction(joint.inner, joint.outer);
            const Block block(
                pen_, {{words("flat.joint", {{"left", std::to_string(i + 1)}, {"right", std::to_string(i + 2)}}),
                        {Face::bold, style().small}}});
            for (const double part : {0.25, 0.75}) {
                const Point on = joint.inner + (joint.outer - joint.inner) * part;
                const Point centre = on + along.left() * (block.height() / 2 + 3_pt);
                drawing_.figures.push_back({block, centre, along, Role::registration});
                spared_.push_back(block.box(centre, along, 1_pt));
            }
        }
    }

    Length middle() const { return (splay_.narrow_edge() + splay_.wide_edge()) / 2; }

    void kerfs() {
        const plan::Blank& blank = piece_.blank();
        const Length size = numeral_size();
        for (const plan::Kerf& kerf : blank.kerfs) {
            std::vector<TurnedBox> own;
            for (const bool wide : {false, true}) {
                number(kerf, wide, size, own);
                foot(kerf, wide);
            }
            std::vector<Path> parts = outside(outside({flat_.kerf(kerf.mark)}, own), spared_);
            for (Path& part : parts) line(std::move(part), Role::tick, style().line);
        }
    }

    /// Exactly a kerf wide, on the edge.
    void foot(const plan::Kerf& kerf, bool wide) {
        const Length edge = wide ? splay_.wide_edge() : splay_.narrow_edge();
        const Length inner = wide ? edge - foot_height : edge + foot_height;
        line(Path::line(flat_.at(kerf.at, edge), flat_.at(kerf.at, inner)), Role::foot, piece_.cut.kerf);
    }

    /// Its number inside an edge, and at every fifth how far a tape along that edge reads from zero.
    void number(const plan::Kerf& kerf, bool wide, Length size, std::vector<TurnedBox>& own) {
        const Length edge = wide ? splay_.wide_edge() : splay_.narrow_edge();
        const double inward = wide ? -1 : 1;
        const Direction up = flat_.kerf(kerf.mark).segments().front().start_direction();
        const Direction level{up.y, -up.x};
        Length from = foot_height + 4_pt;
        const auto set = [&](const Block::Row& text, Role role) {
            const Block block(pen_, {text});
            const bool turned = is_turned(block);
            const Length reach = turned ? block.width() : block.height();
            const Direction along = turned ? up : level;
            const Figure figure{block, flat_.at(kerf.mark, edge + (from + reach / 2) * inward), along, role};
            own.push_back(block.box(figure.centre, along, 1.5_pt));
            numbers_.push_back(figure);
            from += reach + 4_pt;
        };
        set({std::to_string(kerf.n), {numeral_face_of(kerf.n), size}}, Role::numeral);
        if (kerf.n % 5 == 0 && piece_.cut.least_spacing >= style().small) set(distance_text(kerf, edge), Role::running);
    }

    const Pen& pen_;
    const plan::Piece& piece_;
    const plan::Splay& splay_;
    plan::FlatBlank flat_;
    const Tape& tape_;
    const Tiling& tiling_;
    TemplateDrawing drawing_;
    std::vector<Figure> numbers_;
    std::vector<TurnedBox> spared_;  ///< words that stand across kerfs
};

}  // namespace

std::string edge_name(const plan::Splay& splay, bool wide, const Kit& kit) {
    const bool at_room = splay.wide_at_room == wide;
    return kit.words(wide ? (at_room ? "flat.wide_room" : "flat.wide_far")
                          : (at_room ? "flat.narrow_room" : "flat.narrow_far"));
}

TemplateShape flat_shape(const plan::Piece& piece, const fonts::Style& style) {
    const plan::FlatBlank flat(*piece.splay, piece.blank());
    const plan::Blank& blank = piece.blank();
    const Length middle = (piece.splay->narrow_edge() + piece.splay->wide_edge()) / 2;
    TemplateShape shape;
    shape.band = piece.splay->sawn_width() + band_leeway;
    shape.guide = flat.along(middle);
    shape.lines = {{flat.narrow(), Role::outline, style.heavy},
                   {flat.wide(), Role::outline, style.heavy},
                   {flat.kerf({}), Role::outline, style.heavy},
                   {flat.kerf(blank.length), Role::outline, style.heavy}};
    for (const plan::Kerf& kerf : blank.kerfs) shape.lines.push_back({flat.kerf(kerf.at), Role::tick, style.line});
    shape.places = {shape.guide.start(), shape.guide.at(shape.guide.length() / 2).point, shape.guide.end()};
    return shape;
}

TemplateDrawing flat_drawing(const Pen& pen, const plan::Piece& piece, const Tape& tape, const Tiling& tiling) {
    return Drawing(pen, piece, tape, tiling).made();
}

TemplateMap flat_map(const TemplateContext& context, const plan::Piece& piece) {
    const auto& words = context.kit.words;
    const auto& tape = context.tape;
    const plan::FlatBlank flat(*piece.splay, piece.blank());
    const Path narrow = flat.narrow();
    const Path wide = flat.wide();
    const Length chord = geom::distance(narrow.start(), narrow.end());
    const Length wide_chord = geom::distance(wide.start(), wide.end());
    // The blank lies level in its middle, its ends as high as each other or nearly.
    const Point middle = narrow.at(narrow.length() / 2).point;
    const Point between = geom::middle(narrow.start(), narrow.end());
    TemplateMap map;
    map.title = words("flat.title_map");
    map.aside = kerf_side(piece, context.kit);
    map.span = {wide.start(), wide.end(), words("flat.wide_span", {{"length", tape.with_unit(wide_chord)}})};
    map.steps = joining_steps(context, words("flat.keep_clear"));
    map.steps.back() = words("flat.stick");
    map.checks = {{words("flat.check_wide"), tape.with_unit(wide_chord)},
                  {words("flat.check_narrow"), tape.with_unit(chord)},
                  {words("flat.check_rise"), tape.with_unit(geom::distance(middle, between))},
                  {words("flat.check_along"), tape.with_unit(wide.length())}};
    return map;
}

}  // namespace kerfpacket::sheets
