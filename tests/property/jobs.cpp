// Ten thousand job files by chance: each is planned, with finite figures that hang together, or refused with a reason
// at a place in the file.

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <iostream>

#include "../support/random_job.h"
#include "job/read.h"
#include "measure/fraction.h"
#include "plan/plan.h"

namespace kerfpacket {
namespace {

using geom::Length;
using geom::Path;

constexpr int jobs_each = 2500;

bool finite(Length length) { return length.finite(); }
bool finite(const Path& path) {
    for (const geom::Segment& s : path.segments())
        if (!finite(s.from.x) || !finite(s.from.y) || !finite(s.to.x) || !finite(s.to.y) ||
            !std::isfinite(s.turn.radians()))
            return false;
    return !path.empty();
}

/// What is wrong with the lines of a piece; nothing when all is well.
std::string wrong_lines(const plan::Piece& piece) {
    if (const auto* wall = std::get_if<plan::WallLines>(&piece.lines))
        return finite(wall->wall) && finite(wall->finish) ? "" : "wall lines";
    const auto& arch = std::get<plan::ArchLines>(piece.lines);
    for (const Path* path : {&arch.wall, &arch.finish})
        if (!finite(*path)) return "arch lines";
    for (const auto& edge : {arch.casing_inside, arch.casing_outside})
        if (edge && !finite(*edge)) return "casing";
    for (const plan::KerfTick& tick : arch.kerf_ticks)
        if (!finite(tick.line)) return "kerf tick";
    for (const plan::CasingSegment& segment : arch.segments)
        if (!finite(segment.inside) || !finite(segment.outside) || segment.board_length <= Length()) return "segment";
    return "";
}

std::string wrong_kerfs(const plan::Piece& piece) {
    if (piece.blank().kerfs.empty()) return "no kerfs";
    double turn = 0;
    for (std::size_t i = 0; i < piece.blank().kerfs.size(); ++i) {
        const plan::Kerf& kerf = piece.blank().kerfs[i];
        if (!finite(kerf.at) || !finite(kerf.mark) || !finite(kerf.radius) || !finite(kerf.on_curve)) return "kerf";
        if (kerf.at <= Length() || kerf.at >= piece.blank().length) return "kerf off the board";
        if (!std::isfinite(kerf.utilisation) || kerf.utilisation < 0) return "utilisation";
        if (kerf.n != static_cast<int>(i) + 1) return "number";
        turn += kerf.turn.radians() * (kerf.on == bend::KerfsOn::outside ? 1 : -1);
        if (i == 0) continue;
        const Length gap = kerf.at - piece.blank().kerfs[i - 1].at;
        if (gap <= piece.cut.kerf) return "kerfs that meet";
        // A joint in the bend takes kerfs away: that is a caution of its own.
        const auto across = [&](const plan::Joint& joint) {
            return joint.gone > 0 && joint.at > piece.blank().kerfs[i - std::min<std::size_t>(i, 2)].at &&
                   joint.at < piece.blank().kerfs[i].at;
        };
        const bool joined = std::any_of(piece.joints.begin(), piece.joints.end(), across);
        if (i > 1 && !piece.cut.spacing_given && !joined) {
            const double ratio = gap / (piece.blank().kerfs[i - 1].at - piece.blank().kerfs[i - 2].at);
            if (std::max(ratio, 1 / ratio) > 1.2501) return "gap ratio " + std::to_string(ratio);
        }
    }
    if (!piece.blank().bends_both_ways() && std::abs(std::abs(turn) - piece.turn.radians()) > 1e-9)
        return "kerf turns miss the bend's by " + measure::fixed((std::abs(turn) - piece.turn.radians()) * 1e12, 0) +
               "e-12";
    return "";
}

std::string wrong_figures(const plan::Piece& piece) {
    for (const Length length :
         {piece.blank().length, piece.blank().bend_start, piece.blank().bend_end, piece.blank().finish_length,
          piece.cut.spacing, piece.cut.least_spacing, piece.radii.wall, piece.radii.finish, piece.radii.line,
          piece.measured_rise, piece.measured_span})
        if (!finite(length)) return "a length";
    if (piece.blank().bend_end <= piece.blank().bend_start || piece.blank().length < piece.blank().bend_end)
        return "bend";
    for (const plan::BoardEnd& end : piece.blank().ends)
        if (!finite(end.kerf_face) || !finite(end.plain_face)) return "board end";
    if (piece.form && (!finite(piece.form->curve) || piece.form->ordinates.size() < 2)) return "form";
    return "";
}

/// Four seeds, so that they run side by side.
class RandomJobs : public testing::TestWithParam<std::uint64_t> {};

TEST_P(RandomJobs, are_planned_or_refused_with_a_reason) {
    tests::RandomJobs random(GetParam());
    int planned = 0;
    for (int i = 0; i < jobs_each; ++i) {
        const job::Source source{"by chance", random.next()};
        const job::Reading reading = job::read_job(source);
        job::Diagnostics all = reading.diagnostics;
        if (all.empty()) {
            const auto plan = plan::make_plan(reading.job);
            if (plan) {
                ++planned;
                for (const plan::Piece& piece : plan->pieces)
                    for (const std::string& wrong : {wrong_figures(piece), wrong_kerfs(piece), wrong_lines(piece)})
                        ASSERT_EQ(wrong, "") << "job " << i << "\n" << source.text;
                continue;
            }
            all = plan.error();
        }
        ASSERT_FALSE(all.empty()) << source.text;
        for (const job::Diagnostic& diagnostic : all) {
            ASSERT_FALSE(diagnostic.message.empty()) << source.text;
            ASSERT_FALSE(diagnostic.hint.empty()) << diagnostic.message << "\n" << source.text;
            ASSERT_GT(diagnostic.at.line, 0) << diagnostic.message << "\n" << source.text;
            for (const char* no_figure : {"nan", "inf "})
                ASSERT_EQ((diagnostic.message + "; " + diagnostic.hint).find(no_figure), std::string::npos)
                    << diagnostic.message << "; " << diagnostic.hint << "\n"
                    << source.text;
        }
    }
    std::cout << planned << " of " << jobs_each << " planned\n";
    EXPECT_GT(planned, jobs_each / 3);
    EXPECT_LT(planned, jobs_each);
}

INSTANTIATE_TEST_SUITE_P(Seeds, RandomJobs, testing::Values(20261125U, 11U, 407U, 90210U));

}  // namespace
}  // namespace kerfpacket
