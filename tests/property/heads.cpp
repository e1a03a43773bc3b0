// Random heads of every shape: what must hold whatever was measured.

#include <gtest/gtest.h>

#include <cmath>

#include "arbitrary.h"
#include "support/heads.h"

namespace kerfpacket::curve {
namespace {

using job::Shape;
using tests::between;
using tests::near;

const Length hair = Length::mm(1e-6);

struct Wanted {
    Shape shape = Shape::segmental;
    double span = 0;  ///< inches
    double rise = 0;  ///< over span
    double legs = 0;  ///< difference over span
};

rc::Gen<Shape> shape() {
    return rc::gen::element(Shape::segmental, Shape::semicircular, Shape::elliptical, Shape::three_centred,
                            Shape::pointed, Shape::tudor, Shape::parabolic, Shape::catenary, Shape::horseshoe,
                            Shape::eyebrow);
}

/// Some of them no head can have.
rc::Gen<job::Opening> any_opening() {
    return rc::gen::map(
        rc::gen::tuple(shape(), between(6, 240), between(0.01, 1.5), between(-0.2, 0.2)), [](const auto& t) {
            const auto [kind, span, rise, legs] = t;
            job::Opening opening = tests::opening_of(
                kind, Length::inches(span), Length::inches(kind == Shape::semicircular ? span / 2 : span * rise));
            const Length right = Length::inches(60);
            if (std::abs(legs) < 0.1) return opening;
            return tests::on_legs(opening, right + opening.span.value * legs, right);
        });
}

/// A head that can be; discards the others.
Head any_head() {
    const job::Opening opening = *any_opening();
    const auto head = curve::head(opening, measure::Unit::inch);
    RC_PRE(head.has_value());
    return *head;
}

Curve any_run() {
    const std::vector<Curve> arch = tests::arch_of(any_head());
    return *rc::gen::element(true, false) ? arch.front() : arch.back();
}

RC_GTEST_PROP(Heads, are_made_or_told_why_not, ()) {
    const job::Opening opening = *any_opening();
    const auto head = curve::head(opening, measure::Unit::millimetre);
    if (head) {
        const Length length = tests::arch_length(*head);
        RC_ASSERT(length.finite());
        RC_ASSERT(length >= head->span);
    } else {
        RC_ASSERT(head.error().size() == 1U);
        RC_ASSERT(head.error()[0].at.line > 0);
        RC_ASSERT(!head.error()[0].hint.empty());
    }
}

RC_GTEST_PROP(Heads, runs_follow_each_other_and_the_turns_add_up, ()) {
    const Head head = any_head();
    const auto& runs = head.outline.runs();
    Angle turned;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        turned = turned + runs[i].turn();
        if (i + 1 == runs.size()) break;
        turned = turned + head.outline.corner(i);
        RC_ASSERT(near(runs[i].at(runs[i].length()).point, runs[i + 1].at({}).point, hair));
    }
    // From up the left leg to down the right one.
    RC_ASSERT(std::abs(turned.radians() + Angle::pi) < 1e-9);
}

RC_GTEST_PROP(Heads, length_and_turn_are_those_of_the_drawing, ()) {
    const Curve run = any_run();
    const Path path = run.path();
    // A drawing within 1e-4 mm: its length is off by far less than that for every step in which it turns.
    RC_ASSERT(measure::abs(path.length() - run.length()) <= Length::mm(1e-3));
    RC_ASSERT(std::abs(path.turn().radians() - run.turn().radians()) < 1e-9);
    for (int i = 0; i <= 10; ++i) {
        const Length at = run.length() * (i / 10.0);
        RC_ASSERT(near(path.at(path.length() * (i / 10.0)).point, run.at(at).point, Length::mm(2e-3)));
    }
}

RC_GTEST_PROP(Heads, level_springs_make_mirror_images, ()) {
    job::Opening opening = *any_opening();
    opening.legs.reset();
    const auto head = curve::head(opening, measure::Unit::inch);
    RC_PRE(head.has_value());
    const std::vector<Curve> arch = tests::arch_of(*head);
    const Curve right = arch.back().reversed();
    const Length at = right.length() * *between(0, 1);
    const Point p = arch.front().at(at).point;
    RC_ASSERT(near({-p.x, p.y}, right.at(at).point, hair));
}

RC_GTEST_PROP(Heads, exchanging_the_legs_mirrors_the_head, ()) {
    job::Opening opening = *any_opening();
    RC_PRE(opening.legs.has_value());
    const auto one = curve::head(opening, measure::Unit::inch);
    std::swap((*opening.legs)[0], (*opening.legs)[1]);
    const auto other = curve::head(opening, measure::Unit::inch);
    RC_ASSERT(one.has_value() == other.has_value());
    RC_PRE(one.has_value());
    const Curve left = tests::arch_of(*one).front();
    const Curve right = tests::arch_of(*other).back().reversed();
    const Length at = left.length() * *between(0, 1);
    const Point p = left.at(at).point;
    RC_ASSERT(near({-p.x, p.y}, right.at(at).point, hair));
}

RC_GTEST_PROP(Heads, reversal_keeps_every_point, ()) {
    const Curve run = any_run();
    const Length at = run.length() * *between(0, 1);
    const Spot there = run.at(at);
    const Spot back = run.reversed().at(run.length() - at);
    RC_ASSERT(near(there.point, back.point, hair));
    RC_ASSERT(std::abs(there.direction.x + back.direction.x) + std::abs(there.direction.y + back.direction.y) < 1e-7);
    RC_ASSERT(std::abs(there.turned.radians() + back.turned.radians() * -1 + run.reversed().turn().radians()) < 1e-7);
}

RC_GTEST_PROP(Heads, turning_and_moving_keep_the_shape, ()) {
    const Curve run = any_run();
    const Angle by = Angle::degrees(*between(-180, 180));
    const Point shift = *tests::point(2000);
    const Curve there = run.turned(by).moved(shift);
    const Length at = run.length() * *between(0, 1);
    RC_ASSERT(measure::abs(there.length() - run.length()) <= hair);
    RC_ASSERT(std::abs(there.turn().radians() - run.turn().radians()) < 1e-9);
    RC_ASSERT(near(there.at(at).point, geom::turned(run.at(at).point, by) + shift, hair));
}

/// A distance to one side at which the run does not fold.
Length small_offset(const Curve& run) {
    const double sharpest =
        std::max(run.sharpest_left({}, run.length()).curvature, run.sharpest_right({}, run.length()).curvature);
    return Length::mm(std::min(100.0, 0.8 / sharpest)) * *between(-1, 1);
}

RC_GTEST_PROP(Heads, offset_there_and_back, ()) {
    const Curve run = any_run();
    const Length by = small_offset(run);
    const Curve parallel = run.parallel(by);
    const Length at = run.length() * *between(0, 1);
    const Length on_parallel = run.on_parallel(at, by);
    RC_ASSERT(measure::abs(run.from_parallel(on_parallel, by) - at) <= hair);
    const Spot there = parallel.at(on_parallel);
    RC_ASSERT(near(there.point - there.direction.left() * by, run.at(at).point, hair));
    RC_ASSERT(near(parallel.parallel(-by).at(at).point, run.at(at).point, hair));
}

// The length of a parallel differs by offset times turn (Steiner).
RC_GTEST_PROP(Heads, offset_changes_length_by_the_turn, ()) {
    const Curve run = any_run();
    const Length by = small_offset(run);
    const Length expected = run.length() - by * run.turn().radians();
    RC_ASSERT(measure::abs(run.parallel(by).length() - expected) <= hair);
    RC_ASSERT(measure::abs(run.parallel(by).path().length() - expected) <= Length::mm(1e-2));
}

}  // namespace
}  // namespace kerfpacket::curve
