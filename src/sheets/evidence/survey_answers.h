#pragma once
// The answers to measured ordinates as figures and sentences, for the survey sheet and the command line.

#include <string>
#include <vector>

#include "plan/piece.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// A curve through measured points and how far they miss it.
struct Answer {
    job::Fit fit = job::Fit::fair;
    const curve::Misses* misses = nullptr;
    Length rms;  ///< root of the mean square
};

/// Circle, ellipse, fair curve: those that there are.
std::vector<Answer> answers(const curve::Survey& survey);

/// Those that no such curve answers.
std::vector<job::Fit> unanswered(const curve::Survey& survey);

/// A point as a tape reads it: how far along, how far off the base line.
struct Reading {
    Length station;
    Length height;
};
/// A point of the survey's frame: its station on the job's tape, its height from the first measured point, to the side
/// to which the curve bulges.
Reading reading(const plan::Piece& piece, plan::Point point);
/// Of a measured point.
Reading reading(const plan::Piece& piece, std::size_t point);

/// "circle", "ellipse", "fair curve".
std::string fit_name(job::Fit fit, const Kit& kit);
/// With its sign: thousandths of an inch, tenths of a millimetre; "0" where it is less than half of one.
std::string miss_text(Length miss, const Tape& tape);
/// Without a sign.
std::string rms_text(const Answer& answer, const Tape& tape);
/// The measure of a curve: "R 38-1/2 in, centre 35 along, 25 below the base line".
std::string answer_text(const plan::Piece& piece, job::Fit fit, const Kit& kit, const Tape& tape);
/// The same of an ellipse, without its center.
std::string brief_answer_text(const plan::Piece& piece, job::Fit fit, const Kit& kit, const Tape& tape);
/// What is recommended and why, and what the job uses.
std::string recommendation(const plan::Piece& piece, const Kit& kit, const Tape& tape);
/// How far the fair curve is to be trusted between the stations: what the others alone make of a point.
std::string left_out_text(const plan::Piece& piece, const Kit& kit, const Tape& tape);
/// The point that all others contradict; empty when there is none.
std::string suspect_text(const plan::Piece& piece, const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
