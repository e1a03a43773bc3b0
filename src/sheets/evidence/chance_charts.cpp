#include "sheets/evidence/chance_charts.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sheets/evidence/graph.h"
#include "sheets/evidence/strain_words.h"
#include "sheets/layout/furniture.h"
#include "sheets/words/chance_words.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length below = 30_pt;
constexpr Length levels_room = 52_pt;

/// A scale of strains along a chart, marked at even steps of 1, 2 or 5.
struct StrainScale {
    double from = 0;
    double to = 1;

    double part(double strain) const { return (strain - from) / (to - from); }
};

void strain_axis(Pen& pen, const Graph& graph, const StrainScale& scale, const std::string& name) {
    const fonts::Style& style = pen.kit().style;
    const Type small{Face::regular, style.small};
    constexpr std::array<double, 6> steps{0.0005, 0.001, 0.002, 0.005, 0.01, 0.02};
    const auto enough =
        std::find_if(steps.begin(), steps.end() - 1, [&](double step) { return (scale.to - scale.from) / step <= 6; });
    const double step = *enough;
    for (double at = std::ceil(scale.from / step - 1e-9) * step; at <= scale.to * (1 + 1e-9); at += step) {
        const Point on = graph.at(scale.part(at), 0);
        pen.line(Role::dimension, on, {on.x, on.y - 4_pt}, style.line);
        pen.text(Role::text, {on.x, on.y - 5_pt - style.small}, number(at * 100, step < 0.001 ? 2 : 1, pen.kit().words),
                 small.centred());
    }
    const Point middle = graph.at(0.5, 0);
    pen.text(Role::text, {middle.x, middle.y - 7_pt - style.small * 2.1}, name,
             pen.fitting(name, small, graph.area.width()).centred());
}

class ToldChart {
public:
    ToldChart(Pen& pen, const Rect& space, const plan::Piece& piece)
        : pen_(pen),
          piece_(piece),
          graph_{{{space.low.x, space.low.y + below}, {space.high.x, space.high.y - legend_height(piece)}}},
          top_(space.high.y) {
        double least = piece.bend.strain;
        double most = piece.bend.strain;
        for (const plan::Told& told : piece.chance.told) {
            least = std::min(least, told.strain * std::exp(-2.6 * told.spread));
            most = std::max(most, told.strain * std::exp(2.6 * told.spread));
            highest_ = std::max(highest_, density(told, told.strain * std::exp(-told.spread * told.spread)));
        }
        scale_ = {least * 0.97, most * 1.01};
    }

    void draw() {
        legend();
        for (const plan::Told& told : piece_.chance.told) curve(told);
        pen_.line(Role::outline, graph_.at(0, 0), graph_.at(1, 0), style().line);
        strain_axis(pen_, graph_, scale_, words("strain.told_axis"));
        this_board();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Length legend_height(const plan::Piece& piece) const {
        return pen_.kit().style.small * (1.35 * static_cast<double>(piece.chance.told.size() + 1)) + 4_pt;
    }

    /// Of break strains whose logarithm is normal.
    static double density(const plan::Told& told, double strain) {
        const double off = std::log(strain / told.strain) / told.spread;
        return std::exp(-off * off / 2) / (strain * told.spread);
    }

    static Dash dash(plan::Told::By by) { return by == plan::Told::By::table ? Dash::dashed : Dash::solid; }
    Length weight(plan::Told::By by) const { return by == plan::Told::By::coupons ? style().heavy : style().line; }

    void curve(const plan::Told& told) {
        std::vector<Point> points;
        constexpr int steps = 120;
        for (int i = 0; i <= steps; ++i) {
            const double part = static_cast<double>(i) / steps;
            const double strain = scale_.from + (scale_.to - scale_.from) * part;
            points.push_back(graph_.at(part, density(told, strain) / highest_ * 0.96));
        }
        pen_.stroke(Role::outline, thinned(points), weight(told.by), dash(told.by));
    }

    void legend() {
        static constexpr std::array keys{"strain.told_table", "strain.told_trials", "strain.told_coupons"};
        Length y = top_ - style().small;
        for (const plan::Told& told : piece_.chance.told) {
            const std::string text =
                words(keys.at(static_cast<std::size_t>(told.by)), {{"chance", chance_words(told.breaks, pen_.kit())}});
            pen_.line(Role::outline, {graph_.area.low.x, y + style().small * 0.33},
                      {graph_.area.low.x + 26_pt, y + style().small * 0.33}, weight(told.by), Dash::solid);
            if (dash(told.by) == Dash::dashed)
                pen_.fill(Role::outline,
                          Path::rectangle({{graph_.area.low.x + 9_pt, y}, {graph_.area.low.x + 16_pt, y + 6_pt}}),
                          Ink::white);
            const Face face = told.by == plan::Told::By::coupons ? Face::bold : Face::regular;
            pen_.text(Role::text, {graph_.area.low.x + 32_pt, y}, text,
                      pen_.fitting(text, {face, style().small}, graph_.area.width() - 32_pt));
            y -= style().small * 1.35;
        }
        const std::string text =
            words("strain.told_this", {{"strain", strain_percent(piece_.bend.strain, pen_.kit())}});
        pen_.line(Role::outline, {graph_.area.low.x + 13_pt, y - 1_pt}, {graph_.area.low.x + 13_pt, y + style().small},
                  style().heavy);
        pen_.text(Role::text, {graph_.area.low.x + 32_pt, y}, text,
                  pen_.fitting(text, {Face::bold, style().small}, graph_.area.width() - 32_pt));
    }

    void this_board() {
        const double part = scale_.part(piece_.bend.strain);
        pen_.line(Role::outline, graph_.at(part, 0), graph_.at(part, 1), style().heavy);
    }

    Pen& pen_;
    const plan::Piece& piece_;
    Graph graph_;
    Length top_;
    StrainScale scale_;
    double highest_ = 0;
};

/// Below this chance nothing is drawn.
constexpr double least_drawn = 0.01;

bool draws_anything(const plan::NextCoupon& next) {
    return std::any_of(next.chances.begin(), next.chances.end(),
                       [](const auto& told) { return told.second > least_drawn; });
}

/// Chance by its logarithm, from 1 in 2 at the top.
class NextChart {
public:
    NextChart(Pen& pen, const Rect& space, const plan::Piece& piece)
        : pen_(pen),
          piece_(piece),
          graph_{{{space.low.x + levels_room, space.low.y + below},
                  {space.high.x, space.high.y - pen.kit().style.small * 3.1}}},
          scale_{piece.chance.next.chances.front().first, piece.chance.next.chances.back().first} {}

