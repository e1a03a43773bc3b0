// Any answers that make sense give a job file that the reader takes without a word.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cstdlib>

#include "job/read.h"
#include "plan/plan.h"
#include "unit/cli/talks.h"

namespace kerfpacket::tests {
namespace {

using Lines = std::vector<std::string>;

// A talk works out thirty plans: as many runs as other properties have would take minutes.
[[maybe_unused]] const int seeded = setenv("RC_PARAMS", "seed=20260402 max_success=50", 0);

/// Sixteenths of an inch, written in one of the ways in which carpenters do.
std::string written(int sixteenths, int way) {
    const measure::Length length = measure::Length::inches(sixteenths / 16.0);
    switch (way % 4) {
        case 0: return measure::inch_fraction(length);
        case 1: return measure::inch_fraction(length) + " in";
        case 2: return measure::mm_text(length, 1) + " mm";
        default: return measure::fixed(sixteenths / 16.0, 4) + " in";
    }
}

/// A span of 2 to 10 ft and a rise that its shape allows.
RC_GTEST_PROP(Talks, SaneAnswersGiveAJobThatIsRead, ()) {
    const int way = *rc::gen::inRange(0, 1000);
    const int span = *rc::gen::inRange(24 * 16, 120 * 16);
    const int part = *rc::gen::inRange(15, 45);
    const bool spanish = *rc::gen::arbitrary<bool>();
    const int shape = *rc::gen::inRange(1, 11);
    Lines lines{"P-" + std::to_string(way), "Any arch", "", "2026-03-08", way % 2 == 0 ? "in" : "1"};
    lines = lines + Lines{"1", "", std::to_string(shape), written(span, way)};
    // A horseshoe rises more than half its span, a pointed and a Tudor head about half.
    const int rise = shape == 9 ? span * (part + 40) / 100 : shape == 5 ? span * (part + 50) / 100 : span * part / 100;
    if (shape != 2) lines.push_back(written(shape == 9 ? std::max(rise, span * 6 / 10) : rise, way / 4));
    lines = lines + talk_jamb() + Lines{"mdf", "1/4 in", "", "", "", way % 3 == 0 ? "2 1/2" : ""};
    if (way % 3 == 0) lines.emplace_back("");
    lines = lines + talk_saw() + Lines{"done"};
    const Told told = talk_of(lines, spanish ? "es" : "en");
    // What no such head can be (a Tudor head too flat or too steep) is told, and then there is no file.
    RC_PRE(told.state == cli::Talk::State::finished);
    const job::Reading reading = job::read_job({"job.toml", told.job});
    RC_ASSERT(job::render(reading.diagnostics, {"job.toml", told.job}) == "");
    RC_ASSERT(reading.job.openings.size() == 1U);
    const double told_span = reading.job.openings.front().span.value / measure::Length::inches(1);
    RC_ASSERT(std::abs(told_span - span / 16.0) < 0.003);
    const auto plan = plan::make_plan(reading.job);
    RC_ASSERT(plan.has_value());
    RC_ASSERT(plan->refused.empty());
}

/// Whatever is typed, the talk goes on or ends, and no line of the file holds what was not asked.
RC_GTEST_PROP(Talks, AnyLinesAtAllKeepTheTalkWhole, ()) {
    const auto lines = *rc::gen::container<Lines>(rc::gen::oneOf(
        rc::gen::element<std::string>("", "1", "2", "back", "?", "done", "yes", "45", "9 1/2", "0, 0", "8, 4", "16, 0",
                                      "mdf", "3/8", "2026-03-08", "none", "\"\"\"", "]", "\\", "\xC2\xBD"),
        rc::gen::string<std::string>()));
    const Told told = talk_of(lines);
    const job::Reading reading = job::read_job({"job.toml", told.job});
    for (const job::Diagnostic& one : reading.diagnostics)
        RC_ASSERT(one.message.find("unknown key") == std::string::npos);
}

}  // namespace
}  // namespace kerfpacket::tests
