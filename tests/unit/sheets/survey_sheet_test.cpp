// The sheet of a measured curve: every station with its misses, the answers side by side, the point to measure again.

#include "sheets/evidence/survey_sheet.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "job/read.h"
#include "sheets/evidence/survey_answers.h"
#include "sheets/layout/furniture.h"
#include "support/boxes.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

std::vector<page::Page> survey_of(const plan::Plan& plan) {
    Drafts drafts;
    for (const plan::Piece& piece : plan.pieces) add_survey(drafts, plan, piece, kit());
    std::vector<page::Page> pages;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        add_furniture(drafts[i], plan, kit(), i + 1, drafts.size());
        pages.push_back(std::move(drafts[i].page));
    }
    return pages;
}

std::vector<std::string> words_on(const std::vector<page::Page>& pages) {
    std::vector<std::string> all;
    for (const page::Page& page : pages)
        for (const page::TextItem& text : texts(page)) all.push_back(text.text);
    return all;
}

bool has(const std::vector<std::string>& words, const std::string& part) {
    return std::any_of(words.begin(), words.end(),
                       [&](const std::string& text) { return text.find(part) != std::string::npos; });
}

/// Exact points of an arc of radius 50 over 60.
job::Opening arc() {
    std::vector<double> heights;
    for (int i = 0; i <= 20; ++i) {
        const double x = i * 3 - 30;
        heights.push_back(std::sqrt(2500 - x * x) - 40);
    }
    return plastered(heights);
}

TEST(SurveySheet, OnlyMeasuredCurvesHaveOne) {
    EXPECT_TRUE(survey_of(planned(job_of(lantern_court()))).empty());
    EXPECT_EQ(survey_of(planned(job_of(plastered()))).size(), 1U);
}

TEST(SurveySheet, TextsKeepApartAndOnThePage) {
    for (const char* media : {"na_letter_8.5x11in", "iso_a4_210x297mm", "na_ledger_11x17in"})
        for (const measure::Unit unit : {measure::Unit::inch, measure::Unit::millimetre}) {
            job::Job job = empty_job();
            job.openings = {plastered(), mistyped(), arc()};
            job.walls = {swinging(), swinging(4.7_in, 333)};
            job.header.units = unit;
            for (const page::Page& page : survey_of(planned(job, media)))
                for (const std::string& fault : text_faults(page)) ADD_FAILURE() << media << ": " << fault;
        }
}

TEST(SurveySheet, EveryStationHasARowHoweverMany) {
    const plan::Plan plan = planned(job_of(swinging(6_in, 401)));
    const std::vector<page::Page> pages = survey_of(plan);
    EXPECT_GE(pages.size(), 3U);
    std::multiset<std::string> numbers;
    for (const page::Page& page : pages)
        for (const page::TextItem& text : texts(page))
            if (text.face == page::Face::condensed && text.size == kit().style.tiny) numbers.insert(text.text);
    for (int i = 1; i <= 401; ++i) EXPECT_EQ(numbers.count(std::to_string(i)), 1U) << i;
}

/// A line to write on beside each of a few points; of many there is no room.
TEST(SurveySheet, AFewPointsAreMeasuredAgainBesideTheirRows) {
    const auto asks = [](const page::Page& page) {
        const std::vector<page::TextItem> all = texts(page);
        return std::any_of(all.begin(), all.end(),
                           [](const page::TextItem& text) { return text.text == "measured again"; });
    };
    const auto blanks = [](const page::Page& page) {
        const auto lines = paths(page, Role::box);
        return std::count_if(lines.begin(), lines.end(), [&](const page::PathItem& line) {
            const geom::Rect box = line.path.bounds();
            return box.height() < 0.1_pt && box.width() > 60_pt && box.width() < 140_pt &&
                   box.high.x > page.width - 40_pt;
        });
    };
    const plan::Plan few = planned(job_of(plastered()));
    const page::Page page = survey_of(few).front();
    EXPECT_TRUE(asks(page));
    EXPECT_EQ(blanks(page), static_cast<std::ptrdiff_t>(few.pieces.front().survey->points.size()));
    for (const page::Page& one : survey_of(planned(job_of(swinging(6_in, 401))))) EXPECT_FALSE(asks(one));
}

TEST(SurveySheet, AnArcIsRecommendedAsACircle) {
    const plan::Plan plan = planned(job_of(arc()));
    const std::vector<std::string> words = words_on(survey_of(plan));
    EXPECT_TRUE(has(words, "R 50 in, center at 30, 40 below"));
    EXPECT_TRUE(
        has(words, "Recommended: circle. The circle comes within 1/8 in of every point. The job uses the fair"));
    EXPECT_FALSE(has(words, "Measure it again"));
}

