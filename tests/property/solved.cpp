// Depth and spacing left to the program, over random bends: what is called ok is ok, kerfs of a curve turned end for
// end are the mirror image, and their turns add up.

#include <cmath>

#include <gtest/gtest.h>

#include "../support/jobs.h"
#include "arbitrary.h"
#include "plan/plan.h"

namespace kerfpacket {
namespace {

using measure::Length;
using tests::between;

/// Everything that can set the bend's limits, by chance.
job::Job any_job(job::Board board) {
    board.material.value = *rc::gen::elementOf(
        std::vector<std::string>{"mdf", "mdf", "yellow-poplar", "red-oak", "white-pine", "hard-maple", "plywood"});
    board.thickness.value = Length::mm(*between(6, 40));
    board.trim.value = Length::mm(*between(10, 100));
    board.zero = job::End::left;
    job::Job job = tests::empty_job();
    job.saw.kerf.value = Length::mm(*between(1.5, 4.5));
    job.header.units = *rc::gen::element(measure::Unit::inch, measure::Unit::millimetre);
    job.walls.push_back(tests::fern_street());
    job.walls[0].board = tests::solved(board);
    return job;
}

job::Job any_arc() {
    job::Job job = any_job(tests::mdf_board());
    job.walls[0].radius->value = Length::mm(*between(150, 4000));
    job.walls[0].angle->value = measure::Angle::degrees(*between(20, 170));
    job.walls[0].side.value = *rc::gen::element(job::Side::concave, job::Side::convex);
    return job;
}

job::Job any_ellipse() {
    job::Job job = any_job(tests::mdf_board());
    job::Opening opening = tests::quarry_road();
    // Not so tight that nearly all are refused.
    job.walls[0].board.thickness.value = Length::mm(*between(6, 20));
    opening.span.value = Length::mm(*between(1500, 4500));
    opening.rise.value = opening.span.value * *between(0.2, 0.5);
    opening.legs.reset();
    opening.liner = job.walls[0].board;
    job.walls.clear();
    job.openings.push_back(opening);
    return job;
}

/// Of a chosen board everything is ok but what no setting can change.
void judge(const plan::Piece& piece) {
    using bend::Concern;
    for (const plan::Kerf& kerf : piece.blank().kerfs) RC_ASSERT(kerf.utilisation <= bend::ok_up_to + 1e-12);
    for (const Concern concern : piece.bend.concerns)
        RC_ASSERT(concern == Concern::grain_may_split || concern == Concern::kerf_out_of_range ||
                  concern == Concern::spacing_out_of_range || concern == Concern::land_out_of_range);
    RC_ASSERT(piece.cut.web() >= bend::thin_web - Length::mm(0.002));
    RC_ASSERT(piece.weak_links.empty());
}

void solved_is_ok(const job::Job& job) {
    const auto plan = plan::make_plan(job);
    RC_CLASSIFY(!plan.has_value(), "refused");
    if (!plan) {
        RC_ASSERT(!plan.error().front().hint.empty());
        return;
    }
    const plan::Piece& piece = plan->pieces.at(0);
    RC_CLASSIFY(piece.settings.rule == plan::Rule::least_strain, "nothing is ok");
    RC_ASSERT(piece.settings.rule != plan::Rule::given);
    if (piece.settings.rule == plan::Rule::least_strain) RC_ASSERT(piece.bend.verdict == bend::Verdict::caution);
    else judge(piece);
    // Turns add up to the curve's.
    double turned = 0;
    for (const plan::Kerf& kerf : piece.blank().kerfs) turned += kerf.turn.radians();
    RC_ASSERT(std::abs(turned - piece.turn.radians()) < 1e-9);
}

RC_GTEST_PROP(Solved, arcs_are_ok_by_the_checker, ()) { solved_is_ok(any_arc()); }

RC_GTEST_PROP(Solved, ellipses_are_ok_by_the_checker, ()) { solved_is_ok(any_ellipse()); }

// Half an ellipse is its own mirror image, an arc with tails is when the tails change ends.
void is_mirrored(const plan::Piece& a, const plan::Piece& b) {
    RC_ASSERT(a.blank().kerfs.size() == b.blank().kerfs.size());
    RC_ASSERT(a.cut.depth == b.cut.depth);
    for (std::size_t i = 0; i < a.blank().kerfs.size(); ++i) {
        const plan::Kerf& other = b.blank().kerfs[b.blank().kerfs.size() - 1 - i];
        RC_ASSERT(std::abs((a.blank().kerfs[i].at + other.at - a.blank().length).mm()) < 1e-5);
        RC_ASSERT(std::abs((a.blank().kerfs[i].turn - other.turn).radians()) < 1e-8);
    }
}

RC_GTEST_PROP(Solved, a_curve_turned_end_for_end_has_mirrored_kerfs, ()) {
    job::Job job = any_arc();
    job.walls[0].tails = {tests::at_line(Length::mm(*between(0, 500)), 15),
                          tests::at_line(Length::mm(*between(0, 500)), 15)};
    const auto one = plan::make_plan(job);
    std::swap(job.walls[0].tails[0], job.walls[0].tails[1]);
    const auto other = plan::make_plan(job);
    RC_ASSERT(one.has_value() == other.has_value());
    if (one) is_mirrored(one->pieces.at(0), other->pieces.at(0));
    const auto ellipse = plan::make_plan(any_ellipse());
    if (ellipse) is_mirrored(ellipse->pieces.at(0), ellipse->pieces.at(0));
}

}  // namespace
}  // namespace kerfpacket
