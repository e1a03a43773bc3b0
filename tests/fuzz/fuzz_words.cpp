// Any bytes as a file of words: reading ends, and either every mistake names the file, or the words can be used: each
// key gives its text with its names filled in, and of a shop's words no caution is touched.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <vector>

#include "fonts/words.h"
#include "measure/require.h"

using namespace kerfpacket;

// The name is libFuzzer's. NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

const std::vector<fonts::WordFile>& program() {
    // Those that are put to the test, and the cautions: the others would only cost time.
    static const auto files = [] {
        auto all = fonts::read_word_files(KERFPACKET_SOURCE_DIR "/templates", "en");
        std::erase_if(all, [](const fonts::WordFile& file) {
            return std::string("cautions cover numbers page safety shop template").find(file.stem()) ==
                   std::string::npos;
        });
        return all;
    }();
    return files;
}

/// The shop's file that the first byte stands for; none for the program's own.
std::string file_for(std::uint8_t first) {
    switch (first) {
        case 'c': return "cover";
        case 's': return "shop";
        case 'f': return "safety";
        case 't': return "template";
        case 'n': return "numbers";
        case 'p': return "page";
        default: return "";
    }
}

void use(const fonts::Words& words) {
    for (const auto& [key, entry] : words.entries()) {
        if (entry.list) {
            measure::require(words.list(key) == entry.texts, "a list is what stands there");
            continue;
        }
        fonts::Words::Values values;
        for (const std::string& name : fonts::names_in(entry.texts.front())) values.emplace_back(name, "7");
        const std::string text = words(key, values);
        measure::require(values.empty() ? text == words(key) : text.find('7') != std::string::npos, "names are filled");
    }
}

bool every_line_names(const std::string& told, const std::string& path) {
    for (std::size_t from = 0; from < told.size();) {
        if (told.compare(from, path.size(), path) != 0) return false;
        from = std::min(told.find('\n', from), told.size() - 1) + 1;
    }
    return !told.empty();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) return 0;
    const std::string file = file_for(data[0]);
    const std::string path = "fuzz/words.toml";
    const std::string stem = file.empty() ? "alone" : file;
    const fonts::WordFile words{"en/" + stem + ".toml", std::string(data + 1, data + size), path};
    try {
        if (file.empty()) {
            use(fonts::Words(std::vector{words}, "en"));
            return 0;
        }
        const fonts::Words mixed(program(), "en", {words});
        use(mixed);
        static const fonts::Words own(program(), "en");
        measure::require(mixed.entries().size() == own.entries().size(), "a shop adds no key");
        for (const auto& [key, entry] : own.entries())
            if (key.starts_with("safety.") || key.starts_with("cautions."))
                measure::require(mixed.entries().at(key).texts == entry.texts, "cautions stand");
    } catch (const std::runtime_error& told) {
        measure::require(every_line_names(told.what(), path), "a mistake names its file");
    }
    return 0;
}
