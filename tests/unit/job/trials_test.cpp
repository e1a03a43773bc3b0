// Kerfs one by one, kerfs too deep, coupons, the trial groove: reading, what is told of them, how they read back.
#include "jobs.h"

#include <algorithm>

#include "job/shop.h"
#include "job/values.h"

using namespace kerfpacket::job;
using namespace kerfpacket::job::tests;

namespace {

const std::string head_keys = "shape = \"segmental\"\nspan = \"60 in\"\nrise = \"9 in\"";
const std::string coupon =
    "chord = \"11 in\"\nrise = \"1-1/4 in\"\nheld = \"centre\"\nresult = \"closed\"\nby = \"R. Ott\"\n";

std::string with_saw(const std::string& keys) {
    std::string text = opening_text(head_keys);
    return text.insert(text.find("[[opening]]"), keys);
}

std::string with_board(const std::string& board) { return opening_text(head_keys, board); }

TEST(Kerfs, OneByOne) {
    const Board liner = tests::read_opening(head_keys, "kerfs = [\"10 in\", 10.5, \"1 ft\"]\n").liner;
    ASSERT_EQ(liner.kerfs.size(), 3U);
    EXPECT_DOUBLE_EQ(liner.kerfs[1].value.inches(), 10.5);
    EXPECT_DOUBLE_EQ(liner.kerfs[2].value.inches(), 12);
    EXPECT_EQ(liner.kerfs[1].at, (Position{19, 19}));
    EXPECT_FALSE(liner.spacing.given || liner.spacing.solve);
}

TEST(Kerfs, MustLieMoreThanTheirWidthApart) {
    // The saw of these jobs cuts 0.126 in.
    read_well(with_board("kerfs = [10, 10.127]\n"));
    EXPECT_NE(only_mistake(with_board("kerfs = [10, 10.126]\n")), "");
    EXPECT_NE(only_mistake(with_board("kerfs = [10, 10]\n")), "");
    EXPECT_NE(only_mistake(with_board("kerfs = [10, 9]\n")), "");
}

TEST(Kerfs, AreTwoToFiveThousand) {
    const auto list = [](int kerfs) {
        std::string rows = "kerfs = [\n";
        for (int i = 1; i <= kerfs; ++i) rows += std::to_string(i) + ",\n";
        return rows + "]\n";
    };
    read_well(with_board(list(2)));
    const std::string most = normalised(read_well(with_board(list(5000))));
    EXPECT_EQ(normalised(read_well(most)), most);
    EXPECT_NE(only_mistake(with_board(list(5001))), "");
    EXPECT_NE(only_mistake(with_board(list(1))), "");
}

TEST(TooDeep, NumbersAndDepths) {
    const Board board = tests::read_wall("chord = 120\nrise = 14",
                                         "kerf_depth = \"half\"\ntoo_deep = [[12, \"1/2 in\"], [3, \"5/8 in\"]]\n")
                            .board;
    ASSERT_EQ(board.too_deep.size(), 2U);
    EXPECT_EQ(board.too_deep[0].n.value, 12);
    EXPECT_EQ(board.too_deep[1].n.value, 3);
    EXPECT_DOUBLE_EQ(board.too_deep[1].depth.value.inches(), 0.625) << "cut through is as deep as the board is thick";
    EXPECT_EQ(board.too_deep[0].depth.at, (Position{20, 18}));
}

TEST(TooDeep, IsJudgedByTheDepthThatWasMeantWhereTheJobGivesOne) {
    read_well(with_board("too_deep = [[3, \"1/8 in\"]]\n"));
    read_well(with_board("kerf_depth = \"solve\"\ntoo_deep = [[3, \"1/8 in\"]]\n"));
    // Half of 5/8.
    EXPECT_NE(only_mistake(with_board("kerf_depth = \"half\"\ntoo_deep = [[3, \"5/16 in\"]]\n")), "");
    EXPECT_NE(only_mistake(with_board("kerf_depth = \"1/2 in\"\ntoo_deep = [[3, \"1/2 in\"]]\n")), "");
}

TEST(Coupon, OfABoardThatGivesItsSettings) {
    const Board liner =
        tests::read_opening(head_keys, "kerf_depth = \"half\"\nspacing = \"1/2 in\"\n[opening.liner.coupon]\n" + coupon)
            .liner;
    ASSERT_EQ(liner.coupons.size(), 1U);
    EXPECT_DOUBLE_EQ(liner.coupons.front().chord.value.inches(), 11);
    EXPECT_DOUBLE_EQ(liner.coupons.front().rise.value.inches(), 1.25);
    EXPECT_EQ(liner.coupons.front().held.value, Held::centre);
    EXPECT_EQ(liner.coupons.front().outcome.value, Outcome::closed);
    EXPECT_EQ(liner.coupons.front().by, "R. Ott");
    EXPECT_EQ(liner.coupons.front().at, (Position{21, 1}));
    EXPECT_FALSE(liner.coupons.front().kerf_depth || liner.coupons.front().spacing);
}

TEST(Coupon, SaysHowItWasCutWhereTheBoardDoesNot) {
    const Wall wall = tests::read_wall("chord = 120\nrise = 14", "spacing = \"solve\"\n[wall.board.coupon]\n" + coupon +
                                                                     "kerf_depth = \"3/8 in\"\nspacing = 0.5\n");
    ASSERT_TRUE(wall.board.coupons.size() == 1 && wall.board.coupons.front().kerf_depth &&
                wall.board.coupons.front().spacing);
    EXPECT_DOUBLE_EQ(wall.board.coupons.front().kerf_depth->value.inches(), 0.375);
    EXPECT_DOUBLE_EQ(wall.board.coupons.front().spacing->value.inches(), 0.5);
}

TEST(Coupon, MayStandSeveralTimes) {
    const std::string text = with_board("kerf_depth = \"half\"\nspacing = \"1/2 in\"\n[[opening.liner.coupon]]\n" +
                                        coupon + "[[opening.liner.coupon]]\n" + coupon + "believed = true\n");
    const Job job = read_well(text);
    ASSERT_EQ(job.openings[0].liner.coupons.size(), 2U);
    EXPECT_TRUE(job.openings[0].liner.coupons[1].believed);
    const auto [written, values] = canonical(job);
    EXPECT_EQ(normalised(read_well(written)), written);
    EXPECT_EQ(std::count_if(values.begin(), values.end(),
                            [](const Value& value) { return value.key == "believed" && value.row == 2; }),
              1);
}

const std::string trial =
    "[[trial]]\nmaterial = \"mdf\"\nthickness = 0.75\nkerf_depth = 0.375\nspacing = 0.5\ndate = 2026-02-11\n"
    "chord = 11\nrise = 1.25\nheld = \"disc\"\nresult = \"cracked\"\n";

TEST(Trial, IsReadAndTakesTheSawsKerf) {
    const std::string text = opening_text(head_keys) + trial;
    const Job job = read_well(text);
    ASSERT_EQ(job.trials.size(), 1U);
    EXPECT_EQ(job.trials[0].material.value, "mdf");
    EXPECT_EQ(job.trials[0].date, "2026-02-11");
    EXPECT_DOUBLE_EQ(job.trials[0].kerf.value.inches(), 0.126);
    EXPECT_TRUE(job.trials[0].kerfs_outside);
    EXPECT_DOUBLE_EQ(job.trials[0].tried.spacing->value.inches(), 0.5);
    const std::string written = normalised(job);
    EXPECT_EQ(normalised(read_well(written)), written);
    EXPECT_NE(fingerprint(job), fingerprint(read_well(opening_text(head_keys)))) << "it changes what is told";
}

TEST(Trial, OfTheShopIsTakenForItsMaterialAlone) {
    std::string other = trial;
    other.replace(other.find("mdf"), 3, "red-oak");
    const auto shop = read_shop({"shop.toml", "units = \"in\"\n[saw]\nkerf = 0.12\n" + trial + other});
    ASSERT_TRUE(shop.diagnostics.empty());
    ASSERT_EQ(shop.shop.trials.size(), 2U);
    EXPECT_EQ(shop.shop.trials[0].tried.chord.at.line, 0) << "no place in the job file";
    const Reading reading = read_job({"job.toml", opening_text(head_keys)}, shop.shop);
    ASSERT_EQ(reading.job.trials.size(), 1U);
    EXPECT_EQ(reading.job.trials[0].material.value, "mdf");
}

TEST(Plies, AreANumberOrTheirThicknesses) {
    const Board seven = tests::read_opening(head_keys, "plies = 7\n").liner;
    ASSERT_EQ(seven.plies.size(), 7U);
    EXPECT_NEAR(seven.plies[3].value / seven.thickness.value, 1.0 / 7, 1e-12);
    const std::string text = with_board("plies = [\"1/16 in\", \"3/16 in\", 0.125, \"3/16 in\", \"1/16 in\"]\n");
    const Job job = read_well(text);
    ASSERT_EQ(job.openings[0].liner.plies.size(), 5U);
    EXPECT_DOUBLE_EQ(job.openings[0].liner.plies[1].value.inches(), 0.1875);
    const std::string written = normalised(job);
    EXPECT_EQ(normalised(read_well(written)), written);
}

TEST(Coupon, MayDifferFromTheBoard) {
    read_well(with_board("kerf_depth = \"half\"\nspacing = \"1/2 in\"\n[opening.liner.coupon]\n" + coupon +
                         "kerf_depth = \"3/8 in\"\nspacing = \"5/8 in\"\n"));
}

TEST(Coupon, RiseAgainstChord) {
    const auto bent = [](const std::string& held, const std::string& rise) {
        return with_board("kerf_depth = \"half\"\nspacing = \"1/2 in\"\n[opening.liner.coupon]\nchord = 10\nrise = " +
                          rise + "\nheld = \"" + held + "\"\nresult = \"held\"\nby = \"R. Ott\"\n");
    };
    read_well(bent("disc", "10"));
    read_well(bent("centre", "0.125"));
    // The design notes know how a board bends whose ends are pushed together for q = rise/chord up to 0.84.
    read_well(bent("ends", "8.4"));
    EXPECT_NE(only_mistake(bent("ends", "8.41")), "");
    EXPECT_NE(only_mistake(bent("disc", "10.1")), "");
    EXPECT_NE(only_mistake(bent("disc", "0.12")), "");
}

TEST(TrialGroove, GivesTheRearLimit) {
    const Job job = read_well(with_saw("trial_depth = \"3/8 in\"\ntrial_at_fence = \"1/8 in\"\n"));
    ASSERT_TRUE(job.saw.trial);
    EXPECT_FALSE(job.saw.rear_limit);
    EXPECT_DOUBLE_EQ(job.saw.trial->depth.value.inches(), 0.375);
    EXPECT_DOUBLE_EQ(job.saw.trial->at_fence.value.inches(), 0.125);
    EXPECT_FALSE(job.saw.trial->ends);
    EXPECT_EQ(job.saw.trial->depth.at, (Position{10, 15}));
}

TEST(TrialGroove, ThatEndsBeforeTheFenceSaysWhere) {
    const std::string depth = "trial_depth = \"3/8 in\"\n";
    for (const char* at_fence : {"", "trial_at_fence = 0\n"}) {
        const Job job = read_well(with_saw(depth + at_fence + "trial_ends = \"1/2 in\"\n"));
        ASSERT_TRUE(job.saw.trial && job.saw.trial->ends);
        EXPECT_DOUBLE_EQ(job.saw.trial->ends->value.inches(), 0.5);
    }
    EXPECT_FALSE(read_job({"job.toml", with_saw(depth + "trial_at_fence = 0\n")}).complete) << "only a bound";
    EXPECT_FALSE(
        read_job({"job.toml", with_saw(depth + "trial_at_fence = \"1/8 in\"\ntrial_ends = \"1/2 in\"\n")}).complete);
    EXPECT_FALSE(read_job({"job.toml", with_saw("trial_ends = \"1/2 in\"\n")}).complete);
}

TEST(TrialGroove, AMistakeInItLeavesNothingToJudge) {
    EXPECT_FALSE(read_job({"job.toml", with_saw("trial_depth = \"3/8 in\"\n")}).complete);
    EXPECT_FALSE(read_job({"job.toml", with_saw("trial_depth = 1\ntrial_at_fence = 1\n")}).complete);
}

TEST(Trials, ReadBackAsTheSameJob) {
    for (const std::string& text :
         {with_saw("trial_depth = \"3/8 in\"\ntrial_at_fence = \"1/8 in\"\n"),
          with_saw("trial_depth = \"3/8 in\"\ntrial_ends = \"1/8 in\"\n"),
          with_board(
              "kerfs = [10, 11, 12.5]\ntoo_deep = [[2, \"9/16 in\"], [1, \"1/2 in\"]]\n[opening.liner.coupon]\n" +
              coupon + "kerf_depth = \"3/8 in\"\nspacing = \"1/2 in\"\n"),
          wall_text("chord = 120\nrise = 14",
                    "scarf = 3\nspacing = \"1/2 in\"\ntoo_deep = [[9, \"1/2 in\"]]\n"
                    "[wall.board.coupon]\n" +
                        coupon + "kerf_depth = \"3/8 in\"\nbelieved = true\n[wall.form]\nstep = 6\n")}) {
        const Job job = read_well(text);
        const std::string once = normalised(job);
        const Job again = read_well(once);
        EXPECT_EQ(normalised(again), once);
        EXPECT_EQ(again.fingerprint, job.fingerprint);
    }
}

TEST(Trials, EachFigureCountsForTheFingerprint) {
    const std::string full = "kerfs = [10, 11, 12.5]\ntoo_deep = [[2, \"9/16 in\"]]\n[opening.liner.coupon]\n" +
                             coupon + "kerf_depth = \"3/8 in\"\nspacing = \"1/2 in\"\n";
    const std::string before = read_well(with_board(full)).fingerprint;
    for (const auto& [what, other] :
         std::vector<std::pair<std::string, std::string>>{{"12.5", "12.6"},
                                                          {"[2, ", "[3, "},
                                                          {"9/16", "19/32"},
                                                          {"11 in", "12 in"},
                                                          {"1-1/4", "1-3/8"},
                                                          {"centre", "disc"},
                                                          {"closed", "held"},
                                                          {"R. Ott", "S. Ott"},
                                                          {"3/8 in", "5/16 in"},
                                                          {"spacing = \"1/2", "spacing = \"5/8"}}) {
        std::string changed = full;
        changed.replace(changed.find(what), what.size(), other);
        EXPECT_NE(read_well(with_board(changed)).fingerprint, before) << what;
    }
    // The order in which kerfs are said to be too deep means nothing.
    EXPECT_EQ(read_well(with_board("too_deep = [[2, 0.5], [1, 0.5]]\n")).fingerprint,
              read_well(with_board("too_deep = [[1, 0.5], [2, 0.5]]\n")).fingerprint);
}

}  // namespace
