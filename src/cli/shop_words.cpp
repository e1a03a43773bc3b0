#include "cli/shop_words.h"

#include <algorithm>
#include <iterator>
#include <stdexcept>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "disk/read.h"
#include "job/text.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

/// What lies in the folder must be the folder of a language: a word file beside them would be overlooked.
void require_languages(const fs::path& folder, const std::string& shop_file) {
    const std::optional<std::vector<std::string>> names = disk::names_in(folder);
    if (!names)
        throw std::runtime_error(fmt::format("{}: words = \"{}\": there is no folder {}", shop_file,
                                             folder.filename().string(), folder.string()));
    for (const std::string& name : *names) {
        const fs::path entry = folder / name;
        const bool language = std::find(job::languages.begin(), job::languages.end(), name) != job::languages.end();
        if (!language && (entry.extension() == ".toml" || disk::look(entry).kind == disk::Kind::folder))
            throw std::runtime_error(fmt::format("{}: words stand in a folder of their language, {}: {}",
                                                 job::printable(entry.string()), fmt::join(job::languages, " or "),
                                                 (folder / "en" / "cover.toml").string()));
    }
}

}  // namespace

std::vector<fonts::WordFile> read_shop_words(const job::Source& shop, const std::string& folder,
                                             const job::Header& header) {
    std::vector<fonts::WordFile> files;
    const fs::path place = fs::path(shop.name).parent_path() / folder;
    require_languages(place, shop.name);
    for (const std::string& language : {header.language, header.also_in}) {
        if (language.empty()) continue;
        std::vector<fonts::WordFile> more = fonts::read_word_files(place, language);
        std::move(more.begin(), more.end(), std::back_inserter(files));
    }
    return files;
}

}  // namespace kerfpacket::cli
