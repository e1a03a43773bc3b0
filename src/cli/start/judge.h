#pragma once
// What is wrong, or doubtful, with an answer beside those before it.

#include <optional>
#include <string>
#include <vector>

#include "cli/start/answers.h"
#include "fonts/words.h"
#include "job/shop.h"
#include "measure/length.h"

namespace kerfpacket::cli {

/// What the program's own reader and plan say against a job of these answers, each with the question that it is about
/// (null for the job as a whole). Nothing where there is nothing wrong so far.
struct Fault {
    const Question* question = nullptr;
    std::string message;
    std::string hint;
};
std::vector<Fault> faults(const Answers& answers, const job::Shop& shop, const fonts::Words& words,
                          const std::string& language);

/// What may well be right and seldom is.
struct Doubt {
    std::string key;           ///< of start.toml
    std::string about = {};    ///< the question that a yes changes the answer of; empty: nothing is changed
    std::string becomes = {};  ///< to this
};
/// About the last of the answers.
std::optional<Doubt> doubt(const Answers& answers);

/// The length that an answer gives; none where it gives none.
std::optional<measure::Length> length_of(std::string_view value, const Answers& answers);

}  // namespace kerfpacket::cli
