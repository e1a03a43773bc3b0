// A printer that errs: every dot of it 0.4 % short across the paper and 0.2 % long along the feed. A template 96 in
// wide is drawn in dots, printed by it, and put together by the crosses found in the ink, as a carpenter does: once as
// the program prints it for a printer that it knows nothing of, once for the profile measured on the same printer's
// page.

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>
#include <functional>
#include <iostream>
#include <numeric>
#include <optional>

#include "page/placing.h"
#include "print/packet.h"
#include "print/raster.h"
#include "sheets/blanks/printer_check.h"
#include "sheets/templates/template_drawing.h"
#include "support/boxes.h"
#include "support/laid_out.h"
#include "support/variable.h"

namespace kerfpacket::tests {
namespace {

using namespace measure::literals;
using geom::Angle;
using geom::Direction;
using geom::Path;
using geom::Point;
using page::Role;

constexpr double across = 0.996;
constexpr double along = 1.002;

/// A sheet of paper from that printer, fed by its short edge.
class Print {
public:
    Print(Raster raster, const page::Page& page) : raster_(std::move(raster)), page_(page) {
        const bool upright = page.height > page.width;
        x_ = upright ? across : along;
        y_ = upright ? along : across;
    }

    /// Where on the paper the ink lies that belongs into this part of the page, measured from a corner of the paper.
    Point ink(const Rect& part) const {
        const Point low = page::corrected(page_, part.low);
        const Point high = page::corrected(page_, part.high);
        return {ink_centre(raster_, {low, high}) * x_, ink_height(raster_, {low, high}) * y_};
    }
    const page::Page& page() const { return page_; }

private:
    Raster raster_;
    const page::Page& page_;
    double x_ = 1;
    double y_ = 1;
};

Rect around(Point p, Length half_width, Length half_height) {
    return {{p.x - half_width, p.y - half_height}, {p.x + half_width, p.y + half_height}};
}

/// Whether a straight line runs on along another.
bool runs_along(const Path& path, const Path& line) {
    const Direction way = geom::direction(line.start(), line.end());
    const auto on_line = [&](Point p) {
        const Point from = p - line.start();
        return measure::abs(from.x * way.y - from.y * way.x) < 0.001_mm;
    };
    return path.segments().size() == 1 && path.segments().front().is_line() && on_line(path.start()) &&
           on_line(path.end());
}

/// Whether only this line, and others that run along it, leave ink in a part of a page.
bool stands_alone(const page::Page& page, const page::PathItem& line, const Rect& part) {
    const Rect near = part.grown(0.3_mm);
    return std::none_of(page.items.begin(), page.items.end(), [&](const page::Item& item) {
        if (const auto* text = std::get_if<page::TextItem>(&item)) return overlap(near, box_of(*text));
        const auto* path = std::get_if<page::PathItem>(&item);
        if (path == nullptr || path->path == line.path || runs_along(path->path, line.path)) return false;
        return !geom::clip(path->path, near.grown(path->width / 2)).empty();
    });
}

/// How a sheet lies: turned about its corner, then moved.
struct Lie {
    Angle turn;
    Point shift;
    Point operator()(Point p) const { return geom::turned(p, turn) + shift; }
};

Point mean(const std::vector<Point>& points) {
    return std::accumulate(points.begin(), points.end(), Point{}) * (1.0 / static_cast<double>(points.size()));
}

/// What lays the first points on the second as well as can be, by least squares.
Lie best_lie(const std::vector<Point>& from, const std::vector<Point>& to) {
    const Point middle_from = mean(from);
    const Point middle_to = mean(to);
    double dot = 0, cross = 0;
    for (std::size_t i = 0; i < from.size(); ++i) {
        const Point a = from[i] - middle_from;
        const Point b = to[i] - middle_to;
        dot += a.x.mm() * b.x.mm() + a.y.mm() * b.y.mm();
        cross += a.x.mm() * b.y.mm() - a.y.mm() * b.x.mm();
    }
    const Angle turn = Angle::radians(std::atan2(cross, dot));
    return {turn, middle_to - geom::turned(middle_from, turn)};
}

/// A place of the drawing, and where on a sheet of paper its ink was found.
struct Found {
    Point drawn;
    Point seen;
    Direction normal{};  ///< of the line it is on: along the line its ink says nothing
};

struct Sheet {
    std::vector<Found> crosses;  ///< `drawn` on the page at first, in the drawing when all sheets are known
    std::vector<Found> places;
    std::optional<Lie> laid{};
};

/// The rings around crosses. Arms and joint lines run through a ring, but not through it aslant.
std::vector<const page::PathItem*> rings_on(const page::Page& page) {
    std::vector<const page::PathItem*> found;
    for (const page::Item& item : page.items) {
        const auto* path = std::get_if<page::PathItem>(&item);
        if (path == nullptr || path->role != Role::registration || !path->path.closed()) continue;
        if (measure::abs(path->path.bounds().width() - sheets::ring_radius * 2) < 0.01_mm) found.push_back(path);
    }
    return found;
}

/// The middle of a ring: halfway between the ink on opposite sides of it, aslant, where nothing else touches either.
std::optional<Found> cross_in(const Print& print, const page::PathItem& ring) {
    const Rect box = ring.path.bounds();
    const Point centre = geom::middle(box.low, box.high);
    std::vector<Point> middles;
    for (const double degrees : {45.0, 135.0}) {
        const Point aside = Direction::at(Angle::degrees(degrees)) * sheets::ring_radius;
        const Rect part = around(centre + aside, 0.4_mm, 0.4_mm);
        const Rect opposite = around(centre - aside, 0.4_mm, 0.4_mm);
        if (stands_alone(print.page(), ring, part) && stands_alone(print.page(), ring, opposite))
            middles.push_back(geom::middle(print.ink(part), print.ink(opposite)));
    }
    if (middles.empty()) return {};
    return Found{centre, mean(middles)};
}

/// Middles of kerf ticks, and places on the curves, wherever a line has a millimetre for itself.
std::vector<Found> places_on(const Print& print) {
    std::vector<Found> found;
    for (const page::Item& item : print.page().items) {
        const auto* line = std::get_if<page::PathItem>(&item);
        if (line == nullptr || line->dash != page::Dash::solid || line->path.empty()) continue;
        const bool curve = line->role == Role::outline && !line->path.segments().front().is_line();
        if (!curve && line->role != Role::tick) continue;
        for (const double part : {0.1, 0.3, 0.5, 0.7, 0.9}) {
            const geom::Station at = line->path.at(line->path.length() * part);
            const Rect window = around(at.point, 0.5_mm, 0.5_mm);
            if (!stands_alone(print.page(), *line, window)) continue;
            found.push_back({at.point, print.ink(window), at.direction.left()});
            if (!curve) break;
        }
    }
    return found;
}

Sheet read_sheet(const Print& print) {
    Sheet sheet;
    for (const page::PathItem* ring : rings_on(print.page()))
        if (const auto cross = cross_in(print, *ring)) sheet.crosses.push_back(*cross);
    sheet.places = places_on(print);
    return sheet;
}

/// Of the curves on a page: all have the same.
Point centre_of_curves(const page::Page& page) {
    for (const page::Item& item : page.items)
        if (const auto* path = std::get_if<page::PathItem>(&item); path != nullptr && path->role == Role::outline)
            for (const std::vector<geom::Segment> all = path->path.segments(); const geom::Segment& segment : all)
                if (!segment.is_line()) return segment.centre();
    throw std::runtime_error("a page of the template without a curve");
}

void draw_as(Sheet& sheet, const Lie& lie) {
    for (Found& cross : sheet.crosses) cross.drawn = lie(cross.drawn);
    for (Found& place : sheet.places) {
        place.drawn = lie(place.drawn);
        place.normal = place.normal.turned(lie.turn);
    }
}

/// The crosses at the left or right end of a sheet along the curve, the lower one first.
std::vector<Point> end_crosses(const Sheet& sheet, bool right) {
    std::vector<Point> all;
    for (const Found& cross : sheet.crosses) all.push_back(cross.drawn);
    std::sort(all.begin(), all.end(), [&](Point a, Point b) { return right ? a.x > b.x : a.x < b.x; });
    all.resize(2);
    std::sort(all.begin(), all.end(), [](Point a, Point b) { return a.y < b.y; });
    return all;
}

/// Puts what the pages show in its place in the drawing: in a grid by the centre of the curves, along a curve sheet by
/// sheet, by the crosses that two sheets share.
void put_into_drawing(std::vector<Sheet>& sheets, const std::vector<Point>& centres, bool grid) {
    Lie lie{{}, centres.front() * -1};
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        std::vector<Point> next;
        if (grid) lie = {{}, centres[i] * -1};
        else if (i + 1 < sheets.size())
            for (const Point p : end_crosses(sheets[i], true)) next.push_back(lie(p));
        draw_as(sheets[i], lie);
        if (!next.empty()) lie = best_lie(end_crosses(sheets[i + 1], false), next);
    }
}

/// Lays a sheet to those that lie already, by all the crosses that it shares with them; tells whether it shares two.
bool lay(Sheet& sheet, const std::vector<Sheet>& sheets) {
    std::vector<Point> from, to;
    for (const Sheet& other : sheets)
        if (other.laid)
            for (const Found& theirs : other.crosses)
                for (const Found& ours : sheet.crosses)
                    if (geom::distance(theirs.drawn, ours.drawn) < 0.1_mm) {
                        from.push_back(ours.seen);
                        to.push_back((*other.laid)(theirs.seen));
                    }
    if (from.size() < 2) return false;
    sheet.laid = best_lie(from, to);
    return true;
}

/// One sheet after the other, from the one in the middle.
void put_together(std::vector<Sheet>& sheets) {
    sheets[sheets.size() / 2].laid = Lie{};
    for (bool more = true; more;) {
        more = false;
        for (Sheet& sheet : sheets)
            if (!sheet.laid) more = lay(sheet, sheets) || more;
    }
}

/// How far the ink lies from the drawing, once the whole lies on it as well as it can.
class Assembled {
public:
    explicit Assembled(const std::vector<Sheet>& sheets) {
        for (const Sheet& sheet : sheets) {
            if (!sheet.laid) throw std::runtime_error("a sheet of the template has nothing to be joined to");
            for (const Found& place : sheet.places)
                places_.push_back({place.drawn, (*sheet.laid)(place.seen), place.normal});
        }
        std::vector<Point> seen, drawn;
        for (const Found& place : places_) {
            seen.push_back(place.seen);
            drawn.push_back(place.drawn);
        }
        const Lie rough = best_lie(seen, drawn);
        for (Found& place : places_) place.seen = rough(place.seen);
        fit_across_lines();
    }

