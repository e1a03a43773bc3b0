#pragma once
// The heads that `start` knows: how each is drawn beside its choice, and a worked example of it.

#include <array>
#include <string_view>
#include <utility>
#include <vector>

namespace kerfpacket::cli {

/// What is answered, by the name of the question.
using Figures = std::vector<std::pair<std::string_view, std::string_view>>;

struct Head {
    std::string_view shape;                ///< the job file's word
    std::array<std::string_view, 2> rows;  ///< of one width, the same in every language
    Figures example;                       ///< its own figures, all invented
};

/// In the order in which they are asked for.
const std::vector<Head>& heads();

}  // namespace kerfpacket::cli
