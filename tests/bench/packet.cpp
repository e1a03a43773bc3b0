// What a packet costs, beside a plain libharu and a plain Cairo program that draw the same items in the same run. Never
// a pass or fail: machines differ, and this one may be busy. Compare the columns of one run.

#include <algorithm>
#include <chrono>
#include <functional>
#include <iostream>

#include <fmt/format.h>

#include "bench/raw_cairo.h"
#include "bench/raw_haru.h"
#include "job/read.h"
#include "output/pdf.h"
#include "plan/plan.h"
#include "sheets/packet.h"
#include "support/ending.h"
#include "support/one_core.h"

namespace kerfpacket::bench {
namespace {

namespace fs = std::filesystem;

const fs::path samples = KERFPACKET_SOURCE_DIR "/out-samples";

/// The median of some runs, in milliseconds.
double median_ms(const std::function<void()>& work, int runs = 9) {
    std::vector<double> all;
    for (int i = 0; i < runs; ++i) {
        const auto start = std::chrono::steady_clock::now();
        work();
        all.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    }
    std::nth_element(all.begin(), all.begin() + runs / 2, all.end());
    return all[static_cast<std::size_t>(runs / 2)];
}

plan::Plan planned(const job::Source& source) {
    auto plan = plan::make_plan(job::read_job(source).job);
    if (!plan) throw std::runtime_error(plan.error().front().message);
    return *std::move(plan);
}

job::Source source_of(const std::string& sample) {
    auto source = job::load(samples / sample / "job.toml");
    if (!source) throw std::runtime_error(source.error().message);
    return *std::move(source);
}

/// Job text, faces, words and style read anew, as every run of the program does.
struct Laid {
    explicit Laid(const std::string& sample)
        : faces(KERFPACKET_BUILD_DIR "/fonts"),
          words(KERFPACKET_SOURCE_DIR "/templates", "en"),
          style(fonts::read_style(KERFPACKET_SOURCE_DIR "/templates")),
          document(sheets::make_packet(planned(source_of(sample)), {faces, words, style})) {}
    fonts::Faces faces;
    fonts::Words words;
    fonts::Style style;
    page::Document document;
};

/// The program itself; it must not fail.
tests::Ending program(const std::vector<std::string>& words) {
    tests::Ending run = tests::ending_of(words);
    if (run.status != 0 && run.status != 3) throw std::runtime_error("the program failed: " + words.front());
    return run;
}

/// Mill Lane's opening so many times, no two alike.
std::string arches(int count) {
    const std::string job = tests::slurp(samples / "mill-lane" / "job.toml");
    const std::size_t first = job.find("[[opening]]"), behind = job.find("[stock]");
    std::string text = job.substr(0, first);
    for (int i = 0; i < count; ++i) {
        std::string opening = job.substr(first, behind - first);
        const auto put = [&](const std::string& old, const std::string& now) {
            opening.replace(opening.find(old), old.size(), now);
        };
        put("id = \"A\"", fmt::format("id = \"A{}\"", i));
        put("4 ft 10 3/4 in", fmt::format("{:.4f} in", 58.75 + i * 0.125));
        text += opening;
    }
    return text + job.substr(behind);
}

/// By callgrind, where it is installed: a number that does not depend on the machine's mood.
std::string instructions(const fs::path& job, const fs::path& packet) {
    const tests::Outcome counted =
        tests::run_program({"valgrind", "--tool=callgrind", "--callgrind-out-file=/dev/null", KERFPACKET_PROGRAM,
                            "build", job.string(), "--out", packet.string()});
    const std::size_t at = counted.err.find("Collected : ");
    if (at == std::string::npos) return "(valgrind is not here)";
    return fmt::format("{:.0f} M", std::stod(counted.err.substr(at + 12)) / 1e6);
}

void row(const std::string& what, const std::string& ours, const std::string& haru = "", const std::string& cairo = "",
         const std::string& goal = "") {
    std::cout << fmt::format("{:52} {:>14} {:>12} {:>12}   {}\n", what, ours, haru, cairo, goal) << std::flush;
}

std::string ms(double value) { return fmt::format("{:.1f} ms", value); }

void one_arch(const tests::Folder& folder) {
    const Laid laid("mill-lane");
    const page::Document& document = laid.document;
    std::string bytes;
    const double ours = median_ms([] {
        const Laid anew("mill-lane");
        output::pdf(anew.document, anew.faces);
    });
    const std::string haru_bytes = raw_haru(document), cairo_bytes = raw_cairo(document);
    const double haru = median_ms([&] { raw_haru(document); }), cairo = median_ms([&] { raw_cairo(document); });
    row(fmt::format("one arch, {} pages: job text to bytes", document.pages.size()), ms(ours), ms(haru), ms(cairo));
    row("    as a multiple of raw Cairo", fmt::format("{:.2f}", ours / cairo), fmt::format("{:.2f}", haru / cairo), "1",
        "0.5");
    row("    pages to bytes alone", ms(median_ms([&] { bytes = output::pdf(document, laid.faces); })), ms(haru),
        ms(cairo));
    row("    the same on one thread", ms(median_ms([&] { output::pdf(document, laid.faces, {}, 1); })));
    const fs::path job = samples / "mill-lane" / "job.toml", packet = folder / "one.pdf";
    row("    instructions of the program", instructions(job, packet), "", "", "120 M");
    const auto a_page = [&](std::size_t size) {
        return fmt::format("{:.0f}", static_cast<double>(size) / static_cast<double>(document.pages.size()));
    };
    row("    bytes a page, with all that travels in it", a_page(fs::file_size(packet)), a_page(haru_bytes.size()),
        a_page(cairo_bytes.size()), "3000");
    const std::string file = packet.string();
    row("    verify", ms(median_ms([&] { program({"verify", file}); })), "", "", "25 ms");
    row("    check", ms(median_ms([&] { program({"check", job.string()}); })));
}

void planning() {
    for (const auto& [what, sample] :
         {std::pair("elliptical head", "quarry-road"), std::pair("faired wall", "kiln-yard")}) {
        const job::Source source = source_of(sample);
        row(fmt::format("{}, planning alone", what), ms(median_ms([&] { planned(source); })), "", "", "5 ms");
    }
}

void hundred_arches(const tests::Folder& folder) {
    const fs::path ten = folder / "ten.toml", hundred = folder / "hundred.toml";
    tests::spill(ten, arches(10));
    tests::spill(hundred, arches(100));
    const auto build = [&](const fs::path& job) {
        const fs::path packet = folder / "out.pdf";
        fs::remove(packet);
        return program({"build", job.string(), "--out", packet.string()});
    };
    const auto ten_times = [&] {
        double seconds = 0;
        for (int i = 0; i < 10; ++i) seconds += build(ten).wall_seconds;
        return seconds;
    };
    build(ten);
    const tests::Ending run = build(hundred);
    row("a hundred arches: time", fmt::format("{:.2f} s", run.wall_seconds));
    row("    against ten times ten", fmt::format("{:.2f}", run.wall_seconds / ten_times()));
    const tests::OnOneCore one_core;
    const double tens = ten_times();
    row("    the same on one core", fmt::format("{:.2f}", build(hundred).wall_seconds / tens), "", "", "0.95");
    row("    on all cores, against ten times ten on one", fmt::format("{:.2f}", run.wall_seconds / tens), "", "",
        "0.55 on two cores");
    row("    memory", fmt::format("{:.0f} MB", run.megabytes), "", "", "60 MB");
}

void preview(const tests::Folder& folder) {
    const std::string job = (samples / "mill-lane" / "job.toml").string(), out = (folder / "pictures").string();
    const auto draw = [&] { program({"preview", job, "--force", "--out", out}); };
    row("preview of one arch at 100 dpi", ms(median_ms(draw, 5)), "", "", "150 ms");
}

}  // namespace
}  // namespace kerfpacket::bench

int main() {
    using namespace kerfpacket::bench;
    const kerfpacket::tests::Folder folder;
    row("", "this run", "raw libharu", "raw Cairo", "goal");
    one_arch(folder);
    planning();
    hundred_arches(folder);
    preview(folder);
}
