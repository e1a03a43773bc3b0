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

TEST(Console, ResultsThatCannotBeWrittenAreAnError) {
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    console.flush();
    out.setstate(std::ios::badbit);
    EXPECT_THROW(console.flush(), std::runtime_error);
}

}  // namespace
}  // namespace kerfpacket::tests
