#include "sheets/evidence/strain_plot.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "sheets/evidence/graph.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/labels.h"
#include "sheets/layout/lane.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

// Room around the plot's frame.
constexpr Length left_room = 60_pt;
constexpr Length right_room = 108_pt;
constexpr Length above = 30_pt;
constexpr Length below = 58_pt;
constexpr Length weak_lane = 14_pt;

constexpr double highest_axis = 2.0;
constexpr Length closest_ticks = 1.5_pt;
/// The chances whose strains are drawn, 1 in so many: as plan::Chance::times has them.
constexpr std::array chances{100, 20, 4, 2};
/// Strains that print alike are alike.
constexpr double alike = 0.005;
constexpr std::size_t most_runs = 3;

double most_strain(const plan::Piece& piece) {
    double most = 0;
    for (const plan::Kerf& kerf : piece.blank().kerfs) most = std::max(most, kerf.utilisation);
    return most;
}

class StrainPlot {
public:
    StrainPlot(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape)
        : pen_(pen),
          piece_(piece),
          tape_(tape),
          top_(strain_axis_end(piece)),
          graph_{{{space.low.x + left_room, space.low.y + below + (piece.weak_links.empty() ? 0_pt : weak_lane)},
                  {space.high.x - right_room, space.high.y - above}}},
          labels_(pen, {graph_.area.low, {graph_.area.high.x, y(std::min(bend::ok_up_to, top_))}}) {}

