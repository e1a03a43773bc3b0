// Folds the blank at its kerfs, facet by facet, and compares the seen face with the curve that was wanted.

#include <cmath>

#include <gtest/gtest.h>

#include "../support/jobs.h"
#include "measure/require.h"
#include "plan/plan.h"

namespace kerfpacket {
namespace {

using measure::Angle;
using measure::Length;

/// What a bent board is off its curve by.
struct Misfit {
    Length face;           ///< the seen face off the finish circle, anywhere
    Length end;            ///< the end of the bend off where the curve ends
    double turn_left = 0;  ///< radians by which the kerfs' turns miss the whole turn
};

/// Folds about hinges in the middle of the web. Each kerf turns by the stretch of the bend that is nearest to it. The
/// centre of the wanted curve is the origin; the bend starts on the x axis.
Misfit fold(const plan::Piece& piece) {
    const Length to_hinge = piece.web() / 2;
    const double outward = piece.kerfs_on == bend::KerfsOn::outside ? 1 : -1;
    const Length hinge_radius = piece.finish_radius + to_hinge * outward;
    geom::Point at{hinge_radius, {}};
    Angle heading = Angle::degrees(90);
    Length along = piece.bend_start;
    Misfit misfit;
    const auto advance = [&](Length to) {
        // The middle and the ends of each facet of the face, which lies beside the hinge line.
        const auto direction = geom::Direction::at(heading);
        const geom::Point to_face = direction.left() * (to_hinge * outward);
        for (const double share : {0.0, 0.5, 1.0}) {
            const geom::Point face = at + direction * ((to - along) * share) + to_face;
            misfit.face = std::max(misfit.face, measure::abs(geom::distance({}, face) - piece.finish_radius));
        }
        at = at + direction * (to - along);
        along = to;
    };
    Length stretch_start = piece.bend_start;
    for (std::size_t i = 0; i < piece.kerfs.size(); ++i) {
        const bool last = i + 1 == piece.kerfs.size();
        const Length stretch_end = last ? piece.bend_end : (piece.kerfs[i].at + piece.kerfs[i + 1].at) / 2;
        advance(piece.kerfs[i].at);
        heading = heading + Angle::radians((stretch_end - stretch_start) / piece.bend_radius);
        stretch_start = stretch_end;
    }
    advance(piece.bend_end);
    const geom::Point wanted_end = geom::Direction::at(piece.turn) * hinge_radius;
    misfit.end = geom::distance(at, wanted_end);
    misfit.turn_left = (heading - Angle::degrees(90) - piece.turn).radians();
    return misfit;
}

plan::Piece piece_of(const job::Job& job) {
    const auto plan = plan::make_plan(job);
    measure::require(plan.has_value(), "the test's job can be planned");
    return plan->pieces.at(0);
}

class Folded : public testing::TestWithParam<job::Job> {};

TEST_P(Folded, lies_within_a_thirty_second_of_its_curve) {
    const Misfit misfit = fold(piece_of(GetParam()));
    EXPECT_LE(misfit.face.inches(), 1.0 / 32);
    EXPECT_LE(misfit.end.inches(), 1.0 / 32);
    EXPECT_NEAR(misfit.turn_left, 0, 1e-9);
    RecordProperty("face_in", std::to_string(misfit.face.inches()));
    RecordProperty("end_in", std::to_string(misfit.end.inches()));
}

INSTANTIATE_TEST_SUITE_P(Jobs, Folded,
                         testing::Values(tests::job_of(tests::harbor_stair()), tests::job_of(tests::fern_street()),
                                         tests::job_of(tests::lantern_court())));

// A blank cut as long as its face instead would end short: the test above can tell.
TEST(Folded, would_notice_a_blank_as_long_as_its_face) {
    plan::Piece piece = piece_of(tests::job_of(tests::harbor_stair()));
    piece.bend_end = piece.bend_start + measure::arc_length(piece.finish_radius, piece.turn);
    EXPECT_GT(fold(piece).end.inches(), 1.0 / 32);
}

}  // namespace
}  // namespace kerfpacket
