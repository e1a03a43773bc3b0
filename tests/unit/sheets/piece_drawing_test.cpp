#include "sheets/drawings/piece_drawing.h"

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "support/kit.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;
using page::TextItem;

struct Size {
    double width;
    double height;
};

/// From the smallest the cover gives to the largest, in points.
const std::vector<Size> sizes{{162, 78}, {160, 90}, {258, 110}, {258, 186}, {250, 270}, {540, 186}};

std::vector<plan::Piece> pieces() {
    std::vector<job::Opening> openings{lantern_court(), semicircle(36_in), lantern_court(), lantern_court(),
                                       lantern_court()};
    openings[2].legs = {{at_line(80_in, 53), at_line(80_in, 53)}};
    openings[2].casing =
        job::Casing{at_line(3.5_in, 51), at_line(0.25_in, 52), job::WallSide::room, at_line(3, 53), {}};
    openings[3].span.value = 14_in;
    openings[3].rise.value = 5_in;
    openings[3].legs = {{at_line(60_in, 53), at_line(60_in, 53)}};
    openings[4].span.value = 118_in;
    openings[4].rise.value = 8_in;
    openings[4].measured_to = job::Surface::finish;
    std::vector<plan::Piece> all;
    for (const job::Opening& opening : openings) all.push_back(planned(job_of(opening)).pieces.front());
    job::Wall convex = fern_street();
    convex.side.value = job::Side::convex;
    job::Wall column = convex;
    column.angle = at_line(measure::Angle::degrees(140), 13);
    column.radius = at_line(60_in, 12);
    column.tails = {at_line(24_in, 15), at_line(9_in, 15)};
    for (const job::Wall& wall : {harbor_stair(), fern_street(), convex, column})
        all.push_back(planned(job_of(wall)).pieces.front());
    for (const job::Opening& opening : openings_of_every_shape())
        all.push_back(planned(job_of(opening)).pieces.front());
    all.push_back(planned(job_of(swinging())).pieces.front());
    job::Wall outward = swinging();
    outward.side.value = job::Side::convex;
    all.push_back(planned(job_of(outward)).pieces.front());
    return all;
}

struct Drawn {
    page::Page page;
    Rect space;
};

Drawn drawn(const plan::Piece& piece, Size size) {
    Drawn result;
    result.page.width = 612_pt;
    result.page.height = 792_pt;
    result.space = {{36_pt, 300_pt}, {Length::points(36 + size.width), Length::points(300 + size.height)}};
    Pen pen(result.page, kit());
    draw_piece(pen, result.space, piece, Tape(measure::Unit::inch));
    return result;
}

std::string where(const plan::Piece& piece, Size size) {
    return piece.id + " span " + std::to_string(piece.measured_span.inches()) + " in " + std::to_string(size.width) +
           " x " + std::to_string(size.height);
}

TEST(PieceDrawing, stays_in_its_space) {
    for (const plan::Piece& piece : pieces()) {
        for (const Size size : sizes) {
            const Drawn d = drawn(piece, size);
            const Rect allowed = d.space.grown(0.01_pt);
            for (const page::Item& item : d.page.items) {
                if (const auto* path = std::get_if<page::PathItem>(&item)) {
                    const Rect box = path->path.bounds();
                    EXPECT_TRUE(allowed.contains(box.low) && allowed.contains(box.high))
                        << where(piece, size) << " " << page::role_name(path->role);
                } else if (const auto* text = std::get_if<TextItem>(&item)) {
                    for (const Point p : grid(*text))
                        ASSERT_TRUE(allowed.contains(p)) << where(piece, size) << text->text;
                }
            }
        }
    }
}

TEST(PieceDrawing, words_touch_neither_each_other_nor_the_wood) {
    for (const plan::Piece& piece : pieces()) {
        for (const Size size : sizes) {
            const Drawn d = drawn(piece, size);
            const std::vector<TextItem> all = texts(d.page);
            for (const TextItem& text : all) {
                const std::vector<Point> ink = grid(text);
                for (const TextItem& other : all)
                    if (&other != &text) {
                        EXPECT_TRUE(std::none_of(ink.begin(), ink.end(), [&](Point p) { return covers(other, p); }))
                            << where(piece, size) << ": " << text.text << " / " << other.text;
                    }
                for (const page::Role role : {page::Role::outline, page::Role::dimension, page::Role::centre})
                    for (const page::PathItem& item : paths(d.page, role))
                        ASSERT_FALSE(crosses(item.path, text))
                            << where(piece, size) << ": " << text.text << " / " << page::role_name(role);
            }
        }
    }
}

TEST(PieceDrawing, always_gives_the_measured_figures) {
    for (const plan::Piece& piece : pieces()) {
        for (const Size size : sizes) {
            std::set<std::string> all;
            for (const TextItem& text : texts(drawn(piece, size).page)) all.insert(text.text);
            const Tape tape(measure::Unit::inch);
            const bool opening = piece.kind == plan::Kind::arch_liner;
            EXPECT_TRUE(all.count((opening ? "span " : "chord ") + tape.with_unit(piece.measured_span)))
                << where(piece, size);
            EXPECT_TRUE(all.count("rise " + tape.plain(piece.measured_rise))) << where(piece, size);
        }
    }
}

