#include "disk/lock.h"

#include <gtest/gtest.h>

#include <array>
#include <optional>

#include <sys/wait.h>
#include <unistd.h>

#include "disk/filing.h"
#include "scratch.h"

namespace kerfpacket::disk {
namespace {

std::size_t entries(const fs::path& folder) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

TEST(Lock, IsOnesAtATimeAndLeavesNothing) {
    const Scratch scratch;
    const fs::path file = scratch.path() / "a.pdf";
    {
        const Lock lock(file), another(scratch.path() / "b.pdf");
        const std::string said = thrown_by([&] { const Lock second(file); });
        EXPECT_NE(said.find(file.string() + " is being written by another kerfpacket, process " +
                            std::to_string(::getpid()) + " on the computer "),
                  std::string::npos)
            << said;
    }
    EXPECT_EQ(entries(scratch.path()), 0U);
    const Lock again(file);
}

TEST(Lock, IsThatOfTheFileThatALinkLeadsTo) {
    const Scratch scratch;
    scratch.write("a.pdf", "x");
    fs::create_symlink("a.pdf", scratch.path() / "link.pdf");
    const Lock lock(scratch.path() / "a.pdf");
    EXPECT_NE(thrown_by([&] { const Lock second(scratch.path() / "link.pdf"); }), "");
}

TEST(Lock, OfADeadProgramIsTakenAndItsFilesAreSwept) {
    const Scratch scratch;
    const fs::path file = scratch.path() / "a.pdf";
    scratch.write(".kerfpacket-old.part", "left by one that died");
    scratch.write(".other.part", "not ours");
    const pid_t child = ::fork();
    if (child == 0) {
        const Lock lock(file);
        Filing filing;
        filing.add(file, "half done");
        _exit(entries(scratch.path()) == 3 ? 0 : 1);  // the lock, its own part and what is not ours
    }
    int status = 0;
    ASSERT_EQ(::waitpid(child, &status, 0), child);
    ASSERT_EQ(status, 0);
    EXPECT_EQ(entries(scratch.path()), 3U);
    { const Lock lock(file); }
    EXPECT_EQ(entries(scratch.path()), 1U);
    EXPECT_TRUE(fs::exists(scratch.path() / ".other.part"));
}

TEST(Lock, FilesThatAreBeingWrittenAreNotSwept) {
    const Scratch scratch;
    Filing filing;
    filing.add(scratch.path() / "a.pdf", "new");
    { const Lock lock(scratch.path() / "b.pdf"); }
    EXPECT_TRUE(filing.commit().empty());
    EXPECT_EQ(entries(scratch.path()), 1U);
}

TEST(Lock, WhereAFolderIsMissingItIsTold) {
    const Scratch scratch;
    const fs::path file = scratch.path() / "none/a.pdf";
    EXPECT_EQ(thrown_by([&] { const Lock lock(file); }),
              "cannot write " + file.string() + ": its folder does not exist");
}

}  // namespace
}  // namespace kerfpacket::disk
