#include "fonts/words.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "fonts/toml_file.h"

namespace kerfpacket::fonts {
namespace {

namespace fs = std::filesystem;

template <class T>
const T& find(const std::map<std::string, T, std::less<>>& entries, std::string_view key, const std::string& language) {
    const auto found = entries.find(key);
    if (found == entries.end())
        throw std::runtime_error(fmt::format("the templates of language \"{}\" have no words for {}", language, key));
    return found->second;
}

std::vector<std::string> sentences(const fs::path& file, const toml::array& array, const std::string& key) {
    std::vector<std::string> result;
    for (const toml::node& entry : array) {
        const auto sentence = entry.value_exact<std::string>();
        if (!sentence) refuse(file, &entry, key, "must hold nothing but text in quotes");
        result.push_back(*sentence);
    }
    return result;
}

/// In a fixed order, so that of several mistakes the same is always told first.
std::vector<fs::path> toml_files(const fs::path& folder) {
    std::vector<fs::path> files;
    std::error_code failed;
    for (const auto& entry : fs::directory_iterator(folder, failed))
        if (entry.path().extension() == ".toml") files.push_back(entry.path());
    if (failed || files.empty())
        throw std::runtime_error(fmt::format("there are no words in the folder {}", folder.string()));
    std::sort(files.begin(), files.end());
    return files;
}

std::string_view value_of(const Words::Values& values, std::string_view name, std::string_view key) {
    const auto found = std::find_if(values.begin(), values.end(), [&](const auto& v) { return v.first == name; });
    if (found == values.end())
        throw std::runtime_error(fmt::format("the words of {} ask for {{{}}}, which nothing gives", key, name));
    return found->second;
}

}  // namespace

Words::Words(const fs::path& templates, const std::string& language) : language_(language) {
    const auto read_table = [this](const auto& self, const fs::path& file, const toml::table& table,
                                   const std::string& prefix) -> void {
        for (const auto& [name, node] : table) {
            const std::string key = prefix + "." + std::string(name.str());
            if (const toml::table* inner = node.as_table()) self(self, file, *inner, key);
            else if (const toml::array* array = node.as_array()) lists_.emplace(key, sentences(file, *array, key));
            else if (const auto text = node.template value_exact<std::string>()) words_.emplace(key, *text);
            else refuse(file, &node, key, "must be text in quotes");
        }
    };
    for (const fs::path& file : toml_files(templates / language))
        read_table(read_table, file, read_toml(file), file.stem().string());
}

const std::string& Words::operator()(std::string_view key) const { return find(words_, key, language_); }

std::string Words::operator()(std::string_view key, const Values& values) const {
    const std::string& words = (*this)(key);
    std::string result;
    std::size_t done = 0;
    for (std::size_t open = words.find('{'); open != std::string::npos; open = words.find('{', done)) {
        const std::size_t close = words.find('}', open);
        if (close == std::string::npos)
            throw std::runtime_error(fmt::format("the words of {} open a brace and never close it", key));
        result += std::string_view(words).substr(done, open - done);
        result += value_of(values, std::string_view(words).substr(open + 1, close - open - 1), key);
        done = close + 1;
    }
    return result += std::string_view(words).substr(done);
}

const std::vector<std::string>& Words::list(std::string_view key) const { return find(lists_, key, language_); }

}  // namespace kerfpacket::fonts
