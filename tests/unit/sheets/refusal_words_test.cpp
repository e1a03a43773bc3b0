// What a plan says of a piece that it refuses, in the language of the sheets: asked of many jobs by chance. That every
// sentence in the source has words is asked in tests/rules/refusals.cpp.

#include "sheets/words/refusal_words.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <map>

#include "job/read.h"
#include "measure/require.h"
#include "plan/plan.h"
#include "support/kit.h"
#include "support/random_job.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

/// All that the plans of many jobs say of what they refuse, by its English.
const std::map<std::string, job::Told>& refusals() {
    static const std::map<std::string, job::Told> all = [] {
        std::map<std::string, job::Told> said;
        RandomJobs random(20261125);
        for (int i = 0; i < 400; ++i) {
            const job::Reading read = job::read_job({"job.toml", random.next()});
            if (std::any_of(read.diagnostics.begin(), read.diagnostics.end(),
                            [](const auto& d) { return d.severity == job::Severity::error; }))
                continue;
            const auto plan = plan::make_plan(read.job);
            job::Diagnostics reasons;
            if (!plan) reasons = plan.error();
            else
                for (const plan::Refused& one : plan->refused) job::append(reasons, one.reasons);
            for (const job::Diagnostic& reason : reasons) {
                said.emplace(reason.message, reason.message);
                if (!reason.hint.empty()) said.emplace(reason.hint, reason.hint);
            }
        }
        return said;
    }();
    return all;
}

/// The sheets have words of their own for the program's materials.
bool names_a_material(const job::Told& told) {
    return told.key.starts_with("materials.") ||
           std::any_of(told.parts.begin(), told.parts.end(),
                       [](const job::Part& part) { return names_a_material(part.told); });
}

TEST(RefusalWords, AreTheSameInEnglishAndOthersInSpanish) {
    ASSERT_GT(refusals().size(), 40U);
    std::size_t same = 0;
    for (const auto& [english, told] : refusals()) {
        const std::string ours = refusal_text(told, kit());
        if (!names_a_material(told)) { EXPECT_EQ(ours, english); }
        same += static_cast<std::size_t>(ours == english);
        EXPECT_NE(refusal_text(told, kit("es")), english);
    }
    EXPECT_GT(same, 40U);
}

TEST(RefusalWords, LoseNoFigure) {
    const auto digits = [](const std::string& of) {
        std::string found;
        std::copy_if(of.begin(), of.end(), std::back_inserter(found),
                     [](unsigned char c) { return std::isdigit(c) != 0; });
        std::sort(found.begin(), found.end());
        return found;
    };
    for (const auto& [english, told] : refusals()) {
        const std::string spanish = refusal_text(told, kit("es"));
        EXPECT_EQ(digits(spanish), digits(english)) << english << "\n" << spanish;
        EXPECT_EQ(spanish.find('{'), std::string::npos) << spanish;
    }
}

TEST(RefusalWords, OfACommonRefusal) {
    const auto mm = [](double value) { return job::shown(measure::Length::mm(value), measure::Unit::millimetre); };
    const job::Told cut =
        job::say("even_every", "even kerfs {depth} deep every {spacing}", {{"depth", mm(23)}, {"spacing", mm(6.35)}});
    const job::Told where =
        job::say("where", "the bend's tightest radius, {radius} on the seen face", {{"radius", mm(100)}});
    const job::Told told = job::say(
        "likely_break", "piece {piece} will likely break: {cut} are strained to {u} of break strain at {where}",
        {{"piece", std::string("2.5")}, {"cut", cut}, {"u", job::figure("2.11")}, {"where", where}});
    EXPECT_EQ(
        std::string(told),
        "piece 2.5 will likely break: even kerfs 23 mm deep every 6.35 mm are strained to 2.11 of break strain at "
        "the bend's tightest radius, 100 mm on the seen face");
    EXPECT_EQ(refusal_text(told, kit("es")),
              "la pieza 2.5 probablemente se rompe: con ranuras iguales de 23 mm de hondo cada 6,35 mm llega a 2,11 de "
              "la deformación de rotura en el radio más cerrado de la curva, 100 mm en la cara vista");
}

TEST(RefusalWords, OfManyInARow) {
    const auto material = [](const std::string& name) { return job::word("materials." + name, name); };
    const job::Told told = job::say("other_material", "another material: {names}",
                                    {{"names", job::in_a_row("and_also", "{first}, {rest}",
                                                             {material("mdf"), job::Told("oak"), material("mdf")})}});
    EXPECT_EQ(std::string(told), "another material: mdf, oak, mdf");
    EXPECT_EQ(refusal_text(told, kit("es")), "otro material: MDF, oak, MDF");
}

TEST(RefusalWords, OfferTheirWaysOneByOne) {
    const auto way = [](const char* thickness) {
        return job::say("from_board", "a board {width} wide", {{"width", job::figure(thickness)}});
    };
    const job::Told hint =
        job::say("ways", "what would do by calculation, coupon first: {ways}",
                 {{"ways", job::in_a_row("or_way", "{first}; {rest}", {way("1.5"), way("2.5"), way("3.5")})}});
    EXPECT_EQ(refusal_ways(hint, kit("es")),
              (std::vector<std::string>{"una tabla de 1,5 de ancho", "una tabla de 2,5 de ancho",
                                        "una tabla de 3,5 de ancho"}));
    EXPECT_TRUE(refusal_ways(way("1.5"), kit("es")).empty());
}

TEST(RefusalWords, AreWantedLoudly) {
    EXPECT_THROW(refusal_text(job::Told("a sentence without a key"), kit("es")), measure::Bug);
    EXPECT_THROW(refusal_text(job::say("nobody_knows", "a key without words"), kit("es")), std::runtime_error);
    EXPECT_THROW(job::say("fold", "a {place} that nothing fills"), measure::Bug);
}

}  // namespace
}  // namespace kerfpacket::sheets
