// From a filled sheet to a job file.

#include <gtest/gtest.h>

#include "filled.h"

namespace kerfpacket::tests {
namespace {

using sheets::Field;

// Expected inches are worked out by hand.
const std::vector<std::pair<std::string, double>> as_phones_type{
    {"58¾", 58.75},
    {"58 ¾", 58.75},
    {"58-¾", 58.75},
    {"58 3⁄4", 58.75},
    {"4′ 10¾″", 58.75},
    {"4’ 10 3/4”", 58.75},
    {"58\u00A03/4", 58.75},
    {"58–3/4", 58.75},
    {"58\u20093/4 IN", 58.75},
    {"1492\u202Fmm", 1492 / 25.4},
};

Values arch(const std::string& span) {
    return {{"job-1-number", "F-12"},           {"job-1-title", "Sta. María, Nº 5 – «café» Łódź"},
            {"job-1-date", "2026-03-09"},       {"opening-1-id", "B2"},
            {"opening-1-span", span},           {"opening-1-rise", "1′ 1⅝″"},
            {"opening-1-leg-left", "80⅜"},      {"opening-1-leg-right", "80 3/8”"},
            {"opening-1-shape", "segmental"},   {"opening-1-depth", "4⅝"},
            {"opening-1-measured-to", "finish"}};
}

TEST(FilledSheet, LengthsAreReadAsPhonesTypeThem) {
    const std::string blank = blank_form();
    for (const auto& [typed, inches] : as_phones_type) {
        const Folder folder;
        spill(folder / "f.pdf", filled(blank, arch(typed)));
        const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml");
        ASSERT_EQ(ran.status, cli::Status::done) << typed << ran.out << ran.err;
        const job::Job job = job_of(folder / "f.toml");
        ASSERT_EQ(job.openings.size(), 1U);
        EXPECT_NEAR(job.openings[0].span.value.inches(), inches, 1e-9) << typed;
        const std::string text = slurp(folder / "f.toml");
        EXPECT_NE(text.find("; typed: " + typed + "\n"), std::string::npos) << typed << text;
    }
}

TEST(FilledSheet, AnswersWhatStartAsks) {
    const Folder folder;
    spill(folder / "f.pdf", filled(blank_form(), arch("58¾")));
    const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml");
    ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
    const job::Job job = job_of(folder / "f.toml");
    EXPECT_EQ(job.header.number, "F-12");
    EXPECT_EQ(job.header.title, "Sta. María, Nº 5 – «café» Łódź");
    const job::Opening& opening = job.openings.at(0);
    EXPECT_EQ(opening.id.value, "B2");
    EXPECT_EQ(opening.shape.value, job::Shape::segmental);
    EXPECT_EQ(opening.measured_to, job::Surface::finish);
    EXPECT_NEAR(opening.rise.value.inches(), 13.625, 1e-9);
    ASSERT_TRUE(opening.legs.has_value());
    EXPECT_NEAR((*opening.legs)[1].value.inches(), 80.375, 1e-9);
    EXPECT_NEAR(opening.liner.width.value.inches(), 4.625, 1e-9);
    for (const std::string& prompt : ran.asked)
        for (const char* known : {"Span", "Rise", "Tag", "Which head", "Number", "Title", "Depth of the jamb"})
            EXPECT_FALSE(prompt.starts_with(known)) << prompt;
}

TEST(FilledSheet, AskForWhatIsEmptyAndWhatMakesNoSense) {
    const Folder folder;
    Values values = arch("58 3/4");
    values["opening-1-rise"] = "13 5x8";
    values.erase("opening-1-depth");
    spill(folder / "f.pdf", filled(blank_form(), values));
    Values answers = rest;
    answers["rise"] = "13 5/8";
    answers["depth"] = "4 5/8";
    const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml", answers);
    ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
    EXPECT_NE(ran.out.find("nothing stands there: Jamb depth at the crown"), std::string::npos) << ran.out;
    EXPECT_NEAR(job_of(folder / "f.toml").openings.at(0).rise.value.inches(), 13.625, 1e-9);
}

TEST(FilledSheet, WithoutAnswersKeepsWhatItReadAndGoesOnLater) {
    const Folder folder;
    spill(folder / "f.pdf", filled(blank_form(), arch("58 3/4")));
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    cli::StartChoice choice;
    choice.from = {(folder / "f.pdf").string(), (folder / "f.toml").string()};  // as the command line has it
    EXPECT_EQ(cli::start(
                  choice, [](const std::string&) { return std::nullopt; }, console, KERFPACKET_BUILD_DIR),
              cli::Status::errors);
    EXPECT_NE(err.str().find("--from"), std::string::npos) << err.str();
    EXPECT_TRUE(fs::exists(folder / "f.toml.part"));
    const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml");
    ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
    EXPECT_NEAR(job_of(folder / "f.toml").openings.at(0).span.value.inches(), 58.75, 1e-9);
}

TEST(FilledSheet, SeveralMakeOneJobInTheOrderOfTheirNames) {
    const Folder folder;
    spill(folder / "a.pdf", filled(blank_form(), arch("58 3/4")));
    spill(folder / "w.pdf",
          filled(blank_form({Field::wall}, "es", measure::Unit::millimetre), {{"wall-1-id", "W"},
                                                                              {"wall-1-chord", "2 400"},
                                                                              {"wall-1-rise", "280"},
                                                                              {"wall-1-tail-left", "300"},
                                                                              {"wall-1-tail-right", "250"},
                                                                              {"wall-1-side", "convex"},
                                                                              {"wall-1-width", "140"},
                                                                              {"wall-1-measured-to", "wall"},
                                                                              {"job-1-notes", "line one\nline two"}}));
    Values answers = rest;
    answers["chord"] = "2400 mm";  // "2 400" may be two figures
    const Started ran = start_from({folder / "a.pdf", folder / "w.pdf"}, folder / "f.toml", answers, "en");
    ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
    const job::Job job = job_of(folder / "f.toml");
    ASSERT_EQ(job.openings.size(), 1U);
    ASSERT_EQ(job.walls.size(), 1U);
    EXPECT_EQ(job.walls[0].side.value, job::Side::convex);
    EXPECT_NEAR(job.walls[0].rise->value.mm(), 280, 1e-9) << "millimetres, though the job is in inches";
    EXPECT_NE(slurp(folder / "f.toml").find("line one line two"), std::string::npos);
}

TEST(FilledSheet, OfAnOpeningSaysHowItSplays) {
    const Folder folder;
    Values values = arch("58 3/4");
    spill(folder / "square.pdf", filled(blank_form(), values));
    ASSERT_EQ(start_from({folder / "square.pdf"}, folder / "square.toml").status, cli::Status::done);
    EXPECT_FALSE(job_of(folder / "square.toml").openings.at(0).splay) << "left empty it is square to its wall";
    values.insert(
        {{"opening-1-splay-side", "1⅛"}, {"opening-1-splay-measured", "wide"}, {"opening-1-splay-toward", "away"}});
    spill(folder / "f.pdf", filled(blank_form(), values));
    const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml");
    ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
    const job::Opening opening = job_of(folder / "f.toml").openings.at(0);
    ASSERT_TRUE(opening.splay);
    EXPECT_NEAR(std::get<job::Sourced<measure::Length>>(opening.splay->by).value.inches(), 1.125, 1e-9);
    EXPECT_EQ(opening.splay->measured, job::Edge::wide);
    EXPECT_EQ(opening.splay->wide, job::Toward::away);
    for (const std::string& prompt : ran.asked) EXPECT_FALSE(prompt.starts_with("Is it wider")) << prompt;
    // One that says where the wide edge is, but not how much wider, is asked.
    values.erase("opening-1-splay-side");
    spill(folder / "half.pdf", filled(blank_form(), values));
    const Started half = start_from({folder / "half.pdf"}, folder / "half.toml");
    EXPECT_TRUE(std::any_of(half.asked.begin(), half.asked.end(),
                            [](const std::string& prompt) { return prompt.starts_with("Is it wider"); }));
}

TEST(FilledSheet, OfAWallWithAStepIsABoardThatClimbs) {
    const Folder folder;
    spill(folder / "w.pdf", filled(blank_form({Field::wall}), {{"job-1-number", "S-4"},
                                                               {"job-1-title", "Stair"},
                                                               {"job-1-date", "2026-03-09"},
                                                               {"wall-1-id", "S"},
                                                               {"wall-1-radius", "66"},
                                                               {"wall-1-angle", "80"},
                                                               {"wall-1-side", "concave"},
                                                               {"wall-1-width", "8¼"},
                                                               {"wall-1-measured-to", "wall"},
                                                               {"wall-1-step-rise", "7⅜"},
                                                               {"wall-1-step-run", "10 1/4"},
                                                               {"wall-1-climbs", "left"}}));
    const Started ran = start_from({folder / "w.pdf"}, folder / "w.toml");
    ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
    const job::Job job = job_of(folder / "w.toml");
    ASSERT_EQ(job.walls.size(), 1U);
    ASSERT_TRUE(job.walls[0].rake.has_value());
    EXPECT_NEAR(job.walls[0].rake->steepness(), 7.375 / 10.25, 1e-9);
    EXPECT_FALSE(job.walls[0].rake->to_the_right());
    for (const std::string& prompt : ran.asked) EXPECT_FALSE(prompt.starts_with("Rise and run")) << prompt;
}

TEST(FilledSheet, OfMeasuredPointsKeepsThemAll) {
    const Folder folder;
    Values values{{"job-1-number", "P-1"},          {"job-1-title", "Points"},
                  {"job-1-date", "2026-03-09"},     {"points-1-id", "C"},
                  {"points-1-base", "opening"},     {"points-1-depth", "4 5/8"},
                  {"points-1-measured-to", "wall"}, {"points-1-angle-left", "34"}};
    const std::vector<std::pair<std::string, std::string>> points{{"0", "0"},    {"5", "7¼"},       {"11", "11⅜"},
                                                                  {"18", "13⅞"}, {"25", "14 5/16"}, {"32", "13⅛"},
                                                                  {"39", "9⅞"},  {"44", "5¾"},      {"48", "0"}};
    for (std::size_t i = 0; i < points.size(); ++i) {
        values["points-1-station-" + std::to_string(i + 1)] = points[i].first;
        values["points-1-height-" + std::to_string(i + 1)] = points[i].second;
    }
    spill(folder / "f.pdf", filled(blank_form({Field::ordinates}), values));
    const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml");
    ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
    const job::Job job = job_of(folder / "f.toml");
    ASSERT_TRUE(job.openings.at(0).ordinates.has_value());
    EXPECT_EQ(job.openings[0].ordinates->points.size(), points.size());
    const std::string text = slurp(folder / "f.toml");
    EXPECT_NE(text.find("# typed: 5, 7¼"), std::string::npos) << text;
    EXPECT_NE(text.find("Angle at the left end, in degrees: 34"), std::string::npos) << "nothing written is lost";
    EXPECT_FALSE(job.openings[0].splay) << "left empty it is square to its wall";
    values.insert(
        {{"points-1-splay-side", "1⅛"}, {"points-1-splay-measured", "narrow"}, {"points-1-splay-toward", "away"}});
    spill(folder / "s.pdf", filled(blank_form({Field::ordinates}), values));
    ASSERT_EQ(start_from({folder / "s.pdf"}, folder / "s.toml").status, cli::Status::done);
    const auto splay = job_of(folder / "s.toml").openings.at(0).splay;
    ASSERT_TRUE(splay);
    EXPECT_NEAR(std::get<job::Sourced<measure::Length>>(splay->by).value.inches(), 1.125, 1e-9);
    EXPECT_EQ(splay->measured, job::Edge::narrow);
    EXPECT_EQ(splay->wide, job::Toward::away);
}

// 58.75 and 80.375 in make 99.556 in (Pythagoras, by hand).
TEST(FilledSheet, DiagonalsAreHeldAgainstSpanAndLegs) {
    for (const auto& [typed, fits] : {std::pair<const char*, bool>{"99 9/16", true}, {"98 9/16", false}}) {
        const Folder folder;
        Values values = arch("58 3/4");
        values["opening-1-d1"] = typed;
        spill(folder / "f.pdf", filled(blank_form(), values));
        const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml");
        ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
        EXPECT_EQ(ran.err.find("caution") == std::string::npos, fits) << ran.err;
        EXPECT_NE(slurp(folder / "f.toml").find(typed), std::string::npos) << "kept as a comment";
    }
}

struct Measured {
    Values figures;
    std::vector<std::string> doubts;  ///< in what is said of it; none: nothing is said
};

// A head of 60 by 20 in, a quarter of the span in: a circle of R 32.5 in has sqrt(32.5^2 - 15^2) - 12.5 = 16.331 in
// there, an ellipse 20 sqrt(3)/2 = 17.321 in, by their equations. A wall of chord 90 and rise 9 in: R 117 in; its half
// string, sqrt(45^2 + 9^2) = 45.891 in long, stands 2.272 in off its middle. With R 100 in the rise would be 10.697 in.
TEST(FilledSheet, ChecksAreHeldAgainstTheCurveThatIsTold) {
    const Values head{{"opening-1-span", "60"}, {"opening-1-rise", "20"}};
    const Values wall{{"wall-1-chord", "90"}, {"wall-1-rise", "9"}};
    const std::vector<std::pair<Values, Measured>> all{
        {head, {{{"opening-1-q1", "16 3/8"}, {"opening-1-q2", "16 1/4"}}, {}}},
        {head,
         {{{"opening-1-q1", "17 3/8"}, {"opening-1-q2", "17 3/8"}}, {"16-5/16 in", "With 17-5/16 in", "elliptical"}}},
        {head, {{{"opening-1-q1", "17 3/8"}, {"opening-1-q2", "17 3/8"}, {"opening-1-shape", "elliptical"}}, {}}},
        {head, {{{"opening-1-q2", "4"}}, {"Q2", "16-5/16 in"}}},
        {head, {{{"opening-1-shape", "semicircular"}}, {"Rise", "30 in"}}},
        {head, {{{"opening-1-shape", "semicircular"}, {"opening-1-rise", "30"}, {"opening-1-q1", "26"}}, {}}},
        {head, {{{"opening-1-depth-left", "4 5/8"}, {"opening-1-depth-right", "4 11/16"}}, {}}},
        {head, {{{"opening-1-depth-right", "6 1/2"}}, {"Jamb depth, right: 6-1/2 in", "4-5/8 in"}}},
        {wall, {{{"wall-1-h1", "2 1/4"}, {"wall-1-h2", "2 5/16"}, {"wall-1-radius", "117"}}, {}}},
        {wall, {{{"wall-1-h1", "6"}, {"wall-1-h2", "6"}}, {"H1", "H2", "2-1/4 in"}}},
        {wall, {{{"wall-1-radius", "100"}}, {"Radius", "117 in"}}},
        {wall, {{{"wall-1-radius", "40"}}, {"Radius", "117 in"}}},
    };
    for (const auto& [figures, measured] : all) {
        const bool opening = figures == head;
        const Folder folder;
        Values values = arch("60");
        if (!opening)
            values = {{"job-1-number", "W-7"},    {"job-1-title", "Bay"},     {"job-1-date", "2026-03-09"},
                      {"wall-1-id", "W"},         {"wall-1-tail-left", "12"}, {"wall-1-tail-right", "12"},
                      {"wall-1-side", "concave"}, {"wall-1-width", "5 1/4"},  {"wall-1-measured-to", "wall"}};
        for (const auto& [field, typed] : figures) values[field] = typed;
        for (const auto& [field, typed] : measured.figures) values[field] = typed;
        spill(folder / "f.pdf", filled(blank_form({opening ? Field::arch : Field::wall}), values));
        Values answers = rest;
        answers["way"] = "chord";
        const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml", answers);
        ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
        EXPECT_EQ(ran.err.find("caution") == std::string::npos, measured.doubts.empty()) << ran.err;
        for (const std::string& doubt : measured.doubts)
            EXPECT_NE(ran.err.find(doubt), std::string::npos) << doubt << "\n" << ran.err;
    }
}

TEST(FilledSheet, NoWordOfASheetEndsAComment) {
    const Folder folder;
    Values values = arch("58 3/4");
    values["opening-1-rise"] = "13 5/8";
    values["job-1-notes"] = "a\r\n[saw]\nkerf = 9\x01\x1b[2J \xE2\x80\xAE";
    values["job-1-tape"] = "\"\"\" # = [[";
    spill(folder / "f.pdf", filled(blank_form(), values));
    const Started ran = start_from({folder / "f.pdf"}, folder / "f.toml");
    ASSERT_EQ(ran.status, cli::Status::done) << ran.out << ran.err;
    EXPECT_EQ(ran.out.find('\x1b'), std::string::npos);
    EXPECT_NO_THROW(job_of(folder / "f.toml"));
}

}  // namespace
}  // namespace kerfpacket::tests
