#pragma once
// One file of words as text, and what stands in it. Nothing but the text and two names comes from the disk, so that the
// words of a packet can be kept with it.

#include <filesystem>
#include <functional>
#include <memory>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace kerfpacket::fonts {

struct WordFile {
    std::string name;  ///< among the words: "en/safety.toml"
    std::string text;
    std::string path;  ///< where it was found, for messages

    std::string language() const { return name.substr(0, name.find('/')); }
    /// First part of its keys: "safety".
    std::string stem() const { return std::filesystem::path(name).stem().string(); }
};

/// The *.toml files of folder/<language>, in order of name; none where nothing of that name stands. Throws
/// std::runtime_error with all that are over 1 MB, disk::Failure when the folder or one in it cannot be read.
std::vector<WordFile> read_word_files(const std::filesystem::path& folder, const std::string& language);

/// What stands under one key.
struct WordEntry {
    std::string key;  ///< "safety.title", "strip.end.zero"
    bool list = false;
    std::vector<std::string> texts;  ///< one where it is no list
    std::shared_ptr<const std::string> file;
    int line = 0;
    /// "FILE:LINE"
    std::string place() const;
};

/// By their keys, in no order.
struct KeyHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view key) const { return std::hash<std::string_view>{}(key); }
};
using WordEntries = std::unordered_map<std::string, WordEntry, KeyHash, std::equal_to<>>;

/// Everything in a file, in its order of keys. Throws one std::runtime_error with a line "FILE:LINE: KEY what is wrong"
/// for each mistake: no TOML, a value that is no text, a brace that is not closed.
std::vector<WordEntry> entries_of(const WordFile& file);

/// Mistakes as lines of one text: the first hundred, and how many more there are.
std::string all_lines(const std::vector<std::string>& mistakes);

/// The names in braces of a text whose braces are closed.
std::set<std::string> names_in(std::string_view text);

}  // namespace kerfpacket::fonts
