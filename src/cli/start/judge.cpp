#include "cli/start/judge.h"

#include <algorithm>
#include <iterator>

#include "cli/start/draft.h"
#include "cli/start/questions.h"
#include "job/choices.h"
#include "job/read.h"
#include "plan/plan.h"

namespace kerfpacket::cli {
namespace {

using measure::Length;

/// The question whose answer stands on that line, or began above it (a list of points); null where none did.
const Question* about(const Draft& draft, int line) {
    const auto after = draft.question_at.upper_bound(line);
    return after == draft.question_at.begin() ? nullptr : std::prev(after)->second;
}

/// Points that are still being told are read one by one: a curve they make when all are there.
std::vector<Fault> point_faults(const Answers& answers) {
    const Answer& last = answers.all().back();
    const auto parts = between_commas(last.value);
    if (parts.size() != 2) return {{last.question, "a point is two lengths with a comma between them", ""}};
    const measure::Unit unit = answers.of_piece("units") == "mm" ? measure::Unit::millimetre : measure::Unit::inch;
    for (const std::string& part : parts)
        if (const auto length = measure::parse_length(part, unit); !length)
            return {{last.question, length.error().message, length.error().hint}};
    if (answers.all().size() < 2) return {};
    const Answer& before = answers.all()[answers.all().size() - 2];
    if (before.question != last.question) return {};
    const auto here = length_of(parts[0], answers);
    const auto there = length_of(between_commas(before.value)[0], answers);
    if (here && there && *here <= *there)
        return {{last.question, "this station is not beyond the one before it, " + before.value,
                 "stations go from left to right, each measured from the left end"}};
    return {};
}

job::Diagnostics told(const std::string& text, const job::Shop& shop, bool of_material) {
    const job::Reading reading = job::read_job({"start", text}, shop);
    job::Diagnostics all = reading.diagnostics;
    // A board that nobody knows is told as soon as it is named, whatever is still to come.
    if (of_material) job::append(all, plan::unknown_materials(reading.materials, reading.own_materials));
    if (!reading.complete || (reading.job.openings.empty() && reading.job.walls.empty())) return all;
    const auto plan = plan::make_plan(reading.job);
    if (!plan) job::append(all, plan.error());
    else
        for (const plan::Refused& refused : plan->refused) job::append(all, refused.reasons);
    return all;
}

bool tall(const Answers& answers, Length rise, Length span) {
    const job::Choices<job::Shape>& heads = job::shape_words();
    const auto head = std::find_if(heads.begin(), heads.end(),
                                   [&](const auto& one) { return one.first == answers.of_piece("shape"); });
    return head != heads.end() && !job::may_be_tall(head->second) && rise > span / 2;
}

std::optional<Doubt> doubt_of_rise(const Answers& answers, Length rise) {
    const std::string_view shape = answers.of_piece("shape");
    const auto span = length_of(answers.of_piece("span"), answers);
    if (!span) return {};
    if (shape == "segmental" && rise > *span / 2) return Doubt{"doubt_horseshoe", "shape", "horseshoe"};
    if (shape == "horseshoe" && rise <= *span / 2) return Doubt{"doubt_segmental", "shape", "segmental"};
    if (tall(answers, rise, *span)) return Doubt{"doubt_tall"};
    return {};
}

std::optional<Doubt> doubt_of_size(const Question& question, Length length) {
    if (question.most <= 0) return {};
    if (length < Length::inches(question.least)) return Doubt{"doubt_small"};
    if (length > Length::inches(question.most)) return Doubt{"doubt_large"};
    return {};
}

}  // namespace

std::optional<Length> length_of(std::string_view value, const Answers& answers) {
    const measure::Unit unit = answers.of_piece("units") == "mm" ? measure::Unit::millimetre : measure::Unit::inch;
    const auto length = measure::parse_length(value, unit);
    return length ? std::optional(*length) : std::nullopt;
}

std::vector<Fault> faults(const Answers& answers, const job::Shop& shop, const fonts::Words& words,
                          const std::string& language) {
    const Answer& last = answers.all().back();
    if (last.question->kind == AnswerKind::points && !last.value.empty()) return point_faults(answers);
    const Draft so_far = draft(answers, words, language, true);
    const Question* const next = next_question(answers);
    const bool complete = next == nullptr || (next->name == "kind" && answers.pieces() > 0);
    std::vector<Fault> found;
    for (const job::Diagnostic& one : told(so_far.text, shop, !answers.of_piece("material").empty())) {
        if (one.severity == job::Severity::caution) continue;
        const Question* question = about(so_far, one.at.line);
        // What is said of a line that only stands in, or of what is not asked yet, is no fault of the answers.
        if (question == nullptr && !complete) continue;
        const bool said =
            std::any_of(found.begin(), found.end(), [&](const Fault& fault) { return fault.message == one.message; });
        if (!said) found.push_back({question, one.message, one.hint});
    }
    return found;
}

std::optional<Doubt> doubt(const Answers& answers) {
    const Answer& last = answers.all().back();
    if (last.question->kind == AnswerKind::lengths) {
        for (const std::string& part : between_commas(last.value))
            if (const auto length = length_of(part, answers))
                if (auto found = doubt_of_size(*last.question, *length)) return found;
        return {};
    }
    const auto length = last.question->kind == AnswerKind::length ? length_of(last.value, answers) : std::nullopt;
    if (!length) return {};
    if (last.question->name == "rise")
        if (auto found = doubt_of_rise(answers, *length)) return found;
    const auto chord = length_of(answers.of_piece("chord"), answers);
    if (last.question->name == "bulge" && chord && *length > *chord / 4) return Doubt{"doubt_bulge"};
    return doubt_of_size(*last.question, *length);
}

}  // namespace kerfpacket::cli
