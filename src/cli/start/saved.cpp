#include "cli/start/saved.h"

#include "cli/start/questions.h"
#include "job/text.h"

namespace kerfpacket::cli {
namespace {

constexpr std::string_view first_line = "# kerfpacket start: what was answered until it was broken off";

}  // namespace

std::string saved_text(const Answers& answers, std::string_view language) {
    std::string text(first_line);
    text.append("\nlanguage: ").append(language).append("\n");
    for (const Answer& answer : answers.all()) {
        text += std::string(answer.question->name) + ": " + answer.value + "\n";
        if (!answer.typed.empty()) text += "typed: " + answer.typed + "\n";
    }
    return text;
}

std::optional<Saved> read_saved(std::string_view text) {
    const std::vector<std::string_view> lines = job::split_lines(text);
    if (lines.empty() || lines.front() != first_line) return {};
    Saved saved;
    for (std::size_t i = 1; i < lines.size(); ++i) {
        const std::size_t colon = lines[i].find(": ");
        if (colon == std::string_view::npos) continue;
        const std::string name(lines[i].substr(0, colon));
        const std::string value(lines[i].substr(colon + 2));
        if (name == "language") saved.language = value;
        else if (name == "typed" && !saved.answers.empty()) saved.answers.back().typed = value;
        else saved.answers.push_back({name, value});
    }
    return saved;
}

}  // namespace kerfpacket::cli