    void draw() {
        legend();
        levels();
        axis();
        changes_of_side();
        curve(1 + piece_.chance.load, style().line, Dash::dotted);
        curve(1 - piece_.chance.load, style().line, Dash::dotted);
        curve(1, style().heavy, Dash::solid);
        worst();
        const Length base = ticks();
        distances(weak_links(base));
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Type small() const { return {Face::regular, style().small}; }
    Length x(Length from_zero) const { return graph_.at(from_zero / piece_.blank().length, 0).x; }
    Length y(double u) const { return graph_.at(0, u / top_).y; }
    void legend() {
        Length at = graph_.area.low.x;
        const Length base = graph_.area.high.y + 19_pt;
        const auto sample = [&](Length width, Dash dash, const std::string& text, const Type& type) {
            pen_.line(Role::outline, {at, base + 3_pt}, {at + 24_pt, base + 3_pt}, width, dash);
            at += 29_pt;
            at += pen_.text(Role::text, {at, base}, text,
                            pen_.fitting(text, type, pen_.page_width() - side_margin - at)) +
                  16_pt;
        };
        sample(style().heavy, Dash::solid, words("strain.solid"), {Face::bold, style().small});
        std::string more = words("strain.load", {{"percent", tape_.number(piece_.chance.load * 100, 0)}});
        const double most = most_strain(piece_) * (1 + piece_.chance.load);
        const std::string cut = words("strain.load_cut", {{"dotted", more}, {"u", tape_.number(most, 2)}});
        const Length room = pen_.page_width() - side_margin - at - 29_pt;
        if (most > top_ && pen_.width(cut, pen_.fitting(cut, small(), room)) <= room) more = cut;
        sample(style().line, Dash::dotted, more, small());
    }

    /// Where 1 in 100, 20, 4, 2 boards would break, were all of the bend so much tighter that its worst kerf came up to
    /// the line: hatched from the first, crossed from the last.
    void levels() {
        const Rect& area = graph_.area;
        std::array<double, 4> at{};
        for (std::size_t i = 0; i < at.size(); ++i)
            at.at(i) = std::min(top_, piece_.bend.utilisation * piece_.chance.times.at(i));
        pen_.hatch({{area.low.x, y(at.front())}, {area.high.x, y(at.back())}}, 9_pt);
        pen_.hatch({{area.low.x, y(at.back())}, area.high}, 6_pt, true);
        for (std::size_t i = 0; i < at.size(); ++i) {
            const bool border = i == 0 || i + 1 == at.size();
            pen_.line(Role::limit, {area.low.x, y(at.at(i))}, {area.high.x, y(at.at(i))}, style().line,
                      border ? Dash::solid : Dash::dashed);
        }
        pen_.box(Role::outline, area, style().line);
        name_levels(at);
    }

    /// Led out to the right, as far apart as words need, with the strain of the worst kerf there.
    void name_levels(const std::array<double, 4>& at) {
        constexpr Length apart = 12.5_pt;
        const Length left = graph_.area.high.x + 16_pt;
        Length lowest = graph_.area.low.y;
        for (std::size_t i = 0; i < at.size(); ++i) {
            const Length left_over = apart * static_cast<double>(at.size() - 1 - i);
            const Length base = std::min(std::max(lowest, y(at.at(i)) - 3.5_pt), graph_.area.high.y - 6_pt - left_over);
            pen_.line(Role::text, {graph_.area.high.x, y(at.at(i))}, {left - 3_pt, base + 3.5_pt}, style().hair);
            const int n = chances.at(i);
            const bool told = bend::one_in(piece_.chance.breaks) == n;
            const Type type{told ? Face::bold : Face::regular, style().small};
            const std::string text =
                words("chance.level", {{"n", std::to_string(n)}}) + " " +
                words("chance.at", {{"strain", tape_.number(piece_.bend.strain * piece_.chance.times.at(i) * 100, 2)}});
            pen_.text(Role::text, {left, base}, text, pen_.fitting(text, type, pen_.page_width() - side_margin - left));
            lowest = base + apart;
        }
        pen_.text(Role::text, {left, lowest + 1_pt}, words("chance.boards_break"), small());
    }

    void axis() {
        const int fifths = static_cast<int>(std::lround(top_ * 5));
        const int named = static_cast<int>(std::ceil(style().small * 1.15 / (y(0.2) - y(0)) - 1e-9));
        for (int i = 0; i <= fifths; ++i) {
            const double u = i / 5.0;
            pen_.line(Role::dimension, {graph_.area.low.x - 4_pt, y(u)}, {graph_.area.low.x, y(u)}, style().line);
            if (i % named != 0) continue;
            pen_.text(Role::text, {graph_.area.low.x - 7_pt, y(u) - 3.2_pt}, tape_.number(u, 1), small().at_right());
        }
    }

    /// Where the bend reverses, what the kerfs do on each side of it.
    void changes_of_side() {
        if (!piece_.blank().bends_both_ways()) return;
        Length from = graph_.area.low.x;
        for (const plan::BendRun& run : piece_.blank().runs) {
            const bool last = &run == &piece_.blank().runs.back();
            const Length to = last ? graph_.area.high.x : x(run.to);
            const std::string text = words(opens(run) ? "strain.opens" : "strain.closes");
            if (pen_.width(text, small()) + 8_pt < to - from)
                pen_.text(Role::text, {(from + to) / 2, graph_.area.high.y + 5_pt}, text, small().centred());
            if (!last)
                pen_.line(Role::centre, {to, graph_.area.low.y}, {to, graph_.area.high.y + 13_pt}, style().line,
                          Dash::dash_dot);
            from = to;
        }
    }

    void curve(double times, Length width, Dash dash) {
        std::vector<Point> points;
        for (const plan::Kerf& kerf : piece_.blank().kerfs) points.push_back({x(kerf.at), y(kerf.utilisation * times)});
        const std::vector<Path> parts = graph_.inside(points);
        stroke_seamed(pen_, parts, width, dash);
        for (const Path& part : parts) labels_.taken().take(part);
    }

    Point place(const plan::Kerf& kerf) const { return {x(kerf.at), y(std::min(kerf.utilisation, top_))}; }

    void worst() {
        const std::vector<KerfRun> runs = worst_kerfs(piece_);
        const bool beyond = most_strain(piece_) > top_;
        std::vector<Point> places;
        places.reserve(runs.size());
        for (const KerfRun& run : runs)
            places.push_back(
                place(piece_.blank().kerfs.at(static_cast<std::size_t>((run.first + run.second) / 2 - 1))));
        for (const Point at : places) {
            if (beyond) beyond_arrow(pen_, {at.x, graph_.area.high.y});
            else ringed_dot(pen_, at);
            labels_.taken().take(Path::circle(at, dot_ring_radius));
        }
        Block block(pen_, {{worst_text(runs), {Face::bold, style().text}}});
        if (block.width() > graph_.area.width() - 8_pt)
            block = Block(pen_, {{worst_text(runs), {Face::condensed_bold, style().small}}});
        lead_to(places.front(), block.on_white(), beyond ? 24_pt : dot_ring_radius);
    }

    std::string worst_text(const std::vector<KerfRun>& runs) const {
        const std::string u = tape_.number(most_strain(piece_), 2);
        const auto bent = kerf_runs(piece_, [](const plan::Kerf& kerf) { return kerf.radius > 0_mm; });
        if (runs == bent && !is_one_kerf(runs)) return words("strain.all_alike", {{"u", u}});
        return words("strain.worst", {{"kerfs", kerf_list(runs, pen_.kit())}, {"u", u}});
    }

    /// A leader down to the words, or up where the strain is low. They stand beside its end, toward the middle if they
    /// can, else across it; else wherever nothing crosses them.
    void lead_to(Point from, const Block& block, Length start) {
        const Rect& area = graph_.area;
        const Length half = block.width() / 2;
        const double side = from.x < (area.low.x + area.high.x) / 2 ? 1 : -1;
        const Length across = std::clamp(from.x, area.low.x + half + 4_pt, area.high.x - half - 4_pt) - from.x;
        const Length foot = area.low.y + block.height() / 2 + 5_pt;
        for (const Length aside : {(half + 12_pt) * side, (half + 12_pt) * -side, across})
            for (Length level = foot; level < y(bend::ok_up_to) - block.height() / 2; level += 4_pt) {
                if (measure::abs(level - from.y) < block.height() + start) continue;
                if (!labels_.place(Role::text, block, {from.x + aside, level}, {1, 0}, 3_pt)) continue;
                leader(from, start, level, aside, block);
                return;
            }
        if (lead_anywhere(from, block, start)) return;
        lead_anywhere(
            from, Block(pen_, {{worst_text(worst_kerfs(piece_)), {Face::condensed_bold, style().small}}}).on_white(),
            start);
    }

    /// The free place that is nearest, wherever in the frame, with a leader straight to it. Where there is none the
    /// words are left out: those under the plot say it too.
    bool lead_anywhere(Point from, const Block& block, Length start) {
        const Rect& area = graph_.area;
        const Point half{block.width() / 2 + 3_pt, block.height() / 2 + 3_pt};
        const auto off = [&](Point centre) {
            return Point{std::max(measure::abs(centre.x - from.x) - half.x, 0_pt),
                         std::max(measure::abs(centre.y - from.y) - half.y, 0_pt)};
        };
        std::optional<Point> best;
        for (Length up = area.low.y + half.y; up < area.high.y - half.y; up += 3_pt)
            for (Length along = area.low.x + half.x; along < area.high.x - half.x; along += 6_pt) {
                const Point centre{along, up};
                const Length far = geom::distance({}, off(centre));
                if (far < start + 4_pt || (best && far >= geom::distance({}, off(*best)))) continue;
                if (labels_.taken().is_free({centre, {1, 0}, half.x, half.y})) best = centre;
            }
        if (!best) return false;
        const Point end{std::clamp(from.x, best->x - half.x + 1_pt, best->x + half.x - 1_pt),
                        std::clamp(from.y, best->y - half.y + 1_pt, best->y + half.y - 1_pt)};
        pen_.line(Role::text, from + geom::direction(from, end) * start, end, style().line);
        block.draw(pen_, Role::text, *best);
        labels_.taken().take({*best, {1, 0}, half.x, half.y});
        return true;
    }

    void leader(Point from, Length start, Length level, Length aside, const Block& block) {
        const double down = level < from.y ? -1 : 1;
        const bool beside = measure::abs(aside) > block.width() / 2;
        const Length end = beside ? level : level - (block.height() / 2 + 2_pt) * down;
        pen_.line(Role::text, {from.x, from.y + start * down}, {from.x, end}, style().line);
        if (beside)
            pen_.line(Role::text, {from.x, level}, {from.x + (aside > 0_pt ? 9_pt : -9_pt), level}, style().line);
    }

    /// A tick for every kerf, or for every fifth where they would run together, numbers at even steps; returns the
    /// height of the numbers.
    Length ticks() {
        const Length top = graph_.area.low.y - 7_pt;
        const bool fifths = x(piece_.cut.least_spacing) - x(0_mm) < closest_ticks;
        for (const plan::Kerf& kerf : piece_.blank().kerfs) {
            const bool tenth = kerf.n % 10 == 0 || kerf.n == 1;
            if (fifths && kerf.n % 5 != 0 && !tenth) continue;
            pen_.line(Role::tick, {x(kerf.at), top - (tenth ? 10_pt : 7_pt)}, {x(kerf.at), top},
                      tenth ? style().line : style().hair);
        }
        const Length base = top - 20_pt;
        const Type type{Face::bold, style().small};
        Lane lane(0_pt, pen_.page_width());
        const auto number = [&](const plan::Kerf& kerf) {
            const std::string text = std::to_string(kerf.n);
            const Length half = pen_.width(text, type) / 2;
            if (!lane.is_free(x(kerf.at) - half - 4_pt, x(kerf.at) + half + 4_pt)) return;
            lane.force(x(kerf.at) - half - 4_pt, x(kerf.at) + half + 4_pt);
            pen_.text(Role::text, {x(kerf.at), base}, text, type.centred());
        };
        number(piece_.blank().kerfs.front());
        const int step = number_step();
        for (const plan::Kerf& kerf : piece_.blank().kerfs)
            if (kerf.n % step == 0) number(kerf);
        row_name("strain.kerf", base);
        return base;
    }

    /// Kerfs between numbers, so that a number has room on average.
    int number_step() const {
        const Length gap = (x(piece_.blank().kerfs.back().at) - x(piece_.blank().kerfs.front().at)) /
                           static_cast<double>(std::max<std::size_t>(1, piece_.blank().kerfs.size() - 1));
        for (const int step : {1, 2, 5, 10, 20, 50})
            if (gap * step > 30_pt) return step;
        return 100;
    }

    void row_name(const char* key, Length base) {
        pen_.text(Role::text, {graph_.area.low.x - 9_pt, base}, words(key), small().at_right());
    }

    Length weak_links(Length base) {
        if (piece_.weak_links.empty()) return base;
        base -= weak_lane;
        row_name("strain.weak_link", base);
        const Type type{Face::bold, style().small};
        Lane lane(0_pt, pen_.page_width());
        for (const int n : piece_.weak_links) {
            const Length at = x(piece_.blank().kerfs.at(static_cast<std::size_t>(n - 1)).at);
            pen_.arrow_head(Role::text, {at, base + 8_pt}, {0, 1}, 7_pt, 6_pt);
            const std::string text = std::to_string(n);
            const Length end = at + 6_pt + pen_.width(text, type);
            if (!lane.is_free(at - 4_pt, end)) continue;
            lane.force(at - 4_pt, end);
            pen_.text(Role::text, {at + 5_pt, base}, text, type);
        }
        return base;
    }

    void distances(Length base) {
        const Length line = base - 9_pt;
        const Length step = tape_step(piece_.blank().length, 8, tape_.unit());
        pen_.line(Role::dimension, {graph_.area.low.x, line}, {graph_.area.high.x, line}, style().hair);
        for (Length at; at <= piece_.blank().length; at += step) {
            pen_.line(Role::dimension, {x(at), line}, {x(at), line - 4_pt}, style().line);
            pen_.text(Role::text, {x(at), line - 14_pt}, tape_.exact_plain(at), small().centred());
        }
        row_name(tape_.unit() == Unit::inch ? "strain.from_zero_inch" : "strain.from_zero_mm", line - 14_pt);
    }

    Pen& pen_;
    const plan::Piece& piece_;
    const Tape& tape_;
    double top_;
    Graph graph_;
    Labels labels_;
};

}  // namespace

std::vector<KerfRun> worst_kerfs(const plan::Piece& piece) {
    const double most = most_strain(piece);
    std::vector<KerfRun> runs =
        kerf_runs(piece, [most](const plan::Kerf& kerf) { return kerf.utilisation >= most - alike; });
    if (runs.size() <= most_runs) return runs;
    return kerf_runs(piece, [most](const plan::Kerf& kerf) { return kerf.utilisation == most; });
}

double strain_axis_end(const plan::Piece& piece) {
    const double most =
        std::max(most_strain(piece) * (1 + piece.chance.load), piece.bend.utilisation * piece.chance.times.back());
    return std::clamp(std::ceil(most * 5 + 0.25) / 5, 1.2, highest_axis);
}

void draw_strain_plot(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    const Scope figure = pen.figure(pen.kit().words(
        "figure.strain",
        {{"piece", piece.id}, {"u", tape.number(most_strain(piece), 2)}, {"n", std::to_string(piece.governing)}}));
    StrainPlot(pen, space, piece, tape).draw();
}

}  // namespace kerfpacket::sheets
