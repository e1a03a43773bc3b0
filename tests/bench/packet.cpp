// Times the whole street on the Harbor Stair packet beside a plain libharu program that draws the same items. Never a
// pass or fail time: machines differ; compare two lines of one run.

#include <fstream>
#include <iterator>
#include <stdexcept>

#include <benchmark/benchmark.h>

#include "bench/raw_haru.h"
#include "job/read.h"
#include "output/image.h"
#include "output/pdf.h"
#include "output/pdf_finish.h"
#include "plan/plan.h"
#include "sheets/packet.h"

namespace kerfpacket::bench {
namespace {

const std::filesystem::path job_file = KERFPACKET_SOURCE_DIR "/out-samples/harbor-stair/job.toml";
const std::filesystem::path templates = KERFPACKET_SOURCE_DIR "/templates";
const std::filesystem::path fonts_folder = KERFPACKET_BUILD_DIR "/fonts";

/// Job text, faces, words and style read anew, as every run of the program does.
struct Run {
    explicit Run(const std::filesystem::path& job = job_file)
        : faces(fonts_folder), words(templates, "en"), style(fonts::read_style(templates)) {
        const auto source = job::load(job);
        if (!source) throw std::runtime_error(source.error().message);
        const auto plan = plan::make_plan(job::read_job(*source).job);
        if (!plan) throw std::runtime_error(plan.error().front().message);
        document = sheets::make_packet(*plan, {faces, words, style});
    }
    fonts::Faces faces;
    fonts::Words words;
    fonts::Style style;
    page::Document document;
};

const Run& once() {
    static const Run run;
    return run;
}

void tell_size(benchmark::State& state, std::size_t bytes, std::size_t pages) {
    state.counters["pages"] = static_cast<double>(pages);
    state.counters["bytes"] = static_cast<double>(bytes);
    state.counters["bytes_a_page"] = static_cast<double>(bytes) / static_cast<double>(pages);
}

/// The items are ready made: nothing but libharu's own work.
void raw_libharu_whole_faces(benchmark::State& state) {
    const page::Document& document = once().document;
    std::size_t bytes = 0;
    for ([[maybe_unused]] auto _ : state) bytes = raw_haru(document).size();
    tell_size(state, bytes, document.pages.size());
}
BENCHMARK(raw_libharu_whole_faces)->Unit(benchmark::kMillisecond);

/// Job file to finished PDF, all of it.
void our_whole_street(benchmark::State& state) {
    std::size_t bytes = 0;
    std::size_t pages = 0;
    for ([[maybe_unused]] auto _ : state) {
        const Run run;
        bytes = output::pdf(run.document, run.faces).size();
        pages = run.document.pages.size();
    }
    tell_size(state, bytes, pages);
}
BENCHMARK(our_whole_street)->Unit(benchmark::kMillisecond);

/// Its parts: job file to pages, pages to PDF.
void our_pages(benchmark::State& state) {
    for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(Run().document.pages.data());
}
BENCHMARK(our_pages)->Unit(benchmark::kMillisecond);

void our_pdf(benchmark::State& state) {
    for ([[maybe_unused]] auto _ : state) benchmark::DoNotOptimize(output::pdf(once().document, once().faces).data());
}
BENCHMARK(our_pdf)->Unit(benchmark::kMillisecond);

/// libqpdf's finish alone, as a packet leaves: with an attachment.
void finish(benchmark::State& state, const page::Document& document) {
    const output::Drawn drawn = output::draw_pdf(document, once().faces);
    std::ifstream file(once().faces.colour_profile(), std::ios::binary);
    const std::string profile{std::istreambuf_iterator<char>(file), {}};
    const std::vector<output::Attachment> attachments{{"job.toml", "# a job", "the job", "Source"}};
    std::size_t bytes = 0;
    for ([[maybe_unused]] auto _ : state) bytes = output::finish_pdf(drawn, document, {profile, attachments}).size();
    tell_size(state, bytes, document.pages.size());
}

/// Of some 40 pages: an opening with its templates, casing and form.
void our_finish_of_an_opening(benchmark::State& state) {
    finish(state, Run(KERFPACKET_SOURCE_DIR "/out-samples/mill-lane/job.toml").document);
}
BENCHMARK(our_finish_of_an_opening)->Unit(benchmark::kMillisecond);

/// The same number of pages, but hardly more than checklists, whose every figure is a cell: the most there is to tell.
void our_finish_of_walls(benchmark::State& state) {
    page::Document document = once().document;
    const std::size_t pages = document.pages.size();
    for (std::size_t i = 0; i < pages; ++i) document.pages.push_back(page::Page(document.pages[i]));
    finish(state, document);
}
BENCHMARK(our_finish_of_walls)->Unit(benchmark::kMillisecond);

void our_png_of_a_strip_page(benchmark::State& state) {
    const page::Page& page = once().document.pages.at(3);
    std::size_t bytes = 0;
    for ([[maybe_unused]] auto _ : state) bytes = output::png(page, once().faces, 100).size();
    tell_size(state, bytes, 1);
}
BENCHMARK(our_png_of_a_strip_page)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace kerfpacket::bench

BENCHMARK_MAIN();
