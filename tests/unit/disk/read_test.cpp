#include "disk/read.h"

#include <gtest/gtest.h>

#include <sys/stat.h>

#include "scratch.h"

namespace kerfpacket::disk {
namespace {

std::string why_not(const fs::path& file, std::size_t most = 100) {
    const auto bytes = read(file, most);
    return bytes ? "" : bytes.error().why;
}

TEST(Read, GivesAllBytesUpToAMost) {
    const Scratch scratch;
    scratch.write("a", std::string("1\0002", 3));
    EXPECT_EQ(read(scratch.path() / "a", 3).value(), std::string("1\0002", 3));
    EXPECT_EQ(read(scratch.path() / "a", 2).error().kind, Unread::Kind::too_large);
    // A file of the system that tells no size.
    EXPECT_GT(read("/proc/self/statm", 1000).value().size(), 3U);
    EXPECT_EQ(read("/proc/self/maps", 10).error().kind, Unread::Kind::too_large);
}

TEST(Read, TellsWhatIsNoFileAndNeverWaits) {
    const Scratch scratch;
    const fs::path pipe = scratch.path() / "pipe", link = scratch.path() / "link";
    ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
    fs::create_symlink("nowhere", link);
    EXPECT_EQ(why_not(scratch.path() / "none"), "there is no such file");
    EXPECT_EQ(why_not(scratch.path()), "this is a folder");
    EXPECT_EQ(why_not(pipe), "this is a device or a pipe");
    EXPECT_EQ(why_not("/dev/zero"), "this is a device or a pipe");
    EXPECT_EQ(why_not(link), "it is a link that leads nowhere");
    EXPECT_EQ(read(link, 1).error().kind, Unread::Kind::failed);
    EXPECT_EQ(look(scratch.path() / "none").kind, Kind::nothing);
    EXPECT_EQ(look(scratch.path() / "none/below").kind, Kind::nothing);
    EXPECT_EQ(thrown_by([&] { look(link); }), "cannot read " + link.string() + ": it is a link that leads nowhere");
}

TEST(Read, OfAFolderTheNames) {
    const Scratch scratch;
    scratch.write("b", "");
    scratch.write("a", "");
    EXPECT_EQ(names_in(scratch.path()).value(), (std::vector<std::string>{"a", "b"}));
    EXPECT_FALSE(names_in(scratch.path() / "none"));
    EXPECT_EQ(thrown_by([&] { names_in(scratch.path() / "a"); }),
              "cannot read " + (scratch.path() / "a").string() + ": it is no folder");
}

TEST(Read, AnOperationThatFailsIsToldByItsFile) {
    const Scratch scratch;
    scratch.write("a", "x");
    const fs::path file = scratch.path() / "a";
    for (const Operation failing : {Operation::look, Operation::open, Operation::read}) {
        const Gated gated([=](Operation asked, const fs::path& /*what*/) { return asked == failing ? EIO : 0; });
        EXPECT_EQ(thrown_by([&] { must_read(file, 9); }), "cannot read " + file.string() + ": the disk failed");
    }
    EXPECT_EQ(must_read(file, 9), "x");
}

}  // namespace
}  // namespace kerfpacket::disk
