// out-samples/ holds what the program writes today: tests/rules/regenerate-samples.sh makes it so.

#include <gtest/gtest.h>

#include <set>

#include "support/program.h"

namespace kerfpacket::tests {
namespace {

bool done(int status) { return status == 0 || status == 3; }

std::set<std::string> pictures_in(const fs::path& folder) {
    std::set<std::string> names;
    for (const fs::directory_entry& entry : fs::directory_iterator(folder))
        if (entry.path().extension() == ".png") names.insert(entry.path().filename().string());
    return names;
}

/// The first page's picture of each kind, of all pictures of a folder.
std::set<std::string> first_of_each_kind(const fs::path& folder) {
    std::set<std::string> names = pictures_in(folder);
    std::set<std::string> kinds;
    std::erase_if(names, [&](const std::string& name) {
        return !kinds.insert(name.substr(name.find('-', name.find('-') + 1))).second;
    });
    return names;
}

TEST(Samples, AreThere) { EXPECT_GE(sample_folders().size(), 2U); }

TEST(Samples, PacketsAreWhatTheProgramWrites) {
    for (const fs::path& sample : sample_folders()) {
        const Folder folder;
        const Outcome built = run_program(
            {KERFPACKET_PROGRAM, "build", (sample / "job.toml").string(), "--out", (folder / "packet.pdf").string()});
        ASSERT_TRUE(done(built.status)) << sample << "\n" << built.err;
        EXPECT_TRUE(slurp(folder / "packet.pdf") == slurp(sample / "packet.pdf")) << sample << " is out of date";
    }
}

TEST(Samples, EveryKindOfPageHasItsPicture) {
    for (const fs::path& sample : sample_folders()) {
        const Folder folder;
        const Outcome drawn = run_program(
            {KERFPACKET_PROGRAM, "preview", (sample / "job.toml").string(), "--out", (folder / "pages").string()});
        ASSERT_TRUE(done(drawn.status)) << sample << "\n" << drawn.err;
        EXPECT_EQ(pictures_in(sample), first_of_each_kind(folder / "pages")) << sample << " is out of date";
    }
}

}  // namespace
}  // namespace kerfpacket::tests
