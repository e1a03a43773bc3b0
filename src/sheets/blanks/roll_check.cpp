#include "sheets/blanks/roll_check.h"

#include "page/placing.h"
#include "sheets/blanks/measured_bar.h"
#include "sheets/layout/paper.h"
#include "sheets/words/tape.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// Left of the bar and right of it, where the roll is cut.
constexpr Length cut_free = 36_pt;
/// Of the bar below the middle of the roll; the words stand above it.
constexpr Length bar_below = 19_pt;
constexpr Length first_line = 36_pt;  ///< of the words, above the bar
constexpr Length second_line = 23_pt;
constexpr Length between = 14_pt;
constexpr Length blank = 80_pt;

class RollCheck {
public:
    RollCheck(page::Page& page, const job::Media& media, Unit unit, const Kit& kit)
        : pen_(page, kit),
          kit_(kit),
          media_(media),
          unit_(unit),
          bar_(roll_check_bar(unit)),
          zero_{cut_free, page.height / 2 - bar_below} {}

    void draw() {
        {
            const Scope heading = pen_.title();
            say(words("title") + ": " + media_text(media_, kit_), {Face::bold, kit_.style.text});
        }
        say(words("roll_print"), small());
        next_line();
        say(words("roll_bar", {{"true", Tape(unit_, kit_.words).exact(bar_)}}), {Face::bold, kit_.style.small});
        x_ -= between - 4_pt;
        pen_.line(Role::box, {x_, y_ - 2_pt}, {x_ + blank, y_ - 2_pt}, kit_.style.line);
        x_ += blank + between;
        // As the command line takes it, in every language.
        const std::string unit = Tape(unit_).unit_name();
        say("kerfpacket printer-check --media " + media_.name + " --units " + unit + " --profile NAME --level \"... " +
                unit + "\"",
            {Face::condensed, kit_.style.small});
        say(words("roll_type"), small());
        const Scope figure = pen_.figure(kit_.words("figure.roll_bar"));
        draw_measured_bar(pen_, zero_, {1, 0}, {0, 1}, bar_, unit_);
    }

private:
    std::string words(const std::string& key, const fonts::Words::Values& values = {}) const {
        return kit_.words("printer_check." + key, values);
    }
    Type small() const { return {Face::regular, kit_.style.small}; }

    void say(const std::string& text, const Type& type) { x_ += pen_.text(Role::text, {x_, y_}, text, type) + between; }

    void next_line() {
        x_ = zero_.x;
        y_ = zero_.y + second_line;
    }

    Pen pen_;
    const Kit& kit_;
    const job::Media& media_;
    Unit unit_;
    Length bar_;
    Point zero_;
    Length x_ = zero_.x;
    Length y_ = zero_.y + first_line;
};

}  // namespace

bool is_narrow_roll(const job::Media& media) { return media.roll && media.width < job::narrowest_template_roll; }

Length roll_check_bar(Unit unit) { return bar_step(unit) * (unit == Unit::inch ? 24 : 60); }

page::Page roll_check(const job::Media& media, Unit unit, const Kit& kit) {
    page::Page page;
    page.width = roll_page_end(roll_check_bar(unit) + cut_free * 2);
    page.height = media.width;
    RollCheck(page, media, unit, kit).draw();
    page::turn_left(page);
    return page;
}

}  // namespace kerfpacket::sheets
