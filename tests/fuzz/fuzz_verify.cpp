// Any bytes as a packet, or as the files that travel in one: reading ends, and either says in plain words what is
// wrong, or gives a record that goes into a packet and out of it again as it is.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "cli/record.h"
#include "measure/require.h"
#include "output/seal.h"
#include "texts.h"

using namespace kerfpacket;

// The name is libFuzzer's. NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

using Files = std::vector<output::EmbeddedFile>;

/// Names and texts in turn, each ended by a zero byte.
Files listed(std::string_view bytes) {
    Files files;
    while (!bytes.empty()) {
        std::string name = next_text(bytes);
        files.push_back({std::move(name), next_text(bytes)});
    }
    return files;
}

void require_same(const cli::Inputs& a, const cli::Inputs& b) {
    measure::require(a.job.text == b.job.text && a.shop.has_value() == b.shop.has_value(), "texts are kept");
    measure::require(a.profiles.size() == b.profiles.size() && a.words.size() == b.words.size(), "files are kept");
    for (std::size_t i = 0; i < a.words.size(); ++i)
        measure::require(a.words[i].name == b.words[i].name && a.words[i].text == b.words[i].text, "words are kept");
    measure::require(a.print.media == b.print.media && a.print.half == b.print.half, "choices are kept");
}

void use(const Files& files) {
    const cli::Filed once = cli::filed(files, "fuzz.pdf");
    Files again;
    for (const output::Attachment& attachment : cli::attachments_of(once.record, once.statement))
        again.push_back({attachment.name, attachment.text});
    measure::require(again.size() == files.size(), "no file more or less");
    const cli::Filed twice = cli::filed(again, "fuzz.pdf");
    require_same(once.record.inputs, twice.record.inputs);
    measure::require(once.record.previous.has_value() == twice.record.previous.has_value(), "the revision before");
    if (once.record.previous) require_same(*once.record.previous, *twice.record.previous);
    measure::require(once.record.part.whole() == twice.record.part.whole(), "the part is kept");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string bytes(data, data + size);
    try {
        if (bytes.starts_with("%PDF-")) {
            static_cast<void>(output::seal_holds(bytes));
            use(output::parse_packet(bytes).files);
        } else {
            use(listed(bytes));
        }
    } catch (const std::runtime_error& told) {
        const std::string_view words = told.what();
        measure::require(words.starts_with("is ") || words.starts_with("fuzz.pdf was written by a later"),
                         "plain words");
        const auto shapeless = [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; };
        measure::require(std::none_of(words.begin(), words.end(), shapeless), "nothing moves the cursor");
    }
    return 0;
}
