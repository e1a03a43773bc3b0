#include "cli/check.h"

#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "session.h"

namespace kerfpacket::tests {
namespace {

Outcome check(const std::string& job, const std::vector<std::string>& more = {}) {
    const Folder folder;
    spill(folder / "job.toml", job);
    std::vector<std::string> words = {"check", (folder / "job.toml").string()};
    words.insert(words.end(), more.begin(), more.end());
    Outcome outcome = run_in_process(words);
    EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()), 1) << "writes nothing";
    return outcome;
}

std::string last_line(const std::string& text) {
    const std::size_t end = text.find_last_not_of('\n');
    return text.substr(text.rfind('\n', end) + 1, end - text.rfind('\n', end));
}

TEST(Check, LastLineCanBeReadAloud) {
    const Outcome good = check(good_job);
    EXPECT_EQ(good.status, 0) << good.err;
    EXPECT_EQ(last_line(good.out), "A: ok, fewer than 1 in 100 would break, 146 kerfs 3/8 in deep. Coupon first.");
    const Outcome cautious = check(short_stock_job);
    EXPECT_EQ(cautious.status, 3);
    EXPECT_EQ(last_line(cautious.out),
              "A: ok with cautions, fewer than 1 in 100 would break, 146 kerfs 3/8 in deep, blank longer than stock. "
              "Coupon first.");
    EXPECT_NE(cautious.out.find("60 in"), std::string::npos) << cautious.out;
}

/// The good job with more lines in its liner.
std::string with_liner(const std::string& lines) {
    std::string job = good_job;
    job.replace(job.find("trim = "), 0, lines);
    return job;
}

