// Ribs of the form that a board is bent round.

#include <algorithm>
#include <cmath>

#include "plan/make_lines.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;
using job::say;

/// Common practice, no source: a trammel longer than this is no longer stiff.
constexpr Length trammel_reach = 120_in;
constexpr Length usual_step_inch = 6_in;
constexpr Length usual_step_mm = 150_mm;
/// Common practice, no source: room for a clamp's jaw under the chord.
constexpr Length usual_below_inch = 4_in;
constexpr Length usual_below_mm = 100_mm;

/// Chord along x from the origin to the right.
Path on_its_chord(const Path& path) {
    return path.moved(Point{} - path.start()).turned(-geom::direction(path.start(), path.end()).angle());
}

/// Where the upright at a station meets the curve furthest from the chord.
std::optional<Length> height_at(const Path& curve, Length station) {
    std::optional<Length> height;
    for (const geom::Segment& s : curve.segments()) {
        for (const double f : geom::crossings(s, {station, {}}, {0, 1})) {
            const Length here = s.point(f).y;
            if (!height || here > *height) height = here;
        }
    }
    return height;
}

std::vector<Length> stations(const job::Form& form, Length chord, measure::Unit units) {
    std::vector<Length> places{{}};
    if (form.stations.empty()) {
        const Length usual = units == measure::Unit::inch ? usual_step_inch : usual_step_mm;
        const Length step = form.step ? form.step->value : usual;
        for (int i = 1; step * i < chord - 0.01_mm; ++i) places.push_back(step * i);
    } else {
        for (const auto& station : form.stations)
            if (station.value > 0_mm && station.value < chord) places.push_back(station.value);
        std::sort(places.begin(), places.end());
    }
    places.push_back(chord);
    return places;
}

/// The arc on which a board must be filled that keeps all but this part of its bend: the line that keeps its length is
/// as long as before and (1 - part) as wide.
Path sprung(const Path& level, const Piece& piece, double part) {
    const geom::Segment& arc = level.segments().front();
    const Length to_line = piece.radii.line - arc.radius();
    const Length radius = piece.radii.line * (1 - part) - to_line;
    const Angle turn = arc.turn / (1 - part);
    return Path::arc({}, {radius * 2 * std::sin(std::abs(turn.radians()) / 2), {}}, turn);
}

}  // namespace

job::Diagnostics check_freed(const Piece& piece, const job::Form& form) {
    if (!form.freed) return {};
    if (!piece.circular)
        return {{job::Severity::error, *form.freed,
                 say("freed_arc", "what a board springs back is reckoned for a bend of one arc alone"),
                 say("freed_arc_do", "leave out freed: fasten this board to its wall before it is let go")}};
    if (piece.turn.degrees() / (1 - piece.springs_back) > 180)
        return {{job::Severity::error, *form.freed,
                 say("freed_half", "a form that makes up for springing back would turn more than half round"),
                 say("freed_half_do",
                     "leave out freed: fasten this board before it is let go, or bend it in two lengths")}};
    return {};
}

job::Diagnostics check_stations(const FormRib& rib, const job::Form& form, const job::Job& job) {
    job::Diagnostics wrong;
    for (const auto& station : form.stations)
        if (station.value > rib.curve.end().x)
            wrong.push_back({job::Severity::error, station.at,
                             say("station_beyond", "station {at} lies beyond the end of the form",
                                 {{"at", job::shown(station.value, job.header.units)}}),
                             say("station_beyond_do", "its chord is {chord} long",
                                 {{"chord", job::shown(rib.curve.end().x, job.header.units)}})});
    return wrong;
}

FormRib form_rib(const Piece& piece, const Request& board, const job::Form& form, measure::Unit units) {
    const Faces face = faces(piece.measured_to, piece.cut.thickness);
    const bool at_kerf_face = std::all_of(piece.blank().runs.begin(), piece.blank().runs.end(),
                                          [](const BendRun& run) { return run.on == bend::KerfsOn::inside; });
    const Length from = at_kerf_face ? board.ends[0].wall : board.ends[0].finish;
    const Length to = at_kerf_face ? board.ends[1].wall : board.ends[1].finish;
    const Length left = at_kerf_face ? face.wall : face.finish;
    const curve::Curve measured = board.curve.part(from, to);
    const curve::Curve curve = measured.parallel(left);
    const auto along = [&](Length place) { return measured.on_parallel(std::clamp(place, from, to) - from, left); };
    FormRib rib;
    rib.at_kerf_face = at_kerf_face;
    rib.runs = board.bend->runs;
    for (BendRun& run : rib.runs) run = {along(run.from), along(run.to), run.on};
    std::erase_if(rib.runs, [](const BendRun& run) { return run.to <= run.from; });
    // The curve has the kerfs above it: the rib of the seen face stands below it as it is, that of the kerf face is
    // turned over.
    Path level = on_its_chord(curve.path());
    if (form.freed && check_freed(piece, form).empty()) {
        rib.springs_back = piece.springs_back;
        level = sprung(level, piece, piece.springs_back);
        rib.runs = {{{}, level.length(), rib.runs.front().on}};
    }
    rib.curve = at_kerf_face ? level.mirrored_up_down() : level;
    rib.arcs_alone = curve.is_exact_path();
    rib.ribs = form.ribs ? form.ribs->value : 0;
    rib.below = form.below ? form.below->value : units == measure::Unit::inch ? usual_below_inch : usual_below_mm;
    const geom::Rect taken = rib.curve.bounds();
    rib.stock = {measure::up_to_tape(taken.width(), units), measure::up_to_tape(taken.height() + rib.below, units)};
    for (const Length station : stations(form, rib.curve.end().x, units)) {
        const bool at_end = station == Length() || station == rib.curve.end().x;
        const std::optional<Length> height = at_end ? Length() : height_at(rib.curve, station);
        if (height) rib.ordinates.push_back({station, *height});
    }
    if (!rib.arcs_alone) return rib;
    for (const geom::Segment& s : rib.curve.segments())
        if (!s.is_line())
            (s.radius() <= trammel_reach ? rib.trammels : rib.beyond_reach)
                .push_back({s.centre(), s.radius(), s.from, s.to});
    return rib;
}

}  // namespace kerfpacket::plan
