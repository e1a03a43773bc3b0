#include "disk/filing.h"

#include <csignal>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "scratch.h"

namespace kerfpacket::disk {
namespace {

namespace fs = std::filesystem;

std::string read(const fs::path& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

/// One file, as commands write it.
std::vector<std::string> write_whole(const fs::path& target, const std::string& bytes) {
    Filing filing;
    filing.add(target, bytes);
    return filing.commit();
}

std::size_t entries(const fs::path& folder) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

TEST(Filing, WritesAndReplaces) {
    const Scratch scratch;
    const fs::path file = scratch.path() / "a.pdf";
    write_whole(file, std::string("one\0two", 7));
    EXPECT_EQ(read(file), std::string("one\0two", 7));
    write_whole(file, "new");
    EXPECT_EQ(read(file), "new");
    EXPECT_EQ(entries(scratch.path()), 1U);
}

TEST(Filing, HonoursTheUmask) {
    const Scratch scratch;
    const mode_t before = ::umask(022);
    write_whole(scratch.path() / "a.pdf", "x");
    ::umask(before);
    EXPECT_EQ(fs::status(scratch.path() / "a.pdf").permissions(), fs::perms{0644});
}

TEST(Filing, ALinkStaysALink) {
    const Scratch scratch;
    scratch.write("real/a.pdf", "old");
    fs::create_symlink("real/a.pdf", scratch.path() / "link.pdf");
    write_whole(scratch.path() / "link.pdf", "new");
    EXPECT_TRUE(fs::is_symlink(scratch.path() / "link.pdf"));
    EXPECT_EQ(read(scratch.path() / "real/a.pdf"), "new");
}

TEST(Filing, AFileInTheCurrentFolderNeedsNoPath) {
    const Scratch scratch;
    const fs::path before = fs::current_path();
    fs::current_path(scratch.path());
    const std::string said = thrown_by([] { write_whole("plain.pdf", "x"); });
    fs::current_path(before);
    EXPECT_EQ(said, "");
    EXPECT_EQ(read(scratch.path() / "plain.pdf"), "x");
}

TEST(Filing, PlacesThatCannotBeWrittenAreToldInPlainWords) {
    const Scratch scratch;
    fs::create_directory(scratch.path() / "folder");
    EXPECT_NE(thrown_by([&] { write_whole(scratch.path() / "none/a.pdf", "x"); }).find("folder does not exist"),
              std::string::npos);
    const std::string said = thrown_by([&] { write_whole(scratch.path() / "folder", "x"); });
    EXPECT_NE(said.find("a folder has that name"), std::string::npos) << said;
    EXPECT_EQ(entries(scratch.path()), 1U);
}

TEST(Filing, AFileTooLargeForTheLimitLeavesTheOldOne) {
    const Scratch scratch;
    scratch.write("a.pdf", "old");
    rlimit before{};
    ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &before), 0);
    const auto handler = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit small{4096, before.rlim_max};
    ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &small), 0);
    const std::string said = thrown_by([&] { write_whole(scratch.path() / "a.pdf", std::string(10000, 'x')); });
    ::setrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, handler);
    EXPECT_NE(said.find("larger than is allowed"), std::string::npos) << said;
    EXPECT_EQ(read(scratch.path() / "a.pdf"), "old");
    EXPECT_EQ(entries(scratch.path()), 1U);
}

/// A disk of 16 kB in memory; only root may make one.
class TinyDisk {
public:
    explicit TinyDisk(const fs::path& at) : at_(at), made_(::mount("tmpfs", at.c_str(), "tmpfs", 0, "size=16k") == 0) {}
    ~TinyDisk() {
        if (made_) ::umount(at_.c_str());
    }
    TinyDisk(const TinyDisk&) = delete;
    TinyDisk& operator=(const TinyDisk&) = delete;
    bool made() const { return made_; }

private:
    fs::path at_;
    bool made_;
};

TEST(Filing, AFullDiskLeavesTheOldFile) {
    const Scratch scratch;
    const TinyDisk disk(scratch.path());
    if (!disk.made()) GTEST_SKIP() << "no right to make a small disk";
    scratch.write("a.pdf", "old");
    const std::string said = thrown_by([&] { write_whole(scratch.path() / "a.pdf", std::string(100000, 'x')); });
    EXPECT_NE(said.find("the disk is full"), std::string::npos) << said;
    EXPECT_EQ(read(scratch.path() / "a.pdf"), "old");
    EXPECT_EQ(entries(scratch.path()), 1U);
}

