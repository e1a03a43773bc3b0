#include "sheets/stock/sheet_drawing.h"

#include <algorithm>

#include "sheets/stock/sheet_words.h"
#include "sheets/stock/stock_words.h"

namespace kerfpacket::sheets {
namespace {

class Plan {
public:
    Plan(Pen& pen, const Rect& room, const plan::StockPlan& plan, const plan::CutSheet& sheet, const Tape& tape)
        : pen_(pen),
          corner_{room.low.x, room.high.y},
          plan_(plan),
          sheet_(sheet),
          scale_(std::min(room.width() / sheet.length, room.height() / sheet.width)),
          tape_(tape) {}

    void draw() {
        if (plan_.end_trim > Length()) hatched({}, sheet_.length, {}, plan_.end_trim);
        for (const plan::CutStrip& strip : sheet_.strips) draw(strip);
        const Length from = sheet_.width - sheet_.offcut;
        if (sheet_.offcut > Length()) {
            hatched({}, sheet_.length, from, sheet_.width);
            name({left_over_text(sheet_, pen_.kit(), tape_), tape_.with_unit(sheet_.offcut)},
                 rect({}, sheet_.length, from, sheet_.width), Face::regular);
        }
        pen_.box(Role::outline, rect({}, sheet_.length, {}, sheet_.width), style().line);
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    /// Of a part of the sheet: along it, and down from its sawn edge.
    Rect rect(Length from, Length to, Length upper, Length lower) const {
        return {{corner_.x + from * scale_, corner_.y - lower * scale_},
                {corner_.x + to * scale_, corner_.y - upper * scale_}};
    }
    void hatched(Length from, Length to, Length upper, Length lower) { pen_.hatch(rect(from, to, upper, lower), 4_pt); }

    void draw(const plan::CutStrip& strip) {
        const Length lower = strip.from + strip.width;
        if (plan_.end_trim > Length()) hatched({}, plan_.end_trim, strip.from, lower);
        const std::vector<Length> ends = running_ends(plan_, strip.cut);
        for (std::size_t i = 0; i < ends.size(); ++i) {
            const plan::StockBlank& blank = strip.cut.blanks[i];
            const Length to = plan_.end_trim + ends[i];
            const Rect place = rect(to - blank.length, to, strip.from, lower);
            pen_.box(Role::outline, place, style().line);
            const std::string own = blank_name(blank, pen_.kit());
            name({own + "  " + tape_.plain(blank.length), own}, place, Face::bold);
        }
        const Length from = strip.cut.length - strip.cut.offcut;
        if (strip.cut.offcut <= Length()) return;
        hatched(from, strip.cut.length, strip.from, lower);
        name({offcut_text(strip.cut, pen_.kit(), tape_), tape_.plain(strip.cut.offcut)},
             rect(from, strip.cut.length, strip.from, lower), Face::regular);
    }

    /// The first of the texts that has room, condensed if need be; none is left to the table below.
    void name(const std::vector<std::string>& texts, const Rect& place, Face face) {
        const Length size = style().small;
        if (place.height() < size * 1.1) return;
        for (const std::string& text : texts)
            for (const Face one : {face, Face::condensed}) {
                const Type type = Type{one, size}.centred();
                if (pen_.width(text, type) + 4_pt > place.width()) continue;
                pen_.text_on_white(Role::text,
                                   {(place.low.x + place.high.x) / 2, (place.low.y + place.high.y) / 2 - size * 0.35},
                                   text, type);
                return;
            }
    }

    Pen& pen_;
    Point corner_;
    const plan::StockPlan& plan_;
    const plan::CutSheet& sheet_;
    double scale_;
    const Tape& tape_;
};

}  // namespace

Length sheet_height(const plan::CutSheet& sheet, Length width, Length most) {
    return std::min(most, width * (sheet.width / sheet.length));
}

void draw_sheet(Pen& pen, const Rect& room, const plan::StockPlan& plan, const plan::CutSheet& sheet, int n,
                const Tape& tape) {
    const Scope figure = pen.figure(
        pen.kit().words("stock.sheet_figure", {{"n", std::to_string(n)},
                                               {"size", sheet_size(sheet.width, sheet.length, pen.kit(), tape)},
                                               {"strips", std::to_string(sheet.strips.size())},
                                               {"offcut", left_over_text(sheet, pen.kit(), tape)}}));
    Plan(pen, room, plan, sheet, tape).draw();
}

}  // namespace kerfpacket::sheets
