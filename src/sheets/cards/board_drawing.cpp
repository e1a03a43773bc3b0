#include "sheets/cards/board_drawing.h"

#include <algorithm>
#include <vector>

#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length section_height = 20_pt;  ///< of the drawn board, whatever its width
constexpr Length edge_height = 24_pt;
constexpr Length figure_gap = 12_pt;

class BoardDrawing {
public:
    BoardDrawing(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape)
        : pen_(pen), space_(space), piece_(piece), tape_(tape), y_(space.high.y) {}

    void draw() {
        section();
        ends();
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    const fonts::Style& style() const { return pen_.kit().style; }
    Type small() const { return {Face::regular, style().small}; }
    Type figure() const { return {Face::bold, style().text}; }
    Length line() const { return style().small * 1.4; }

    void title(const std::string& text) {
        y_ -= line();
        pen_.text(Role::text, {space_.low.x, y_}, text, pen_.fitting(text, small(), space_.width()));
    }

    /// Kerf face up: what is left below the dashed line is the web.
    void section() {
        title(words("work_order.section"));
        const std::string thick = tape_.exact(piece_.cut.thickness);
        const Length right = space_.high.x - pen_.width(thick, figure()) - figure_gap * 2;
        const Length middle = (space_.low.x + right) / 2;
        y_ -= line();
        face(words("work_order.kerf_face"), middle, right);
        const Rect board{{space_.low.x, y_ - 4_pt - section_height}, {right, y_ - 4_pt}};
        outline(board);
        const Length depth = board.high.y - section_height * (piece_.cut.depth / piece_.cut.thickness);
        if (!piece_.blank().kerfs.empty())
            pen_.line(Role::outline, {board.low.x, depth}, {board.high.x, depth}, style().line, Dash::dashed);
        const Length at = right + figure_gap;
        pen_.line(Role::dimension, {at, board.low.y}, {at, board.high.y}, style().hair);
        for (const Length end : {board.low.y, board.high.y})
            pen_.line(Role::dimension, {at - 3_pt, end - 3_pt}, {at + 3_pt, end + 3_pt}, style().hair);
        pen_.text(Role::dimension, {at + 7_pt, (board.low.y + board.high.y) / 2 - style().text * 0.36}, thick,
                  figure());
        y_ = board.low.y - line();
        face(words("work_order.plain_face"), middle, right);
        y_ -= line();
        pen_.dimension({board.low.x, y_ + 2_pt}, {right, y_ + 2_pt}, tape_.exact(piece_.width), figure());
        y_ -= line() * 0.6;
    }

    /// The plain face of a moulded board by its profile, the bottom edge at the left.
    void outline(const Rect& board) {
        if (!piece_.cut.moulded()) {
            pen_.box(Role::outline, board, style().heavy);
            return;
        }
        std::vector<Point> corners{{board.high.x, board.high.y}, {board.low.x, board.high.y}};
        for (const bend::ProfilePoint& point : piece_.cut.profile)
            corners.push_back({board.low.x + board.width() * (point.height / piece_.width),
                               board.high.y - section_height * (point.thickness / piece_.cut.thickness)});
        pen_.stroke(Role::outline, Path::polyline(corners, true), style().heavy);
    }

    void face(const std::string& name, Length middle, Length right) {
        pen_.text(Role::text, {middle, y_}, name, pen_.fitting(name, small(), right - space_.low.x).centred());
    }

    /// How far the cut of an end comes out at the plain face, to the right of where it is on the kerf face.
    Length slope(job::End side) const {
        const plan::Blank& blank = piece_.blank();
        const plan::BoardEnd& end = blank.end(side);
        const Length off = blank.from_left(end.plain_face) - blank.from_left(end.kerf_face);
        const Length drawn = end.mitre.radians() == 0 ? Length() : edge_height * (off / piece_.cut.thickness);
        return std::clamp(drawn, -space_.width() / 5, space_.width() / 5);
    }

    /// The board as it lies, kerf face up, its middle broken out.
    void ends() {
        title(words("work_order.ends"));
        const Length reach = space_.width() / 5;
        const Length left = space_.low.x + reach, right = space_.high.x - reach;
        const Length top = y_ - 6_pt, low = top - edge_height;
        const Length from = left + slope(job::End::left), to = right + slope(job::End::right);
        pen_.stroke(Role::outline, Path::polyline({{left, top}, {right, top}, {to, low}, {from, low}}, true),
                    style().heavy);
        const Length depth = edge_height * (piece_.cut.depth / piece_.cut.thickness);
        const Length step = (right - left) / 7;
        for (int i = 2; i <= 5 && !piece_.blank().kerfs.empty(); ++i) {
            const Length x = left + step * i;
            pen_.line(Role::outline, {x, top}, {x, top - depth}, style().end);
        }
        y_ = low - line();
        end_words(job::End::left, "work_order.left_end", space_.low.x, Align::left);
        end_words(job::End::right, "work_order.right_end", space_.high.x, Align::right);
    }

    void end_words(job::End side, std::string_view name, Length x, Align align) {
        const measure::Angle mitre = piece_.blank().end(side).mitre;
        const std::size_t i = side == job::End::left ? 0 : 1;
        const std::string cut = mitre.radians() != 0
                                    ? words("work_order.angle", {{"angle", degrees_text(mitre, pen_.kit())}})
                                : piece_.rake ? end_cut_text(piece_.rake->ends.at(i), pen_.kit())
                                              : words("work_order.square");
        const std::string text = words(name) + ": " + cut;
        Type type = pen_.fitting(text, small(), space_.width() / 2 - 4_pt);
        type.align = align;
        pen_.text(Role::text, {x, y_}, text, type);
    }

    Pen& pen_;
    Rect space_;
    const plan::Piece& piece_;
    const Tape& tape_;
    Length y_;
};

}  // namespace

Length board_drawing_height(const fonts::Style& style) {
    return style.small * 1.4 * 6.6 + section_height + edge_height + 14_pt;
}

void draw_board(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    const Scope figure = pen.figure(pen.kit().words(
        "figure.work_order",
        {{"piece", piece.id}, {"board", board_text(piece, pen.kit(), tape)}, {"depth", tape.exact(piece.cut.depth)}}));
    BoardDrawing(pen, space, piece, tape).draw();
}

}  // namespace kerfpacket::sheets
