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
    values.insert({{"opening-1-splay-side", "1⅛"},
                   {"opening-1-splay-measured", "wide"},
                   {"opening-1-splay-toward", "away"}});
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
    values.insert({{"points-1-splay-side", "1⅛"},
                   {"points-1-splay-measured", "narrow"},
                   {"points-1-splay-toward", "away"}});
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
