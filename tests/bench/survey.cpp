// Times the three answers to a thousand noisy ordinates. Never a pass or fail time: machines differ.

#include <benchmark/benchmark.h>

#include <random>

#include "curve/survey.h"

namespace kerfpacket::bench {
namespace {

using measure::Length;

/// A curved wall 200 in long, 30 in deep, measured to 1/32 in at a thousand stations.
std::vector<geom::Point> thousand() {
    std::mt19937 random(20260402);
    std::uniform_real_distribution<double> off(-1.0 / 32, 1.0 / 32);
    std::vector<geom::Point> points;
    const double radius = (200.0 * 200 + 4 * 30 * 30) / (8 * 30);
    for (int i = 0; i < 1000; ++i) {
        const double x = -100 + 200 * i / 999.0;
        points.push_back(
            {Length::inches(x), Length::inches(std::sqrt(radius * radius - x * x) - radius + 30 + off(random))});
    }
    return points;
}

void circle(benchmark::State& state) {
    const auto points = thousand();
    for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(curve::fit_circle(points));
}
BENCHMARK(circle)->Unit(benchmark::kMillisecond);

void ellipse(benchmark::State& state) {
    const auto points = thousand();
    for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(curve::fit_ellipse(points));
}
BENCHMARK(ellipse)->Unit(benchmark::kMillisecond);

void fair(benchmark::State& state) {
    const auto points = thousand();
    for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(curve::fit_fair(points, {}));
}
BENCHMARK(fair)->Unit(benchmark::kMillisecond);

/// All three, the recommendation and the search for a mistyped point: none there, or one.
void whole_survey(benchmark::State& state) {
    auto points = thousand();
    if (state.range(0) == 1) points[617].y += Length::inches(1);
    for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(curve::survey(points, {}, Length::inches(10)));
}
BENCHMARK(whole_survey)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace kerfpacket::bench

BENCHMARK_MAIN();
