#pragma once
// The answers of a talk that was broken off, as text.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cli/start/answers.h"

namespace kerfpacket::cli {

struct SavedAnswer {
    std::string question;  ///< its name
    std::string value;
    std::string typed{};  ///< as `Answer` has it
};

struct Saved {
    std::string language;
    std::vector<SavedAnswer> answers;
};

/// One answer to a line, under a line that says what it is.
std::string saved_text(const Answers& answers, std::string_view language);
/// None where no talk wrote that text.
std::optional<Saved> read_saved(std::string_view text);

}  // namespace kerfpacket::cli
