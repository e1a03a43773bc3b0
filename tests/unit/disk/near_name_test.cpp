#include "disk/near_name.h"

#include <gtest/gtest.h>

#include <cerrno>

#include "support/program.h"

namespace kerfpacket::tests {
namespace {

TEST(NearName, IsOfAFileBesideIt) {
    const Folder folder;
    for (const char* name : {"arch.toml", "stair.toml", "arch.pdf"}) spill(folder / name, "x");
    const auto near = [&](const char* name, const char* ending = ".toml") {
        return disk::near_name(folder / name, ending);
    };
    EXPECT_EQ(near("arhc.toml"), (folder / "arch.toml").string());
    EXPECT_EQ(near("stair"), (folder / "stair.toml").string());
    EXPECT_EQ(near("arch.pfd", ".pdf"), (folder / "arch.pdf").string());
    EXPECT_EQ(near("window.toml"), "");
    EXPECT_EQ(near("no-folder/arch.toml"), "");
}

TEST(NearName, IsNoneWhereTheFolderCannotBeRead) {
    const Folder folder;
    spill(folder / "arch.toml", "x");
    const disk::Gated gated(
        [](disk::Operation operation, const fs::path&) { return operation == disk::Operation::list ? EACCES : 0; });
    EXPECT_EQ(disk::near_name(folder / "arhc.toml", ".toml"), "");
}

}  // namespace
}  // namespace kerfpacket::tests
