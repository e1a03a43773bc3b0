// Where strips begin and end, what sets them, how they are numbered: asked of every strip of a wide spread of boards.

#include "sheets/strips/strip_layout.h"

#include <gtest/gtest.h>

#include <set>

#include "support/pieces.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

struct Layout {
    std::string name;
    plan::Piece piece;
    Tape tape;
    Length longest;
    std::vector<Strip> strips;
};

/// The spread, cut into strips of 9 in (Letter, A4) and 14 in. Computed once a test program.
const std::vector<Layout>& layouts() {
    static const std::vector<Layout> all = [] {
        std::vector<Layout> made;
        for (const Case& one : spread_of_cases()) {
            const plan::Plan plan = planned(one.job, one.media.c_str());
            const Tape tape(plan.header.units);
            const Length longest = made.size() % 3 == 0 ? 14_in : 9_in;
            made.push_back({one.name, plan.pieces[0], tape, longest, cut_strips(plan.pieces[0], longest, tape, kit())});
        }
        return made;
    }();
    return all;
}

TEST(StripLayout, EveryKerfStandsOnOneStrip) {
    for (const Layout& layout : layouts()) {
        SCOPED_TRACE(layout.name);
        std::size_t next = 0;
        for (const Strip& strip : layout.strips) {
            ASSERT_EQ(strip.first_kerf, next);
            for (; next < strip.end_kerf; ++next) {
                EXPECT_GE(layout.piece.blank().kerfs[next].mark, strip.from);
                EXPECT_LE(layout.piece.blank().kerfs[next].mark, strip.to);
            }
        }
        EXPECT_EQ(next, layout.piece.blank().kerfs.size());
    }
}

TEST(StripLayout, JointsStandInTheMiddleOfALand) {
    for (const Layout& layout : layouts()) {
        SCOPED_TRACE(layout.name);
        for (std::size_t i = 1; i < layout.strips.size(); ++i) {
            const Strip& strip = layout.strips[i];
            ASSERT_EQ(strip.joined_before, layout.strips[i - 1].joined_after);
            if (!strip.joined_before) {
                // Only the strip of an end's cut stands apart.
                EXPECT_GE(strip.from, layout.strips[i - 1].to);
                EXPECT_NE(strip.has_kerfs(), layout.strips[i - 1].has_kerfs());
                continue;
            }
            EXPECT_EQ(strip.from, layout.strips[i - 1].to);
            const auto& kerfs = layout.piece.blank().kerfs;
            EXPECT_NEAR(strip.from.mm(), (kerfs[strip.first_kerf - 1].at + kerfs[strip.first_kerf].at).mm() / 2, 1e-9);
        }
    }
}

TEST(StripLayout, TheCutOfEveryEndStandsOnAStrip) {
    int apart = 0;
    for (const Layout& layout : layouts()) {
        SCOPED_TRACE(layout.name);
        const Length trim = layout.piece.blank().trims[0];
        if (trim <= 0_mm) continue;
        for (const Length cut : {trim, layout.piece.blank().length - trim})
            EXPECT_TRUE(std::any_of(layout.strips.begin(), layout.strips.end(), [&](const Strip& strip) {
                // With room for its words on the side of the waste.
                const Length waste = cut == trim ? cut - strip.from : strip.to - cut;
                return cut >= strip.from && cut <= strip.to && waste >= std::min(trim, 0.6_in) - 1e-9_mm;
            })) << cut.inches();
        apart += layout.strips.front().has_kerfs() ? 0 : 1;
    }
    EXPECT_GT(apart, 10);
}

TEST(StripLayout, NoStripIsLongerThanAllowed) {
    for (const Layout& layout : layouts()) {
        SCOPED_TRACE(layout.name);
        for (const Strip& strip : layout.strips) {
            EXPECT_GT(strip.to, strip.from);
            EXPECT_LE((strip.to - strip.from).inches(), layout.longest.inches() + 1e-9);
        }
    }
}

TEST(StripLayout, StripsCoverTheBend) {
    for (const Layout& layout : layouts()) {
        SCOPED_TRACE(layout.name);
        EXPECT_LE(layout.strips.front().from, layout.piece.blank().bend_start);
        EXPECT_GE(layout.strips.back().to, layout.piece.blank().bend_end);
        EXPECT_GE(layout.strips.front().from, 0_mm);
        EXPECT_LE(layout.strips.back().to, layout.piece.blank().length);
    }
}

bool near_check(Length at, const Tape& tape) {
    const Length check = tape.check_step() * std::max(1.0, std::round(at / tape.check_step()));
    return measure::abs(at - check) < Length::inches(9.0 / 16) - 1e-9_mm;
}

