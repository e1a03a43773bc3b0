#pragma once
// Jobs built in code, for tests of the rooms that come after the job reader. All invented.

#include <string>

#include "job/job.h"

namespace kerfpacket::tests {

using namespace measure::literals;

template <class T>
job::Sourced<T> at_line(T value, int line) {
    return {value, {line, 1}};
}

/// 3/4 in MDF, half depth and a kerf every half inch, both given.
inline job::Board mdf_board(measure::Length width = 7.25_in, measure::Length trim = 4_in) {
    job::Board board;
    board.material = at_line<std::string>("mdf", 31);
    board.thickness = at_line(0.75_in, 32);
    board.width = at_line(width, 33);
    board.trim = at_line(trim, 34);
    board.kerf_depth.half = true;
    board.kerf_depth.at = {35, 1};
    board.spacing.given = 0.5_in;
    board.spacing.at = {36, 1};
    return board;
}

/// Depth and spacing left to the program.
inline job::Board solved(job::Board board) {
    board.kerf_depth = {};
    board.spacing = {};
    return board;
}

inline job::Job empty_job() {
    job::Job job;
    job.header.number = "T-1";
    job.saw.blade_diameter = at_line(12_in, 2);
    job.saw.kerf = at_line(0.118_in, 3);
    job.fingerprint = "0123abcd";
    return job;
}

/// Concave base, chord 214, rise 31-1/4, trim 4.
inline job::Wall harbor_stair() {
    job::Wall wall;
    wall.id = at_line<std::string>("B", 11);
    wall.chord = at_line(214_in, 12);
    wall.rise = at_line(31.25_in, 13);
    wall.side = at_line(job::Side::concave, 14);
    wall.board = mdf_board();
    return wall;
}

/// Concave hall base, radius 20 ft, 30 degrees, tails 4 ft and 6 ft.
inline job::Wall fern_street() {
    job::Wall wall = harbor_stair();
    wall.id.value = "H";
    wall.chord.reset();
    wall.rise.reset();
    wall.radius = at_line(240_in, 12);
    wall.angle = at_line(measure::Angle::degrees(30), 13);
    wall.tails = {at_line(48_in, 15), at_line(72_in, 15)};
    return wall;
}

/// Segmental liner, span 70, rise 13-1/2.
inline job::Opening lantern_court() {
    job::Opening opening;
    opening.id = at_line<std::string>("A", 21);
    opening.shape = at_line(job::Shape::segmental, 22);
    opening.span = at_line(70_in, 23);
    opening.rise = at_line(13.5_in, 24);
    opening.liner = mdf_board(5.25_in, 3_in);
    return opening;
}

inline job::Opening semicircle(measure::Length span) {
    job::Opening opening = lantern_court();
    opening.shape.value = job::Shape::semicircular;
    opening.span.value = span;
    opening.rise.value = span / 2;
    return opening;
}

/// Pointed niche, span 38-1/2, radius 46, legs 61-1/4, measured to the finished opening.
inline job::Opening alder_court() {
    job::Opening opening = lantern_court();
    opening.id.value = "N";
    opening.shape.value = job::Shape::pointed;
    opening.span.value = 38.5_in;
    opening.rise = {};
    opening.radius = at_line(46_in, 24);
    opening.legs = {{at_line(61.25_in, 25), at_line(61.25_in, 25)}};
    opening.measured_to = job::Surface::finish;
    opening.liner = solved(mdf_board(7.125_in, 3_in));
    return opening;
}

/// Elliptical liner, span 84-1/4, rise 21-1/2, spring heights 72-1/8 and 72, measured to the wall.
inline job::Opening quarry_road() {
    job::Opening opening = lantern_court();
    opening.id.value = "Q";
    opening.shape.value = job::Shape::elliptical;
    opening.span.value = 84.25_in;
    opening.rise.value = 21.5_in;
    opening.legs = {{at_line(72.125_in, 25), at_line(72_in, 25)}};
    opening.liner = solved(opening.liner);
    return opening;
}

/// A low head that ends in reverse curves.
inline job::Opening eyebrow() {
    job::Opening opening = lantern_court();
    opening.id.value = "E";
    opening.shape.value = job::Shape::eyebrow;
    opening.span.value = 88_in;
    opening.rise.value = 11.5_in;
    opening.liner = solved(opening.liner);
    return opening;
}

/// One curved wall run of a house of many, radius 60, 90 degrees, concave.
inline job::Wall tannery_row() {
    job::Wall wall = harbor_stair();
    wall.id.value = "T";
    wall.chord.reset();
    wall.rise.reset();
    wall.radius = at_line(60_in, 12);
    wall.angle = at_line(measure::Angle::degrees(90), 13);
    return wall;
}

inline job::Job job_of(job::Wall wall) {
    job::Job job = empty_job();
    job.walls.push_back(std::move(wall));
    return job;
}

inline job::Job job_of(job::Opening opening) {
    job::Job job = empty_job();
    job.openings.push_back(std::move(opening));
    return job;
}

}  // namespace kerfpacket::tests
