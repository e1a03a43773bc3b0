#include "job/printed.h"

#include <algorithm>
#include <array>

#include "job/context.h"
#include "job/text.h"
#include "text/toml.h"

namespace kerfpacket::job {
namespace {

constexpr std::array<std::string_view, 4> printed_keys{"number", "title", "revision", "by"};

class Finder {
public:
    explicit Finder(std::string_view text) : lines_(split_lines(text)) {}

    void table(const toml::table& table) {
        for (const auto& [key, node] : table) {
            const bool printed = std::find(printed_keys.begin(), printed_keys.end(), key.str()) != printed_keys.end();
            if (const auto* inner = node.as_table()) this->table(*inner);
            else if (const auto* list = node.as_array()) array(*list);
            else if (const auto* words = node.as_string(); words != nullptr && printed)
                found_.push_back({words->get(), position(node), verbatim(position(node), words->get())});
        }
    }

    std::vector<PrintedWords> take() { return std::move(found_); }

private:
    void array(const toml::array& list) {
        for (const auto& element : list)
            if (const auto* inner = element.as_table()) table(*inner);
    }

    bool verbatim(Position at, std::string_view words) const {
        const auto index = static_cast<std::size_t>(at.line - 1);
        if (index >= lines_.size()) return false;
        const auto raw =
            lines_[index].substr(byte_of_character(lines_[index], static_cast<std::size_t>(at.column - 1)));
        return raw.size() > words.size() && raw.substr(1, words.size()) == words;
    }

    std::vector<std::string_view> lines_;
    std::vector<PrintedWords> found_;
};

}  // namespace

std::vector<PrintedWords> printed_words(const Source& source) {
    const auto root = text::parse(source.text);
    if (!root) return {};
    Finder finder(source.text);
    finder.table(*root);
    return finder.take();
}

}  // namespace kerfpacket::job
