#include "sheets/layout/roll_furniture.h"

#include <algorithm>
#include <cmath>

#include "sheets/layout/furniture.h"
#include "sheets/layout/pen.h"
#include "sheets/layout/sheet_code.h"

namespace kerfpacket::sheets {
namespace {

/// Kept free at the two ends, where the roll is cut.
constexpr Length cut_margin = 18_pt;
constexpr Length leading = 12.5_pt;
constexpr Length column_gap = 14_pt;
/// Between an end and the content.
constexpr Length content_gap = 9_pt;
/// What the upright bar takes of the far end, figures on both of its sides included.
constexpr Length upright_bar = 24_pt;
/// What the level bar takes of the height of the far end where it has no row of its own.
constexpr Length level_bar = 24_pt;

/// Where the words of the near end begin: beside the sheet's code.
constexpr Length words_from = cut_margin + sheet_code_side + sheet_code_gap;

struct Line {
    std::string text;
    Type type;
};

class Ends {
public:
    Ends(Draft& draft, const plan::Plan& plan, const Kit& kit, std::size_t number, std::size_t count)
        : draft_(draft), plan_(plan), pen_(draft.page, kit), number_(number), count_(count) {}

    Length head_length() { return words_from + width(head_lines(), head_height()) + content_gap; }
    Length tail_length() {
        return content_gap + std::max(width(tail_lines(), tail_height()), tail_bar_length()) + upright_bar + cut_margin;
    }

    void draw() {
        const RollPage& roll = *draft_.roll;
        draw_sheet_code(draft_.page, plan_, number_, {cut_margin, high() - sheet_code_side});
        {
            const Scope heading = pen_.title();
            flow(head_lines(), words_from, head_height());
        }
        const Length tail = pen_.page_width() - roll.tail + content_gap;
        {
            const Scope artifact = pen_.within(Tag::artifact);  // the same again
            flow(tail_lines(), tail, tail_height());
        }
        draw_check_bar(pen_, {pen_.page_width() - cut_margin - upright_bar + 14_pt, foot()}, {0, 1}, across(),
                       bar_holds_words());
        if (has_row()) draw_check_bar(pen_, {roll.head, roll.bar_row - 11_pt}, {1, 0}, along());
        else draw_check_bar(pen_, {tail, roll.edge + 9_pt}, {1, 0}, along());
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(const char* key, const fonts::Words::Values& values) const {
        return pen_.kit().words(key, values);
    }
    bool has_row() const { return draft_.roll->bar_row > 0_pt; }
    /// Of the upright bar: beside the strips, where a roll is wider than they are, but as long as bars are.
    Length foot() const {
        const Length edge = draft_.roll->edge;
        if (!has_row()) return edge;
        return std::max(edge, std::min(edge + draft_.roll->bar_row - roll_bar_row, high() - 10_in));
    }
    Length low() const { return has_row() ? draft_.roll->bar_row : draft_.roll->edge; }
    Length high() const { return pen_.page_height() - draft_.roll->edge; }
    Length head_height() const { return high() - draft_.roll->edge; }
    Length tail_height() const { return high() - low() - (has_row() ? 0_pt : level_bar); }

    CheckBar across() const { return short_check_bar_for(high() - foot()); }
    bool bar_holds_words() const { return across().inches >= 6; }
    /// The shortest that counts stands at the far end; a row of its own takes what the page gives.
    CheckBar along() const {
        if (!has_row()) return check_bar_for({});
        return check_bar_for(pen_.page_width() - draft_.roll->head - cut_margin - upright_bar);
    }
    Length tail_bar_length() const { return has_row() ? 0_pt : 6_in; }

    /// What the page is called, at both ends.
    std::vector<Line> identity() const {
        const Type bold{Face::bold, style().small};
        const Type small{Face::regular, style().small};
        const std::string page =
            draft_.reprint
                ? words("page.reprint", {{"n", std::to_string(number_)}, {"revision", plan_.header.revision}})
                : title_words(draft_, pen_.kit()) + "    " +
                      words("page.number", {{"n", std::to_string(number_)}, {"m", std::to_string(count_)}});
        std::vector<Line> lines{{draft_.tag + "  " + page, {Face::bold, style().strong}},
                                {words("page.identity", {{"number", plan_.header.number},
                                                         {"title", plan_.header.title},
                                                         {"revision", plan_.header.revision}}),
                                 bold},
                                {print_words(plan_, draft_.use, pen_.kit()), small},
                                {words("page.fingerprint", {{"fingerprint", plan_.fingerprint}}), small}};
        if (const std::string stop = forbidding(draft_, plan_, pen_.kit()); !stop.empty())
            lines.insert(lines.begin(), {stop, {Face::bold, style().strong}});
        return lines;
    }

    std::vector<Line> head_lines() const {
        std::vector<Line> lines = identity();
        lines.push_back({draft_.subtitle, {Face::regular, style().small}});
        for (const std::string& note : draft_.roll->notes) lines.push_back({note, {Face::bold, style().small}});
        return lines;
    }

    /// With the words of the upright bar, where it is too short to hold them.
    std::vector<Line> tail_lines() const {
        std::vector<Line> lines = identity();
        if (bar_holds_words()) return lines;
        const CheckBar bar = across();
        const Type small{Face::regular, style().small};
        if (bar.inches > 0)
            lines.push_back({words("page.check_across_inches", {{"inches", std::to_string(bar.inches)}}), small});
        if (bar.millimetres > 0)
            lines.push_back({words("page.check_across_mm", {{"mm", std::to_string(bar.millimetres)}}), small});
        return lines;
    }

    static std::size_t lines_in(Length height) {
        return static_cast<std::size_t>(std::max(1.0, std::floor((height - 12_pt) / leading) + 1));
    }

    /// Calls `place` for every line with its column's left end and its number in the column; returns the width of all.
    template <class Place>
    Length columns(const std::vector<Line>& lines, Length height, Place place) {
        const std::size_t each = lines_in(height);
        Length left;
        for (std::size_t first = 0; first < lines.size(); first += each) {
            if (first > 0) left += column_gap;
            Length widest;
            for (std::size_t i = first; i < std::min(lines.size(), first + each); ++i) {
                place(lines[i], left, i - first);
                widest = std::max(widest, pen_.width(lines[i].text, lines[i].type));
            }
            left += widest;
        }
        return left;
    }

    Length width(const std::vector<Line>& lines, Length height) {
        return columns(lines, height, [](const Line&, Length, std::size_t) {});
    }

    void flow(const std::vector<Line>& lines, Length from, Length height) {
        columns(lines, height, [&](const Line& line, Length left, std::size_t n) {
            pen_.text(Role::furniture, {from + left, high() - 10_pt - leading * static_cast<double>(n)}, line.text,
                      line.type);
        });
    }

    Draft& draft_;
    const plan::Plan& plan_;
    Pen pen_;
    std::size_t number_;
    std::size_t count_;
};

}  // namespace

void measure_roll_ends(Draft& draft, const plan::Plan& plan, const Kit& kit) {
    // No packet has more pages, and no number is wider.
    constexpr std::size_t most_pages = 88888;
    for (const bool reprint : {true, false}) {
        draft.reprint = reprint;
        Ends ends(draft, plan, kit, most_pages, most_pages);
        draft.roll->head = std::max(draft.roll->head, ends.head_length());
        draft.roll->tail = std::max(draft.roll->tail, ends.tail_length());
    }
}

void add_roll_furniture(Draft& draft, const plan::Plan& plan, const Kit& kit, std::size_t number, std::size_t count) {
    Ends(draft, plan, kit, number, count).draw();
}

}  // namespace kerfpacket::sheets
