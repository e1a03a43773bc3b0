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
    EXPECT_EQ(last_line(good.out), "A: ok. Coupon first.");
    const Outcome cautious = check(short_stock_job);
    EXPECT_EQ(cautious.status, 3);
    EXPECT_EQ(last_line(cautious.out), "A: caution, blank longer than stock. Coupon first.");
    EXPECT_NE(cautious.out.find("60 in"), std::string::npos) << cautious.out;
}

TEST(Check, ABoardThatBreaksIsSaidToLikelyBreak) {
    std::string tight = good_job;
    tight.replace(tight.find("span = \"72 in\""), 14, "span = \"24 in\"");
    tight.replace(tight.find("rise = \"6 in\""), 13, "rise = \"9 in\" ");
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
    EXPECT_DOUBLE_EQ(piece.at("spacing_mm"), 12.7);
    EXPECT_DOUBLE_EQ(piece.at("web_mm"), 9.525);
    // Circle of chord c and rise h: angle 4 atan(2 h / c). Source: Building Trades Pocketbook, circle segments.
    EXPECT_NEAR(piece.at("turn_deg"), 4 * std::atan(12.0 / 72) * 180 / 3.14159265358979, 1e-5);
    EXPECT_NEAR(piece.at("blank_length_mm").get<double>(), piece.at("bend_length_mm").get<double>() + 6 * 25.4, 1e-5);
}

TEST(Check, ErrorsLeaveStandardOutputEmpty) {
    const Outcome outcome = check("[job]\n", {"--json"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_NE(outcome.err.find("error"), std::string::npos);
}

}  // namespace
}  // namespace kerfpacket::tests