    Length worst() const {
        Length most;
        for (const Found& place : places_) most = std::max(most, measure::abs(off(place)));
        return most;
    }
    std::size_t count() const { return places_.size(); }

private:
    static Length off(const Found& place) {
        const Point d = place.seen - place.drawn;
        return d.x * place.normal.x + d.y * place.normal.y;
    }

    /// Ink of a line tells only how far the line lies to its side: the small turn and move that make these least.
    void fit_across_lines() {
        Eigen::MatrixXd lines(static_cast<Eigen::Index>(places_.size()), 3);
        Eigen::VectorXd offs(static_cast<Eigen::Index>(places_.size()));
        for (std::size_t i = 0; i < places_.size(); ++i) {
            const auto& [drawn, seen, normal] = places_[i];
            const auto row = static_cast<Eigen::Index>(i);
            lines.row(row) << normal.x, normal.y, normal.y * drawn.x.mm() - normal.x * drawn.y.mm();
            offs(row) = off(places_[i]).mm();
        }
        const Eigen::Vector3d move = lines.colPivHouseholderQr().solve(offs);
        for (Found& place : places_) {
            const Point p = place.drawn;
            place.seen = place.seen - Point{Length::mm(move(0)) - p.y * move(2), Length::mm(move(1)) + p.x * move(2)};
        }
    }

