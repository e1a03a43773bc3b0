#include "sheets/blanks/printer_check.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "sheets/blanks/measured_bar.h"
#include "sheets/blanks/roll_check.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length left_bar = 64_pt;    ///< of the upright bar from the left edge
constexpr Length bottom_bar = 74_pt;  ///< of the level bar from the bottom edge
constexpr Length right_free = 36_pt;  ///< at least, right of the level bar
constexpr Length top_free = 57_pt;    ///< at least, above the upright bar
constexpr Length second_bar = 30_pt;  ///< from a bar to the one of the other unit
constexpr Length text_left = 130_pt;
constexpr Length text_right = 72_pt;  ///< from the right edge
constexpr Length leading = 13_pt;
constexpr Length ruler_pitch = 10_pt;  ///< along the edge, from line to line
constexpr Length numbers_at = 49_pt;   ///< from the edge to a ruler's numbers
constexpr Length blank = 62_pt;        ///< to write a figure on, and the least of it
constexpr Length least_blank = 44_pt;

Length page_height(const job::Media& media) { return media.roll ? std::max(36_in, media.width) : media.height; }

Length whole_steps(Length room, Unit unit) { return bar_step(unit) * std::floor(room / bar_step(unit)); }

CheckBars bars_in(Length width, Length height, Unit unit) {
    return {whole_steps(width - left_bar - right_free, unit), whole_steps(height - bottom_bar - top_free, unit)};
}

class CheckPage {
public:
    CheckPage(page::Page& page, const job::Media& media, Unit unit, const Kit& kit)
        : pen_(page, kit),
          kit_(kit),
          media_(media),
          tape_(unit, kit.words),
          bars_(bars_in(page.width, page.height, unit)),
          right_(page.width - text_right),
          y_(page.height - 87_pt) {}

    void draw() {
        { const Scope title = pen_.title(); }  // read before the drawing, set after it
        drawing();
        words_to_read();
    }

private:
    void drawing() {
        const Scope figure = pen_.figure(kit_.words("figure.bars"));
        measured_bars();
        corners();
        ruler({pen_.page_width() / 2, 0_pt}, {1, 0}, {0, 1}, "bottom");
        ruler({pen_.page_width() / 2, pen_.page_height()}, {1, 0}, {0, -1}, "top");
        ruler({0_pt, pen_.page_height() / 2}, {0, 1}, {1, 0}, "left");
        ruler({pen_.page_width(), pen_.page_height() / 2}, {0, 1}, {-1, 0}, "right");
    }

    const fonts::Style& style() const { return kit_.style; }
    std::string words(const std::string& key, const fonts::Words::Values& values = {}) const {
        return kit_.words("printer_check." + key, values);
    }
    Type text() const { return {Face::regular, style().text}; }
    bool inches() const { return tape_.unit() == Unit::inch; }

    void measured_bars() {
        const Unit other = inches() ? Unit::millimetre : Unit::inch;
        const CheckBars second = bars_in(pen_.page_width() - second_bar, pen_.page_height() - second_bar, other);
        const Point zero{left_bar, bottom_bar};
        draw_measured_bar(pen_, zero, {1, 0}, {0, 1}, bars_.level, tape_.unit());
        draw_measured_bar(pen_, zero, {0, 1}, {1, 0}, bars_.upright, tape_.unit());
        const Point inside{left_bar + second_bar, bottom_bar + second_bar};
        draw_measured_bar(pen_, inside, {1, 0}, {0, 1}, second.level, other);
        draw_measured_bar(pen_, inside, {0, 1}, {1, 0}, second.upright, other);
    }

