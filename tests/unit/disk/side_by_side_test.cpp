#include "disk/side_by_side.h"

#include <gtest/gtest.h>

#include "support/one_core.h"
#include "support/program.h"

namespace kerfpacket::disk {
namespace {

/// What coreutils' nproc tells, which asks the system by itself.
unsigned told_by_nproc() {
    return static_cast<unsigned>(std::stoul(tests::run_program({"env", "-u", "OMP_NUM_THREADS", "nproc"}).out));
}

TEST(Cores, AreThoseThatTheProcessMayRunOn) {
    EXPECT_EQ(cores_allowed(), told_by_nproc());
    {
        const tests::OnOneCore one;
        EXPECT_EQ(told_by_nproc(), 1U);
        EXPECT_EQ(cores_allowed(), 1U);
        EXPECT_EQ(cores(), 1U);
    }
    EXPECT_EQ(cores_allowed(), told_by_nproc());
    EXPECT_LE(cores(), 4U);
}

}  // namespace
}  // namespace kerfpacket::disk
