#include "sheets/evidence/survey_drawing.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "sheets/drawings/small_drawing.h"
#include "sheets/drawings/wall_drawing.h"
#include "sheets/evidence/survey_answers.h"
#include "sheets/layout/labels.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// The worst miss is drawn at most this long; it stands on either side of the curve.
constexpr Length longest_miss = Length::points(20);
constexpr Length around = Length::points(24);
/// So many points are drawn at most: more would run into each other.
constexpr std::size_t most_points = 240;

const Path& measured_line(const plan::Piece& piece) {
    const bool wall = piece.measured_to == job::Surface::wall;
    if (const auto* arch = std::get_if<plan::ArchLines>(&piece.lines)) return wall ? arch->wall : arch->finish;
    const auto& lines = std::get<plan::WallLines>(piece.lines);
    return wall ? lines.wall : lines.finish;
}

/// How many times larger a miss is drawn: a round figure. What is drawn larger than that is no miss.
double enlargement(Length worst, double scale) {
    const double most = std::min(longest_miss / (worst * scale), 100.0);
    const double ten = std::pow(10, std::floor(std::log10(most)));
    for (const double step : {5.0, 2.0})
        if (step * ten <= most) return step * ten;
    return ten;
}

class SurveyDrawing {
public:
    SurveyDrawing(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape)
        : pen_(pen),
          piece_(piece),
          survey_(*piece.survey),
          misses_(survey_.used_misses()),
          tape_(tape),
          line_(piece.kind == plan::Kind::wall_board ? without_tails(piece, measured_line(piece))
                                                     : measured_line(piece)),
          small_({}, {}, 1),
          labels_(pen, space) {
        Rect bounds = line_.bounds();
        for (const Point p : survey_.points) bounds = geom::united(bounds, {p, p});
        const Rect room = space.grown(-around);
        // A straight row of points has no height.
        const Length height = std::max(bounds.height(), bounds.width() * 0.01);
        scale_ = std::min(room.width() / bounds.width(), room.height() / height);
        const Point top{(bounds.low.x + bounds.high.x) / 2, bounds.high.y};
        small_ = SmallDrawing(top, {(room.low.x + room.high.x) / 2, room.high.y}, scale_);
        bottom_ = room.high.y - bounds.height() * scale_ - around;
        larger_ = misses_.worst() > 0_mm ? enlargement(misses_.worst(), scale_) : 1;
    }

    Length draw() {
        const Path curve = small_.at(line_);
        pen_.stroke(Role::outline, curve, pen_.kit().style.line);
        labels_.taken().take(curve);
        base_line();
        const std::set<std::size_t> points = chosen();
        for (const std::size_t i : points) point(i);
        if (survey_.suspect) suspect();
        for (const std::size_t i : points) number(i);
        return bottom_;
    }

    double larger() const { return larger_; }

private:
    /// All, or an even choice of them with the worst and the suspect among it.
    std::set<std::size_t> chosen() const {
        std::set<std::size_t> all;
        const std::size_t count = survey_.points.size();
        const std::size_t step = count / most_points + 1;
        for (std::size_t i = 0; i < count; i += step) all.insert(i);
        all.insert(count - 1);
        all.insert(misses_.worst_point());
        if (survey_.suspect) all.insert(survey_.suspect->point);
        return all;
    }

    void base_line() {
        const Path base = Path::line(small_.at(survey_.points.front()), small_.at(survey_.points.back()));
        pen_.stroke(Role::dimension, base, pen_.kit().style.hair, Dash::dashed);
        labels_.taken().take(base);
    }

    /// To the left of travel from point to point.
    Direction outward(std::size_t i) const {
        const Point before = survey_.points[i == 0 ? 0 : i - 1];
        const Point after = survey_.points[std::min(i + 1, survey_.points.size() - 1)];
        return geom::direction(before, after).left();
    }

    Point end_of_miss(std::size_t i) const {
        const Length drawn = std::clamp(misses_.at[i] * (scale_ * larger_), -longest_miss, longest_miss);
        return small_.at(survey_.points[i]) + outward(i) * drawn;
    }

    void point(std::size_t i) {
        const Point on = small_.at(survey_.points[i]);
        const Point end = end_of_miss(i);
        if (geom::distance(on, end) > 0.2_pt) {
            pen_.line(Role::dimension, on, end, pen_.kit().style.line);
            labels_.taken().take(Path::line(on, end));
        }
        pen_.fill(Role::outline, Path::circle(on, 1.3_pt));
    }

    /// As the table of stations counts it, where there is room.
    void number(std::size_t i) {
        const Block block(pen_, {{std::to_string(i + 1), {Face::bold, pen_.kit().style.small}}});
        const Point on = small_.at(survey_.points[i]);
        for (const Length off : {11_pt, -11_pt, 17_pt, -17_pt, 27_pt, -27_pt})
            if (labels_.place(Role::text, block, on + outward(i) * off, {1, 0}, 0.8_pt)) return;
    }

    void suspect() {
        const std::size_t i = survey_.suspect->point;
        const Point on = small_.at(survey_.points[i]);
        pen_.stroke(Role::caution, Path::circle(on, 5_pt), pen_.kit().style.heavy);
        labels_.taken().take(Path::circle(on, 5_pt));
        const std::string text =
            pen_.kit().words("survey.check", {{"station", tape_.exact(reading(piece_, i).station)}});
        const Block block(pen_, {{text, {Face::bold, pen_.kit().style.small}}});
        std::vector<Point> near;
        for (const Length off : {14_pt, 22_pt, 30_pt})
            for (const double up : {1.0, -1.0})
                for (const double aside : {0.0, 0.6, -0.6}) near.push_back(on + Point{block.width() * aside, off * up});
        labels_.anywhere(Role::caution, block, near, 1_pt);
    }

    Pen& pen_;
    const plan::Piece& piece_;
    const curve::Survey& survey_;
    const curve::Misses& misses_;
    const Tape& tape_;
    Path line_;
    SmallDrawing small_;
    Labels labels_;
    double scale_ = 1;
    double larger_ = 1;
    Length bottom_;
};

}  // namespace

Length draw_survey(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    const auto& style = pen.kit().style;
    Rect below = space;
    below.high.y -= style.small * 1.55;
    SurveyDrawing drawing(pen, below, piece, tape);
    const std::string what =
        pen.kit().words("survey.drawing", {{"fit", fit_name(piece.survey->used, pen.kit())},
                                           {"times", tape.number(drawing.larger(), drawing.larger() < 1 ? 1 : 0)}});
    pen.text(Role::text, {space.low.x, space.high.y - style.small}, what,
             pen.fitting(what, {Face::regular, style.small}, space.width()));
    const Scope figure = pen.figure(pen.kit().words("figure.survey", {{"piece", measured_id(piece)}}));
    return drawing.draw();
}

}  // namespace kerfpacket::sheets
