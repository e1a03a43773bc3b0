#include "cli/complete.h"

#include <algorithm>
#include <optional>
#include <utility>

#include <fmt/format.h>

#include <CLI/CLI.hpp>

#include "cli/resources.h"
#include "job/media.h"
#include "job/read.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

using Words = std::vector<std::string>;
/// A word and what it is.
using Candidates = std::vector<std::pair<std::string, std::string>>;

/// The words that an option or a place takes, as CLI11 describes its check: "TEXT:{in,mm}".
Candidates words_of(const CLI::Option& option) {
    const std::string type = option.get_type_name();
    const std::size_t from = type.find('{'), to = type.rfind('}');
    Candidates words;
    if (from == std::string::npos || to == std::string::npos) return words;
    for (const std::string& word : CLI::detail::split(type.substr(from + 1, to - from - 1), ','))
        words.emplace_back(word, "");
    return words;
}

Candidates media() {
    Candidates names;
    for (const job::Media& one : job::all_media()) names.emplace_back(one.name, one.plain_name);
    return names;
}

/// What is typed behind the last comma is the word; what stands before it stays.
Candidates sheets(const std::string& typed, const fs::path& home) {
    const std::string before = typed.substr(0, typed.rfind(',') + 1);
    Candidates names;
    const Resources resources(home, "en");
    const sheets::Kit kit = resources.kit();
    for (const std::string& kind : sheets::sheet_kinds(kit)) names.emplace_back(before + kind, "");
    return names;
}

Candidates pieces(const fs::path& file) {
    Candidates ids;
    const auto source = job::load(file);
    if (!source) return ids;
    const job::Reading reading = job::read_job(*source);
    for (const job::Opening& one : reading.job.openings) ids.emplace_back(one.id.value, "opening");
    for (const job::Wall& one : reading.job.walls) ids.emplace_back(one.id.value, "wall");
    return ids;
}

/// The command line as far as it is typed, behind the command.
class Typed {
public:
    Typed(const CLI::App& command, const Words& words) : command_(command) {
        for (std::size_t i = 0; i + 1 < words.size(); ++i) {
            const CLI::Option* option = words[i].starts_with('-') ? find(words[i]) : nullptr;
            const bool with_value =
                option != nullptr && option->get_items_expected_max() > 0 && words[i].find('=') == std::string::npos;
            if (!words[i].starts_with('-')) places_.push_back(words[i]);
            if (!with_value) continue;
            if (i + 2 == words.size()) waiting_ = option;
            ++i;
            if (!goes_on(*option)) continue;
            while (i + 1 < words.size() && !words[i + 1].starts_with('-')) ++i;
            if (i + 1 >= words.size()) waiting_ = option;
        }
    }

    /// The option that a word names, "--media" or "--media=...".
    const CLI::Option* find(const std::string& word) const {
        const std::string name = word.substr(0, word.find('='));
        for (const CLI::Option* option : command_.get_options())
            if (!option->get_positional() && option->check_name(name)) return option;
        return nullptr;
    }
    /// The option whose value stands last.
    const CLI::Option* waiting() const { return waiting_; }
    /// What stands where a job, a packet or a shape does.
    const Words& places() const { return places_; }
    const CLI::Option* next_place() const {
        Words rest = places_;
        const CLI::Option* last = nullptr;
        for (const CLI::Option* option : command_.get_options()) {
            if (!option->get_positional()) continue;
            last = option;
            if (rest.empty()) return option;
            rest.erase(rest.begin());
        }
        return last != nullptr && last->get_items_expected_max() > 1 ? last : nullptr;
    }

private:
    /// It takes one word after the other.
    static bool goes_on(const CLI::Option& option) {
        return option.get_items_expected_max() > 1 && option.get_delimiter() == '\0';
    }

    const CLI::App& command_;
    Words places_;
    const CLI::Option* waiting_ = nullptr;
};

Candidates values(const CLI::App& command, const CLI::Option& option, const Typed& typed, const std::string& current,
                  const fs::path& home) {
    const std::string name = option.get_name();
    if (name == "--media") return media();
    if (name == "--only") return sheets(current, home);
    if (name == "--piece") return typed.places().empty() ? Candidates{} : pieces(typed.places().front());
    if (name == "--out" && command.get_name() == "preview") return {{":folders", ""}};
    if (name == "--out" || name == "PACKET" || name == "--from") return {{":files", ".pdf"}};
    if (name == "--shop" || name == "--labels" || name == "JOB") return {{":files", ".toml"}};
    return words_of(option);
}

Candidates options(const CLI::App& command) {
    Candidates names;
    for (const CLI::Option* option : command.get_options())
        for (const std::string& name : option->get_lnames()) names.emplace_back("--" + name, option->get_description());
    return names;
}

Candidates commands(const CLI::App& app) {
    Candidates names;
    for (const CLI::App* command : app.get_subcommands({}))
        names.emplace_back(command->get_name(), command->get_description());
    return names;
}

Candidates behind(const CLI::App& command, const Words& words, const fs::path& home) {
    const Typed typed(command, words);
    const std::string& current = words.back();
    if (typed.waiting() != nullptr) return values(command, *typed.waiting(), typed, current, home);
    if (const std::size_t equals = current.find('='); current.starts_with("--") && equals != std::string::npos) {
        const CLI::Option* option = typed.find(current);
        if (option == nullptr) return {};
        Candidates all = values(command, *option, typed, current.substr(equals + 1), home);
        for (auto& [word, what] : all)
            if (!word.starts_with(':')) word.insert(0, current.substr(0, equals + 1));
        return all;
    }
    if (current.starts_with('-')) return options(command);
    const CLI::Option* place = typed.next_place();
    return place == nullptr ? options(command) : values(command, *place, typed, current, home);
}

/// bash gives "--media=iso" as three words.
Words joined(const Words& words) {
    Words all;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] != "=" || i == 0 || !words[i - 1].starts_with("--")) all.push_back(words[i]);
        else if (i + 1 == words.size()) all.emplace_back();
    }
    return all;
}

Candidates candidates(const CLI::App& app, const Words& words, const fs::path& home) {
    if (words.empty()) return commands(app);
    if (words.size() == 1) return words.front().starts_with('-') ? options(app) : commands(app);
    for (const CLI::App* command : app.get_subcommands({}))
        if (command->get_name() == words.front()) return behind(*command, {words.begin() + 1, words.end()}, home);
    return {};
}

}  // namespace

Status complete(const CLI::App& app, const CompleteChoice& choice, Console& console, const fs::path& home) try {
    const Words words = joined(choice.words);
    const std::string current = words.empty() ? "" : words.back();
    for (const auto& [word, what] : candidates(app, words, home))
        if (word.starts_with(':') || word.starts_with(current))
            console.result(what.empty() ? word + "\n" : fmt::format("{}\t{}\n", word, what));
    return Status::done;
} catch (const std::runtime_error&) { return Status::done; }

}  // namespace kerfpacket::cli
