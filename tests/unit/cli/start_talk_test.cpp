#include "cli/start/talk.h"

#include <gtest/gtest.h>

#include <map>
#include <sstream>

#include "cli/start/draft.h"
#include "cli/start/drawings.h"
#include "job/read.h"
#include "plan/plan.h"
#include "talks.h"

namespace kerfpacket::tests {
namespace {

using cli::Talk;
using Lines = std::vector<std::string>;

const std::string hand_head =
    "[job]\nnumber = \"T-4\"\ntitle = \"Fern Row\"\nrevision = \"A\"\ndate = 2026-09-14\nunits = \"in\"\n"
    "[saw]\nblade_diameter = 10\nkerf = 0.118\n";
const std::string hand_liner = "[opening.liner]\nmaterial = \"mdf\"\nthickness = 0.375\n";

job::Reading read_as_job(const std::string& text) { return job::read_job({"job.toml", text}); }

std::string diagnostics(const std::string& text) {
    return job::render(read_as_job(text).diagnostics, {"job.toml", text});
}

/// How a shape is answered after the head, and the lines of the same piece as a person writes them.
struct Shape {
    Lines answers;
    std::string keys;
};

std::map<std::string, Shape> shapes() {
    const auto spanned = [](const std::string& number, const std::string& shape, const std::string& span,
                            const std::string& rise) {
        Shape made{{"1", "", number, span}, "shape = \"" + shape + "\"\nspan = " + span + "\n"};
        if (!rise.empty()) made.answers.push_back(rise);
        if (!rise.empty()) made.keys += "rise = " + rise + "\n";
        return made;
    };
    std::map<std::string, Shape> all{{"segmental", spanned("1", "segmental", "45", "9.5")},
                                     {"semicircular", spanned("2", "semicircular", "60", "")},
                                     {"elliptical", spanned("3", "elliptical", "52", "21")},
                                     {"three-centred", spanned("4", "three-centred", "54", "20")},
                                     {"pointed", spanned("5", "pointed", "41", "33")},
                                     {"tudor", spanned("6", "tudor", "57", "24")},
                                     {"parabolic", spanned("7", "parabolic", "47", "22")},
                                     {"catenary", spanned("8", "catenary", "44", "26")},
                                     {"horseshoe", spanned("9", "horseshoe", "39", "27")},
                                     {"eyebrow", spanned("10", "eyebrow", "66", "9")}};
    all["ordinates"] = {{"1", "", "11", "0, 0", "9, 6 1/4", "20 in, 8 1/2", "32, 6 1/2", "40, 0", "", ""},
                        "shape = \"ordinates\"\nordinates = [[0, 0], [9, 6.25], [20, 8.5], [32, 6.5], [40, 0]]\n"};
    return all;
}

TEST(Start, WritesTheJobThatAPersonWouldForEveryShapeInBothLanguages) {
    const auto all = shapes();
    ASSERT_EQ(all.size(), cli::question("shape").choices.size());
    for (const auto& [name, shape] : all)
        for (const std::string language : {"en", "es"}) {
            const Told told = talk_of(whole_talk(shape.answers), language);
            ASSERT_EQ(told.state, Talk::State::finished) << name << "\n" << told.said;
            const std::string by_hand =
                hand_head + "[[opening]]\nid = \"A\"\n" + shape.keys + "depth = \"4 5/8 in\"\n" + hand_liner;
            job::Job mine = read_as_job(by_hand).job;
            mine.header.language = language;
            EXPECT_EQ(diagnostics(told.job), "") << told.job;
            EXPECT_EQ(job::fingerprint(read_as_job(told.job).job), job::fingerprint(mine)) << told.job << by_hand;
        }
}

TEST(Start, AsksForAWallInItsThreeWays) {
    const std::map<std::string, Lines> ways{{"chord = \"8 ft\"\nrise = 11\n", {"2", "", "chord", "8 ft", "11"}},
                                            {"radius = 80\nangle = 60\n", {"wall", "", "2", "80", "60"}},
                                            {"ordinates = [[0, 0], [30, 6], [60, 8], [92, 6.5]]\n",
                                             {"2", "", "3", "0,0", "30,6", "60,8", "92,6.5", "", ""}}};
    for (const auto& [keys, lines] : ways) {
        const Told told =
            talk_of(talk_head() + lines + Lines{"", "convex", "14, 9", "2", "mdf", "3/8", "5 1/4", "", "", ""} +
                    talk_saw() + Lines{""});
        ASSERT_EQ(told.state, Talk::State::finished) << told.said;
        const std::string by_hand = hand_head + "[[wall]]\nid = \"A\"\n" + keys +
                                    "side = \"convex\"\ntails = [14, 9]\nquantity = 2\n"
                                    "[wall.board]\nmaterial = \"mdf\"\nthickness = 0.375\nwidth = 5.25\n";
        EXPECT_EQ(read_as_job(told.job).job.fingerprint, read_as_job(by_hand).job.fingerprint) << told.job;
    }
}

TEST(Start, SeveralPiecesStandInOneJobAndTheLastBoardIsOffered) {
    const Lines first = {"1", "", "1", "45", "9 1/2"};
    const Lines second = {"opening", "", "1", "50", "8", "", "80 in, 79 in", "yes", "", "3"};
    const Told told = talk_of(talk_head() + first + talk_jamb() + talk_liner() + talk_saw() + second +
                              Lines{"", "", "", "", "", "3 1/2", "", "done"});
    ASSERT_EQ(told.state, Talk::State::finished) << told.said;
    EXPECT_NE(told.said.find("Depth of the jamb [4 5/8 in]: "), std::string::npos) << told.said;
    EXPECT_NE(told.said.find("Thickness of the board [3/8 in]: "), std::string::npos);
    const std::string by_hand =
        hand_head + "[[opening]]\nid = \"A\"\nshape = \"segmental\"\nspan = 45\nrise = 9.5\ndepth = 4.625\n" +
        hand_liner +
        "[[opening]]\nid = \"B\"\nshape = \"segmental\"\nspan = 50\nrise = 8\nlegs = [80, 79]\n"
        "through_legs = true\ndepth = 4.625\nquantity = 3\n" +
        hand_liner + "[opening.casing]\nwidth = 3.5\nreveal = 0.1875\n";
    EXPECT_EQ(read_as_job(told.job).job.fingerprint, read_as_job(by_hand).job.fingerprint) << told.job;
}

const Lines splayed_head = {"1", "", "1", "42", "10", "", "62", "no", "6 3/4"};
const std::string splayed_hand =
    hand_head + "[[opening]]\nid = \"A\"\nshape = \"segmental\"\nspan = 42\nrise = 10\nlegs = 62\ndepth = 6.75\n" +
    hand_liner + "[opening.splay]\n";

TEST(Start, AsksHowAJambSplays) {
    const std::map<std::string, Lines> ways{
        {"side = 1.75\nmeasured = \"narrow\"\ntoward = \"away\"\n", {"2", "1 3/4", "1", "2"}},
        {"angle = 15\nmeasured = \"wide\"\ntoward = \"room\"\n", {"angle", "15", "wide", "room"}}};
    for (const auto& [keys, lines] : ways)
        for (const char* language : {"en", "es"}) {
            const Told told = talk_of(
                talk_head() + splayed_head + lines + Lines{""} + talk_liner() + talk_saw() + Lines{"done"}, language);
            ASSERT_EQ(told.state, Talk::State::finished) << told.said;
            EXPECT_EQ(diagnostics(told.job), "") << told.job;
            job::Job mine = read_as_job(splayed_hand + keys).job;
            mine.header.language = language;
            EXPECT_EQ(job::fingerprint(read_as_job(told.job).job), job::fingerprint(mine)) << told.job;
            EXPECT_NE(told.said.find(" x "), std::string::npos) << "the blank by both its sizes" << told.said;
        }
}

TEST(Start, ASplayThatCannotBeIsToldAtOnceAndAskedAgain) {
    const Told steep = talk_of(talk_head() + splayed_head + Lines{"angle", "70"});
    EXPECT_NE(steep.said.find("this jamb lies nearly flat"), std::string::npos) << steep.said;
    EXPECT_EQ(steep.state, Talk::State::asking);
    EXPECT_EQ(steep.job.find("70"), std::string::npos) << steep.job;
    const Told pointed = talk_of(talk_head() + Lines{"1", "", "5", "41", "33", "", "", "4 5/8", "side"});
    EXPECT_NE(pointed.said.find("has a head with a point, and splays"), std::string::npos) << pointed.said;
    // Where the liner runs on down the legs nothing is asked of it.
    const Told through = talk_of(talk_head() + Lines{"1", "", "1", "42", "10", "", "62", "yes", "6 3/4", ""});
    EXPECT_EQ(through.said.find("Is it wider"), std::string::npos) << through.said;
}

TEST(Start, TellsAfterAPieceWhatItWouldComeTo) {
    const Lines lines = whole_talk({"1", "", "1", "45", "9 1/2"});
    const Told told = talk_of(lines);
    const auto plan = plan::make_plan(read_as_job(told.job).job);
    ASSERT_TRUE(plan);
    const plan::Piece& piece = plan->pieces.front();
    const std::string kerfs = "A: " + std::to_string(piece.blank().kerfs.size()) + " kerfs";
    EXPECT_NE(told.said.find(kerfs), std::string::npos) << told.said;
    EXPECT_NE(told.said.find("blank " + measure::inch_fraction(piece.blank().length) + " in: ok, coupon first"),
              std::string::npos)
        << told.said;
    EXPECT_NE(talk_of(lines, "es").said.find(std::to_string(piece.blank().kerfs.size()) + " ranuras"),
              std::string::npos);
}

TEST(Start, EveryLineOfTheFileHasACommentInItsLanguage) {
    for (const auto& [name, shape] : shapes()) {
        const Told told = talk_of(whole_talk(shape.answers), "es");
        std::istringstream lines(told.job);
        for (std::string line; std::getline(lines, line);)
            if (line.find(" = ") != std::string::npos) { EXPECT_NE(line.find(" # "), std::string::npos) << line; }
        EXPECT_NE(told.job.find("# va en todas las hojas"), std::string::npos);
    }
}

TEST(Start, AQuestionMarkTellsHowToMeasureAndAsksAgain) {
    const Told told = talk_of(talk_head() + Lines{"?", "1", "", "1", "?", "45", "?", "9 1/2"});
    for (const char* name : {"how_kind", "how_span", "how_rise"})
        EXPECT_NE(told.said.find(kit().words(std::string("start.") + name)), std::string::npos) << name;
    EXPECT_NE(told.job.find("rise = \"9 1/2 in\""), std::string::npos) << told.job;
}

TEST(Start, AWordThatOneChoiceAloneHasNamesIt) {
    const Told english = talk_of(talk_head() + Lines{"arched", "", "Pointed", "41", "33"});
    EXPECT_NE(english.job.find("shape = \"pointed\""), std::string::npos) << english.said;
    const Told spanish = talk_of(talk_head() + Lines{"vano", "", "eliptico", "52", "21"}, "es");
    EXPECT_NE(spanish.job.find("shape = \"elliptical\""), std::string::npos) << spanish.said;
    // "curved" is both of a wall and of a stair; "arc" stands in what explains a shape, "an" is too little.
    for (const char* unclear : {"curved", "an", "half"})
        EXPECT_NE(talk_of(talk_head() + Lines{unclear}).said.find(kit().words("start.one_of_these")), std::string::npos)
            << unclear;
    EXPECT_NE(talk_of(talk_head() + Lines{"1", "", "arc"}).said.find(kit().words("start.one_of_these")),
              std::string::npos);
}

TEST(Start, BackGoesBackAndOffersWhatWasThere) {
    const Told told = talk_of(talk_head() + Lines{"1", "", "1", "45", "9 1/2", "back", "back", "47", "", "back", "10"});
    EXPECT_NE(told.said.find("Span [45]: "), std::string::npos) << told.said;
    EXPECT_NE(told.said.find("Rise [9 1/2]: "), std::string::npos) << told.said;
    EXPECT_NE(told.job.find("span = \"47 in\""), std::string::npos);
    EXPECT_NE(told.job.find("rise = \"10 in\""), std::string::npos) << told.job;
    EXPECT_NE(talk_of({"back"}).said.find("first question"), std::string::npos);
    EXPECT_NE(talk_of({"A-1", "atrás", ""}, "es").said.find("[A-1]"), std::string::npos);
}

TEST(Start, BackIntoAnotherShapeForgetsWhatNoLongerBelongs) {
    const Told told = talk_of(talk_head() + Lines{"1", "", "1", "45", "9 1/2", "back", "back", "back", "2", "45"});
    EXPECT_EQ(told.job.find("rise"), std::string::npos) << told.job;
    EXPECT_NE(told.job.find("shape = \"semicircular\""), std::string::npos);
}

TEST(Start, ARiseOverHalfTheSpanIsAskedBack) {
    const Lines until = talk_head() + Lines{"1", "", "1", "40", "26"};
    EXPECT_NE(talk_of(until).said.find("is a horseshoe: is that what you see?"), std::string::npos);
    EXPECT_NE(talk_of(until + Lines{"yes"}).job.find("shape = \"horseshoe\""), std::string::npos);
    const Told other = talk_of(until + Lines{"12"});
    EXPECT_NE(other.job.find("shape = \"segmental\""), std::string::npos) << other.job;
    EXPECT_NE(other.job.find("rise = \"12 in\""), std::string::npos) << other.job;
    EXPECT_NE(talk_of(until + Lines{"no", "12"}).job.find("rise = \"12 in\""), std::string::npos);
    const Told back = talk_of(talk_head() + Lines{"1", "", "9", "40", "12", "y"});
    EXPECT_NE(back.job.find("shape = \"segmental\""), std::string::npos) << back.said;
}

TEST(Start, WhatIsSeldomIsAskedBackAndTaken) {
    const Lines until = talk_head() + Lines{"1", "", "1", "450"};
    EXPECT_NE(talk_of(until).said.find("450 is large for this"), std::string::npos);
    for (const char* yes : {"yes", "y", "450"})
        EXPECT_NE(talk_of(until + Lines{yes}).job.find("span = \"450 in\""), std::string::npos) << yes;
    EXPECT_NE(talk_of(until + Lines{"45"}).job.find("span = \"45 in\""), std::string::npos);
}

/// What the reader says of the last line, with what follows from it.
TEST(Start, TheReaderOfJobFilesJudgesEveryAnswer) {
    const Lines head = talk_head() + Lines{"1", "", "1"};
    EXPECT_NE(talk_of(head + Lines{"60.1/2"}).said.find("two ways"), std::string::npos)
        << talk_of(head + Lines{"60.1/2"}).said;
    EXPECT_NE(talk_of({"T-4", "x", "A", "11/12/26"}).said.find("year-month-day"), std::string::npos);
    EXPECT_NE(talk_of(head + Lines{"45", "9", "", "", "5", "", "", "mdff"}).said.find("mdf"), std::string::npos);
    EXPECT_NE(talk_of({std::string(30, 'x')}).said.find("24"), std::string::npos);
    // A wall that the board does not fit into, of which the figures alone say nothing.
    const Told tight = talk_of(talk_head() + Lines{"2", "", "2", "6", "90", "", "concave", "", "", "mdf", "6.5 in"});
    EXPECT_NE(tight.said.find("thickness"), std::string::npos) << tight.said;
    EXPECT_EQ(tight.job.find("thickness"), std::string::npos) << tight.job;
    // Points that do not rise.
    EXPECT_NE(talk_of(head + Lines{}).said, "");
    const Told points = talk_of(talk_head() + Lines{"1", "", "11", "0, 0", "9, 6", "8, 5"});
    EXPECT_NE(points.said.find("not beyond the one before it"), std::string::npos) << points.said;
}

TEST(Start, NoAnswerEndsALineOfTheFile) {
    for (const std::string evil : {"\"\nkerf = 9\n", "x\" # y", "\\", "[saw]", "2026-01-01\nunits = 3"}) {
        const Told told = talk_of({evil, evil, "", evil, "in"});
        EXPECT_EQ(told.job.find("kerf = 9"), std::string::npos) << told.job;
        EXPECT_EQ(told.job.find("\nunits = 3"), std::string::npos) << told.job;
    }
}

TEST(Start, ThreeAnswersThatMakeNoSenseEndTheTalkWithWhatToMeasure) {
    for (const Lines& three : {Lines{"wide", "very wide", "1/0"}, Lines{"", "", ""}, Lines{"4 ft 22 in", "", "x"}}) {
        const Told told = talk_of(talk_head() + Lines{"1", "", "1"} + three + Lines{"45"});
        EXPECT_EQ(told.state, Talk::State::given_up) << told.said;
        EXPECT_EQ(told.heard, 11U);
        EXPECT_NE(told.said.find(kit().words("start.how_span")), std::string::npos) << told.said;
    }
    // A good one between them begins to count anew.
    const Told told = talk_of(talk_head() + Lines{"1", "", "1", "wide", "wide", "45", "high", "high", "9"});
    EXPECT_EQ(told.state, Talk::State::asking) << told.said;
    EXPECT_EQ(talk_of(talk_head() + Lines{"7", "stairs", "what"}).state, Talk::State::given_up);
}

TEST(Start, DoneInTheMiddleOfAPieceIsNoEnd) {
    const Told told = talk_of(talk_head() + Lines{"1", "", "1", "done", "45"});
    EXPECT_NE(told.said.find("not complete"), std::string::npos);
    EXPECT_NE(told.job.find("span = \"45 in\""), std::string::npos);
}

TEST(Start, WhatTheShopFileHasIsOfferedAndNotWrittenAgain) {
    const job::Shop shop = job::read_shop({"shop.toml",
                                           "units = \"in\"\n[saw]\nblade_diameter = 12\nkerf = 0.11\n"
                                           "[printer]\nmedia = \"iso_a4_210x297mm\"\n"})
                               .shop;
    const Told told = talk_of(talk_head() + Lines{"1", "", "1", "45", "9 1/2"} + talk_jamb() + talk_liner() +
                                  Lines{"", "", "", "", "", "done"},
                              "en", shop);
    ASSERT_EQ(told.state, Talk::State::finished) << told.said;
    EXPECT_NE(told.said.find("Diameter of the blade [12 in, of the shop file]: "), std::string::npos) << told.said;
    EXPECT_EQ(told.job.find("[saw]"), std::string::npos) << told.job;
    EXPECT_EQ(told.job.find("media"), std::string::npos) << told.job;
    const job::Reading reading = job::read_job({"job.toml", told.job}, shop);
    EXPECT_EQ(job::render(reading.diagnostics, {"job.toml", told.job}), "");
}

TEST(Start, EveryQuestionHasItsWordsAndEveryChoiceItsLine) {
    for (const std::string language : {"en", "es"})
        for (const cli::Question& question : cli::questions()) {
            const std::string name(question.name);
            EXPECT_NE(kit(language).words("start.ask_" + name), "");
            EXPECT_NE(kit(language).words("start.how_" + name), "");
            if (!question.key.empty()) { EXPECT_NE(kit(language).words("start.note_" + name), ""); }
        }
    for (const char* asked : {"kind", "shape", "way", "side"})
        for (const std::string_view choice : cli::question(asked).choices) {
            const auto rows = cli::drawing(asked, choice);
            EXPECT_EQ(rows[0].size(), 11U) << choice;
            EXPECT_EQ(rows[1].size(), 11U) << choice;
        }
}

}  // namespace
}  // namespace kerfpacket::tests
