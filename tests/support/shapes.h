#pragma once
// Openings of every shape and walls by ordinates, for tests of the sheets. All invented.

#include <cmath>
#include <string>
#include <vector>

#include "support/jobs.h"

namespace kerfpacket::tests {

/// Deep kerfs: these bends are tighter than those of half depth.
inline job::Board deep_board(measure::Length width = 5.25_in) {
    job::Board board = mdf_board(width, 3_in);
    board.kerf_depth.given = 0.625_in;
    return board;
}

inline job::Opening shaped(const char* id, job::Shape shape, measure::Length span, measure::Length rise) {
    job::Opening opening = lantern_court();
    opening.id.value = id;
    opening.shape.value = shape;
    opening.span.value = span;
    opening.rise.value = rise;
    opening.liner = deep_board();
    // One of them has kerfs that stand closer where it is tighter.
    if (shape == job::Shape::elliptical) opening.liner.spacing = {};
    return opening;
}

inline job::Opening pointed(const char* id, measure::Length span, measure::Length radius) {
    job::Opening opening = shaped(id, job::Shape::pointed, span, {});
    opening.rise = {};
    opening.radius = at_line(radius, 24);
    return opening;
}

/// Stations every `step`, heights given in inches.
inline job::Ordinates ordinates_of(measure::Length step, const std::vector<double>& heights) {
    job::Ordinates ordinates;
    for (std::size_t i = 0; i < heights.size(); ++i)
        ordinates.points.push_back(
            {at_line(step * static_cast<double>(i), 40), at_line(measure::Length::inches(heights[i]), 40)});
    return ordinates;
}

/// A plastered head, 60 wide, near a flat ellipse.
inline job::Opening plastered(std::vector<double> heights = {0, 9.5, 13.375, 15.875, 17.25, 17.75, 17.25, 15.5, 12.75,
                                                             8.75, 0}) {
    job::Opening opening = shaped("O", job::Shape::ordinates, 60_in, {});
    opening.rise = {};
    opening.ordinates = ordinates_of(60_in / static_cast<double>(heights.size() - 1), heights);
    return opening;
}

/// Heights of an arc of radius 50 over 72, to sixteenths, with one of them mistyped by 3/4 in at station 24.
inline job::Opening mistyped() {
    std::vector<double> heights;
    for (int i = 0; i <= 24; ++i) {
        const double x = i * 3 - 36;
        heights.push_back(std::round((std::sqrt(2500 - x * x) - std::sqrt(2500.0 - 36 * 36)) * 16) / 16);
    }
    heights[8] += 0.75;
    job::Opening opening = plastered(heights);
    opening.id.value = "P";
    opening.span.value = 72_in;
    opening.ordinates = ordinates_of(3_in, heights);
    return opening;
}

/// A wall that swings to both sides of its string.
inline job::Wall swinging(measure::Length amount = 6_in, std::size_t stations = 41) {
    std::vector<double> heights;
    for (std::size_t i = 0; i < stations; ++i)
        heights.push_back(amount.inches() *
                          std::sin(2 * 3.14159265358979 * static_cast<double>(i) / static_cast<double>(stations - 1)));
    job::Wall wall = harbor_stair();
    wall.id.value = "W";
    wall.chord.reset();
    wall.rise.reset();
    wall.ordinates = ordinates_of(100_in / static_cast<double>(stations - 1), heights);
    wall.tails = {at_line(12_in, 15), at_line(0_in, 15)};
    wall.board = deep_board();
    return wall;
}

inline std::vector<job::Opening> openings_of_every_shape() {
    using job::Shape;
    std::vector<job::Opening> all{shaped("A", Shape::segmental, 60_in, 12_in),
                                  shaped("B", Shape::semicircular, 60_in, 30_in),
                                  shaped("C", Shape::elliptical, 60_in, 20_in),
                                  shaped("D", Shape::three_centred, 60_in, 20_in),
                                  pointed("E", 60_in, 60_in),
                                  pointed("F", 60_in, 48_in),
                                  pointed("G", 40_in, 67.5_in),
                                  shaped("H", Shape::tudor, 60_in, 20_in),
                                  shaped("I", Shape::parabolic, 60_in, 24_in),
                                  shaped("J", Shape::catenary, 60_in, 30_in),
                                  shaped("K", Shape::horseshoe, 50_in, 36_in),
                                  shaped("L", Shape::eyebrow, 80_in, 14_in),
                                  plastered(),
                                  mistyped()};
    const auto legs = [](measure::Length left, measure::Length right) {
        return std::array{at_line(left, 25), at_line(right, 25)};
    };
    for (std::size_t i = 0; i < all.size(); i += 2) all[i].legs = legs(72_in, 72_in);
    all.push_back(shaped("M", Shape::segmental, 60_in, 12_in));
    all.back().legs = legs(72_in, 66_in);
    all.back().through_legs = true;
    all.push_back(shaped("N", Shape::elliptical, 60_in, 20_in));
    all.back().legs = legs(60_in, 64_in);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (i % 3 == 0) all[i].measured_to = job::Surface::finish;
        if (i % 2 == 1) all[i].liner.zero = job::End::right;
    }
    return all;
}

/// One job of all of them, walls included.
inline job::Job every_shape() {
    job::Job job = empty_job();
    job.openings = openings_of_every_shape();
    job.walls = {swinging(), fern_street()};
    return job;
}

}  // namespace kerfpacket::tests