// Points of a circle of R 50 about (30, -40), or (30, 40) for a convex wall, whose base line is no string of its ends:
// the heights begin at 0 and end at 6.77. The centre is told where the tape's own stations and heights have it.
TEST(SurveyAnswers, ACentreIsToldFromTheBaseLineThatWasMeasuredFrom) {
    for (const job::Side side : {job::Side::concave, job::Side::convex}) {
        std::string ordinates;
        for (int x = 0; x <= 52; x += 4)
            ordinates += "[" + std::to_string(x) + ", " +
                         std::to_string(std::sqrt(2500.0 - (x - 30.0) * (x - 30.0)) - 40) + "], ";
        const job::Source source{"job.toml",
                                 "[job]\nnumber = \"7\"\ntitle = \"t\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = "
                                 "\"in\"\n[saw]\nblade_diameter = 12\nkerf = 0.118\n[[wall]]\nid = \"E\"\nside = \"" +
                                     std::string(side == job::Side::concave ? "concave" : "convex") +
                                     "\"\nordinates = [" + ordinates +
                                     "]\n[wall.board]\nmaterial = \"mdf\"\nthickness = \"1/2 in\"\nwidth = \"4 in\"\n"};
        const job::Reading reading = job::read_job(source);
        ASSERT_TRUE(reading.diagnostics.empty()) << job::render(reading.diagnostics, source);
        const plan::Plan plan = planned(reading.job);
        const Tape tape(measure::Unit::inch, kit().words);
        EXPECT_TRUE(
            answer_text(plan.pieces.front(), job::Fit::arc, kit(), tape).starts_with("R 50 in, center at 30, 40 below"))
            << answer_text(plan.pieces.front(), job::Fit::arc, kit(), tape);
    }
}

TEST(SurveySheet, AMistypedStationIsNamedAndMarked) {
    const plan::Plan plan = planned(job_of(mistyped()));
    const std::vector<page::Page> pages = survey_of(plan);
    const std::vector<std::string> words = words_on(pages);
    EXPECT_TRUE(has(words, "Station 24 in looks mistyped or misread:"));
    EXPECT_TRUE(has(words, "24 in: measure again"));
    EXPECT_TRUE(has(words, "Recommended: "));
    // Its row is bold.
    const auto bold = [&](const std::string& figure) {
        for (const page::TextItem& text : texts(pages.front()))
            if (text.text == figure && text.role == Role::running && text.face == page::Face::bold) return true;
        return false;
    };
    EXPECT_TRUE(bold("24"));
    EXPECT_FALSE(bold("27"));
}

TEST(SurveySheet, TheWorstMissOfEachAnswerIsBoxed) {
    const plan::Plan plan = planned(job_of(plastered()));
    const plan::Piece& piece = plan.pieces.front();
    const page::Page page = survey_of(plan).front();
    std::size_t boxed = 0;
    for (const page::PathItem& box : paths(page, Role::box)) {
        if (!box.path.closed()) continue;
        for (const page::TextItem& text : texts(page))
            if (text.role == Role::running && box.path.bounds().contains(text.anchor)) {
                ++boxed;
                EXPECT_TRUE(text.face == page::Face::bold || text.face == page::Face::condensed_bold);
                const auto all = answers(*piece.survey);
                EXPECT_TRUE(std::any_of(all.begin(), all.end(), [&](const Answer& answer) {
                    return miss_text(answer.misses->at.at(answer.misses->worst_point()), Tape(measure::Unit::inch)) ==
                           text.text;
                })) << text.text;
            }
    }
    // A miss of nothing is no worst one.
    const auto all = answers(*piece.survey);
    const auto missing = std::count_if(all.begin(), all.end(), [](const Answer& answer) {
        return miss_text(answer.misses->at.at(answer.misses->worst_point()), Tape(measure::Unit::inch)) != "0";
    });
    EXPECT_GE(missing, 1);
    EXPECT_EQ(boxed, static_cast<std::size_t>(missing));
}

TEST(SurveyAnswers, MissesAreSignedAndRounded) {
    EXPECT_EQ(miss_text(0.0124_in, Tape(measure::Unit::inch)), "+0.012");
    EXPECT_EQ(miss_text(-0.0126_in, Tape(measure::Unit::inch)), "-0.013");
    EXPECT_EQ(miss_text(0.0004_in, Tape(measure::Unit::inch)), "0");
    EXPECT_EQ(miss_text(-1.26_mm, Tape(measure::Unit::millimetre)), "-1.3");
    EXPECT_EQ(miss_text(-0.04_mm, Tape(measure::Unit::millimetre)), "0");
}

TEST(SurveyAnswers, CurvesThatATapeCannotTellApartAreTheSame) {
    plan::Piece piece = planned(job_of(plastered())).pieces.front();
    for (const measure::Unit unit : {measure::Unit::inch, measure::Unit::millimetre})
        for (const double utilisation : {0.5, 0.0})
            for (const auto& [gap, apart] :
                 {std::pair{0_in, false}, std::pair{0.005_in, false}, std::pair{0.5_in, true}}) {
                piece.other_fit = plan::OtherFit{job::Fit::ellipse, bend::Verdict::ok, utilisation, gap};
                const std::string said = recommendation(piece, kit(), Tape(unit));
                EXPECT_EQ(said.find("apart") != std::string::npos, apart) << said;
                EXPECT_EQ(said.find("the same within the tape") == std::string::npos, apart) << said;
                const std::string spanish = recommendation(piece, kit("es"), Tape(unit));
                EXPECT_EQ(spanish.find("se apartan") != std::string::npos, apart) << spanish;
            }
}

TEST(SurveyAnswers, TheMeanSquareIsOfAllPoints) {
    const plan::Plan plan = planned(job_of(plastered()));
    for (const Answer& answer : answers(*plan.pieces.front().survey)) {
        double squares = 0;
        for (const Length miss : answer.misses->at) squares += miss.mm() * miss.mm();
        EXPECT_NEAR(answer.rms.mm() * answer.rms.mm() * static_cast<double>(answer.misses->at.size()), squares, 1e-9);
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