    std::vector<Found> places_;
};

struct Bar {
    Length drawn;
    Length printed;
};

/// A check bar from its first mark to its last, as a carpenter measures it.
Bar measured_bar(const Print& print, Point zero, Direction way) {
    struct Mark {
        Length at;
        Length seen;
    };
    std::vector<Mark> marks;
    const bool level = way.x > 0.5;
    const auto along_bar = [&](Point p) { return level ? p.x : p.y; };
    const auto beside_bar = [&](Point p) { return level ? p.y - zero.y : p.x - zero.x; };
    for (const page::Item& item : print.page().items) {
        const auto* line = std::get_if<page::PathItem>(&item);
        if (line == nullptr || line->role != Role::check_bar || line->path.segments().size() != 1) continue;
        const Point from = line->path.start();
        const Point to = line->path.end();
        const bool across_bar = measure::abs(along_bar(from) - along_bar(to)) < 0.001_mm;
        const auto [inner, outside] = std::minmax({beside_bar(from), beside_bar(to)});
        if (!across_bar || inner > 0.001_mm || outside < -0.001_mm || outside - inner > 13_pt) continue;
        for (const Point outer : {from, to}) {
            if (measure::abs(beside_bar(outer)) < 5_pt) continue;  // the end marks reach farther than the others
            const Point on = level ? Point{outer.x, zero.y} : Point{zero.x, outer.y};
            const Point middle = on + (outer - on) * 0.7;
            const Rect part = level ? around(middle, 0.5_mm, 1.2_pt) : around(middle, 1.2_pt, 0.5_mm);
            if (!stands_alone(print.page(), *line, part)) continue;
            marks.push_back({along_bar(on), along_bar(print.ink(part))});
            break;
        }
    }
    const auto [first, last] =
        std::minmax_element(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) { return a.at < b.at; });
    if (marks.empty() || last->at - first->at < 5_in) throw std::runtime_error("a bar without marks at its ends");
    return {last->at - first->at, last->seen - first->seen};
}

