#include "fonts/plain_words.h"

#include <algorithm>
#include <string_view>

#include "fonts/utf8.h"
#include "text/toml.h"

namespace kerfpacket::fonts {
namespace {

bool is_key(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-'; }

/// Follows the text as far as it is plain. Every step tells whether it still is.
class PlainReader {
public:
    explicit PlainReader(const WordFile& file) : file_(file), rest_(file.text), prefix_(file.stem() + ".") {}

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
    void skip_spaces() { rest_.remove_prefix(std::min(rest_.find_first_not_of(" \t"), rest_.size())); }

    /// Over empty lines and comments.
    void skip_to_next() {
        while (true) {
            skip_spaces();
            if (at('#'))
                while (skip_character()) {}
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
        const auto* const end = std::find_if_not(rest_.begin(), rest_.end(), is_key);
        const std::string_view found = rest_.substr(0, static_cast<std::size_t>(end - rest_.begin()));
        rest_.remove_prefix(found.size());
        return found;
    }

    bool header() {
        take('[');
        prefix_ = file_.stem() + ".";
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
        WordEntry entry{prefix_ + std::string(name), at('['), {}, path_, line};
        if (entry.list ? !list(entry.texts) : !text(entry.texts)) return false;
        entries_.push_back(std::move(entry));
        return ends_line();
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
        std::string words;
        while (!at('"')) {
            const std::string_view before = rest_;
            while (!at('"') && !at('\\') && skip_character()) {}
            words += before.substr(0, before.size() - rest_.size());
            if (!at('"') && !escape(words)) return false;
        }
        take('"');
        texts.push_back(std::move(words));
        return braces_close(texts.back());
    }

    bool escape(std::string& words) {
        if (!take('\\')) return false;
        if (!at('"') && !at('\\')) return false;
        words += rest_.front();
        rest_.remove_prefix(1);
        return true;
    }

    /// Over one that may stand in a text: no control character, and UTF-8.
    bool skip_character() {
        if (rest_.empty()) return false;
        const char c = rest_.front();
        if (c >= ' ' && c <= '~') rest_.remove_prefix(1);
        else return static_cast<unsigned char>(c) >= 0xC2 && take_character(rest_);
        return true;
    }

    static bool braces_close(std::string_view words) {
        const std::size_t open = words.rfind('{');
        return open == std::string_view::npos || words.find('}', open) != std::string_view::npos;
    }

    /// No key or table is given twice, and no key is a table as well.
    bool keys_apart() const {
        std::vector<std::string_view> all(headers_.begin(), headers_.end());
        for (const WordEntry& entry : entries_) all.push_back(entry.key);
        std::sort(all.begin(), all.end());
        if (std::adjacent_find(all.begin(), all.end()) != all.end()) return false;
        const auto within = [](std::string_view key, std::string_view header) {
            return header.starts_with(key) && header[key.size()] == '.';
        };
        return std::none_of(entries_.begin(), entries_.end(), [&](const WordEntry& entry) {
            return std::any_of(headers_.begin(), headers_.end(),
                               [&](std::string_view header) { return within(entry.key, header); });
        });
    }

    const WordFile& file_;
    std::shared_ptr<const std::string> path_ = std::make_shared<const std::string>(file_.path);
    std::string_view rest_;
    std::string prefix_;
    int line_ = 1;
    std::vector<WordEntry> entries_;
    std::vector<std::string> headers_;
};

}  // namespace

std::optional<std::vector<WordEntry>> plain_entries(const WordFile& file) { return PlainReader(file).take(); }

}  // namespace kerfpacket::fonts
