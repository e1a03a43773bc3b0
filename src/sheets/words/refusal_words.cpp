#include "sheets/words/refusal_words.h"

#include "measure/require.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {
namespace {

std::string in_words(const job::Told& told, const Kit& kit) {
    if (told.figures) return with_decimal(told, kit.words("numbers.decimal"));
    if (told.key.empty()) return told;
    fonts::Words::Values values;
    for (const job::Part& part : told.parts) values.emplace_back(part.place, in_words(part.told, kit));
    return kit.words(told.key, values);
}

}  // namespace

std::string refusal_text(const job::Told& told, const Kit& kit) {
    measure::require(!told.key.empty(), "what a piece is refused for has words in every language");
    return in_words(told, kit);
}

std::vector<std::string> refusal_ways(const job::Told& hint, const Kit& kit) {
    if (hint.key != "refusals.ways") return {};
    std::vector<std::string> ways;
    const job::Told* row = &hint.parts.front().told;
    for (; row->key == "refusals.or_way"; row = &row->parts.back().told)
        ways.push_back(in_words(row->parts.front().told, kit));
    ways.push_back(in_words(*row, kit));
    return ways;
}

}  // namespace kerfpacket::sheets
