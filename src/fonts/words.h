#pragma once
// The printed words: templates/<language>/*.toml, with a shop's own in place of some. The key is "file.key", e.g.
// "strip.title".

#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "fonts/word_file.h"

namespace kerfpacket::fonts {

class Words {
public:
    /// Reads the program's words of a language, then a shop's in their place; of `shop` the files of other languages do
    /// not count. Throws std::runtime_error that names file, line and key; all mistakes of the shop in one.
    Words(const std::filesystem::path& templates, const std::string& language, const std::vector<WordFile>& shop = {});
    /// The same with the program's words at hand.
    Words(const std::vector<WordFile>& templates, const std::string& language, const std::vector<WordFile>& shop = {});

    using Values = std::vector<std::pair<std::string, std::string>>;

    /// The words of a key; a missing key is an error that names it.
    const std::string& operator()(std::string_view key) const;
    /// The words with {name} replaced by values. A name the template asks for and nobody gives is an error.
    std::string operator()(std::string_view key, const Values& values) const;
    /// A list of sentences.
    const std::vector<std::string>& list(std::string_view key) const;
    /// The same with {name} replaced by values, as in single words.
    std::vector<std::string> list(std::string_view key, const Values& values) const;
    /// Every key with what stands there.
    const WordEntries& entries() const { return entries_; }

private:
    const WordEntry& find(std::string_view key, bool list) const;

    std::string language_;
    WordEntries entries_;
};

}  // namespace kerfpacket::fonts