TEST(PieceDrawing, gives_legs_tails_and_radius_where_there_is_room) {
    const auto words = [](const plan::Piece& piece) {
        std::set<std::string> all;
        for (const TextItem& text : texts(drawn(piece, {258, 186}).page)) all.insert(text.text);
        return all;
    };
    const std::vector<plan::Piece> all = pieces();
    EXPECT_TRUE(words(all[2]).count("legs 80"));
    // R = (70^2 + 4 x 13.5^2)/(8 x 13.5) = 52.12
    EXPECT_TRUE(words(all[0]).count("R 52-1/8"));
    EXPECT_TRUE(words(all[6]).count("tail 48"));
    EXPECT_TRUE(words(all[6]).count("tail 72"));
    EXPECT_TRUE(words(all[6]).count("board seen from inside the curve"));
    EXPECT_TRUE(words(all[7]).count("board seen from outside the curve"));
    // 240 x pi/6 = 125.66
    EXPECT_TRUE(words(all[6]).count("R 240    arc 125-11/16"));
}

std::set<std::string> words_on(const plan::Piece& piece, Size size = {258, 186}) {
    std::set<std::string> all;
    for (const TextItem& text : texts(drawn(piece, size).page)) all.insert(text.text);
    return all;
}

TEST(PieceDrawing, legs_of_two_lengths_have_each_its_figure) {
    for (const Size size : sizes) {
        job::Opening opening = quarry_road();
        opening.legs = {{at_line(72.125_in, 25), at_line(72_in, 25)}};
        const std::set<std::string> all = words_on(planned(job_of(opening)).pieces.front(), size);
        EXPECT_TRUE(all.count("legs 72-1/8"));
        EXPECT_TRUE(all.count("legs 72"));
    }
}

TEST(PieceDrawing, a_curve_of_many_radii_gives_none_and_one_of_arcs_gives_each) {
    const auto radii = [](const job::Opening& opening) {
        std::vector<std::string> found;
        for (const std::string& text : words_on(planned(job_of(opening)).pieces.front(), {540, 226}))
            if (text.starts_with("R ")) found.push_back(text);
        return found;
    };
    EXPECT_TRUE(radii(shaped("C", job::Shape::elliptical, 60_in, 20_in)).empty());
    // Side and crown arc of a three-centred head: R = (a^2 + b^2 - 2 a r)/(2 (b - r)) with a = 30, b = 20, r = 15:
    // (900 + 400 - 900)/10 = 40.
    job::Opening basket = shaped("D", job::Shape::three_centred, 60_in, 20_in);
    basket.side_radius = at_line(15_in, 26);
    EXPECT_EQ(radii(basket), (std::vector<std::string>{"R 15", "R 40"}));
    EXPECT_EQ(radii(pointed("E", 60_in, 60_in)), (std::vector<std::string>{"R 60"}));
}

TEST(PieceDrawing, a_wall_by_ordinates_gives_its_length_but_no_radius) {
    const std::set<std::string> all = words_on(planned(job_of(swinging())).pieces.front());
    EXPECT_TRUE(std::none_of(all.begin(), all.end(), [](const std::string& t) { return t.starts_with("R "); }));
    // 6 sin(2 pi x/100) from 0 to 100: the length is the integral of sqrt(1 + (0.12 pi)^2 cos^2 t) 100/(2 pi) dt, a
    // complete elliptic integral [computed by the midpoint rule: 103.464]; the fair curve may be a little shorter.
    EXPECT_TRUE(all.count("arc 103-7/16") || all.count("arc 103-3/8"));
    EXPECT_TRUE(all.count("chord 100 in"));
    EXPECT_TRUE(all.count("tail 12"));
}

TEST(WallDrawing, BothStraightEndsAreTold) {
    // A long and a short one beside a flat curve, in the room that the cover gives to one of three.
    job::Wall wall = fern_street();
    wall.side.value = job::Side::concave;
    wall.radius = at_line(89.125_in, 12);
    wall.angle = at_line(measure::Angle::degrees(88), 13);
    wall.tails = {at_line(25_in, 15), at_line(5_in, 15)};
    const plan::Piece piece = planned(job_of(wall)).pieces.front();
    for (const Size size : {Size{258, 150}, Size{258, 226}, Size{250, 158}}) {
        page::Page page;
        page.width = 612_pt;
        page.height = 792_pt;
        Pen pen(page, kit());
        draw_piece(pen, {{36_pt, 100_pt}, {36_pt + Length::points(size.width), 100_pt + Length::points(size.height)}},
                   piece, Tape(measure::Unit::inch, kit().words));
        std::set<std::string> words;
        for (const page::TextItem& text : texts(page)) words.insert(text.text);
        for (const char* length : {"25", "5"})
            EXPECT_TRUE(words.contains(kit().words("drawing.tail", {{"length", length}})))
                << length << " in " << size.width << " x " << size.height;
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
