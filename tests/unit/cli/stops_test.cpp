#include "cli/stops.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "session.h"

namespace kerfpacket::tests {
namespace {

Outcome run_on(const std::string& command, const std::string& job, std::vector<std::string> more = {}) {
    const Folder folder;
    spill(folder / "job.toml", job);
    more.insert(more.begin(), {command, (folder / "job.toml").string()});
    return run_in_process(more);
}

/// The table, a row a line, fields between its commas.
std::vector<std::vector<std::string>> table(const std::string& text) {
    std::vector<std::vector<std::string>> rows;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = text.find('\n', from);
        if (end == std::string::npos) return {};
        std::vector<std::string>& row = rows.emplace_back(1);
        for (const char c : text.substr(from, end - from))
            if (c == ',') row.emplace_back();
            else row.back() += c;
        from = end + 1;
    }
    return rows;
}

std::string with(const std::string& old, const std::string& now, std::string job = good_job) {
    return job.replace(job.find(old), old.size(), now);
}

/// Distances from zero of one piece, in the unit of the table.
std::vector<double> places(const Outcome& outcome) {
    std::vector<double> places;
    const auto rows = table(outcome.out);
    for (std::size_t i = 1; i < rows.size(); ++i) places.push_back(std::stod(rows[i].at(5)));
    return places;
}

TEST(Stops, AreTheKerfsOfTheReportInTheOrderOfCutting) {
    for (const char* units : {"units = \"in\"", "units = \"mm\""}) {
        const std::string job = with("units = \"in\"", units, with("kerf = 0.118", "kerf = \"0.118 in\""));
        const Outcome outcome = run_on("stops", job, {"--blade", "middle"});
        ASSERT_EQ(outcome.status, 0) << outcome.err;
        const bool metric = std::string(units).find("mm") != std::string::npos;
        const auto rows = table(outcome.out);
        const auto piece = nlohmann::json::parse(run_on("check", job, {"--json"}).out).at("pieces").at(0);
        const auto kerfs = piece.at("kerfs");
        ASSERT_EQ(rows.size(), kerfs.size() + 1);
        EXPECT_EQ(rows[0][5], metric ? "from_zero_mm" : "from_zero_in");
        for (std::size_t i = 0; i < kerfs.size(); ++i) {
            const auto& row = rows[i + 1];
            EXPECT_EQ(row.at(0), "A");
            EXPECT_EQ(row.at(4), std::to_string(kerfs[i].at("n").get<int>()));
            const double unit = metric ? 1 : 25.4;
            EXPECT_NEAR(std::stod(row.at(5)) * unit, kerfs[i].at("at_mm").get<double>(), 0.0005 * 25.4 + 1e-6);
            EXPECT_NEAR(std::stod(row.at(3)) * unit, piece.at("blank_length_mm").get<double>(), 0.0005 * 25.4 + 1e-6);
        }
    }
}

TEST(Stops, AreToldForTheSideOfTheBladeThatIsChosen) {
    const std::vector<double> middle = places(run_on("stops", good_job, {"--blade", "middle"}));
    const std::vector<double> near = places(run_on("stops", good_job, {"--blade", "near"}));
    const std::vector<double> far = places(run_on("stops", good_job, {"--blade", "far"}));
    ASSERT_EQ(middle.size(), 146U);
    ASSERT_EQ(near.size(), middle.size());
    for (std::size_t i = 0; i < middle.size(); ++i) {
        EXPECT_NEAR(middle[i] - near[i], 0.059, 0.0011);  // half of the kerf, 0.118 in
        EXPECT_NEAR(far[i] - middle[i], 0.059, 0.0011);
    }
    // The left side of the blade is nearer to a zero at the left, farther from one at the right.
    const std::string left = with("trim = ", "tick = \"left\"\ntrim = ");
    EXPECT_EQ(places(run_on("stops", left)), near);
    const std::string from_right = with("trim = ", "zero = \"right\"\ntrim = ", left);
    EXPECT_EQ(places(run_on("stops", from_right)), places(run_on("stops", from_right, {"--blade", "far"})));
}

TEST(Stops, TellNothingOfABoardThatIsNotToBeCut) {
    const std::string breaks = with("rise = \"6 in\"", "rise = \"36 in\"",
                                    with("span = \"72 in\"", "span = \"73 in\"",
                                         with("trim = ", "kerf_depth = \"1/8 in\"\nspacing = \"2 in\"\ntrim = ")));
    const Outcome outcome = run_on("stops", breaks);
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_NE(outcome.err.find("piece A: do not cut"), std::string::npos) << outcome.err;
}

TEST(Stops, TheVerdictIsSaidBesideTheTable) {
    const Outcome outcome = run_on("stops", short_stock_job);
    EXPECT_EQ(outcome.status, 3);
    EXPECT_NE(outcome.err.find("Coupon first."), std::string::npos) << outcome.err;
    EXPECT_EQ(outcome.out.find("Coupon"), std::string::npos) << "a table alone";
}

TEST(Stops, APieceThatIsNotThereIsToldWithThoseThatAre) {
    const Outcome outcome = run_on("stops", good_job, {"--piece", "B"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("it has A"), std::string::npos) << outcome.err;
    EXPECT_EQ(run_on("stops", good_job, {"--piece", "A"}).out, run_on("stops", good_job).out);
    EXPECT_EQ(run_on("stops", good_job, {"--blade", "beside"}).status, 2);
}

}  // namespace
}  // namespace kerfpacket::tests