TEST(Check, SaysWhatWasChosenAndWhatTheNeighboursCost) {
    const Outcome outcome = check(good_job);
    EXPECT_NE(outcome.out.find("Common practice is ok: 3/8 in deep, 146 kerfs"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("is what limits this piece"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("7/16 in deep instead: as many cuts, 0.22 of break, ok."), std::string::npos)
        << outcome.out;
    EXPECT_NE(outcome.out.find("Kerfs 1/4 in apart instead: 147 cuts more, 0.21 of break, ok."), std::string::npos)
        << outcome.out;
    const auto settings = nlohmann::json::parse(check(good_job, {"--json"}).out).at("pieces").at(0).at("settings");
    EXPECT_EQ(settings.at("rule"), "common practice");
    EXPECT_EQ(settings.at("limit"), "peel");
    EXPECT_EQ(settings.at("closer").at("count"), 293);
    EXPECT_TRUE(settings.at("common").is_null());
    const std::string given = check(with_liner("kerf_depth = \"half\"\nspacing = 0.5\n")).out;
    EXPECT_TRUE(given.find("Chosen: ") == std::string::npos && given.find("Common practice") == std::string::npos)
        << "what the job gives needs no reason";
}

TEST(Check, SaysWhoseCouponTheVerdictRestsOn) {
    const std::string coupon =
        "[opening.liner.coupon]\nchord = 12\nrise = 0.9\nheld = \"disc\"\nresult = \"cracked\"\nby = \"L. "
        "Moss\"\nkerf_depth = 0.375\nspacing = 0.5\n";
    std::string job = with_liner("kerf_depth = \"half\"\nspacing = 0.5\n");
    job.insert(job.find('\n', job.find("trim = ")) + 1, coupon);
    const Outcome outcome = check(job);
    EXPECT_NE(outcome.out.find("of break strain, on the coupon of L. Moss"), std::string::npos)
        << outcome.out << outcome.err;
    EXPECT_TRUE(last_line(outcome.out).ends_with("By the coupon.")) << outcome.out;
    const auto piece = nlohmann::json::parse(check(job, {"--json"}).out).at("pieces").at(0);
    EXPECT_EQ(piece.at("coupon").at("by"), "L. Moss");
    EXPECT_EQ(piece.at("chance").at("coupons"), 1);
    EXPECT_EQ(piece.at("chance").at("one_in"), 100);
    EXPECT_GT(piece.at("chance").at("lowest"), 0.005);
    EXPECT_NE(outcome.out.find("boards like this would break. Counted: 1 coupon; lowest "), std::string::npos);
}

TEST(Check, AnswersForAKerfCutTooDeep) {
    const Outcome outcome = check(with_liner("too_deep = [[12, 0.75]]\n"));
    EXPECT_NE(outcome.out.find("too deep     Kerf 12, 3/4 in deep: scrap the board. It is cut through."),
              std::string::npos)
        << outcome.out << outcome.err;
    EXPECT_NE(outcome.out.find("will likely break: kerf 12 is cut through, 0."), std::string::npos) << outcome.out;
    const auto chance = [](const std::string& board) {
        return nlohmann::json::parse(check(with_liner(board), {"--json"}).out).at("pieces").at(0).at("chance");
    };
    EXPECT_TRUE(chance("too_deep = [[12, 0.75]]\n").is_null()) << "a board that is cut through is like no other";
    EXPECT_FALSE(chance("").is_null());
}

/// What a whole board would come to is no word about one that breaks at a kerf as it is now.
TEST(Check, TheVerdictOfABoardWithAKerfTooDeepIsOfThatKerf) {
    const Outcome outcome = check(with_liner("too_deep = [[12, 0.71875]]\n"));
    EXPECT_NE(outcome.out.find(" of break strain at kerf 12, too deep, 0."), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("Leaving aside the kerfs cut too deep, boards like this that would break: "),
              std::string::npos)
        << outcome.out;
    EXPECT_EQ(last_line(outcome.out).find("would break"), std::string::npos) << outcome.out;
    EXPECT_NE(last_line(outcome.out).find("kerf scraps the board"), std::string::npos) << outcome.out;
    // One that is kept is the worst kerf all the same.
    const Outcome kept = check(with_liner("too_deep = [[12, 0.4375]]\n"));
    EXPECT_TRUE(last_line(kept.out).starts_with("A: ok, ")) << kept.out;
    EXPECT_NE(kept.out.find(" of break strain at kerf 12, too deep, 0."), std::string::npos) << kept.out;
    EXPECT_EQ(last_line(kept.out).find("would break"), std::string::npos) << kept.out;
}

TEST(Check, ABoardThatBreaksIsSaidToLikelyBreak) {
    std::string tight = good_job;
    tight.replace(tight.find("span = \"72 in\""), 14, "span = \"24 in\"");
    tight.replace(tight.find("rise = \"6 in\""), 13, "rise = \"9 in\" ");
    tight.replace(tight.find("trim = "), 0, "kerf_depth = \"half\"\nspacing = \"1/2 in\"\n");
    const Outcome outcome = check(tight);
    EXPECT_EQ(outcome.status, 3);
    EXPECT_TRUE(last_line(outcome.out).starts_with("A: will likely break")) << outcome.out;
}

TEST(Check, AMistypedKeyHidesNoMistakeBehindIt) {
    std::string wrong = good_job;
    wrong.replace(wrong.find("material = \"mdf\""), 16, "material = \"mfd\"\nspaceing = 1");
    const Outcome outcome = check(wrong);
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("unknown key \"spaceing\""), std::string::npos) << outcome.err;
    EXPECT_NE(outcome.err.find("unknown material \"mfd\""), std::string::npos) << outcome.err;
}

TEST(Check, JsonHasEveryKeyOfSchemaOne) {
    const Outcome outcome = check(short_stock_job, {"--json"});
    EXPECT_EQ(outcome.status, 3);
    const auto all = nlohmann::json::parse(outcome.out);
    EXPECT_EQ(all.at("schema"), 1);
    EXPECT_EQ(all.at("job").at("number"), "K-7");
    EXPECT_EQ(all.at("job").at("fingerprint").get<std::string>().size(), 8U);
    const auto& piece = all.at("pieces").at(0);
    for (const char* key : {"id",
                            "kind",
                            "side",
                            "kerfs_on",
                            "turn_deg",
                            "radius_min_mm",
                            "thickness_mm",
                            "kerf_depth_mm",
                            "kerf_mm",
                            "web_mm",
                            "spacing_mm",
                            "blank_length_mm",
                            "bend_length_mm",
                            "finish_length_mm",
                            "count",
                            "kerfs",
                            "verdict",
                            "strain",
                            "strain_limit",
                            "utilisation",
                            "closes",
                            "close_radius_mm",
                            "facet_mm",
                            "reverses_mm",
                            "bends",
                            "spacing_min_mm",
                            "mitres_deg",
                            "survey",
                            "form",
                            "cautions"})
        EXPECT_TRUE(piece.contains(key)) << key;
    EXPECT_EQ(piece.at("kerfs_on"), "outside");
    EXPECT_TRUE(piece.at("close_radius_mm").is_null());
    EXPECT_EQ(piece.at("count"), piece.at("kerfs").size());
    EXPECT_EQ(piece.at("cautions").size(), 1U);
    std::size_t pages = 0;
    for (const auto& sheet : all.at("sheets")) pages += sheet.at("pages").get<std::size_t>();
    EXPECT_EQ(all.at("pages"), pages);
    EXPECT_GE(pages, 6U);
}

TEST(Check, JsonIsInMillimetresAndDegrees) {
    const auto piece = nlohmann::json::parse(check(good_job, {"--json"}).out).at("pieces").at(0);
    EXPECT_DOUBLE_EQ(piece.at("thickness_mm"), 19.05);
    // A whole number of kerfs at no more than half an inch.
    const double bend = piece.at("bend_length_mm");
    EXPECT_NEAR(piece.at("spacing_mm"), bend / std::ceil(bend / 12.7), 1e-5);
    EXPECT_DOUBLE_EQ(piece.at("web_mm"), 9.525);
    // Circle of chord c and rise h: angle 4 atan(2 h / c). Source: Building Trades Pocketbook, circle segments.
    EXPECT_NEAR(piece.at("turn_deg"), 4 * std::atan(12.0 / 72) * 180 / 3.14159265358979, 1e-5);
    EXPECT_NEAR(piece.at("blank_length_mm").get<double>(), piece.at("bend_length_mm").get<double>() + 6 * 25.4, 1e-5);
}

/// The good job with another head.
std::string headed(const std::string& head) {
    std::string job = good_job;
    const std::string old = "shape = \"segmental\"\nspan = \"72 in\"\nrise = \"6 in\"\n";
    job.replace(job.find(old), old.size(), head);
    job.replace(job.find("trim = "), 0, "kerf_depth = \"5/8 in\"\n");
    return job;
}

TEST(Check, TheArcsOfAHeadAreToldForATrammel) {
    const Outcome outcome =
        check(headed("shape = \"three-centred\"\nspan = \"60 in\"\nrise = \"20 in\"\n"
                     "side_radius = \"15 in\"\n"));
    EXPECT_NE(outcome.out.find("shape        three-centered, span 60 in, rise 20 in"), std::string::npos)
        << outcome.out;
    // R = (a^2 + b^2 - 2 a r)/(2 (b - r)) = (900 + 400 - 900)/10 = 40, its centre 20 below the springs.
    EXPECT_NE(outcome.out.find("radius 15 in, center 15 left of the middle, level with the springs"), std::string::npos)
        << outcome.out;
    EXPECT_NE(outcome.out.find("radius 40 in, center under the middle, 20 below the springs"), std::string::npos)
        << outcome.out;
}

// A circle of R 30 through springs 48 in apart whose right one stands 2 in higher: half their distance is
// sqrt(24^2 + 1) = 24.02, its centre sqrt(900 - 577) = 17.97 square below their middle, tilted by 1/24: 0.75 to the
// right of it and 17.96 below, 16.96 below the lower spring, which is 1 below the middle.
TEST(Check, ATrammelStandsOverTheLowerOfTwoSprings) {
    const Outcome outcome =
        check(headed("shape = \"segmental\"\nspan = \"48 in\"\nrise = \"12.03 in\"\nlegs = [\"70 in\", \"72 in\"]\n"));
    EXPECT_NE(outcome.out.find(" right of the middle, 16-15/16 below the lower spring"), std::string::npos)
        << outcome.out << outcome.err;
}

TEST(Check, EachBoardOfAPointedHeadIsToldWithItsMitre) {
    const std::string job = headed("shape = \"pointed\"\nspan = \"60 in\"\nradius = \"60 in\"\n");
    const Outcome outcome = check(job);
    EXPECT_NE(outcome.out.find("A/1  Arch liner"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("miter        30.0 degrees where it meets A/2"), std::string::npos) << outcome.out;
    const auto pieces = nlohmann::json::parse(check(job, {"--json"}).out).at("pieces");
    ASSERT_EQ(pieces.size(), 2U);
    EXPECT_NEAR(pieces.at(0).at("mitres_deg").at(1), 30, 1e-6);
    EXPECT_NEAR(pieces.at(1).at("mitres_deg").at(0), 30, 1e-6);
    EXPECT_EQ(pieces.at(0).at("mitres_deg").at(0), 0);
}

TEST(Check, ABoardThatBendsBothWaysIsToldWhereItReverses) {
    const std::string job = headed("shape = \"eyebrow\"\nspan = \"80 in\"\nrise = \"14 in\"\n");
    const Outcome outcome = check(job);
    EXPECT_NE(outcome.out.find("from zero: kerfs open from there"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find("from zero: kerfs close from there"), std::string::npos) << outcome.out;
    const auto piece = nlohmann::json::parse(check(job, {"--json"}).out).at("pieces").at(0);
    ASSERT_EQ(piece.at("reverses_mm").size(), 2U);
    ASSERT_EQ(piece.at("bends").size(), 3U);
    for (const std::size_t i : {0U, 1U, 2U})
        EXPECT_EQ(piece.at("bends").at(i).at("kerfs_on"), i == 1 ? "outside" : "inside");
    EXPECT_EQ(piece.at("bends").at(1).at("from_mm"), piece.at("reverses_mm").at(0));
    EXPECT_EQ(piece.at("bends").at(1).at("to_mm"), piece.at("reverses_mm").at(1));
    const auto& kerfs = piece.at("kerfs");
    EXPECT_EQ(kerfs.at(kerfs.size() / 2).at("on"), "outside");
    EXPECT_EQ(kerfs.at(5).at("on"), "inside");
}

TEST(Check, JsonTellsOfEveryKerfItsSpacingAndShareOfTheTurn) {
    const std::string job = headed("shape = \"elliptical\"\nspan = \"60 in\"\nrise = \"20 in\"\n");
    const auto piece = nlohmann::json::parse(check(job, {"--json"}).out).at("pieces").at(0);
    double turn = 0;
    double most = 0;
    for (const auto& kerf : piece.at("kerfs")) {
        turn += kerf.at("turn_deg").get<double>();
        most = std::max(most, kerf.at("utilisation").get<double>());
        EXPECT_LE(kerf.at("spacing_mm"), piece.at("spacing_mm").get<double>() + 1e-6);
        EXPECT_GE(kerf.at("spacing_mm"), piece.at("spacing_min_mm").get<double>() - 1e-6);
    }
    EXPECT_NEAR(turn, piece.at("turn_deg"), 1e-3);
    EXPECT_NEAR(most, piece.at("utilisation"), 1e-9);
    EXPECT_LT(piece.at("spacing_min_mm"), piece.at("spacing_mm"));
}

TEST(Check, MeasuredOrdinatesGetThreeAnswers) {
    // Heights of an arc of radius 50 over 60, to sixteenths; the sixth is 3/4 in too much.
    std::string job = headed(
        "shape = \"ordinates\"\nordinates = [[0, 0], [5, 3.3125], [10, 5.8125], [15, 7.6875], [20, 9], [25, 10.5], "
        "[30, 10], [35, 9.75], [40, 9], [45, 7.6875], [50, 5.8125], [55, 3.3125], [60, 0]]\n");
    EXPECT_EQ(check(job).status, 2);
    EXPECT_NE(check(job).err.find("station 25 in looks mistyped"), std::string::npos)
        << "the slip is told with the bend that it makes" << check(job).err;
    job.replace(job.find("trim = "), 0, "spacing = \"1/2 in\"\n");
    const Outcome outcome = check(job);
    for (const char* part : {"circle: R ", "ellipse: ", "fair curve: ", "Recommended: ", ", rms "})
        EXPECT_NE(outcome.out.find(part), std::string::npos) << part << outcome.out;
    EXPECT_NE(outcome.out.find("check        Station 25 in looks mistyped"), std::string::npos) << outcome.out;
    const auto survey = nlohmann::json::parse(check(job, {"--json"}).out).at("pieces").at(0).at("survey");
    EXPECT_EQ(survey.at("used"), "fair");
    EXPECT_EQ(survey.at("stations_mm").size(), 13U);
    EXPECT_NEAR(survey.at("suspect").at("station_mm"), 25 * 25.4, 1e-6);
    EXPECT_TRUE(survey.at("fits").contains("arc"));
    EXPECT_TRUE(survey.at("fits").contains("fair"));
    for (const auto& [fit, answer] : survey.at("fits").items()) {
        EXPECT_EQ(answer.at("misses_mm").size(), 13U);
        EXPECT_LE(answer.at("rms_mm"), answer.at("worst_mm"));
    }
}

TEST(Check, ErrorsLeaveStandardOutputEmpty) {
    const Outcome outcome = check("[job]\n", {"--json"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_NE(outcome.err.find("error"), std::string::npos);
}

}  // namespace
}  // namespace kerfpacket::tests
