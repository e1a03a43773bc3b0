#include "sheets/blanks/label_check.h"

#include <algorithm>
#include <array>

#include "measure/require.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {
namespace {

using measure::Unit;

constexpr Length beside_mark = 8_pt;  ///< from the mark to the words
constexpr Length inside_edge = 4_pt;
constexpr Length leading = 14_pt;
constexpr Length least_blank = 28_pt;
constexpr Length most_blank = 62_pt;
constexpr Length arm = 5_pt;  ///< of the mark's cross

class LabelCheck {
public:
    LabelCheck(page::Page& page, const job::LabelStock& labels, Unit unit, const Kit& kit)
        : pen_(page, kit), labels_(labels), tape_(unit, kit.words), mark_(label_check_mark(labels, unit)) {}

    void draw() {
        const Scope figure = pen_.figure(words(
            "labels_figure", {{"columns", std::to_string(labels_.columns)}, {"rows", std::to_string(labels_.rows)}}));
        for (int n = 1; n <= labels_.on_sheet(); ++n) cell(n);
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(const std::string& key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words("printer_check." + key, values);
    }
    bool measured(int n) const { return n == 1 || n == labels_.on_sheet(); }

    Rect place(int n) const {
        const Length left = labels_.left + labels_.across * ((n - 1) % labels_.columns);
        const Length top = pen_.from_top(labels_.top + labels_.down * ((n - 1) / labels_.columns));
        return {{left, top - labels_.height}, {left + labels_.width, top}};
    }

    void cell(int n) {
        const Rect room = place(n);
        pen_.box(Role::outline, room, style().hair);
        if (measured(n)) mark(room);
        const Type type{Face::bold, std::min(style().strong, labels_.height * 0.6)};
        const Length top = room.high.y - std::min(16_pt, labels_.height * 0.8);
        pen_.text(Role::numeral, {room.high.x - inside_edge, top}, std::to_string(n), Type(type).at_right());
        if (measured(n)) blanks(room);
    }

    /// A cross, led to from the two edges that it is measured from.
    void mark(const Rect& room) {
        const Point at{room.low.x + mark_, room.high.y - mark_};
        pen_.line(Role::check_bar, {room.low.x, at.y}, {at.x + arm, at.y}, style().fine);
        pen_.line(Role::check_bar, {at.x, room.high.y}, {at.x, at.y - arm}, style().fine);
    }

    /// What the two come to when true, and room to write; a label too small for that has its mark alone.
    void blanks(const Rect& room) {
        const std::string figure = tape_.exact(mark_);
        const std::array rows{words("labels_left", {{"true", figure}}), words("labels_top", {{"true", figure}})};
        const Length left = room.low.x + mark_ + beside_mark;
        const Length right = room.high.x - inside_edge;
        const auto fits = [&](const Type& type) {
            const Length widest = std::max(pen_.width(rows[0], type), pen_.width(rows[1], type));
            return right - left >= widest + inside_edge + least_blank;
        };
        const Type large{Face::regular, style().text}, small{Face::regular, style().small};
        const Type type = fits(large) ? large : small;
        if (labels_.height < 18_pt + leading * 2 + inside_edge || !fits(type)) return;
        Length y = room.high.y - 18_pt;
        for (const std::string& row : rows) {
            y = y - leading;
            const Length x = left + pen_.text(Role::text, {left, y}, row, type) + inside_edge;
            pen_.line(Role::box, {x, y - 1_pt}, {std::min(x + most_blank, right), y - 1_pt}, style().line);
        }
    }

    Pen pen_;
    const job::LabelStock& labels_;
    Tape tape_;
    Length mark_;
};

}  // namespace

Length label_check_mark(const job::LabelStock& labels, Unit unit) {
    const std::array<Length, 3> marks =
        unit == Unit::inch ? std::array{0.5_in, 0.25_in, 0.125_in} : std::array{12_mm, 6_mm, 3_mm};
    const Length side = std::min(labels.width, labels.height);
    for (const Length mark : marks)
        if (mark * 2 <= side) return mark;
    return marks.back();
}

page::Document make_label_check(const job::LabelStock& labels, Unit unit, const Kit& kit) {
    measure::require(!labels.paper.roll, "labels in columns and rows");
    page::Document document;
    document.title = kit.words("printer_check.labels_title");
    document.subject = document.title;
    document.language = kit.words("page.language");
    page::Page page;
    page.sheet = "label-check";
    page.width = labels.paper.width;
    page.height = labels.paper.height;
    page.number = 1;
    LabelCheck(page, labels, unit, kit).draw();
    document.pages.push_back(std::move(page));
    document.outline.push_back({document.title, 0, 0});
    return document;
}

}  // namespace kerfpacket::sheets
