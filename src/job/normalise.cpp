#include "job/read.h"

#include <string>

namespace kerfpacket::job {
namespace {

/// Writes keys in a fixed order. The text is itself a job file, so that it can be read back.
class Writer {
public:
    void header(std::string_view line) { text_.append("\n").append(line).append("\n"); }
    void bare(std::string_view key, std::string_view value) {
        text_.append(key).append(" = ").append(value).append("\n");
    }
    void words(std::string_view key, std::string_view value) { bare(key, quoted_words(value)); }
    void length(std::string_view key, Length value) { bare(key, quoted_length(value)); }
    void length(std::string_view key, const std::optional<Sourced<Length>>& value) {
        if (value) length(key, value->value);
    }
    void lengths(std::string_view key, const std::vector<Length>& values) { bare(key, list(values)); }

    /// Tenths of a nanometre are noise of the arithmetic; a millionth of a millimetre is far below any tape.
    static std::string quoted_length(Length value) { return "\"" + measure::mm_text(value, 6) + " mm\""; }

    static std::string list(const std::vector<Length>& values) {
        std::string row = "[";
        for (const Length value : values) row += (row.size() > 1 ? ", " : "") + quoted_length(value);
        return row + "]";
    }

    std::string take() { return std::move(text_); }

private:
    static std::string quoted_words(std::string_view value) {
        std::string out = "\"";
        for (const char c : value) {
            if (c == '"' || c == '\\') out += '\\';
            out += c;
        }
        return out + "\"";
    }

    std::string text_;
};

std::string_view word(Surface surface) { return surface == Surface::wall ? "wall" : "finish"; }

std::string_view word(Tick tick) {
    if (tick == Tick::left) return "left";
    return tick == Tick::right ? "right" : "centre";
}

/// A setting that was left out means the same as "solve".
void write(Writer& writer, std::string_view key, const Setting& setting) {
    if (setting.given) writer.length(key, *setting.given);
    else writer.words(key, setting.half ? "half" : "solve");
}

void write_board(Writer& writer, const Board& board) {
    writer.words("material", board.material.value);
    writer.length("thickness", board.thickness.value);
    write(writer, "kerf_depth", board.kerf_depth);
    write(writer, "spacing", board.spacing);
    writer.length("trim", board.trim.value);
    writer.words("zero", board.zero == End::left ? "left" : "right");
    writer.words("tick", word(board.tick));
}

void write(Writer& writer, const Header& header) {
    writer.header("[job]");
    writer.words("number", header.number);
    writer.words("title", header.title);
    writer.words("revision", header.revision);
    writer.bare("date", header.date);
    writer.words("units", header.units == Unit::inch ? "in" : "mm");
    writer.words("language", header.language);
}

void write(Writer& writer, const Saw& saw) {
    writer.header("[saw]");
    writer.length("blade_diameter", saw.blade_diameter.value);
    writer.length("kerf", saw.kerf.value);
    writer.length("travel", saw.travel);
    writer.length("rear_limit", saw.rear_limit);
}

void write(Writer& writer, const Opening& opening) {
    const bool half_circle = opening.shape.value == Shape::semicircular;
    writer.header("[[opening]]");
    writer.words("id", opening.id.value);
    writer.words("shape", half_circle ? "semicircular" : "segmental");
    writer.length("span", opening.span.value);
    if (!half_circle) writer.length("rise", opening.rise.value);  // a half circle's rise follows from its span
    writer.words("measured_to", word(opening.measured_to));
    writer.length("legs", opening.legs);
    writer.length("depth", opening.liner.width.value);
    writer.bare("quantity", std::to_string(opening.quantity));
    writer.header("[opening.liner]");
    write_board(writer, opening.liner);
    if (!opening.casing) return;
    writer.header("[opening.casing]");
    writer.length("width", opening.casing->width.value);
    writer.length("reveal", opening.casing->reveal.value);
    writer.bare("segments", std::to_string(opening.casing->segments));
}

void write(Writer& writer, const Wall& wall) {
    writer.header("[[wall]]");
    writer.words("id", wall.id.value);
    writer.length("chord", wall.chord);
    writer.length("rise", wall.rise);
    writer.length("radius", wall.radius);
    if (wall.angle) writer.bare("angle", measure::fixed(wall.angle->value.degrees(), 9));
    writer.words("measured_to", word(wall.measured_to));
    writer.words("side", wall.side.value == Side::concave ? "concave" : "convex");
    writer.lengths("tails", {wall.tails[0].value, wall.tails[1].value});
    writer.bare("quantity", std::to_string(wall.quantity));
    writer.header("[wall.board]");
    write_board(writer, wall.board);
    writer.length("width", wall.board.width.value);
    writer.length("scarf", wall.board.scarf.value);
    std::string pairs;
    for (const auto& [from, to] : wall.board.no_splice)
        pairs += (pairs.empty() ? "" : ", ") + Writer::list({from.value, to.value});
    writer.bare("no_splice", "[" + pairs + "]");
}

void write(Writer& writer, const Stock& stock) {
    if (stock.lengths.empty() && !stock.sheet) return;
    writer.header("[stock]");
    std::vector<Length> lengths;
    for (const auto& length : stock.lengths) lengths.push_back(length.value);
    if (!lengths.empty()) writer.lengths("lengths", lengths);
    if (stock.sheet) writer.lengths("sheet", {stock.sheet->front(), stock.sheet->back()});
}

}  // namespace

std::string normalised(const Job& job) {
    Writer writer;
    write(writer, job.header);
    write(writer, job.saw);
    writer.header("[printer]");
    writer.words("media", job.printer.media.name);
    writer.length("margin", job.printer.margin);
    for (const auto& opening : job.openings) write(writer, opening);
    for (const auto& wall : job.walls) write(writer, wall);
    write(writer, job.stock);
    return writer.take();
}

}  // namespace kerfpacket::job
