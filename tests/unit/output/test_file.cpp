#include "output/file.h"

#include <csignal>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "scratch.h"

namespace kerfpacket::output {
namespace {

namespace fs = std::filesystem;

std::string read(const fs::path& file) {
    std::ostringstream text;
    text << std::ifstream(file, std::ios::binary).rdbuf();
    return text.str();
}

std::size_t entries(const fs::path& folder) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

TEST(WriteWhole, WritesAndReplaces) {
    const Scratch scratch;
    const fs::path file = scratch.path() / "a.pdf";
    write_whole(file, std::string("one\0two", 7));
    EXPECT_EQ(read(file), std::string("one\0two", 7));
    write_whole(file, "new");
    EXPECT_EQ(read(file), "new");
    EXPECT_EQ(entries(scratch.path()), 1U);
}

TEST(WriteWhole, HonoursTheUmask) {
    const Scratch scratch;
    const mode_t before = ::umask(022);
    write_whole(scratch.path() / "a.pdf", "x");
    ::umask(before);
    EXPECT_EQ(fs::status(scratch.path() / "a.pdf").permissions(), fs::perms{0644});
}

TEST(WriteWhole, ALinkStaysALink) {
    const Scratch scratch;
    scratch.write("real/a.pdf", "old");
    fs::create_symlink("real/a.pdf", scratch.path() / "link.pdf");
    write_whole(scratch.path() / "link.pdf", "new");
    EXPECT_TRUE(fs::is_symlink(scratch.path() / "link.pdf"));
    EXPECT_EQ(read(scratch.path() / "real/a.pdf"), "new");
}

TEST(WriteWhole, AFileInTheCurrentFolderNeedsNoPath) {
    const Scratch scratch;
    const fs::path before = fs::current_path();
    fs::current_path(scratch.path());
    const std::string said = thrown_by([] { write_whole("plain.pdf", "x"); });
    fs::current_path(before);
    EXPECT_EQ(said, "");
    EXPECT_EQ(read(scratch.path() / "plain.pdf"), "x");
}

TEST(WriteWhole, PlacesThatCannotBeWrittenAreToldInPlainWords) {
    const Scratch scratch;
    fs::create_directory(scratch.path() / "folder");
    EXPECT_NE(thrown_by([&] { write_whole(scratch.path() / "none/a.pdf", "x"); }).find("folder does not exist"),
              std::string::npos);
    const std::string said = thrown_by([&] { write_whole(scratch.path() / "folder", "x"); });
    EXPECT_NE(said.find("a folder has that name"), std::string::npos) << said;
    EXPECT_EQ(entries(scratch.path()), 1U);
}

TEST(WriteWhole, AFileTooLargeForTheLimitLeavesTheOldOne) {
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

TEST(WriteWhole, AFullDiskLeavesTheOldFile) {
    const Scratch scratch;
    const TinyDisk disk(scratch.path());
    if (!disk.made()) GTEST_SKIP() << "no right to make a small disk";
    scratch.write("a.pdf", "old");
    const std::string said = thrown_by([&] { write_whole(scratch.path() / "a.pdf", std::string(100000, 'x')); });
    EXPECT_NE(said.find("the disk is full"), std::string::npos) << said;
    EXPECT_EQ(read(scratch.path() / "a.pdf"), "old");
    EXPECT_EQ(entries(scratch.path()), 1U);
}

}  // namespace
}  // namespace kerfpacket::output
