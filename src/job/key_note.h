#pragma once
// What the readers ask their tables for, noted while they read: the one list of keys, for schemas.

#include <string>
#include <string_view>
#include <vector>

namespace kerfpacket::job {

/// What a key takes.
struct Takes {
    enum class Kind {
        nothing,           ///< the key does not go with the rest of its table
        length,            ///< in quotes with its unit, or a bare number
        lengths,           ///< `least` to `most` of them in brackets
        one_or_two,        ///< a length, or two in brackets
        pairs,             ///< up to `most` pairs of lengths
        length_or_word,    ///< a length or one of `words`
        plies,             ///< a whole number from `least` to `most`, or lengths
        numbered,          ///< pairs of a whole number up to `most` and a length
        text,              ///< up to `most` characters
        word,              ///< one of `words`
        list,              ///< of `words`
        paper,             ///< the name of a sheet or a roll
        day,               ///< year-month-day
        percent,           ///< in quotes with its sign
        angle,             ///< degrees, bare or in quotes
        angles,            ///< two of them
        step_or_angle,     ///< a pair of lengths, or an angle
        one_or_two_words,  ///< one of `words`, or two in brackets
        whole,             ///< from `least` to `most`
        number,            ///< bare, from `least` to `most`
        flag,
        table,
        tables,         ///< [[key]], one or more
        one_or_several  ///< [key], or [[key]]
    };
    Kind kind = Kind::nothing;
    double least = 0;  ///< of a length: below 0 where it may be
    double most = 0;
    std::vector<std::string_view> words{};
};

/// One key that a table was asked for.
struct KeyNote {
    std::string table;  ///< as the user writes it: "[saw]", "[[opening]]", "[opening.liner]", "the job file"
    std::string key;
    Takes takes;
    bool needed = false;
    std::string example;
};
using KeyNotes = std::vector<KeyNote>;

}  // namespace kerfpacket::job
