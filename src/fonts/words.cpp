#include "fonts/words.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "fonts/plain_words.h"
#include "fonts/shop_words.h"

namespace kerfpacket::fonts {
namespace {

std::string_view value_of(const Words::Values& values, std::string_view name, const WordEntry& entry) {
    const auto found = std::find_if(values.begin(), values.end(), [&](const auto& v) { return v.first == name; });
    if (found == values.end())
        throw std::runtime_error(
            fmt::format("{}: the words of {} ask for {{{}}}, which nothing gives", entry.place(), entry.key, name));
    return found->second;
}

std::vector<WordFile> program_files(const std::filesystem::path& templates, const std::string& language) {
    std::vector<WordFile> files = read_word_files(templates, language);
    if (files.empty())
        throw std::runtime_error(fmt::format("there are no words in the folder {}", (templates / language).string()));
    return files;
}

std::string filled(const std::string& words, const Words::Values& values, const WordEntry& entry) {
    std::string result;
    std::size_t done = 0;
    for (std::size_t open = words.find('{'); open != std::string::npos; open = words.find('{', done)) {
        const std::size_t close = words.find('}', open);
        result += std::string_view(words).substr(done, open - done);
        result += value_of(values, std::string_view(words).substr(open + 1, close - open - 1), entry);
        done = close + 1;
    }
    return result += std::string_view(words).substr(done);
}

bool is_figure(std::string_view name) {
    return name.find_first_not_of("0123456789.") == std::string_view::npos && name.find('.') != std::string_view::npos;
}

/// A figure that a sentence itself gives, {0.60}, with the decimal mark of these words.
void write_figures(std::string& words, const std::string& decimal) {
    for (std::size_t open = words.find('{'); open != std::string::npos; open = words.find('{', open + 1)) {
        const std::size_t close = words.find('}', open);
        if (!is_figure(std::string_view(words).substr(open + 1, close - open - 1))) continue;
        std::string figure = words.substr(open + 1, close - open - 1);
        figure.replace(figure.find('.'), 1, decimal);
        words.replace(open, close - open + 1, figure);
    }
}

}  // namespace

Words::Words(const std::filesystem::path& templates, const std::string& language, const std::vector<WordFile>& shop)
    : Words(program_files(templates, language), language, shop) {}

Words::Words(const std::vector<WordFile>& templates, const std::string& language, const std::vector<WordFile>& shop)
    : language_(language) {
    for (const WordFile& file : templates) {
        auto entries = plain_entries(file);
        if (!entries) entries = entries_of(file);
        for (WordEntry& entry : *entries) entries_.insert_or_assign(entry.key, std::move(entry));
    }
    for (WordEntry& entry : shop_entries(shop, language, entries_))
        entries_.insert_or_assign(entry.key, std::move(entry));
    const auto decimal = entries_.find("numbers.decimal");
    if (decimal == entries_.end()) return;
    for (auto& [key, entry] : entries_)
        for (std::string& text : entry.texts) write_figures(text, decimal->second.texts.front());
}

const WordEntry& Words::find(std::string_view key, bool list) const {
    const auto found = entries_.find(key);
    if (found == entries_.end())
        throw std::runtime_error(fmt::format("the templates of language \"{}\" have no words for {}", language_, key));
    if (found->second.list != list)
        throw std::runtime_error(
            fmt::format("{}: {} must be {}", found->second.place(), key, list ? "a list" : "text"));
    return found->second;
}

const std::string& Words::operator()(std::string_view key) const { return find(key, false).texts.front(); }

std::string Words::operator()(std::string_view key, const Values& values) const {
    const WordEntry& entry = find(key, false);
    return filled(entry.texts.front(), values, entry);
}

const std::vector<std::string>& Words::list(std::string_view key) const { return find(key, true).texts; }

std::vector<std::string> Words::list(std::string_view key, const Values& values) const {
    const WordEntry& entry = find(key, true);
    std::vector<std::string> all;
    for (const std::string& words : entry.texts) all.push_back(filled(words, values, entry));
    return all;
}

}  // namespace kerfpacket::fonts
