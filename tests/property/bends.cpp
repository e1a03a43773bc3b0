// The bend over random boards, inside the range for which its formulas were checked.

#include <gtest/gtest.h>

#include "../support/jobs.h"
#include "arbitrary.h"
#include "bend/assess.h"
#include "plan/plan.h"

namespace kerfpacket {
namespace {

using tests::between;

bend::Cell cell(double depth, double kerf, double spacing) {
    const auto thickness = measure::Length::mm(19);
    return {thickness, thickness * depth, thickness * kerf, thickness * spacing};
}

/// Settings in the checked range, with land left between the kerfs.
bend::Cell any_cell() {
    const double kerf = *between(0.08, 0.25);
    return cell(*between(0.3, 0.9), kerf, *between(kerf / 0.85, 4));
}

bend::Material any_material() { return *rc::gen::elementOf(bend::materials()); }

// Deeper kerfs ease the strain where they stand close, as in common practice. Far apart they do not: a lone deep kerf
// takes the bend of a long stretch. So the claim is made for spacings up to one and a half thicknesses (the formula
// keeps it up to 1.75).
RC_GTEST_PROP(Bends, strain_falls_as_depth_grows, ()) {
    const double kerf = *between(0.08, 0.25);
    const double spacing = *between(kerf / 0.85, 1.5);
    const double depth = *between(0.3, 0.85);
    const double softness = any_material().softness;
    const auto radius = measure::Length::mm(1000);
    RC_ASSERT(bend::web_strain(cell(depth + 0.05, kerf, spacing), softness, radius) <
              bend::web_strain(cell(depth, kerf, spacing), softness, radius));
}

RC_GTEST_PROP(Bends, stiffness_and_hinge_are_bounded, ()) {
    const bend::Cell c = any_cell();
    const double softness = any_material().softness;
    const double web = c.web() / c.thickness;
    const double ratio = bend::stiffness_ratio(c, softness);
    // Between a board planed down to the web all along and a whole one.
    RC_ASSERT(web * web * web <= ratio && ratio < 1);
    RC_ASSERT(c.kerf < bend::hinge_length(c, softness) && bend::hinge_length(c, softness) < c.spacing);
    RC_ASSERT(bend::length_keeping_depth(c, softness) > c.web() / 2);
    RC_ASSERT(bend::length_keeping_depth(c, softness) < c.thickness / 2);
}

RC_GTEST_PROP(Bends, least_radius_is_where_strain_meets_its_limit, ()) {
    const bend::Cell c = any_cell();
    const bend::Material material = any_material();
    const auto side = *rc::gen::element(bend::KerfsOn::inside, bend::KerfsOn::outside);
    const auto radius = measure::Length::mm(*between(100, 9000));
    const bend::Assessment a = bend::assess(c, material, side, radius, measure::Angle::degrees(90), 50);
    RC_ASSERT(std::abs(bend::web_strain(c, material.softness, a.least_radius) / a.strain_limit - 1) < 1e-9);
    RC_ASSERT(std::abs(a.utilisation - a.least_radius / radius) < 1e-9 * a.utilisation);
    if (a.utilisation > bend::caution_up_to) RC_ASSERT(a.verdict == bend::Verdict::break_likely);
    if (a.utilisation > bend::ok_up_to) RC_ASSERT(a.verdict != bend::Verdict::ok);
    RC_ASSERT((a.verdict == bend::Verdict::ok) == a.concerns.empty());
}

job::Wall any_wall() {
    job::Wall wall = tests::fern_street();
    wall.radius->value = measure::Length::mm(*between(300, 8000));
    wall.angle->value = measure::Angle::degrees(*between(5, 170));
    wall.side.value = *rc::gen::element(job::Side::concave, job::Side::convex);
    wall.measured_to = *rc::gen::element(job::Surface::wall, job::Surface::finish);
    wall.tails = {tests::at_line(measure::Length::mm(*between(0, 900)), 15),
                  tests::at_line(measure::Length::mm(*between(0, 900)), 15)};
    wall.board.zero = *rc::gen::element(job::End::left, job::End::right);
    wall.board.trim.value = measure::Length::mm(*between(0, 100));
    return wall;
}

RC_GTEST_PROP(Pieces, blank_is_longer_than_its_face_with_kerfs_outside_and_shorter_inside, ()) {
    const job::Wall wall = any_wall();
    const auto plan = plan::make_plan(tests::job_of(wall));
    RC_ASSERT(plan.has_value());
    const plan::Piece& piece = plan->pieces.at(0);
    const measure::Length more = piece.blank().length - 2 * piece.blank().trims[0] - piece.blank().finish_length;
    // The face is on the outside of the bend when the kerfs are inside.
    RC_ASSERT((more.mm() > 0) == (wall.side.value == job::Side::concave));
    RC_ASSERT(measure::abs(more) < piece.turn.radians() * piece.cut.thickness / 2);
}

RC_GTEST_PROP(Pieces, every_point_of_the_bend_has_a_kerf_within_half_a_spacing, ()) {
    const auto plan = plan::make_plan(tests::job_of(any_wall()));
    RC_ASSERT(plan.has_value());
    const plan::Piece& piece = plan->pieces.at(0);
    const auto hair = measure::Length::mm(1e-6);
    const auto half = piece.cut.spacing / 2;
    const auto first = piece.blank().kerfs.front().at;
    const auto last = piece.blank().kerfs.back().at;
    // Where the board itself ends too soon, as far as wood goes.
    RC_ASSERT(first <= std::max(piece.blank().bend_start + half, piece.cut.kerf + piece.cut.spacing) + hair);
    RC_ASSERT(last >=
              std::min(piece.blank().bend_end - half, piece.blank().length - piece.cut.kerf - piece.cut.spacing) -
                  hair);
    // And no kerf stands where there is nothing for it to turn, or off the board.
    RC_ASSERT(first >= piece.blank().bend_start - half - hair && first >= piece.cut.kerf - hair);
    RC_ASSERT(last <= piece.blank().bend_end + half + hair && last <= piece.blank().length - piece.cut.kerf + hair);
    for (std::size_t i = 0; i < piece.blank().kerfs.size(); ++i) {
        const double multiple = piece.blank().kerfs[i].at / piece.cut.spacing;
        RC_ASSERT(std::abs(multiple - std::round(multiple)) < 1e-9);
        RC_ASSERT(piece.blank().kerfs[i].n == static_cast<int>(i) + 1);
    }
    RC_ASSERT(std::abs(piece.bend.turn_per_kerf.radians() * double(piece.blank().kerfs.size()) - piece.turn.radians()) <
              1e-9);
}

// Which end is zero changes the numbering, never the board: lengths stay, tails change ends.
RC_GTEST_PROP(Pieces, zero_end_changes_no_length, ()) {
    job::Wall wall = any_wall();
    wall.board.zero = job::End::left;
    const auto left = plan::make_plan(tests::job_of(wall));
    wall.board.zero = job::End::right;
    const auto right = plan::make_plan(tests::job_of(wall));
    RC_ASSERT(left.has_value() && right.has_value());
    const plan::Piece& a = left->pieces.at(0);
    const plan::Piece& b = right->pieces.at(0);
    RC_ASSERT(measure::abs(a.blank().length - b.blank().length).mm() < 1e-9);
    RC_ASSERT(a.blank().tails[0] == b.blank().tails[1] && a.blank().tails[1] == b.blank().tails[0]);
    RC_ASSERT(std::get<plan::WallLines>(a.lines).finish == std::get<plan::WallLines>(b.lines).finish);
}

}  // namespace
}  // namespace kerfpacket
