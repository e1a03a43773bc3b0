// What `check`, `stops` and `outlines` tell of a splayed jamb. The fixture is a frustum of a cone, whose development is
// in any text on sheet-metal layout; its figures were worked by hand from it.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <numbers>
#include <sstream>

#include "session.h"
#include "support/laid_out.h"

namespace kerfpacket::tests {
namespace {

constexpr double inch = 25.4;

/// Half round, narrow finish radius 18, 20 degrees over 8 in, kerfs every 1/2 in.
std::string half_round(const std::string& depth = "1/4 in", const std::string& id = "A") {
    return "[[opening]]\nid = \"" + id +
           "\"\nshape = \"semicircular\"\nspan = \"36 in\"\nmeasured_to = \"finish\"\nlegs = \"60 in\"\ndepth = \"8 "
           "in\"\n[opening.liner]\nmaterial = \"mdf\"\nthickness = \"1/2 in\"\nkerf_depth = \"" +
           depth + "\"\nspacing = \"1/2 in\"\n[opening.splay]\nangle = 20\nmeasured = \"narrow\"\ntoward = \"room\"\n";
}

/// The head of the good job, its saw with a rear limit.
std::string job_of(const std::string& pieces) {
    const std::string head = good_job.substr(0, good_job.find("[[opening]]"));
    return std::string(head).insert(head.find("kerf = 0.118"), "rear_limit = \"1-3/8 in\"\n") + pieces;
}

Outcome run_on(const std::string& command, const std::string& job, std::vector<std::string> more = {}) {
    const Folder folder;
    spill(folder / "job.toml", job);
    more.insert(more.begin(), {command, (folder / "job.toml").string()});
    return run_in_process(more);
}

nlohmann::json splay_of(const std::string& job) {
    return nlohmann::json::parse(run_on("check", job, {"--json"}).out).at("pieces").at(0).at("splay");
}

TEST(SplayCheck, JsonHasTheFiguresOfTheCone) {
    const auto splay = splay_of(job_of(half_round()));
    const double sine = std::sin(20 * std::numbers::pi / 180);
    EXPECT_NEAR(splay.at("angle_deg"), 20, 1e-6);
    EXPECT_NEAR(splay.at("side_mm").get<double>() / inch, 8 * std::tan(20 * std::numbers::pi / 180), 1e-6);
    EXPECT_NEAR(splay.at("slant_mm").get<double>() / inch, 8.5134, 0.0001);
    EXPECT_NEAR(splay.at("narrow").at("radius_mm").get<double>() / inch, 53.0245, 0.0005);
    EXPECT_NEAR(splay.at("wide").at("radius_mm").get<double>() / inch, 61.5379, 0.0005);
    EXPECT_NEAR(splay.at("narrow").at("bend_mm").get<double>() / inch, 56.974, 0.001);
    EXPECT_NEAR(splay.at("wide").at("bend_mm").get<double>() / inch, 66.122, 0.001);
    EXPECT_NEAR(splay.at("narrow").at("gap_mm").get<double>() / inch, 0.5, 1e-6);
    EXPECT_NEAR(splay.at("wide").at("gap_mm").get<double>() / inch, 0.5803, 0.0001);
    EXPECT_NEAR(splay.at("flat_turn_deg"), 180 * sine, 0.001);
    EXPECT_NEAR(splay.at("bend_radius_mm").get<double>() / inch, 19.299, 0.001);
    // As sawn, edges square, the board is wider by both bevels, and the blank lies in its box.
    EXPECT_NEAR(splay.at("sawn_width_mm").get<double>() / inch, 8.5134 + 0.5 * std::tan(20 * std::numbers::pi / 180),
                0.0001);
    const double outer = splay.at("wide_sawn").at("radius_mm"), inner = splay.at("narrow_sawn").at("radius_mm");
    EXPECT_NEAR(outer - inner, splay.at("sawn_width_mm"), 1e-5);
    const double half = splay.at("wide_sawn").at("along_mm").get<double>() / outer / 2;
    EXPECT_NEAR(splay.at("box_mm").at(0), 2 * outer * std::sin(half), inch / 16);
    EXPECT_NEAR(splay.at("box_mm").at(1), outer - inner * std::cos(half), inch / 16);
    EXPECT_EQ(splay.at("measured"), "narrow");
    EXPECT_EQ(splay.at("toward"), "room");
    EXPECT_EQ(splay.at("legs").size(), 2U);
    // The bow of a circle over a half chord: R = (c^2 + b^2) / 2b.
    const auto& blocks = splay.at("blocks");
    const double chord = blocks.at("from_blade_mm"), bow = blocks.at("bow_mm");
    EXPECT_NEAR((chord * chord + bow * bow) / (2 * bow), outer, 1e-3);
}

TEST(SplayCheck, JsonHasNoneOfAJambSquareToItsWallAndNoRadiusOfAnEllipse) {
    EXPECT_TRUE(splay_of(good_job).is_null());
    std::string ellipse = half_round("3/8 in");
    ellipse.replace(ellipse.find("semicircular"), 12, "elliptical\"\nrise = \"16 in");
    const auto splay = splay_of(job_of(ellipse));
    EXPECT_TRUE(splay.at("narrow").at("radius_mm").is_null());
    EXPECT_TRUE(splay.at("blocks").is_null());
    EXPECT_GT(splay.at("wide").at("gap_mm"), splay.at("narrow").at("gap_mm").get<double>());
}

TEST(SplayCheck, TheBlankIsToldByTheBoardThatItIsSawnFrom) {
    const std::string out = run_on("check", job_of(half_round())).out;
    for (const char* part :
         {"splay        20.00 degrees from square to the wall, 2-15/16 in wider at each side, the wide edge at the "
          "room",
          "struck with radii 53 in and 61-11/16 in", "blocks       two of 1 in, 6 in left and right of the blade",
          "blank        sawn from a board 69-1/16 x 17-13/16 in"})
        EXPECT_NE(out.find(part), std::string::npos) << part << out;
    EXPECT_EQ(out.find("in long ("), std::string::npos) << "a length alone would be sawn too short" << out;
    EXPECT_EQ(run_on("check", good_job).out.find("splay"), std::string::npos);
}

TEST(SplayStops, ASplayedBlankIsToldAndLeftOut) {
    const Outcome alone = run_on("stops", job_of(half_round("3/8 in")));
    EXPECT_EQ(alone.status, 2);
    EXPECT_EQ(alone.out, "");
    EXPECT_NE(alone.err.find("piece A: no stop on the fence holds the kerfs of a splayed blank"), std::string::npos)
        << alone.err;
    const std::string wall =
        "[[wall]]\nid = \"W\"\nchord = 84\nrise = 7\nside = \"concave\"\n[wall.board]\nmaterial = "
        "\"mdf\"\nthickness = \"1/2 in\"\nwidth = 5\n";
    const Outcome both = run_on("stops", job_of(half_round("3/8 in") + wall));
    EXPECT_NE(both.status, 2) << both.err;
    EXPECT_NE(both.out.find("\nW,1,"), std::string::npos) << both.out;
    EXPECT_EQ(both.out.find("\nA,"), std::string::npos) << both.out;
    EXPECT_NE(both.err.find("piece A: no stop"), std::string::npos) << both.err;
}

struct At {
    double x, y;
};

double apart(At a, At b) { return std::hypot(a.x - b.x, a.y - b.y); }

/// Ends of the straight lines of a layer of an SVG, y up, in mm.
std::vector<std::array<At, 2>> lines_of(const std::string& svg, const std::string& layer) {
    std::vector<std::array<At, 2>> lines;
    const std::size_t from = svg.find("id=\"" + layer + "\"");
    if (from == std::string::npos) return lines;
    std::istringstream group(svg.substr(from, svg.find("</g>", from) - from));
    for (std::string line; std::getline(group, line);) {
        At a{}, b{};
        // NOLINTNEXTLINE(cert-err34-c): what does not match is no line
        if (std::sscanf(line.c_str(), "<path d=\"M %lf %lf L %lf %lf", &a.x, &a.y, &b.x, &b.y) == 4)
            lines.push_back({At{a.x, -a.y}, At{b.x, -b.y}});
    }
    return lines;
}

/// Radii of the arcs of a layer.
std::vector<double> radii_of(const std::string& svg, const std::string& layer) {
    std::vector<double> radii;
    const std::size_t from = svg.find("id=\"" + layer + "\"");
    const std::string group = svg.substr(from, svg.find("</g>", from) - from);
    for (std::size_t at = group.find(" A "); at != std::string::npos; at = group.find(" A ", at + 1))
        radii.push_back(std::stod(group.substr(at + 3)));
    return radii;
}

TEST(SplayOutlines, TheConeStaysArcsAndItsKerfsMeetInItsTip) {
    const std::string job = job_of(half_round("3/8 in"));
    const auto splay = splay_of(job);
    const std::string svg = run_on("outlines", job, {"--svg"}).out;
    const auto radii = radii_of(svg, "A_BLANK");
    ASSERT_GE(radii.size(), 2U);
    const double inner = splay.at("narrow_sawn").at("radius_mm"), outer = splay.at("wide_sawn").at("radius_mm");
    for (const double radius : radii) EXPECT_LT(std::min(std::abs(radius - inner), std::abs(radius - outer)), 1e-4);
    const auto kerfs = lines_of(svg, "A_KERFS");
    ASSERT_GT(kerfs.size(), 100U);
    // All lead to one point, the tip, as far from the narrow edge as its radius.
    const At a = kerfs.front()[0], b = kerfs.front()[1];
    const At tip{a.x + (a.x - b.x) * inner / (outer - inner), a.y + (a.y - b.y) * inner / (outer - inner)};
    for (const auto& kerf : kerfs) {
        EXPECT_NEAR(apart(kerf[0], tip), inner, 1e-3);
        EXPECT_NEAR(apart(kerf[1], tip), outer, 1e-3);
    }
    EXPECT_EQ(lines_of(svg, "A_ENDS").size(), 2U);
    EXPECT_TRUE(svg.find("\"A_LEG_LEFT\"") != std::string::npos && svg.find("\"A_LEG_RIGHT\"") != std::string::npos);
    EXPECT_EQ(svg.find("A_ENDS_SEEN"), std::string::npos) << "a half round ends on straight lines";
}

// A segment of span 40 and rise 9 meets its leg on the mitre of the parallels: worked out as where the circle of radius
// R + e meets the leg's line 20 + e from the middle.
TEST(SplayOutlines, ALegEndsWhereTheHeadMeetsIt) {
    std::string opening = half_round("3/8 in");
    opening.replace(opening.find("semicircular"), 12, "segmental\"\nrise = \"9 in");
    opening.replace(opening.find("36 in"), 5, "40 in");
    const std::string svg = run_on("outlines", job_of(opening), {"--svg"}).out;
    const std::size_t from = svg.find("id=\"A_LEG_LEFT\"");
    ASSERT_NE(from, std::string::npos) << svg.substr(0, 400);
    std::istringstream path(svg.substr(svg.find("d=\"M ", from) + 5));
    std::vector<At> corners;
    for (std::string letter = "M"; letter == "M" || letter == "L"; path >> letter) {
        At at{};
        path >> at.x >> at.y;
        corners.push_back({at.x / inch, -at.y / inch});
    }
    ASSERT_GT(corners.size(), 10U);
    const double low = corners[1].y, foot = corners[1].x, alpha = 20 * std::numbers::pi / 180;
    const double radius = (20.0 * 20 + 9 * 9) / 18;
    for (std::size_t i = 2; i < corners.size(); ++i) {
        const double e = (corners[i].y - low) * std::sin(alpha);
        const double height = std::sqrt(std::pow(radius + e, 2) - std::pow(20 + e, 2)) - (radius - 9);
        if (corners[i].x - foot < 1) continue;  // back at the foot
        EXPECT_NEAR(corners[i].x - foot, 60 + height, 1e-4) << i;
    }
    EXPECT_NEAR(corners[0].y - low, 8 / std::cos(alpha) + 0.5 * std::tan(alpha), 1e-4);
    EXPECT_NE(svg.find("\"A_ENDS_SEEN\""), std::string::npos);
}

/// Where the black feet of one page begin, at the edges of the blank, and where they lead.
std::vector<std::array<At, 2>> feet_of(const page::Page& page) {
    std::vector<std::array<At, 2>> feet;
    for (const page::Item& item : page.items)
        if (const auto* path = std::get_if<page::PathItem>(&item); path != nullptr && path->role == page::Role::foot)
            feet.push_back({At{path->path.start().x.mm(), path->path.start().y.mm()},
                            At{path->path.end().x.mm(), path->path.end().y.mm()}});
    return feet;
}

/// The kerf lines on each sheet of the printed flat blank, from the foot at one edge to that at the other.
std::vector<std::vector<std::array<At, 2>>> printed_kerfs(const page::Document& packet, double length) {
    std::vector<std::vector<std::array<At, 2>>> sheets;
    for (const page::Page& page : packet.pages) {
        if (page.sheet != "flat-blank") continue;
        const auto feet = feet_of(page);
        std::vector<std::array<At, 2>> kerfs;
        for (std::size_t i = 0; i < feet.size(); ++i) {
            const auto& [at, inner] = feet[i];
            const double long_way = length / apart(at, inner);
            const At other{at.x + (inner.x - at.x) * long_way, at.y + (inner.y - at.y) * long_way};
            for (std::size_t k = i + 1; k < feet.size(); ++k)
                if (apart(feet[k][0], other) < 0.05) kerfs.push_back({at, feet[k][0]});
        }
        if (kerfs.size() > 2) sheets.push_back(std::move(kerfs));
    }
    return sheets;
}

/// How far a sheet's kerfs lie off as many of the drawing's from number `first` on, all corners of each laid on those
/// of the others by their distances alone.
double off(const std::vector<std::array<At, 2>>& sheet, const std::vector<std::array<At, 2>>& all, std::size_t first) {
    double far = 0;
    for (std::size_t i = 0; i < sheet.size(); ++i)
        for (const std::size_t a : {0U, 1U})
            for (const std::size_t b : {0U, 1U})
                far =
                    std::max(far, std::abs(apart(sheet[0][a], sheet[i][b]) - apart(all[first][a], all[first + i][b])));
    return far;
}

TEST(SplayOutlines, ThePrintedSheetsLieOnTheDrawing) {
    std::string ellipse = half_round("3/8 in");
    ellipse.replace(ellipse.find("semicircular"), 12, "elliptical\"\nrise = \"22 in");
    ellipse.replace(ellipse.find("36 in"), 5, "56 in");
    const Folder folder;
    spill(folder / "job.toml", job_of(ellipse));
    const std::string svg = run_on("outlines", job_of(ellipse), {"--svg"}).out;
    const auto kerfs = lines_of(svg, "A_KERFS");
    ASSERT_GT(kerfs.size(), 50U);
    const auto sheets = printed_kerfs(laid_out(folder / "job.toml"), apart(kerfs[0][0], kerfs[0][1]));
    ASSERT_GE(sheets.size(), 5U);
    std::size_t seen = 0;
    for (const auto& sheet : sheets) {
        double least = 1e9;
        for (std::size_t first = 0; first + sheet.size() <= kerfs.size(); ++first)
            least = std::min(least, off(sheet, kerfs, first));
        EXPECT_LT(least, 0.01) << "a sheet with " << sheet.size() << " kerfs";
        seen += sheet.size();
    }
    EXPECT_GE(seen, kerfs.size());
}

}  // namespace
}  // namespace kerfpacket::tests
