#pragma once
// What is said of a job in a way that can be said in another language: no sentence is ever looked for by its words.

#include <string>
#include <string_view>
#include <vector>

#include "measure/fraction.h"

namespace kerfpacket::job {

struct Part;

/// A sentence or a part of one: the text is its English, the rest is what it takes to say it in another language.
struct Told : std::string {
    Told() = default;
    /// A name, or a sentence that no sheet says: it stands as it is in every language.
    explicit Told(std::string english);

    std::string key;          ///< of the words of every language, as "refusals.fold"; empty for a name and for figures
    bool figures = false;     ///< their decimal mark is the language's
    std::vector<Part> parts;  ///< what stands in the places of those words
};

/// What stands in a place that the words of a sentence have in braces.
struct Part {
    Part(std::string_view place, Told told);
    Part(std::string_view place, const std::string& name);
    Part(std::string_view place, int number);

    std::string place;
    Told told;
};

/// A sentence that the plan says of a piece it refuses: `key` of refusals.toml, and its English with places in braces,
/// every one of which a part fills.
Told say(std::string_view key, std::string_view english, std::vector<Part> parts = {});
/// A figure without a unit.
Told figure(std::string figures);
/// A length with its unit, as `measure::length_text` has it.
Told shown(measure::Length value, measure::Unit unit);
/// The program's name for something, a material or a shape, and the key of what a language calls it.
Told word(std::string key, std::string english);
/// Several in a row: `key` and `english` have the places {first} and {rest}.
Told in_a_row(std::string_view key, std::string_view english, std::vector<Told> all);

}  // namespace kerfpacket::job
