// A piece that cannot be made does not hold up the others, and is told wherever they are.
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "session.h"
#include "support/laid_out.h"

namespace kerfpacket::tests {
namespace {

/// Two inches of radius: no 3/4 in board follows it.
const std::string impossible_opening = R"([[opening]]
id = "B"
shape = "semicircular"
span = "4 in"
depth = "5-1/4 in"
[opening.liner]
material = "mdf"
thickness = "3/4 in"
)";

std::string with_units(const std::string& language) {
    std::string job = good_job + impossible_opening;
    return job.insert(job.find("units ="), "language = \"" + language + "\"\n");
}

class Refused : public testing::Test {
protected:
    Refused() { spill(job(), with_units("en")); }
    fs::path job() const { return folder_ / "house.toml"; }
    fs::path pdf() const { return folder_ / "house.pdf"; }
    Outcome run(const std::string& command, const std::vector<std::string>& more = {}) const {
        std::vector<std::string> words = {command, job().string()};
        words.insert(words.end(), more.begin(), more.end());
        return run_in_process(words);
    }
    const Folder folder_;
};

std::string texts(const page::Page& page) {
    std::string all;
    for (const page::Item& item : page.items)
        if (const auto* text = std::get_if<page::TextItem>(&item)) all += text->text + "\n";
    return all;
}

TEST_F(Refused, TheOthersArePrinted) {
    const Outcome outcome = run("build");
    EXPECT_EQ(outcome.status, 3) << outcome.err;
    EXPECT_TRUE(fs::exists(pdf()));
    EXPECT_NE(outcome.err.find(": do not cut: "), std::string::npos) << outcome.err;
    EXPECT_EQ(outcome.err.find("error"), std::string::npos) << outcome.err;
    EXPECT_NE(outcome.out.find("A: ok, "), std::string::npos) << outcome.out;
    EXPECT_TRUE(outcome.out.ends_with("B: do not cut, it cannot be made as asked. Coupon first.\n")) << outcome.out;
}

TEST_F(Refused, StrictWritesNothing) {
    const Outcome outcome = run("build", {"--strict"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_FALSE(fs::exists(pdf()));
    EXPECT_NE(outcome.err.find(": error: "), std::string::npos) << outcome.err;
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(run("check", {"--strict"}).status, 2);
}

TEST_F(Refused, AJobOfNothingElsePrintsNothing) {
    std::string text = good_job;
    text.erase(text.find("[[opening]]"));
    spill(job(), text + impossible_opening);
    const Outcome outcome = run("build");
    EXPECT_EQ(outcome.status, 2);
    EXPECT_FALSE(fs::exists(pdf()));
    EXPECT_NE(outcome.err.find(": error: "), std::string::npos) << outcome.err;
}

TEST_F(Refused, CheckAndJsonTellIt) {
    const Outcome report = run("check");
    EXPECT_EQ(report.status, 3);
    EXPECT_NE(report.out.find("B  Arch liner: DO NOT CUT"), std::string::npos) << report.out;
    const Outcome json = run("check", {"--json"});
    const auto read = nlohmann::json::parse(json.out);
    ASSERT_EQ(read.at("refused").size(), 1U);
    EXPECT_EQ(read["refused"][0].at("id"), "B");
    EXPECT_EQ(read["refused"][0].at("do_not_cut"), true);
    ASSERT_FALSE(read["refused"][0].at("reasons").empty());
    EXPECT_GT(read["refused"][0]["reasons"][0].at("line"), 20);
    EXPECT_EQ(read.at("pieces").size(), 1U);
}

TEST_F(Refused, HasItsSheetAndItsPlaceOnTheCover) {
    for (const auto& [language, words] : {std::pair("en", "DO NOT CUT B"), std::pair("es", "NO CORTE B")}) {
        spill(job(), with_units(language));
        const page::Document packet = laid_out(job());
        EXPECT_NE(texts(packet.pages.front()).find(words), std::string::npos) << texts(packet.pages.front());
        int sheets = 0;
        for (const page::Page& page : packet.pages) {
            if (page.piece != "B") continue;
            EXPECT_EQ(page.sheet, "refused");
            EXPECT_NE(texts(page).find(words), std::string::npos);
            EXPECT_NE(texts(page).find("4 "), std::string::npos) << "what was asked";
            ++sheets;
        }
        EXPECT_GE(sheets, 1);
    }
}

TEST_F(Refused, ThePacketIsVerified) {
    ASSERT_EQ(run("build").status, 3);
    const Outcome verified = run_in_process({"verify", pdf().string(), job().string()});
    EXPECT_EQ(verified.status, 0) << verified.out << verified.err;
}

TEST_F(Refused, ARevisionTellsIt) {
    spill(job(), good_job);
    ASSERT_EQ(run("build").status, 0);
    std::string text = good_job + impossible_opening;
    text.replace(text.find("revision = \"B\""), 14, "revision = \"C\"");
    spill(job(), text);
    const Outcome outcome = run("build");
    EXPECT_EQ(outcome.status, 3) << outcome.err;
    const fs::path before = folder_ / "before.toml";
    spill(before, good_job);
    const page::Document packet = laid_out(job(), before);
    std::string all;
    for (const page::Page& page : packet.pages)
        if (page.sheet == "changes") all += texts(page);
    EXPECT_NE(all.find("cannot be made"), std::string::npos) << all;
}

TEST_F(Refused, AnUnknownMaterialIsAMistakeOfTheFileWhateverElseIsWrong) {
    std::string text = good_job + impossible_opening;
    text.replace(text.rfind("\"mdf\""), 5, "\"poplar\"");
    text.replace(text.find("kerf = 0.118"), 12, "kerf = 40");
    spill(job(), text);
    const Outcome outcome = run("check");
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("did you mean \"yellow-poplar\"?"), std::string::npos) << outcome.err;
    EXPECT_NE(outcome.err.find("kerf is too large"), std::string::npos) << outcome.err;
    EXPECT_EQ(outcome.out, "");
}

/// Refused alone, a piece leaves no plan.
TEST(RefusedAlone, IsAnError) {
    const Folder folder;
    const std::string splayed =
        good_job.substr(0, good_job.find("[[opening]]")) + impossible_opening + "[opening.splay]\nangle = 20\n" +
        "measured = \"narrow\"\ntoward = \"room\"\n";
    std::string pointed = splayed;
    pointed.replace(pointed.find("semicircular"), 12, "pointed");
    pointed.replace(pointed.find("4 in"), 4, "40 in\"\nradius = \"44 in");
    const std::string steep =
        good_job.substr(0, good_job.find("[[opening]]")) +
        "[[wall]]\nid = \"S\"\nchord = 100\nrise = 12\nside = \"convex\"\nrake = [9, 8]\nclimbs = \"right\"\n"
        "[wall.board]\nmaterial = \"mdf\"\nthickness = \"1/2 in\"\nwidth = 6\n";
    const std::string limited =
        std::string(steep).insert(steep.find("kerf = 0.118"), "mitre_limit = 45\n");
    for (const std::string& job : {pointed, limited}) {
        spill(folder / "job.toml", job);
        const Outcome outcome = run_in_process({"check", (folder / "job.toml").string()});
        EXPECT_EQ(outcome.status, 2);
        EXPECT_EQ(outcome.out, "");
        EXPECT_NE(outcome.err.find(": error: "), std::string::npos) << outcome.err;
        EXPECT_NE(outcome.err.find("would do: "), std::string::npos) << outcome.err;
    }
}

}  // namespace
}  // namespace kerfpacket::tests
