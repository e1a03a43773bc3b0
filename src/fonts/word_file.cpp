#include "fonts/word_file.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "disk/read.h"
#include "fonts/toml_file.h"
#include "text/characters.h"

namespace kerfpacket::fonts {
namespace {

namespace fs = std::filesystem;

std::string read_text(const fs::path& path) {
    auto text = disk::read(path, text::most_bytes);
    if (text) return *std::move(text);
    if (text.error().kind == disk::Unread::Kind::too_large)
        throw std::runtime_error(
            fmt::format("{}: a file of words is a page or two, this one is over 1 MB", path.string()));
    throw disk::Failure(fmt::format("cannot read {}: {}", path.string(), text.error().why));
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
        const auto line = static_cast<int>(node.source().begin.line);
        WordEntry entry{std::move(key), node.is_array(), {}, path_, line};
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
    std::shared_ptr<const std::string> path_ = std::make_shared<const std::string>(file_.path);
    std::vector<WordEntry> entries_;
    std::vector<std::string> mistakes_;
};

}  // namespace

std::vector<WordFile> read_word_files(const fs::path& folder, const std::string& language) {
    std::vector<WordFile> files;
    // In order of name, so that of several mistakes the same is always told first.
    for (const std::string& name : disk::names_in(folder / language).value_or(std::vector<std::string>{}))
        if (fs::path(name).extension() == ".toml")
            files.push_back({language + "/" + name, "", (folder / language / name).string()});
    std::vector<std::string> mistakes;
    for (WordFile& file : files) try {
            file.text = read_text(file.path);
            file.path = text::printable(file.path);
        } catch (const disk::Failure&) {
            throw;  // nothing is known of what the words say
        } catch (const std::runtime_error& unreadable) { mistakes.emplace_back(unreadable.what()); }
    if (!mistakes.empty()) throw std::runtime_error(all_lines(mistakes));
    return files;
}

std::string WordEntry::place() const { return fmt::format("{}:{}", *file, line); }

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