    /// The ends of the bars and the corner across from them: A, B, C, D, with the beginnings of both diagonals.
    void corners() {
        const Point a{left_bar, bottom_bar};
        const Point c{left_bar + bars_.level, bottom_bar + bars_.upright};
        const Point b{c.x, a.y};
        const Point d{a.x, c.y};
        const Type bold = Type{Face::bold, style().text}.centred();
        for (const Point corner : {c, d}) cross(corner);
        cross(b);
        diagonal(c, a, 36_pt);
        for (const auto& [corner, across] : {std::pair(a, c), std::pair(c, a), std::pair(b, d), std::pair(d, b)})
            diagonal(corner, across, -12_pt);
        for (const auto& [corner, letter] :
             {std::pair(a, "A"), std::pair(b, "B"), std::pair(c, "C"), std::pair(d, "D")}) {
            const Length aside = corner.x > left_bar ? 13_pt : -13_pt;
            pen_.text(Role::registration, {corner.x + aside, corner.y - 4_pt}, letter, bold);
        }
    }

    /// A piece of the diagonal from a corner, toward the one across from it or, with a length below 0, away from it.
    void diagonal(Point corner, Point across, Length length) {
        const Point way = across - corner;
        pen_.line(Role::registration, corner, corner + way * (length / measure::hypot(way.x, way.y)), style().hair);
    }

    void cross(Point at) {
        pen_.line(Role::registration, {at.x - 6_pt, at.y}, {at.x + 6_pt, at.y}, style().hair);
        pen_.line(Role::registration, {at.x, at.y - 6_pt}, {at.x, at.y + 6_pt}, style().hair);
    }

    /// Lines at 1, 2, 3 ... sixteenths (or millimetres) from an edge, side by side, each with its number.
    void ruler(Point middle, Direction along, Direction inner, const std::string& edge) {
        const int count = inches() ? 10 : 16;
        const Length step = inches() ? Length::inches(1.0 / 16) : 1_mm;
        const Type type = Type{Face::condensed, style().tiny};
        const Length half = ruler_pitch * count / 2;
        for (int k = 1; k <= count; ++k) {
            const Point at = middle + along * (ruler_pitch * (k - 0.5) - half);
            const Point line = at + inner * (step * k);
            pen_.line(Role::registration, line - along * 4_pt, line + along * 4_pt, style().line);
            pen_.line(Role::registration, line, at + inner * (numbers_at - 2_pt), style().hair);
            Point base = at + inner * numbers_at;
            Type set = type;
            if (inner.y != 0) {
                set = type.centred();
                if (inner.y < 0) base.y -= 5_pt;
            } else {
                base.y -= 2.5_pt;
                if (inner.x < 0) set = type.at_right();
            }
            pen_.text(Role::registration, base, std::to_string(k), set);
        }
        const bool upright = inner.x != 0;
        Point name = middle + along * (half + 8_pt) + inner * 40_pt;
        Type bold{Face::bold, style().small};
        if (upright) bold = bold.turned(Angle::degrees(90));
        if (inner.y < 0) name.y -= 5_pt;
        pen_.text(Role::registration, name, words(edge), bold);
    }

    void heading(const std::string& key) {
        y_ -= 25_pt;
        section(pen_, text_left, right_, y_, words(key));
        y_ -= 7_pt;
    }

    void say(const std::string& key, const fonts::Words::Values& values = {}) {
        y_ = pen_.paragraph(Role::text, {text_left, y_ - leading - 2_pt}, words(key, values), text(),
                            right_ - text_left, leading);
    }

    /// Words and a line to write on, from `x` on and within `end`: long enough for a figure, or all that there is.
    void to_fill(Length x, Length end, const std::string& name, bool whole) {
        const Type type = pen_.fitting(name, text(), end - x - least_blank - 5_pt);
        x += pen_.text(Role::text, {x, y_}, name, type) + 5_pt;
        pen_.line(Role::box, {x, y_ - 2_pt}, {whole ? end : std::min(x + blank, end), y_ - 2_pt}, style().line);
    }

    void row(const std::string& first, const std::string& second, bool whole = false) {
        y_ -= whole ? 17_pt : 20_pt;
        const Length middle = (text_left + right_) / 2;
        to_fill(text_left, middle - 6_pt, first, whole);
        to_fill(middle + 6_pt, right_, second, whole);
    }

    void edges_to_tick() {
        y_ -= 20_pt;
        Length x = text_left;
        for (const char* edge : {"top", "bottom", "left", "right"}) {
            tick_box(pen_, {x, y_ - 2_pt}, 11_pt);
            x += 16_pt;
            x += pen_.text(Role::text, {x, y_}, words(edge), text()) + 22_pt;
        }
    }

