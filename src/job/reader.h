#pragma once
// Typed access to the tables of a job file. Every look-up reports its own mistakes and remembers the key, so that
// what was never asked for is an unknown key.

#include <array>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "job/choices.h"
#include "job/context.h"

namespace kerfpacket::job {

enum class Need { required, optional };

using LengthPairs = std::vector<std::pair<Sourced<Length>, Sourced<Length>>>;

/// A key that takes a list of pairs of lengths.
struct PairsKey {
    std::string_view name;
    LengthKey first;
    LengthKey second;
    std::string_view takes;  ///< "pairs: from and to"
    std::string_view example;
    std::size_t most;
};

/// A key that takes a bare number: one without a unit, or with one that goes without saying.
struct NumberKey {
    std::string_view name;
    double least;
    double most;
    std::string_view range;  ///< "from 1 to 2000"
    std::string_view example;
};

/// One table of the file.
class TableReader {
public:
    /// `title` as the user writes it: "[saw]", "[[opening]]", "[opening.liner]".
    TableReader(Context& context, const toml::table& table, std::string title);

    bool has(std::string_view key) const { return table_.contains(key); }
    /// Where the table begins; where the value of a key that it has stands; where the key itself stands.
    Position at() const { return position(table_); }
    Position at(std::string_view key) const { return position(*table_.get(key)); }
    Position at_name(std::string_view key) const;
    /// The value; none when it is absent (told when required) or was already told to be unreadable. `takes` is what
    /// the caller makes of it.
    const toml::node* find(std::string_view key, Need need, std::string_view example, Takes takes);
    /// Notes what is taken for a key, where the table leaves it out.
    void usual(std::string_view key, Scalar taken);
    /// Tells in `finish` that one of these keys is missing, unless a mistyped key stands for one of them.
    void missing(std::vector<std::string_view> keys, std::string message, std::string hint);
    /// A key that is known, but does not go with what the rest of the table says: an error if it is given.
    void refuse(std::string_view key, std::string message, std::string hint);

    std::optional<Sourced<Length>> length(const LengthKey& key, Need need = Need::required);
    /// As `length`; position line 0 when it could not be read.
    Sourced<Length> needed_length(const LengthKey& key) { return length(key).value_or(Sourced<Length>{}); }
    Sourced<Length> length_or(const LengthKey& key, Length otherwise);
    /// Two or more lengths in brackets; `count` 0 for any number but none. Empty when not all could be read.
    std::vector<Sourced<Length>> lengths(const LengthKey& key, std::size_t count);
    /// One length, which counts twice, or two in brackets.
    std::optional<std::array<Sourced<Length>, 2>> one_or_two(const LengthKey& key);
    /// A list of pairs of lengths; a value that could not be read stands in its place with position line 0. None when
    /// it is no list of that many.
    std::optional<LengthPairs> pairs(const PairsKey& key);
    /// One line of printable words with at most `most` characters.
    std::optional<Sourced<std::string>> words(std::string_view key, std::size_t most, std::string_view example,
                                              Need need = Need::required);
    std::optional<Sourced<int>> whole(std::string_view key, int most, int least = 1);
    bool flag(std::string_view key, bool otherwise);
    std::optional<double> number(const NumberKey& key, Need need = Need::optional);
    const toml::table* table(std::string_view key, Need need, std::string_view header);
    /// One [key] table, or the tables of each [[key]]. `header` with single brackets.
    std::vector<const toml::table*> one_or_more_tables(std::string_view key, std::string_view header);
    /// The tables of each [[key]]; what stands there and is no table is told.
    std::vector<const toml::table*> tables(std::string_view key);

    /// One of a few words.
    template <class T>
    std::optional<Sourced<T>> choice(std::string_view key, const Choices<T>& choices, Need need = Need::optional) {
        const auto picked = pick(key, words_of(choices), need);
        if (!picked) return std::nullopt;
        return Sourced<T>{choices[picked->value].second, picked->at};
    }

    /// One of a few words, which counts twice, or two of them in brackets: left, right.
    template <class T>
    std::optional<std::array<T, 2>> one_or_two_words(std::string_view key, const Choices<T>& choices) {
        const auto picked = pick_two(key, words_of(choices));
        if (!picked) return std::nullopt;
        return std::array<T, 2>{choices[picked->at(0)].second, choices[picked->at(1)].second};
    }

    /// Reports unknown keys and missing ones. Call it last.
    void finish();

private:
    void note(std::string_view key, Need need, std::string_view example, Takes takes);
    std::optional<Sourced<std::size_t>> pick(std::string_view key, const std::vector<std::string_view>& names,
                                             Need need);
    std::optional<std::array<std::size_t, 2>> pick_two(std::string_view key,
                                                       const std::vector<std::string_view>& names);
    std::optional<std::size_t> index_of(std::string_view key, const toml::node& node,
                                        const std::vector<std::string_view>& names);
    const toml::table* read_table(std::string_view key, Need need, std::string_view header);
    std::vector<Sourced<Length>> elements(const toml::array& list, const LengthKey& key);
    struct Missing {
        std::vector<std::string_view> keys;
        std::string message;
        std::string hint;
    };

    Context& context_;
    const toml::table& table_;
    std::string title_;
    std::vector<std::string_view> known_;
    std::vector<Missing> missing_;
};

/// "for example key = example".
std::string for_example(std::string_view key, std::string_view example);
/// "expected "a" or "b"", with the near miss before it.
std::string expected_one_of(std::string_view word, const std::vector<std::string_view>& names);

}  // namespace kerfpacket::job
