// The same job gives the same bytes, wherever and under whatever locale it is built.

#include <gtest/gtest.h>

#include <clocale>
#include <locale>

#include "cli/resources.h"
#include "cli/run.h"
#include "print/packet.h"
#include "support/sanitizer.h"

namespace kerfpacket::tests {
namespace {

/// A folder with a German locale, decimal comma and all, made here: a machine need not have one.
class CommaLocale {
public:
    CommaLocale() {
        const Outcome made =
            run_program({"localedef", "-i", "de_DE", "-f", "UTF-8", (folder_ / "de_DE.UTF-8").string()});
        if (!fs::exists(folder_ / "de_DE.UTF-8")) throw std::runtime_error("localedef: " + made.err);
    }
    std::string environment() const { return "LOCPATH=" + quoted(folder_.path().string()) + " LC_ALL=de_DE.UTF-8"; }
    const fs::path& path() const { return folder_.path(); }

private:
    Folder folder_;
};

std::string build_in(const fs::path& folder, const std::string& environment) {
    spill(folder / "job.toml", harbor_stair("11.3 mm"));
    const Outcome built = run_program({KERFPACKET_PROGRAM, "build", "job.toml", "--out", "packet.pdf"},
                                      "cd " + quoted(folder.string()) + " && " + environment);
    EXPECT_TRUE(built.status == 0 || built.status == 3) << built.err;
    return slurp(folder / "packet.pdf");
}

TEST(SameBytes, TwoFoldersTwoLocales) {
    const CommaLocale comma;
    // The locale is real: printf of the shell's own kind writes a comma under it.
    EXPECT_EQ(run_program({"/usr/bin/printf", "%.1f", "0,5"}, comma.environment()).out, "0,5");
    const Folder one, two;
    fs::create_directory(two / "deeper");
    const std::string plain = build_in(one.path(), "LC_ALL=C");
    EXPECT_GT(plain.size(), 10000U);
    EXPECT_TRUE(plain == build_in(two / "deeper", comma.environment()));
}

TEST(SameBytes, AnotherDayInAnotherPlace) {
    if (address_sanitizer) GTEST_SKIP() << "its runtime cannot be loaded behind the clock";
    const Folder one, two;
    const std::string later = "faketime -f '2031-01-02 03:04:05'";
    // The clock is really changed: date says so.
    EXPECT_EQ(run_program({"date", "-u", "+%F"}, "TZ=UTC " + later).out, "2031-01-02\n");
    EXPECT_TRUE(build_in(one.path(), "TZ=America/Chicago") == build_in(two.path(), "TZ=Asia/Tokyo " + later));
}

TEST(SameBytes, InAProcessThatUsesACommaLocale) {
    const CommaLocale comma;
    const Folder folder;
    spill(folder / "job.toml", harbor_stair("11.3 mm"));
    const auto build = [&](const char* name) {
        std::ostringstream out, err;
        cli::Console console(out, err, false);
        const int status = cli::run({"build", (folder / "job.toml").string(), "--out", (folder / name).string()},
                                    console, KERFPACKET_BUILD_DIR);
        EXPECT_TRUE(status == 0 || status == 3) << err.str();
        return slurp(folder / name);
    };
    const std::string plain = build("plain.pdf");
    setenv("LOCPATH", comma.path().c_str(), 1);
    ASSERT_NE(std::setlocale(LC_ALL, "de_DE.UTF-8"), nullptr);
    std::locale::global(std::locale("de_DE.UTF-8"));
    const std::string hostile = build("hostile.pdf");
    std::locale::global(std::locale::classic());
    EXPECT_TRUE(plain == hostile);
}

TEST(SameBytes, OnAFullDiskNothingIsLeft) {
    if (geteuid() != 0) GTEST_SKIP() << "only root can mount a disk small enough";
    const Folder folder;
    fs::create_directory(folder / "small");
    const std::string small = (folder / "small").string();
    if (run_program({"mount", "-t", "tmpfs", "-o", "size=16k", "tmpfs", small}).status != 0)
        GTEST_SKIP() << "no disk may be mounted here";
    spill(folder / "job.toml", harbor_stair("1/2 in"));
    const Outcome built =
        run_program({KERFPACKET_PROGRAM, "build", (folder / "job.toml").string(), "--out", small + "/packet.pdf"});
    const bool empty = fs::is_empty(small);
    EXPECT_EQ(run_program({"umount", small}).status, 0);
    EXPECT_EQ(built.status, 2);
    EXPECT_TRUE(empty);
    EXPECT_NE(built.err.find("packet.pdf"), std::string::npos) << built.err;
    EXPECT_EQ(built.out, "");
}

}  // namespace
}  // namespace kerfpacket::tests
