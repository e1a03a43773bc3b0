#pragma once
// Worked examples: talks whose answers are known.

#include <string_view>
#include <vector>

#include "cli/start/heads.h"
#include "cli/start/talk.h"

namespace kerfpacket::cli {

/// To what has no answer here, what is offered is taken. All invented.
struct Example {
    std::string_view name;  ///< of a shape, or "splayed", "wall", "stair"
    Figures answers;
};

const std::vector<Example>& examples();

/// Answers all that the talk asks.
void tell_example(Talk& talk, const Example& example, const fonts::Words& words);

}  // namespace kerfpacket::cli
