// out-samples/ holds the packets and pictures of the last version that was named: tests/rules/regenerate-samples.sh
// makes them. What the program writes today of the same jobs stands in tests/golden.

#include <gtest/gtest.h>

#include <set>

#include "support/program.h"

namespace kerfpacket::tests {
namespace {

/// Samples with a packet, for whoever wants to see one.
std::vector<fs::path> with_packet() {
    std::vector<fs::path> all = sample_folders();
    std::erase_if(all, [](const fs::path& sample) { return !fs::exists(sample / "packet.pdf"); });
    return all;
}

/// The kinds of sheet that a sample has pictures of.
std::set<std::string> kinds_in(const fs::path& folder) {
    std::set<std::string> kinds;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder)) {
        const std::string name = entry.path().filename().string();
        if (name.ends_with(".png")) kinds.insert(name.substr(name.find('-', name.find('-') + 1)));
    }
    return kinds;
}

TEST(Samples, AreThere) {
    EXPECT_GE(sample_folders().size(), 5U);
    EXPECT_EQ(with_packet().size(), 2U);
}

TEST(Samples, PacketsAreIntactAndOfTheirJobs) {
    for (const fs::path& sample : with_packet()) {
        const Outcome told = run_program(
            {KERFPACKET_PROGRAM, "verify", (sample / "packet.pdf").string(), (sample / "job.toml").string()});
        EXPECT_TRUE(told.status == 0 || told.status == 3) << sample << "\n" << told.out << told.err;
        EXPECT_NE(told.out.find("packet.pdf: intact"), std::string::npos) << told.out;
        EXPECT_EQ(told.out.find("would print other sheets"), std::string::npos) << told.out;
    }
}

TEST(Samples, EveryKindOfSheetHasItsPicture) {
    for (const fs::path& sample : sample_folders()) {
        if (!fs::exists(sample / "packet.pdf")) {
            EXPECT_EQ(kinds_in(sample), std::set<std::string>{"-cover.png"}) << sample;
            continue;
        }
        const Folder folder;
        const Outcome drawn = run_program({KERFPACKET_PROGRAM, "preview", (sample / "job.toml").string(), "--dpi", "20",
                                           "--out", (folder / "pages").string()});
        ASSERT_TRUE(drawn.status == 0 || drawn.status == 3) << sample << "\n" << drawn.err;
        EXPECT_EQ(kinds_in(sample), kinds_in(folder / "pages")) << sample << " is out of date";
    }
}

}  // namespace
}  // namespace kerfpacket::tests
