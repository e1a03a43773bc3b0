#include "cli/console.h"

#include <gtest/gtest.h>

#include <sstream>

namespace kerfpacket::tests {
namespace {

using namespace std::chrono_literals;

TEST(Console, ShortWorkIsNotShown) {
    std::ostringstream out, err;
    {
        cli::Console console(out, err, true, 10min);
        console.doing("counting");
        console.result("done\n");
    }
    EXPECT_EQ(out.str(), "done\n");
    EXPECT_EQ(err.str(), "");
}

TEST(Console, UnwatchedWorkIsNotShown) {
    std::ostringstream out, err;
    cli::Console console(out, err, false, 0ms);
    console.doing("counting");
    std::this_thread::sleep_for(20ms);
    EXPECT_EQ(err.str(), "");
    EXPECT_EQ(console.doing(), "counting");
}

TEST(Console, LongWorkIsShownAndErased) {
    std::ostringstream out, err;
    {
        cli::Console console(out, err, true, 1ms);
        console.doing("drawing page 1 of 2");
        std::this_thread::sleep_for(100ms);
        console.doing("drawing page 2 of 2");
        std::this_thread::sleep_for(100ms);
        console.message("careful\n");
    }
    EXPECT_EQ(err.str(), "drawing page 1 of 2 ...\r\x1b[Kdrawing page 2 of 2 ...\r\x1b[Kcareful\n");
}

TEST(Console, ResultsThatCannotBeToldAreAnErrorUnlessFilesWereWritten) {
    using cli::Status;
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    EXPECT_EQ(console.flush(Status::done), Status::done);
    EXPECT_EQ(console.flush(Status::cautions), Status::cautions);
    out.setstate(std::ios::badbit);
    EXPECT_EQ(console.flush(Status::done), Status::errors);
    console.written();
    EXPECT_EQ(console.flush(Status::done), Status::cautions);
    EXPECT_EQ(console.flush(Status::errors), Status::errors);
    EXPECT_NE(err.str().find("caution: all is written, but the results could not be told"), std::string::npos);
}

TEST(Console, NothingOfAFileOrAWordMovesTheTerminal) {
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    // ESC of ECMA-48, a C1 control, the marks of Unicode's bidirectional algorithm (UAX 9), a byte that is no UTF-8.
    console.result(
        "a\x1b[2Jb\xC2\x9B"
        "c\xE2\x80\xAE"
        "d\xFF"
        "e\tf\n");
    console.message("\r\x7F\xE2\x81\xA6");
    EXPECT_EQ(out.str(), "a\\u001B[2Jb\\u009Bc\\u202Ed\\xFFe\tf\n");
    EXPECT_EQ(err.str(), "\\u000D\\u007F\\u2066");
}

}  // namespace
}  // namespace kerfpacket::tests
