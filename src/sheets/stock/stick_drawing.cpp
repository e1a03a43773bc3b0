#include "sheets/stock/stick_drawing.h"

#include "sheets/stock/stock_words.h"

namespace kerfpacket::sheets {
namespace {

class Bar {
public:
    Bar(Pen& pen, const Rect& room, const plan::StockPlan& plan, const plan::CutStick& stick, Length longest,
        const Tape& tape, const std::string& offcut)
        : pen_(pen),
          room_(room),
          plan_(plan),
          stick_(stick),
          scale_(room.width() / longest),
          tape_(tape),
          offcut_(offcut) {}

    void draw() {
        const std::vector<Length> ends = running_ends(plan_, stick_);
        const Length right = x(stick_.length);
        pen_.box(Role::outline, {room_.low, {right, room_.high.y}}, style().line);
        if (plan_.end_trim > Length()) hatched(Length(), plan_.end_trim);
        for (std::size_t i = 0; i < ends.size(); ++i) blank(i, ends[i]);
        const Length from = stick_.length - stick_.offcut;
        if (stick_.offcut > Length()) {
            hatched(from, stick_.length);
            offcut(x(from), right);
        }
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    Length x(Length from_end) const { return room_.low.x + from_end * scale_; }
    Length middle() const { return (room_.low.y + room_.high.y) / 2 - style().small * 0.35; }

    void hatched(Length from, Length to) { pen_.hatch({{x(from), room_.low.y}, {x(to), room_.high.y}}, 4_pt); }

    void blank(std::size_t i, Length end) {
        const plan::StockBlank& one = stick_.blanks[i];
        const Length right = x(plan_.end_trim + end);
        pen_.line(Role::outline, {right, room_.low.y}, {right, room_.high.y}, style().heavy);
        const Length left = x(plan_.end_trim + end - one.length);
        const std::string alone = blank_name(one, pen_.kit());
        if (!name(alone + "  " + tape_.plain(one.length), left, right, Face::bold) &&
            !name(alone, left, right, Face::condensed))
            name(std::to_string(i + 1), left, right, Face::bold);
    }

    /// In the middle of its part, or left out: the table below tells all of it. Whether it was set.
    bool name(const std::string& text, Length from, Length to, Face face) {
        const Type type = Type{face, style().small}.centred();
        if (pen_.width(text, type) + 6_pt > to - from) return false;
        pen_.text_on_white(Role::text, {(from + to) / 2, middle()}, text, type);
        return true;
    }

    /// All of it, or its length alone; beside the bar where it is too short for that and the bar leaves room.
    void offcut(Length from, Length right) {
        const std::string figure = tape_.plain(stick_.offcut);
        if (name(offcut_, from, right, Face::regular) || name(figure, from, right, Face::condensed)) return;
        const Type type{Face::condensed, style().small};
        if (right + 3_pt + pen_.width(figure, type) <= room_.high.x)
            pen_.text(Role::text, {right + 3_pt, middle()}, figure, type);
    }

    Pen& pen_;
    Rect room_;
    const plan::StockPlan& plan_;
    const plan::CutStick& stick_;
    double scale_;
    const Tape& tape_;
    const std::string& offcut_;
};

}  // namespace

void draw_stick(Pen& pen, const Rect& room, const plan::StockPlan& plan, const plan::CutStick& stick, int n,
                Length longest, const Tape& tape, const std::string& offcut) {
    const Scope figure =
        pen.figure(pen.kit().words("stock.figure", {{"n", std::to_string(n)},
                                                    {"length", stock_length(stick.length, pen.kit(), tape)},
                                                    {"blanks", blank_names(stick.blanks, pen.kit())},
                                                    {"offcut", offcut}}));
    Bar(pen, room, plan, stick, longest, tape, offcut).draw();
}

}  // namespace kerfpacket::sheets
