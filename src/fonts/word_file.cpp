#include "fonts/word_file.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <system_error>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "fonts/toml_file.h"

namespace kerfpacket::fonts {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_bytes = 1'000'000;

std::string read_text(const fs::path& path) {
    std::error_code failed;
    const fs::file_type type = fs::status(path, failed).type();
    // A pipe would be waited for without end.
    if (!failed && type != fs::file_type::regular && type != fs::file_type::not_found)
        throw std::runtime_error(fmt::format("cannot read {}: it is no file of text", path.string()));
    std::ifstream in(path, std::ios::binary);
    // One byte more than allowed is enough to know.
    std::string text(most_bytes + 1, '\0');
    if (in) in.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (!in.is_open() || in.bad()) throw std::runtime_error(fmt::format("cannot read {}", path.string()));
    text.resize(static_cast<std::size_t>(in.gcount()));
    if (text.size() > most_bytes)
        throw std::runtime_error(
            fmt::format("{}: a file of words is a page or two, this one is over 1 MB", path.string()));
    return text;
}

bool is_plain(std::string_view name) {
    return !name.empty() && name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_-") == std::string_view::npos;
}

class EntryReader {
public:
    explicit EntryReader(const WordFile& file) : file_(file) {}

    /// Throws one std::runtime_error that tells every mistake, a line each.
    std::vector<WordEntry> take() {
        table(parse_toml(file_.text, file_.path), file_.stem());
        if (!mistakes_.empty()) throw std::runtime_error(all_lines(mistakes_));
        return std::move(entries_);
    }

private:
    void table(const toml::table& table, const std::string& prefix) {
        for (const auto& [name, node] : table) {
            if (!is_plain(name.str())) {
                note(node, "a key", "is made of small letters, digits, - and _");
                continue;
            }
            std::string key = prefix + "." + std::string(name.str());
            if (const toml::table* inner = node.as_table()) this->table(*inner, key);
            else entry(std::move(key), node);
        }
    }

    void entry(std::string key, const toml::node& node) {
        WordEntry entry{std::move(key), node.is_array(), {}, place_of(file_.path, &node)};
        if (const toml::array* array = node.as_array())
            for (const toml::node& sentence : *array)
                entry.texts.push_back(text(sentence, entry.key, "must hold nothing but text in quotes"));
        else entry.texts.push_back(text(node, entry.key, "must be text in quotes"));
        entries_.push_back(std::move(entry));
    }

    std::string text(const toml::node& node, const std::string& key, const char* expected) {
        auto words = node.value_exact<std::string>();
        if (!words) {
            note(node, key, expected);
            return "";
        }
        for (std::size_t open = words->find('{'); open != std::string::npos; open = words->find('{', open + 1))
            if (words->find('}', open) == std::string::npos) {
                note(node, key, "opens a brace and never closes it");
                break;
            }
        return *std::move(words);
    }

    void note(const toml::node& node, std::string_view key, std::string_view what) {
        mistakes_.push_back(fmt::format("{}: {} {}", place_of(file_.path, &node), key, what));
    }

    const WordFile& file_;
    std::vector<WordEntry> entries_;
    std::vector<std::string> mistakes_;
};

}  // namespace

std::vector<WordFile> read_word_files(const fs::path& folder, const std::string& language) {
    std::vector<WordFile> files;
    const fs::path place = folder / language;
    std::error_code failed;
    // A folder that is not there is no mistake; one that is there and cannot be read is: its words would be missed.
    if (fs::symlink_status(place, failed).type() == fs::file_type::not_found) return files;
    fs::directory_iterator entries(place, failed);
    for (; !failed && entries != fs::directory_iterator(); entries.increment(failed))
        if (entries->path().extension() == ".toml")
            files.push_back({language + "/" + entries->path().filename().string(), "", entries->path().string()});
    if (failed)
        throw std::runtime_error(fmt::format("cannot read the folder {}: {}", place.string(), failed.message()));
    // In a fixed order, so that of several mistakes the same is always told first.
    std::sort(files.begin(), files.end(), [](const WordFile& a, const WordFile& b) { return a.name < b.name; });
    std::vector<std::string> mistakes;
    for (WordFile& file : files) try {
            file.text = read_text(file.path);
        } catch (const std::runtime_error& unreadable) { mistakes.emplace_back(unreadable.what()); }
    if (!mistakes.empty()) throw std::runtime_error(all_lines(mistakes));
    return files;
}

std::vector<WordEntry> entries_of(const WordFile& file) { return EntryReader(file).take(); }

std::string all_lines(const std::vector<std::string>& mistakes) {
    constexpr std::size_t most = 100;
    const std::size_t told = std::min(most, mistakes.size());
    std::string text =
        fmt::format("{}", fmt::join(mistakes.begin(), mistakes.begin() + static_cast<std::ptrdiff_t>(told), "\n"));
    if (told < mistakes.size()) text += fmt::format("\nand {} more", mistakes.size() - told);
    return text;
}

std::set<std::string> names_in(std::string_view text) {
    std::set<std::string> names;
    for (std::size_t open = text.find('{'); open != std::string_view::npos;) {
        const std::size_t close = text.find('}', open);
        if (close == std::string_view::npos) break;
        names.emplace(text.substr(open + 1, close - open - 1));
        open = text.find('{', close);
    }
    return names;
}

}  // namespace kerfpacket::fonts
