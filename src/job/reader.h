#pragma once
// Typed access to the tables of a job file. Every look-up reports its own mistakes and remembers the key, so that
// what was never asked for is an unknown key.

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "job/context.h"

namespace kerfpacket::job {

enum class Need { required, optional };

/// One table of the file.
class TableReader {
public:
    /// `title` as the user writes it: "[saw]", "[[opening]]", "[opening.liner]".
    TableReader(Context& context, const toml::table& table, std::string title);

    bool has(std::string_view key) const { return table_.contains(key); }
    /// Where the table begins; where the value of a key that it has stands.
    Position at() const { return position(table_); }
    Position at(std::string_view key) const { return position(*table_.get(key)); }
    /// The value; none when it is absent (told when required) or was already told to be unreadable.
    const toml::node* find(std::string_view key, Need need, std::string_view example);
    /// Tells in `finish` that a key is missing, unless a mistyped key stands for it.
    void missing(std::string_view key, std::string message, std::string hint);

    std::optional<Sourced<Length>> length(const LengthKey& key, Need need = Need::required);
    /// As `length`; position line 0 when it could not be read.
    Sourced<Length> needed_length(const LengthKey& key) { return length(key).value_or(Sourced<Length>{}); }
    Sourced<Length> length_or(const LengthKey& key, Length otherwise);
    /// Two or more lengths in brackets; `count` 0 for any number but none. Empty when not all could be read.
    std::vector<Sourced<Length>> lengths(const LengthKey& key, std::size_t count);
    /// One line of printable words with at most `most` characters.
    std::optional<Sourced<std::string>> words(std::string_view key, std::size_t most, std::string_view example);
    int whole(std::string_view key, int most, int otherwise);
    const toml::table* table(std::string_view key, Need need, std::string_view header);

    /// One of a few words.
    template <class T>
    std::optional<Sourced<T>> choice(std::string_view key, const std::vector<std::pair<std::string_view, T>>& choices,
                                     Need need = Need::optional) {
        std::vector<std::string_view> names;
        names.reserve(choices.size());
        for (const auto& [name, value] : choices) names.push_back(name);
        const auto picked = pick(key, names, need);
        if (!picked) return std::nullopt;
        return Sourced<T>{choices[picked->value].second, picked->at};
    }

    /// Reports unknown keys and missing ones. Call it last.
    void finish();

private:
    std::optional<Sourced<std::size_t>> pick(std::string_view key, const std::vector<std::string_view>& names,
                                             Need need);
    struct Missing {
        std::string_view key;
        std::string message;
        std::string hint;
    };

    Context& context_;
    const toml::table& table_;
    std::string title_;
    std::vector<std::string_view> known_;
    std::vector<Missing> missing_;
};

/// "expected "a" or "b"", with the near miss before it.
std::string expected_one_of(std::string_view word, const std::vector<std::string_view>& names);

}  // namespace kerfpacket::job
