#include "sheets/climb/climb_sheet.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "sheets/climb/climb_drawing.h"
#include "sheets/drawings/piece_drawing.h"
#include "sheets/layout/figure_table.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/large_figures.h"
#include "sheets/words/tape.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length same_gap = Length::mm(0.001);

class Sheet {
public:
    Sheet(Flow& flow, const plan::Piece& piece, const Tape& tape)
        : flow_(flow), piece_(piece), rake_(*piece.rake), tape_(tape) {}

    void draw() {
        pour(flow_, LargeFigures{{{words("climb.kerf_angle"), degrees(rake_.kerf())},
                                  {words("climb.total"), tape_.with_unit(rake_.climb)},
                                  {words("climb.along"), tape_.with_unit(rake_.along())},
                                  {words("climb.tip_to_tip"), tape_.with_unit(piece_.blank().tip_to_tip())}}});
        flow_.skip(style().small * 0.5);
        flow_.paragraph(Role::text,
                        words("climb.cut", {{"board", board_text(piece_, flow_.kit(), tape_)},
                                            {"n", std::to_string(piece_.blank().kerfs.size())},
                                            {"depth", tape_.exact(piece_.cut.depth)},
                                            {"side", kerf_side(piece_, flow_.kit())}}),
                        {Face::regular, style().text});
        places();
        unrolled();
        at_saw();
    }

private:
    const fonts::Style& style() const { return flow_.style(); }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return flow_.kit().words(key, values);
    }
    std::string degrees(Angle angle) const {
        return words("work_order.angle", {{"angle", degrees_text(angle, flow_.kit())}});
    }

    /// Plan and picture side by side.
    void places() {
        flow_.heading(words("climb.places"), words("climb.places_aside"));
        const Rect room = flow_.take(158_pt);
        Pen pen = flow_.pen();
        const Length middle = (room.low.x + room.high.x) / 2;
        draw_piece(pen, {room.low, {middle - 8_pt, room.high.y}}, piece_, tape_);
        draw_in_space(pen, {{middle + 8_pt, room.low.y}, room.high}, piece_);
    }

    void unrolled() {
        flow_.heading(words("climb.unrolled"), words("climb.unrolled_aside"));
        const FigureTable table = measures();
        const Rect room = flow_.take(std::max(height_of(table, style()) + style().text * 2.5, 224_pt));
        Pen pen = flow_.pen();
        const Length table_from = room.low.x + room.width() * 0.6;
        draw_hanging(pen, {room.low, {table_from - 14_pt, room.high.y}}, piece_, tape_);
        draw_table(pen, table_from, room.high.x, room.high.y - style().text * 1.9, table);
    }

    FigureTable measures() const {
        FigureTable table;
        table.heading = words("climb.measures", {{"unit", tape_.unit_name()}});
        table.shares = {0.66, 0.34};
        const auto row = [&](const char* key, const std::string& figure) {
            table.rows.push_back({{words(key), false}, figure});
        };
        row("climb.row_kerf_angle", degrees(rake_.kerf()));
        row("climb.row_climb", tape_.plain(rake_.climb));
        row("climb.row_plan", tape_.plain(rake_.plan_length));
        row("climb.row_along", tape_.plain(rake_.along()));
        row("climb.row_tips", tape_.plain(piece_.blank().tip_to_tip()));
        row("climb.row_width", tape_.exact_plain(piece_.width));
        row("climb.row_plumb", tape_.plain(rake_.cut()));
        gaps(row);
        return table;
    }

    /// From kerf to kerf along an edge: of a board of several blanks, over its joints apart, where kerfs make way for
    /// the scarf.
    template <typename Row>
    void gaps(const Row& row) const {
        const plan::Gaps& gaps = piece_.gaps;
        const auto told = [&](const char* key, Length least, Length most) {
            least = rake_.along_edge(least);
            most = rake_.along_edge(most);
            row(key, most - least < same_gap
                         ? tape_.exact_plain(least)
                         : words("piece.range", {{"least", tape_.plain(least)}, {"most", tape_.plain(most)}}));
        };
        told("climb.row_gap", gaps.least, gaps.most);
        const std::vector<Length>& over = gaps.over_joints;
        if (over.empty()) return;
        const auto [least, most] = std::minmax_element(over.begin(), over.end());
        told("climb.row_gap_joint", *least, *most);
    }

    void at_saw() {
        flow_.heading(words("climb.at_saw"), words("climb.at_saw_aside", {{"n", std::to_string(kerfs_apart(piece_))}}));
        const Rect room = flow_.take(style().small * 3.2 + 62_pt);
        Pen pen = flow_.pen();
        draw_at_saw(pen, room, piece_);
    }

    Flow& flow_;
    const plan::Piece& piece_;
    const plan::Rake& rake_;
    const Tape& tape_;
};

}  // namespace

void add_climb_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (!piece.rake) return;
    const Tape tape(plan.header.units, kit.words);
    const auto new_page = [&](bool first) {
        Draft draft = piece_page(plan, kit, piece.id, "climb", "climb", first);
        draft.subtitle = kit.words(piece.rake->to_the_right ? "climb.to_the_right" : "climb.to_the_left");
        return draft;
    };
    Flow flow(drafts, kit, new_page);
    Sheet(flow, piece, tape).draw();
}

}  // namespace kerfpacket::sheets
