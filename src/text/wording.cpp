#include "text/wording.h"

#include <algorithm>
#include <array>

#include "text/characters.h"

namespace kerfpacket::text {
namespace {

/// What toml++ 3.3 says, all of these parts of it; and how it is told. The first that fits counts.
struct Wording {
    std::string_view heard;
    std::string_view also;
    std::string_view said;
};

constexpr std::string_view neither = "this is neither a number nor words in quotes";
constexpr std::string_view open_quotes = "the quotes are not closed";
constexpr std::string_view too_large = "the number is too large";
constexpr std::string_view no_time = "this is no date, and no time of day";

constexpr std::array wordings{
    // Behind a value.
    Wording{"table header: expected a comment", "", "this does not belong behind the name of the table"},
    Wording{"expected a comment or whitespace", "saw ','", "a comma stands behind the value: only a list has commas"},
    Wording{"expected a comment or whitespace", "saw '\"'", "the quotes are closed before this"},
    Wording{"expected a comment or whitespace", "", "this does not belong to the value before it"},
    // Quotes.
    Wording{"control characters other than TAB", "", "the quotes are not closed, or a control character stands here"},
    Wording{"unexpected control character", "", "a control character stands here"},
    Wording{"string: encountered end-of-file", "", open_quotes},
    Wording{"multi-line strings", "", "a key has no quotes of three"},
    Wording{"escape sequence", "", "a backslash does not stand alone in straight quotes"},
    Wording{"unicode", "", "this is not the code of a character"},
    Wording{"hex digit", "string", "this is not the code of a character"},
    Wording{"U+10FFFF", "", "this is not the code of a character"},
    // Keys and the names of tables.
    Wording{"expected '='", "saw ':'", "behind a key stands =, not a colon"},
    Wording{"expected '='", "saw ']'", "a bracket is closed here that was not opened"},
    Wording{"expected '='", "saw '\"'", "there is no = between the key and its value"},
    Wording{"expected '='", "", "a key stands alone: expected key = value"},
    Wording{"key-value pair: encountered end-of-file", "", "the file ends too early: expected key = value"},
    Wording{"table header: expected ']'", "", "the table's name is not closed"},
    Wording{"table header: encountered end-of-file", "", "the table's name is not closed"},
    Wording{"must be contiguous", "", "two brackets stand together, without a space: [["},
    Wording{"blank bare keys", "", "the table has no name"},
    Wording{"bare key starting character", "", "a name is missing here"},
    Wording{"keys, tables, whitespace or comments", "saw '/'", "a comment begins with #"},
    Wording{"keys, tables, whitespace or comments", "", "this is neither a key nor the name of a table"},
    Wording{"into existing", "", "this table is complete between { and } already"},
    // Lists, and tables on one line.
    Wording{"array: encountered end-of-file", "", "the file ends too early: a list is not closed with ]"},
    Wording{"inline table: encountered end-of-file", "", "the file ends too early: a table is not closed with }"},
    Wording{"expected value or closing ']'", "", "a value is missing before this comma"},
    Wording{"comma or closing ']'", "", "this does not belong in the list: expected a comma or ]"},
    Wording{"dangling comma", "", "nothing follows the comma before this"},
    Wording{"expected key-value pair or closing '}'", "", "a key is missing before this comma"},
    Wording{"comma or closing '}'", "", "this does not belong in the table: expected a comma or }"},
    Wording{"key or closing '}'", "", "a table between { and } stands on one line: expected a key or }"},
    // Numbers, dates, and what is none.
    Wording{"underscore", "", "a number has no _ in it"},
    Wording{"leading zeroes", "", "a number does not begin with 0"},
    Wording{"expected value-terminator", "", neither},
    Wording{"not representable", "", too_large},
    Wording{"could not be interpreted as a value", "", too_large},
    Wording{"exceeds", "digits", too_large},
    Wording{"exceeds length limit", "", too_large},
    Wording{"too long to identify", "", too_large},
    Wording{"maximum precision", "", no_time},
    Wording{"parsing date: expected day", "", "the month has no such day"},
    Wording{"parsing date: expected month", "", "the year has no such month"},
    Wording{"parsing time", "", no_time},
    Wording{"parsing boolean", "", "this is neither true nor false: both are written in small letters"},
    Wording{"could not determine value type", "", neither},
    Wording{"expected value, saw", "", "a value is missing behind the ="},
    // Spaces and line ends.
    Wording{"expected space or tab", "", "this is not the space of a keyboard"},
    Wording{"after '\\r'", "", "a line ends here as in no text file: with a carriage return alone"},
    Wording{"parsing key: encountered", "", "the file ends too early: expected key = value"},
};

/// What is left are values of all kinds.
constexpr std::array<std::string_view, 8> values{"integer",     "floating-point", "date",  "date-time",
                                                 "hexadecimal", "boolean",        "value", "decimal"};

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

}  // namespace

bool is_repeated(std::string_view description) { return holds(description, "redefine"); }

bool is_bracketed(std::string_view description) {
    return holds(description, "parsing array") || holds(description, "parsing inline table");
}

std::string plain_words(std::string_view description) {
    if (is_repeated(description)) {
        const std::size_t quote = std::min(description.find('\''), description.size());
        const std::size_t end = description.find('\'', quote + 1);
        const bool named = end != std::string_view::npos;
        return (named ? in_quotes(description.substr(quote + 1, end - quote - 1)) : "this name") + " is given twice";
    }
    const auto fits = [&](const Wording& one) { return holds(description, one.heard) && holds(description, one.also); };
    const auto* found = std::find_if(wordings.begin(), wordings.end(), fits);
    if (found != wordings.end()) return std::string(found->said);
    const bool value = std::any_of(values.begin(), values.end(), [&](auto kind) { return holds(description, kind); });
    return std::string(value ? neither : "this cannot be read");
}

}  // namespace kerfpacket::text
