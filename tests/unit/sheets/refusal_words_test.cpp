// What a plan says of a piece that it refuses has words in every language: asked of many jobs by chance.

#include "sheets/words/refusal_words.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <set>

#include "job/read.h"
#include "plan/plan.h"
#include "support/kit.h"
#include "support/random_job.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

/// Sentences that stay in the program's English: of coupons that were measured wrong, of joints in a spliced board, of
/// casing segments, of a form that makes up for springing back, of a half template. By a part of each.
constexpr std::array in_english{
    "coupon",
    "trial",
    "the table has",
    "spring",
    "joint",
    "splice",
    "blank ",
    "casing segments",
    "segments fit",
    "no number of segments",
    "expected ",
    "beyond the end of the form",
    "its chord is",
    "half a template",
    "leave out",
    "measure both again",
    "cannot have closed",
    "measure chord",
    "measure on the plain face",
    "stands with",
    "this board's kerfs",
};

bool stays_english(const std::string& text) {
    return std::any_of(in_english.begin(), in_english.end(),
                       [&](const char* part) { return text.find(part) != std::string::npos; });
}

/// All that the plans of many jobs say of what they refuse.
const std::set<std::string>& refusals() {
    static const std::set<std::string> all = [] {
        std::set<std::string> said;
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
                said.insert(reason.message);
                if (!reason.hint.empty()) said.insert(reason.hint);
            }
        }
        return said;
    }();
    return all;
}

TEST(RefusalWords, AreThereForWhatPlansSayInEveryLanguage) {
    ASSERT_GT(refusals().size(), 40U);
    std::size_t told = 0;
    for (const std::string& english : refusals())
        for (const char* language : {"en", "es"}) {
            const auto text = refusal_text(english, kit(language));
            if (text) ++told;
            else EXPECT_TRUE(stays_english(english)) << english;
        }
    EXPECT_GT(told, refusals().size());
}

TEST(RefusalWords, LoseNoFigure) {
    for (const std::string& english : refusals()) {
        const auto text = refusal_text(english, kit("es"));
        if (!text) continue;
        const auto digits = [](const std::string& of) {
            std::string found;
            std::copy_if(of.begin(), of.end(), std::back_inserter(found),
                         [](unsigned char c) { return std::isdigit(c) != 0; });
            std::sort(found.begin(), found.end());
            return found;
        };
        EXPECT_EQ(digits(*text), digits(english)) << english << "\n" << *text;
        EXPECT_EQ(text->find('{'), std::string::npos) << *text;
    }
}

TEST(RefusalWords, OfACommonRefusal) {
    const std::string english =
        "piece C will likely break: even kerfs 23 mm deep every 6.35 mm are strained to 2.11 of break strain at the "
        "bend's tightest radius, 100 mm on the seen face";
    EXPECT_EQ(
        refusal_text(english, kit("es")),
        "la pieza C probablemente se rompe: con ranuras iguales de 23 mm de hondo cada 6,35 mm llega a 2,11 de la "
        "deformación de rotura en el radio más cerrado de la curva, 100 mm en la cara vista");
    EXPECT_EQ(refusal_text(english, kit()), english);
    EXPECT_EQ(
        refusal_text("what would do by calculation, coupon first: a radius of at least 8-3/16 in on the seen face "
                     "(near the limit); another material: mdf (near the limit: 0.85 of break strain)",
                     kit("es")),
        "según el cálculo, y antes una probeta, serviría: un radio de al menos 8-3/16 pulg en la cara vista (cerca "
        "del límite); otro material: MDF (cerca del límite: 0,85 de la de rotura)");
    EXPECT_FALSE(refusal_text("nobody said this", kit("es")));
}

}  // namespace
}  // namespace kerfpacket::sheets