    void words_to_read() {
        {
            const Scope heading = pen_.title();
            pen_.text(Role::furniture, {text_left, y_}, words("title"), {Face::bold, style().title});
        }
        y_ -= 15_pt;
        pen_.text(Role::furniture, {text_left, y_}, media_text(media_, kit_), text());
        row(words("printer"), words("tray"), true);
        row(words("by"), words("date"), true);
        y_ += 6_pt;  // the heading has its own white
        heading("print");
        say("print_1");
        say("print_2");
        heading("first");
        say("first_1");
        edges_to_tick();
        heading("bars");
        say("bars_1");
        row(words("level", {{"true", tape_.exact(bars_.level)}}),
            words("upright", {{"true", tape_.exact(bars_.upright)}}));
        row(words("diagonal_ac"), words("diagonal_bd"));
        heading("edges");
        say(inches() ? "edges_in" : "edges_mm");
        row(words("top"), words("bottom"));
        row(words("left"), words("right"));
        heading("type");
        commands();
        say("type_1");
        // The least papers leave no room for it above the bars' numbers.
        if (y_ > bottom_bar + second_bar + 66_pt) arms_length();
    }

    /// The figures and the lines of strips, in their sizes: what cannot be read here cannot be read at the saw.
    void arms_length() {
        heading("arm");
        y_ -= 16_pt;
        Length x = text_left;
        const auto figure = [&](const std::string& text, Length size) {
            x += pen_.text(Role::numeral, {x, y_}, text, {Face::condensed, size}) + 14_pt;
        };
        for (const Length size : {style().title, style().strong}) figure("138", size);
        for (const Length size : {style().text, style().small}) figure(tape_.exact_plain(arms_length_figure()), size);
        for (const Length width : {style().hair, style().fine, style().line, style().heavy}) {
            pen_.line(Role::outline, {x, y_ + 3_pt}, {x + 24_pt, y_ + 3_pt}, width);
            x += 36_pt;
        }
    }
    Length arms_length_figure() const { return inches() ? Length::inches(61.6875) : 1567_mm; }

    void commands() {
        // As the command line takes it, in every language.
        const std::string unit = Tape(tape_.unit()).unit_name();
        for (const std::string& line : kit_.words.list("printer_check.command")) {
            y_ -= 14_pt;
            std::string filled = line;
            const auto put = [&](const std::string& mark, const std::string& value) {
                for (std::size_t at = 0; (at = filled.find(mark)) != std::string::npos;)
                    filled.replace(at, mark.size(), value);
            };
            put("{media}", media_.name);
            put("{unit}", unit);
            Type type{Face::condensed, style().text};
            if (pen_.width(filled, type) > right_ - text_left) type.size = style().small;
            pen_.text(Role::text, {text_left, y_}, filled, type);
        }
        y_ -= 4_pt;
    }

    Pen pen_;
    const Kit& kit_;
    const job::Media& media_;
    Tape tape_;
    CheckBars bars_;
    Length right_;
    Length y_;
};

}  // namespace

CheckBars printer_check_bars(const job::Media& media, Unit unit) {
    if (is_narrow_roll(media)) return {roll_check_bar(unit), {}};
    return bars_in(media.width, page_height(media), unit);
}

page::Document make_printer_check(const job::Media& media, Unit unit, const Kit& kit) {
    page::Document document;
    document.title = kit.words("printer_check.title");
    document.subject = document.title;
    document.language = kit.words("page.language");
    page::Page page;
    if (is_narrow_roll(media)) {
        page = roll_check(media, unit, kit);
    } else {
        page.width = media.width;
        page.height = page_height(media);
        CheckPage(page, media, unit, kit).draw();
    }
    page.sheet = "printer-check";
    page.number = 1;
    document.pages.push_back(std::move(page));
    document.outline.push_back({document.title, 0, 0});
    return document;
}

}  // namespace kerfpacket::sheets