    void draw() {
        said();
        levels();
        curve();
        pen_.box(Role::outline, graph_.area, style().line);
        strain_axis(pen_, graph_, scale_, words("strain.next_axis"));
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    static double part(double chance) {
        constexpr double least = 1.0 / 400;
        return std::log(chance / least) / std::log(0.5 / least);
    }

    void levels() {
        const Type small{Face::regular, style().small};
        for (const int n : {2, 4, 10, 20, 50, 100}) {
            const Point on = graph_.at(0, part(1.0 / n));
            if (n > 2) pen_.line(Role::dimension, on, {graph_.area.high.x, on.y}, style().hair, Dash::dotted);
            pen_.text(Role::text, {on.x - 5_pt, on.y - style().small * 0.36},
                      words("chance.level", {{"n", std::to_string(n)}}), small.at_right());
        }
    }

    void curve() {
        std::vector<Point> points;
        for (const auto& [strain, chance] : piece_.chance.next.chances)
            points.push_back(graph_.at(scale_.part(strain), part(std::max(chance, 1e-6))));
        for (const Path& inside : graph_.inside(points)) pen_.stroke(Role::outline, inside, style().heavy);
    }

    /// Over the chart, where the answer changes; the same strains marked on it.
    void said() {
        const plan::NextCoupon& next = piece_.chance.next;
        const Type bold{Face::bold, style().small};
        const Length right = graph_.area.high.x;
        Length y = graph_.area.high.y + style().small * 1.9;
        const auto say = [&](const std::string& text) {
            pen_.text(Role::text, {right, y}, text, pen_.fitting(text, bold, graph_.area.width()).at_right());
            y -= style().small * 1.35;
        };
        const auto value = [&](double strain) {
            return fonts::Words::Values{{"strain", strain_percent(strain, pen_.kit())}};
        };
        say(next.ok_from > 0 ? words("strain.next_ok", value(next.ok_from)) : words("strain.next_never_ok"));
        if (next.caution_from > scale_.from * 1.001) say(words("strain.next_break", value(next.caution_from)));
        for (const double strain : {next.ok_from, next.caution_from})
            if (strain > scale_.from * 1.001)
                pen_.line(Role::dimension, graph_.at(scale_.part(strain), 0), graph_.at(scale_.part(strain), 1),
                          style().hair, Dash::dashed);
    }

    Pen& pen_;
    const plan::Piece& piece_;
    Graph graph_;
    StrainScale scale_;
};

}  // namespace

void draw_chance_charts(Pen& pen, const Rect& space, const plan::Piece& piece) {
    const Length gap = 26_pt;
    const Length half = (space.width() - gap) / 2;
    const Length middle = space.low.x + half;
    const fonts::Style& style = pen.kit().style;
    const Length top = space.high.y - style.strong;
    section(pen, space.low.x, middle, top, pen.kit().words("strain.told"));
    section(pen, middle + gap, space.high.x, top, pen.kit().words("strain.next"));
    const Length charts = top - 14_pt;
    {
        const Scope figure = pen.figure(pen.kit().words("figure.told", {{"piece", piece.id}}));
        ToldChart(pen, {space.low, {middle, charts}}, piece).draw();
    }
    if (!draws_anything(piece.chance.next)) {
        pen.paragraph(Role::text, {middle + gap, charts - style.text}, pen.kit().words("strain.next_all_hold"),
                      {Face::regular, style.text}, half, style.text * 1.35);
        return;
    }
    const Scope figure = pen.figure(pen.kit().words("figure.next", {{"piece", piece.id}}));
    NextChart(pen, {{middle + gap, space.low.y}, {space.high.x, charts}}, piece).draw();
}

}  // namespace kerfpacket::sheets
