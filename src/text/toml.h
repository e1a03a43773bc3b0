#pragma once
// The one way from text to a toml++ tree: for jobs, shops, printers, words and our own files. What no person writes is
// refused before toml++ sees it.

#include <string>
#include <string_view>

#include <toml++/toml.h>
#include <tl/expected.hpp>

namespace kerfpacket::text {

/// A file is a page or two of text.
inline constexpr std::size_t most_bytes = 1'000'000;
/// Some thousand kerfs on one line, as a program writes them.
inline constexpr int most_columns = 40'000;
/// Brackets, braces and dots of a key, all together.
inline constexpr int most_depth = 32;
inline constexpr int most_keys = 50'000;

struct Mistake {
    int line = 1;
    int column = 1;
    std::string description;    ///< in plain words; a name of the text in it is fit for a message
    bool unreasonable = false;  ///< refused unparsed
    bool repeated = false;      ///< a key or a table that was given before
    bool bracketed = false;     ///< within a list, or a table between braces
};

/// Parses text within the limits above; no exception leaves it but std::bad_alloc.
tl::expected<toml::table, Mistake> parse(std::string_view text);

}  // namespace kerfpacket::text
