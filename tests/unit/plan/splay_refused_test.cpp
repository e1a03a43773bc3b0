// What no splayed jamb can be, said in words at the place that asks for it.
#include <gtest/gtest.h>

#include "support/jobs.h"
#include "support/planned.h"

namespace kerfpacket::tests {
namespace {

using measure::Angle;

/// The splay stands in line 40, its angle in line 41.
job::Opening splayed(job::Opening opening, double degrees, job::Edge measured) {
    opening.measured_to = job::Surface::finish;
    opening.liner.thickness.value = 0.375_in;
    opening.liner.kerf_depth.half = true;
    opening.splay = job::Splay{at_line(Angle::degrees(degrees), 41), measured, job::Toward::room, {40, 1}};
    return opening;
}

TEST(SplayRefused, AHeadWithAPoint) {
    job::Opening tudor = lantern_court();
    tudor.shape.value = job::Shape::tudor;
    for (const job::Opening& head : {alder_court(), tudor}) {
        const job::Diagnostic said = refusal(job_of(splayed(head, 15, job::Edge::narrow)));
        EXPECT_EQ(said.message, "opening " + head.id.value + " has a head with a point, and splays");
        EXPECT_TRUE(said.hint.starts_with("would do: a head without a point")) << said.hint;
        EXPECT_EQ(said.at, head.shape.at);
        EXPECT_EQ(said.severity, job::Severity::error) << "alone, it leaves no plan";
    }
}

// Worked by hand: a half circle of radius 8 has no parallel 9 in inside it, and 5.25 tan 60 = 9.09.
TEST(SplayRefused, ANarrowEdgeInsideTheHeadsCentre) {
    job::Opening small = semicircle(16_in);
    const job::Diagnostic said = refusal(job_of(splayed(small, 60, job::Edge::wide)));
    EXPECT_NE(said.message.find("narrow edge of the splayed liner"), std::string::npos) << said.message;
    EXPECT_NE(said.hint.find("less splay"), std::string::npos) << said.hint;
    EXPECT_EQ(said.at.line, 41);
    small.span.value = 19_in;
    small.rise.value = 9.5_in;
    EXPECT_TRUE(plan::make_plan(job_of(splayed(small, 40, job::Edge::wide))));
}

// The reverse curves of an eyebrow bend the other way: there the wide edge lies inside them.
TEST(SplayRefused, AWideEdgeThatFoldsInAReverseCurve) {
    job::Opening head = splayed(eyebrow(), 45, job::Edge::narrow);  // 5-1/4 in wider at each side
    head.span.value = 72_in;
    head.reverse_radius = at_line(4_in, 24);
    const job::Diagnostic said = refusal(job_of(head));
    EXPECT_TRUE(said.message.starts_with("the wide edge of the splayed liner would fold on itself")) << said.message;
    EXPECT_NE(said.hint.find("less splay would do"), std::string::npos) << said.hint;
    head.reverse_radius->value = 24_in;
    EXPECT_TRUE(plan::make_plan(job_of(head)));
}

// At an eyebrow's level ends the narrow edge stands lower than the measured wide one: there must be legs to meet.
TEST(SplayRefused, ANarrowEdgeBelowTheSpringsWithoutLegs) {
    job::Opening head = splayed(eyebrow(), 20, job::Edge::wide);
    const job::Diagnostic said = refusal(job_of(head));
    EXPECT_NE(said.message.find("narrow edge"), std::string::npos) << said.message;
    EXPECT_NE(said.hint.find("legs that go down that far"), std::string::npos) << said.hint;
    head.legs = {{at_line(40_in, 25), at_line(40_in, 25)}};
    EXPECT_TRUE(plan::make_plan(job_of(head)));
}

}  // namespace
}  // namespace kerfpacket::tests
