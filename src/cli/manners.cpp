#include "cli/manners.h"

#include <algorithm>
#include <cstdlib>
#include <map>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <CLI/CLI.hpp>

#include "measure/near_miss.h"

namespace kerfpacket::cli {
namespace {

/// Of each command, and of the program itself (""): a test runs them all.
const std::map<std::string, std::vector<std::string>>& examples() {
    static const std::map<std::string, std::vector<std::string>> all{
        {"", {"check arch.toml", "build arch.toml", "build --help"}},
        {"build",
         {"build arch.toml", "build arch.toml stair.toml", "build arch.toml --only strips,checklist",
          "build arch.toml --media iso_a4_210x297mm --out a4.pdf", "build - --out piped.pdf < arch.toml"}},
        {"check", {"check arch.toml", "check arch.toml stair.toml --quiet", "check arch.toml --json"}},
        {"preview", {"preview arch.toml --contact-sheet", "preview arch.toml --svg --out pictures"}},
        {"printer-check",
         {"printer-check --media iso_a4_210x297mm",
          R"(printer-check --profile shop-laser --first top --level "6 31/32 in" --upright "9 in")"}},
        {"field-sheet", {"field-sheet arch", "field-sheet wall --language es --out muro.pdf"}},
        {"outlines", {"outlines arch.toml > arch.dxf", "outlines arch.toml --svg --piece A > arch.svg"}},
        {"stops", {"stops arch.toml > arch.csv", "stops arch.toml --blade near"}},
        {"verify", {"verify arch.pdf", "verify arch.pdf arch.toml"}},
        {"stock", {"stock arch.toml stair.toml", "stock arch.toml --csv > cuts.csv"}},
        {"labels", {"labels arch.toml", "labels arch.toml stair.toml --labels-from 7 --out house-labels.pdf"}},
        {"bid", {"bid arch.toml", "bid arch.toml stair.toml --json"}},
        {"media", {"media"}},
        {"complete", {"complete -- build --me", "complete -- stops arch.toml --piece ''"}},
        {"start",
         {"start arch.toml", "start muro.toml --language es", "start first.toml --example segmental",
          "start --from field-sheets.pdf arch.toml"}},
        {"schema", {"schema > job.schema.json", "schema shop > shop.schema.json"}},
    };
    return all;
}

std::string footer(const std::string& command) {
    const auto found = examples().find(command);
    if (found == examples().end()) return "";
    std::string text = "Examples:";
    for (const std::string& example : found->second) text += "\n  kerfpacket " + example;
    return text;
}

bool set(const char* variable) {
    const char* value = std::getenv(variable);  // NOLINT(concurrency-mt-unsafe): nothing here sets variables
    return value != nullptr && *value != '\0';
}

bool dumb_terminal() {
    const char* value = std::getenv("TERM");  // NOLINT(concurrency-mt-unsafe): the same
    return value == nullptr || std::string_view(value) == "dumb";
}

}  // namespace

void add_manners(CLI::App& app, MannersChoice& choice) {
    app.footer(footer(""));
    for (CLI::App* command : app.get_subcommands({})) {
        command->add_flag("-q,--quiet", choice.quiet, "tell errors, cautions and what was asked for, nothing else");
        command->add_option("--color", choice.colour, "colour in messages; auto: on a terminal, without NO_COLOR")
            ->check(CLI::IsMember({"auto", "always", "never"}))
            ->capture_default_str();
        command->footer(footer(command->get_name()));
    }
}

Manners manners(const MannersChoice& choice, bool watched) {
    const bool wanted = watched && !set("NO_COLOR") && !dumb_terminal();
    return {choice.quiet, choice.colour == "always" || (choice.colour == "auto" && wanted)};
}

std::string near_option(const CLI::App& app, const std::vector<std::string>& arguments) {
    if (arguments.empty()) return "";
    std::vector<std::string> names{"help"};
    for (const CLI::App* command : app.get_subcommands({}))
        if (command->get_name() == arguments.front())
            for (const CLI::Option* option : command->get_options())
                names.insert(names.end(), option->get_lnames().begin(), option->get_lnames().end());
    for (const std::string& argument : arguments) {
        if (argument == "--") break;
        if (!argument.starts_with("--")) continue;
        const std::string name = argument.substr(2, argument.find('=') - 2);
        if (std::find(names.begin(), names.end(), name) != names.end()) continue;
        const std::string near = measure::near_miss(name, {names.begin(), names.end()});
        return near.empty() ? "" : fmt::format("did you mean --{}?\n", near);
    }
    return "";
}

}  // namespace kerfpacket::cli
