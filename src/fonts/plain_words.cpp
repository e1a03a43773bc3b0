#include "fonts/plain_words.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <unordered_set>

#include "fonts/utf8.h"
#include "text/toml.h"

namespace kerfpacket::fonts {
namespace {

/// Which of all bytes are of a kind: asked for every letter of every word, at every start.
class Bytes {
public:
    template <typename Kind>
    explicit constexpr Bytes(const Kind& kind) {
        for (std::size_t i = 0; i < of_kind_.size(); ++i) of_kind_[i] = kind(static_cast<char>(i));
    }
    bool hold(char c) const { return of_kind_[static_cast<unsigned char>(c)]; }

    /// How many of them a text begins with.
    std::size_t at_front(std::string_view text) const {
        const auto* const end = std::find_if_not(text.begin(), text.end(), [&](char c) { return hold(c); });
        return static_cast<std::size_t>(end - text.begin());
    }

private:
    std::array<bool, 256> of_kind_{};
};

constexpr Bytes of_key([](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-'; });
/// Those that stand in a comment or in a text for nothing but themselves.
constexpr Bytes of_comment([](char c) { return c >= ' ' && c <= '~'; });
constexpr Bytes of_text([](char c) { return c >= ' ' && c <= '~' && c != '"' && c != '\\'; });

/// Follows the text as far as it is plain. Every step tells whether it still is.
class PlainReader {
public:
    explicit PlainReader(const WordFile& file) : file_(file), rest_(file.text) {
        // An entry is seldom shorter.
        entries_.reserve(file.text.size() / 32);
    }

    std::optional<std::vector<WordEntry>> take() {
        if (file_.text.size() > text::most_bytes) return std::nullopt;
        while (skip_to_next(), !rest_.empty())
            if (rest_.front() == '[' ? !header() : !entry()) return std::nullopt;
        if (!keys_apart()) return std::nullopt;
        return std::move(entries_);
    }

private:
    bool at(char c) const { return !rest_.empty() && rest_.front() == c; }
    bool take(char c) {
        if (!at(c)) return false;
        rest_.remove_prefix(1);
        return true;
    }
    void skip_spaces() {
        while (at(' ') || at('\t')) rest_.remove_prefix(1);
    }

    /// Over empty lines and comments.
    void skip_to_next() {
        while (true) {
            skip_spaces();
            if (at('#')) skip(of_comment);
            if (!take('\n')) return;
            ++line_;
        }
    }

    /// Nothing but a comment may follow on the line.
    bool ends_line() {
        const int line = line_;
        skip_to_next();
        return rest_.empty() || line_ > line;
    }

    std::string_view key() {
        const std::string_view found = rest_.substr(0, of_key.at_front(rest_));
        rest_.remove_prefix(found.size());
        return found;
    }

    bool header() {
        take('[');
        prefix_ = stem_;
        do {
            const std::string_view part = key();
            if (part.empty()) return false;
            prefix_.append(part) += '.';
        } while (take('.'));
        headers_.push_back(prefix_);
        return take(']') && ends_line();
    }

    bool entry() {
        const int line = line_;
        const std::string_view name = key();
        if (name.empty()) return false;
        skip_spaces();
        if (!take('=')) return false;
        skip_spaces();
        WordEntry& entry = entries_.emplace_back();
        entry.key.reserve(prefix_.size() + name.size());
        entry.key.append(prefix_).append(name);
        entry.list = at('[');
        entry.file = path_;
        entry.line = line;
        return (entry.list ? list(entry.texts) : text(entry.texts)) && ends_line();
    }

    bool list(std::vector<std::string>& texts) {
        take('[');
        while (skip_to_next(), !take(']')) {
            if (!text(texts)) return false;
            skip_to_next();
            if (!take(',') && !at(']')) return false;
        }
        return true;
    }

    bool text(std::vector<std::string>& texts) {
        if (!take('"') || rest_.starts_with("\"\"")) return false;
        std::string_view before = rest_;
        skip(of_text);
        std::string& words = texts.emplace_back(before.substr(0, before.size() - rest_.size()));
        while (!take('"')) {
            if (!escape(words)) return false;
            before = rest_;
            skip(of_text);
            words += before.substr(0, before.size() - rest_.size());
        }
        return braces_close(words);
    }

    bool escape(std::string& words) {
        if (!take('\\')) return false;
        if (!at('"') && !at('\\')) return false;
        words += rest_.front();
        rest_.remove_prefix(1);
        return true;
    }

    /// Over all of these, and characters of more bytes between them.
    void skip(const Bytes& those) {
        do rest_.remove_prefix(those.at_front(rest_));
        while (!rest_.empty() && static_cast<unsigned char>(rest_.front()) >= 0xC2 && take_character(rest_));
    }

    static bool braces_close(std::string_view words) {
        if (words.find('{') == std::string_view::npos) return true;
        return words.find('}', words.rfind('{')) != std::string_view::npos;
    }

    /// No key or table is given twice, and no key is a table as well.
    bool keys_apart() const {
        std::vector<std::string_view> all(headers_.begin(), headers_.end());
        for (const WordEntry& entry : entries_) all.push_back(entry.key);
        const std::unordered_set<std::string_view> different(all.begin(), all.end());
        if (different.size() != all.size()) return false;
        const auto within = [](std::string_view key, std::string_view header) {
            return header.starts_with(key) && header[key.size()] == '.';
        };
        return std::none_of(entries_.begin(), entries_.end(), [&](const WordEntry& entry) {
            return std::any_of(headers_.begin(), headers_.end(),
                               [&](std::string_view header) { return within(entry.key, header); });
        });
    }

    const WordFile& file_;
    const std::string stem_ = file_.stem() + ".";
    std::shared_ptr<const std::string> path_ = std::make_shared<const std::string>(file_.path);
    std::string_view rest_;
    std::string prefix_ = stem_;
    int line_ = 1;
    std::vector<WordEntry> entries_;
    std::vector<std::string> headers_;
};

}  // namespace

std::optional<std::vector<WordEntry>> plain_entries(const WordFile& file) { return PlainReader(file).take(); }

}  // namespace kerfpacket::fonts
