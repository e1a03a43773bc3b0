// Folds the blank at its kerfs, facet by facet, and compares the seen face with the curve that was wanted.

#include <algorithm>
#include <cmath>
#include <ostream>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "../support/jobs.h"
#include "../support/shapes.h"
#include "measure/require.h"
#include "plan/plan.h"

namespace kerfpacket {
namespace {

using measure::Angle;
using measure::Length;
using namespace measure::literals;

/// What a bent board is off its curve by.
struct Misfit {
    Length face;           ///< the face on the form off the form's rib, anywhere
    Length end;            ///< the end of the bend off where the curve ends
    double turn_left = 0;  ///< radians by which the kerfs' turns miss the whole turn
};

Length from_path(const geom::Path& path, geom::Point p) {
    Length least = Length::inches(1e6);
    for (const geom::Segment& s : path.segments()) {
        least = std::min({least, geom::distance(p, s.from), geom::distance(p, s.to)});
        if (s.is_line()) {
            const geom::Direction along = s.start_direction();
            const Length on = (p.x - s.from.x) * along.x + (p.y - s.from.y) * along.y;
            if (on >= Length() && on <= s.length()) least = std::min(least, geom::distance(p, s.from + along * on));
            continue;
        }
        const geom::Point centre = s.centre();
        const double from = geom::direction(centre, s.from).angle().radians();
        const double here = geom::direction(centre, p).angle().radians();
        const double sign = s.turn.radians() > 0 ? 1 : -1;
        const double turned = std::fmod((here - from) * sign + 4 * Angle::pi, 2 * Angle::pi);
        if (turned <= std::abs(s.turn.radians()))
            least = std::min(least, measure::abs(geom::distance(centre, p) - s.radius()));
    }
    return least;
}

/// Folds about hinges in the middle of the web, each kerf by its own share of the turn, and lays the seen face on the
/// line that the plan draws for it. The board is numbered from the left.
Misfit fold(const plan::Piece& piece, const geom::Path& seen) {
    const Length to_hinge = piece.cut.web() / 2;
    geom::Point at = seen.start() + seen.at({}).direction.left() * to_hinge;
    geom::Direction heading = seen.at({}).direction;
    Length along = piece.blank().ends[0].plain_face;
    Misfit misfit;
    double turned = 0;
    const auto advance = [&](Length to) {
        for (const double share : {0.0, 0.5, 1.0}) {
            const geom::Point face = at + heading * ((to - along) * share) - heading.left() * to_hinge;
            misfit.face = std::max(misfit.face, from_path(seen, face));
        }
        at = at + heading * (to - along);
        along = to;
    };
    for (const plan::Kerf& kerf : piece.blank().kerfs) {
        // Travel turns to the right where the kerfs open.
        const Angle turn = kerf.turn * (kerf.on == bend::KerfsOn::outside ? -1.0 : 1.0);
        turned += turn.radians();
        if (kerf.at >= piece.blank().ends[1].plain_face) continue;
        if (kerf.at > along) advance(kerf.at);
        heading = heading.turned(turn);
    }
    advance(piece.blank().ends[1].plain_face);
    misfit.end = geom::distance(at - heading.left() * to_hinge, seen.end());
    // A board that bends both ways turns by the difference; its ends are square.
    misfit.turn_left =
        piece.blank().bends_both_ways() ? turned - seen.turn().radians() : std::abs(turned) - piece.turn.radians();
    return misfit;
}

plan::Piece piece_of(const job::Job& job, std::size_t board = 0) {
    const auto plan = plan::make_plan(job);
    measure::require(plan.has_value(), "the test's job can be planned");
    return plan->pieces.at(board);
}

/// The rib of the bending form is the seen face where kerfs open; a convex wall without tails is drawn alone.
geom::Path seen_face(const plan::Piece& piece) {
    if (piece.side == job::Side::convex) return std::get<plan::WallLines>(piece.lines).finish;
    return piece.form.value().curve;
}

job::Job formed(job::Opening opening) {
    opening.form.emplace();
    return tests::job_of(std::move(opening));
}
job::Job formed(job::Wall wall) {
    wall.form.emplace();
    return tests::job_of(std::move(wall));
}

struct Bent {
    std::string name;
    job::Job job;
    std::size_t board = 0;
};
// GoogleTest looks for a function of this name.
// NOLINTNEXTLINE(readability-identifier-naming)
void PrintTo(const Bent& bent, std::ostream* out) { *out << bent.name; }

std::vector<Bent> bends() {
    job::Wall convex = tests::harbor_stair();
    convex.side.value = job::Side::convex;
    return {{"harbor_stair", formed(tests::harbor_stair())},    {"fern_street", formed(tests::fern_street())},
            {"tannery_row", formed(tests::tannery_row())},      {"convex", tests::job_of(convex)},
            {"lantern_court", formed(tests::lantern_court())},  {"semicircle", formed(tests::semicircle(60_in))},
            {"alder_court_left", formed(tests::alder_court())}, {"alder_court_right", formed(tests::alder_court()), 1},
            {"quarry_road", formed(tests::quarry_road())},      {"eyebrow", formed(tests::eyebrow())}};
}

/// Tannery Row, a house of twenty-two openings: twelve segmental heads, span 32 to 72 and a rise of a sixth, a
/// semicircular head of 36, wall runs of radius 60 both ways; and Harbor Stair and Fern Street: all with depth and
/// spacing left to the program.
std::vector<Bent> chosen() {
    std::vector<Bent> all;
    const auto add = [&](std::string name, auto made) { all.push_back({std::move(name), formed(std::move(made))}); };
    for (int i = 0; i < 12; ++i) {
        job::Opening head = tests::lantern_court();
        head.span.value = 32_in + 40_in * (i / 11.0);
        head.rise.value = head.span.value / 6;
        head.liner = tests::solved(head.liner);
        add("segmental_" + std::to_string(i), head);
    }
    job::Opening half = tests::semicircle(36_in);
    half.liner = tests::solved(half.liner);
    add("semicircle_36", half);
    for (job::Wall run : {tests::tannery_row(), tests::harbor_stair(), tests::fern_street()}) {
        run.board = tests::solved(run.board);
        add("wall_" + run.id.value, run);
        run.side.value = job::Side::convex;
        run.tails = {};
        all.push_back({"convex_" + run.id.value, tests::job_of(run)});
    }
    return all;
}

class Folded : public testing::TestWithParam<Bent> {};

TEST_P(Folded, lies_within_a_thirty_second_of_its_curve) {
    const plan::Piece piece = piece_of(GetParam().job, GetParam().board);
    const Misfit misfit = fold(piece, seen_face(piece));
    EXPECT_LE(misfit.face.inches(), 1.0 / 32);
    EXPECT_LE(misfit.end.inches(), 1.0 / 32);
    EXPECT_NEAR(misfit.turn_left, 0, 1e-9);
    RecordProperty("face_in", std::to_string(misfit.face.inches()));
    RecordProperty("end_in", std::to_string(misfit.end.inches()));
}

INSTANTIATE_TEST_SUITE_P(Jobs, Folded, testing::ValuesIn(bends()), [](const auto& bent) { return bent.param.name; });

INSTANTIATE_TEST_SUITE_P(Chosen, Folded, testing::ValuesIn(chosen()), [](const auto& bent) { return bent.param.name; });

/// Cuts the board at the kerfs, folds it and lays it on the rib of its form as the form sheet says: with the face it
/// names down, the kerfs of the other face up, the left end at station 0. Looks at the middles of the lands.
Length off_its_rib(const plan::Piece& piece) {
    const plan::FormRib& rib = piece.form.value();
    const bool from_right = piece.blank().zero == job::End::right;
    const auto from_left = [&](Length at) { return from_right ? piece.blank().length - at : at; };
    const plan::BoardEnd& start = piece.blank().ends.at(from_right ? 1 : 0);
    const plan::BoardEnd& end = piece.blank().ends.at(from_right ? 0 : 1);
    const Length first = from_left(rib.at_kerf_face ? start.kerf_face : start.plain_face);
    const Length last = from_left(rib.at_kerf_face ? end.kerf_face : end.plain_face);
    // Above the face that lies down the hinge is in the middle of the web.
    const Length up = rib.at_kerf_face ? piece.cut.thickness - piece.cut.web() / 2 : piece.cut.web() / 2;
    geom::Point at{{}, up};
    geom::Direction heading{1, 0};
    Length along = first;
    std::vector<geom::Point> face{{{}, {}}};
    const auto advance = [&](Length to) {
        face.push_back(at + heading * ((to - along) / 2) - heading.left() * up);
        at = at + heading * (to - along);
        along = to;
    };
    std::vector<plan::Kerf> kerfs = piece.blank().kerfs;
    if (from_right) std::reverse(kerfs.begin(), kerfs.end());
    for (const plan::Kerf& kerf : kerfs) {
        const Length place = std::clamp(from_left(kerf.at), first, last);
        if (place > along) advance(place);
        // A kerf on the upper face that opens lets the board down on both sides of it; so does one below that closes.
        const bool down = (kerf.on == bend::KerfsOn::outside) != rib.at_kerf_face;
        if (from_left(kerf.at) < last) heading = heading.turned(kerf.turn * (down ? -1.0 : 1.0));
    }
    advance(last);
    face.push_back(at - heading.left() * up);
    // Both ends go onto the chord.
    const Angle level = geom::direction(face.front(), face.back()).angle();
    Length off = measure::abs(geom::distance(face.front(), face.back()) - rib.curve.end().x);
    for (const geom::Point p : face) off = std::max(off, from_path(rib.curve, geom::turned(p, -level)));
    return off;
}

TEST(Folded, lies_on_its_rib_whichever_way_it_bends_and_wherever_zero_is) {
    std::vector<job::Wall> walls;
    for (const std::vector<double>& heights :
         {std::vector<double>{0, 4, 6.5, 7, 5.5, 2.5, -0.5, -2.5, -3, -2, 0},   // the larger bulge away from the room
          std::vector<double>{0, -4, -6.5, -7, -5.5, -2.5, 0.5, 2.5, 3, 2, 0},  // toward it
          std::vector<double>{0, 3, 5.5, 7, 7.5, 7, 5.5, 3, 0},
          std::vector<double>{0, -3, -5.5, -7, -7.5, -7, -5.5, -3, 0}}) {
        job::Wall wall = tests::swinging();
        wall.ordinates = tests::ordinates_of(12_in, heights);
        walls.push_back(wall);
    }
    int both_ways = 0, kerf_face = 0;
    const auto lies = [&](const plan::Piece& piece) {
        EXPECT_LE(off_its_rib(piece).inches(), 1.0 / 16);
        both_ways += piece.blank().bends_both_ways() ? 1 : 0;
        kerf_face += piece.form->at_kerf_face ? 1 : 0;
        plan::Piece turned_over = piece;
        std::vector<geom::Segment> mirrored = piece.form->curve.segments();
        for (geom::Segment& s : mirrored) s = {{s.from.x, -s.from.y}, {s.to.x, -s.to.y}, -s.turn};
        turned_over.form->curve = geom::Path(mirrored);
        EXPECT_GT(off_its_rib(turned_over).inches(), 1) << "a rib turned over is noticed";
    };
    for (const job::Wall& wall : walls)
        for (const job::Side side : {job::Side::concave, job::Side::convex})
            for (const job::End zero : {job::End::left, job::End::right}) {
                SCOPED_TRACE((side == job::Side::concave ? "concave" : "convex") +
                             std::string(zero == job::End::left ? ", left" : ", right"));
                job::Wall turned = wall;
                turned.side.value = side;
                turned.board.zero = zero;
                lies(piece_of(formed(turned)));
            }
    for (const job::Opening& head : {tests::eyebrow(), tests::lantern_court(), tests::alder_court()})
        for (const job::End zero : {job::End::left, job::End::right}) {
            job::Opening turned = head;
            turned.liner.zero = zero;
            lies(piece_of(formed(turned)));
        }
    EXPECT_EQ(both_ways, 10);
    EXPECT_EQ(kerf_face, 4);
}

// A blank cut as long as its face instead would end short: the test above can tell.
TEST(Folded, would_notice_a_blank_as_long_as_its_face) {
    plan::Piece piece = piece_of(formed(tests::harbor_stair()));
    const double shorter = measure::arc_length(piece.radii.finish, piece.turn) / piece.blank().bend_length();
    plan::Blank& blank = piece.whole;
    const Length start = blank.ends[0].plain_face;
    blank.ends[1].plain_face = start + (blank.ends[1].plain_face - start) * shorter;
    for (plan::Kerf& kerf : blank.kerfs) kerf.at = blank.bend_start + (kerf.at - blank.bend_start) * shorter;
    EXPECT_GT(fold(piece, seen_face(piece)).end.inches(), 1.0 / 32);
}

}  // namespace
}  // namespace kerfpacket