TEST(Filing, KeepsThePermissionsOfWhatItReplaces) {
    const Scratch scratch;
    for (const mode_t mode : {0600U, 0640U, 0666U, 0755U}) {
        scratch.write("a.pdf", "old");
        ASSERT_EQ(::chmod((scratch.path() / "a.pdf").c_str(), mode), 0);
        write_whole(scratch.path() / "a.pdf", "new");
        EXPECT_EQ(fs::status(scratch.path() / "a.pdf").permissions(), fs::perms{mode});
    }
}

TEST(Filing, ALinkThatLeadsNowhereIsRefused) {
    const Scratch scratch;
    const fs::path link = scratch.path() / "link.pdf";
    fs::create_symlink("none.pdf", link);
    EXPECT_EQ(thrown_by([&] { write_whole(link, "x"); }),
              "cannot read " + link.string() + ": it is a link that leads nowhere");
    EXPECT_TRUE(fs::is_symlink(link));
}

TEST(Filing, TheLongestNameIsAName) {
    const Scratch scratch;
    // POSIX's NAME_MAX on Linux file systems: 255 bytes.
    for (const std::size_t length : {249U, 255U}) {
        const fs::path file = scratch.path() / std::string(length, 'n');
        write_whole(file, "x");
        EXPECT_EQ(read(file), "x");
    }
    EXPECT_NE(thrown_by([&] { write_whole(scratch.path() / std::string(256, 'n'), "x"); }).find("the name is too long"),
              std::string::npos);
}

TEST(Filing, AllOrNone) {
    const Scratch scratch;
    scratch.write("b", "old");
    for (const Operation failing : {Operation::rename, Operation::flush, Operation::write, Operation::lock}) {
        for (int which = 1; which <= 3; ++which) {
            int count = 0;
            const Gated gated([&](Operation asked, const fs::path& /*what*/) {
                return asked == failing && ++count == which ? EIO : 0;
            });
            std::vector<std::string> doubts;
            const std::string said = thrown_by([&] {
                Filing filing;
                filing.add(scratch.path() / "a", "new", Over::nothing);
                filing.add(scratch.path() / "b", "new");
                doubts = filing.commit();
            });
            // The third of three flushes is that of the folder, when all is in place.
            if (failing == Operation::flush && which == 3) {
                ASSERT_EQ(doubts.size(), 1U);
                EXPECT_EQ(doubts.front(), "the folder " + scratch.path().string() +
                                              " could not be flushed to the disk: the disk failed");
                EXPECT_EQ(read(scratch.path() / "a"), "new");
                fs::remove(scratch.path() / "a");
                scratch.write("b", "old");
            } else if (which < 3) {
                EXPECT_NE(said, "") << which;
                EXPECT_EQ(entries(scratch.path()), 1U);
                EXPECT_EQ(read(scratch.path() / "b"), "old");
            } else {
                fs::remove(scratch.path() / "a");
                scratch.write("b", "old");
            }
        }
    }
}

TEST(Filing, WhatHasAppearedMeanwhileStays) {
    const Scratch scratch;
    Filing filing;
    filing.add(scratch.path() / "a", "new", Over::nothing);
    scratch.write("a", "a letter");
    EXPECT_EQ(thrown_by([&] { static_cast<void>(filing.commit()); }),
              "cannot write " + (scratch.path() / "a").string() + ": something has appeared there meanwhile");
    EXPECT_EQ(read(scratch.path() / "a"), "a letter");
    EXPECT_EQ(entries(scratch.path()), 1U);
}

TEST(NewFolder, IsGoneUnlessItIsKept) {
    const Scratch scratch;
    { const NewFolder folder(scratch.path() / "a/b/c"); }
    EXPECT_EQ(entries(scratch.path()), 0U);
    {
        NewFolder folder(scratch.path() / "a/b");
        folder.keep();
    }
    EXPECT_TRUE(fs::is_directory(scratch.path() / "a/b"));
    scratch.write("file", "");
    EXPECT_EQ(thrown_by([&] { const NewFolder folder(scratch.path() / "file/a"); }),
              "cannot make the folder " + (scratch.path() / "file").string() + ": a file has that name");
}

}  // namespace
}  // namespace kerfpacket::disk