/// Joints that crowd a tape check, and of them those that could have stood elsewhere on a strip half as long or more.
TEST(StripLayout, JointsKeepClearOfTapeChecks) {
    int joints = 0;
    int near = 0;
    for (const Layout& layout : layouts()) {
        SCOPED_TRACE(layout.name);
        const auto& kerfs = layout.piece.blank().kerfs;
        for (const Strip& strip : layout.strips) {
            if (!strip.joined_after) continue;
            ++joints;
            if (!near_check(strip.to, layout.tape)) continue;
            ++near;
            for (std::size_t i = strip.first_kerf + 1; i < kerfs.size(); ++i) {
                const Length other = (kerfs[i - 1].at + kerfs[i].at) / 2;
                if (other > strip.from + layout.longest) break;
                EXPECT_TRUE(near_check(other, layout.tape))
                    << "joint at " << strip.to.inches() << " in could stand at " << other.inches() << " in";
            }
        }
    }
    EXPECT_GT(joints, 1000);
    EXPECT_LT(near, joints / 50);
}

TEST(StripLayout, AWholeStepSetsEveryStripThatDoesNotBeginAtZero) {
    for (const Layout& layout : layouts()) {
        SCOPED_TRACE(layout.name);
        for (const Strip& strip : layout.strips) {
            ASSERT_EQ(strip.tape_mark.has_value(), strip.from > 0_mm) << strip.number;
            if (!strip.tape_mark) continue;
            const double steps = *strip.tape_mark / (layout.tape.unit() == Unit::inch ? 1_in : 10_mm);
            EXPECT_NEAR(steps, std::round(steps), 1e-9) << strip.number;
            EXPECT_GT(*strip.tape_mark, strip.from) << strip.number;
            EXPECT_LT(*strip.tape_mark, strip.to) << strip.number;
        }
    }
}

TEST(StripLayout, EveryTapeCheckIsOnOneStrip) {
    for (const Layout& layout : layouts()) {
        SCOPED_TRACE(layout.name);
        std::vector<double> found;
        for (const Strip& strip : layout.strips)
            for (const Length at : strip.tape_checks) found.push_back(at.mm());
        std::vector<double> expected;
        const Length step = layout.tape.unit() == Unit::inch ? 24_in : 600_mm;
        for (Length at = step; at < layout.strips.back().to; at += step)
            if (std::any_of(layout.strips.begin(), layout.strips.end(),
                            [&](const Strip& strip) { return at > strip.from && at < strip.to; }))
                expected.push_back(at.mm());
        EXPECT_EQ(found, expected);
    }
}

/// The rule as layout.md words it, in points.
Numbering rule(double at_17, double at_13, double at_13_bold, double kerf, double gap) {
    if (at_17 + 5 <= gap) return Numbering::one_row_large;
    if (at_13 + 5 <= gap) return Numbering::one_row;
    if (at_13_bold + kerf + 1.5 <= 2 * gap) return Numbering::two_rows;
    return Numbering::every_fifth;
}

TEST(StripLayout, NumberingFollowsTheRule) {
    std::set<Numbering> met;
    const auto widest = [](page::Face face, int from, int to, Length size) {
        double width = 0;
        for (int n = from; n <= to; ++n)
            width = std::max(width, kit().faces.width(face, std::to_string(n), size).points());
        return width;
    };
    for (const Layout& layout : layouts()) {
        SCOPED_TRACE(layout.name);
        for (const Strip& strip : layout.strips) {
            if (strip.end_kerf - strip.first_kerf < 2) continue;
            const int from = layout.piece.blank().kerfs[strip.first_kerf].n;
            const int to = layout.piece.blank().kerfs[strip.end_kerf - 1].n;
            const Numbering expected =
                rule(widest(page::Face::condensed, from, to, 17_pt), widest(page::Face::condensed, from, to, 13_pt),
                     widest(page::Face::condensed_bold, from, to, 13_pt), layout.piece.cut.kerf.points(),
                     layout.piece.cut.spacing.points() - 1e-9);
            EXPECT_EQ(strip.numbering, expected) << strip.number;
            met.insert(strip.numbering);
        }
    }
    EXPECT_EQ(met.size(), 4U) << "the spread meets every kind of numbering";
}

TEST(StripLayout, ThreeDigitsChangeRowsWhereTheLayoutSays) {
    // layout.md: three digits at a 0.118 in kerf take 0.48, 0.38, 0.24 in.
    NumeralWidths widths;
    widths.at_17 = kit().faces.width(page::Face::condensed, "100", 17_pt);
    widths.at_13 = kit().faces.width(page::Face::condensed, "100", 13_pt);
    widths.at_13_bold = kit().faces.width(page::Face::condensed_bold, "100", 13_pt);
    const auto at = [&](double inches) { return numbering_for(widths, Length::inches(inches), 0.118_in); };
    EXPECT_EQ(at(0.485), Numbering::one_row_large);
    EXPECT_EQ(at(0.465), Numbering::one_row);
    EXPECT_EQ(at(0.385), Numbering::one_row);
    EXPECT_EQ(at(0.365), Numbering::two_rows);
    EXPECT_EQ(at(0.245), Numbering::two_rows);
    EXPECT_EQ(at(0.225), Numbering::every_fifth);
}

}  // namespace
}  // namespace kerfpacket::sheets
