#include "sheets/templates/form_drawing.h"

#include <algorithm>

#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

std::vector<Ordinate> rib_ordinates(const Pen& pen, const plan::FormRib& rib, const Tape& tape) {
    const auto& words = pen.kit().words;
    const Length size = pen.kit().style.small;
    std::vector<Ordinate> ordinates;
    for (const Point top : rib.ordinates) {
        const Block label(pen, {{words("form.at_station", {{"station", tape.with_unit(top.x)}}), {Face::regular, size}},
                                {words("template.ordinate", {{"height", tape.with_unit(top.y)}}), {Face::bold, size}}});
        std::vector<Path> upright;
        const Length beyond = top.y < Length() ? -beyond_curve : beyond_curve;
        if (measure::abs(top.y) > 0.1_mm) upright.push_back(Path::line({top.x, {}}, {top.x, top.y + beyond}));
        ordinates.push_back({top, std::move(upright), label});
    }
    return ordinates;
}

std::vector<NoteRow> rib_note(const Kit& kit, const plan::Piece& piece) {
    std::vector<NoteRow> rows{{{kit.words("form.note_rib", {{"piece", piece.id}})}, {Face::bold, kit.style.text}},
                              {kit.words.list(piece.form->at_kerf_face ? "form.note_kerf_face" : "form.note_seen_face"),
                               {Face::bold, kit.style.small}}};
    rows.push_back(
        {kit.words.list(piece.blank().zero == job::End::left ? "form.note_zero_left" : "form.note_zero_right"),
         {Face::regular, kit.style.small}});
    rows.push_back({kit.words.list("form.note_ordinates"), {Face::regular, kit.style.small}, true});
    return rows;
}

/// What the kerfs do along each run of a board that bends both ways, beside the edge, and a stroke where that changes.
void add_runs(TemplateDrawing& drawing, const Pen& pen, const plan::FormRib& rib) {
    if (rib.runs.size() < 2) return;
    const auto& kit = pen.kit();
    const Length all = rib.runs.back().to;
    for (const plan::BendRun& run : rib.runs) {
        const Block word(pen, {{run_words(run, kit), {Face::bold, kit.style.small}}});
        drawing.names.push_back(
            {{{run_path(rib, run), word, {{Beside::left, 5_pt}, {Beside::right, 5_pt}, {Beside::left, 18_pt}}}}});
        if (run.to >= all) continue;
        const auto [point, direction] = rib.curve.at(run.to);
        drawing.lines.push_back(
            {Path::line(point - direction.left() * beyond_curve * 2, point + direction.left() * beyond_curve * 2),
             Role::limit, kit.style.line, Dash::dashed});
    }
}

}  // namespace

std::vector<DrawnLine> rib_lines(const plan::FormRib& rib, const fonts::Style& style) {
    return {{rib.curve, Role::outline, style.heavy, Dash::solid, style.line}};
}

TemplateShape rib_shape(const plan::FormRib& rib, const fonts::Style& style) {
    const Point crown = rib.curve.at(rib.curve.length() / 2).point;
    return {rib_lines(rib, style), rib.curve, {rib.curve.start(), crown, rib.curve.end()}, false};
}

Length rib_rise(const plan::FormRib& rib) { return rib.curve.bounds().high.y; }
Length rib_hollow(const plan::FormRib& rib) { return -rib.curve.bounds().low.y; }

Path run_path(const plan::FormRib& rib, const plan::BendRun& run) {
    std::vector<geom::Segment> segments;
    Length start;
    for (const geom::Segment& s : rib.curve.segments()) {
        const Length length = s.length();
        const double from = std::clamp((run.from - start) / length, 0.0, 1.0);
        const double to = std::clamp((run.to - start) / length, 0.0, 1.0);
        if (from < to) segments.push_back(s.part(from, to));
        start += length;
    }
    return Path(std::move(segments));
}

std::string run_words(const plan::BendRun& run, const Kit& kit) {
    return kit.words(opens(run) ? "form.opens" : "form.closes");
}