/// The check page, printed by that printer, measured on paper and stored as the user is told to.
void measure_printer() {
    const Folder folder;
    const fs::path pdf = folder / "check.pdf";
    const Outcome built = run_program({KERFPACKET_PROGRAM, "printer-check", "--units", "mm", "--out", pdf.string()});
    ASSERT_EQ(built.status, 0) << built.err;
    const cli::Resources resources(KERFPACKET_BUILD_DIR, "en");
    const page::Document check =
        sheets::make_printer_check(*job::find_media("na_letter_8.5x11in"), measure::Unit::millimetre, resources.kit());
    const Print print(draw_page(Renderer::mupdf, pdf, 1, 600), check.pages.front());
    const Point corner{64_pt, 74_pt};
    const auto typed = [](const Bar& bar) { return measure::fixed(bar.printed.mm(), 2) + " mm"; };
    const Outcome stored = run_program({KERFPACKET_PROGRAM, "printer-check", "--units", "mm", "--profile", "copy-shop",
                                        "--first", "top", "--level", typed(measured_bar(print, corner, {1, 0})),
                                        "--upright", typed(measured_bar(print, corner, {0, 1}))});
    ASSERT_EQ(stored.status, 0) << stored.err;
}

std::string head_96(const std::string& sheets, bool measured) {
    return std::string(R"([job]
number = "P-9"
title = "Wash house gate"
revision = "A"
date = 2026-04-15
units = "in"

[saw]
blade_diameter = "10 in"
kerf = 0.126

[printer]
media = "na_letter_8.5x11in"
)") + (measured ? "profile = \"copy-shop\"\n" : "") +
           R"(
[[opening]]
id = "G"
shape = "segmental"
span = "96 in"
rise = "24 in"
depth = "5 in"

[opening.liner]
material = "mdf"
thickness = "1/2 in"

[opening.casing]
width = "3 1/2 in"

