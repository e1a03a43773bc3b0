// What a coupon record gives to be typed is taken by the reader as it stands.

#include "sheets/cards/coupon_words.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "job/read.h"
#include "plan/plan.h"

namespace kerfpacket::sheets {
namespace {

class Records : public testing::TestWithParam<const char*> {};

TEST_P(Records, give_a_trial_that_the_next_job_reads) {
    const std::filesystem::path sample =
        std::filesystem::path(KERFPACKET_SOURCE_DIR) / "out-samples" / GetParam() / "job.toml";
    const job::Job job = job::read_job(job::load(sample).value()).job;
    const plan::Piece piece = plan::make_plan(job).value().pieces.at(0);
    const Tape tape(job.header.units);
    const std::filesystem::path file = std::filesystem::path(testing::TempDir()) / (std::string(GetParam()) + ".toml");
    std::filesystem::copy_file(sample, file, std::filesystem::copy_options::overwrite_existing);
    std::ofstream more(file, std::ios::app);
    more << "\n[[trial]]\n";
    for (const std::string& line : trial_lines(piece, coupon_size(piece, tape.unit()), tape)) more << line << "\n";
    const bool inch = tape.unit() == Unit::inch;
    more << (inch ? "chord = 16\nrise = 1\n" : "chord = 400\nrise = 25\n")
         << "held = \"ends\"\nresult = \"held\"\ndate = 2026-05-12\nby = \"R. Vale\"\n";
    more.close();
    const job::Reading read = job::read_job(job::load(file).value());
    EXPECT_TRUE(read.diagnostics.empty()) << read.diagnostics.front().message;
    ASSERT_EQ(read.job.trials.size(), job.trials.size() + 1);
    const job::Trial& trial = read.job.trials.back();
    EXPECT_EQ(trial.material.value, piece.material);
    EXPECT_NEAR(trial.thickness.value.mm(), piece.cut.thickness.mm(), 0.01);
    EXPECT_NEAR(trial.kerf.value.mm(), piece.cut.kerf.mm(), 0.01);
    EXPECT_NEAR(trial.tried.kerf_depth->value.mm(), piece.cut.depth.mm(), 0.01);
    EXPECT_EQ(trial.kerfs_outside, piece.kerfs_on == bend::KerfsOn::outside);
    std::filesystem::remove(file);
}

INSTANTIATE_TEST_SUITE_P(Samples, Records, testing::Values("mill-lane", "harbor-stair", "kiln-yard", "alder-court"));

}  // namespace
}  // namespace kerfpacket::sheets
