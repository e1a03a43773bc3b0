#pragma once
// Worked examples: talks whose answers are known.

#include <string_view>
#include <utility>
#include <vector>

#include "cli/start/talk.h"

namespace kerfpacket::cli {

/// What is answered, by the name of the question; to all others what is offered is taken. All invented.
struct Example {
    std::string_view name;  ///< of a shape, or "splayed", "wall", "stair"
    std::vector<std::pair<std::string_view, std::string_view>> answers;
};

const std::vector<Example>& examples();

/// Answers all that the talk asks.
void tell_example(Talk& talk, const Example& example, const fonts::Words& words);

}  // namespace kerfpacket::cli