TemplateDrawing form_drawing(const Pen& pen, const plan::Piece& piece, const Tape& tape) {
    const plan::FormRib& rib = *piece.form;
    const auto& kit = pen.kit();
    const auto name = [&](const char* key, bool bold) {
        return Block(pen, {{kit.words(key), {bold ? Face::bold : Face::regular, kit.style.small}}});
    };
    TemplateDrawing drawing;
    drawing.lines = rib_lines(rib, kit.style);
    drawing.ordinates = rib_ordinates(pen, rib, tape);
    drawing.base_lines = {Path::line(rib.curve.start(), rib.curve.end())};
    drawing.centre = (rib.curve.start().x + rib.curve.end().x) / 2;
    drawing.centre_line = {Path::line({*drawing.centre, {}}, {*drawing.centre, rib_rise(rib) + beyond_curve * 2})};
    drawing.names = {
        {{{rib.curve, name("form.edge", true), {{Beside::right, 5_pt}, {Beside::left, 5_pt}, {Beside::right, 18_pt}}}}},
        {{{drawing.base_lines.front(), name("form.chord", true), {{Beside::right, 5_pt}, {Beside::left, 5_pt}}}}},
        {{{drawing.centre_line.front(),
           name("template.centre_line", true),
           {{Beside::left, 5_pt}, {Beside::right, 5_pt}}}}}};
    add_runs(drawing, pen, rib);
    drawing.note = rib_note(kit, piece);
    return drawing;
}

TemplateMap form_map(const TemplateContext& context, const plan::Piece& piece, const TemplateWays& ways) {
    const plan::FormRib& rib = *piece.form;
    const auto& words = context.kit.words;
    const auto& tape = context.tape;
    const Length chord = rib.curve.end().x;
    TemplateMap map;
    map.title = words("form.title_map");
    map.span = {rib.curve.start(), rib.curve.end(), words("form.chord_length", {{"length", tape.with_unit(chord)}})};
    map.ways = ways_text(context, ways);
    map.steps = joining_steps(context, words("form.keep_clear"));
    map.checks = {{words("form.check_chord"), tape.with_unit(chord)},
                  {words("form.check_half"), tape.with_unit(chord / 2)}};
    if (const auto middle = height_over(rib.curve, chord / 2)) {
        map.checks.push_back({words("form.check_middle"), tape.with_unit(*middle)});
        map.checks.push_back({words("form.check_diagonal"), tape.with_unit(measure::hypot(chord / 2, *middle))});
    }
    return map;
}

FigureTable form_trammels(const plan::FormRib& rib, const Kit& kit, const Tape& tape) {
    FigureTable table;
    table.heading = kit.words("form.trammel");
    table.aside = kit.words(rib.arcs_alone && rib.beyond_reach.empty() ? "form.trammel_all" : "form.trammel_part");
    table.shares = {0.18, 0.2, 0.26, 0.36};
    for (const char* head : {"radius", "centre", "from_chord", "strike"})
        table.heads.push_back(kit.words(std::string("form.trammel_") + head));
    const auto from_chord = [&](Length y) {
        if (measure::abs(y) < 0.05_mm) return kit.words("form.trammel_on_chord");
        return kit.words(y < Length() ? "template.trammel_below" : "template.trammel_above",
                         {{"length", tape.with_unit(measure::abs(y))}});
    };
    std::vector<std::pair<Length, std::vector<FigureTable::Cell>>> rows;
    const auto between = [&](const plan::Trammel& arc) {
        return kit.words("form.trammel_between",
                         {{"from", tape.with_unit(arc.from.x)}, {"to", tape.with_unit(arc.to.x)}});
    };
    for (const plan::Trammel& arc : rib.trammels)
        rows.push_back(
            {arc.from.x,
             {tape.with_unit(arc.radius), tape.with_unit(arc.centre.x), from_chord(arc.centre.y), between(arc)}});
    for (const plan::Trammel& arc : rib.beyond_reach)
        rows.push_back({arc.from.x,
                        {tape.with_unit(arc.radius), kit.words("form.trammel_long"), kit.words("form.trammel_batten"),
                         between(arc)}});
    std::sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    for (auto& row : rows) table.rows.push_back(std::move(row.second));
    return table;
}

}  // namespace kerfpacket::sheets
