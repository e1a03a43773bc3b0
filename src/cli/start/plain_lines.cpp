#include <iostream>

#include "cli/start/lines.h"

namespace kerfpacket::cli {
namespace {

constexpr std::size_t most_of_line = 4000;

}  // namespace

NextLine plain_lines(Console& console) {
    return [&console](const std::string& prompt) -> std::optional<std::string> {
        std::string line;
        int character = 0;
        while ((character = std::cin.get()) != std::istream::traits_type::eof() && character != '\n')
            if (line.size() <= most_of_line) line += static_cast<char>(character);
        // A last line without an end may have been cut short: it is no answer.
        if (character != '\n') return {};
        console.result(prompt + line + "\n");
        return line;
    };
}

}  // namespace kerfpacket::cli
