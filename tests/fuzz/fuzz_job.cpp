// Any bytes as a job file: reading must end, messages must point into the file, and a job that reads well must read
// back from its own normalised text.
#include <cstddef>
#include <cstdint>
#include <string>

#include "job/read.h"
#include "job/text.h"
#include "measure/require.h"

using namespace kerfpacket;

// The name is libFuzzer's. NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const job::Source source{"fuzz.toml", std::string(data, data + size)};
    if (job::first_bad_utf8(source.text)) return 0;  // load() refuses these before they come so far
    const job::Reading reading = job::read_job(source);
    const std::string shown = job::render(reading.diagnostics, source);
    measure::require(shown.empty() == reading.diagnostics.empty(), "every mistake is shown");
    const auto lines = static_cast<int>(job::split_lines(source.text).size());
    for (const auto& d : reading.diagnostics) {
        measure::require(d.at.line >= 1 && d.at.line <= lines + 1 && d.at.column >= 1,
                         "a message points into the file");
        measure::require(!d.message.empty(), "a message says something");
    }
    if (!reading.diagnostics.empty()) return 0;
    measure::require(reading.complete, "a job without mistakes is complete");
    const job::Reading again = job::read_job({"again.toml", job::normalised(reading.job)});
    // Rounding to a millionth of a millimetre may push a value over a limit; then there is a message, not a change.
    if (again.diagnostics.empty())
        measure::require(again.job.fingerprint == reading.job.fingerprint, "a normalised job keeps its fingerprint");
    return 0;
}
