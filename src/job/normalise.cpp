#include "job/read.h"

#include <string>
#include <utility>

#include "job/choices.h"
#include "job/writer.h"

namespace kerfpacket::job {
namespace {

std::string_view word(Surface surface) { return surface == Surface::wall ? "wall" : "finish"; }

/// What the measured points of the job may be off; the usual where it has none.
Length tape_of(const Job& job) {
    for (const Opening& opening : job.openings)
        if (opening.ordinates) return opening.ordinates->tape;
    for (const Wall& wall : job.walls)
        if (wall.ordinates) return wall.ordinates->tape;
    return usual_tape;
}

void write(Writer& writer, const Header& header, Length tape) {
    writer.header("[job]");
    writer.words("number", header.number);
    writer.words("title", header.title);
    writer.words("revision", header.revision);
    writer.value("date", Day{header.date});
    writer.words("units", header.units == Unit::inch ? "in" : "mm");
    writer.words("language", header.language);
    if (!header.also_in.empty()) writer.words("also_in", header.also_in);
    if (tape != usual_tape) writer.length("tape", tape);
}

void write(Writer& writer, const Saw& saw) {
    writer.header("[saw]");
    writer.length("blade_diameter", saw.blade_diameter.value);
    writer.length("kerf", saw.kerf.value);
    writer.length("travel", saw.travel);
    if (saw.mitre_limit) writer.value("mitre_limit", saw.mitre_limit->value);
    writer.length("rear_limit", saw.rear_limit);
    if (!saw.trial) return;
    writer.length("trial_depth", saw.trial->depth.value);
    if (saw.trial->ends) writer.length("trial_ends", saw.trial->ends);
    else writer.length("trial_at_fence", saw.trial->at_fence.value);
}

void write(Writer& writer, const Ordinates& ordinates) {
    std::vector<Element> pairs;
    pairs.reserve(ordinates.points.size());
    for (const auto& [station, height] : ordinates.points) pairs.push_back({station.value, height.value});
    writer.rows("ordinates", std::move(pairs));
    writer.words("fit", word(ordinates.fit ? ordinates.fit->value : Fit::fair));
    if (!ordinates.end_angles) return;
    const auto& [left, right] = *ordinates.end_angles;
    writer.row("end_angles", {{left.value}, {right.value}});
}

/// What follows from other figures is left out: the span of measured points, the rise of a half circle.
void write_shape(Writer& writer, const Opening& opening) {
    const bool half_circle = opening.shape.value == Shape::semicircular;
    if (!opening.ordinates) writer.length("span", opening.span.value);
    if (opening.rise.value > Length() && !half_circle) writer.length("rise", opening.rise.value);
    writer.length("radius", opening.radius);
    writer.length("side_radius", opening.side_radius);
    writer.length("crown_radius", opening.crown_radius);
    writer.length("reverse_radius", opening.reverse_radius);
    if (opening.ordinates) write(writer, *opening.ordinates);
}

void write_legs(Writer& writer, const Opening& opening) {
    if (!opening.legs) return;
    const auto& [left, right] = *opening.legs;
    if (canonical(Scalar(left.value)) == canonical(Scalar(right.value))) writer.length("legs", left.value);
    else writer.lengths("legs", {left.value, right.value});
    if (opening.through_legs) writer.flag("through_legs");
}

void write(Writer& writer, const Splay& splay) {
    writer.header("[opening.splay]");
    if (const auto* side = std::get_if<Sourced<Length>>(&splay.by)) writer.length("side", side->value);
    else writer.value("angle", std::get<Sourced<Angle>>(splay.by).value);
    writer.words("measured", splay.measured == Edge::narrow ? "narrow" : "wide");
    writer.words("toward", splay.wide == Toward::room ? "room" : "away");
}

void write(Writer& writer, const Casing& casing) {
    writer.header("[opening.casing]");
    writer.length("width", casing.width.value);
    writer.length("reveal", casing.reveal.value);
    if (casing.wall_side != WallSide::room) writer.words("wall_side", word(casing.wall_side));
    if (casing.segments) writer.count("segments", casing.segments->value);
    writer.length("board", casing.board);
}

void write(Writer& writer, std::string_view title, const Form& form) {
    writer.header(title);
    writer.length("step", form.step);
    if (form.freed) writer.flag("freed");
    if (form.ribs) writer.count("ribs", form.ribs->value);
    writer.length("below", form.below);
    std::vector<Element> stations;
    for (const auto& station : form.stations) stations.push_back({station.value});
    if (!stations.empty()) writer.rows("stations", std::move(stations));
}

void write(Writer& writer, const TemplateWish& wish) {
    const bool half_given = wish.half_at.line > 0;
    if (!wish.sheets && !half_given) return;
    writer.header("[opening.template]");
    if (wish.sheets) writer.words("sheets", *wish.sheets == Sheets::grid ? "grid" : "along");
    if (half_given && wish.half) writer.flag("half");
    if (half_given && !wish.half) writer.off("half");
}

void write(Writer& writer, const Opening& opening) {
    writer.header("[[opening]]");
    writer.words("id", opening.id.value);
    writer.words("shape", word(opening.shape.value));
    write_shape(writer, opening);
    writer.words("measured_to", word(opening.measured_to));
    write_legs(writer, opening);
    writer.length("depth", opening.liner.width.value);
    writer.count("quantity", opening.quantity);
    writer.header("[opening.liner]");
    write_board(writer, opening.liner);
    write_coupons(writer, "opening.liner.coupon", opening.liner.coupons);
    if (opening.splay) write(writer, *opening.splay);
    if (opening.casing) write(writer, *opening.casing);
    if (opening.form) write(writer, "[opening.form]", *opening.form);
    write(writer, opening.wish);
}

void write(Writer& writer, const Rake& rake) {
    if (const auto* angle = std::get_if<Sourced<Angle>>(&rake.slope)) writer.value("rake", angle->value);
    else {
        const auto& [rise, run] = std::get<std::array<Sourced<Length>, 2>>(rake.slope);
        writer.lengths("rake", {rise.value, run.value});
    }
    if (rake.climbs) writer.words("climbs", rake.to_the_right() ? "right" : "left");
    if (rake.ends[0] == rake.ends[1] && rake.ends[0] == EndCut::plumb) return;
    writer.row("ends", {{Words{std::string(word(rake.ends[0]))}}, {Words{std::string(word(rake.ends[1]))}}});
}

void write(Writer& writer, const Wall& wall) {
    writer.header("[[wall]]");
    writer.words("id", wall.id.value);
    writer.length("chord", wall.chord);
    writer.length("rise", wall.rise);
    writer.length("radius", wall.radius);
    if (wall.angle) writer.value("angle", wall.angle->value);
    if (wall.ordinates) write(writer, *wall.ordinates);
    writer.words("measured_to", word(wall.measured_to));
    writer.words("side", wall.side.value == Side::concave ? "concave" : "convex");
    writer.lengths("tails", {wall.tails[0].value, wall.tails[1].value});
    writer.count("quantity", wall.quantity);
    if (wall.rake) write(writer, *wall.rake);
    writer.header("[wall.board]");
    write_board(writer, wall.board);
    writer.length("width", wall.board.width.value);
    writer.length("scarf", wall.board.scarf.value);
    std::vector<Element> spans;
    for (const auto& [from, to] : wall.board.no_splice) spans.push_back({from.value, to.value});
    writer.row("no_splice", std::move(spans));
    std::vector<Length> joints;
    for (const auto& joint : wall.board.joints) joints.push_back(joint.value);
    if (!joints.empty()) writer.lengths("joints", joints);
    writer.length("max_blank", wall.board.max_blank);
    write_coupons(writer, "wall.board.coupon", wall.board.coupons);
    if (wall.form) write(writer, "[wall.form]", *wall.form);
}

void write(Writer& writer, const Stock& stock) {
    if (stock.lengths.empty() && !stock.sheet && !stock.end_trim && !stock.least_offcut) return;
    writer.header("[stock]");
    std::vector<Length> lengths;
    for (const auto& length : stock.lengths) lengths.push_back(length.value);
    if (!lengths.empty()) writer.lengths("lengths", lengths);
    if (stock.sheet) writer.lengths("sheet", {stock.sheet->front(), stock.sheet->back()});
    if (stock.end_trim) writer.length("end_trim", *stock.end_trim);
    if (stock.least_offcut) writer.length("least_offcut", *stock.least_offcut);
}

/// What is as it is without being said is left out; of a profile only its name counts.
void write(Writer& writer, const Printer& printer) {
    writer.header("[printer]");
    writer.words("media", printer.media.name);
    if (printer.strip_media().name != printer.media.name) writer.words("strip_media", printer.strips->name);
    if (printer.template_media().name != printer.media.name) writer.words("template_media", printer.templates->name);
    if (printer.adhesive) writer.flag("adhesive");
    writer.length("margin", printer.margin);
    if (printer.profile) writer.words("profile", printer.profile->name.value);
    if (printer.strip_profile) writer.words("strip_profile", printer.strip_profile->name.value);
    if (printer.template_profile) writer.words("template_profile", printer.template_profile->name.value);
}

void write(Writer& writer, const PacketWish& packet) {
    if (!packet.one_set && packet.leave_out.empty()) return;
    writer.header("[packet]");
    if (packet.one_set) writer.count("copies", 1);
    std::vector<Element> kinds;
    for (const std::string_view kind : packet.leave_out) kinds.push_back({Words{std::string(kind)}});
    if (!kinds.empty()) writer.row("leave_out", std::move(kinds));
}

}  // namespace

Canonical canonical(const Job& job) {
    Writer writer;
    write(writer, job.header, tape_of(job));
    write(writer, job.saw);
    write(writer, job.printer);
    write(writer, job.packet);
    for (const auto& opening : job.openings) write(writer, opening);
    for (const auto& wall : job.walls) write(writer, wall);
    write(writer, job.stock);
    write_stock_rows(writer, job, "[[stock.boards]]", job.stock.boards);
    write_stock_rows(writer, job, "[[stock.sheets]]", job.stock.sheets);
    write_materials(writer, job);
    write_trials(writer, job);
    return writer.take();
}

std::string normalised(const Job& job) { return canonical(job).text; }

}  // namespace kerfpacket::job
