// Any bytes as one of the files that stand beside the jobs: a shop file, a measured printer, the layout of the sheets.
// Reading ends; mistakes point into the file; what reads well can be used, and what we write of it reads back.
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>

#include "fonts/parse_style.h"
#include "job/read.h"
#include "job/read_profile.h"
#include "job/text.h"
#include "measure/require.h"

using namespace kerfpacket;

// The name is libFuzzer's. NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

bool harmless(std::string_view words) {
    return std::none_of(words.begin(), words.end(),
                        [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}

void require_told(const job::Diagnostics& diagnostics, const job::Source& source) {
    const auto lines = static_cast<int>(job::split_lines(source.text).size());
    for (const auto& d : diagnostics) {
        measure::require(d.at.line >= 1 && d.at.line <= lines + 1 && d.at.column >= 1,
                         "a message points into the file");
        measure::require(!d.message.empty() && harmless(d.message) && harmless(d.hint), "a message says something");
    }
    measure::require(job::render(diagnostics, source).empty() == diagnostics.empty(), "every mistake is shown");
}

/// A job that leaves to the shop whatever it may.
void shop(const job::Source& source) {
    const job::ShopReading reading = job::read_shop(source);
    require_told(reading.diagnostics, source);
    static const job::Source job_file{"job.toml", R"([job]
number = "K-7"
title = "Mill Lane arch"
revision = "B"
date = 2026-05-04
units = "in"
[[opening]]
id = "A"
shape = "half-round"
span = 72
depth = 5.25
[opening.liner]
material = "mdf"
thickness = "3/4 in"
)"};
    const job::Reading used = job::read_job(job_file, reading.shop);
    require_told(used.diagnostics, job_file);
}

void profile(const job::Source& source) {
    const job::ProfileReading reading = job::read_profile(source, "laser");
    require_told(reading.diagnostics, source);
    measure::require(reading.profile.has_value() == reading.diagnostics.empty(), "a profile or what is wrong with it");
    if (!reading.profile) return;
    const job::ProfileReading again = job::read_profile({"again.toml", job::profile_text(*reading.profile)}, "laser");
    measure::require(again.profile.has_value(), "what is written of a profile reads back");
    measure::require(std::abs(again.profile->across - reading.profile->across) < 1e-5 &&
                         std::abs(again.profile->along - reading.profile->along) < 1e-5 &&
                         again.profile->feed == reading.profile->feed,
                     "as the same profile");
}

void layout(const std::string& text) try {
    const fonts::Style style = fonts::parse_style(text, "fuzz.toml");
    for (const auto length : {style.tiny, style.huge, style.hair, style.end, style.strip_height, style.tile_overlap})
        measure::require(length > measure::Length{}, "every size is one");
} catch (const std::runtime_error& told) {
    const std::string_view words = told.what();
    measure::require(words.starts_with("fuzz.toml") && harmless(words), "a mistake names its file");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    const job::Source source{"fuzz.toml", std::string(data + 1, data + size)};
    if (job::first_bad_utf8(source.text)) return 0;  // load() refuses these before they come so far
    if (data[0] == 's') shop(source);
    else if (data[0] == 'p') profile(source);
    else layout(source.text);
    return 0;
}