[opening.template]
half = false
sheets = ")" +
           sheets + "\"\n";
}

/// A circular segment's radius from chord and height: s^2 / 8h + h / 2 (a handbook's table of segments; from memory).
/// The head was measured to the wall; the liner's seen face is its thickness further in.
constexpr Length radius_96 = Length::inches(96.0 * 96.0 / (8 * 24.0) + 24.0 / 2 - 0.5);

struct Printed {
    Length worst;  ///< of the template, from where it belongs
    std::size_t places = 0;
    double bar_off_mm = 0;  ///< worst of all check bars
};

class ErringPrinter : public testing::TestWithParam<const char*> {
protected:
    static Printed printed(const std::string& sheets, bool measured) {
        const BuiltPacket packet(head_96(sheets, measured));
        const page::Document document = laid_out(packet.job());
        std::vector<Sheet> read;
        std::vector<Point> centres;
        Printed result;
        for (std::size_t i = 0; i < document.pages.size(); ++i) {
            const page::Page& page = document.pages[i];
            if (page.sheet != "template" || rings_on(page).empty()) continue;
            const Print print(draw_page(Renderer::mupdf, packet.pdf(), static_cast<int>(i) + 1, 600), page);
            read.push_back(read_sheet(print));
            centres.push_back(centre_of_curves(page));
            for (const Bar& bar : {measured_bar(print, {36_pt, 51_pt}, {1, 0}), upright_bar(print)})
                result.bar_off_mm = std::max(result.bar_off_mm, std::abs((bar.printed - bar.drawn).mm()));
        }
        put_into_drawing(read, centres, sheets == "grid");
        expect_the_job(read);
        put_together(read);
        const Assembled assembled(read);
        result.worst = assembled.worst();
        result.places = assembled.count();
        std::cout << sheets << (measured ? ", profile: " : ", no profile: ") << read.size() << " sheets, "
                  << result.places << " places, worst " << result.worst.mm() << " mm, bars " << result.bar_off_mm
                  << " mm\n";
        return result;
    }

private:
    static Bar upright_bar(const Print& print) {
        for (const page::Item& item : print.page().items)
            if (const auto* line = std::get_if<page::PathItem>(&item);
                line != nullptr && line->role == Role::check_bar &&
                measure::abs(line->path.start().x - 26_pt) < 0.01_mm)
                return measured_bar(print, {26_pt, line->path.start().y}, {0, 1});
        throw std::runtime_error("a page without an upright check bar");
    }

    /// That what the display list draws is the head of the job: places on its curve, nearly from spring to spring.
    static void expect_the_job(const std::vector<Sheet>& sheets) {
        std::vector<Point> on_curve;
        for (const Sheet& sheet : sheets)
            for (const Found& place : sheet.places)
                if (measure::abs(geom::distance(place.drawn, {}) - radius_96) < 0.001_mm)
                    on_curve.push_back(place.drawn);
        Length widest;
        for (const Point a : on_curve)
            for (const Point b : on_curve) widest = std::max(widest, geom::distance(a, b));
        EXPECT_GT(on_curve.size(), 20U);
        EXPECT_GT(widest, 90_in);
        EXPECT_LT(widest, 96_in);
    }

    const Folder folder_;
    const Variable configuration_{"XDG_CONFIG_HOME", folder_.path().string()};
};

TEST_P(ErringPrinter, IsMadeTrueByItsProfile) {
    measure_printer();
    const Printed with = printed(GetParam(), true);
    EXPECT_GT(with.places, 100U);
    EXPECT_LE(with.worst, Length::inches(1.0 / 64));
    EXPECT_LE(with.bar_off_mm, 0.1);
    const Printed without = printed(GetParam(), false);
    EXPECT_GT(without.worst, Length::inches(1.0 / 64));
    EXPECT_GT(without.bar_off_mm, 0.1);
}

INSTANTIATE_TEST_SUITE_P(Ways, ErringPrinter, testing::Values("grid", "along"),
                         [](const auto& way) { return std::string(way.param); });

}  // namespace
}  // namespace kerfpacket::tests
